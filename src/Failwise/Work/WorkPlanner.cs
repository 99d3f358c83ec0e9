using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Work;

/// <summary>Derives the corrective work from damage, findings and causes: each piece once, in an order that holds, with its reasons.</summary>
public static class WorkPlanner
{
    /// <summary>Plans the work.</summary>
    public static WorkPlan Plan(
        KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings, FindingSet findings, CauseRanking ranking)
    {
        Job job = new(knowledge, teardown, readings, findings, ranking);
        StepChain? chain = job.IsNormalWear ? null : StepChain.Run(job);
        IReadOnlyList<WorkItem> items = chain is null ? [] : Ordered(knowledge, chain);
        IReadOnlyList<PartDecision> decisions = PartDecider.Decide(job, items);
        IReadOnlyList<CauseRemoval> removals = RemovalPlanner.Plan(job, items);
        return new WorkPlan(
            items, decisions, removals, chain is null ? [] : chain.Downstream, Together(items),
            [.. items.Where(i => i.Rule.Hold is not null).Select(i => new HoldPoint(i.Rule.Id, i.Rule.Hold!))],
            OrderWriter.Write(job, items, decisions), SheetWriter.Write(job, items), ScopePlanner.Plan(job, items));
    }

    /// <summary>
    /// Plans the work as if these roots had been proved and nothing else were at work. For a shop that has settled the cause, and for measuring
    /// the plan apart from the ranking.
    /// </summary>
    /// <param name="roots">Ids of the proved roots.</param>
    public static WorkPlan PlanSettled(
        KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings, FindingSet findings, CauseRanking ranking, IReadOnlyList<string> roots) =>
        Plan(knowledge, teardown, readings, findings, SettledCauses.Settle(knowledge, ranking, roots));

    private static IReadOnlyList<WorkItem> Ordered(KnowledgeBase knowledge, StepChain chain)
    {
        var steps = chain.Steps;
        IReadOnlyDictionary<string, string[]> before = StepOrder.Prerequisites(knowledge, [.. steps.Keys]);
        Comparer<string> free = Comparer<string>.Create((a, b) =>
        {
            ((WorkRule x, bool sureX, _), (WorkRule y, bool sureY, _)) = (steps[a], steps[b]);
            int by = Array.IndexOf(WorkShapes.Stages, x.Stage).CompareTo(Array.IndexOf(WorkShapes.Stages, y.Stage));
            by = by != 0 ? by : sureY.CompareTo(sureX);
            by = by != 0 ? by : string.CompareOrdinal(x.Part ?? "", y.Part ?? "");
            return by != 0 ? by : string.CompareOrdinal(a, b);
        });
        return
        [
            .. StepOrder.Sort([.. steps.Keys], id => before[id], free)
                .Select(id => new WorkItem(steps[id].Rule, !steps[id].Sure, steps[id].Reasons, before[id], WorkTimes.Of(steps[id].Rule))),
        ];
    }

    private static List<RenewedTogether> Together(IReadOnlyList<WorkItem> items) =>
    [
        .. items.SelectMany(i => i.Rule.Together.Select(t => new RenewedTogether(
            i.Rule.Id, t.Part, t.Why ?? "It belongs to the same set and has done the same service.", i.Rule.Sources))).DistinctBy(t => t.Part),
    ];
}

/// <summary>How long work takes.</summary>
internal static class WorkTimes
{
    // A single figure is what the work usually takes; the span around it is judgement.
    private const double AtBest = 0.75, AtWorst = 1.5;

    /// <summary>The time of a rule, or the usual time of its sort of work [min].</summary>
    public static WorkTime Of(WorkRule rule)
    {
        if (rule.Minutes is { } m)
        {
            return m.Most > m.Least ? new WorkTime(m.Least, m.Most, true) : new WorkTime(AtBest * m.Least, AtWorst * m.Most, true);
        }

        (double least, double most) = rule.Does switch
        {
            "inspect" => (10, 30),
            "measure" => (20, 60),
            "clean" or "flush" => (30, 90),
            "machine" => (60, 240),
            "replace" => (30, 120),
            "adjust" => (20, 60),
            "remove-cause" => (20, 120),
            "verify" => (5, 20),
            _ => (5, 15),
        };
        return new WorkTime(least, most, false);
    }
}
