using System.Globalization;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Securing;

/// <summary>A line to tick.</summary>
/// <param name="Stop">True when nobody may go on before it is done.</param>
/// <param name="Blanks">Blanks for the reading that belongs to it; null when nothing is measured.</param>
public sealed record TickLine(bool Stop, string Says, string? Blanks);

/// <summary>Lines that have to be ticked before the machine is turned, stripped or washed.</summary>
public sealed record TickSection(string Title, IReadOnlyList<TickLine> Lines);

/// <summary>What to secure, as short lines to tick on paper; <c>case secure</c> has the long form with sources.</summary>
public static class TickList
{
    internal static readonly IReadOnlyDictionary<Threat, string> Titles = new Dictionary<Threat, string>
    {
        [Threat.Turning] = "Before it is turned over or run again", [Threat.Dismantling] = "Before it is stripped", [Threat.Cleaning] = "Before anything is washed, wiped or blown",
    };

    /// <summary>The sections that have lines, in the order in which to take them.</summary>
    public static IReadOnlyList<TickSection> Of(KnowledgeBase knowledge, SecurePlan plan)
    {
        TickSection[] all =
        [
            new("What can hurt someone", [.. plan.Hazards.Select(Line)]),
            .. Titles.OrderBy(t => t.Key).Select(t => new TickSection(t.Value,
            [
                .. plan.Lines[t.Key].Select(Line), .. plan.Looks.Where(l => l.LostBy == t.Key).GroupBy(l => l.Part, StringComparer.Ordinal).Select(g => Looks(knowledge, g)),
            ])),
        ];
        return [.. all.Where(s => s.Lines.Count > 0)];
    }

    private static TickLine Line(SecureLine line) => new(line.Rule.Stop, (line.IfFitted ? "If fitted: " : "") + line.Rule.Says, Blanks(line));

    private static TickLine Looks(KnowledgeBase knowledge, IGrouping<string, FleetingLook> marks) =>
        new(false, $"{EvidenceGathering.Capital(knowledge.Parts[marks.Key].Name)}: {string.Join(", ", marks.Select(m => knowledge.Patterns[m.Pattern].Name))}?", null);

    /// <summary>Blanks to write the reading into, one for each of the part.</summary>
    internal static string? Blanks(SecureLine line)
    {
        if (line.Rule.Reading is not { } reading)
        {
            return null;
        }

        string unit = reading.Unit is null ? "" : " " + reading.Unit;
        string blanks = line.Times switch
        {
            null => "........" + unit,
            0 => "each ........" + unit,
            { } n => string.Join(", ", Enumerable.Range(1, n).Select(i => string.Create(CultureInfo.InvariantCulture, $"No. {i} ......"))) + unit,
        };
        return $"{EvidenceGathering.Capital(reading.What)}: {blanks}{(reading.Limit is null ? "" : $" (against: {reading.Limit})")}";
    }
}
