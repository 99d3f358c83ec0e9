using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Scoring;

/// <summary>How many looks it took to find the determined root, in several orders of looking.</summary>
/// <param name="Planned">Looks when the planner asked for them, misses counted.</param>
/// <param name="Missed">Those of them that no recorded observation answered.</param>
/// <param name="InSourceOrder">Looks in the order of the source.</param>
/// <param name="AtRandom">Mean looks over random orders of what was recorded.</param>
/// <param name="Fewest">Fewest looks that any order of what was recorded needs.</param>
public sealed record LookCounts(int Planned, int Missed, int InSourceOrder, double AtRandom, int Fewest)
{
    private const double AimOverSource = 0.4;
    private const double AimOverRandom = 0.3;

    /// <summary>Looks of the planner that a recorded observation answered.</summary>
    public int Answered => Planned - Missed;

    /// <summary>True when an order with so many looks saves 40 % over the order of the source and 30 % over random orders.</summary>
    public bool MeetsAim(int looks) => looks <= (1 - AimOverSource) * InSourceOrder + 1e-9 && looks <= (1 - AimOverRandom) * AtRandom + 1e-9;
}

/// <summary>One replayed case.</summary>
/// <param name="Units">Things on the bench that the source says something about.</param>
/// <param name="First">Looks until the root stands first.</param>
/// <param name="Staying">Looks until it stands first and keeps its place while the rest is told.</param>
/// <param name="Unguided">Mean looks until it stands first, over random walks through everything that such a machine has, misses counted.</param>
/// <param name="Asked">What the planner asked for, with a sign whether anything was recorded there.</param>
public sealed record LookScore(SolvedCase Case, int Units, LookCounts First, LookCounts Staying, double Unguided, IReadOnlyList<string> Asked);

/// <summary>
/// Replays solved cases as an inspection: history and symptoms are told at the start, and what was seen comes out look by look.
/// docs/looks.md defines what a look is.
/// </summary>
public static class LookTrial
{
    /// <summary>Replays every closed case in which the determined root stands first once everything is known.</summary>
    /// <param name="set">Only cases of this set (tune or held-out); all when null.</param>
    public static IReadOnlyList<LookScore> Run(KnowledgeBase knowledge, string folder, string? set = null)
    {
        ProblemList problems = new();
        SolvedCase[] solved = [.. SolvedCase.ReadFolder(folder, knowledge, problems).Where(c => !c.IsOpen && (set is null || c.Set == set))];
        return OverCases.Run(knowledge, solved, problems, (one, _, teardown) => new LookReplay(knowledge, one, teardown).Run(SeedOf(one.Name)));
    }

    /// <summary>A case has the same random orders whichever others are tried with it.</summary>
    private static int SeedOf(string name) => name.Aggregate(17, (hash, c) => unchecked(31 * hash + c)) & 0xFFFFFF;
}
