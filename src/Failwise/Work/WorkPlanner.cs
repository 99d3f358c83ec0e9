using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>One line of the plan and why it is there.</summary>
/// <param name="CheckFirst">True when its cause is only possible: check before doing the work.</param>
/// <param name="Because">Sentences, each tracing to a cause, finding or observation.</param>
public sealed record WorkItem(WorkRule Rule, bool CheckFirst, IReadOnlyList<string> Because);

/// <summary>Corrective work in order.</summary>
public sealed record WorkPlan(IReadOnlyList<WorkItem> Items);

/// <summary>Derives the corrective work from damage, findings and causes, each piece once, in an order that holds.</summary>
public static class WorkPlanner
{
    private const double PossibleFrom = 0.2;
    private const double PossibleStateFrom = 0.35;
    private const double LikelyFrom = 0.5;

    private static readonly string[] Stages =
        ["secure", "inspect", "measure", "machine", "clean", "assemble", "close-up", "first-start", "follow-up"];

    /// <summary>Plans the work.</summary>
    public static WorkPlan Plan(KnowledgeBase knowledge, TeardownCase teardown, FindingSet findings, CauseRanking ranking)
    {
        Dictionary<string, double> probability = ranking.Ranked.ToDictionary(r => r.Cause.Id, r => r.Probability, StringComparer.Ordinal);
        foreach ((string state, double p) in ranking.States)
        {
            probability[state] = p;
        }

        HashSet<string> named = [.. ranking.Verdict.Roots];
        List<WorkItem> items = [];
        if (ranking.Verdict.Kind == VerdictKind.NormalWear)
        {
            return new WorkPlan(items);
        }

        foreach (WorkRule rule in knowledge.Work.Values.Where(w => !w.Needs.Any(teardown.Machine.Without.Contains)))
        {
            List<string> because = [];
            bool sure = false;
            foreach (WorkTrigger trigger in rule.Because)
            {
                if (trigger.Cause is { } cause && probability.TryGetValue(cause, out double p) && (p >= (knowledge.Causes[cause].IsRoot ? PossibleFrom : PossibleStateFrom) || named.Contains(cause)))
                {
                    because.Add($"{knowledge.Causes[cause].Title} is {CauseRanking.WordFor(p)} ({100 * Math.Min(CauseRanking.Ceiling, p):0} %)");
                    sure |= p >= LikelyFrom;
                }

                if (trigger.Finding is { } finding && findings.Fired.FirstOrDefault(f => f.Id == finding) is { } fired)
                {
                    because.Add(fired.Rule.Says);
                    sure = true;
                }

                if (trigger.Part is { } part)
                {
                    Observation[] seen = [.. teardown.Observations.Where(o => Meets(knowledge, o, part, trigger))];
                    foreach (IGrouping<(string, string), Observation> group in seen.GroupBy(o => (o.Part, o.Pattern!)))
                    {
                        because.Add(EvidenceGathering.SaySign(knowledge, group));
                        sure = true;
                    }
                }
            }

            if (because.Count > 0)
            {
                items.Add(new WorkItem(rule, !sure, [.. because.Distinct()]));
            }
        }

        return new WorkPlan(Order(items));
    }

    private static bool Meets(KnowledgeBase knowledge, Observation o, string part, WorkTrigger trigger) =>
        o.Look == Look.Seen && knowledge.PartIs(o.Part, part)
        && (trigger.See.Count == 0 ? !knowledge.Patterns[o.Pattern!].Sound : trigger.See.Any(see => knowledge.PatternIs(o.Pattern!, see)))
        && (trigger.AtLeast == Extent.Unstated || (o.Extent == Extent.Unstated ? Extent.Moderate : o.Extent) >= trigger.AtLeast);

    /// <summary>By stage, and within and across stages after whatever must come first.</summary>
    private static List<WorkItem> Order(List<WorkItem> items)
    {
        Dictionary<string, WorkItem> waiting = items.ToDictionary(i => i.Rule.Id, StringComparer.Ordinal);
        List<WorkItem> ordered = [];
        while (waiting.Count > 0)
        {
            WorkItem next = waiting.Values
                .Where(i => !i.Rule.After.Any(waiting.ContainsKey))
                .OrderBy(i => Array.IndexOf(Stages, i.Rule.Stage)).ThenBy(i => i.CheckFirst).ThenBy(i => i.Rule.Part ?? "", StringComparer.Ordinal).ThenBy(i => i.Rule.Id, StringComparer.Ordinal)
                .First();
            waiting.Remove(next.Rule.Id);
            ordered.Add(next);
        }

        return ordered;
    }
}
