using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>What a case may leave open.</summary>
public enum GapKind { Always, NoNumber, OthersUnsaid, NoPlace, NoReading, SeveralDamaged, NothingSeen }

/// <summary>A gap that brings a question up. Parts, patterns, symptoms and history narrow it; empty lists leave it open.</summary>
/// <param name="Worth">Expected gain in certainty about the roots [bit/min], by judgement.</param>
public sealed record GapTrigger(
    GapKind Gap, IReadOnlyList<string> Parts, IReadOnlyList<string> See, IReadOnlyList<string> Symptoms, IReadOnlyList<string> History, double Worth)
{
    internal static readonly string[] Words = ["always", "no-number", "others-unsaid", "no-place", "no-reading", "several-damaged", "nothing-seen"];
}

/// <summary>A question of the general kind that experienced people ask back when a case leaves something open.</summary>
/// <param name="Answer">How the answer is written into the case.</param>
/// <param name="When">Gaps that bring it up; any is enough.</param>
/// <param name="Covers">History words and symptoms that the answer settles too, so that they are not asked one by one.</param>
/// <param name="LooksAt">Parts that have to be looked at for the answer, likeliest first; empty when a person answers it.</param>
/// <param name="Access">Cover behind which they are looked at; null for the nearest of theirs.</param>
/// <param name="Shows">Patterns that a glance brings out, on whatever part they are; empty when it is no look.</param>
/// <param name="KnownParts">Parts whose look answers it.</param>
/// <param name="KnownPatterns">Patterns that answer it, found or looked for in vain.</param>
/// <param name="KnownByReading">True when any reading answers it.</param>
public sealed record IntakeQuestion(
    string Id, string Asks, string? Why, string? Answer, double Minutes, IReadOnlyList<string> Machines, IReadOnlyList<GapTrigger> When,
    IReadOnlyList<string> Covers, IReadOnlyList<string> LooksAt, string? Access, IReadOnlyList<string> Shows,
    IReadOnlyList<string> KnownParts, IReadOnlyList<string> KnownPatterns, IReadOnlyList<string> KnownSymptoms, IReadOnlyList<string> KnownHistory,
    bool KnownByReading, IReadOnlyList<SourceRef> Sources, Location At)
{
    /// <summary>Features of a build with which it makes no sense.</summary>
    public IReadOnlyList<string> NotWith { get; init; } = [];
}
