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
    private static readonly HashSet<string> Idle = ["a", "an", "the", "of", "on", "in", "at", "is", "are", "was", "it", "its", "and", "to", "with", "number", "no", "my", "one", "two", "three", "four", "five", "six"];

    /// <summary>The best matches of each kind, best first; none when nothing is near.</summary>
    /// <param name="most">Matches kept per kind.</param>
    public static IReadOnlyList<WordMatch> Find(KnowledgeBase knowledge, string text, int most = 4)
    {
        string[] asked = [.. Split(text).Where(w => !Idle.Contains(w) && !w.All(char.IsAsciiDigit))];
        if (asked.Length == 0)
        {
            return [];
        }

        return
        [
            .. Best("part", knowledge.Parts.Values.Where(p => p.Id != "part").Select(p => (p.Id, p.Name, p.Name, p.Words.Append(p.Name).Append(p.Id)))),
            .. Best("pattern", knowledge.Patterns.Values.Select(p => (p.Id, p.Name, p.Says, p.Words.Append(p.Name).Append(p.Id)))),
            .. Best("symptom", knowledge.Symptoms.Values.Select(s => (s.Id, s.Id, s.Says, s.Words.Append(s.Id).Append(s.Says)))),
            .. Best("history", knowledge.Circumstances.Values.Select(c => (c.Id, c.Id, c.Says, c.Words.Append(c.Id).Append(c.Says)))),
        ];

        IEnumerable<WordMatch> Best(string kind, IEnumerable<(string Id, string Name, string Says, IEnumerable<string> Words)> entries) =>
            entries.Select(e => new WordMatch(kind, e.Id, e.Name, e.Says, e.Words.Max(w => Score(asked, Split(w)))))
                .Where(m => m.Score >= 0.3)
                .OrderByDescending(m => m.Score).ThenBy(m => m.Id, StringComparer.Ordinal).Take(most);
    }

    private static string[] Split(string text) => Suggest.Fold(text).Split(['-', ',', '.', ';', ':', '(', ')', '/', '"', '\''], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>How well an entry's words are met by the words asked for: mostly the entry's own cover, so that long texts may name several things.</summary>
    private static double Score(string[] asked, string[] entry)
    {
        string[] own = [.. entry.Where(w => !Idle.Contains(w))];
        if (own.Length == 0)
        {
            return 0;
        }

        double met = own.Sum(word => asked.Max(a => Alike(a, word)));
        double used = asked.Sum(a => own.Max(word => Alike(a, word)));
        return 0.75 * met / own.Length + 0.25 * used / asked.Length;
    }

    private static double Alike(string a, string b)
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
        int allowed = shorter <= 3 ? 0 : shorter <= 6 ? 1 : 2;
        return allowed > 0 && Suggest.Distance(x, y, allowed) <= allowed ? NearWord
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
