using Failwise.Cases;
using Failwise.Causes;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Checks;

/// <summary>Understands an assumption from a few free words: "journal 3 blued", "rod bearing sound", "not overheating".</summary>
internal sealed class AssumptionReader(KnowledgeBase knowledge, ProblemList problems)
{
    private const double NearEnough = 0.62;
    private static readonly string[] Denials = ["not", "no", "without"];

    /// <summary>Null when a word is not understood; the problem then says what is near.</summary>
    public Assumption? Read(string text)
    {
        string[] words = Suggest.Fold(text).Split(['-', ' ', ',', ':', '='], StringSplitOptions.RemoveEmptyEntries);
        bool denied = words.Length > 0 && Denials.Contains(words[0]);
        string[] rest = denied ? words[1..] : words;
        if (rest.Length == 0)
        {
            return Unknown(text, "it says nothing: write a part and what is seen on it, a symptom or a history word.");
        }

        return (denied ? Stated(words, false) : null) ?? Stated(rest, denied) ?? Looked(rest, denied) ?? Near(text, rest, denied);
    }

    private Assumption? Stated(string[] words, bool denied)
    {
        string whole = string.Join(' ', words);
        if (knowledge.SymptomWords.Find(whole) is { } symptom)
        {
            return OfSymptom(symptom, denied);
        }

        return knowledge.HistoryWords.Find(whole) is { } history ? OfHistory(history, denied) : null;
    }

    private Assumption? Looked(string[] words, bool denied)
    {
        int[] places = [.. words.Where(w => w.All(char.IsAsciiDigit) && w.Length <= 2).Select(int.Parse).Where(n => n > 0).Distinct()];
        string[] left = [.. words.Where(w => !w.All(char.IsAsciiDigit))];
        (string? part, left) = Take(left, knowledge.PartWords);
        bool sound = left.Any(KnowledgeReader.IsSoundWord);
        (string? pattern, left) = sound ? (null, left) : Take(left, knowledge.PatternWords);
        (string? on, _) = Take(left, knowledge.PlaceWords);
        return part is not null && (sound || pattern is not null) ? OfLook(part, sound && !denied ? null : pattern, sound, denied, places, on) : null;
    }

    /// <summary>The longest run of words that means something, and the words that are left.</summary>
    private static (string? Id, string[] Left) Take(string[] words, WordIndex index)
    {
        for (int length = words.Length; length > 0; length--)
        {
            for (int start = 0; start + length <= words.Length; start++)
            {
                if (index.Find(string.Join(' ', words[start..(start + length)])) is { } id)
                {
                    return (id, [.. words[..start], .. words[(start + length)..]]);
                }
            }
        }

        return (null, words);
    }

    private Assumption? Near(string text, string[] words, bool denied)
    {
        IReadOnlyList<WordMatch> near = WordSearch.Find(knowledge, string.Join(' ', words), 1);
        WordMatch? part = near.FirstOrDefault(m => m.Kind == "part"), pattern = near.FirstOrDefault(m => m.Kind == "pattern");
        WordMatch? stated = near.Where(m => m.Kind is "symptom" or "history").OrderByDescending(m => m.Score).FirstOrDefault();
        bool sound = words.Any(KnowledgeReader.IsSoundWord);
        if (Take([.. words.Where(w => !w.All(char.IsAsciiDigit))], knowledge.PartWords) is ({ } named, []))
        {
            return Unknown(text, $"'{knowledge.Parts[named].Name}' is a part; what is seen on it?");
        }

        if (part?.Score >= NearEnough && (sound || pattern?.Score >= NearEnough))
        {
            int[] places = [.. words.Where(w => w.All(char.IsAsciiDigit) && w.Length <= 2).Select(int.Parse).Where(n => n > 0).Distinct()];
            return OfLook(part.Id, sound ? null : pattern!.Id, sound, denied, places, null);
        }

        if (stated?.Score >= NearEnough)
        {
            return stated.Kind == "symptom" ? OfSymptom(stated.Id, denied) : OfHistory(stated.Id, denied);
        }

        string hint = part?.Score >= NearEnough ? $"'{part.Name}' is a part; what is seen on it?"
            : pattern?.Score >= NearEnough ? $"'{pattern.Name}' is a pattern; on which part?"
            : near.Count > 0 ? $"nearest are {string.Join(", ", near.OrderByDescending(m => m.Score).Take(3).Select(m => $"'{m.Id}'"))}." : "nothing in the vocabulary is near.";
        return Unknown(text, hint);
    }

