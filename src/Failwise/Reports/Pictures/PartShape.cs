using System.Text;
using Failwise.Knowledge;

namespace Failwise.Reports.Pictures;

/// <summary>The outline of a part, simple enough to be told apart at the size of a thumbnail.</summary>
internal static class PartShape
{
    private static readonly string[] Round = ["cylinder-bore", "cylinder-liner", "piston", "piston-ring"];

    private static readonly string[] Train = ["gear", "rolling-bearing", "shaft"];

    /// <summary>Parts that the map always shows place by place, sound ones too: shells, bores and lobes.</summary>
    public static bool IsMapped(KnowledgeBase knowledge, string part) => Is(knowledge, part, ["plain-bearing", "cylinder-bore", "cylinder-liner", "cam-lobe"]);

    /// <summary>Gears, shafts and rolling bearings.</summary>
    public static bool IsOfTrain(KnowledgeBase knowledge, string part) => Is(knowledge, part, Train) && !Is(knowledge, part, ["cam-lobe"]);

    public static void Draw(SvgCanvas canvas, KnowledgeBase knowledge, string part, double x, double y, Severity severity)
    {
        string style = "edge " + SeveritySign.Fill(severity) + (severity == Severity.NotLooked ? " dash" : "");
        if (Is(knowledge, part, Round))
        {
            canvas.Circle(x, y, 21, "box");
            canvas.Circle(x, y, 18, style);
        }
        else if (Is(knowledge, part, ["cam-lobe"]))
        {
            canvas.Path(FormattableString.Invariant($"M{x - 20:0.#} {y + 3:0.#}A20 17 0 0 0 {x + 20:0.#} {y + 3:0.#}Q{x + 16:0.#} {y - 20:0.#} {x:0.#} {y - 20:0.#}Q{x - 16:0.#} {y - 20:0.#} {x - 20:0.#} {y + 3:0.#}Z"), y + 20, style);
        }
        else
        {
            canvas.Rectangle(x - 35, y - 17, 70, 34, style, 8);
        }
    }

    /// <summary>The same at the head of a list line: gears have teeth, rolling bearings have balls, shafts are long.</summary>
    public static void DrawSmall(SvgCanvas canvas, KnowledgeBase knowledge, string part, double x, double y, Severity severity)
    {
        string style = "edge " + SeveritySign.Fill(severity);
        if (Is(knowledge, part, ["gear"]))
        {
            canvas.Path(Gear(x, y), y + 11, style);
            canvas.Circle(x, y, 3, "off");
        }
        else if (Is(knowledge, part, ["rolling-bearing"]))
        {
            canvas.Circle(x, y, 11, style);
            canvas.Circle(x, y, 5, "off");
            for (int i = 0; i < 6; i++)
            {
                canvas.Circle(x + 8 * Math.Cos(i * Math.PI / 3), y + 8 * Math.Sin(i * Math.PI / 3), 2, "off");
            }
        }
        else if (Is(knowledge, part, ["shaft"]))
        {
            canvas.Rectangle(x - 13, y - 3, 26, 6, style);
            canvas.Rectangle(x - 6, y - 6, 12, 12, style);
        }
        else if (Is(knowledge, part, Round))
        {
            canvas.Circle(x, y, 10, style);
        }
        else
        {
            canvas.Rectangle(x - 12, y - 9, 24, 18, style, 4);
        }
    }

    private static bool Is(KnowledgeBase knowledge, string part, string[] broader) => broader.Any(b => knowledge.Parts.ContainsKey(b) && knowledge.PartIs(part, b));

    private static string Gear(double x, double y)
    {
        StringBuilder path = new();
        for (int i = 0; i < 20; i++)
        {
            double radius = i % 4 < 2 ? 11 : 8, angle = (i + 0.5) * Math.PI / 10;
            path.Append(FormattableString.Invariant($"{(i == 0 ? 'M' : 'L')}{x + radius * Math.Cos(angle):0.#} {y + radius * Math.Sin(angle):0.#}"));
        }

        return path.Append('Z').ToString();
    }
}
