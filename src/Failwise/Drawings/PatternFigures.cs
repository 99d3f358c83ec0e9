using static Failwise.Drawings.Sketch;

namespace Failwise.Drawings;

/// <summary>Patterns that are known by where something lies on the face, not by the kind of mark: each has a drawing of its own.</summary>
internal static class PatternFigures
{
    private const string Flank = "M12 24L108 10V66H12Z";
    private const string Ring = "M6 12H114V64H6Z";

    private static readonly Dictionary<string, Action<Sketch>> ByLie = new(StringComparer.Ordinal)
    {
        ["one-origin"] = s => Face(s, 3).Dot(28, 38, 3.5),
        ["subsurface-origin"] = s => Face(s, 0).Ring(42, 38, 8, 1.3).Ring(42, 38, 13, 1.3).Dot(42, 38, 3.5),
        ["many-origins"] = s => ManyOrigins(s),
        ["origins-all-round"] = s => AllRound(s),
        ["opposed-origins"] = s => Opposed(s),
        ["final-zone-large"] = s => FinalZone(s, 46, 1),
        ["final-zone-small"] = s => FinalZone(s, 80, 4),
        ["pore-at-origin"] = s => Face(s, 3).Path("M30 32Q37 30 36 38Q38 45 31 43Q28 38 30 32Z", filled: true),
        ["nick-at-origin"] = s => Face(s, 3).White("M24 32L35 38L24 44Z"),
        ["pattern-centred"] = s => Patch(s, 56, 42, 24, 9),
        ["pattern-toe"] = s => Patch(s, 28, 44, 13, 9),
        ["pattern-heel"] = s => Patch(s, 93, 40, 13, 11),
        ["pattern-shallow"] = s => Patch(s, 62, 26, 22, 5),
        ["pattern-deep"] = s => Patch(s, 60, 60, 30, 5),
        ["trace-centred"] = s => Rings(s, "M6 16H114V24H6Z", "M40 52H80V60H40Z"),
        ["trace-off-centre"] = s => Rings(s, "M6 10H114V18H6Z", "M6 58H114V66H6Z"),
        ["trace-both-rings-full"] = s => Rings(s, "M6 12H114V28H6Z", "M6 48H114V64H6Z"),
        ["trace-oblique"] = s => Trace(s, "M6 18Q33 18 60 38T114 56V62Q87 64 60 48T6 28Z"),
        ["trace-two-zones"] = s => Trace(s, "M18 38Q30 26 42 38Q30 50 18 38ZM78 38Q90 26 102 38Q90 50 78 38Z"),
        ["lip-turned"] = s => s.White("M4 56H116V72H4Z", 3).Path("M100 48V8H58", thick: 5).Path("M58 8L52 30L26 44L34 50", thick: 5),
        ["coil-bound"] = s => Coils(s),
        ["stripped-thread"] = s => Thread(s, torn: true),
        ["cross-threaded"] = s => Thread(s, torn: false),
        ["gap-butted"] = s => s.Path("M57 10A30 30 0 1 0 63 10", thick: 5).Line(57, 3, 57, 17, 3).Line(63, 3, 63, 17, 3).Path("M43 4L51 8L43 12M77 4L69 8L77 12"),
        ["lead-spiral"] = s => Spiral(s),
        ["run-off"] = s => RunOff(s),
        ["jumped"] = s => Jumped(s),
        ["out-of-line"] = s => OutOfLine(s),
    };

    private static readonly Dictionary<string, Action<Sketch>> ById =
        ByLie.Select(f => (Id: f.Key, Draw: f.Value)).Concat(SealFigures.All).Concat(FastenerFigures.All).ToDictionary(f => f.Id, f => f.Draw, StringComparer.Ordinal);

    /// <summary>The drawing; null when the pattern has none of its own.</summary>
    public static Action<Sketch>? Of(string pattern) => ById.GetValueOrDefault(pattern);

    /// <summary>The patterns that have one, in order.</summary>
    public static IReadOnlyList<string> Ids => [.. ById.Keys.Order(StringComparer.Ordinal)];

    private static Sketch Face(Sketch s, int lines)
    {
        s.Ring(60, 38, 32, 3);
        for (int i = 0; i < lines; i++)
        {
            Beach(s, 28, 12 + (12 * i), 1);
        }

        return s;
    }

    /// <summary>A line where the crack rested, round an origin on the left (+1) or right (-1) edge of the face.</summary>
    private static void Beach(Sketch s, double x, double r, int side)
    {
        // The line meets the edge where both circles cross: at equal distance 32 from the middle of the face and r from the origin.
        double dx = r * r / 64, dy = Math.Sqrt((r * r) - (dx * dx));
        s.Path($"M{N(x + (side * dx))} {N(38 - dy)}A{N(r)} {N(r)} 0 0 {(side > 0 ? 1 : 0)} {N(x + (side * dx))} {N(38 + dy)}", thick: 1.3);
    }

    private static void ManyOrigins(Sketch s)
    {
        Face(s, 0);
        foreach (double angle in new[] { -50, -25, 0, 25, 50 })
        {
            (double sin, double cos) = Math.SinCos(angle * Math.PI / 180);
            s.Dot(60 - (32 * cos), 38 + (32 * sin), 3);
        }

        // The steps stand between the origins.
        foreach (double angle in new[] { -37.5, -12.5, 12.5, 37.5 })
        {
            (double sin, double cos) = Math.SinCos(angle * Math.PI / 180);
            s.Line(60 - (32 * cos), 38 + (32 * sin), 60 - (23 * cos), 38 + (23 * sin), 1.5);
        }

        Beach(s, 28, 30, 1);
    }

