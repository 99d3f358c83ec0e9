using Failwise.Knowledge;

namespace Failwise.Drawings;

/// <summary>The outline of a part, the area on it where marks are seen, and which way it runs.</summary>
/// <param name="Area">Path of the working face.</param>
/// <param name="Upright">True when the part slides up and down in the drawing, false when from left to right.</param>
internal sealed record PartShape(string Name, string Area, Box Face, bool Upright, Action<Sketch> Outline)
{
    private static readonly PartShape Block = new("part", "M12 12H108V64H12Z", new(12, 12, 96, 52), false, s => s.White("M12 12H108V64H12Z", 3));

    /// <summary>Broad parts, the narrow ones first, and how they look.</summary>
    private static readonly (string Part, PartShape Shape)[] Known =
    [
        ("cam-lobe", Lobe()), ("cam-follower", Follower()), ("valve", Valve()), ("plain-bearing", Shell()), ("rolling-bearing", Race()), ("spline", Bar()),
        ("timing-sprocket", Tooth()), ("gear", Tooth()), ("fastener", Bolt()), ("journal", Journal()), ("piston", Piston()), ("piston-ring", PistonRing()),
        ("cylinder-bore", Bore()), ("crankshaft", Journal()), ("piston-pin", Bar()), ("shaft", Bar()), ("seal", Gasket()), ("oil", Jar()), ("coolant", Jar()),
        ("gear-oil", Jar()), ("oil-debris", Dish()), ("pickup-screen", Mesh()), ("oil-filter", Mesh()), ("valve-spring", Spring()), ("relief-spring", Spring()),
        ("thrust-washer", Washer()),
    ];

    public static PartShape Of(KnowledgeBase knowledge, string part) =>
        Known.FirstOrDefault(k => knowledge.Parts.ContainsKey(k.Part) && knowledge.PartIs(part, k.Part)).Shape ?? Block;

    private static PartShape Shell() => new("shell", "M8 16H112V60H8Z", new(8, 16, 104, 44), false,
        s => s.White("M8 16H112V60H8Z", 3).Path("M8 30H2V40H8", thick: 3).Ring(60, 50, 4));

    private static PartShape Journal() => new("journal", "M26 20H94V56H26Z", new(26, 20, 68, 36), false,
        s => s.White("M8 4H26V72H8Z", 3).White("M94 4H112V72H94Z", 3).White("M26 20H94V56H26Z", 3).Ring(60, 38, 3));

    private static PartShape Bore() => new("bore", "M22 16V66H98V16Q60 30 22 16Z", new(22, 16, 76, 50), true,
        s => s.White("M22 14V66H98V14", 3).Path("M22 14Q60 0 98 14Q60 28 22 14Z", thick: 3));

    private static PartShape Piston() => new("piston", "M26 30H94V70H26Z", new(26, 30, 68, 40), true,
        s => s.White("M26 6H94V70H26Z", 3).Line(26, 13, 94, 13).Line(26, 19, 94, 19).Line(26, 25, 94, 25).Ring(60, 48, 8));

    private static PartShape PistonRing() => new("ring", "M14 24Q60 -8 106 24V44Q60 12 14 44Z", new(14, 8, 92, 36), false,
        s => s.White("M14 24Q60 -8 106 24V44Q60 12 14 44Z", 3).Path("M14 44Q22 70 54 70M106 44Q98 70 66 70", thick: 3));

    private static PartShape Tooth() => new("tooth", "M28 60L38 12H82L92 60Z", new(33, 12, 54, 48), true,
        s => s.White("M2 70Q20 66 28 60L38 12H82L92 60Q100 66 118 70", 3).Dashed("M33 36H87", 1));

    private static PartShape Race() => new("race", "M6 22Q60 66 114 22V46Q60 90 6 46Z", new(6, 26, 108, 42), false,
        s => s.White("M6 22Q60 66 114 22V46Q60 90 6 46Z", 3).White("M60 4a14 14 0 1 1 0 28a14 14 0 1 1 0 -28Z", 3));

    private static PartShape Lobe() => new("lobe", "M60 4Q74 4 80 28A26 26 0 1 1 40 28Q46 4 60 4Z", new(36, 4, 48, 30), false,
        s => s.White("M60 4Q74 4 80 28A26 26 0 1 1 40 28Q46 4 60 4Z", 3).Ring(60, 46, 9));

    private static PartShape Follower() => new("follower", "M20 24A40 14 0 1 1 100 24A40 14 0 1 1 20 24Z", new(20, 10, 80, 28), false,
        s => s.White("M20 24V56A40 14 0 0 0 100 56V24", 3).White("M20 24A40 14 0 1 1 100 24A40 14 0 1 1 20 24Z", 3));

    private static PartShape Valve() => new("valve", "M18 58H102L96 70H24Z", new(18, 58, 84, 12), false,
        s => s.White("M54 2H66V34Q68 52 102 58L96 70H24L18 58Q52 52 54 34Z", 3).Line(18, 58, 102, 58));

    private static PartShape Bar() => new("shaft", "M6 22H114V54H6Z", new(6, 22, 108, 32), false, s => s.White("M6 22H114V54H6Z", 3).Dashed("M2 38H118", 1));

    private static PartShape Bolt() => new("bolt", "M30 28H114V48H30Z", new(30, 28, 84, 20), false,
        s => s.White("M6 16H30V60H6Z", 3).White("M30 28H114V48H30Z", 3).Path("M76 28L80 48M84 28L88 48M92 28L96 48M100 28L104 48", thick: 1.5));

    private static PartShape Gasket() => new("gasket", "M6 12H114V64H6Z", new(6, 12, 108, 52), false,
        s => s.White("M6 12H114V64H6Z", 3).Ring(36, 38, 15).Ring(84, 38, 15).Ring(12, 18, 2.5).Ring(108, 18, 2.5).Ring(12, 58, 2.5).Ring(108, 58, 2.5));

    private static PartShape Jar() => new("jar", "M34 24H86V70H34Z", new(34, 24, 52, 46), false, s => s.White("M34 10V70H86V10", 3).Line(30, 10, 90, 10, 3).Line(34, 24, 86, 24));

    private static PartShape Dish() => new("dish", "M12 30H108L92 66H28Z", new(24, 30, 72, 34), false, s => s.White("M4 30H116L96 68H24Z", 3));

    private static PartShape Mesh() => new("screen", "M16 10H104V66H16Z", new(16, 10, 88, 56), false,
        s => s.White("M16 10H104V66H16Z", 3).Path("M30 10V66M44 10V66M58 10V66M72 10V66M86 10V66M16 24H104M16 38H104M16 52H104", thick: 1));

    private static PartShape Spring() => new("spring", "M30 4H90V72H30Z", new(30, 6, 60, 64), true,
        s => s.Path("M34 8H86L34 22H86L34 36H86L34 50H86L34 64H86", thick: 4));

    private static PartShape Washer() => new("thrust-washer", "M8 66A52 58 0 0 1 112 66H80A20 24 0 0 0 40 66Z", new(12, 10, 96, 54), false,
        s => s.White("M8 66A52 58 0 0 1 112 66H80A20 24 0 0 0 40 66Z", 3));
}

/// <summary>A rectangle in a drawing.</summary>
internal readonly record struct Box(double X, double Y, double W, double H)
{
    public double Right => X + W;

    public double Foot => Y + H;
}
