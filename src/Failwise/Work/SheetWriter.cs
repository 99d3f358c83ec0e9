using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Writes the close-up, first-start and follow-up sheets: only the lines that fit this machine and this job.</summary>
internal static class SheetWriter
{
    public static WorkSheets Write(Job job, IReadOnlyList<WorkItem> items) =>
        new(Sheet(job, items, "close-up"), Sheet(job, items, "first-start"), Sheet(job, items, "follow-up"));

    private static List<SheetLine> Sheet(Job job, IReadOnlyList<WorkItem> items, string sheet)
    {
        List<SheetLine> lines = [];
        SheetRule[] rules = [.. job.Knowledge.Sheets.Values.Where(s => s.Sheet == sheet).OrderBy(s => s.Order).ThenBy(s => s.Id, StringComparer.Ordinal)];
        HashSet<string> covered = new(rules.SelectMany(r => r.Work), StringComparer.Ordinal);

        // What the job itself holds comes first: the steps that hold others up, then the steps of this stage.
        foreach (WorkItem item in items.Where(i => !i.CheckFirst && !covered.Contains(i.Rule.Id) && OnSheet(i.Rule, sheet)))
        {
            lines.Add(FromStep(item));
        }

        lines.AddRange(rules.SelectMany(rule => FromRule(job, items, rule)));
        return lines;
    }

    private static bool OnSheet(WorkRule rule, string sheet) =>
        rule.Stage == sheet || (sheet == "close-up" && rule.Hold is not null && rule.Stage is "machine" or "clean" or "assemble");

    private static SheetLine FromStep(WorkItem item)
    {
        Verification? v = item.Rule.Verify;
        string says = v is null ? item.Rule.Title : $"{item.Rule.Title.TrimEnd('.')}: {v.How}";
        bool read = v?.Limit is { } limit && (limit.Any(char.IsAsciiDigit) || limit.Contains("maker", StringComparison.Ordinal));
        return new SheetLine(
            says, null, read ? "reading" : null, null, v?.Limit, v?.Limit is null ? null : v.Source, null, item.Rule.Hold is not null, item.Reasons, item.Rule.Id);
    }

    private static IEnumerable<SheetLine> FromRule(Job job, IReadOnlyList<WorkItem> items, SheetRule rule)
    {
        bool? fitted = job.Has(rule.Fitted);
        if (!job.Fits(rule.Machines, rule.Needs) || fitted == false || Why(job, items, rule) is not { } reasons)
        {
            yield break;
        }

        int times = rule.Each is null ? 1 : job.Count(rule.Each) ?? 1;
        for (int n = 1; n <= times; n++)
        {
            yield return new SheetLine(
                (fitted is null ? "If fitted: " : "") + rule.Says, rule.Each is not null && job.Count(rule.Each) is not null ? n : null, rule.Reading?.What, rule.Reading?.Unit,
                rule.Reading is null ? null : rule.Reading.Limit ?? "maker's limit", rule.Reading?.Source, rule.When, rule.Stop, reasons, rule.Id);
        }
    }

    /// <summary>Why the line is on the sheet; null when nothing in this job calls for it.</summary>
    private static IReadOnlyList<WorkReason>? Why(Job job, IReadOnlyList<WorkItem> items, SheetRule rule)
    {
        List<WorkReason> reasons = [];
        foreach (WorkItem item in items.Where(i => !i.CheckFirst))
        {
            bool named = rule.Work.Contains(item.Rule.Id);
            bool touches = item.Rule.Part is { } part && item.Rule.Does is "replace" or "machine" or "adjust" or "clean" or "flush"
                && rule.Touched.Any(t => job.Knowledge.PartIs(item.Rule.Part!, t));
            if (named || touches)
            {
                reasons.Add(new WorkReason("work", item.Rule.Id, item.Rule.Title));
            }
        }

        foreach (string part in rule.Touched.Where(job.Saw))
        {
            reasons.Add(new WorkReason("observation", string.Join(", ", job.Case.Observations.Where(o => job.Knowledge.PartIs(o.Part, part)).Select(o => o.Number).Distinct().Order()),
                $"The {job.Knowledge.Parts[part].Name} was opened"));
        }

        if (rule.Work.Count == 0 && rule.Touched.Count == 0)
        {
            reasons.Add(new WorkReason("machine", job.Case.Machine.Kinds[0], $"Any {job.Knowledge.Machines[job.Case.Machine.Kinds[0]].Name} that was opened"));
        }

        return reasons.Count > 0 ? [.. reasons.Take(4)] : null;
    }
}
