using System.Globalization;
using System.Text;

namespace Failwise.Reports.Pictures;

/// <summary>
/// A small drawing board. It is narrow enough to be read on a telephone without turning it; everything that colour says is also said by
/// shape and words, so that a black-and-white print loses nothing.
/// </summary>
internal sealed class SvgCanvas(int width = SvgCanvas.Standard)
{
    /// <summary>Width of a drawing: at the width of a telephone its words are still about 11 points high.</summary>
    public const int Standard = 400;

    /// <summary>Height of a line of text.</summary>
    public const int Line = 16;

    /// <summary>The style that all drawings share: a page that shows several of them carries it once.</summary>
    public const string Style =
        "svg.fw text{font:13px \"Noto Sans\",\"Liberation Sans\",Arial,sans-serif;fill:#1d1b17;unicode-bidi:isolate}svg.fw .b{font-weight:700}svg.fw .q{fill:#574f43}"
        + "svg.fw .s{font-size:12px}svg.fw .m{text-anchor:middle}svg.fw .e{text-anchor:end}svg.fw .paper{fill:#fff}svg.fw .o{fill:none;stroke:#1d1b17}"
        + "svg.fw .box{fill:#fff;stroke:#1d1b17}svg.fw .root{stroke-width:3}svg.fw .thin{stroke:#8a8171}svg.fw .dash{stroke-dasharray:4 3}svg.fw .ink{fill:#1d1b17}"
        + "svg.fw .k0{fill:#dfeede}svg.fw .k1{fill:#fbf4d6}svg.fw .k2{fill:#f9e3a8}svg.fw .k3{fill:#f3b562}svg.fw .k4{fill:#e2795c}svg.fw .k5{fill:#b5493a}svg.fw .k9{fill:#fff}"
        + "svg.fw .edge{stroke:#1d1b17}svg.fw .on{fill:#000;stroke:#000}svg.fw .off{fill:#fff;stroke:#000}svg.fw .meter{fill:none;stroke:#1d1b17}svg.fw .mark{stroke:#000;fill:none;stroke-width:2}"
        + "svg.fw .for{fill:#2f6f4f;stroke:#1d1b17}svg.fw .against{fill:#fff;stroke:#a23b2a;stroke-width:2}";

    private const double LetterWidth = 7.0;
    private readonly StringBuilder body = new();

    public int Width => width;

    /// <summary>How far down the drawing reaches so far.</summary>
    public int Bottom { get; private set; }

    public void Rectangle(double x, double y, double w, double h, string style, double round = 0) =>
        Add(y + h, $"<rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(w)}\" height=\"{N(h)}\"{(round > 0 ? $" rx=\"{N(round)}\"" : "")} class=\"{style}\"/>");

    public void Circle(double x, double y, double r, string style) => Add(y + r, $"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(r)}\" class=\"{style}\"/>");

    public void Segment(double x1, double y1, double x2, double y2, string style) =>
        Add(Math.Max(y1, y2), $"<line x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\" class=\"{style}\"/>");

    public void Path(string data, double bottom, string style) => Add(bottom, $"<path d=\"{data}\" class=\"{style}\"/>");

    /// <summary>One line of text on the baseline <paramref name="y"/>.</summary>
    public void Text(double x, double y, string text, string style = "t") => Add(y + 4, $"<text x=\"{N(x)}\" y=\"{N(y)}\" class=\"{style}\">{Escape(text)}</text>");

    /// <summary>Text broken into lines that fit <paramref name="room"/>; returns the baseline after the last line.</summary>
    public double Block(double x, double y, double room, string text, string style = "t", int mostLines = 6)
    {
        IReadOnlyList<string> lines = Wrap(text, room);
        for (int i = 0; i < lines.Count && i < mostLines; i++)
        {
            Text(x, y, i == mostLines - 1 && lines.Count > mostLines ? lines[i] + " …" : lines[i], style);
            y += Line;
        }

        return y;
    }

    /// <summary>The finished drawing.</summary>
    public Picture Finish(string name, string alt)
    {
        string size = $"viewBox=\"0 0 {width} {Bottom + 6}\" width=\"{width}\" height=\"{Bottom + 6}\"";
        string rest = $"role=\"img\" aria-label=\"{Escape(alt)}\" class=\"fw\">\n";
        string paper = $"<rect width=\"{width}\" height=\"{Bottom + 6}\" class=\"paper\"/>\n";
        return new Picture(name, alt,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" {size} {rest}<title>{Escape(alt)}</title>\n<style>{Style}</style>\n{paper}{body}</svg>\n",
            $"<svg {size} {rest}{paper}{body}</svg>");
    }

    /// <summary>Breaks at blanks; a word too long for a line is broken between letters, never inside one.</summary>
    internal static IReadOnlyList<string> Wrap(string text, double room)
    {
        int most = Math.Max(4, (int)(room / LetterWidth));
        List<string> lines = [];
        StringBuilder line = new();
        int used = 0;
        foreach (string word in Clean(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(w, most)))
        {
            int length = Length(word);
            if (used > 0 && used + 1 + length > most)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            line.Append(used > 0 ? " " : "").Append(word);
            used += (used > 0 ? 1 : 0) + length;
        }

        if (used > 0)
        {
            lines.Add(line.ToString());
        }

        return lines;
    }

    private static IEnumerable<string> Pieces(string word, int most)
    {
        StringBuilder piece = new();
        int used = 0;
        TextElementEnumerator letters = StringInfo.GetTextElementEnumerator(word);
        while (letters.MoveNext())
        {
            string letter = letters.GetTextElement();
            if (used > 0 && used + Length(letter) > most)
            {
                yield return piece.ToString();
                piece.Clear();
                used = 0;
            }

            piece.Append(letter);
            used += Length(letter);
        }

        yield return piece.ToString();
    }

    /// <summary>Letters of far-eastern scripts and pictographs are about twice as wide.</summary>
    private static int Length(string text) => text.EnumerateRunes().Sum(r => r.Value >= 0x2E80 ? 2 : 1);

    private static string Clean(string text) => MarkdownText.OneLine(text);

    private static string Escape(string text) => System.Security.SecurityElement.Escape(Clean(text)) ?? "";

    private static string N(double value) => Math.Round(value, 1).ToString(CultureInfo.InvariantCulture);

    private void Add(double bottom, string element)
    {
        Bottom = Math.Max(Bottom, (int)Math.Ceiling(bottom));
        body.Append(element).Append('\n');
    }
}
