using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Writes the close-up, first-start and follow-up sheets: only the lines that fit this machine and this job.</summary>
internal static class SheetWriter
{
    public static WorkSheets Write(Job job, IReadOnlyList<WorkItem> items) =>
        new(Sheet(job, items, "close-up"), Sheet(job, items, "first-start"), Sheet(job, items, "follow-up"));

    private static List<SheetLine> Sheet(Job job, IReadOnlyList<WorkItem> items, string sheet)
    {
        SheetRule[] rules = [.. job.Knowledge.Sheets.Values.Where(s => s.Sheet == sheet).OrderBy(s => s.Order).ThenBy(s => s.Id, StringComparer.Ordinal)];
        HashSet<string> covered = new(rules.SelectMany(r => r.Work), StringComparer.Ordinal);

        SheetLine[] steps = [.. items.Where(i => !i.CheckFirst && !covered.Contains(i.Rule.Id) && OnSheet(i.Rule, sheet))
            .Select(i => FromStep(i, sheet, sheet == "follow-up" ? $"step {items.ToList().IndexOf(i) + 1} of the work order" : null))];
        SheetLine[] lines = [.. rules.SelectMany(rule => FromRule(job, items, rule))];

        // Before closing, what holds others up comes first; once it runs, oil and gauge come before anything that is read while running.
        return sheet == "close-up" ? [.. steps, .. lines] : [.. lines, .. steps];
    }

    private static bool OnSheet(WorkRule rule, string sheet) => rule.Stage == sheet || rule.Verify?.When == sheet
        || (sheet == "close-up" && rule.Hold is not null && rule.Verify?.When is null && rule.Stage is "machine" or "clean" or "assemble");

    private static SheetLine FromStep(WorkItem item, string sheet, string? when)
    {
        // What is proved only later has its own line on the later sheet.
        Verification? v = item.Rule.Verify is { } own && (own.When is null || own.When == sheet) ? item.Rule.Verify : null;
        string says = v is null ? item.Rule.Title : $"{item.Rule.Title.TrimEnd('.')}: {v.How}";
        bool read = v?.Limit is { } limit && (limit.Any(char.IsAsciiDigit) || limit.Contains("maker", StringComparison.Ordinal));
        return new SheetLine(
            says, null, read ? "reading" : null, null, v?.Limit, v?.Limit is null ? null : v.Source, when, item.Rule.Hold is not null, item.Reasons, item.Rule.Id);
    }

    private static IEnumerable<SheetLine> FromRule(Job job, IReadOnlyList<WorkItem> items, SheetRule rule)
    {
        bool? fitted = job.Has(rule.Fitted);
        if (!job.Fits(rule.Machines, rule.Needs) || fitted == false || Why(job, items, rule) is not { } reasons)
        {
            yield break;
        }

        // "If fitted" goes with a thing that can be fitted; where nobody is likely to have it, the line was left out before.
        int times = rule.Each is null ? 1 : job.Count(rule.Each) ?? 1;
        for (int n = 1; n <= times; n++)
        {
            string? given = Given(job, rule.Reading, rule.Each is null ? null : n);
            yield return new SheetLine(
                (fitted is null ? "If fitted: " : "") + rule.Says, rule.Each is not null && job.Count(rule.Each) is not null ? n : null, rule.Reading?.What, rule.Reading?.Unit,
                given ?? rule.Reading?.Limit ?? (rule.Reading?.Unit is null ? null : "maker's limit"), given is null ? rule.Reading?.Source : null, rule.When, rule.Stop, reasons, rule.Id);
        }
    }

    /// <summary>The limit that the case gives for what is read, at this place first; null when it gives none.</summary>
    private static string? Given(Job job, SheetReading? asked, int? place)
    {
        Limit? limit = asked?.Part is null ? null : job.Readings.Where(r => r.Measurement.Limit is { Example: false } && r.Measurement.Quantity == asked.Quantity && job.Knowledge.PartIs(r.Measurement.Part, asked.Part))
            .OrderByDescending(r => place is { } n && r.Measurement.Places.Contains(n)).Select(r => r.Measurement.Limit).FirstOrDefault();
        return limit is null ? null : LimitText.Of(limit) + (limit.From is { Length: > 0 } from ? $" ({from})" : "");
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
