namespace Failwise.Inference;

/// <summary>What a check promises to tell about one cause.</summary>
/// <param name="ProbabilityPresent">Chance that the check finds the sign.</param>
/// <param name="GainBits">Expected fall of the cause's entropy, in bits; 0 or more.</param>
/// <param name="IfPresent">The cause's probability if the sign is found.</param>
/// <param name="IfAbsent">The cause's probability if it is not.</param>
public readonly record struct CheckPromise(double ProbabilityPresent, double GainBits, double IfPresent, double IfAbsent);

/// <summary>What a decision is worth without a test, with it, and with perfect knowledge, in the payoffs' unit.</summary>
public readonly record struct DecisionValue(double WithoutTest, double WithTest, double WithPerfectKnowledge)
{
    public double OfTest => WithTest - WithoutTest;

    public double OfPerfectKnowledge => WithPerfectKnowledge - WithoutTest;
}

/// <summary>How much a check is worth before it is made.</summary>
public static class ValueOfInformation
{
    /// <summary>Entropy of a yes-or-no question in bits.</summary>
    public static double Entropy(double probability) => Bits(probability) + Bits(1 - probability);

    /// <summary>Entropy of a distribution over exclusive outcomes in bits.</summary>
    public static double Entropy(IReadOnlyList<double> distribution)
    {
        var bits = 0.0;
        foreach (var p in distribution) bits += Bits(p);
        return bits;
    }

    /// <summary>The expected gain about one cause from looking for one sign, with no error of the observer.</summary>
    /// <exception cref="ContradictoryEvidenceException">The evidence has probability zero.</exception>
    public static CheckPromise OfCheck(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, int cause, int sign)
    {
        var now = ExactInference.Query(network, evidence, [cause, sign]);
        double before = now.Of(cause), yes = now.Of(sign);
        var ifPresent = yes > 0 ? After(network, evidence, cause, Evidence.Present(sign)) : before;
        var ifAbsent = yes < 1 ? After(network, evidence, cause, Evidence.Absent(sign)) : before;
        var gain = Entropy(before) - yes * Entropy(ifPresent) - (1 - yes) * Entropy(ifAbsent);
        return new CheckPromise(yes, Math.Max(0, gain), ifPresent, ifAbsent);
    }

    /// <summary>The value of a test before acting.</summary>
    /// <param name="prior">Probability of each state; adds up to 1.</param>
    /// <param name="outcomeGivenState">For each outcome of the test, its probability in each state.</param>
    /// <param name="payoff">For each action, what it pays in each state.</param>
    /// <exception cref="ArgumentException">A row does not have one number for each state.</exception>
    public static DecisionValue OfTest(
        IReadOnlyList<double> prior, IReadOnlyList<IReadOnlyList<double>> outcomeGivenState, IReadOnlyList<IReadOnlyList<double>> payoff)
    {
        if (outcomeGivenState.Concat(payoff).Any(row => row.Count != prior.Count))
            throw new ArgumentException($"Every row needs {prior.Count} numbers, one for each state.");
        var withTest = 0.0;
        foreach (var outcome in outcomeGivenState)
            withTest += Best(payoff, prior.Select((p, s) => p * outcome[s]).ToArray());
        var perfect = prior.Select((p, s) => p * payoff.Max(action => action[s])).Sum();
        return new DecisionValue(Best(payoff, prior), withTest, perfect);
    }

    private static double Best(IReadOnlyList<IReadOnlyList<double>> payoff, IReadOnlyList<double> weights) =>
        payoff.Max(action => action.Select((value, s) => value * weights[s]).Sum());

    private static double After(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, int cause, Evidence item) =>
        ExactInference.Query(network, [.. evidence, item], [cause]).Probabilities[0];

    private static double Bits(double p) => p > 0 ? -p * Math.Log2(p) : 0;
}
