using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Work;

namespace Failwise.Tests.Work;

/// <summary>A case with its plan of work.</summary>
internal sealed record PlannedCase(string Name, TeardownCase Teardown, IReadOnlyList<Reading> Readings, FindingSet Findings, CauseRanking Ranking, WorkPlan Plan);

/// <summary>The plans of every published and every invented case of the repository, made once for all tests.</summary>
internal static class PlannedCases
{
    private static readonly Lazy<IReadOnlyList<PlannedCase>> Made = new(Make);

    public static IReadOnlyList<PlannedCase> All => Made.Value;

    public static PlannedCase Example(string name) => All.Single(c => c.Name == "examples/" + name);

    public static PlannedCase Plan(KnowledgeBase knowledge, string name, TeardownCase teardown)
    {
        Measured measured = MeasurementAssessor.Assess(knowledge, teardown);
        FindingSet findings = FindingEngine.Chain(knowledge, teardown, measured);
        CauseRanking ranking = CauseRanker.Rank(knowledge, teardown, findings);
        return new PlannedCase(name, teardown, measured.Readings, findings, ranking, WorkPlanner.Plan(knowledge, teardown, measured.Readings, findings, ranking));
    }

    private static PlannedCase[] Make()
    {
        string[] files =
        [
            .. new[] { "examples", Path.Combine("tests", "cases") }
                .SelectMany(f => Directory.EnumerateFiles(Repository.Folder(f), "case.yaml", SearchOption.AllDirectories)).Order(StringComparer.Ordinal),
        ];
        PlannedCase[] plans = new PlannedCase[files.Length];
        Parallel.For(0, files.Length, i =>
        {
            TeardownCase teardown = CaseReader.Read(Repository.Knowledge, files[i]).Case!;
            string name = Path.GetRelativePath(Repository.Root, Path.GetDirectoryName(files[i])!).Replace('\\', '/');
            plans[i] = Plan(Repository.Knowledge, name, teardown);
        });
        return plans;
    }
}
