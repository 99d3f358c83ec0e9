using Failwise.Scoring;

namespace Failwise.Tests.Work;

/// <summary>The plan against what the sources of the published cases demand.</summary>
public class WorkScoreTests
{
    private static readonly Lazy<WorkScore> Score = new(() => WorkScorer.Run(Repository.Knowledge, Repository.Folder("tests", "cases", "published")));

    [Fact]
    public void Enough_cases_name_work_and_every_word_in_them_is_known()
    {
        Score.Value.Problems.Should().BeEmpty();
        Score.Value.Cases.Count.Should().BeGreaterThanOrEqualTo(60);
    }

    [Fact]
    public void The_plan_meets_no_fewer_demands_than_before()
    {
        // Figures of the day the demands were first met; they may rise and must not fall.
        Score.Value.Met.Should().BeGreaterThanOrEqualTo(98);
        Score.Value.MetSettled.Should().BeGreaterThanOrEqualTo(112);
        Score.Value.Whole.Settled.Should().BeGreaterThanOrEqualTo(86);
    }

    [Fact]
    public void No_decision_goes_against_a_source() =>
        Score.Value.Cases.SelectMany(c => c.Broken.Select(b => $"{c.Case.Name}: {b.Says}")).Should().BeEmpty();

    [Fact]
    public void A_demand_that_no_work_meets_is_missed_and_a_decision_that_is_ruled_out_is_found()
    {
        // The scorer must be able to fail: an impossible demand, and the very decision that the plan takes.
        PlannedCase pump = PlannedCases.Example("pump-engine");
        string taken = pump.Plan.Decisions.First(d => d.Part == "main-bearing").Decision.ToString().ToLowerInvariant();

        WorkDemands.IsMet(Repository.Knowledge, pump.Plan, new WorkDemand("Paint it blue.", ["no-such-work"], [new PartDeed("clutch-disc", ["replace"])])).Should().BeFalse();
        WorkDemands.IsBroken(Repository.Knowledge, pump.Plan, new RuledOut("", "main-bearing", [taken])).Should().BeTrue();
        WorkDemands.IsBroken(Repository.Knowledge, pump.Plan, new RuledOut("", "clutch-disc", [taken])).Should().BeFalse();
    }

    [Fact]
    public void The_page_about_it_is_fresh() =>
        File.ReadAllText(Repository.Folder("docs", "score-work.md")).Should().Be(WorkScorePage.Write(Score.Value), because: "run: failwise rules work-score tests/cases/published -o docs/score-work.md");
}
