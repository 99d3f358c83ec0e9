using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cases;

/// <summary>The machine on the bench and its layout.</summary>
/// <param name="Kinds">Kinds of machine: an engine with its gearbox has two.</param>
/// <param name="Cylinders">Number of cylinders; null when not said.</param>
/// <param name="Mains">Number of main bearings; null when not said.</param>
/// <param name="Feed">Main bearings in the order in which the oil reaches them; null when not said.</param>
/// <param name="DriveEndFirst">True when No. 1 stands at the drive end.</param>
/// <param name="NumberOne">Which end No. 1 is, in the writer's words.</param>
/// <param name="Features">Features the build has.</param>
/// <param name="Without">Features the build has not, stated or excluded by a stated one.</param>
public sealed record Machine(
    string? Name, IReadOnlyList<string> Kinds, int? Cylinders, int? Mains, IReadOnlyList<int>? Feed, bool DriveEndFirst, string? NumberOne,
    IReadOnlyList<string> Features, IReadOnlyList<string> Without);

/// <summary>How many of the places an observation speaks of, when it gives no numbers.</summary>
public enum At { Unsaid, Numbers, One, Some, Most, All, Neighbours, FirstOnFeed, LastOnFeed }

/// <summary>What was made of a part: a pattern seen, found sound, or looked for and not found.</summary>
public enum Look { Seen, Sound, NotFound }

/// <summary>One thing seen on one part.</summary>
/// <param name="Number">Position in the case file, from 1.</param>
/// <param name="Pattern">The pattern seen or not found; null when sound.</param>
/// <param name="Places">Numbers along the machine, when given.</param>
/// <param name="On">Place words.</param>
/// <param name="Sure">Likelihood ratio of the observer, at least 1.</param>
/// <param name="Written">Words of the case where they differ from the preferred ones.</param>
public sealed record Observation(
    int Number, string Part, Look Look, string? Pattern, At Spread, IReadOnlyList<int> Places, IReadOnlyList<string> On, Extent Extent,
    double Sure, string? SureWord, string? Note, string? Photo, string? Written, Location Location);

/// <summary>A circumstance or symptom that was stated, or denied.</summary>
public sealed record Statement(string Id, bool Holds, Location At);

/// <summary>A part that nobody looked at, and why.</summary>
public sealed record NotLookedAt(string Part, string? Reason, Location At);

/// <summary>A limit and where it comes from.</summary>
public sealed record Limit(string? Min, string? Max, string? From);

/// <summary>A measured value as written.</summary>
public sealed record Measurement(
    string Quantity, string Part, IReadOnlyList<int> Places, IReadOnlyList<string> On, string Value, Limit? Limit, string? Instrument, string? Uncertainty,
    string? Note, Location At);

/// <summary>A photo of the case.</summary>
public sealed record Photo(string File, string? Shows, string? Part, Location At);

/// <summary>A teardown: what was known, seen, measured, and not looked at. Immutable.</summary>
public sealed record TeardownCase(
    string Title, Machine Machine, IReadOnlyList<Statement> History, IReadOnlyDictionary<string, double> Numbers, IReadOnlyList<Statement> Symptoms,
    IReadOnlyList<Observation> Observations, IReadOnlyList<NotLookedAt> NotLookedAt, IReadOnlyList<Measurement> Measurements,
    IReadOnlyList<Photo> Photos, IReadOnlyList<string> Notes, string File)
{
    /// <summary>Warnings met while the case was read.</summary>
    public IReadOnlyList<Problem> Warnings { get; init; } = [];
}
