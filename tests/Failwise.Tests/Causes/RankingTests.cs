using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Inference;
using Failwise.Knowledge;
using Failwise.Tests.Inference;

namespace Failwise.Tests.Causes;

public class RankingTests
{
    private const string Wiped = "{part: main-bearing, see: wiped}";
    private static readonly KnowledgeBase Knowledge = TinyEngine.Rules.Knowledge();

    [Theory]
    [InlineData(Wiped, "")]
    [InlineData(Wiped + ", {part: oil-pump, see: sound}", "")]
    [InlineData(Wiped + ", {part: oil-pump, see: scored, sure: fairly-sure}", "symptoms: [{not: oil-pressure-low}]\n")]
    [InlineData(Wiped + ", {part: main-bearing, not: scored, sure: doubtful}", "symptoms: [oil-pressure-low, knocking]\n")]
    [InlineData(Wiped + ", {part: main-bearing, see: scored, extent: trace}, {part: oil-filter, not: stuck}", "history: [oil-change-overdue]\n")]
    [InlineData(Wiped + ", {part: main-bearing, see: scored}, {part: rod-bearing, see: sound}", "history: [{not: oil-change-overdue}]\n")]
    [InlineData("{part: rod-bearing, see: wiped}, {part: oil-filter, see: stuck}, {part: oil-pump, see: sound, sure: doubtful}", "history: [oil-change-overdue]\nsymptoms: [{not: knocking}, oil-pressure-low]\n")]
    public void The_ranking_agrees_with_adding_up_every_state_of_every_node(string observations, string more)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, more);
        FindingSet findings = Bench.Chain(Knowledge, teardown);
        CauseNetwork net = new(Knowledge, teardown, EvidenceGathering.Gather(Knowledge, teardown, findings));
        Evidence[] evidence = [.. net.Known.Where(i => i.Kind != EvidenceKind.Circumstance).Select(net.EvidenceOf)];

        CauseRanking ranking = CauseRanker.Rank(Knowledge, teardown, findings);

        (_, double[] exact) = Enumeration.Query([.. net.Network.Nodes], evidence);
        ranking.Ranked.Should().NotBeEmpty();
        foreach (RankedCause ranked in ranking.Ranked)
        {
            ranked.Probability.Should().BeApproximately(Math.Min(0.98, exact[net.NumberOf(ranked.Cause)]), 1e-9, ranked.Cause.Id);
        }
    }

    [Fact]
    public void A_sure_report_may_be_a_false_alarm_once_in_sixty()
    {
        NetworkNode node = NodeOf(Wiped, "", "sign/main-bearing/wiped");

        node.Leak.Should().BeApproximately(0.01 + 1.0 / 60 - 0.01 / 60, 1e-12, because: "the mark is there anyway once in a hundred, or the report is false");
    }

    [Fact]
    public void A_sure_look_overlooks_the_mark_once_in_sixty()
    {
        NetworkNode node = NodeOf("{part: oil-pump, not: scored}", "", "sign/oil-pump/scored");

        node.Links.Single().Strength.Should().BeApproximately(0.8 * 59 / 60, 1e-12);
        node.Leak.Should().BeApproximately(0.01, 1e-12);
    }

    [Theory]
    [InlineData("", 0.05, "what is not mentioned changes nothing")]
    [InlineData("history: [oil-change-overdue]\n", 0.24, "1 - 0.95 x 0.8")]
    [InlineData("history: [{not: oil-change-overdue}]\n", 0.03, "of 0.05 the circumstance brings 0.2 x 0.1 = 0.02")]
    public void A_circumstance_moves_the_prior_of_the_root_it_raises(string history, double prior, string because) =>
        NodeOf("{part: oil-filter, see: stuck}", history, "cause/filter-neglected").Leak.Should().BeApproximately(prior, 1e-12, because);

    [Fact]
    public void A_part_that_nobody_looked_at_changes_nothing()
    {
        CauseRanking without = Rank(Wiped), with = Rank(Wiped, "not-looked-at: [oil-pump, oil-filter]\n");

        Probabilities(with).Should().Equal(Probabilities(without));
    }

    [Fact]
    public void The_order_of_the_evidence_changes_nothing()
    {
        string[] facts = [Wiped, "{part: oil-pump, see: sound}", "{part: rod-bearing, see: wiped}", "{part: oil-filter, see: stuck}"];
        string expected = Probabilities(Rank(string.Join(", ", facts)))[0];
        string[] all = Probabilities(Rank(string.Join(", ", facts)));
        Random random = new(3);

        for (int i = 0; i < 5; i++)
        {
            random.Shuffle(facts);
            Probabilities(Rank(string.Join(", ", facts))).Should().Equal(all);
        }

        expected.Should().StartWith("filter-neglected");
    }

    [Fact]
    public void A_cause_that_this_build_cannot_have_is_no_candidate()
    {
        Rank(Wiped).Ranked.Select(r => r.Cause.Id).Should().Contain("turbo-feed-blocked", "nothing rules it out");
        Rank(Wiped, machine: "{kind: engine, mains: 5, without: [turbocharged]}").Ranked.Select(r => r.Cause.Id).Should().NotContain("turbo-feed-blocked");
    }

    [Fact]
    public void Two_causes_at_once_are_both_named_and_both_needed()
    {
        CauseRanking ranking = Rank("{part: oil-pump, see: scored}, {part: oil-filter, see: stuck}, {part: main-bearing, see: [wiped, scored]}", "history: [oil-change-overdue]\n");

        ranking.Verdict.Kind.Should().Be(VerdictKind.RootNamed);
        ranking.Verdict.Roots.Should().BeEquivalentTo(["filter-neglected", "pump-worn"]);
        ranking.Story.Needed.Values.Should().HaveCount(2).And.OnlyContain(decibans => decibans > 3);
    }

    [Fact]
    public void One_cause_explains_the_other_away()
    {
        double before = Of(Rank(Wiped), "pump-worn");
        double after = Of(Rank(Wiped, "symptoms: [oil-pressure-low]\n"), "pump-worn");

        after.Should().BeLessThan(0.6 * before, "low pressure points to the relief valve, which explains the wiped shells by itself");
    }

    [Fact]
    public void A_sound_neighbour_speaks_against_what_would_have_marked_it()
    {
        CauseRanking ranking = Rank(Wiped + ", {part: oil-pump, see: sound}");

        Of(ranking, "pump-worn").Should().BeLessThan(0.5 * Of(Rank(Wiped), "pump-worn"));
        ranking.Ranked.Single(r => r.Cause.Id == "pump-worn").Against.Should().Contain(w => w.Item.Id == "oil-pump/sound" && w.Decibans < -3);
    }

    [Fact]
    public void A_trace_of_a_mark_counts_little()
    {
        double heavy = Of(Rank("{part: oil-pump, see: scored, extent: heavy}"), "pump-worn");
        double trace = Of(Rank("{part: oil-pump, see: scored, extent: trace}"), "pump-worn");

        heavy.Should().BeGreaterThan(0.4);
        trace.Should().BeLessThan(0.1).And.BeGreaterThan(1.0 / 30, "it still speaks a little for it");
    }

    [Fact]
    public void Nothing_is_ever_surer_than_ninety_eight_per_cent()
    {
        CauseRanking ranking = Rank("{part: oil-filter, see: stuck}, {part: main-bearing, see: [wiped, scored]}, {part: rod-bearing, see: wiped}, {part: oil-pump, see: scored}", "history: [oil-change-overdue]\nsymptoms: [knocking, oil-pressure-low]\n");

        ranking.Ranked.Should().OnlyContain(r => r.Probability <= 0.98);
        ranking.Ranked.Max(r => r.Probability).Should().BeGreaterThan(0.9);
    }

    [Fact]
    public void A_clear_case_names_its_root()
    {
        Verdict verdict = Rank("{part: oil-pump, see: scored}, " + Wiped, "symptoms: [{not: oil-pressure-low}]\n").Verdict;

        verdict.Kind.Should().Be(VerdictKind.RootNamed);
        verdict.Roots.Should().Equal("pump-worn");
    }

    [Fact]
    public void Two_roots_with_the_same_signs_stay_contested()
    {
        KnowledgeBase twins = TinyRules.Words
            .WithCause("pump-drive-slack", "root", "how-common: 1 in 20\nleaves: [{part: oil-pump, see: scored, strength: usually}]")
            .WithCause("pump-run-dry", "root", "how-common: 1 in 21\nleaves: [{part: oil-pump, see: scored, strength: usually}]").Knowledge();
        TeardownCase teardown = Bench.Case(twins, "{part: oil-pump, see: scored}");

        Verdict verdict = CauseRanker.Rank(twins, teardown, Bench.Chain(twins, teardown)).Verdict;

        verdict.Kind.Should().Be(VerdictKind.Contested);
        verdict.Roots.Should().BeEquivalentTo(["pump-drive-slack", "pump-run-dry"]);
        verdict.Reasons.Should().Contain(r => r.Contains("lie close together"));
    }

    [Fact]
    public void One_doubtful_mark_is_not_enough_evidence_and_the_reason_is_said()
    {
        Verdict verdict = Rank("{part: main-bearing, see: wiped, sure: fairly-sure}").Verdict;

        verdict.Kind.Should().Be(VerdictKind.NotEnoughEvidence);
        verdict.Reasons.Should().NotBeEmpty();
    }

    [Fact]
    public void Marks_of_age_on_sound_parts_are_normal_wear()
    {
        Verdict verdict = Rank("{part: main-bearing, see: polished}, {part: oil-pump, see: sound}").Verdict;

        verdict.Kind.Should().Be(VerdictKind.NormalWear);
        verdict.Roots.Should().BeEmpty();
    }

    [Fact]
    public void Damage_that_no_rule_explains_is_not_called_normal()
    {
        Verdict verdict = Rank("{part: oil-debris, see: stuck}").Verdict;

        verdict.Kind.Should().Be(VerdictKind.NotEnoughEvidence);
    }

    private static NetworkNode NodeOf(string observations, string more, string key)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, more);
        CauseNetwork net = new(Knowledge, teardown, EvidenceGathering.Gather(Knowledge, teardown, Bench.Chain(Knowledge, teardown)));
        return net.Network.Nodes.Single(n => n.Id == key);
    }

    private static CauseRanking Rank(string observations, string more = "", string machine = Bench.FiveMains)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, more, machine);
        return CauseRanker.Rank(Knowledge, teardown, Bench.Chain(Knowledge, teardown));
    }

    private static double Of(CauseRanking ranking, string id) => ranking.Ranked.Single(r => r.Cause.Id == id).Probability;

    private static string[] Probabilities(CauseRanking ranking) => [.. ranking.Ranked.Select(r => $"{r.Cause.Id} {r.Probability:0.0000000000}")];
}
