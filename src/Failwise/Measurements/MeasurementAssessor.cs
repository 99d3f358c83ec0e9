using Failwise.Cases;

namespace Failwise.Measurements;

/// <summary>Judges measurements against their limits.</summary>
public static class MeasurementAssessor
{
    /// <summary>One reading per measurement of the case, in the order of the case.</summary>
    public static IReadOnlyList<Reading> Assess(TeardownCase teardown) =>
        [.. teardown.Measurements.Select((m, i) => new Reading(i + 1, m, LimitState.NoLimit, null, null))];
}
