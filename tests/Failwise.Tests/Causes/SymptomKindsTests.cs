using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Tests.Causes;

/// <summary>A symptom may be said in a broad word or a closer one. Expected strengths follow from docs/how-it-decides.md: 0.7 for a rule that says less than the report, 0.5 for one that says more.</summary>
public sealed class SymptomKindsTests
{
    private static readonly KnowledgeBase Knowledge = Rules.Knowledge();

    private static TinyRules Rules => TinyRules.Words
        .With("symptoms/noises.yaml",
            """
            - {id: knock, says: It knocks., seen-anyway: 1 in 20}
            - {id: knock-under-load, says: It knocks under load., kind-of: knock, seen-anyway: 1 in 40}
            - {id: smoke, says: It smokes., seen-anyway: 1 in 20}
            """)
        .WithFinding("knocks-somehow", "{symptom: knock}")
        .WithCause("any-knocker", "root", "how-common: 1 in 20\nleaves: [{symptom: knock, strength: usually}]")
        .WithCause("load-knocker", "root", "how-common: 1 in 20\nleaves: [{symptom: knock-under-load, strength: usually}]");

    private static TeardownCase Case(string symptoms) => Bench.Case(Knowledge, "", $"symptoms: [{symptoms}]\n");

    private static CauseNetwork Net(string symptoms)
    {
        TeardownCase teardown = Case(symptoms);
        return new CauseNetwork(Knowledge, teardown, EvidenceGathering.Gather(Knowledge, teardown, Bench.Chain(Knowledge, teardown)));
    }

    [Theory]
    [InlineData("knock", "any-knocker", 0.8)]
    [InlineData("knock", "load-knocker", 0.4)]
    [InlineData("knock-under-load", "load-knocker", 0.8)]
    [InlineData("knock-under-load", "any-knocker", 0.56)]
    public void A_rule_and_a_report_meet_in_broader_and_closer_words(string said, string cause, double strength) =>
        Net(said).LinksInto("symptom/" + said).Single(l => l.Cause.Id == cause).Strength.Should().BeApproximately(strength, 1e-12);

    [Fact]
    public void One_noise_said_in_two_words_counts_once()
    {
        IEnumerable<string> Ranks(string symptoms) => Diagnostician.Diagnose(Knowledge, Case(symptoms)).Causes.Ranked.Select(r => $"{r.Cause.Id} {r.Probability:0.000000000}");

        Ranks("knock, knock-under-load").Should().Equal(Ranks("knock-under-load"));
        Ranks("knock, smoke").Should().NotEqual(Ranks("smoke"), "two things noticed are two");
    }

    [Fact]
    public void What_was_not_noticed_at_all_was_not_noticed_in_any_closer_way()
    {
        Net("{not: knock}").LinksInto("symptom/knock").Single(l => l.Cause.Id == "load-knocker").Strength.Should().BeApproximately(0.8, 1e-12);
        Net("{not: knock-under-load}").LinksInto("symptom/knock-under-load").Should().NotContain(l => l.Cause.Id == "any-knocker", "it may have knocked otherwise");
    }

    [Fact]
    public void A_closer_word_meets_a_condition_on_the_broad_one()
    {
        TeardownCase teardown = Case("knock-under-load");

        Bench.Chain(Knowledge, teardown).Fired.Select(f => f.Id).Should().Contain("knocks-somehow");
    }

    [Fact]
    public void A_broader_symptom_that_does_not_exist_is_named() =>
        Rules.With("symptoms/more.yaml", "- {id: rap, says: It raps., kind-of: knok, seen-anyway: 1 in 20}").Read().Problems
            .Should().ContainSingle(p => p.Severity == Severity.Error).Which.ToString().Should().Be("symptoms/more.yaml:1:3: error FW018: unknown symptom 'knok'. Did you mean 'knock'?");
}
