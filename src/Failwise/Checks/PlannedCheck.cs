using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>What sort of check it is: a look at a part, a finding to confirm, a question about how it ran, about its history, or about a gap in the case.</summary>
public enum CheckKind { Look, Finding, Symptom, History, Gap }

/// <summary>How one root stands now and would stand after an outcome.</summary>
/// <param name="Now">Probability before the check, 0 to 0.98.</param>
/// <param name="Then">Probability after it, 0 to 0.98.</param>
public sealed record Mover(Cause Root, double Now, double Then);

/// <summary>One thing that a check may show, and what it would mean.</summary>
/// <param name="Id">Stable id: part/pattern, yes, no, or sound.</param>
/// <param name="Says">The outcome in a few words.</param>
/// <param name="Chance">Chance of this outcome, 0 to 1; the outcomes of a check add up to 1.</param>
/// <param name="Movers">Roots that move most, the largest change first.</param>
public sealed record CheckOutcome(string Id, string Says, double Chance, IReadOnlyList<Mover> Movers);

/// <summary>An inspection or question that would tell the leading roots apart.</summary>
/// <param name="Id">Stable id: look/part, finding/id, symptom/id, history/id or ask/id.</param>
/// <param name="Parts">Parts it looks at; empty for a question.</param>
/// <param name="Says">What to look for or ask.</param>
/// <param name="Why">What it tells apart, where that is not plain from the outcomes.</param>
/// <param name="Gain">Expected drop in uncertainty about the roots [bit], 0 or more.</param>
/// <param name="Minutes">Time for the check itself [min].</param>
/// <param name="OpeningMinutes">Time to open what is still closed [min]; counted once for checks behind one cover.</param>
/// <param name="Opening">What has to come off first; null when nothing has to.</param>
/// <param name="Worth">Expected gain for the time it takes [bit/min].</param>
/// <param name="Outcomes">What it may show, in the order in which to look for it.</param>
/// <param name="LostBy">What destroys this evidence.</param>
/// <param name="Destroys">True when the check itself uses the part up: done last.</param>
/// <param name="Answer">How the answer is written into the case.</param>
public sealed record PlannedCheck(
    string Id, CheckKind Kind, IReadOnlyList<string> Parts, string Says, string? Why, string? How, string? Tool, double Gain, double Minutes,
    double OpeningMinutes, string? Opening, double Worth, IReadOnlyList<CheckOutcome> Outcomes, IReadOnlyList<string> LostBy, bool Destroys,
    string? Answer)
{
    /// <summary>Chance that anything of it is found, 0 to 1.</summary>
    public double Chance => Outcomes.Count == 0 ? 0 : 1 - Outcomes[^1].Chance;

    /// <summary>Roots that rise most when the first outcome is found.</summary>
    public IReadOnlyList<(Cause Root, double Probability)> IfFound => Outcomes.Count == 0 ? [] : Rising(Outcomes[0]);

    /// <summary>Roots that rise most when nothing of it is found.</summary>
    public IReadOnlyList<(Cause Root, double Probability)> IfNot => Outcomes.Count == 0 ? [] : Rising(Outcomes[^1]);

    private static IReadOnlyList<(Cause, double)> Rising(CheckOutcome outcome) =>
        [.. outcome.Movers.Where(m => m.Then > m.Now + 0.01).Take(2).Select(m => (m.Root, m.Then))];
}

/// <summary>The test that proves or disproves a leading root before parts are ordered.</summary>
public sealed record ProvingTest(Cause Root, double Probability, string How);

/// <summary>What to look at next.</summary>
/// <param name="Checks">Checks worth their effort, in the order in which to make them.</param>
/// <param name="Proofs">Tests to make before parts are ordered, likeliest root first.</param>
/// <param name="Stop">Why nothing more is worth its effort; null when something is.</param>
public sealed record CheckPlan(IReadOnlyList<PlannedCheck> Checks, IReadOnlyList<ProvingTest> Proofs, string? Stop)
{
    /// <summary>A plan with nothing in it.</summary>
    public static CheckPlan Nothing { get; } = new([], [], null);
}

/// <summary>How to plan.</summary>
/// <param name="Most">Checks kept, 1 or more.</param>
/// <param name="OnlyLooks">True for looks at parts only: nobody is there to be asked.</param>
/// <param name="AllOpen">True when the machine lies stripped, so that nothing has to be opened.</param>
public sealed record PlanOptions(int Most = 6, bool OnlyLooks = false, bool AllOpen = false);
