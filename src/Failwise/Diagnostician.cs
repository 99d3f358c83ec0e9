using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Pricing;
using Failwise.Work;

namespace Failwise;

/// <summary>Everything that follows from a case, with the reasons of every stage.</summary>
public sealed record Diagnosis(
    KnowledgeBase Knowledge, TeardownCase Case, Measured Measured, FindingSet Findings, CauseRanking Causes,
    CheckPlan Next, WorkPlan Work)
{
    /// <summary>Readings and what follows from them, each against its limit.</summary>
    public IReadOnlyList<Reading> Readings => Measured.Readings;

    /// <summary>Calculations on the figures of the case.</summary>
    public IReadOnlyList<WorkedNumber> Calculations => Measured.Calculations;

    /// <summary>What the work costs by a shop's rates; null when no rates were given.</summary>
    public JobEstimate? Estimate { get; init; }

    /// <summary>The checks of <see cref="Next"/>.</summary>
    public IReadOnlyList<PlannedCheck> Checks => Next.Checks;
}

/// <summary>The pipeline from a case to a diagnosis.</summary>
public static class Diagnostician
{
    /// <summary>Begins with what every diagnosis needs of the knowledge base, while the case is still being read; may be left out.</summary>
    internal static void Begin(KnowledgeBase knowledge)
    {
        Task.Run(() => CauseIndex.Of(knowledge));
        Task.Run(() => knowledge.PartWords);
    }

    /// <summary>Diagnoses one case. Pure: the same knowledge and case give the same diagnosis.</summary>
    public static Diagnosis Diagnose(KnowledgeBase knowledge, TeardownCase teardown)
    {
        Measured measured = MeasurementAssessor.Assess(knowledge, teardown);
        FindingSet findings = FindingEngine.Chain(knowledge, teardown, measured);
        OpenRanking order = OpenRanking.Of(knowledge, teardown, findings);
        // The next checks ask only for the order of the roots: they are chosen while the order is explained and the work planned.
        Task<CheckPlan> next = Task.Run(() => CheckPlanner.Plan(knowledge, teardown, order.Plain()));
        CauseRanking causes = CauseRanker.Explain(knowledge, order);
        WorkPlan work = WorkPlanner.Plan(knowledge, teardown, measured.Readings, findings, causes);
        return new Diagnosis(knowledge, teardown, measured, findings, causes, next.GetAwaiter().GetResult(), work);
    }
}
