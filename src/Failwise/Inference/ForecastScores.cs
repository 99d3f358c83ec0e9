namespace Failwise.Inference;

/// <summary>Scores of probability forecasts against what turned out to be so; lower is better for Brier and log loss.</summary>
public static class ForecastScores
{
    /// <summary>Mean squared difference between the probability and 1 or 0.</summary>
    public static double Brier(IReadOnlyList<double> probabilities, IReadOnlyList<bool> outcomes)
    {
        CheckCounts(probabilities.Count, outcomes.Count);
        return probabilities.Zip(outcomes, (p, o) => Math.Pow(p - (o ? 1 : 0), 2)).Average();
    }

    /// <summary>Mean of -ln(probability given to what turned out to be so).</summary>
    public static double LogLoss(IReadOnlyList<double> probabilityOfTruth)
    {
        CheckCounts(probabilityOfTruth.Count, probabilityOfTruth.Count);
        return probabilityOfTruth.Average(p => -Math.Log(p));
    }

    /// <summary>How many cases have the truth among the first <paramref name="k"/> of their ranking.</summary>
    public static int HitsInTop(int k, IReadOnlyList<IReadOnlyList<int>> rankings, IReadOnlyList<int> truths)
    {
        CheckCounts(rankings.Count, truths.Count);
        return rankings.Zip(truths, (ranking, truth) => ranking.Take(k).Contains(truth)).Count(hit => hit);
    }

    private static void CheckCounts(int forecasts, int outcomes)
    {
        if (forecasts == 0 || forecasts != outcomes)
            throw new ArgumentException($"{forecasts} forecasts cannot be scored against {outcomes} outcomes.");
    }
}
