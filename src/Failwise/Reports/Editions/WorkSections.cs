using Failwise.Knowledge;
using Failwise.Work;

namespace Failwise.Reports.Editions;

/// <summary>The corrective work as the technical report lists it.</summary>
internal static class WorkSections
{
    private static string Safe(string text) => MarkdownText.Safe(text);

    public static void Write(ReportPage sheet)
    {
        WorkPlan plan = sheet.Diagnosis.Work;
        if (plan.Items.Count == 0 && plan.Decisions.Count == 0)
        {
            return;
        }

        sheet.Text.Heading(2, "Corrective work, in order");
        sheet.Text.Paragraph("Limits and torques come from the maker's manual of this machine; figures here are examples with their source. "
            + "\"Check first\" marks work for a cause that is only possible: look before you spend.");
        Decisions(sheet, 3);
        Cautions(sheet, 3);
        int number = 1;
        foreach (IGrouping<string, WorkItem> stage in plan.Items.GroupBy(i => i.Rule.Stage))
        {
            sheet.Text.Heading(3, Phrases.StageTitle(stage.Key));
            sheet.Text.Table(["", "what", "why", "checked by"], [.. stage.Select(i => Row(sheet, number++, i))]);
        }

        Downstream(sheet, 3, box: false);
        Scopes(sheet, 3);
    }

    /// <summary>What becomes of each part, and the limit on which that rests.</summary>
    public static void Decisions(ReportPage sheet, int level)
    {
        IReadOnlyList<PartDecision> decisions = sheet.Diagnosis.Work.Decisions;
        if (decisions.Count == 0)
        {
            return;
        }

        sheet.Text.Heading(level, "What becomes of each part");
        sheet.Text.Table(["part", "decision", "why", "limit"], [.. decisions.OrderBy(d => Whole(sheet, d.Part) ?? sheet.PartName(d.Part), StringComparer.Ordinal).Select(d => new[]
        {
            Safe((Whole(sheet, d.Part) is { } whole ? $"{whole}: {Place(whole, sheet.Knowledge.Parts[d.Part].Name)}" : sheet.PartName(d.Part)) + Numbers(d.Places)), $"**{Word(d.Decision)}**", Safe(d.Why) + Readings(d),
            Safe(d.Limit) + (d.LimitFrom is { } from ? $" ({Safe(from)})" : d.LimitSource is { } source ? $" ({sheet.Cite([source])})" : ""),
        })]);
    }

    /// <summary>The name of the piece that is handled and ordered for this part of it; null when it is one itself.</summary>
    public static string? Whole(ReportPage sheet, string part) => sheet.Knowledge.Parts[part].OrderedAs is { } whole && whole != Part.Fluid && whole != part ? sheet.PartName(whole) : null;

    /// <summary>The name of a place without the name of the piece that stands before it already.</summary>
    public static string Place(string whole, string name) => name.StartsWith(whole + " ", StringComparison.OrdinalIgnoreCase) ? name[(whole.Length + 1)..] : name;

    /// <summary>Numbers as a person writes them: No. 1 to 5, or No. 1, 3.</summary>
    public static string Numbers(IReadOnlyList<int> places)
    {
        bool row = places.Count > 2 && places[^1] - places[0] == places.Count - 1;
        return places.Count == 0 ? "" : row ? $" No. {places[0]} to {places[^1]}" : " No. " + string.Join(", ", places);
    }

    public static string Word(Decision decision) => decision switch
    {
        Decision.Reuse => "reuse",
        Decision.Clean => "clean",
        Decision.MeasureFirst => "measure first",
        Decision.Monitor => "watch",
        Decision.Machine => "machine",
        _ => "renew",
    };

    private static string Readings(PartDecision d) => d.Readings.Count > 0 ? " Measured: " + Safe(string.Join("; ", d.Readings)) + "." : "";

    /// <summary>Where debris, water or a blow may have travelled, and what is done there.</summary>
    public static void Downstream(ReportPage sheet, int level, bool box)
    {
        IReadOnlyList<DownstreamLine> lines = sheet.Diagnosis.Work.Downstream;
        if (lines.Count == 0)
        {
            return;
        }

        sheet.Text.Heading(level, "Downstream of the damage");
        string[] head = ["part", "what to do"];
        ILookup<string, Decision> decided = sheet.Diagnosis.Work.Decisions.ToLookup(d => d.Part, d => d.Decision, StringComparer.Ordinal);
        foreach (IGrouping<string, DownstreamLine> same in lines.GroupBy(l => string.Join("; ", l.Reasons.Take(2).Select(r => r.Says))))
        {
            sheet.Text.Paragraph($"Because of this: {Safe(same.Key)}");
            sheet.Text.Table(box ? ["done", .. head] : head, [.. same.Select(l =>
            {
                sheet.Cite(l.Sources);
                // What is renewed on its own account needs no second verdict here.
                bool renewed = l.Action != DownstreamAction.Renew && decided[l.Part].Any() && decided[l.Part].All(d => d == Decision.Replace);
                string[] row = [Safe(sheet.PartName(l.Part)), renewed ? "**renew**: It is renewed on its own account, as decided for this part." : $"**{l.Action.ToString().ToLowerInvariant()}**: {Safe(l.Says)}"];
                return box ? [TickBox, .. row] : row;
            })]);
        }
    }