    private Assumption? Unknown(string text, string hint)
    {
        problems.Error("FW102", new Location("--assume", 1, 1), $"'{text.ReplaceLineEndings(" ")}' is not understood: {hint}");
        return null;
    }

    private Assumption OfSymptom(string id, bool denied) =>
        new((denied ? "Not so: " : "") + knowledge.Symptoms[id].Says, [], [new Statement(id, !denied, default)], [], []);

    private Assumption OfHistory(string id, bool denied) =>
        new((denied ? "Not so: " : "") + knowledge.Circumstances[id].Says, [], [], [new Statement(id, !denied, default)], []);

    private Assumption OfLook(string part, string? pattern, bool sound, bool denied, int[] places, string? on)
    {
        Look look = sound ? Look.Sound : denied ? Look.NotFound : Look.Seen;
        Observation seen = new(0, part, look, pattern, places.Length > 0 ? At.Numbers : At.Unsaid, places, on is null ? [] : [on], Extent.Unstated,
            knowledge.Sureness["sure"], null, null, null, null, default);
        return new Assumption(Say(knowledge, seen), [seen], [], [], []);
    }

    /// <summary>An observation in a few words.</summary>
    public static string Say(KnowledgeBase knowledge, Observation seen)
    {
        string place = EvidenceGathering.SayPlace(seen);
        string what = seen.Look == Look.Sound ? "found sound" : (seen.Look == Look.NotFound ? "no sign of " : "") + knowledge.Patterns[seen.Pattern!].Name;
        return $"{EvidenceGathering.Capital(knowledge.Parts[seen.Part].Name)}: {what}{(place.Length > 0 ? $" ({place})" : "")}";
    }
}

/// <summary>Reads assumptions; every one that is not understood becomes a problem.</summary>
public static class Assumptions
{
    /// <summary>Understands short codes, and else free words.</summary>
    /// <param name="machine">The machine they are about.</param>
    /// <exception cref="ProblemsException">Some are not understood; all of them are listed.</exception>
    public static IReadOnlyList<Assumption> Read(KnowledgeBase knowledge, Machine machine, IReadOnlyList<string> texts)
    {
        ProblemList problems = new();
        AssumptionReader reader = new(knowledge, problems);
        Assumption[] read = [.. texts.Select(t => FromCodes(knowledge, machine, t) ?? reader.Read(t)).OfType<Assumption>()];
        return problems.HasErrors ? throw new ProblemsException(problems.All) : read;
    }

    private static Assumption? FromCodes(KnowledgeBase knowledge, Machine machine, string text)
    {
        CodeReading codes = ShortCodes.Read(knowledge, text, machine);
        if (codes.Problems.Count > 0 || CodeFacts.Read(knowledge, machine, codes.Entries, "--assume").Case is not { } facts)
        {
            return null;
        }

        string[] says =
        [
            .. facts.Observations.Select(o => AssumptionReader.Say(knowledge, o)),
            .. facts.Symptoms.Select(s => (s.Holds ? "" : "Not so: ") + knowledge.Symptoms[s.Id].Says),
            .. facts.History.Select(s => (s.Holds ? "" : "Not so: ") + knowledge.Circumstances[s.Id].Says),
            .. facts.Measurements.Select(m => $"{EvidenceGathering.Capital(knowledge.Parts[m.Part].Name)}: {m.Quantity} {m.Value}"),
        ];
        return says.Length == 0 ? null : new Assumption(string.Join("; ", says.Distinct()), facts.Observations, facts.Symptoms, facts.History, facts.Measurements);
    }
}
