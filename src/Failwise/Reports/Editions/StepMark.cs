using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Work;

namespace Failwise.Reports.Editions;

/// <summary>The words before a step that say when it is not simply done: to check first, perhaps done already, perhaps too late, perhaps not fitted.</summary>
internal static class StepMark
{
    public const string IfFitted = "if it has one";

    public static string Of(ReportPage sheet, WorkItem item)
    {
        WorkRule rule = item.Rule;
        if (item.CheckFirst)
        {
            return MayLack(sheet, rule.Part) ? "*If it has one, check first:* " : "*Check first:* ";
        }

        // Evidence cannot be secured twice: where the case describes the part already, the step only asks whether it was done.
        return rule.Part is { } part && sheet.Case.Observations.Any(o => rule.Stage == "secure" ? Alike(sheet, o.Part, part) : rule.Stage == "inspect" && sheet.Knowledge.PartIs(o.Part, part)) ? "*If not done yet:* "
            : rule.Stage is "secure" or "inspect" && Lost(sheet, rule) is { } lost ? $"*If it can still be done ({MarkdownText.Safe(lost)}):* " : "";
    }

    /// <summary>True when nobody said whether the machine has such a part, and nobody saw one.</summary>
    public static bool MayLack(ReportPage sheet, string? part) => part is not null && !sheet.Case.Observations.Any(o => Alike(sheet, o.Part, part))
        && sheet.Knowledge.Features.Values.Any(f => f.ShownBy.Contains(part) && !sheet.Case.Machine.Features.Contains(f.Id) && !sheet.Case.Machine.Without.Contains(f.Id));

    /// <summary>What the case says of a part that nobody could look at.</summary>
    private static string? Lost(ReportPage sheet, WorkRule rule) => sheet.Case.NotLookedAt.Where(n => n.Reason is not null && rule.Part is { } part && Alike(sheet, n.Part, part))
        .Select(n => $"{sheet.Knowledge.Parts[n.Part].Name}: {n.Reason!.TrimEnd('.')}").FirstOrDefault();

    private static bool Alike(ReportPage sheet, string a, string b) => sheet.Knowledge.PartIs(a, b) || sheet.Knowledge.PartIs(b, a);
}
