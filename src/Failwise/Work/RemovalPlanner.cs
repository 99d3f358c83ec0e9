using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Says for each cause which steps remove it and how to see that it is gone.</summary>
internal static class RemovalPlanner
{
    public static IReadOnlyList<CauseRemoval> Plan(Job job, IReadOnlyList<WorkItem> items) =>
    [
        .. job.Ranking.Ranked.Where(r => job.IsNamed(r.Cause.Id) || (!job.IsNormalWear && r.Probability >= Job.PossibleFrom))
            .Select(r => Of(job.Knowledge, r, items)),
    ];

    private static CauseRemoval Of(KnowledgeBase knowledge, RankedCause ranked, IReadOnlyList<WorkItem> items)
    {
        string cause = ranked.Cause.Id;
        WorkItem[] removing = [.. items.Where(i => Removal.Removes(knowledge, i.Rule, cause))];
        WorkItem[] proving = [.. items.Where(i => Removal.Proves(i.Rule, cause))];
        return new CauseRemoval(
            ranked.Cause, ranked.Probability, removing.Length > 0 && Array.TrueForAll(removing, i => i.CheckFirst),
            [.. removing.Where(i => !i.Rule.Outside).Select(i => i.Rule.Id)], [.. removing.Where(i => i.Rule.Outside).Select(i => i.Rule.Id)],
            [
                .. removing.Concat(proving).Where(i => i.Rule.Verify is not null)
                    .Select(i => new CauseCheck(i.Rule.Id, i.Rule.Verify!.How, i.Rule.Verify.Limit, i.Rule.Verify.Source)),
            ]);
    }
}
