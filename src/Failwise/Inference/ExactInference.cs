namespace Failwise.Inference;

/// <summary>
/// Exact posteriors of a leaky noisy-OR network by variable elimination in positive arithmetic. When a part of the network would need
/// more table cells than allowed, that part alone is approximated, and the result says so: first its weak links are folded into the
/// leaks, then it is sampled.
/// </summary>
public static class ExactInference
{
    /// <param name="network">The model; never changed.</param>
    /// <param name="evidence">What was learnt, in any order.</param>
    /// <param name="queries">Nodes whose posterior is wanted.</param>
    /// <param name="limits">Null for <see cref="InferenceLimits.Default"/>.</param>
    /// <exception cref="ArgumentException">Evidence or a query names no node, or a likelihood pair is invalid.</exception>
    /// <exception cref="ContradictoryEvidenceException">The evidence has probability zero.</exception>
    public static Posterior Query(
        NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, IReadOnlyList<int> queries, InferenceLimits? limits = null) =>
        Query(network, evidence, queries, limits, null);

    /// <summary>The same, with plans kept from question to question.</summary>
    internal static Posterior Query(
        NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, IReadOnlyList<int> queries, InferenceLimits? limits, PlanCache? plans)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(queries);
        foreach (var query in queries)
        {
            if (query < 0 || query >= network.Nodes.Count)
                throw new ArgumentException($"Query {query} names no node of the network.", nameof(queries));
        }

        var answer = new QueryRun(network, evidence, queries, limits ?? InferenceLimits.Default, plans).Solve();
        return double.IsNegativeInfinity(answer.LogEvidence) ? throw Contradiction(network, evidence) : answer;
    }

    /// <summary>Natural logarithm of P(evidence); minus infinity when the evidence contradicts itself or the network.</summary>
    /// <exception cref="ArgumentException">Evidence names no node, or a likelihood pair is invalid.</exception>
    public static double LogEvidence(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, InferenceLimits? limits = null) =>
        LogEvidence(network, evidence, limits, null);

    /// <summary>The same, with plans kept from question to question.</summary>
    internal static double LogEvidence(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, InferenceLimits? limits, PlanCache? plans)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(evidence);
        return new QueryRun(network, evidence, [], limits ?? InferenceLimits.Default, plans).Solve().LogEvidence;
    }

    /// <summary>Table cells and multiplications that an exact answer would need, found without computing it; infinity past <paramref name="most"/>.</summary>
    internal static double CostOf(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, double most) =>
        new QueryRun(network, evidence, [], InferenceLimits.Default).Cost(most);

    private static ContradictoryEvidenceException Contradiction(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence)
    {
        var hard = evidence.Where(e => e.IfPresent == 0 || e.IfAbsent == 0)
            .Select(e => $"{network.Nodes[e.Node].Id} {(e.IfPresent == 0 ? "absent" : "present")}");
        return new ContradictoryEvidenceException($"This evidence cannot occur together under the network: {string.Join(", ", hard)}.");
    }
}
