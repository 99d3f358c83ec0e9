using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Reports.Pictures;

/// <summary>How bad a place looks, from sound to destroyed.</summary>
internal enum Severity { Sound, Trace, Light, Moderate, Heavy, Destroyed, NotLooked = 9 }

/// <summary>One thing seen at one place of the map.</summary>
internal sealed record MapMark(Severity Severity, string Says, IReadOnlyList<string> On);

/// <summary>The sign for a severity: a tick, one to five bars, or a question mark.</summary>
internal static class SeveritySign
{
    public const int Width = 40;

    public static Severity Of(KnowledgeBase knowledge, Observation o) => o.Look != Look.Seen || knowledge.Patterns[o.Pattern!].Sound ? Severity.Sound : o.Extent switch
    {
        Extent.Trace => Severity.Trace,
        Extent.Light => Severity.Light,
        Extent.Heavy => Severity.Heavy,
        Extent.Destroyed => Severity.Destroyed,
        _ => Severity.Moderate,
    };

    /// <summary>What was seen, in words short enough for a cell.</summary>
    public static string Say(KnowledgeBase knowledge, Observation o) => o.Look switch
    {
        Look.Sound => "sound",
        Look.NotFound => "not " + knowledge.Patterns[o.Pattern!].Name,
        _ => knowledge.Patterns[o.Pattern!].Name + (knowledge.Patterns[o.Pattern!].Sound ? " (normal)" : ""),
    };

    public static string Word(Severity severity) => severity switch
    {
        Severity.Sound => "sound or normal",
        Severity.NotLooked => "not looked at",
        _ => severity.ToString().ToLowerInvariant(),
    };

    public static string Fill(Severity severity) => "k" + (int)severity;

    /// <summary>Draws the sign with its middle at the given point.</summary>
    public static void Draw(SvgCanvas canvas, double x, double y, Severity severity)
    {
        if (severity == Severity.Sound)
        {
            canvas.Path(FormattableString.Invariant($"M{x - 6:0.#} {y:0.#}l4 5l8 -10"), y + 5, "mark");
        }
        else if (severity == Severity.NotLooked)
        {
            canvas.Text(x, y + 4, "?", "b m");
        }
        else
        {
            for (int bar = 1; bar <= 5; bar++)
            {
                double height = 4 + 2 * bar;
                canvas.Rectangle(x - 18 + 7 * (bar - 1), y + 7 - height, 5, height, bar <= (int)severity ? "on" : "off");
            }
        }
    }
}
