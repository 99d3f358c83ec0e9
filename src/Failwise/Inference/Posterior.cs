namespace Failwise.Inference;

/// <summary>How much work an exact answer may cost, and what the fallbacks use when it would cost more.</summary>
public sealed record InferenceLimits
{
    public static InferenceLimits Default { get; } = new();

    /// <summary>
    /// Largest number of table cells one connected part of the network may need (8 bytes each, twice for posteriors; never more than
    /// 2^30). A part is also refused when it would take more than 64 multiplications for each cell allowed.
    /// </summary>
    public long MaxTableCells { get; init; } = 1L << 24;

    /// <summary>First fallback: links weaker than this are folded into the leak of their child.</summary>
    public double WeakLink { get; init; } = 0.05;

    /// <summary>Second fallback: number of weighted samples.</summary>
    public int Samples { get; init; } = 200_000;

    /// <summary>Seed of the sampler; the same seed gives the same answer.</summary>
    public int Seed { get; init; } = 1;
}

/// <summary>A range that holds the exact value with about 95 % confidence.</summary>
public readonly record struct ProbabilityRange(double Low, double High);

/// <summary>The answer to one query.</summary>
/// <param name="LogEvidence">Natural logarithm of P(evidence).</param>
/// <param name="Queries">The nodes asked for, in the order asked.</param>
/// <param name="Probabilities">P(node | evidence) for each of <paramref name="Queries"/>; a node that the evidence does not touch keeps its prior marginal.</param>
/// <param name="Width">Base-2 logarithm of all table cells of the largest connected part, rounded up, before any fallback; a lower bound when the planner gave up.</param>
/// <param name="Exact">False when any part had to be approximated.</param>
/// <param name="Approximation">What was approximated and how, in a sentence; null when exact.</param>
/// <param name="Ranges">Confidence ranges for each query when some part was sampled (exact parts have a range of no width); null otherwise.</param>
/// <param name="WeakMassFolded">
/// When weak links were folded: the expected number of times, before any evidence, that a folded link would have fired. Null otherwise.
/// </param>
public sealed record Posterior(
    double LogEvidence,
    IReadOnlyList<int> Queries,
    IReadOnlyList<double> Probabilities,
    int Width,
    bool Exact,
    string? Approximation,
    IReadOnlyList<ProbabilityRange>? Ranges,
    double? WeakMassFolded)
{
    /// <summary>The posterior of a node that was asked for.</summary>
    /// <exception cref="ArgumentException">The node was not asked for.</exception>
    public double Of(int node)
    {
        for (var i = 0; i < Queries.Count; i++)
            if (Queries[i] == node) return Probabilities[i];
        throw new ArgumentException($"Node {node} was not among the queries.", nameof(node));
    }
}