    public const string TickBox = "\u2610";

    /// <summary>How far to go, what it costs when rates are known, and what risk each choice leaves.</summary>
    /// <param name="box">With a box to tick, for a page on which the choice is made.</param>
    public static void Scopes(ReportPage sheet, int level, bool box = false)
    {
        IReadOnlyList<ScopeOption> scopes = sheet.Diagnosis.Work.Scopes;
        if (scopes.Count < 2)
        {
            return;
        }

        sheet.Text.Heading(level, "How far to go");
        Pricing.JobEstimate? estimate = sheet.Diagnosis.Estimate;
        string[] head = [.. box ? new[] { "chosen" } : [], "choice", "what is done", "time in the shop", .. estimate is null ? [] : new[] { "cost" }, "what may stay at work"];
        sheet.Text.Table(head, [.. scopes.Select(s => (string[])
        [
            .. box ? new[] { TickBox } : [], $"**{Safe(s.Title)}**", Safe(s.Says), $"{Phrases.Steps(s.Steps.Count)}, {PlanWords.Hours(s.Time)}",
            .. estimate is null ? [] : new[] { Safe(PlanWords.Cost(estimate, s)) }, Left(sheet, s),
        ])]);
        if (estimate is not null)
        {
            sheet.Text.Paragraph("Costs follow the shop's rates and are for talking about the job; they are no offer." + (PlanWords.Unpriced(estimate) is { } open ? " " + Safe(open) : ""));
        }
    }

    private static string Left(ReportPage sheet, ScopeOption scope) => sheet.Causes.Verdict.Kind == Causes.VerdictKind.NotEnoughEvidence ? "cannot be said: the cause is not known" : scope.Left.Count == 0
        ? "nothing that is 5 % likely or more"
        : $"chance that a cause stays: {Range(scope)}. {Safe(string.Join("; ", scope.Left.Take(4).Select(l => $"{l.Title} ({Phrases.Percent(l.Probability)})")))}";

    public static string Range(ScopeOption scope) =>
        Phrases.Percent(scope.RiskLeast) == Phrases.Percent(scope.RiskMost) ? Phrases.Percent(scope.RiskMost) : $"{Phrases.Percent(scope.RiskLeast)} to {Phrases.Percent(scope.RiskMost)}";

    /// <summary>What can hurt someone, each with the steps it goes with; it stands before the work.</summary>
    /// <param name="ofWhat">Whose steps they are, on a sheet that does not number them itself.</param>
    public static void Cautions(ReportPage sheet, int level, string ofWhat = "")
    {
        ILookup<string, int> steps = sheet.Diagnosis.Work.Items.SelectMany((item, i) => item.Rule.Cautions.Select(c => (Caution: c, Step: i + 1))).ToLookup(x => x.Caution, x => x.Step);
        if (steps.Count > 0)
        {
            sheet.Text.Heading(level, "Cautions");
            sheet.Text.Bullets(steps.Select(g => $"{Safe(g.Key)} *(step{(g.Count() > 1 ? "s" : "")} {Phrases.And([.. g.Select(n => n.ToString())])}{ofWhat})*"));
        }
    }

    private static string[] Row(ReportPage sheet, int number, WorkItem item) =>
        [number.ToString(), What(sheet, item), Safe(string.Join("; ", item.Because.Take(3))), CheckedBy(item)];

    public static string What(ReportPage sheet, WorkItem item)
    {
        WorkRule rule = item.Rule;
        sheet.Cite(rule.Sources);
        return StepMark.Of(sheet, item) + $"**{Safe(Phrases.Sentence(rule.Title))}**" + (rule.How is { } how ? " " + Safe(how) : "")
            + (rule.Hold is { } hold ? $" **Hold: {Safe(hold)}**" : "");
    }

    public static string CheckedBy(WorkItem item) => item.Rule.Verify is { } v ? Safe(Phrases.Sentence(v.How)) + (v.Limit is { } limit ? $" Limit: {Safe(limit)}" : "") : "";
}
