namespace Failwise.Inference;

/// <summary>One thing to repair or replace, after which the machine is tried again.</summary>
/// <param name="Name">What is done.</param>
/// <param name="Probability">Chance that this is the one fault, 0..1.</param>
/// <param name="Cost">Minutes or money, above 0.</param>
public sealed record RepairAction(string Name, double Probability, double Cost);

/// <summary>
/// The order of repair-and-try-again. With one fault, costs that do not depend on the order and a sure trial, descending
/// probability / cost is optimal; with covers to open it is only a good start.
/// Sources: "Decision-Theoretic Troubleshooting", Communications of the ACM 38(3), 1995; "The Cost of Troubleshooting Cost Clusters with
/// Inside Information", arXiv 1203.3502.
/// </summary>
public static class RepairSequence
{
    /// <summary>Best first; equal ratios keep the order given.</summary>
    /// <exception cref="ArgumentException">A cost is not above 0, or a probability lies outside 0..1.</exception>
    public static IReadOnlyList<RepairAction> Order(IEnumerable<RepairAction> actions)
    {
        var list = actions.ToList();
        foreach (var action in list)
        {
            if (!(action.Cost > 0)) throw new ArgumentException($"Action '{action.Name}': the cost {action.Cost} is not above 0.");
            if (action.Probability is not (>= 0 and <= 1))
                throw new ArgumentException($"Action '{action.Name}': the probability {action.Probability} lies outside 0 to 1.");
        }

        return list.OrderByDescending(a => a.Probability / a.Cost).ToList();
    }

    /// <summary>Sum of each action's cost times the chance that all before it failed.</summary>
    public static double ExpectedCost(IEnumerable<RepairAction> sequence)
    {
        double cost = 0, notYetFixed = 1;
        foreach (var action in sequence)
        {
            cost += action.Cost * notYetFixed;
            notYetFixed -= action.Probability;
        }

        return cost;
    }
}
