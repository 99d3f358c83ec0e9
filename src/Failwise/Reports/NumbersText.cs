using Failwise.Calculations;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Reports;

/// <summary>Readings and calculations in words.</summary>
internal static class NumbersText
{
    /// <summary>Where a value comes from, for other programs.</summary>
    public static string KindOf(ReadingKind kind) => kind switch
    {
        ReadingKind.Size => "size",
        ReadingKind.Taper => "taper",
        ReadingKind.OutOfRound => "out-of-round",
        ReadingKind.Clearance => "clearance",
        _ => "written",
    };

    public static string StateOf(LimitState state) => state switch
    {
        LimitState.Above => "above the limit",
        LimitState.Below => "below the limit",
        LimitState.Within => "within",
        LimitState.TooClose => "too close to call",
        _ => "no limit given",
    };

    /// <summary>The cells of one reading.</summary>
    public static string[] Row(Reading r) =>
    [
        r.Number.ToString(),
        MarkdownText.Safe(r.Measurement.Part.Replace('-', ' ') + PlaceOf(r.Measurement.Places)),
        MarkdownText.Safe(r.Measurement.Quantity.Replace('-', ' ')), MarkdownText.Safe(ValueOf(r)), MarkdownText.Safe(LimitOf(r.Measurement.Limit)),
        StateOf(r.State) + (r.Note is { } note ? " - " + MarkdownText.Safe(note) : ""),
    ];

    /// <summary>The value in both systems, with what it was worked out from.</summary>
    public static string ValueOf(Reading r)
    {
        string span = r.Smallest is { } least && r.Largest is { } most ? $", from {least.Text} to {most.Text}" : "";
        string origin = r.Kind == ReadingKind.Size ? $"; read: {r.Measurement.Value}"
            : r.From.Count > 0 ? $"; from reading{(r.From.Count > 1 ? "s" : "")} {string.Join(" and ", r.From)}" : "";
        return r.InBothSystems + span + origin;
    }

    public static string LimitOf(Limit? limit) => limit is null ? ""
        : (limit.Min, limit.Max) switch
        {
            ({ } min, { } max) => $"{min} to {max}",
            ({ } min, null) => $"{min} or more",
            (null, { } max) => $"up to {max}",
            _ => "",
        } + (limit.From is { Length: > 0 } from ? $" ({(limit.Example ? "example of another machine: " : "")}{from})" : "");

    /// <summary>Every calculation with inputs, formula, results, range and source.</summary>
    public static void Write(MarkdownText md, KnowledgeBase knowledge, IReadOnlyList<WorkedNumber> calculations)
    {
        foreach (WorkedNumber w in calculations)
        {
            md.Paragraph($"**{w.Number}. {MarkdownText.Safe(Title(knowledge, w))}**");
            md.Bullets(Lines(w, calculations).Select(MarkdownText.Safe));
        }
    }

    /// <summary>What a reading is of: "main journal 4, diameter".</summary>
    public static string Of(KnowledgeBase knowledge, Reading r) =>
        $"{knowledge.Parts[r.Measurement.Part].Name}{PlaceOf(r.Measurement.Places)}, {r.Measurement.Quantity.Replace('-', ' ')}";

    /// <summary>What a calculation is of.</summary>
    public static string Title(KnowledgeBase knowledge, WorkedNumber w) =>
        w.Result.Calculation.Title + (w.Request.Part is { } part ? $", {knowledge.Parts[part].Name}{PlaceOf(w.Request.Places)}" : "") + (w.Request.When is { } state ? $" ({state})" : "");

    /// <summary>The results of a calculation in one line, or what it still needs.</summary>
    public static string Result(WorkedNumber w) => w.Result.Missing.Count > 0 ? "not worked out; still needed: " + string.Join("; ", w.Result.Missing.Select(m => m.What))
        : w.Result.Problems.Count > 0 ? "not worked out: " + string.Join("; ", w.Result.Problems)
        : string.Join("; ", w.Result.Outputs.Select(o => $"{o.Output.What} {o.Text}"));

    private static IEnumerable<string> Lines(WorkedNumber w, IReadOnlyList<WorkedNumber> all)
    {
        Calculation c = w.Result.Calculation;
        string inputs = string.Join("; ", w.Result.Inputs.Select(i => $"{Plain(i.Input.What)} {i.Text}{OriginOf(w, i, all)}"));
        if (inputs.Length > 0)
        {
            yield return "from " + inputs;
        }

        foreach (OutputValue o in w.Result.Outputs)
        {
            yield return $"{o.Output.What}: {Whole(o)}";
        }

        if (w.Result.Missing.Count > 0)
        {
            yield return "not worked out; still needed: " + string.Join("; ", w.Result.Missing.Select(m => $"{m.Name} ({m.What}, {m.Range})"));
        }

        foreach (string line in w.Result.Problems.Select(p => "not worked out: " + p).Concat(w.Result.Notes))
        {
            yield return line;
        }

        yield return $"formula: {c.Formula}. Holds for: {c.Validity} Source: {c.Source}";
    }

    // "wire diameter, else" and "diametral clearance: bore less journal" are for the table of inputs.
    private static string Plain(string what) => what.Split(',', ':')[0];

    private static string OriginOf(WorkedNumber w, InputEcho i, IReadOnlyList<WorkedNumber> all)
    {
        string? from = i.Assumed ? "assumed" : w.Origins.GetValueOrDefault(i.Input.Name);
        return from is null ? "" : $" ({(all.FirstOrDefault(o => from == "worked out by " + o.Result.Calculation.Id) is { } feed ? $"worked out in {feed.Number}" : from)})";
    }

    // A count or a pure number without a fraction needs no decimals.
    private static string Whole(OutputValue o) => string.IsNullOrEmpty(o.Output.Unit) && o.Text.EndsWith(".0", StringComparison.Ordinal) ? o.Text[..^2] : o.Text;

    private static string PlaceOf(IReadOnlyList<int> places) => places.Count > 0 ? " " + string.Join(", ", places) : "";
}
