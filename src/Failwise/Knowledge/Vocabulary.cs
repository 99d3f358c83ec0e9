using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>Where a claim comes from: a source id (or common-practice, from-memory, judgement) and the place in it.</summary>
public sealed record SourceRef(string Id, string? At);

/// <summary>A published document, in the project's own words.</summary>
/// <param name="Grade">A standard or public body, B manufacturer or professional body, C trade press or web page, - not a document.</param>
/// <param name="Read">How much of it was read: full, excerpt, abstract, title-only.</param>
public sealed record Source(string Id, string Title, string? Issuer, string? Year, string? Place, string? Grade, string? Read, Location At);

/// <summary>Something a person can look at, with the shop's words for it.</summary>
/// <param name="KindOf">Broader parts: what is said of those holds for this one.</param>
/// <param name="Count">How many a machine has: mains, cylinders, rods, one; null when it varies.</param>
/// <param name="Needs">Features a build must have to have this part; of features of one choice, one is enough.</param>
/// <param name="Access">The cover behind which it is seen.</param>
/// <param name="Minutes">Time to look at it once the cover is off [min].</param>
public sealed record Part(
    string Id, string Name, IReadOnlyList<string> KindOf, IReadOnlyList<string> Words, string? Count, IReadOnlyList<string> Machines,
    IReadOnlyList<string> Needs, IReadOnlyList<string> Places, string? Access, double Minutes, string Group, Location At)
{
    /// <summary>Stands under ordered-as for what is filled in and not ordered by the piece.</summary>
    public const string Fluid = "fluid";

    /// <summary>The part that is ordered when this one is replaced, or <see cref="Fluid"/>; null when it is ordered itself.</summary>
    public string? OrderedAs { get; init; }

    /// <summary>How many stand at each of the places that <see cref="Count"/> counts: two clips to a piston; null when that is not known from the place alone.</summary>
    public int? Each { get; init; } = 1;

    /// <summary>What it is, in a sentence for someone without the trade; null when nobody wrote one.</summary>
    public string? Says { get; init; }
}

/// <summary>What has to come off before a part is seen.</summary>
/// <param name="Says">How far the machine is opened, such as: sump off.</param>
/// <param name="Minutes">Time to open it when what it lies behind is open already [min].</param>
/// <param name="Behind">Covers that have to be off first.</param>
public sealed record Cover(string Id, string Says, double Minutes, IReadOnlyList<string> Behind, Location At);

/// <summary>What to do to see a pattern, and what destroys it.</summary>
/// <param name="Destroys">True when the check itself uses the part up.</param>
public sealed record LookHint(string How, string? Tool, double Minutes, IReadOnlyList<string> LostBy, bool Destroys = false);

/// <summary>Something that could be mistaken for this, and how to tell the two apart.</summary>
public sealed record LookAlike(string Id, string Tell);

/// <summary>The class that a standard gives a pattern.</summary>
public sealed record StandardClass(string Standard, string Class);

/// <summary>A wear pattern: what the eye sees.</summary>
/// <param name="SeenAnyway">Chance that it is seen on such a part with no special cause, 0 to 1.</param>
/// <param name="Sound">True when it looks alarming but is normal.</param>
public sealed record Pattern(
    string Id, string Name, string Says, IReadOnlyList<string> Words, IReadOnlyList<string> KindOf, double SeenAnyway, bool Sound,
    IReadOnlyList<StandardClass> Classes, IReadOnlyList<LookAlike> LookAlikes, LookHint? Check, IReadOnlyList<SourceRef> Sources, Location At);

/// <summary>Something known before the teardown that makes causes likelier.</summary>
/// <param name="HowCommon">Share of failed machines for which it holds, 0 to 1.</param>
/// <param name="When">Condition under which it follows from the case; null when it has to be stated.</param>
public sealed record Circumstance(
    string Id, string Says, string? Ask, IReadOnlyList<string> Words, double HowCommon, Condition? When, IReadOnlyList<SourceRef> Sources, Location At);

/// <summary>Something noticed while the machine ran.</summary>
/// <param name="KindOf">Broader symptoms: said together with one of them, only this one counts.</param>
public sealed record Symptom(
    string Id, string Says, string? Ask, IReadOnlyList<string> Words, IReadOnlyList<string> KindOf, double SeenAnyway, IReadOnlyList<SourceRef> Sources, Location At);

/// <summary>A feature of a build. Features of one choice exclude each other.</summary>
/// <param name="Share">Share of the machines of a kind that have it, 0 to 1, by kind; a kind that is not named counts as having it.</param>
/// <param name="ShownBy">Parts that only a build with it has: a look at one of them states the feature.</param>
public sealed record Feature(
    string Id, string? Choice, string Says, IReadOnlyList<string> Words, IReadOnlyDictionary<string, double> Share, IReadOnlyList<string> ShownBy);

/// <summary>A kind of machine that a case can be about.</summary>
public sealed record MachineKind(string Id, string Name, IReadOnlyList<string> Words);

/// <summary>Place words that exclude each other for one mark: upper and lower, front and rear edge.</summary>
public sealed record PlaceAxis(string Id, IReadOnlyList<string> Words, IReadOnlyDictionary<string, string> Also);

/// <summary>A short code for writing at the bench.</summary>
/// <param name="Kind">part, place or pattern.</param>
/// <param name="Id">The part, place word or pattern it stands for.</param>
public sealed record ShortCode(string Code, string Kind, string Id, Location At);

/// <summary>How much of a mark there is, in rising order.</summary>
public enum Extent { Unstated, Trace, Light, Moderate, Heavy, Destroyed }
