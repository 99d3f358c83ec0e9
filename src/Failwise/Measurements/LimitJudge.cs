using Failwise.Calculations;
using Failwise.Cases;
using Failwise.Units;

namespace Failwise.Measurements;

/// <summary>
/// One value against its limit, with the uncertainty of the instrument when it is known (ISO 14253-1, JCGM 106). Of several readings the
/// smallest is held against the lower limit and the largest against the upper one.
/// </summary>
internal static class LimitJudge
{
    public static Reading Judge(int number, DerivedValue v)
    {
        Limit? limit = v.Measurement.Limit;
        bool several = v.Smallest.Value < v.Largest.Value;
        Reading open = new(number, v.Measurement, LimitState.NoLimit, null, null)
        {
            Kind = v.Kind, Value = v.Value, Smallest = several ? v.Smallest : null, Largest = several ? v.Largest : null, From = v.From,
        };
        if (limit is null || (limit.Min ?? limit.Max) is null)
        {
            return open;
        }

        if (new[] { limit.Min, limit.Max }.OfType<string>().Any(l => QuantityParser.Reread(l).Unit.Dimension != v.Value.Unit.Dimension))
        {
            return open with { Note = "the limit measures something else" };
        }

        string unit = v.Value.Unit.Symbol;
        double low = limit.Min is { } min ? QuantityParser.Reread(min).In(unit) : double.NegativeInfinity;
        double high = limit.Max is { } max ? QuantityParser.Reread(max).In(unit) : double.PositiveInfinity;
        if (low >= high)
        {
            return open with { Note = "the lower limit is not below the upper one" };
        }

        LimitState state = StateOf(v, low, high);
        double? within = v.Uncertainty > 0 ? ProbabilityOf(v, low, high) : null;
        return open with { State = state, ProbabilityWithin = within, Note = within is { } p ? $"chance of being within: {PercentOf(p)}" : null };
    }

    // Nothing measured is certain.
    private static string PercentOf(double p) => p > 0.99 ? "over 99 %" : p < 0.01 ? "under 1 %" : $"{100 * p:0} %";

    private static LimitState StateOf(DerivedValue v, double low, double high)
    {
        Verdict below = double.IsInfinity(low) ? Verdict.Within : Conformance.Decide(v.Smallest.Value, v.Uncertainty, low, double.PositiveInfinity);
        Verdict above = double.IsInfinity(high) ? Verdict.Within : Conformance.Decide(v.Largest.Value, v.Uncertainty, double.NegativeInfinity, high);
        return above == Verdict.Beyond ? LimitState.Above
            : below == Verdict.Beyond ? LimitState.Below
            : above == Verdict.TooCloseToCall || below == Verdict.TooCloseToCall ? LimitState.TooClose
            : LimitState.Within;
    }

    // Half the expanded uncertainty (coverage factor 2, about 95 %) is the standard uncertainty.
    private static double ProbabilityOf(DerivedValue v, double low, double high) => Math.Min(
        Conformance.Probability(v.Smallest.Value, v.Uncertainty / 2, low, high),
        Conformance.Probability(v.Largest.Value, v.Uncertainty / 2, low, high));
}
