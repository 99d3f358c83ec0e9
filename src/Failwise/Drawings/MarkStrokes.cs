using static Failwise.Drawings.Sketch;

namespace Failwise.Drawings;

/// <summary>The strokes of each family of marks.</summary>
internal static class MarkStrokes
{
    /// <summary>What lies in the face of the part.</summary>
    public static void Draw(Sketch s, MarkKind mark, PartShape shape)
    {
        Box f = shape.Face;
        switch (mark)
        {
            case MarkKind.Smear: Smear(s, f, shape.Upright); break;
            case MarkKind.Grooves: Grooves(s, f, shape.Upright); break;
            case MarkKind.CrossGrooves: Grooves(s, f, !shape.Upright); break;
            case MarkKind.Specks: Scatter(f, 14, (x, y, i) => s.Ring(x, y, 3.5, 1).Dot(x, y, 1.6)); break;
            case MarkKind.Mosaic: Mosaic(s, f); break;
            case MarkKind.Pits: Scatter(f, 13, (x, y, i) => s.Path(Blob(x, y, 2 + i % 3 * 1.4), filled: true, thick: 1)); break;
            case MarkKind.FinePits: Scatter(f, 90, (x, y, i) => s.Dot(x, y, 0.9)); break;
            case MarkKind.Blotches: Scatter(f, 9, (x, y, i) => s.Path(Blob(x, y, 5 + i % 4), thick: 1.5).Grey(Blob(x, y, 4 + i % 4))); break;
            case MarkKind.Tint: Tint(s, f); break;
            case MarkKind.Shine: Shine(s, f); break;
            case MarkKind.Wear: Wear(s, f, shape.Upright); break;
            case MarkKind.EdgeWear: EdgeWear(s, f, shape.Upright); break;
            case MarkKind.Crack: s.Path(Zigzag(f, 0.35), thick: 2.5).Path($"M{N(f.X + f.W * 0.5)} {N(f.Y + f.H * 0.5)}l8 6l-2 6l9 5", thick: 1.5); break;
            case MarkKind.Fretting: Scatter(f, 30, (x, y, i) => s.Path($"M{N(x - 2)} {N(y - 1)}l4 2M{N(x - 1)} {N(y + 2)}l3 -4", thick: 1.2)); break;
            case MarkKind.Deposit: Deposit(s, f); break;
            case MarkKind.Hole: s.Path(Blob(f.X + f.W * 0.5, f.Y + f.H * 0.5, Math.Min(f.W, f.H) * 0.32), filled: true); break;
            case MarkKind.Washboard: Washboard(s, f, shape.Upright); break;
            case MarkKind.Dents: Scatter(f, 8, (x, y, i) => s.Path($"M{N(x - 5)} {N(y)}a5 4 0 0 0 10 0", thick: 2.2)); break;
            case MarkKind.Flakes: Scatter(f, 16, (x, y, i) => s.Path($"M{N(x)} {N(y)}l{3 + i % 3} -2l3 3l-{2 + i % 2} 3Z", filled: i % 2 == 0, thick: 1)); break;
            case MarkKind.Blocked: s.Grey($"M{N(f.X)} {N(f.Y)}H{N(f.Right)}V{N(f.Foot)}H{N(f.X)}Z"); Scatter(f, 60, (x, y, i) => s.Dot(x, y, 1.8)); break;
        }
    }

    /// <summary>What reaches beyond the face: a break through the part, drops, arrows.</summary>
    public static void DrawAbove(Sketch s, MarkKind mark, Box f)
    {
        double cx = f.X + f.W / 2, cy = f.Y + f.H / 2;
        switch (mark)
        {
            case MarkKind.Break: s.White($"M{N(cx - 6)} 0l8 19l-10 18l9 20l-6 19h14l6 -19l-9 -20l10 -18l-8 -19Z", 2.5); break;
            case MarkKind.Bend: s.Path($"M8 {N(cy + 14)}Q60 {N(cy - 34)} 112 {N(cy + 14)}", thick: 4).Path($"M60 {N(cy + 22)}V{N(cy - 2)}m-6 8l6 -8l6 8", thick: 3); break;
            case MarkKind.Wet:
                foreach ((double x, double y) in new[] { (cx - 22, cy - 2), (cx, cy + 8), (cx + 22, cy - 4) })
                {
                    s.Path($"M{N(x)} {N(y - 9)}q9 14 0 16q-9 -2 0 -16Z", filled: true, thick: 1);
                }

                break;
            case MarkKind.Stuck: Arrow(s, cx - 30, cx - 8, cy).Line(cx, cy - 16, cx, cy + 16, 5); Arrow(s, cx + 30, cx + 8, cy); break;
            case MarkKind.Loose: Arrow(s, cx, cx - 30, cy); Arrow(s, cx, cx + 30, cy); break;
        }
    }

