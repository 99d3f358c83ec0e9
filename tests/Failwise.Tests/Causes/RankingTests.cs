using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Inference;
using Failwise.Knowledge;
using Failwise.Tests.Inference;

namespace Failwise.Tests.Causes;

public sealed class RankingTests
{
    private static readonly TinyRules Rules = TinyRules.Words
        .WithCause("oil-neglected", "root", "how-common: 1 in 20\nleads-to: [{cause: film-lost, strength: often}]\nleaves: [{part: oil-filter, see: scored, strength: half-the-time}]\nraised-by: [{history: oil-change-overdue, strength: 1 in 5}]")
        .WithCause("pump-worn", "root", "how-common: 1 in 30\nleads-to: [{cause: film-lost, strength: usually}]\nleaves: [{part: oil-pump, see: scored, strength: usually}]")
        .WithCause("turbo-shed", "root", "how-common: 1 in 30\nneeds: [turbocharged]\nleaves: [{part: oil-debris, see: scored, strength: usually}]")
        .WithCause("film-lost", "state", "leaves: [{part: plain-bearing, see: wiped, strength: nearly-always}, {symptom: oil-pressure-low, strength: often}]");

    private static readonly KnowledgeBase Knowledge = Rules.Knowledge();

    private static CauseRanking Rank(string observations, string more = "", string machine = Bench.FiveMains)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, more, machine);
        return CauseRanker.Rank(Knowledge, teardown, Bench.Chain(Knowledge, teardown));
    }

    private static double Of(CauseRanking ranking, string id) => ranking.Ranked.First(r => r.Cause.Id == id).Probability;

    [Theory]
    [InlineData("{part: oil-pump, see: sound}", "")]
    [InlineData("{part: oil-pump, not: scored}, {part: oil-filter, not: scored}, {part: main-bearing, not: wiped}", "symptoms: [{not: oil-pressure-low}]")]
    public void Roots_that_are_folded_away_fall_as_the_whole_network_says_by_what_was_not_found(string observations, string more)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, more);
        CauseNetwork net = new(Knowledge, teardown, EvidenceGathering.Gather(Knowledge, teardown, Bench.Chain(Knowledge, teardown)));
        Evidence[] evidence = [.. net.Known.Where(i => i.Kind != EvidenceKind.Circumstance).Select(net.EvidenceOf)];
        Denials denials = new(net);

        foreach (Cause root in net.Roots)
        {
            int node = net.NumberOf(root);
            double before = ExactInference.Query(net.Network, [], [node]).Probabilities[0], whole = ExactInference.Query(net.Network, evidence, [node]).Probabilities[0];

            // Exact where the root leaves the sign itself; a state in between may have come by itself, which is left out.
            denials.Lowered(node, before).Should().BeApproximately(whole, 0.05 * whole);
            denials.Against(node).Select(d => d.Decibans).Should().OnlyContain(d => d < 0).And.BeInAscendingOrder();
        }

        denials.Against(net.NumberOf(Knowledge.Causes["pump-worn"])).First().Item.Id.Should().StartWith("oil-pump");
    }

    [Theory]
    [InlineData("{part: main-bearing, see: wiped}", "")]
    [InlineData("{part: main-bearing, see: wiped}, {part: oil-pump, see: sound}", "")]
    [InlineData("{part: main-bearing, see: wiped, sure: doubtful}, {part: oil-pump, see: scored, extent: light}", "symptoms: [oil-pressure-low]")]
    [InlineData("{part: rod-bearing, see: wiped}, {part: oil-filter, see: scored}", "history: [oil-change-overdue]")]
    [InlineData("{part: rod-bearing, see: wiped}, {part: oil-pump, not: scored}", "history: [{not: oil-change-overdue}]\nsymptoms: [{not: oil-pressure-low}]")]
    public void The_ranking_agrees_with_adding_up_every_state_of_the_same_network(string observations, string more)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, more);
        FindingSet findings = Bench.Chain(Knowledge, teardown);
        CauseNetwork net = new(Knowledge, teardown, EvidenceGathering.Gather(Knowledge, teardown, findings));
        Evidence[] evidence = [.. net.Known.Where(i => i.Kind != EvidenceKind.Circumstance).Select(net.EvidenceOf)];

        CauseRanking ranking = CauseRanker.Rank(Knowledge, teardown, findings);
        double[] expected = Enumeration.Query(net.Network.Nodes, evidence).Posterior;

        ranking.Ranked.Should().NotBeEmpty();
        foreach (RankedCause ranked in ranking.Ranked)
        {
            ranked.Probability.Should().BeApproximately(Math.Min(0.98, expected[net.NumberOf(ranked.Cause)]), 1e-9, because: ranked.Cause.Id);
        }
    }

    [Fact]
    public void A_circumstance_that_holds_adds_its_chance_and_one_that_is_denied_takes_its_share_away()
    {
        double Prior(string more)
        {
            TeardownCase teardown = Bench.Case(Knowledge, "{part: oil-filter, see: scored}", more);
            CauseNetwork net = new(Knowledge, teardown, EvidenceGathering.Gather(Knowledge, teardown, Bench.Chain(Knowledge, teardown)));
            return net.Network.Nodes[net.NumberOf(Knowledge.Causes["oil-neglected"])].Leak;
        }

        Prior("").Should().BeApproximately(0.05, 1e-12, because: "1 in 20, and nothing was said");
        Prior("history: [oil-change-overdue]").Should().BeApproximately(1 - 0.95 * 0.8, 1e-12, because: "1 in 20 or else 1 in 5");
        Prior("history: [{not: oil-change-overdue}]").Should().BeApproximately(0.05 * (1 - 0.2 * 0.1 / 0.05), 1e-12, because: "of 1 in 20, 1 in 5 of the tenth with old oil is gone");
    }

    [Fact]
    public void What_nobody_looked_at_changes_nothing()
    {
        CauseRanking without = Rank("{part: main-bearing, see: wiped}");

        CauseRanking with = Rank("{part: main-bearing, see: wiped}", "not-looked-at: [oil-pump, oil-filter]");

        with.Ranked.Select(r => (r.Cause.Id, r.Probability)).Should().Equal(without.Ranked.Select(r => (r.Cause.Id, r.Probability)));
    }

    [Fact]
    public void The_order_of_the_observations_changes_nothing()
    {
        CauseRanking one = Rank("{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}, {part: oil-filter, see: sound}");

        CauseRanking other = Rank("{part: oil-filter, see: sound}, {part: oil-pump, see: scored}, {part: main-bearing, see: wiped}");

        other.Ranked.Select(r => (r.Cause.Id, r.Probability)).Should().Equal(one.Ranked.Select(r => (r.Cause.Id, r.Probability)));
    }

    [Fact]
    public void A_found_cause_explains_the_damage_and_lowers_its_rival() =>
        Of(Rank("{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}"), "oil-neglected")
            .Should().BeLessThan(Of(Rank("{part: main-bearing, see: wiped}"), "oil-neglected"));

    [Fact]
    public void A_sound_pump_speaks_against_a_worn_pump() =>
        Of(Rank("{part: main-bearing, see: wiped}, {part: oil-pump, see: sound}"), "pump-worn")
            .Should().BeLessThan(Of(Rank("{part: main-bearing, see: wiped}"), "pump-worn") / 3);

    [Fact]
    public void A_trace_of_a_mark_says_little_and_the_same_mark_heavy_says_much()
    {
        double nothing = Knowledge.Causes["pump-worn"].HowCommon;

        double trace = Of(Rank("{part: oil-pump, see: scored, extent: trace}"), "pump-worn");
        double heavy = Of(Rank("{part: oil-pump, see: scored, extent: heavy}"), "pump-worn");

        trace.Should().BeInRange(nothing, 2 * nothing);
        heavy.Should().BeGreaterThan(0.4);
    }

    [Fact]
    public void A_build_without_a_turbocharger_cannot_have_a_turbocharger_fault()
    {
        Rank("{part: oil-debris, see: scored}").Ranked.Should().Contain(r => r.Cause.Id == "turbo-shed");

        Rank("{part: oil-debris, see: scored}", machine: "{kind: engine, without: [turbocharged]}").Ranked.Should().NotContain(r => r.Cause.Id == "turbo-shed");
    }

    [Fact]
    public void Two_causes_at_work_are_both_named_and_both_needed()
    {
        CauseRanking ranking = Rank(
            "{part: main-bearing, see: wiped}, {part: oil-pump, see: scored, extent: heavy}, {part: oil-filter, see: scored, extent: heavy}", "history: [oil-change-overdue]");

        ranking.Verdict.Kind.Should().Be(VerdictKind.RootNamed);
        ranking.Story.Roots.Select(r => r.Id).Should().BeEquivalentTo("oil-neglected", "pump-worn");
        ranking.Story.Needed.Values.Should().OnlyContain(decibans => decibans > 1);
    }

    [Fact]
    public void Damage_that_two_causes_explain_alike_is_not_pinned_on_one() =>
        Rank("{part: main-bearing, see: wiped}").Verdict.Kind.Should().NotBe(VerdictKind.RootNamed);

    [Fact]
    public void Damage_that_no_rule_knows_is_not_enough_evidence_and_says_what_is_open()
    {
        CauseRanking ranking = Rank("{part: oil-pump, see: stuck}");

        ranking.Verdict.Kind.Should().Be(VerdictKind.NotEnoughEvidence);
        ranking.Unexplained.Should().ContainSingle().Which.Id.Should().Be("oil-pump/stuck");
    }

    [Fact]
    public void A_machine_with_light_marks_and_sound_parts_is_normal_wear() =>
        Rank("{part: main-bearing, see: polished}, {part: oil-pump, see: sound}, {part: rod-bearing, see: scored, extent: trace}")
            .Verdict.Kind.Should().Be(VerdictKind.NormalWear);

    [Fact]
    public void Nothing_is_ever_said_above_98_percent() =>
        Rank("{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}, {part: oil-filter, see: scored}", "history: [oil-change-overdue]\nsymptoms: [oil-pressure-low]")
            .Ranked.Should().OnlyContain(r => r.Probability <= 0.98);

    [Fact]
    public void The_chain_leads_from_the_root_through_the_state_to_the_damage()
    {
        RankedCause pump = Rank("{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}").Ranked.First(r => r.Cause.Id == "pump-worn");

        pump.Chains.Should().Contain(c => c.Select(s => s.Id).SequenceEqual(new[] { "pump-worn", "film-lost", "main-bearing/wiped" }));
    }

    [Fact]
    public void Evidence_weights_are_the_change_in_odds_when_the_piece_is_left_out()
    {
        CauseRanking full = Rank("{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}");
        CauseRanking without = Rank("{part: main-bearing, see: wiped}");
        static double LogOdds(double p) => 10 * Math.Log10(p / (1 - p));

        double weight = full.Ranked.First(r => r.Cause.Id == "pump-worn").For.First(e => e.Item.Id == "oil-pump/scored").Decibans;

        weight.Should().BeApproximately(LogOdds(Of(full, "pump-worn")) - LogOdds(Of(without, "pump-worn")), 1e-6);
    }
}
