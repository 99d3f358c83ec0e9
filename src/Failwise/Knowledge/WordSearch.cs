using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>Something that the words may mean.</summary>
/// <param name="Kind">part, pattern, symptom, history or cause.</param>
/// <param name="Score">Share of the words that it meets, 0 to 1, whole words before near ones.</param>
public sealed record WordMatch(string Kind, string Id, string Name, string Says, double Score);

/// <summary>Finds parts, patterns, symptoms and history from what people say, tolerant of spelling.</summary>
public static class WordSearch
{
    private const double NearWord = 0.8;
    private const double WordPart = 0.6;
    private const double OtherMachine = 0.5;

    /// <summary>The best matches of each kind, best first; none when nothing is near.</summary>
    /// <param name="most">Matches kept per kind.</param>
    /// <param name="kinds">Kinds of the machine that is spoken of: words about other machines fall back. All alike when null.</param>
    public static IReadOnlyList<WordMatch> Find(KnowledgeBase knowledge, string text, int most = 4, IReadOnlyList<string>? kinds = null)
    {
        WordRarity rarity = knowledge.Rarity;
        string[] asked = [.. Split(text).Where(w => !w.All(char.IsAsciiDigit))];
        if (asked.All(WordRarity.IsFiller))
        {
            return [];
        }

        // Of equally near ones, what has a short code is looked at oftenest.
        HashSet<string> coded = [.. knowledge.Codes.Select(c => c.Id)];
        return
        [
            .. Best("part", knowledge.Parts.Values.Where(p => p.Id != "part").Select(p => (p.Id, p.Name, p.Name, PhrasesOf(p), kinds is null || p.Machines.Count == 0 || p.Machines.Any(kinds.Contains)))),
            .. Best("pattern", knowledge.Patterns.Values.Select(p => (p.Id, p.Name, p.Says, PhrasesOf(p), true))),
            .. Best("symptom", knowledge.Symptoms.Values.Select(s => (s.Id, s.Id, s.Says, PhrasesOf(s), Fits(s.Id)))),
            .. Best("history", knowledge.Circumstances.Values.Select(c => (c.Id, c.Id, c.Says, PhrasesOf(c), Fits(c.Id)))),
        ];

        bool Fits(string id) => kinds is null || knowledge.FitOf(id, kinds, []) > 0;

        IEnumerable<WordMatch> Best(string kind, IEnumerable<(string Id, string Name, string Says, IEnumerable<string> Words, bool Fits)> entries) =>
            entries.Select(e => new WordMatch(kind, e.Id, e.Name, e.Says, (e.Fits ? 1 : OtherMachine) * e.Words.Max(w => Score(rarity, asked, Split(w)))))
                .Where(m => m.Score >= 0.3)
                .OrderByDescending(m => m.Score).ThenBy(m => coded.Contains(m.Id) ? 0 : 1).ThenBy(m => m.Id, StringComparer.Ordinal).Take(most);
    }

    /// <summary>How telling each word of the vocabulary is.</summary>
    internal static WordRarity Rarity(KnowledgeBase knowledge) => new(
    [
        .. knowledge.Parts.Values.Select(p => PhrasesOf(p).SelectMany(Split)), .. knowledge.Patterns.Values.Select(p => PhrasesOf(p).SelectMany(Split)),
        .. knowledge.Symptoms.Values.Select(s => PhrasesOf(s).SelectMany(Split)), .. knowledge.Circumstances.Values.Select(c => PhrasesOf(c).SelectMany(Split)),
    ]);

    private static IEnumerable<string> PhrasesOf(Part p) => p.Words.Append(p.Name).Append(p.Id);

    private static IEnumerable<string> PhrasesOf(Pattern p) => p.Words.Append(p.Name).Append(p.Id);

    private static IEnumerable<string> PhrasesOf(Symptom s) => s.Words.Append(s.Id).Append(s.Says);

    private static IEnumerable<string> PhrasesOf(Circumstance c) => c.Words.Append(c.Id).Append(c.Says);

    private static string[] Split(string text) => Suggest.Fold(text).Split(['-', ',', '.', ';', ':', '(', ')', '/', '"', '\''], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>How well an entry's words are met by the words asked for: mostly the entry's own cover, so that long texts may name several things. A telling word counts more.</summary>
    private static double Score(WordRarity rarity, string[] asked, string[] entry)
    {
        double own = entry.Sum(rarity.Of), said = asked.Sum(rarity.Of);
        if (own <= 0 || entry.All(WordRarity.IsFiller))
        {
            return 0;
        }

        double met = entry.Sum(word => rarity.Of(word) * asked.Max(a => Alike(rarity, a, word)));
        double used = asked.Sum(a => rarity.Of(a) * entry.Max(word => Alike(rarity, a, word)));
        return 0.85 * met / own + 0.15 * used / said;
    }

    /// <summary>How near an asked word is to a word of the vocabulary, 0 to 1. One that the vocabulary has is not misspelt: a level is no lever.</summary>
    private static double Alike(WordRarity rarity, string a, string b)
    {
        if (a == b)
        {
            return 1;
        }

        string x = Stem(a), y = Stem(b);
        if (x == y)
        {
            return 0.97;
        }

        int shorter = Math.Min(x.Length, y.Length);
        // Short words that begin otherwise, or differ in one letter of four, are other words: turn is not burn, worn no worm.
        int allowed = shorter <= 3 || (shorter == 4 && x.Length == y.Length) ? 0 : shorter <= 6 ? 1 : 2;
        return allowed > 0 && !rarity.Knows(a) && (shorter > 6 || x[0] == y[0]) && Suggest.Distance(x, y, allowed) <= allowed ? NearWord
            : shorter >= 4 && (x.StartsWith(y, StringComparison.Ordinal) || y.StartsWith(x, StringComparison.Ordinal)) ? WordPart : 0;
    }

    private static string Stem(string word)
    {
        foreach (string ending in new[] { "ing", "ed", "es", "s" })
        {
            if (word.Length > ending.Length + 3 && word.EndsWith(ending, StringComparison.Ordinal))
            {
                return word[..^ending.Length];
            }
        }

        return word;
    }
}
