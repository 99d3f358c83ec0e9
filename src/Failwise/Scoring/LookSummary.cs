namespace Failwise.Scoring;

/// <summary>Means and savings over some cases.</summary>
/// <param name="Planned">Mean looks of the planner, misses counted.</param>
/// <param name="Answered">Mean looks of the planner's order restricted to what was recorded: misses are not counted, as the other orders have none.</param>
/// <param name="Source">Mean looks in the order of the source.</param>
/// <param name="Random">Mean looks over random orders of what was recorded.</param>
/// <param name="Fewest">Mean of the fewest looks that any order of what was recorded needs.</param>
/// <param name="PlannedOverSource">Median share of looks saved over the order of the source, misses counted; below 0 when more were needed.</param>
/// <param name="PlannedOverRandom">The same over random orders.</param>
/// <param name="AnsweredOverSource">Median share of looks saved over the order of the source, misses not counted.</param>
/// <param name="AnsweredOverRandom">The same over random orders.</param>
/// <param name="Better">Cases in which the planner's order needs fewer recorded looks than the order of the source.</param>
/// <param name="Worse">Cases in which it needs more.</param>
/// <param name="Met">Cases in which it saves 40 % over the source and 30 % over random, misses not counted.</param>
public sealed record LookMeans(
    int Cases, double Planned, double Answered, double Source, double Random, double Fewest,
    double PlannedOverSource, double PlannedOverRandom, double AnsweredOverSource, double AnsweredOverRandom, int Better, int Worse, int Met)
{
    internal static LookMeans Of(IReadOnlyList<LookCounts> scores) => new(
        scores.Count,
        Mean(scores.Select(s => (double)s.Planned)), Mean(scores.Select(s => (double)s.Answered)), Mean(scores.Select(s => (double)s.InSourceOrder)),
        Mean(scores.Select(s => s.AtRandom)), Mean(scores.Select(s => (double)s.Fewest)),
        Median(scores.Select(s => 1 - (double)s.Planned / s.InSourceOrder)), Median(scores.Select(s => 1 - s.Planned / s.AtRandom)),
        Median(scores.Select(s => 1 - (double)s.Answered / s.InSourceOrder)), Median(scores.Select(s => 1 - s.Answered / s.AtRandom)),
        scores.Count(s => s.Answered < s.InSourceOrder), scores.Count(s => s.Answered > s.InSourceOrder),
        scores.Count(s => s.MeetsAim(s.Answered)));

    internal static double Mean(IEnumerable<double> values) => values.DefaultIfEmpty(0).Average();

    internal static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}

/// <summary>Sums of a look trial by one criterion of having found the root.</summary>
/// <param name="Cases">Cases in which the root stands first with all evidence.</param>
/// <param name="AtStart">Of them, those in which it is found before anything was looked at; they are left out of the rest.</param>
/// <param name="SourceLooks">How many of the others need 1, 2, 3 ... looks in the order of the source; the first is for 1.</param>
/// <param name="All">All the others.</param>
/// <param name="BestOverSource">Median share of looks that the best order of all would save over the order of the source, for all the others.</param>
/// <param name="BestOverRandom">The same over random orders.</param>
/// <param name="Choice">Those in which the order matters: random orders need more looks than the best order.</param>
/// <param name="Lengthy">Those that need three looks or more in the order of the source.</param>
/// <param name="Possible">Those in which the best order of all saves 40 % over the source and 30 % over random orders: only there the aim can be met.</param>
public sealed record LookSums(
    int Cases, int AtStart, IReadOnlyList<int> SourceLooks, LookMeans All, double BestOverSource, double BestOverRandom, LookMeans Choice, LookMeans Lengthy, LookMeans Possible)
{
    private const int LongFrom = 3;

    internal static LookSums Of(IReadOnlyList<LookCounts> counts)
    {
        LookCounts[] others = [.. counts.Where(c => c.InSourceOrder > 0)];
        int most = others.Select(c => c.InSourceOrder).DefaultIfEmpty(0).Max();
        return new LookSums(
            counts.Count, counts.Count - others.Length, [.. Enumerable.Range(1, most).Select(n => others.Count(c => c.InSourceOrder == n))],
            LookMeans.Of(others), LookMeans.Median(others.Select(c => 1 - (double)c.Fewest / c.InSourceOrder)), LookMeans.Median(others.Select(c => 1 - c.Fewest / c.AtRandom)),
            LookMeans.Of([.. others.Where(c => c.AtRandom > c.Fewest)]), LookMeans.Of([.. others.Where(c => c.InSourceOrder >= LongFrom)]),
            LookMeans.Of([.. others.Where(c => c.MeetsAim(c.Fewest))]));
    }
}

/// <summary>Sums of a look trial.</summary>
/// <param name="First">Looks until the root stands first.</param>
/// <param name="Staying">Looks until it stands first and keeps its place while the rest is told.</param>
/// <param name="Unguided">Mean looks of unguided walks through everything that such a machine has.</param>
/// <param name="SavedOverUnguided">Median share of looks that the planner saves over them, misses counted on both sides.</param>
public sealed record LookSummary(LookSums First, LookSums Staying, double Unguided, double SavedOverUnguided)
{
    /// <summary>Sums up some of the cases.</summary>
    public static LookSummary Of(IReadOnlyList<LookScore> scores)
    {
        LookScore[] others = [.. scores.Where(s => s.First.InSourceOrder > 0)];
        return new LookSummary(
            LookSums.Of([.. scores.Select(s => s.First)]), LookSums.Of([.. scores.Select(s => s.Staying)]),
            LookMeans.Mean(others.Select(s => s.Unguided)), LookMeans.Median(others.Select(s => 1 - s.First.Planned / s.Unguided)));
    }
}
