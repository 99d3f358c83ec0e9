using Failwise.Causes;
using Failwise.Drawings;
using Failwise.Knowledge;

namespace Failwise.Reports;

/// <summary>The small drawings of the atlas: each pattern on the part where it is met most.</summary>
internal static class AtlasDrawings
{
    /// <summary>Stands for the part of a figure that is the same on every part.</summary>
    private const string AnyPart = "part";

    private const string Alt = "sketch of the mark";

    /// <summary>Every drawing that some page shows, each once.</summary>
    public static IEnumerable<AtlasPage> Pages(KnowledgeBase knowledge) =>
        knowledge.Patterns.Values.OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => (Pattern: p, Part: UsualPart(knowledge, p)))
            .Where(x => x.Part is not null && MarkDrawings.NameOf(knowledge, x.Part, x.Pattern.Id) is not null)
            .DistinctBy(x => MarkDrawings.NameOf(knowledge, x.Part!, x.Pattern.Id))
            .Select(x => new AtlasPage(FileOf(knowledge, x.Part!, x.Pattern), MarkDrawings.For(knowledge, x.Part!, x.Pattern.Id, Alt) + "\n"));

    /// <summary>The picture line of a pattern page; null when no drawing helps.</summary>
    public static string? Markdown(KnowledgeBase knowledge, Pattern pattern) =>
        UsualPart(knowledge, pattern) is { } part && MarkDrawings.NameOf(knowledge, part, pattern.Id) is not null
            ? $"![{MarkdownText.Safe($"Sketch: {pattern.Name}" + (part == AnyPart ? "" : $", on {knowledge.Parts[part].Name}"))}](../{FileOf(knowledge, part, pattern)})" : null;

    private static string FileOf(KnowledgeBase knowledge, string part, Pattern pattern) => $"drawings/marks/{MarkDrawings.NameOf(knowledge, part, pattern.Id)}.svg";

    /// <summary>True for the text of a drawing that <see cref="Pages"/> wrote, now or for an older rule base.</summary>
    internal static bool IsOwn(string text) => text.StartsWith("<svg ", StringComparison.Ordinal) && text.Contains($"aria-label=\"{Alt}\"", StringComparison.Ordinal);

    private static string? UsualPart(KnowledgeBase knowledge, Pattern pattern) =>
        CauseIndex.Of(knowledge).ByPart.Select(p => (Part: p.Key, Weight: p.Value.Where(l => l.Link.Sign!.Pattern == pattern.Id).Sum(l => l.Link.Strength)))
            .Where(p => p.Weight > 0).OrderByDescending(p => p.Weight).ThenBy(p => p.Part, StringComparer.Ordinal).Select(p => p.Part).FirstOrDefault()
        ?? AtlasPlaces.PartAskedFor(knowledge, pattern.Id)
        ?? (PatternFigures.Of(pattern.Id) is null ? null : AnyPart);
}
