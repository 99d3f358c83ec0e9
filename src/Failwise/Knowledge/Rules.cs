using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>What a finding is for: evidence in the ranking, a circumstance that makes roots likelier, or a clue for other rules only.</summary>
public enum FindingRole { Sign, Circumstance, Clue }

/// <summary>A part with a pattern on it.</summary>
public sealed record Sign(string Part, string Pattern);

/// <summary>A set of facts, written as in a case, that must make a rule fire, or leave it silent.</summary>
internal sealed record RuleExample(bool Fires, Yaml.ListNode Facts);

/// <summary>A pattern rule: observations, readings and history to a finding.</summary>
/// <param name="Refines">Signs of which this only says how they are spread; it counts only where one of them is present.</param>
/// <param name="SeenAnyway">Chance of the finding with no listed cause at work (given the refined sign, if any), 0 to 1.</param>
public sealed record FindingRule(
    string Id, string Says, FindingRole Role, IReadOnlyList<Sign> Refines, Condition When, double SeenAnyway, string? Why,
    IReadOnlyList<LookAlike> LookAlikes, LookHint? Check, IReadOnlyList<SourceRef> Sources, string Status, Location At)
{
    internal IReadOnlyList<RuleExample> Examples { get; init; } = [];
}

/// <summary>What a link points at.</summary>
public enum LinkTarget { Sign, Finding, Symptom, Cause, History }

/// <summary>A link from a cause to what it leaves or brings about, or from a circumstance to the cause it makes likelier.</summary>
/// <param name="Strength">Chance that the one alone brings about the other, above 0 to 1.</param>
/// <param name="Word">The strength as the author wrote it.</param>
public sealed record CauseLink(
    LinkTarget Target, string Id, Sign? Sign, double Strength, string Word, IReadOnlyList<SourceRef> Sources, string? Note, Location At);

/// <summary>A cause: a root that people can correct, or a state (mechanism, damage) in between.</summary>
/// <param name="HowCommon">Chance among failed machines of this kind that it comes by itself, 0 to 1.</param>
/// <param name="GivesWayTo">Roots that say the same of particular parts: where one of them speaks of the marked part, this one steps aside.</param>
public sealed record Cause(
    string Id, string Title, bool IsRoot, string Group, string Says, IReadOnlyList<string> Machines, IReadOnlyList<string> Needs,
    IReadOnlyList<string> GivesWayTo, double HowCommon,
    IReadOnlyList<CauseLink> Leaves, IReadOnlyList<CauseLink> LeadsTo, IReadOnlyList<CauseLink> RaisedBy, IReadOnlyList<LookAlike> LooksLike,
    string? Prove, string Status, IReadOnlyList<SourceRef> Sources, Location At);
