using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Offers how far to go, from renewing what is broken to settling every possible cause, with the risk that each leaves.</summary>
internal static class ScopePlanner
{
    private const double WorthCounting = 0.05;

    public static IReadOnlyList<ScopeOption> Plan(Job job, IReadOnlyList<WorkItem> items)
    {
        if (items.Count == 0)
        {
            return [];
        }

        WorkItem[] damage = [.. items.Where(i => !i.CheckFirst && !Corrects(job, i) && i.Reasons.Any(r => r.Kind is "observation" or "finding" or "work"))];
        WorkItem[] named = [.. items.Where(i => !i.CheckFirst)];
        bool blind = job.Ranking.Verdict.Roots.Count == 0;
        ScopeOption[] options =
        [
            Option(job, "damage-only", "Renew what is damaged, and stop there", "The marks go away; what made them may stay.", damage, items),
            .. blind ? [] : new[] { Option(job, "causes-named", "Also remove what the evidence names", "Removes every cause that is likely; what is only possible stays unchecked.", named, items) },
            Option(job, "complete", "Complete: settle what is possible too", "Checks, and where the check shows the need removes, every possible cause.", [.. items], items),
        ];
        return [.. options.Reverse().DistinctBy(o => string.Join(' ', o.Steps)).Reverse().Where(o => o.Steps.Count > 0)];
    }

    private static ScopeOption Option(Job job, string id, string title, string says, WorkItem[] steps, IReadOnlyList<WorkItem> whole)
    {
        CauseLeft[] left =
        [
            .. job.Ranking.Ranked.Where(r => r.Probability >= WorthCounting && !Gone(job, r.Cause.Id, steps, whole))
                .Select(r => new CauseLeft(r.Cause.Id, r.Cause.Title, r.Probability)),
        ];
        return new ScopeOption(
            id, title, says, [.. steps.Select(s => s.Rule.Id)], left, left.Length == 0 ? 0 : left.Max(l => l.Probability),
            Math.Min(CauseRanking.Ceiling, left.Sum(l => l.Probability)), WorkTime.Sum(steps.Select(s => s.Needed ? s.Time : s.Time with { Least = 0 })));
    }

    /// <summary>Setting right what caused it is more than renewing what it damaged.</summary>
    private static bool Corrects(Job job, WorkItem item) => (item.Rule.Does == "remove-cause" && (item.Rule.Outside || !item.Reasons.Any(r => r.Kind == "observation")))
        || (item.Rule.Does == "adjust" && job.Ranking.Verdict.Roots.Any(root => Removal.Removes(job.Knowledge, item.Rule, root)));

    /// <summary>A cause that sits outside the machine, such as a habit, outlives every step inside it.</summary>
    private static bool Gone(Job job, string cause, WorkItem[] steps, IReadOnlyList<WorkItem> whole)
    {
        WorkItem[] removing = [.. steps.Where(s => Removal.Removes(job.Knowledge, s.Rule, cause))];
        bool outside = whole.Any(s => s.Rule.Outside && Removal.Removes(job.Knowledge, s.Rule, cause));
        return outside ? Array.Exists(removing, s => s.Rule.Outside) : removing.Length > 0;
    }
}