    private static Sketch Arrow(Sketch s, double from, double to, double y)
    {
        double back = from < to ? -8 : 8;
        return s.Line(from, y, to, y, 4).Path($"M{N(to + back)} {N(y - 7)}L{N(to)} {N(y)}L{N(to + back)} {N(y + 7)}", thick: 4);
    }

    private static void Smear(Sketch s, Box f, bool upright)
    {
        for (int i = 0; i < 6; i++)
        {
            double u = 0.12 + 0.15 * i, start = 0.12 + 0.1 * (i * 3 % 5), length = 0.45 + 0.07 * (i % 3);
            if (upright)
            {
                double x = f.X + u * f.W, y = f.Y + start * f.H * 0.6;
                s.Path($"M{N(x)} {N(y)}q4 {N(length * f.H / 2)} 0 {N(length * f.H)}l3 3l2 -4", thick: 3.5);
            }
            else
            {
                double x = f.X + start * f.W * 0.6, y = f.Y + u * f.H;
                s.Path($"M{N(x)} {N(y)}q{N(length * f.W / 2)} 4 {N(length * f.W)} 0l4 2l-3 3", thick: 3.5);
            }
        }
    }

    private static void Grooves(Sketch s, Box f, bool upright)
    {
        foreach ((double at, double thick) in new[] { (0.15, 1.2), (0.3, 3), (0.42, 1.2), (0.55, 2), (0.72, 3.5), (0.86, 1.2) })
        {
            if (upright)
            {
                s.Line(f.X + at * f.W, f.Y - 2, f.X + at * f.W, f.Foot + 2, thick);
            }
            else
            {
                s.Line(f.X - 2, f.Y + at * f.H, f.Right + 2, f.Y + at * f.H, thick);
            }
        }
    }

    private static void Mosaic(Sketch s, Box f)
    {
        double x = f.X + f.W * 0.3, y = f.Y + f.H * 0.25, w = f.W * 0.45, h = f.H * 0.55;
        s.Path($"M{N(x)} {N(y)}l{N(w * 0.3)} {N(h * 0.3)}l{N(w * 0.4)} {N(-h * 0.2)}l{N(w * 0.3)} {N(h * 0.4)}M{N(x + w * 0.3)} {N(y + h * 0.3)}l{N(-w * 0.2)} {N(h * 0.5)}"
            + $"M{N(x + w * 0.7)} {N(y + h * 0.1)}l{N(-w * 0.1)} {N(h * 0.6)}l{N(w * 0.35)} {N(h * 0.3)}M{N(x + w * 0.6)} {N(y + h * 0.7)}l{N(-w * 0.5)} {N(h * 0.1)}", thick: 1.8);
        s.Path(Blob(x + w * 0.42, y + h * 0.5, h * 0.17), filled: true, thick: 1).Path(Blob(x + w * 0.95, y + h * 0.75, h * 0.14), filled: true, thick: 1);
    }

    private static void Tint(Sketch s, Box f)
    {
        s.Grey($"M{N(f.X + f.W * 0.25)} {N(f.Y)}H{N(f.X + f.W * 0.75)}V{N(f.Foot)}H{N(f.X + f.W * 0.25)}Z");
        for (double x = f.X + f.W * 0.25 - f.H; x < f.X + f.W * 0.75; x += 7)
        {
            s.Line(Math.Max(x, f.X + f.W * 0.25), f.Y + Math.Max(0, f.X + f.W * 0.25 - x), Math.Min(x + f.H, f.X + f.W * 0.75), f.Y + Math.Min(f.H, f.X + f.W * 0.75 - x), 1.3);
        }
    }

    private static void Shine(Sketch s, Box f)
    {
        double cx = f.X + f.W / 2, cy = f.Y + f.H / 2, r = Math.Min(f.W, f.H) * 0.42;
        s.Dashed($"M{N(cx - 1.6 * r)} {N(cy)}a{N(1.6 * r)} {N(r)} 0 1 0 {N(3.2 * r)} 0a{N(1.6 * r)} {N(r)} 0 1 0 {N(-3.2 * r)} 0", 1.5);
        s.Path($"M{N(cx)} {N(cy - r * 0.8)}L{N(cx + 3)} {N(cy - 3)}L{N(cx + r * 0.8)} {N(cy)}L{N(cx + 3)} {N(cy + 3)}L{N(cx)} {N(cy + r * 0.8)}L{N(cx - 3)} {N(cy + 3)}L{N(cx - r * 0.8)} {N(cy)}L{N(cx - 3)} {N(cy - 3)}Z", thick: 1.5);
    }

