using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Entry;

/// <summary>What the words of an entry mean, and what they may mean when they are not understood.</summary>
internal sealed partial class CodeEntry
{
    private const int LongestPhrase = 6;
    private const int PartPhrase = 3;
    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];
    private const int MostNear = 3;
    private const int MostKinds = 6;

    private string? Pattern(int from)
    {
        if (knowledge.Codes.FirstOrDefault(c => c.Kind == "pattern" && c.Code == words[from].Text) is { } code)
        {
            next = from + 1;
            return code.Id;
        }

        string? plain = ReadPattern(from);
        int after = next;
        for (int begin = 0; begin < partWords; begin++)
        {
            // "Ring stuck" and "fork worn" are marks of their own, closer than stuck and worn.
            string[] named = [.. words.Take(partWords).Skip(begin).Select(w => w.Text)];
            string[] one = [.. named.SkipLast(1), named[^1].TrimEnd('s')];
            if ((ReadPattern(from, named) ?? ReadPattern(from, one)) is { } both && (plain is null || knowledge.PatternIs(both, plain)))
            {
                return both;
            }
        }

        next = after;
        return plain is not null && knowledge.Marks.FitOn(about!, plain) == 0 ? MarkThenPlace(from, after) ?? plain : plain;
    }

    /// <summary>"Worn on one side" is a mark of bearings; on a fork it is a worn fork, on one side. Null when the words do not part into a mark of this part and a place.</summary>
    private string? MarkThenPlace(int from, int after)
    {
        string[] part = [.. words.Take(partWords).Select(w => w.Text)];
        for (int end = after - 1; end > from; end--)
        {
            string place = string.Join('-', words.Take(after).Skip(end).SkipWhile(w => JoiningWords.Contains(Suggest.Fold(w.Text))).Select(w => w.Text));
            string mark = string.Join('-', words.Take(end).Skip(from).Select(w => w.Text));
            string? id = Enumerable.Range(0, part.Length + 1).Select(skip => knowledge.PatternOn(about!, string.Join('-', part.Skip(skip).Append(mark)))).FirstOrDefault(p => p is not null);
            if (id is not null && knowledge.PlaceWords.Find(place) is not null && knowledge.Marks.FitOn(about!, id) > 0)
            {
                next = end;
                return id;
            }
        }

        return null;
    }

    /// <summary>The longest run of words from here that the index knows; moves on behind it.</summary>
    private string? ReadPattern(int from, params string[] before) => ReadPhrase(w => knowledge.PatternOn(about!, w), from, before);

    private string? ReadPhrase(WordIndex index, int from) => ReadPhrase(index.Find, from);

    private string? ReadPhrase(Func<string, string?> find, int from, params string[] before)
    {
        int most = words.Skip(from).TakeWhile(w => !w.Quoted && w.Text is not ("=" or "!")).Take(LongestPhrase).Count();
        for (int count = most; count > 0; count--)
        {
            if (find(string.Join('-', before.Concat(words.Skip(from).Take(count).Select(w => w.Text)))) is { } id)
            {
                next = from + count;
                return id;
            }
        }

        return null;
    }

    /// <summary>"Number 2 rod bearing spun", "second gear synchro ring worn": the number is said before the part.</summary>
    private void TakeLeadingNumber()
    {
        while (words.Count > 1 && Suggest.Fold(words[0].Text) is "the" or "a" or "an")
        {
            words = [.. words.Skip(1)];
        }

        int gear = Array.IndexOf(Ordinals, Suggest.Fold(words[0].Text));
        if (gear >= 0 && words.Count > 3 && Suggest.Fold(words[1].Text) == "gear")
        {
            at = (gear + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
            words = [.. words.Skip(2)];
        }

        if (words.Count > 2 && Suggest.Fold(words[0].Text) is "number" or "no" or "no." or "nr" or "#" && words[1].Text.All(IsNumber))
        {
            at = Numbers(words[1].Text);
            words = [.. words.Skip(2)];
        }
    }

    /// <summary>"Bent push rod 3", "heavy carbon on the piston crown": the mark is said before the part. The part is put first; false when it is not so.</summary>
    private bool TurnAround()
    {
        int from = RuleShapes.Extents.Contains(Suggest.Fold(words[0].Text)) ? 1 : 0;
        for (int behind = Math.Min(words.Count - 1, from + LongestPhrase); behind > from; behind--)
        {
            int part = behind + words.Skip(behind).TakeWhile(w => JoiningWords.Contains(Suggest.Fold(w.Text))).Count();
            bool mark = knowledge.PatternWords.Find(string.Join('-', words.Skip(from).Take(behind - from).Select(w => w.Text))) is not null;
            if (mark && part < words.Count && !words[part].Quoted && ReadPhrase(knowledge.PartWords, part) is not null)
            {
                words = [.. words.Skip(part), .. words.Take(behind)];
                next = 0;
                return true;
            }
        }

        return false;
    }

    /// <summary>Parts that the words before the mark may mean: several words by what they say, one word by the names that hold it, however it is spelt.</summary>
    private string PartMeant()
    {
        string[] said =
        [
            .. words.Take(1).Concat(words.Skip(1).TakeWhile(w => !w.Quoted && !w.Text.Any(IsNumber) && knowledge.PatternWords.Find(w.Text) is null && !SoundWords.Contains(w.Text)))
                .Take(PartPhrase).Select(w => w.Text),
        ];
        WordMatch[] near = Near(string.Join(' ', said), "part");
        if (said.Length > 1 && near.Length > 0)
        {
            return Perhaps(near.Select(m => m.Id));
        }

        Part[] shown = [.. knowledge.Codes.Where(c => c.Kind == "part").Select(c => knowledge.Parts[c.Id]).Distinct().Where(p => machine is null || p.Machines.Count == 0 || p.Machines.Any(machine.Kinds.Contains))];
        string? word = Suggest.BestMatch(words[0].Text, shown.SelectMany(p => Suggest.Fold(p.Name).Split('-')).Where(w => w.Length > 3));
        string[] kinds = [.. shown.Where(p => word is not null && Suggest.Fold(p.Name).Split('-').Contains(word)).Select(p => p.Id).Take(MostKinds)];
        return kinds.Length > 0 ? Perhaps(kinds) : near.Length > 0 ? Perhaps(near.Select(m => m.Id)) : Suggest.Nearest(words[0].Text, knowledge.PartWords.Words);
    }

    /// <summary>One word is likeliest misspelt; several are likeliest other words for the same.</summary>
    private string StatementMeant(string said) => said.Contains('-', StringComparison.Ordinal) && Near(said, "symptom", "history") is { Length: > 0 } near
        ? Perhaps(near.Select(m => m.Id)) : Suggest.Nearest(said, [.. knowledge.SymptomWords.Words, .. knowledge.HistoryWords.Words]);

    /// <summary>The nearest spelling, or else marks that the words from here on may mean.</summary>
    private string MarkMeant(CodeWord word, IReadOnlyCollection<string> known) => !knowledge.Rarity.Knows(Suggest.Fold(word.Text)) && Suggest.BestMatch(word.Text, known) is { } best ? $" Did you mean '{best}'?"
        : Near(string.Join(' ', words.SkipWhile(w => w.At != word.At).TakeWhile(w => !w.Quoted).Take(LongestPhrase).Select(w => w.Text)), "pattern") is { Length: > 0 } near
            ? Perhaps(near.Select(m => m.Id)) : "";

    private WordMatch[] Near(string said, params string[] kinds) =>
        [.. WordSearch.Find(knowledge, said, kinds: machine?.Kinds).Where(m => kinds.Contains(m.Kind)).OrderByDescending(m => m.Score).Take(MostNear)];

    private static string Perhaps(IEnumerable<string> ids) => $" Perhaps: {string.Join(", ", ids)}.";
}
