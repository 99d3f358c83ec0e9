using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>A shaft that turns or slides in a bore, and the clearance that the two make.</summary>
/// <param name="Bore">Part whose inside diameter is read.</param>
/// <param name="Shaft">Part whose outside diameter is read; null where only the bore is measured, such as a housing bore.</param>
/// <param name="Clearance">Quantity that bore less shaft gives, such as bearing-clearance.</param>
/// <param name="Of">Part to which the clearance belongs.</param>
public sealed record Fit(string Bore, string? Shaft, string? Clearance, string? Of, Location At);

/// <summary>One row of a limit table, with its values as written.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="Quantity">What is limited, such as diameter, taper, out-of-round or bearing-clearance.</param>
/// <param name="Min">Least value a part in use may have; null when there is none.</param>
/// <param name="Max">Most value a part in use may have; null when there is none.</param>
/// <param name="NewMin">Least value of a new part; null when not given.</param>
/// <param name="NewMax">Most value of a new part; null when not given.</param>
/// <param name="From">Where the row comes from.</param>
/// <param name="Example">True for a published figure of another machine, which shows the method and judges nobody's engine.</param>
public sealed record LimitRow(
    string Part, string Quantity, string? Min, string? Max, string? NewMin, string? NewMax, string From, bool Example, Location At);

/// <summary>A table of limits that travels with the rules.</summary>
public sealed record LimitSet(string Id, string Title, IReadOnlyList<LimitRow> Rows, IReadOnlyList<SourceRef> Sources, Location At);
