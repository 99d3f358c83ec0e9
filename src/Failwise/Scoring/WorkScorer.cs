using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Problems;
using Failwise.Work;

namespace Failwise.Scoring;

/// <summary>What became of the demands of one solved case.</summary>
/// <param name="Missed">Demands that the plan from our own ranking does not meet.</param>
/// <param name="MissedSettled">Demands that the plan does not meet although the determined root is given as settled.</param>
/// <param name="Broken">Decisions of either plan that the source rules out.</param>
public sealed record CaseWorkScore(SolvedCase Case, IReadOnlyList<WorkDemand> Missed, IReadOnlyList<WorkDemand> MissedSettled, IReadOnlyList<RuledOut> Broken);

/// <summary>The plan of work compared with what the sources of solved cases demand.</summary>
public sealed record WorkScore(IReadOnlyList<CaseWorkScore> Cases, IReadOnlyList<Problem> Problems)
{
    /// <summary>How many demands there are.</summary>
    public int Demands => Cases.Sum(c => c.Case.Demands.Count);

    /// <summary>How many the plan from our own ranking meets.</summary>
    public int Met => Demands - Cases.Sum(c => c.Missed.Count);

    /// <summary>How many the plan meets when the determined root is settled.</summary>
    public int MetSettled => Demands - Cases.Sum(c => c.MissedSettled.Count);

    /// <summary>Cases of which every demand is met, by our own ranking and with the root settled.</summary>
    public (int Own, int Settled) Whole => (Cases.Count(c => c.Missed.Count == 0), Cases.Count(c => c.MissedSettled.Count == 0));
}

/// <summary>Plans the work of solved cases and compares it with what their sources demand; the planner never sees the demands.</summary>
public static class WorkScorer
{
    /// <summary>Scores every solved case below <paramref name="folder"/> that names corrective work.</summary>
    /// <param name="set">Only cases of this set (tune or held-out); all when null.</param>
    public static WorkScore Run(KnowledgeBase knowledge, string folder, string? set = null)
    {
        ProblemList problems = new();
        SolvedCase[] solved = [.. SolvedCase.ReadFolder(folder, knowledge, problems).Where(c => c.Demands.Count > 0 && (set is null || c.Set == set))];
        IReadOnlyList<CaseWorkScore> scores = OverCases.Run(knowledge, solved, problems, (one, _, teardown) => Score(knowledge, one, teardown));
        return new WorkScore(scores, problems.Sorted());
    }

    private static CaseWorkScore Score(KnowledgeBase knowledge, SolvedCase solved, TeardownCase teardown)
    {
        Measured measured = MeasurementAssessor.Assess(knowledge, teardown);
        IReadOnlyList<Reading> readings = measured.Readings;
        FindingSet findings = FindingEngine.Chain(knowledge, teardown, measured);
        CauseRanking ranking = CauseRanker.Rank(knowledge, teardown, findings);
        WorkPlan own = WorkPlanner.Plan(knowledge, teardown, readings, findings, ranking);

        // Ids under one determined root are names for the same thing: each by itself must bring the work.
        string[] roots = [.. solved.Roots.Where(knowledge.Causes.ContainsKey).Take(1)];
        WorkPlan settled = roots.Length == 0 ? own : WorkPlanner.PlanSettled(knowledge, teardown, readings, findings, ranking, roots);
        return new CaseWorkScore(
            solved, [.. solved.Demands.Where(d => !WorkDemands.IsMet(knowledge, own, d))], [.. solved.Demands.Where(d => !WorkDemands.IsMet(knowledge, settled, d))],
            [.. solved.Never.Where(n => WorkDemands.IsBroken(knowledge, own, n) || WorkDemands.IsBroken(knowledge, settled, n))]);
    }
}