    private static void Wear(Sketch s, Box f, bool upright)
    {
        if (upright)
        {
            s.Grey($"M{N(f.X)} {N(f.Y)}q{N(f.W * 0.2)} {N(f.H / 2)} 0 {N(f.H)}Z").Path($"M{N(f.X)} {N(f.Y)}q{N(f.W * 0.2)} {N(f.H / 2)} 0 {N(f.H)}", thick: 2.5);
            return;
        }

        s.Grey($"M{N(f.X + f.W * 0.15)} {N(f.Y)}q{N(f.W * 0.35)} {N(f.H * 0.7)} {N(f.W * 0.7)} 0Z").Path($"M{N(f.X + f.W * 0.15)} {N(f.Y)}q{N(f.W * 0.35)} {N(f.H * 0.7)} {N(f.W * 0.7)} 0", thick: 2.5);
    }

    private static void EdgeWear(Sketch s, Box f, bool upright)
    {
        if (upright)
        {
            s.Grey($"M{N(f.X)} {N(f.Y)}H{N(f.X + f.W * 0.3)}V{N(f.Foot)}H{N(f.X)}Z").Line(f.X + f.W * 0.3, f.Y, f.X + f.W * 0.3, f.Foot, 2.5);
            return;
        }

        s.Grey($"M{N(f.X)} {N(f.Y)}H{N(f.Right)}V{N(f.Y + f.H * 0.3)}H{N(f.X)}Z").Line(f.X, f.Y + f.H * 0.3, f.Right, f.Y + f.H * 0.3, 2.5);
    }

    private static void Deposit(Sketch s, Box f)
    {
        s.Grey($"M{N(f.X)} {N(f.Foot)}V{N(f.Y + f.H * 0.55)}q{N(f.W * 0.15)} {N(-f.H * 0.35)} {N(f.W * 0.3)} 0q{N(f.W * 0.2)} {N(-f.H * 0.4)} {N(f.W * 0.4)} 0q{N(f.W * 0.15)} {N(-f.H * 0.3)} {N(f.W * 0.3)} 0V{N(f.Foot)}Z");
        Scatter(new Box(f.X, f.Y + f.H * 0.5, f.W, f.H * 0.5), 40, (x, y, i) => s.Dot(x, y, 1.5));
    }

    private static void Washboard(Sketch s, Box f, bool upright)
    {
        for (int i = 0; i < 8; i++)
        {
            double at = (i + 0.5) / 8;
            if (upright)
            {
                s.Line(f.X, f.Y + at * f.H, f.Right, f.Y + at * f.H, 2.5);
            }
            else
            {
                s.Line(f.X + at * f.W, f.Y - 2, f.X + at * f.W, f.Foot + 20, 3);
            }
        }
    }

    private static string Zigzag(Box f, double at) =>
        $"M{N(f.X + f.W * at)} {N(f.Y)}l{N(f.W * 0.06)} {N(f.H * 0.2)}l{N(-f.W * 0.05)} {N(f.H * 0.15)}l{N(f.W * 0.14)} {N(f.H * 0.2)}l{N(-f.W * 0.03)} {N(f.H * 0.2)}l{N(f.W * 0.08)} {N(f.H * 0.25)}";

    private static string Blob(double x, double y, double r) =>
        $"M{N(x - r)} {N(y)}q{N(r * 0.2)} {N(-r * 1.1)} {N(r)} {N(-r * 0.9)}t{N(r * 0.9)} {N(r * 0.7)}q{N(r * 0.1)} {N(r * 0.9)} {N(-r * 0.8)} {N(r * 1.1)}t{N(-r * 1.1)} {N(-r * 0.9)}Z";

    /// <summary>Points spread evenly without a grid, the same ones each time.</summary>
    internal static void Scatter(Box f, int count, Action<double, double, int> draw)
    {
        for (int i = 1; i <= count; i++)
        {
            draw(f.X + f.W * (0.05 + 0.9 * (i * 0.754_877_666 % 1)), f.Y + f.H * (0.08 + 0.84 * (i * 0.569_840_291 % 1)), i);
        }
    }
}
