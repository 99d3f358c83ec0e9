using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Work;

namespace Failwise.Reports;

/// <summary>The plan of work for the screen: scopes, decisions, steps in order, orders. The sheets to fill in come with Markdown.</summary>
public static class PlanText
{
    /// <summary>Writes the plan as plain text.</summary>
    public static string Write(Diagnosis diagnosis)
    {
        ScreenText text = new();
        WorkPlan plan = diagnosis.Work;
        text.Line("Work plan: " + diagnosis.Case.Title, "");
        WriteScopes(text, plan, diagnosis.Estimate);
        WriteDecisions(text, diagnosis.Knowledge, plan);
        WriteRemovals(text, diagnosis.Knowledge, plan);
        WriteSteps(text, plan);
        WriteDownstream(text, plan);
        WriteOrders(text, diagnosis.Knowledge, plan);
        text.Heading("SHEETS");
        text.Line($"{plan.Sheets.CloseUp.Count} lines before closing up, {plan.Sheets.FirstStart.Count} for the first start, {plan.Sheets.FollowUp.Count} afterwards: --format markdown prints them to fill in.", "  ");
        text.Line("Limits and torques come from the maker's manual of this machine.", "  ");
        return text.ToString();
    }

    private static void WriteScopes(ScreenText text, WorkPlan plan, JobEstimate? estimate)
    {
        if (plan.Scopes.Count == 0)
        {
            text.Line("No corrective work follows from what was found.", "");
            return;
        }

        text.Heading("HOW FAR TO GO");
        foreach (ScopeOption scope in plan.Scopes)
        {
            ScopeCost? cost = estimate?.Scopes.First(c => c.Scope == scope.Id);
            text.Line($"- {scope.Title}: {Phrases.Steps(scope.Steps.Count)}, {PlanWords.Hours(scope.Time)}{(cost is null ? "" : ", " + PlanWords.Money(cost.Total, estimate!.Currency))}", "  ");
            text.Line($"chance that a cause stays at work: {PlanWords.Risk(scope)}", "    ");
            if (cost is { Unpriced.Count: > 0 })
            {
                text.Line($"not in the sum: {string.Join(", ", cost.Unpriced)}", "    ");
            }
        }
    }

    private static void WriteDecisions(ScreenText text, KnowledgeBase knowledge, WorkPlan plan)
    {
        text.Heading("WHAT BECOMES OF EACH PART");
        foreach (PartDecision d in plan.Decisions)
        {
            text.Line($"{PlanWords.Say(d.Decision),-16} {PlanWords.Part(knowledge, d.Part, d.Places)}: {PlanWords.Limit(d)}{(d.Readings.Count > 0 ? "; " + string.Join("; ", d.Readings) : "")}", "  ");
        }
    }

    private static void WriteRemovals(ScreenText text, KnowledgeBase knowledge, WorkPlan plan)
    {
        if (plan.Removals.Count == 0)
        {
            return;
        }

        text.Heading("HOW EACH CAUSE IS REMOVED");
        foreach (CauseRemoval r in plan.Removals)
        {
            text.Line($"{r.Cause.Title} ({PlanWords.Percent(r.Probability)}){(r.CheckFirst ? ", check first" : "")}", "  ");
            foreach (string id in r.Inside)
            {
                text.Line("inside   " + knowledge.Work[id].Title, "     ");
            }

            foreach (string id in r.Outside)
            {
                text.Line("outside  " + knowledge.Work[id].Title, "     ");
            }
        }
    }

    private static void WriteSteps(ScreenText text, WorkPlan plan)
    {
        if (plan.Items.Count == 0)
        {
            return;
        }

        text.Heading("STEPS, IN ORDER");
        int number = 1;
        foreach (WorkItem item in plan.Items)
        {
            text.Line($"{number++,3}. {(item.CheckFirst ? "(check first) " : "")}{item.Rule.Title}   [{item.Rule.Id}]", "");
            if (item.Rule.Hold is { } hold)
            {
                text.Line("hold: " + hold, "     ");
            }
        }
    }

    private static void WriteDownstream(ScreenText text, WorkPlan plan)
    {
        foreach (IGrouping<string, DownstreamLine> circuit in plan.Downstream.GroupBy(d => d.Circuit))
        {
            text.Heading("DOWNSTREAM: " + circuit.Key);
            foreach (DownstreamLine line in circuit)
            {
                text.Line($"{PlanWords.Of(line.Action),-8} {line.Says}", "  ");
            }
        }
    }

    private static void WriteOrders(ScreenText text, KnowledgeBase knowledge, WorkPlan plan)
    {
        if (plan.Orders.MachineShop.Count > 0)
        {
            text.Heading("MACHINE SHOP");
            foreach (ShopJob job in plan.Orders.MachineShop)
            {
                text.Line($"- {(job.CheckFirst ? "(check first) " : "")}{PlanWords.Part(knowledge, job.Part, job.Places)}: {job.Operation}. {job.Finish}", "  ");
            }
        }

        if (plan.Orders.Parts.Count > 0)
        {
            text.Heading("PARTS");
            foreach (PartsLine p in plan.Orders.Parts)
            {
                text.Line($"- {(p.CheckFirst ? "(check first) " : "")}{p.Item}: {(p.Count is { } n ? $"{n}, {p.CountFrom}" : p.CountFrom)}{(p.Size is { } size ? "; " + size : "")}{(p.OrderAfter is { } after ? "; " + after : "")}", "  ");
            }
        }
    }
}
