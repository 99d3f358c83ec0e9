using System.Globalization;
using System.Text;

namespace Failwise.Drawings;

/// <summary>A small black-and-white line drawing, 120 by 76 units, as SVG. Holds no text, so that it needs no font and no language.</summary>
internal sealed class Sketch
{
    public const int Width = 120;
    public const int Height = 76;
    private readonly StringBuilder svg = new();

    public Sketch Line(double x1, double y1, double x2, double y2, double thick = 2) =>
        Add($"<path d=\"M{N(x1)} {N(y1)}L{N(x2)} {N(y2)}\" stroke-width=\"{N(thick)}\"/>");

    public Sketch Path(string d, bool filled = false, double thick = 2) =>
        Add($"<path d=\"{d}\" stroke-width=\"{N(thick)}\"{(filled ? " fill=\"#000\"" : "")}/>");

    public Sketch Grey(string d) => Add($"<path d=\"{d}\" fill=\"#bbb\" stroke=\"none\"/>");

    public Sketch White(string d, double thick = 2) => Add($"<path d=\"{d}\" fill=\"#fff\" stroke-width=\"{N(thick)}\"/>");

    public Sketch Dashed(string d, double thick = 2) => Add($"<path d=\"{d}\" stroke-width=\"{N(thick)}\" stroke-dasharray=\"5 4\"/>");

    public Sketch Dot(double x, double y, double r) => Add($"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(r)}\" fill=\"#000\" stroke=\"none\"/>");

    public Sketch Ring(double x, double y, double r, double thick = 2) => Add($"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(r)}\" stroke-width=\"{N(thick)}\"/>");

    /// <summary>Draws what is inside the area only.</summary>
    public Sketch Clipped(string id, string area, Action draw)
    {
        Add($"<clipPath id=\"{id}\"><path d=\"{area}\"/></clipPath><g clip-path=\"url(#{id})\">");
        draw();
        return Add("</g>");
    }

    /// <summary>The drawing, hidden from screen readers when <paramref name="alt"/> is empty because words stand beside it.</summary>
    public string Finish(string alt) =>
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\" width=\"{Width}\" height=\"{Height}\" "
        + (alt.Length == 0 ? "aria-hidden=\"true\"" : $"role=\"img\" aria-label=\"{System.Net.WebUtility.HtmlEncode(alt)}\"")
        + $" fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\" stroke-linecap=\"round\">{svg}</svg>";

    public static string N(double value) => Math.Round(value, 1).ToString(CultureInfo.InvariantCulture);

    private Sketch Add(string element)
    {
        svg.Append(element);
        return this;
    }
}
