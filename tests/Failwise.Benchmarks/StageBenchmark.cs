using System.Diagnostics;
using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Reports;
using Failwise.Work;

namespace Failwise.Benchmarks;

/// <summary>Where one diagnosis spends its time and memory, stage by stage, warm.</summary>
internal static class StageBenchmark
{
    private const int Runs = 30;

    public static void Run(string casePath, TextWriter output)
    {
        byte[] packed = PackedKnowledge.Pack(KnowledgeBase.Load(ScaleBenchmark.FindRules()));
        KnowledgeBase knowledge = null!;
        TeardownCase teardown = null!;
        Measured readings = null!;
        FindingSet findings = null!;
        CauseRanking ranking = null!;
        CheckPlan checks = null!;
        WorkPlan work = null!;
        output.WriteLine("stage     | best ms |   KB");
        Measure("unpack", () => knowledge = PackedKnowledge.Unpack(packed, () => []));
        Measure("case", () => teardown = CaseReader.Read(knowledge, casePath).Case!);
        readings = MeasurementAssessor.Assess(knowledge, teardown);
        Measure("chain", () => findings = FindingEngine.Chain(knowledge, teardown, readings));
        Measure("rank", () => ranking = CauseRanker.Rank(knowledge, teardown, findings));
        Measure("checks", () => checks = CheckPlanner.Plan(knowledge, teardown, ranking));
        Measure("work", () => work = WorkPlanner.Plan(knowledge, teardown, readings.Readings, findings, ranking));
        Measure("text", () => TextReport.Write(new Diagnosis(knowledge, teardown, readings, findings, ranking, checks, work)));

        void Measure(string stage, Action action)
        {
            action();
            long before = GC.GetAllocatedBytesForCurrentThread();
            action();
            long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            double best = double.PositiveInfinity;
            for (int i = 0; i < Runs; i++)
            {
                long start = Stopwatch.GetTimestamp();
                action();
                best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }

            output.WriteLine($"{stage,-9} | {best,7:0.00} | {bytes / 1024,6}");
        }
    }
}
