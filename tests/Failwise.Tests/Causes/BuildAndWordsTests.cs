using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Tests.Causes;

/// <summary>How the words of a rule and of a report meet, and what the build of the machine does to a cause.</summary>
public sealed class BuildAndWordsTests
{
    private static readonly KnowledgeBase Knowledge = TinyRules.Words
        .With("vocabulary/features.yaml",
            """
            - {id: diesel, choice: fuel, says: Burns diesel.}
            - {id: petrol, choice: fuel, says: Burns petrol.}
            - {id: turbocharged, says: Has a turbocharger., share: {engine: 1 in 4}, shown-by: [oil-pump]}
            """)
        .WithCause("any-bearing-worn", "root", "how-common: 1 in 20\ngives-way-to: [rods-worn]\nleaves: [{part: plain-bearing, see: worn, strength: usually}]")
        .WithCause("rods-worn", "root", "how-common: 1 in 20\nleaves: [{part: rod-bearing, see: wiped, strength: usually}]")
        .WithCause("turbo-shed", "root", "how-common: 1 in 20\nneeds: [turbocharged]\nleaves: [{part: oil-debris, see: scored, strength: usually}]")
        .Knowledge();

    private static CauseNetwork Net(string observations, string machine = Bench.FiveMains)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, "", machine);
        return new CauseNetwork(Knowledge, teardown, EvidenceGathering.Gather(Knowledge, teardown, Bench.Chain(Knowledge, teardown)));
    }

    private static string[] RootsOf(string observations) => [.. Net(observations).Roots.Select(r => r.Id)];

    private static double PriorOf(string root, string observations, string machine = Bench.FiveMains)
    {
        CauseNetwork net = Net(observations, machine);
        return net.Network.Nodes[net.NumberOf(Knowledge.Causes[root])].Leak;
    }

    [Theory]
    [InlineData("rod-bearing", "wiped", 0.8, "the very words")]
    [InlineData("plain-bearing", "wiped", 0.4, "the report names no particular bearing")]
    [InlineData("rod-bearing", "worn", 0.4, "the report says less than wiped")]
    [InlineData("plain-bearing", "worn", 0.2, "it says less of both")]
    public void A_report_in_broader_words_than_the_rule_still_speaks_for_the_cause_but_less(string part, string see, double strength, string because)
    {
        CauseNetwork net = Net($"{{part: {part}, see: {see}}}");

        net.LinksInto($"sign/{part}/{see}").Single(l => l.Cause.Id == "rods-worn").Strength.Should().BeApproximately(strength, 1e-12, because);
    }

    [Fact]
    public void A_rule_for_a_broader_mark_speaks_less_than_a_rule_for_the_mark_itself() =>
        Net("{part: main-bearing, see: wiped}").LinksInto("sign/main-bearing/wiped").Single(l => l.Cause.Id == "any-bearing-worn").Strength.Should().BeApproximately(0.56, 1e-12, because: "0.8 of any wear, of which wiping is one kind: 0.7");

    [Fact]
    public void A_rule_for_one_part_does_not_speak_of_its_sister_part() =>
        RootsOf("{part: main-bearing, see: wiped}").Should().NotContain("rods-worn");

    [Fact]
    public void A_general_root_steps_aside_only_where_a_particular_one_speaks_of_every_marked_part()
    {
        RootsOf("{part: rod-bearing, see: wiped}").Should().Equal("rods-worn");
        RootsOf("{part: rod-bearing, see: wiped}, {part: main-bearing, see: wiped}").Should().Equal("any-bearing-worn", "rods-worn");
    }

    [Theory]
    [InlineData(1.0 / 300, 1.0 / 300, "the usual root")]
    [InlineData(1.0 / 3000, 1.0 / 1194, "a tenth as common is believed to be a quarter as common: ten to the power 0.6 is 3.98")]
    [InlineData(1.0 / 30, 1.0 / 75.4, "ten times as common is believed to be 3.98 times as common")]
    public void A_judged_count_is_drawn_towards_the_usual_root(double written, double believed, string because)
    {
        KnowledgeBase believing = TinyRules.Words
            .With("vocabulary/words.yaml", "strengths: {usually: 0.80}\nsureness: {sure: 60}\ncounts: {usual-root: 0.00333333333333, trust: 0.6}\nextents: {moderate: 1}\n")
            .WithCause("rods-worn", "root", $"how-common: {written:R}\nleaves: [{{part: rod-bearing, see: wiped, strength: usually}}]").Knowledge();

        BuildFit.Commonness(believing, believing.Causes["rods-worn"]).Should().BeApproximately(believed, believed * 0.001, because);
        BuildFit.Commonness(Knowledge, Knowledge.Causes["rods-worn"]).Should().Be(0.05, because: "without a word on trust a count is taken as written");
    }

    [Fact]
    public void A_feature_that_nobody_mentioned_makes_its_causes_rarer_by_its_share()
    {
        const string Debris = "{part: oil-debris, see: scored}";

        PriorOf("turbo-shed", Debris).Should().BeApproximately(0.05 / 4, 1e-12, because: "one engine in four has it");
        PriorOf("turbo-shed", Debris + ", {part: oil-pump, see: sound}").Should().BeApproximately(0.05, 1e-12, because: "a part was looked at that only such a build has");
        PriorOf("turbo-shed", Debris, "{kind: gearbox}").Should().BeApproximately(0.05, 1e-12, because: "no share is given for that kind");
    }
}
