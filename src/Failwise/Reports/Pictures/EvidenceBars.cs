using Failwise.Causes;

namespace Failwise.Reports.Pictures;

/// <summary>What speaks for and against each leading root, as bars from a middle line: against to the left, for to the right.</summary>
internal static class EvidenceBars
{
    private const int MostRoots = 3, MostFor = 6, MostAgainst = 4, Middle = 150;
    private const double Longest = 20;

    /// <summary>The picture, or null when no root leads or nothing was weighed.</summary>
    public static Picture? Draw(Diagnosis diagnosis)
    {
        RankedCause[] roots = [.. CauseChainPicture.Leading(diagnosis.Causes).Where(r => r.For.Any(Phrases.Tells) || r.Against.Any(Phrases.Tells)).Take(MostRoots)];
        if (roots.Length == 0)
        {
            return null;
        }

        SvgCanvas canvas = new();
        double y = 16;
        canvas.Text(Middle - 12, y, "speaks against", "q s e");
        canvas.Text(Middle + 12, y, "speaks for", "q s");
        y += 8;
        foreach (RankedCause root in roots)
        {
            y = canvas.Block(8, y + 18, 384, $"{root.Cause.Title}: {Phrases.Percent(root.Probability)}", "b") - 6;
            double top = y;
            foreach (WeighedEvidence e in root.For.Where(Phrases.Tells).Take(MostFor).Concat(root.Against.Where(Phrases.Tells).Take(MostAgainst)))
            {
                y = canvas.Block(8, y + 12, 384, e.Item.Says, "s", 2) - 8;
                Bar(canvas, y, e);
                y += 20;
            }

            canvas.Segment(Middle, top, Middle, y, "o");
        }

        string says = string.Join(" ", roots.Select(r =>
            $"{r.Cause.Title}: {r.For.Count(Phrases.Tells)} pieces of evidence for, {r.Against.Count(Phrases.Tells)} against{(r.For.Count > 0 ? $"; the strongest for it: {r.For[0].Item.Says.TrimEnd('.')}" : "")}."));
        return canvas.Finish("evidence", $"Evidence for and against as bars. {says}");
    }

    private static void Bar(SvgCanvas canvas, double y, WeighedEvidence e)
    {
        double length = Math.Max(4, Math.Min(Longest, Math.Abs(e.Decibans)) / Longest * 120);
        string says = $"{e.Word}, {Phrases.Decibans(e.Decibans)}";
        if (e.Decibans > 0)
        {
            canvas.Rectangle(Middle, y, length, 11, "for");
            canvas.Text(Middle + length + 5, y + 10, says, "s");
        }
        else
        {
            canvas.Rectangle(Middle - length, y, length, 11, "against");
            canvas.Text(Middle + 6, y + 10, says, "s");
        }
    }
}
