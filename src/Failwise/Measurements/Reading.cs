using Failwise.Cases;
using Failwise.Calculations;
using Failwise.Units;

namespace Failwise.Measurements;

/// <summary>How a measured value stands to its limit.</summary>
public enum LimitState { NoLimit, Within, Above, Below, TooClose }

/// <summary>Whether a value was read, or follows from several readings.</summary>
public enum ReadingKind { Written, Size, Taper, OutOfRound, Clearance }

/// <summary>A measured value judged against its limit.</summary>
/// <param name="Number">Readings of the case count from 1 in its order; values worked out from them follow.</param>
/// <param name="Measurement">As written; for a value worked out, in the same form, with the limit that was applied.</param>
/// <param name="ProbabilityWithin">Probability of conformance when the uncertainty is known (JCGM 106), 0 to 1; else null.</param>
/// <param name="Note">What goes with the judgement, in words.</param>
public sealed record Reading(int Number, Measurement Measurement, LimitState State, double? ProbabilityWithin, string? Note)
{
    public ReadingKind Kind { get; init; } = ReadingKind.Written;

    /// <summary>The value: as read, or the mean of several readings.</summary>
    public required Quantity Value { get; init; }

    /// <summary>Smallest of several readings, or the smallest clearance; null for a single value.</summary>
    public Quantity? Smallest { get; init; }

    /// <summary>Largest of several readings, or the largest clearance; null for a single value.</summary>
    public Quantity? Largest { get; init; }

    /// <summary>Numbers of the readings it was worked out from; empty for one that was read.</summary>
    public IReadOnlyList<int> From { get; init; } = [];

    /// <summary>The value as written or worked out, with the other system in brackets.</summary>
    public string InBothSystems => Value.InBothSystems();
}

/// <summary>Figures of the case worked by one calculation, or why that was not possible.</summary>
/// <param name="Number">Position among the calculations of the diagnosis, from 1.</param>
/// <param name="Request">The figures of the case that it belongs to.</param>
/// <param name="Result">Inputs, outputs, notes, and what is missing or wrong.</param>
/// <param name="Origins">For inputs that were not given: where they come from, in words.</param>
public sealed record WorkedNumber(int Number, NumberRequest Request, CalculationResult Result, IReadOnlyDictionary<string, string> Origins);

/// <summary>Everything that was measured: readings against limits, and what the figures of the case give.</summary>
public sealed record Measured(IReadOnlyList<Reading> Readings, IReadOnlyList<WorkedNumber> Calculations)
{
    /// <summary>Nothing measured.</summary>
    public static Measured Nothing { get; } = new([], []);
}
