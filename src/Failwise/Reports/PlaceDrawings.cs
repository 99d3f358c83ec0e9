using System.Text;
using Failwise.Knowledge;

namespace Failwise.Reports;

/// <summary>A line drawing of a part with its place words written where they belong.</summary>
/// <param name="Places">Place words that the drawing shows.</param>
internal sealed record PlaceDrawing(string Name, string Alt, IReadOnlyList<string> Parts, IReadOnlyList<string> Places, string Svg);

/// <summary>Own drawings: a bearing shell unrolled, a gear flank, a bore, a broken face. Black on white, words beside every mark.</summary>
internal static class PlaceDrawings
{
    public static IReadOnlyList<PlaceDrawing> All { get; } = [Shell(), Flank(), Bore(), BrokenFace()];

    /// <summary>The drawings on which a pattern of these parts and places can be shown.</summary>
    public static IEnumerable<PlaceDrawing> For(KnowledgeBase knowledge, IReadOnlyList<string> parts, IReadOnlyList<string> places) =>
        All.Where(d => d.Places.Any(places.Contains) || (places.Count == 0 && parts.Any(p => d.Parts.Any(broad => knowledge.Parts.ContainsKey(broad) && knowledge.PartIs(p, broad)))))
            .Where(d => parts.Any(p => d.Parts.Any(broad => knowledge.Parts.ContainsKey(broad) && knowledge.PartIs(p, broad))));

    private static PlaceDrawing Shell()
    {
        Picture p = new(560, 330);
        p.Text(280, 22, "Both half shells unrolled, seen from the shaft");
        foreach ((int y, string name) in new[] { (45, "upper"), (185, "lower") })
        {
            p.Box(110, y, 340, 110);
            p.Text(60, y + 60, name);
            p.Dashed(110, y + 14, 450, y + 14);
            p.Dashed(110, y + 96, 450, y + 96);
            p.Box(110, y, 26, 110, true);
            p.Box(424, y, 26, 110, true);
            p.Text(280, y + 60, "crown-zone");
            p.Circle(280, y + 82, 6);
        }

        p.Text(505, 100, "parting-line");
        p.Line(462, 100, 440, 100);
        p.Text(280, 36, "front-edge");
        p.Text(280, 315, "rear-edge");
        p.Text(505, 140, "oil-hole");
        p.Line(480, 136, 288, 128);
        return new PlaceDrawing("shell", "Bearing shells unrolled: crown in the middle, parting lines at both ends, edges along the sides", ["plain-bearing"],
            ["upper", "lower", "crown-zone", "parting-line", "front-edge", "rear-edge", "both-edges", "one-edge", "oil-hole", "oil-groove", "middle-band"], p.ToString());
    }

    private static PlaceDrawing Flank()
    {
        Picture p = new(560, 300);
        p.Text(280, 22, "One tooth flank, seen square on");
        p.Box(90, 50, 380, 180);
        p.Dashed(90, 130, 470, 130);
        p.Text(280, 46, "tip");
        p.Text(280, 95, "addendum");
        p.Text(280, 146, "pitch-line");
        p.Text(280, 190, "dedendum");
        p.Text(280, 250, "root-fillet, root");
        p.Text(45, 140, "toe");
        p.Text(515, 140, "heel");
        p.Text(130, 68, "corner");
        p.Text(280, 285, "middle-of-tooth between toe and heel; end-of-tooth at either");
        return new PlaceDrawing("flank", "A gear tooth flank: tip above, root below, pitch line across, toe left and heel right", ["gear"],
            ["drive-flank", "coast-flank", "both-flanks", "root", "tip", "pitch-line", "dedendum", "addendum", "root-fillet", "toe", "heel", "end-of-tooth", "middle-of-tooth", "corner"], p.ToString());
    }

    private static PlaceDrawing Bore()
    {
        Picture p = new(560, 330);
        p.Text(280, 22, "Bore and piston, seen along the shaft");
        p.Line(170, 40, 170, 300);
        p.Line(390, 40, 390, 300);
        p.Box(178, 90, 204, 130);
        p.Dashed(170, 75, 390, 75);
        p.Circle(280, 170, 20);
        p.Text(90, 80, "top-end");
        p.Text(90, 170, "mid-height");
        p.Text(90, 280, "bottom-end");
        p.Text(460, 150, "thrust-side");
        p.Text(280, 60, "where the top ring turns");
        p.Text(280, 215, "pin-sides: towards you and away");
        return new PlaceDrawing("bore", "A bore with its piston: ring turning point at the top, thrust side at the right", ["cylinder-bore", "cylinder-liner", "piston", "piston-skirt", "piston-ring"],
            ["thrust-side", "anti-thrust-side", "pin-sides", "both-sides", "one-side", "top-end", "mid-height"], p.ToString());
    }

    private static PlaceDrawing BrokenFace()
    {
        Picture p = new(560, 330);
        p.Text(280, 22, "A fatigue break, seen on its face");
        p.Circle(280, 175, 125);
        p.Circle(160, 175, 7);
        for (int r = 40; r <= 160; r += 30)
        {
            p.Arc(155, 175, r);
        }

        p.Text(75, 160, "origin");
        p.Line(105, 163, 150, 172);
        p.Text(270, 120, "beach marks");
        p.Text(360, 235, "last piece to break");
        return new PlaceDrawing("broken-face", "A fatigue fracture face: origin at the edge, beach marks round it, rough last part opposite", ["shaft", "fastener", "fracture-face", "crankshaft", "connecting-rod"],
            ["surface", "subsurface", "inclusion", "corner-origin", "many-origins", "single-origin", "journal-fillet", "oil-hole-edge", "keyway", "spline-root", "shoulder", "thread-root", "under-head"], p.ToString());
    }

    private sealed class Picture
    {
        private readonly StringBuilder svg = new();

        public Picture(int width, int height) => svg.Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\" font-family=\"sans-serif\" font-size=\"14\" text-anchor=\"middle\">\n<rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\n");

        public void Text(int x, int y, string text) => svg.Append($"<text x=\"{x}\" y=\"{y}\" fill=\"#000\">{text}</text>\n");

        public void Box(int x, int y, int w, int h, bool filled = false) => svg.Append($"<rect x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" fill=\"{(filled ? "#ddd" : "none")}\" stroke=\"#000\"/>\n");

        public void Circle(int x, int y, int r) => svg.Append($"<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\" fill=\"none\" stroke=\"#000\"/>\n");

        public void Line(int x1, int y1, int x2, int y2) => svg.Append($"<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\" stroke=\"#000\"/>\n");

        public void Dashed(int x1, int y1, int x2, int y2) => svg.Append($"<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\" stroke=\"#000\" stroke-dasharray=\"5 4\"/>\n");

        public void Arc(int x, int y, int r) => svg.Append($"<path d=\"M {x + r * 0.5:0} {y - r * 0.86:0} A {r} {r} 0 0 1 {x + r * 0.5:0} {y + r * 0.86:0}\" fill=\"none\" stroke=\"#555\"/>\n");

        public override string ToString() => svg + "</svg>\n";
    }
}
