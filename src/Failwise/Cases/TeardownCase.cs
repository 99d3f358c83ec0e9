using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Units;

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
/// <param name="Example">True for a published figure of another machine, which shows the method only.</param>
public sealed record Limit(string? Min, string? Max, string? From, bool Example = false);

/// <summary>One of several readings at one place of a part.</summary>
/// <param name="Plane">Where along the part, in the writer's words, such as a or b.</param>
/// <param name="Direction">Which way across it, such as x or y; empty when not said.</param>
public sealed record Spot(string Plane, string Direction, Quantity Value, Location At);

/// <summary>Figures of the case for a calculation.</summary>
/// <param name="Number">Position in the case file, from 1.</param>
/// <param name="WorkOut">The sheet or the calculation.</param>
/// <param name="When">The state of running that the figures hold for, in the writer's words.</param>
/// <param name="Given">Name to text as written.</param>
public sealed record NumberRequest(
    int Number, string WorkOut, string? Part, IReadOnlyList<int> Places, string? When, IReadOnlyDictionary<string, string> Given, string? Note,
    Location At);

/// <summary>A measured value as written.</summary>
public sealed record Measurement(
    string Quantity, string Part, IReadOnlyList<int> Places, IReadOnlyList<string> On, string Value, Limit? Limit, string? Instrument, string? Uncertainty,
    string? Note, Location At)
{
    /// <summary>The size of a new part; null when not given.</summary>
    public Limit? New { get; init; }

    /// <summary>Several readings at this one place, in the order of the case; empty for a single value.</summary>
    public IReadOnlyList<Spot> Spots { get; init; } = [];

    /// <summary>Limits of what follows from several readings: taper, out-of-round.</summary>
    public IReadOnlyDictionary<string, Limit> FormLimits { get; init; } = new Dictionary<string, Limit>();
}

/// <summary>A photo of the case.</summary>
public sealed record Photo(string File, string? Shows, string? Part, Location At);

/// <summary>A teardown: what was known, seen, measured, and not looked at. Immutable.</summary>
public sealed record TeardownCase(
    string Title, Machine Machine, IReadOnlyList<Statement> History, IReadOnlyDictionary<string, double> Numbers, IReadOnlyList<Statement> Symptoms,
    IReadOnlyList<Observation> Observations, IReadOnlyList<NotLookedAt> NotLookedAt, IReadOnlyList<Measurement> Measurements,
    IReadOnlyList<Photo> Photos, IReadOnlyList<string> Notes, string File)
{
    /// <summary>Limit tables that this case may use, the nearest to it first.</summary>
    public IReadOnlyList<IReadOnlyList<LimitRow>> Limits { get; init; } = [];

    /// <summary>Figures for calculations.</summary>
    public IReadOnlyList<NumberRequest> Requests { get; init; } = [];

    /// <summary>Whose machine it is, who asks and what is told: for the report only.</summary>
    public JobRecord Job { get; init; } = JobRecord.Nothing;

    /// <summary>Warnings met while the case was read.</summary>
    public IReadOnlyList<Problem> Warnings { get; init; } = [];
}
