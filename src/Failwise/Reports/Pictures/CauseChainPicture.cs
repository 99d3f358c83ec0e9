using Failwise.Causes;

namespace Failwise.Reports.Pictures;

/// <summary>From the root causes down to the damage: one ladder for each leading root, with the probability of every rung.</summary>
internal sealed class CauseChainPicture
{
    private const int MostRoots = 3, MostWays = 2, MostMarks = 4, Indent = 17, Gap = 6;
    private readonly SvgCanvas canvas = new();
    private readonly HashSet<string> drawn = new(StringComparer.Ordinal);
    private double y = 4;

    /// <summary>The picture, or null when no root leads.</summary>
    public static Picture? Draw(Diagnosis diagnosis)
    {
        RankedCause[] roots = [.. Leading(diagnosis.Causes).Where(r => r.Chains.Count > 0).Take(MostRoots)];
        if (roots.Length == 0)
        {
            return null;
        }

        CauseChainPicture picture = new();
        foreach (RankedCause root in roots)
        {
            picture.Root(root);
        }

        string says = string.Join("; ", roots.Select(r => string.Join(", then ", r.Chains[0].Where(s => s.Probability is not null).Select(s => $"{s.Says} {Phrases.Percent(s.Probability!.Value)}"))));
        return picture.canvas.Finish("cause-chain", $"How the causes lead to the damage. {says}.");
    }

    /// <summary>The roots that a report speaks of first: the named or contested ones, and whatever else is at least possible.</summary>
    internal static IEnumerable<RankedCause> Leading(CauseRanking causes) =>
        causes.Verdict.Kind == VerdictKind.NormalWear ? [] : causes.Ranked.Where(r => causes.Verdict.Roots.Contains(r.Cause.Id) || r.Probability >= 0.2);

    private void Root(RankedCause root)
    {
        Box(0, root.Cause.Title, root.Probability, "box root");
        double under = y - Gap;
        if (root.After is { } before)
        {
            y = canvas.Block(4 + Indent, y + 9, canvas.Width - Indent - 20, $"It may have come from: {before.Root.Title}") - 7;
        }

        foreach (IReadOnlyList<ChainStep> way in root.Chains.Take(MostWays))
        {
            ChainStep[] marks = [.. way.Where(s => s.Probability is null && !drawn.Contains(s.Id))];
            if (marks.Length > 0)
            {
                Way(under, way, marks);
            }
        }

        y += 14;
    }

    private void Way(double from, IReadOnlyList<ChainStep> way, IReadOnlyList<ChainStep> marks)
    {
        int depth = 1;
        foreach (ChainStep step in way.Where(s => s.Probability is not null).Skip(1))
        {
            bool known = !drawn.Add(step.Id);
            Elbow(depth, from);
            Box(depth, step.Says, step.Probability!.Value, known ? "box dash" : "box");
            from = y - Gap;
            depth++;
        }

        Marks(depth, from, [.. marks.Select(m => m.Says)]);
        drawn.UnionWith(marks.Select(m => m.Id));
    }

    private void Box(int depth, string title, double probability, string style)
    {
        double x = 4 + depth * Indent, room = canvas.Width - x - 6;
        IReadOnlyList<string> lines = SvgCanvas.Wrap(title, room - 90);
        double height = Math.Max(26, lines.Count * SvgCanvas.Line + 11);
        canvas.Rectangle(x, y, room, height, style, 4);
        for (int i = 0; i < lines.Count; i++)
        {
            canvas.Text(x + 9, y + 17 + i * SvgCanvas.Line, lines[i], depth == 0 ? "b" : "t");
        }

        canvas.Rectangle(x + room - 78, y + height / 2 - 4, 34, 8, "meter");
        canvas.Rectangle(x + room - 78, y + height / 2 - 4, 34 * probability, 8, "ink");
        canvas.Text(x + room - 8, y + height / 2 + 4, Phrases.ShortPercent(probability), "e b s");
        y += height + Gap;
    }

    private void Marks(int depth, double from, IReadOnlyList<string> says)
    {
        double x = 4 + depth * Indent;
        foreach (string mark in says.Take(MostMarks).Append(says.Count > MostMarks ? $"and {says.Count - MostMarks} more marks" : null).OfType<string>())
        {
            Elbow(depth, from);
            canvas.Circle(x + 3, y + 9, 3, "ink");
            y = canvas.Block(x + 12, y + 13, canvas.Width - x - 20, mark) - 9;
        }

        y += 6;
    }

    /// <summary>The line from a rung to the next one: down, then right, with a head.</summary>
    private void Elbow(int depth, double from)
    {
        double x = 4 + depth * Indent - 9, at = y + 9;
        canvas.Segment(x, from, x, at, "o");
        canvas.Segment(x, at, x + 9, at, "o");
        canvas.Path(FormattableString.Invariant($"M{x + 9:0.#} {at:0.#}l-5 -3v6Z"), at + 3, "ink");
    }
}
