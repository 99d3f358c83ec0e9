namespace Failwise.Checks;

/// <summary>How much certainty an answer is expected to bring: the drop of the entropies of the roots, each taken as a yes-or-no question.</summary>
internal static class LookValue
{
    /// <summary>Entropy of a yes-or-no question [bit].</summary>
    public static double Entropy(double p) => p is <= 0 or >= 1 ? 0 : -(p * Math.Log2(p) + (1 - p) * Math.Log2(1 - p));

    /// <summary>Expected drop over all roots [bit], never below 0.</summary>
    /// <param name="before">Probability of each root now.</param>
    /// <param name="outcomes">Chance of each outcome, and the roots after it; the chances add up to 1.</param>
    /// <param name="weights">How much each root counts, 0 to 1; all alike when left out.</param>
    public static double Gain(
        IReadOnlyList<double> before, IReadOnlyList<(double Chance, IReadOnlyList<double> After)> outcomes, IReadOnlyList<double>? weights = null)
    {
        double gain = Sum(before);
        foreach ((double chance, IReadOnlyList<double> after) in outcomes)
        {
            gain -= chance * Sum(after);
        }

        return Math.Max(0, gain);

        double Sum(IReadOnlyList<double> p) => p.Select((x, i) => (weights?[i] ?? 1) * Entropy(x)).Sum();
    }

    /// <summary>
    /// Expected drop for one root when the first sign that shows is reported, or that none shows, with the signs taken as independent once
    /// the root is known.
    /// </summary>
    /// <param name="p">Probability of the root.</param>
    /// <param name="now">Probability of each sign, in the order in which they are looked for.</param>
    /// <param name="given">Probability of each sign with the root at work.</param>
    public static double QuickGain(double p, ReadOnlySpan<double> now, ReadOnlySpan<double> given)
    {
        if (p is <= 0 or >= 1)
        {
            return 0;
        }

        double gain = Entropy(p), leftWith = 1, leftWithout = 1;
        for (int i = 0; i <= now.Length; i++)
        {
            bool last = i == now.Length;
            double with = last ? 1 : given[i];
            double without = last ? 1 : Math.Clamp((now[i] - p * given[i]) / (1 - p), 0, 1);
            double both = p * leftWith * with, other = (1 - p) * leftWithout * without;
            gain -= both + other > 0 ? (both + other) * Entropy(both / (both + other)) : 0;
            leftWith *= 1 - with;
            leftWithout *= 1 - without;
        }

        return Math.Max(0, gain);
    }
}
