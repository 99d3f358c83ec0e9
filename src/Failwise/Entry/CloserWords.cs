using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Entry;

/// <summary>
/// Broad words for marks that could be said closer: "broken" of a rod is true of a fatigue break and of one by brute force alike, and it is
/// the kind of break that tells the cause. A broad word is never wrong; it is only worth a second look.
/// </summary>
public static class CloserWords
{
    private const int Most = 4;
    private const int MostKinds = 6;
    private const string AnyPart = "part";

    /// <summary>
    /// Kinds of the pattern that something is known to leave on the part, likeliest first; none when it is as close as one can say, or when
    /// the word itself is what most rules mean on this part: sludge in a sump is seldom the soft cold kind.
    /// </summary>
    public static IReadOnlyList<Pattern> For(KnowledgeBase knowledge, string part, string pattern) =>
        [.. Closer(pattern, knowledge.Marks.KindsOn(part, pattern)).Select(id => knowledge.Patterns[id])];

    /// <summary>Closer words for a symptom on such a machine, likeliest first; none when it is as close as one can say.</summary>
    private static IReadOnlyList<Symptom> ForSymptom(KnowledgeBase knowledge, Machine machine, string symptom) =>
    [
        .. Closer(symptom, knowledge.Marks.KindsOfSymptom(symptom).Where(s => knowledge.FitOf(s.Key, machine.Kinds, machine.Features) > 0).ToDictionary(StringComparer.Ordinal))
            .Select(id => knowledge.Symptoms[id]),
    ];

    /// <summary>A hint for each broad word of a case, once for each part; none where a closer word for the same stands beside it.</summary>
    /// <param name="about">Which places of the case are spoken of.</param>
    public static IReadOnlyList<Problem> Hints(KnowledgeBase knowledge, TeardownCase teardown, Func<Location, bool> about)
    {
        List<Problem> hints = [];
        foreach (Statement said in teardown.Symptoms.Where(s => s.Holds && about(s.At)))
        {
            IReadOnlyList<Symptom> closer = ForSymptom(knowledge, teardown.Machine, said.Id);
            if (closer.Count > 0 && !teardown.Symptoms.Any(s => s.Id != said.Id && knowledge.SymptomIs(s.Id, said.Id)))
            {
                hints.Add(Hint(said.At, $"'{said.Id}' is a broad word. If it can be told, say closer: {string.Join(", ", closer.Select(c => c.Id))}. {knowledge.Symptoms[said.Id].Ask}"));
            }
        }

        foreach (IGrouping<string, Observation> on in teardown.Observations.Where(o => about(o.Location)).GroupBy(o => o.Part))
        {
            IReadOnlyList<string> kinds = KindsOf(knowledge, teardown.Machine, on.Key);
            if (kinds.Count > 1 && !teardown.Observations.Any(o => o.Part != on.Key && knowledge.PartIs(o.Part, on.Key)))
            {
                hints.Add(Hint(on.First().Location, $"'{knowledge.Parts[on.Key].Name}' leaves open which one is meant. If you can tell, say closer: {string.Join(", ", kinds)}."));
            }
        }

        foreach (IGrouping<(string Part, string), Observation> mark in teardown.Observations.Where(o => o.Look == Look.Seen && about(o.Location)).GroupBy(o => (o.Part, o.Pattern!)))
        {
            (string part, string pattern) = mark.Key;
            IReadOnlyList<Pattern> closer = For(knowledge, part, pattern);
            if (closer.Count > 0 && !teardown.Observations.Any(o => o.Part == part && o.Look != Look.Sound && closer.Any(c => knowledge.PatternIs(o.Pattern!, c.Id))))
            {
                hints.Add(Hint(mark.First().Location,
                    $"'{knowledge.Patterns[pattern].Name}' on {knowledge.Parts[part].Name} is a broad word. If you can tell, say closer: {string.Join(", ", closer.Select(c => c.Id))}. 'failwise words {closer[0].Id}' says how it looks."));
            }
        }

        foreach (Observation o in teardown.Observations.Where(o => o.Look == Look.Seen && about(o.Location) && !knowledge.Marks.IsKnownOn(o.Part, o.Pattern!)).DistinctBy(o => (o.Part, o.Pattern)))
        {
            hints.Add(new Problem("FW093", Severity.Hint, o.Location, EntryQuestions.Unknown(knowledge, o)));
        }

        return [.. hints.OrderBy(h => h.At.Line).ThenBy(h => h.At.Column)];
    }

    /// <summary>The parts with a short code on such a machine that a general word may mean; none when the word is a part that one can lay a hand on.</summary>
    private static IReadOnlyList<string> KindsOf(KnowledgeBase knowledge, Machine machine, string part)
    {
        if (part == AnyPart || knowledge.Codes.Any(c => c.Kind == "part" && c.Id == part))
        {
            return [];
        }

        // Journal means one of two; a camshaft is one thing and its lobes another.
        string word = LastWord(part);
        string[] kinds =
        [
            .. knowledge.Codes.Where(c => c.Kind == "part" && knowledge.PartIs(c.Id, part)).Select(c => c.Id).Distinct()
                .Where(c => knowledge.Parts[c].Machines is var on && (on.Count == 0 || on.Any(machine.Kinds.Contains))).Take(MostKinds),
        ];
        return knowledge.Parts[part].Access is null || kinds.Any(k => LastWord(k) == word) ? kinds : [];

        string LastWord(string id) => knowledge.Parts[id].Name.Split(' ')[^1];
    }

    private static Problem Hint(Location at, string message) => new("FW107", Severity.Hint, at, message.TrimEnd());

    /// <summary>Kinds by how strongly rules speak of them, the broad word itself left out; none when most rules mean the broad word itself.</summary>
    private static IEnumerable<string> Closer(string broad, Dictionary<string, double> kinds)
    {
        kinds.Remove(broad, out double own);
        return kinds.Values.Sum() < own ? [] : kinds.OrderByDescending(l => l.Value).ThenBy(l => l.Key, StringComparer.Ordinal).Select(l => l.Key).Take(Most);
    }
}
