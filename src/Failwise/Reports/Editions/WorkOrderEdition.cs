using Failwise.Causes;
using Failwise.Work;

namespace Failwise.Reports.Editions;

/// <summary>What the shop works from: every step with a box to tick, what becomes of each part, and what to order.</summary>
internal sealed class WorkOrderEdition(ReportPage sheet)
{
    private const string ToFill = "\u2026\u2026\u2026\u2026";

    private static string Safe(string text) => MarkdownText.Safe(text);

    private WorkPlan Plan => sheet.Diagnosis.Work;

    public void Write()
    {
        JobHead.Write(sheet, "Work order");
        sheet.Text.Paragraph(Reason());
        if (Plan.Items.Count == 0 && Plan.Decisions.Count == 0)
        {
            sheet.Text.Paragraph("There is no corrective work to order.");
            return;
        }

        WorkSections.Scopes(sheet, 2, box: true);
        WorkSections.Decisions(sheet, 2);
        WorkSections.Cautions(sheet, 2);
        Steps();
        WorkSections.Downstream(sheet, 2, box: true);
        Together();
        MachineShop();
        Parts();
        Consumables();
        JobHead.Sign(sheet, "Work done, checked and complete");
        EndSections.Sources(sheet);
    }

    private string Reason() => sheet.Causes.Verdict.Kind switch
    {
        VerdictKind.RootNamed => $"{(sheet.Causes.Verdict.Roots.Count > 1 ? "Causes" : "Cause")} to remove: {Titles()}.",
        VerdictKind.Contested => $"The cause is not settled between: {Titles()}. Steps marked \"check first\" wait for the check.",
        VerdictKind.NormalWear => "Nothing was found that calls for a cause to be corrected.",
        _ => "No cause is settled. Do only what the damage itself asks for, and the checks; do not order parts on a guess.",
    };

    private string Titles() => string.Join("; ", sheet.Causes.Verdict.Roots.Select(id => $"**{Safe(sheet.Knowledge.Causes[id].Title)}** ({Phrases.Percent(sheet.Causes.Ranked.First(r => r.Cause.Id == id).Probability)})"));

    private void Steps()
    {
        if (Plan.Items.Count == 0)
        {
            ToMeasure();
            return;
        }

        sheet.Text.Heading(2, "Steps, in order");
        sheet.Text.Paragraph("Tick when done; write the reading where one is asked for. A hold stops what comes after it.");
        int number = 1;
        foreach (IGrouping<string, WorkItem> stage in Plan.Items.GroupBy(i => i.Rule.Stage))
        {
            sheet.Text.Heading(3, Phrases.StageTitle(stage.Key));
            sheet.Text.Table(["done", "step", "what", "checked by", "reading", "initials"], [.. stage.Select(i => new[]
                { WorkSections.TickBox, (number++).ToString(), WorkSections.What(sheet, i), WorkSections.CheckedBy(i), i.Rule.Verify?.Limit is null ? "" : ToFill, ToFill })]);
        }
    }

    /// <summary>A sound machine has no cause to remove, but what goes back in is measured first.</summary>
    private void ToMeasure()
    {
        PartDecision[] open = [.. Plan.Decisions.Where(d => d.Decision == Decision.MeasureFirst)];
        if (open.Length > 0)
        {
            sheet.Text.Heading(2, "To measure before it goes together");
            sheet.Text.Table(["done", "part", "limit", "reading", "initials"], [.. open.Select(d => new[]
                { WorkSections.TickBox, Safe(sheet.PartName(d.Part)) + WorkSections.Numbers(d.Places), Safe(d.Limit), ToFill, ToFill })]);
        }
    }

    private void Together()
    {
        if (Plan.Together.Count > 0)
        {
            sheet.Text.Heading(2, "Renewed together");
            sheet.Text.Bullets(Plan.Together.Select(t => $"{Safe(sheet.PartName(t.Part))}: {Safe(t.Why)}"));
        }
    }

    private void MachineShop()
    {
        IReadOnlyList<ShopJob> jobs = Plan.Orders.MachineShop;
        if (jobs.Count == 0)
        {
            return;
        }

        sheet.Text.Heading(2, "Order to the machine shop");
        foreach (ShopJob job in jobs)
        {
            sheet.Text.Heading(3, Safe(WorkSections.Whole(sheet, job.Part) ?? sheet.PartName(job.Part)) + WorkSections.Numbers(job.Places) + (job.CheckFirst ? " (only if the check shows the need)" : ""));
            sheet.Text.Table(["what", "as ordered"],
            [
                ["wanted", Safe(job.Operation)], ["sizes", Safe(string.Join("; ", job.Sizes))], ["to reach", Safe(job.Finish)],
                .. job.DoNot.Select(d => new[] { "do not", Safe(d) }), .. job.Ask.Select(a => new[] { "settle first", Safe(a) }),
                ["why", Safe(string.Join("; ", job.Reasons.Take(3).Select(r => r.Says)))],
            ]);
        }
    }

    private void Parts()
    {
        if (Plan.Orders.Parts.Count > 0)
        {
            sheet.Text.Heading(2, "Parts to order");
            sheet.Text.Table(["ordered", "part", "how many", "by which size", "when to order"], [.. Plan.Orders.Parts.Select(p => new[]
            {
                WorkSections.TickBox, Safe(EvidenceGathering.Capital(p.Item)) + (p.Together ? " (renewed with its neighbour)" : ""), Safe(p.Count is { } n ? $"{n} ({p.CountFrom})" : p.CountFrom),
                Safe(p.Size ?? ""), When(p),
            })]);
        }
    }

    private string When(PartsLine line) => string.Join("; ", new[]
    {
        line.Together is false && StepMark.MayLack(sheet, line.Part) ? StepMark.IfFitted : null, line.CheckFirst ? "*only when the check shows the need*" : null,
        line.OrderAfter is { } after ? Safe(after) : line.CheckFirst ? null : "now",
    }.OfType<string>());

    private void Consumables()
    {
        if (Plan.Orders.Consumables.Count > 0)
        {
            sheet.Text.Heading(2, "Consumables");
            sheet.Text.Table(["at hand", "what", "how much"], [.. Plan.Orders.Consumables.Select(c => new[] { WorkSections.TickBox, Safe(EvidenceGathering.Capital(c.Item)), Safe(c.Amount) })]);
        }
    }
}
