using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>Finds rules that load but cannot do their work: findings nobody uses, causes that nothing can show, twins.</summary>
public static class RuleLint
{
    /// <summary>Warnings about the rule base.</summary>
    public static IReadOnlyList<Problem> Run(KnowledgeBase knowledge)
    {
        ProblemList problems = new();
        HashSet<string> usedFindings = [];
        foreach (Cause cause in knowledge.Causes.Values)
        {
            foreach (CauseLink link in cause.Leaves.Concat(cause.RaisedBy).Where(l => l.Target == LinkTarget.Finding))
            {
                usedFindings.Add(link.Id);
            }
        }

        foreach (FindingRule rule in knowledge.Findings.Values)
        {
            usedFindings.UnionWith(ReferenceCheck.FindingsIn(rule.When));
        }

        usedFindings.UnionWith(knowledge.Work.Values.SelectMany(w => w.Because).Where(t => t.Finding is not null).Select(t => t.Finding!));
        foreach (FindingRule rule in knowledge.Findings.Values.Where(r => !usedFindings.Contains(r.Id)))
        {
            problems.Warning("FW031", rule.At, $"no cause, rule or work uses the finding '{rule.Id}': link it or retire it.");
        }

        HashSet<string> worked = [.. knowledge.Work.Values.SelectMany(w => w.Because).Where(t => t.Cause is not null).Select(t => t.Cause!)];
        HashSet<string> reachedStates = [.. knowledge.Causes.Values.SelectMany(c => c.LeadsTo).Select(l => l.Id)];
        foreach (Cause cause in knowledge.Causes.Values.OrderBy(c => c.Id, StringComparer.Ordinal))
        {
            if (cause.Leaves.Count == 0 && cause.LeadsTo.Count == 0)
            {
                problems.Warning("FW036", cause.At, $"'{cause.Id}' leaves nothing behind and leads to nothing: no evidence can ever show it.");
            }

            if (cause.IsRoot && !worked.Contains(cause.Id))
            {
                problems.Warning("FW037", cause.At, $"no work names the root '{cause.Id}': write what removes it.");
            }

            else if (cause.IsRoot)
            {
                WarnOfRemoval(knowledge, cause, problems);
            }

            if (!cause.IsRoot && !reachedStates.Contains(cause.Id))
            {
                problems.Warning("FW038", cause.At, $"no cause leads to the state '{cause.Id}': its signs point to no root.");
            }
        }

        WarnOfStages(knowledge, problems);
        WarnOfTwins(knowledge, problems);
        return problems.Sorted();
    }

    private static void WarnOfRemoval(KnowledgeBase knowledge, Cause root, ProblemList problems)
    {
        WorkRule[] removing = [.. knowledge.Work.Values.Where(w => Removal.Removes(knowledge, w, root.Id))];
        if (removing.Length == 0)
        {
            problems.Warning("FW072", root.At, $"work names the root '{root.Id}' but none removes it: write what takes it away.");
        }

        if (!removing.Any(w => w.Verify is not null) && !knowledge.Work.Values.Any(w => w.Verify is not null && Removal.Proves(w, root.Id)))
        {
            problems.Warning("FW073", root.At, $"no work shows that the root '{root.Id}' is gone: write under verify how to see it.");
        }
    }

    /// <summary>Reports list the work by stage; work that waits for a later stage would be read before what it needs.</summary>
    private static void WarnOfStages(KnowledgeBase knowledge, ProblemList problems)
    {
        foreach (WorkRule work in knowledge.Work.Values)
        {
            foreach (WorkRule before in work.After.Select(id => knowledge.Work[id]).Where(b => Stage(b) > Stage(work)))
            {
                problems.Warning("FW075", work.At, $"'{work.Id}' ({work.Stage}) comes after '{before.Id}', which belongs to a later stage ({before.Stage}): move one of the two.");
            }
        }

        static int Stage(WorkRule work) => Array.IndexOf(WorkShapes.Stages, work.Stage);
    }

    private static void WarnOfTwins(KnowledgeBase knowledge, ProblemList problems)
    {
        foreach (IGrouping<string, Cause> twins in knowledge.Causes.Values.Where(c => c.IsRoot)
            .GroupBy(c => string.Join('|', c.Leaves.Concat(c.LeadsTo).Concat(c.RaisedBy).Select(l => $"{l.Target}/{l.Id}/{l.Strength:0.00}").Distinct().Order(StringComparer.Ordinal)) + string.Join('|', c.Needs) + string.Join('|', c.Machines), StringComparer.Ordinal)
            .Where(g => g.Count() > 1))
        {
            Cause[] all = [.. twins.OrderBy(c => c.Id, StringComparer.Ordinal)];
            if (!all[1].LooksLike.Any(l => l.Id == all[0].Id))
            {
                problems.Warning("FW039", all[1].At, $"nothing can tell '{all[1].Id}' from '{all[0].Id}': add a sign that only one of them leaves, or say under looks-like how to tell.");
            }
        }
    }
}
