using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Checks;

/// <summary>One root before and after something is assumed.</summary>
/// <param name="Before">Probability as the case stands, 0 to 0.98; 0 when nothing pointed to it.</param>
/// <param name="After">Probability with what is assumed, 0 to 0.98.</param>
public sealed record RootMove(Cause Root, double Before, double After);

/// <summary>How the ranking would stand if something were seen or known that is not in the case. Nothing is saved.</summary>
/// <param name="Assumed">What was assumed, as it was understood.</param>
/// <param name="Moves">The leading roots of either ranking, likeliest afterwards first.</param>
/// <param name="Case">The case with what was assumed.</param>
/// <param name="Ranking">The ranking of that case, without explanations.</param>
public sealed record WhatIf(IReadOnlyList<string> Assumed, IReadOnlyList<RootMove> Moves, TeardownCase Case, CauseRanking Ranking)
{
    private const int Shown = 8;

    /// <summary>Adds what is assumed to the case and ranks both.</summary>
    public static WhatIf Of(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Assumption> assumptions)
    {
        TeardownCase assumed = assumptions.Aggregate(teardown, (c, a) => a.AddTo(c));
        CauseRanking before = RankPlainly(knowledge, teardown), after = RankPlainly(knowledge, assumed);
        Dictionary<string, double> was = before.Ranked.ToDictionary(r => r.Cause.Id, r => r.Probability, StringComparer.Ordinal);
        Dictionary<string, double> will = after.Ranked.ToDictionary(r => r.Cause.Id, r => r.Probability, StringComparer.Ordinal);
        RootMove[] moves =
        [
            .. before.Ranked.Concat(after.Ranked).Select(r => r.Cause).DistinctBy(c => c.Id)
                .Select(c => new RootMove(c, was.GetValueOrDefault(c.Id), will.GetValueOrDefault(c.Id)))
                .OrderByDescending(m => Math.Max(m.Before, m.After)).ThenBy(m => m.Root.Id, StringComparer.Ordinal).Take(Shown)
                .OrderByDescending(m => m.After).ThenBy(m => m.Root.Id, StringComparer.Ordinal),
        ];
        return new WhatIf([.. assumptions.Select(a => a.Says)], moves, assumed, after);
    }

    internal static CauseRanking RankPlainly(KnowledgeBase knowledge, TeardownCase teardown) =>
        OpenRanking.Of(knowledge, teardown, FindingEngine.Chain(knowledge, teardown, MeasurementAssessor.Assess(knowledge, teardown))).Plain();
}
