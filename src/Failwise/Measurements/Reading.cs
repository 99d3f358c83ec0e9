using Failwise.Cases;

namespace Failwise.Measurements;

/// <summary>How a measured value stands to its limit.</summary>
public enum LimitState { NoLimit, Within, Above, Below, TooClose }

/// <summary>A measurement judged against its limit.</summary>
/// <param name="Number">Position in the case file, from 1.</param>
/// <param name="ProbabilityWithin">Probability of conformance when the uncertainty is known (JCGM 106), 0 to 1; else null.</param>
public sealed record Reading(int Number, Measurement Measurement, LimitState State, double? ProbabilityWithin, string? Note);
