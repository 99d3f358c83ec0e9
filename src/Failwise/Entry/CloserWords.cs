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
    private const string AnyPart = "part";

    /// <summary>
    /// Kinds of the pattern that something is known to leave on the part, likeliest first; none when it is as close as one can say, or when
    /// the word itself is what most rules mean on this part: sludge in a sump is seldom the soft cold kind.
    /// </summary>
    public static IReadOnlyList<Pattern> For(KnowledgeBase knowledge, string part, string pattern) =>
    [
        .. Closer(pattern, Links(knowledge).Where(l => l.Sign is { } sign && sign.Part != AnyPart && knowledge.PatternIs(sign.Pattern, pattern) && knowledge.PartIs(part, sign.Part))
            .Select(l => (l.Sign!.Pattern, l.Strength))).Select(id => knowledge.Patterns[id]),
    ];

    /// <summary>Closer words for a symptom on such a machine, likeliest first; none when it is as close as one can say.</summary>
    public static IReadOnlyList<Symptom> ForSymptom(KnowledgeBase knowledge, Machine machine, string symptom) =>
    [
        .. Closer(symptom, Links(knowledge).Where(l => l.Target == LinkTarget.Symptom && knowledge.SymptomIs(l.Id, symptom) && knowledge.FitOf(l.Id, machine.Kinds, machine.Features) > 0)
            .Select(l => (l.Id, l.Strength))).Select(id => knowledge.Symptoms[id]),
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

        return hints;
    }

    private static Problem Hint(Location at, string message) => new("FW107", Severity.Hint, at, message.TrimEnd());

    private static IEnumerable<CauseLink> Links(KnowledgeBase knowledge) => knowledge.Causes.Values.SelectMany(c => c.Leaves);

    /// <summary>Kinds by how strongly rules speak of them, the broad word itself left out; none when most rules mean the broad word itself.</summary>
    private static IEnumerable<string> Closer(string broad, IEnumerable<(string Id, double Strength)> links)
    {
        Dictionary<string, double> left = links.GroupBy(l => l.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(l => l.Strength), StringComparer.Ordinal);
        left.Remove(broad, out double own);
        return left.Values.Sum() < own ? [] : left.OrderByDescending(l => l.Value).ThenBy(l => l.Key, StringComparer.Ordinal).Select(l => l.Key).Take(Most);
    }
}
