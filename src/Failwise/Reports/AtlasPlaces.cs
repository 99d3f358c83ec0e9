using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Reports;

/// <summary>A finding in which a pattern tells something by where it lies.</summary>
/// <param name="Part">The part on which the finding asks for the pattern.</param>
/// <param name="Causes">Ids of the causes it speaks for, strongest first.</param>
internal sealed record PlaceMeaning(FindingRule Finding, string Part, IReadOnlyList<string> Causes, double Strength);

/// <summary>Which findings tell what a pattern means by its position.</summary>
internal static class AtlasPlaces
{
    /// <summary>Rows of one page; a longer table is not read.</summary>
    public const int Most = 12;

    /// <summary>A condition with more alternatives than this is about damage in general, not about one pattern.</summary>
    private const int MostAlternatives = 6;

    /// <summary>The findings that ask for the pattern, or for one it is a kind of, most telling first.</summary>
    public static IReadOnlyList<PlaceMeaning> Of(KnowledgeBase knowledge, CauseIndex index, Pattern pattern)
    {
        string[] line = [.. knowledge.PatternLine(pattern.Id)];
        return [.. knowledge.Findings.Values.Select(f => Meaning(index, f, line)).OfType<PlaceMeaning>()
            .OrderByDescending(p => p.Strength).ThenBy(p => p.Finding.Id, StringComparer.Ordinal)];
    }

    /// <summary>Rows of one part stand together; the part with the most telling row comes first.</summary>
    public static IEnumerable<PlaceMeaning> ByPart(IEnumerable<PlaceMeaning> places) => places.GroupBy(p => p.Part).SelectMany(g => g);

    public static IReadOnlyList<PlaceDrawing> Drawings(KnowledgeBase knowledge, Pattern pattern, IReadOnlyList<string> parts)
    {
        string[] places = [.. knowledge.Findings.Values.SelectMany(f => Asked(f.When)).Where(c => c.See.Contains(pattern.Id)).SelectMany(c => c.On).Distinct().Order(StringComparer.Ordinal)];
        return [.. PlaceDrawings.For(knowledge, [.. parts], places)];
    }

    /// <summary>The part on which most findings ask for the pattern; null when none does.</summary>
    public static string? PartAskedFor(KnowledgeBase knowledge, string pattern) => knowledge.Findings.Values.SelectMany(Mentions)
        .Where(m => m.See.Contains(pattern)).GroupBy(m => m.Part).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault()?.Key;

    private static PlaceMeaning? Meaning(CauseIndex index, FindingRule finding, IReadOnlyList<string> line)
    {
        (Cause Cause, CauseLink Link)[] causes = [.. (index.ByTarget.GetValueOrDefault("finding/" + finding.Id) ?? [])
            .OrderByDescending(l => l.Link.Strength).ThenBy(l => l.Cause.Id, StringComparer.Ordinal)];
        (string Part, IReadOnlyList<string> See)[] mentions = [.. Mentions(finding).Where(m => m.See.Count <= MostAlternatives && m.See.Any(line.Contains))];
        if (mentions.Length == 0 || causes.Length == 0)
        {
            return null;
        }

        // Of several places where it is asked for, the one that names fewest other patterns is the one the finding is about.
        (string part, IReadOnlyList<string> see) = mentions.MinBy(m => Breadth(m.See, line[0]));
        return new PlaceMeaning(finding, part, [.. causes.Select(c => c.Cause.Id)], causes[0].Link.Strength / Breadth(see, line[0]));
    }

    /// <summary>Squared, so that a finding about this pattern stands before a surer one about any of several; a broader name counts double.</summary>
    private static double Breadth(IReadOnlyList<string> see, string pattern) => see.Count * see.Count * (see.Contains(pattern) ? 1 : 2);

    private static IEnumerable<(string Part, IReadOnlyList<string> See)> Mentions(FindingRule finding) =>
    [
        .. Asked(finding.When).Select(c => (c.Part, c.See)),
        .. finding.Refines.GroupBy(s => s.Part).Select(g => (g.Key, (IReadOnlyList<string>)[.. g.Select(s => s.Pattern)])),
    ];

    /// <summary>What has to be seen; a condition that nothing may be there says nothing for the pattern.</summary>
    private static IEnumerable<SightingCondition> Asked(Condition condition) => condition switch
    {
        AllOf c => c.Parts.SelectMany(Asked),
        AnyOf c => c.Parts.SelectMany(Asked),
        SightingCondition c => [c],
        _ => [],
    };
}
