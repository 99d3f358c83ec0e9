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
    public static IReadOnlyList<Pattern> For(KnowledgeBase knowledge, string part, string pattern)
    {
        Dictionary<string, double> left = knowledge.Causes.Values.SelectMany(c => c.Leaves)
            .Where(l => l.Sign is { } sign && sign.Part != AnyPart && knowledge.PatternIs(sign.Pattern, pattern) && knowledge.PartIs(part, sign.Part))
            .GroupBy(l => l.Sign!.Pattern, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(l => l.Strength), StringComparer.Ordinal);
        left.Remove(pattern, out double broad);
        return left.Values.Sum() < broad ? []
            : [.. left.OrderByDescending(l => l.Value).ThenBy(l => l.Key, StringComparer.Ordinal).Select(l => knowledge.Patterns[l.Key]).Take(Most)];
    }

    /// <summary>A hint for each broad word of a case, once for each part; none where a closer word for the same part stands beside it.</summary>
    /// <param name="about">Which observations are spoken of.</param>
    public static IReadOnlyList<Problem> Hints(KnowledgeBase knowledge, TeardownCase teardown, Func<Observation, bool> about)
    {
        List<Problem> hints = [];
        foreach (IGrouping<(string Part, string), Observation> mark in teardown.Observations.Where(o => o.Look == Look.Seen && about(o)).GroupBy(o => (o.Part, o.Pattern!)))
        {
            (string part, string pattern) = mark.Key;
            IReadOnlyList<Pattern> closer = For(knowledge, part, pattern);
            bool said = teardown.Observations.Any(o => o.Part == part && o.Look != Look.Sound && closer.Any(c => knowledge.PatternIs(o.Pattern!, c.Id)));
            if (closer.Count > 0 && !said)
            {
                hints.Add(new Problem("FW107", Severity.Hint, mark.First().Location,
                    $"'{knowledge.Patterns[pattern].Name}' on {knowledge.Parts[part].Name} is a broad word. If you can tell, say closer: {string.Join(", ", closer.Select(c => c.Id))}. 'failwise words {closer[0].Id}' says how it looks."));
            }
        }

        return hints;
    }
}
