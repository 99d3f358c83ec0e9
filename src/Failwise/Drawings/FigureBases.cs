using static Failwise.Drawings.Sketch;

namespace Failwise.Drawings;

/// <summary>What several figures start from: a part seen from the side that shows the mark best.</summary>
internal static class FigureBases
{
    public const string Crown = "M22 38A38 32 0 1 1 98 38A38 32 0 1 1 22 38Z";
    public const string Shell = "M8 16H112V60H8Z";
    public const string Tooth = "M28 60L38 12H82L92 60Z";

    public static Sketch ShellFace(this Sketch s) => s.White(Shell, 3).Path("M8 30H2V40H8", thick: 3);

    public static Sketch ShaftSide(this Sketch s) => s.White("M6 20H114V56H6Z", 3).Dashed("M2 38H118", 1);

    public static Sketch BoltSide(this Sketch s) => s.White("M6 16H28V60H6Z", 3).White("M28 27H114V49H28Z", 3);

    public static Sketch ToothFace(this Sketch s) => s.White("M2 70Q20 66 28 60L38 12H82L92 60Q100 66 118 70", 3);

    /// <summary>A lip seal from its open side: case, lip and the edge that touches the shaft.</summary>
    public static Sketch LipFace(this Sketch s) => s.Ring(60, 38, 35, 3).Ring(60, 38, 29, 1).Ring(60, 38, 14, 2.5);

    /// <summary>The cut through a groove with its cover, and what stands in the groove.</summary>
    public static Sketch Groove(this Sketch s, Action ring)
    {
        s.White("M2 30H34V68H86V30H118V75H2Z", 2).White("M2 2H118V24H2Z", 2);
        ring();
        return s;
    }

    /// <summary>A lip seal cut through above its shaft; the lip as given.</summary>
    public static Sketch SealCut(this Sketch s, string lip) => s.White("M4 56H116V72H4Z", 3).Path("M100 48V8H58", thick: 5).Path(lip, thick: 5);

    /// <summary>A seal bore cut through, and the seal in it as given.</summary>
    public static Sketch SealBore(this Sketch s, string seal) => s.White("M6 22H32V74H6Z", 2).White("M88 22H114V74H88Z", 2).Grey(seal).Path(seal, thick: 3);

    public static Sketch PistonSide(this Sketch s) => s.White("M26 6H94V70H26Z", 3).Line(26, 13, 94, 13).Line(26, 19, 94, 19).Line(26, 25, 94, 25);

    public static Sketch CrownTop(this Sketch s) => s.White(Crown, 3);

    public static Sketch ValveHead(this Sketch s) => s.Ring(60, 38, 34, 3);

    public static Sketch BoreSide(this Sketch s) => s.White("M22 14V66H98V14", 3).Path("M22 14Q60 0 98 14Q60 28 22 14Z", thick: 3);

    public static Sketch HeadGasket(this Sketch s, double bore = 17) => s.White("M6 12H114V64H6Z", 3).Ring(38, 38, bore).Ring(82, 38, bore);

    /// <summary>A dipstick with its two marks and the oil on it.</summary>
    public static Sketch Dipstick(this Sketch s, double oil) => s.White("M50 2H70V72Q60 76 50 72Z", 3).Grey($"M51.5 {N(oil)}H68.5V71Q60 74 51.5 71Z").Line(50, 34, 70, 34, 3).Line(50, 58, 70, 58, 3);

    /// <summary>A toothed belt from the side with the teeth that are left.</summary>
    public static Sketch ToothedBelt(this Sketch s, Func<int, bool> left)
    {
        s.White("M4 22H116V38H4Z", 2.5);
        for (int i = 0; i < 7; i++)
        {
            double x = 8 + (i * 15.5);
            if (left(i))
            {
                s.White($"M{N(x)} 38L{N(x + 2)} 52H{N(x + 9)}L{N(x + 11)} 38Z", 2.5);
            }
            else
            {
                s.Path($"M{N(x)} 40l3 -4l3 5l3 -4l2 3", thick: 1.3);
            }
        }

        return s;
    }

    /// <summary>Sprocket teeth in a row; each is given by the path of one tooth that starts at its left foot.</summary>
    public static Sketch Sprocket(this Sketch s, string tooth)
    {
        for (int i = 0; i < 4; i++)
        {
            s.White($"M{N(4 + (i * 28))} 62{tooth}", 2.5);
        }

        return s.White("M2 62H118V74H2Z", 2.5);
    }

    /// <summary>Marks set round a point at equal angles, from one radius to another.</summary>
    public static Sketch Rays(this Sketch s, (double X, double Y) middle, int count, double from, double to, double thick = 1.5)
    {
        for (int i = 0; i < count; i++)
        {
            (double sin, double cos) = Math.SinCos(i * 2 * Math.PI / count);
            s.Line(middle.X + (from * cos), middle.Y + (from * sin), middle.X + (to * cos), middle.Y + (to * sin), thick);
        }

        return s;
    }

    public static Sketch Dots(this Sketch s, double r, params ReadOnlySpan<(double X, double Y)> at)
    {
        foreach ((double x, double y) in at)
        {
            s.Dot(x, y, r);
        }

        return s;
    }

    /// <summary>Dots spread evenly over a box, the same ones each time.</summary>
    public static Sketch Spread(this Sketch s, Box box, int count, double r)
    {
        MarkStrokes.Scatter(box, count, (x, y, i) => s.Dot(x, y, r));
        return s;
    }

    /// <summary>Equal lines side by side.</summary>
    public static Sketch Lines(this Sketch s, (double X1, double Y1, double X2, double Y2) first, double dx, double dy, int count, double thick = 1.3)
    {
        for (int i = 0; i < count; i++)
        {
            s.Line(first.X1 + (i * dx), first.Y1 + (i * dy), first.X2 + (i * dx), first.Y2 + (i * dy), thick);
        }

        return s;
    }

    public static Sketch Up(this Sketch s, double x, double from, double to) => s.Line(x, from, x, to, 3).Path($"M{N(x - 6)} {N(to + 8)}L{N(x)} {N(to)}L{N(x + 6)} {N(to + 8)}", thick: 3);

    public static Sketch Down(this Sketch s, double x, double from, double to) => s.Line(x, from, x, to, 3).Path($"M{N(x - 6)} {N(to - 8)}L{N(x)} {N(to)}L{N(x + 6)} {N(to - 8)}", thick: 3);
}
