using Failwise.Calculations;
using Failwise.Cases;
using Failwise.Units;
namespace Failwise.Measurements;

/// <summary>Judges measurements against their limits, with the uncertainty of the instrument when it is known (ISO 14253-1, JCGM 106).</summary>
public static class MeasurementAssessor
{
    /// <summary>One reading per measurement of the case, in the order of the case.</summary>
    public static IReadOnlyList<Reading> Assess(TeardownCase teardown) =>
        [.. teardown.Measurements.Select((m, i) => Assess(i + 1, m))];

    private static Reading Assess(int number, Measurement m)
    {
        if (m.Limit is null || (m.Limit.Min is null && m.Limit.Max is null))
        {
            return new Reading(number, m, LimitState.NoLimit, null, null);
        }

        Quantity value = Parse(m.Value);
        string unit = value.Unit.Symbol;
        double low = m.Limit.Min is { } min ? Parse(min).In(unit) : double.NegativeInfinity;
        double high = m.Limit.Max is { } max ? Parse(max).In(unit) : double.PositiveInfinity;
        double spread = m.Uncertainty is { } u ? Parse(u).In(unit) : 0;
        if (low >= high)
        {
            return new Reading(number, m, LimitState.NoLimit, null, "the lower limit is not below the upper one");
        }

        // Half the expanded uncertainty (coverage factor 2, about 95 %) is the standard uncertainty.
        double? within = spread > 0 ? Conformance.Probability(value.Value, spread / 2, low, high) : null;
        LimitState state = Conformance.Decide(value.Value, spread, low, high) switch
        {
            Verdict.Within => LimitState.Within,
            Verdict.TooCloseToCall => LimitState.TooClose,
            _ => value.Value > high ? LimitState.Above : LimitState.Below,
        };
        return new Reading(number, m, state, within, within is { } p ? $"chance of being within: {100 * p:0} %" : null);
    }

    private static Quantity Parse(string text) =>
        QuantityParser.TryParse(text, out Quantity? quantity, out string? reason) ? quantity : throw new InvalidOperationException(reason);
}
