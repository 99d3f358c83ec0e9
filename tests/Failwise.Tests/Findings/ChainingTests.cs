using Failwise.Cases;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Reports;

namespace Failwise.Tests.Findings;

public class ChainingTests
{
    private const string Wiped = "{part: main-bearing, at: all, see: wiped}";

    private static readonly TinyRules ThreeLevels = TinyRules.Words
        .WithFinding("mains-wiped", "{part: main-bearing, see: wiped}")
        .WithFinding("mains-and-pump", "{all: [{finding: mains-wiped}, {part: oil-pump, see: scored}]}")
        .WithFinding("whole-oil-side", "{all: [{finding: mains-and-pump}, {history: oil-change-overdue}]}");

    [Fact]
    public void A_finding_can_rest_on_a_finding_that_rests_on_a_finding()
    {
        KnowledgeBase knowledge = ThreeLevels.Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, Wiped + ", {part: oil-pump, see: scored}", "history: [oil-change-overdue]\n");

        FindingSet found = Bench.Chain(knowledge, teardown);

        found.Fired.Select(f => f.Id).Should().Equal("mains-and-pump", "mains-wiped", "whole-oil-side");
    }

    [Fact]
    public void A_finding_falls_away_with_the_finding_it_rests_on()
    {
        KnowledgeBase knowledge = ThreeLevels.Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, "{part: main-bearing, at: all, see: sound}, {part: oil-pump, see: scored}", "history: [oil-change-overdue]\n");

        FindingSet found = Bench.Chain(knowledge, teardown);

        found.Fired.Should().BeEmpty();
        found.Contradicted.Select(f => f.Id).Should().Equal("mains-and-pump", "mains-wiped", "whole-oil-side");
    }

    [Fact]
    public void A_finding_names_the_facts_and_findings_it_rests_on()
    {
        KnowledgeBase knowledge = ThreeLevels.Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, Wiped + ", {part: oil-pump, see: scored}", "history: [oil-change-overdue]\n");

        FindingSet found = Bench.Chain(knowledge, teardown);

        found.Fired.Single(f => f.Id == "mains-wiped").Answer.Reasons.Should().Equal(new Reason("observation", "1"));
        found.Fired.Single(f => f.Id == "mains-and-pump").Answer.Reasons.Should().BeEquivalentTo([new Reason("finding", "mains-wiped"), new Reason("observation", "2")]);
        found.Fired.Single(f => f.Id == "whole-oil-side").Answer.Reasons.Should().BeEquivalentTo([new Reason("finding", "mains-and-pump"), new Reason("history", "oil-change-overdue")]);
    }

    [Fact]
    public void A_circumstance_that_follows_from_a_number_feeds_a_finding()
    {
        KnowledgeBase knowledge = TinyRules.Words.WithFinding("wiped-early", "{all: [{part: main-bearing, see: wiped}, {history: early-after-overhaul}]}").Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, Wiped, "history: [{hours-since-overhaul: 12}]\n");

        FindingSet found = Bench.Chain(knowledge, teardown);

        found.Fired.Select(f => f.Id).Should().Equal("wiped-early");
        found.Circumstances.Should().Contain("early-after-overhaul", true);
    }

    [Fact]
    public void What_the_case_denies_wins_over_what_its_numbers_suggest()
    {
        KnowledgeBase knowledge = TinyRules.Words.Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, Wiped, "history: [{hours-since-overhaul: 12}, {not: early-after-overhaul}]\n");

        FindingSet found = Bench.Chain(knowledge, teardown);

        found.Circumstances.Should().Contain("early-after-overhaul", false);
    }

    [Fact]
    public void Why_not_tells_the_missing_look_from_the_contradicting_one()
    {
        KnowledgeBase knowledge = TinyRules.Words.WithFinding("all-three",
            "{all: [{part: main-bearing, see: wiped}, {part: rod-bearing, see: wiped}, {part: oil-pump, see: scored}]}").Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, Wiped + ", {part: rod-bearing, see: sound}");
        Measured readings = MeasurementAssessor.Assess(knowledge, teardown);

        var parts = FindingEngine.ExplainParts(knowledge, teardown, readings, Bench.Chain(knowledge, teardown), "all-three");

        parts.Select(p => p.Answer.Truth).Should().Equal(Truth.Holds, Truth.Contradicted, Truth.Unknown);
        parts[1].Answer.Reasons.Should().Equal(new Reason("observation", "2"));
        parts[2].Answer.Missing.Should().ContainSingle().Which.Should().Contain("oil pump not looked at");
    }

    [Fact]
    public void The_explanation_prints_what_is_missing_in_shop_words()
    {
        KnowledgeBase knowledge = TinyRules.Words.WithFinding("pair", "{all: [{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}]}").Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, Wiped);

        string? text = ExplainReport.Write(Diagnostician.Diagnose(knowledge, teardown), "pair");

        text.Should().Contain("It did not fire: something is still missing.").And.Contain("missing      oil pump scored  (oil pump not looked at)");
    }

    [Fact]
    public void The_order_in_which_observations_are_written_changes_nothing()
    {
        KnowledgeBase knowledge = ThreeLevels.WithFinding("spread", "{part: main-bearing, see: wiped, where: worse-along-feed}").Knowledge();
        string[] facts = ["{part: main-bearing, at: 1, see: wiped, extent: trace}", "{part: main-bearing, at: 4-5, see: wiped, extent: heavy}", "{part: oil-pump, see: scored}", "{part: rod-bearing, see: sound}"];
        Random random = new(7);
        string[] expected = Fired(facts);

        for (int i = 0; i < 10; i++)
        {
            random.Shuffle(facts);
            Fired(facts).Should().Equal(expected);
        }

        expected.Should().Equal("mains-and-pump", "mains-wiped", "spread");
        string[] Fired(string[] written) => [.. Bench.Chain(knowledge, Bench.Case(knowledge, string.Join(", ", written))).Fired.Select(f => f.Id)];
    }

    [Fact]
    public void Rest_sound_speaks_for_the_other_numbers()
    {
        KnowledgeBase knowledge = TinyRules.Words.Knowledge();

        TeardownCase teardown = Bench.Case(knowledge, "{part: main-bearing, at: [2, 4], see: wiped, rest: sound}");

        teardown.Observations.Should().HaveCount(2);
        teardown.Observations[1].Should().Match<Observation>(o => o.Look == Look.Sound && o.Places.SequenceEqual(new[] { 1, 3, 5 }));
    }

    [Fact]
    public void Rest_sound_speaks_for_the_other_half_too()
    {
        KnowledgeBase knowledge = TinyRules.Words.Knowledge();

        TeardownCase teardown = Bench.Case(knowledge, "{part: main-bearing, at: all, on: lower, see: wiped, rest: sound}");

        teardown.Observations.Where(o => o.Look == Look.Sound).Should().ContainSingle()
            .Which.Should().Match<Observation>(o => o.On.SequenceEqual(new[] { "upper" }) && o.Places.SequenceEqual(new[] { 1, 2, 3, 4, 5 }));
    }

    [Fact]
    public void Rest_not_looked_at_claims_nothing()
    {
        KnowledgeBase knowledge = TinyRules.Words.Knowledge();

        TeardownCase teardown = Bench.Case(knowledge, "{part: main-bearing, at: 2, see: wiped, rest: not-looked-at}");

        teardown.Observations.Should().ContainSingle();
    }

    [Fact]
    public void Five_wiped_shells_are_one_entry()
    {
        KnowledgeBase knowledge = TinyRules.Words.Knowledge();

        TeardownCase teardown = Bench.Case(knowledge, "{part: main shells, at: all, on: lower, see: smeared over, extent: heavy}");

        teardown.Observations.Should().ContainSingle().Which.Places.Should().Equal(1, 2, 3, 4, 5);
        teardown.Observations[0].Should().Match<Observation>(o => o.Part == "main-bearing" && o.Pattern == "wiped" && o.Extent == Extent.Heavy);
    }
}
