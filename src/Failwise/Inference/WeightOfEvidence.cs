namespace Failwise.Inference;

/// <summary>
/// Weights of evidence in decibans: 10 * log10 of the factor by which odds move. 10 db is 10:1; 1 db moves evens to about 5:4.
/// Source: "General Report on Tunny", GC&amp;CS, 1945, chapter 21.
/// </summary>
public static class WeightOfEvidence
{
    /// <param name="factor">A ratio of odds or of likelihoods, above 0.</param>
    public static double OfFactor(double factor) => 10 * Math.Log10(factor);

    public static double ToFactor(double decibans) => Math.Pow(10, decibans / 10);

    /// <summary>The odds of a probability, in decibans; infinite at 0 and 1.</summary>
    public static double OfProbability(double probability) => OfFactor(probability / (1 - probability));

    public static double ToProbability(double decibans) => 1 / (1 + ToFactor(-decibans));

    /// <summary>
    /// For each item, how far the target's odds would fall if this item alone were taken away. These do not add up to the whole when
    /// items say the same thing twice.
    /// </summary>
    /// <exception cref="ContradictoryEvidenceException">The evidence has probability zero.</exception>
    public static IReadOnlyList<double> LeaveOneOut(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, int target)
    {
        var all = Odds(network, evidence, target);
        var weights = new double[evidence.Count];
        for (var i = 0; i < weights.Length; i++)
            weights[i] = all - Odds(network, [.. evidence.Take(i), .. evidence.Skip(i + 1)], target);
        return weights;
    }

    /// <summary>
    /// For each item, how far the target's odds move when it is added after those before it. These add up exactly to posterior minus
    /// prior, but depend on the order.
    /// </summary>
    /// <exception cref="ContradictoryEvidenceException">The evidence has probability zero.</exception>
    public static IReadOnlyList<double> Sequential(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, int target)
    {
        var weights = new double[evidence.Count];
        var before = Odds(network, [], target);
        for (var i = 0; i < weights.Length; i++)
        {
            var after = Odds(network, [.. evidence.Take(i + 1)], target);
            weights[i] = after - before;
            before = after;
        }

        return weights;
    }

    /// <summary>
    /// log2 of (product of each item's own probability / probability of all together): below 0 when the items support one another,
    /// above 0 when they pull apart or the case is a rare one. Source: "Data Conflict Analysis", HUGIN manual, release 9.3.
    /// </summary>
    public static double Conflict(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence)
    {
        var log = -ExactInference.LogEvidence(network, evidence);
        foreach (var item in evidence) log += ExactInference.LogEvidence(network, [item]);
        return log / Math.Log(2);
    }

    private static double Odds(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, int target) =>
        OfProbability(ExactInference.Query(network, evidence, [target]).Probabilities[0]);
}
