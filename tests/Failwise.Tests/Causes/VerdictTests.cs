using Failwise.Cases;
using Failwise.Causes;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Tests.Causes;

/// <summary>Each verdict can be reached, and a report of an observer counts for no more than it is worth.</summary>
public sealed class VerdictTests
{
    private const string Wiped = "{part: main-bearing, see: wiped}";
    private static readonly KnowledgeBase Knowledge = TinyEngine.Rules.Knowledge();

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

    [Theory]
    [InlineData("", VerdictKind.NotEnoughEvidence)]
    [InlineData("{part: oil-pump, see: sound}", VerdictKind.NormalWear)]
    public void A_machine_is_called_sound_only_when_somebody_looked(string observations, VerdictKind kind) =>
        Rank(observations, "history: [{not: oil-change-overdue}]\n").Verdict.Kind.Should().Be(kind);

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
}
