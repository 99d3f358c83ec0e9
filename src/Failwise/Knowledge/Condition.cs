using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>What must hold for a finding or circumstance to follow.</summary>
public abstract record Condition(Location At)
{
    /// <summary>The conditions that are not made of others.</summary>
    public static IEnumerable<Condition> Atoms(Condition condition) => condition switch
    {
        AllOf c => c.Parts.SelectMany(Atoms),
        AnyOf c => c.Parts.SelectMany(Atoms),
        NoneOf c => c.Parts.SelectMany(Atoms),
        _ => [condition],
    };
}

public sealed record AllOf(IReadOnlyList<Condition> Parts, Location At) : Condition(At);

public sealed record AnyOf(IReadOnlyList<Condition> Parts, Location At) : Condition(At);

/// <summary>None of the parts holds, and someone looked.</summary>
public sealed record NoneOf(IReadOnlyList<Condition> Parts, Location At) : Condition(At);

/// <summary>On how many of the places looked at.</summary>
public enum CountOver { Anywhere, One, Some, Most, All, AllButOne, AtLeast }

/// <summary>In what order or at which end.</summary>
public enum WhereAlong { Anywhere, Neighbours, FirstOnFeed, LastOnFeed, WorseAlongFeed, DriveEnd, FreeEnd, Middle, Ends, SamePlaceAgain }

/// <summary>On which edges or halves.</summary>
public enum LieOn { Anywhere, OneEdge, BothEdges, Diagonal, OneHalf, BothHalves }

/// <summary>How marks are spread over the places of a part.</summary>
/// <param name="Least">With <see cref="CountOver.AtLeast"/>: the number of places.</param>
public readonly record struct Spread(CountOver Count, int Least, WhereAlong Where, LieOn Lie)
{
    public bool IsAnywhere => Count == CountOver.Anywhere && Where == WhereAlong.Anywhere && Lie == LieOn.Anywhere;
}

/// <summary>A pattern seen on a part. An empty <paramref name="See"/> means the part was found sound.</summary>
public sealed record SightingCondition(
    string Part, IReadOnlyList<string> See, IReadOnlyList<string> On, Extent AtLeast, Spread Spread, Location At) : Condition(At);

/// <summary>What a <see cref="StatedCondition"/> refers to.</summary>
public enum StatedKind { History, Symptom, Feature, Finding }

/// <summary>A circumstance, symptom, feature or other finding holds.</summary>
public sealed record StatedCondition(StatedKind Kind, string Id, Location At) : Condition(At);

/// <summary>A number of the case lies below or above a limit, both exclusive.</summary>
public sealed record NumberCondition(string Number, double? Below, double? Above, Location At) : Condition(At);

/// <summary>The result of a calculation of the case lies below or above a value, both exclusive, or is a word.</summary>
/// <param name="Part">The part it must belong to; null for any.</param>
/// <param name="Below">In the unit of the output.</param>
/// <param name="Is">The word the output says.</param>
public sealed record ResultCondition(
    string Calculation, string Output, string? Part, double? Below, double? Above, string? Is, Location At) : Condition(At);

/// <summary>A reading stands to its limit as named: above-limit, below-limit, within, too-close.</summary>
public sealed record ReadingCondition(string Quantity, string Part, string Is, Spread Spread, Location At) : Condition(At);
