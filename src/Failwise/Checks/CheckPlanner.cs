using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>Chooses the few checks worth most: expected gain in certainty about the roots, per minute, with opening shared.</summary>
public static class CheckPlanner
{
    /// <summary>Time lost with any check for turning to it and fetching the tools [min].</summary>
    internal const double FetchMinutes = 3;

    /// <summary>A check that is expected to tell less is not worth naming [bit].</summary>
    internal const double LeastGain = 0.02;

    /// <summary>A check that tells less for its time is not worth making [bit/min].</summary>
    internal const double LeastWorth = 0.0004;

    private const double ProveFrom = 0.35;
    private const int MostProofs = 3;

    /// <summary>The checks worth their effort, in the order in which to make them; with the reason when there are none.</summary>
    public static CheckPlan Plan(KnowledgeBase knowledge, TeardownCase teardown, CauseRanking ranking, PlanOptions? options = null)
    {
        PlanOptions how = options ?? new PlanOptions();
        Suspicion suspicion = Suspicion.Of(knowledge, teardown, ranking);
        Opening opening = new(knowledge, teardown, how.AllOpen);
        List<Candidate> candidates = [.. suspicion.Candidates(how)];
        candidates = new IntakeQuestions(knowledge, teardown).Merge(candidates, OpenShare(ranking), opening, how.OnlyLooks);
        IReadOnlyList<PlannedCheck> chosen = CheckSequence.Choose(candidates, opening, how.Most);
        ProvingTest[] proofs =
        [
            .. ranking.Ranked.Where(r => r.Probability >= ProveFrom && r.Cause.Prove is not null).Take(MostProofs)
                .Select(r => new ProvingTest(r.Cause, r.Probability, r.Cause.Prove!)),
        ];
        return new CheckPlan(chosen, proofs, chosen.Count == 0 ? SayStop(candidates, opening) : null);
    }

    /// <summary>The same from a case that was not ranked yet: what the dialogue asks after each answer.</summary>
    public static CheckPlan Plan(KnowledgeBase knowledge, TeardownCase teardown, PlanOptions? options = null) =>
        Plan(knowledge, teardown, WhatIf.RankPlainly(knowledge, teardown), options);

    /// <summary>How much is open yet: a general question is worth little once one root is all but certain.</summary>
    private static double OpenShare(CauseRanking ranking) => Math.Clamp(1.05 - ranking.Ranked.Select(r => r.Probability).FirstOrDefault(), 0.1, 1);

    private static string SayStop(List<Candidate> candidates, Opening opening)
    {
        Candidate? best = candidates.OrderByDescending(c => c.Check.Gain).ThenBy(c => c.Check.Id, StringComparer.Ordinal).FirstOrDefault();
        return best is null || best.Check.Gain < 0.001
            ? "Nothing is left to look at that would change the ranking."
            : $"Nothing more is worth its effort: the most telling check left ({best.Check.Says.TrimEnd('?', '.')}) would take about {best.Check.Minutes + opening.MinutesTo(best.Cover):0} min and hardly change the ranking.";
    }
}
