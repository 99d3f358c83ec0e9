namespace Failwise.Scoring;

/// <summary>Sums of a look trial.</summary>
/// <param name="AtStart">Cases in which the root stands first before anything was looked at.</param>
/// <param name="Compared">The others, over which the savings are taken.</param>
/// <param name="SavedOverSource">Median share of looks saved over the order of the source; below 0 when more were needed.</param>
/// <param name="SavedOverRandom">Median share of looks saved over a random order.</param>
public sealed record LookSummary(
    int Cases, int AtStart, int Compared, double MeanPlanned, double MeanSource, double MeanRandom, double MedianPlanned, double MedianSource, double MedianRandom,
    double SavedOverSource, double SavedOverRandom, double MeanAnswered, double MeanUnguided, double AnsweredOverSource, double AnsweredOverRandom, double SavedOverUnguided)
{
    /// <summary>Sums up some of the cases.</summary>
    public static LookSummary Of(IReadOnlyList<LookScore> scores)
    {
        LookScore[] compared = [.. scores.Where(s => s.InSourceOrder > 0)];
        return new LookSummary(
            scores.Count, scores.Count - compared.Length, compared.Length,
            Mean(compared.Select(s => (double)s.Planned)), Mean(compared.Select(s => (double)s.InSourceOrder)), Mean(compared.Select(s => s.AtRandom)),
            Median(compared.Select(s => (double)s.Planned)), Median(compared.Select(s => (double)s.InSourceOrder)), Median(compared.Select(s => s.AtRandom)),
            Median(compared.Select(s => 1 - (double)s.Planned / s.InSourceOrder)), Median(compared.Select(s => 1 - s.Planned / s.AtRandom)),
            Mean(compared.Select(s => (double)s.Answered)), Mean(compared.Select(s => s.Unguided)),
            Median(compared.Select(s => 1 - (double)s.Answered / s.InSourceOrder)), Median(compared.Select(s => 1 - s.Answered / s.AtRandom)),
            Median(compared.Select(s => 1 - s.Planned / s.Unguided)));
    }

    private static double Mean(IEnumerable<double> values) => values.DefaultIfEmpty(0).Average();

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