    private static void AllRound(Sketch s)
    {
        Face(s, 0).Ring(60, 38, 22, 1.3).Ring(60, 38, 15, 1.3).Grey("M52 38A8 8 0 1 0 68 38A8 8 0 1 0 52 38Z");
        for (int i = 0; i < 12; i++)
        {
            (double sin, double cos) = Math.SinCos(i * Math.PI / 6);
            s.Dot(60 + (32 * cos), 38 + (32 * sin), 2.5);
        }
    }

    private static void Opposed(Sketch s)
    {
        Face(s, 2).Dot(28, 38, 3.5).Dot(92, 38, 3.5).Grey("M56 8H64V68H56Z");
        Beach(s, 92, 12, -1);
        Beach(s, 92, 24, -1);
    }

    private static void FinalZone(Sketch s, double from, int lines) =>
        s.Clipped($"c-final-{N(from)}", "M28 38A32 32 0 1 0 92 38A32 32 0 1 0 28 38Z", () => Rough(s, from)).Ring(60, 38, 32, 3)
            .Clipped($"c-beach-{N(from)}", "M28 38A32 32 0 1 0 92 38A32 32 0 1 0 28 38Z", () => Enumerable.Range(1, lines).ToList().ForEach(i => Beach(s, 28, 11 * i, 1)))
            .Dot(28, 38, 3.5);

    private static void Rough(Sketch s, double from)
    {
        s.Grey($"M{N(from)} 0H120V76H{N(from)}Z");
        for (double y = 8; y < 72; y += 9)
        {
            s.Path($"M{N(from)} {N(y)}l5 -4l5 5l6 -5l5 5l6 -5l5 5l6 -5l6 5", thick: 1.3);
        }
    }

    private static void Patch(Sketch s, double x, double y, double rx, double ry) => s.White(Flank, 3).Clipped($"c-patch-{N(x)}-{N(y)}", Flank, () =>
    {
        string oval = $"M{N(x - rx)} {N(y)}A{N(rx)} {N(ry)} 0 1 0 {N(x + rx)} {N(y)}A{N(rx)} {N(ry)} 0 1 0 {N(x - rx)} {N(y)}Z";
        s.Grey(oval).Path(oval, thick: 1.5);
    });

    private static void Trace(Sketch s, string band) => s.White(Ring, 3).Grey(band).Path(band, thick: 1.3).Line(6, 12, 114, 12, 3).Line(6, 64, 114, 64, 3);

    /// <summary>The tracks of both rings, unrolled one above the other.</summary>
    private static void Rings(Sketch s, string above, string below) =>
        s.White("M6 6H114V34H6Z", 3).White("M6 42H114V70H6Z", 3).Grey(above).Path(above, thick: 1.3).Grey(below).Path(below, thick: 1.3);

    private static void Coils(Sketch s)
    {
        for (double y = 10; y < 60; y += 11)
        {
            s.White($"M36 {N(y + 5)}L84 {N(y - 3)}Q90 {N(y + 1)} 84 {N(y + 6)}L36 {N(y + 13)}Q30 {N(y + 9)} 36 {N(y + 5)}Z");
            s.Line(48, y + 11, 60, y + 9, 4);
        }
    }

    private static void Thread(Sketch s, bool torn)
    {
        s.White("M10 14H30V62H10Z", 3).White("M30 24H110V52H30Z");
        for (double x = 38; x < 108; x += 7)
        {
            bool hurt = x is > 60 and < 95;
            if (hurt && torn)
            {
                s.Path($"M{N(x)} 24l3 2l-2 3M{N(x)} 52l2 -3l3 2", thick: 1.3);
            }
            else
            {
                s.Line(x, 24, x + (hurt ? 16 : 4), 52);
            }
        }
    }

    private static void Spiral(Sketch s)
    {
        s.White("M8 20H112V56H8Z", 3).Grey("M44 21H76V55H44Z");
        for (double x = 46; x < 76; x += 5)
        {
            s.Line(x, 21, x - 4, 55, 1.3);
        }
    }

    private static void RunOff(Sketch s) =>
        s.White("M30 16H90V60H30Z", 3).White("M24 8H30V68H24Z").White("M90 8H96V68H90Z").Grey("M66 2H106V74H66Z").Path("M66 2V74M106 2V74").Path("M46 38H60M54 32L60 38L54 44");

    private static void Jumped(Sketch s) =>
        s.Ring(46, 40, 26, 3).Ring(46, 40, 5).Line(46, 14, 46, 24, 4).White("M64 2L72 12L60 14Z").Path("M46 6Q54 5 60 8M54 3L60 8L54 12", thick: 1.5);

    private static void OutOfLine(Sketch s)
    {
        foreach ((double x, double y) in new[] { (14.0, 38.0), (50, 46), (86, 38) })
        {
            s.White($"M{N(x)} {N(y - 24)}H{N(x + 20)}V{N(y + 24)}H{N(x)}Z").White($"M{N(x)} {N(y - 10)}H{N(x + 20)}V{N(y + 10)}H{N(x)}Z");
        }

        s.Dashed("M4 38H116", 1.5);
    }
}
