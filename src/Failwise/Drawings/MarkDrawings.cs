using Failwise.Knowledge;

namespace Failwise.Drawings;

/// <summary>Small drawings of a mark on a part: what to compare the part in the hand with. Schematic, one family of marks a drawing.</summary>
public static class MarkDrawings
{
    /// <summary>The drawing as SVG, or null when a drawing would not help to know the pattern.</summary>
    /// <param name="alt">Words for those who cannot see it; empty when the same words stand beside it.</param>
    public static string? For(KnowledgeBase knowledge, string part, string pattern, string alt = "")
    {
        if (PatternFigures.Of(pattern) is { } figure)
        {
            Sketch own = new();
            figure(own);
            return own.Finish(alt);
        }

        MarkKind mark = MarkKinds.Of(knowledge, pattern);
        return mark == MarkKind.None ? null : Draw(PartShape.Of(knowledge, part), mark, alt);
    }

    /// <summary>A name that two equal drawings share, such as <c>shell-smear</c>; null when there is no drawing.</summary>
    public static string? NameOf(KnowledgeBase knowledge, string part, string pattern)
    {
        if (PatternFigures.Of(pattern) is not null)
        {
            return "figure-" + pattern;
        }

        MarkKind mark = MarkKinds.Of(knowledge, pattern);
        return mark == MarkKind.None ? null : NameOf(PartShape.Of(knowledge, part), mark);
    }

    /// <summary>The part as it should be.</summary>
    public static string Sound(KnowledgeBase knowledge, string part)
    {
        Sketch sketch = new();
        PartShape.Of(knowledge, part).Outline(sketch);
        return sketch.Finish("");
    }

    private static string NameOf(PartShape shape, MarkKind mark) => $"{shape.Name}-{mark.ToString().ToLowerInvariant()}";

    private static string Draw(PartShape shape, MarkKind mark, string alt)
    {
        Sketch sketch = new();
        if (mark == MarkKind.Missing)
        {
            return sketch.Dashed(shape.Area, 3).Line(40, 20, 80, 58, 4).Line(80, 20, 40, 58, 4).Finish(alt);
        }

        shape.Outline(sketch);
        // Equal drawings of one page share the id, and what it stands for is the same, so that either may be used.
        sketch.Clipped("c-" + NameOf(shape, mark), shape.Area, () => MarkStrokes.Draw(sketch, mark, shape));
        MarkStrokes.DrawAbove(sketch, mark, shape.Face);
        return sketch.Finish(alt);
    }
}
