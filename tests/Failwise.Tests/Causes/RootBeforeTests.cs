using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Reports;

namespace Failwise.Tests.Causes;

/// <summary>A root that may have brought another about is named with the way between them.</summary>
public sealed class RootBeforeTests
{
    private static readonly KnowledgeBase Knowledge = TinyRules.Words
        .WithCause("neglect", "root", "how-common: 1 in 20\nleaves: [{part: oil-pump, see: wiped, strength: usually}]\nleads-to: [{cause: varnish, strength: usually}]")
        .WithCause("varnish", "state", "leaves: [{part: oil-debris, see: worn, strength: usually}]\nleads-to: [{cause: valve-stuck, strength: half-the-time}]")
        .WithCause("valve-stuck", "root", "how-common: 1 in 100\nleaves: [{part: main-bearing, see: wiped, strength: usually}]")
        .WithCause("apart", "root", "how-common: 1 in 20\nleaves: [{part: rod-bearing, see: scored, strength: usually}]")
        .Knowledge();

    private static CauseRanking Ranking(string observations) => Diagnostician.Diagnose(Knowledge, Bench.Case(Knowledge, observations)).Causes;

    private static RankedCause Of(CauseRanking ranking, string id) => ranking.Ranked.Single(r => r.Cause.Id == id);

    [Fact]
    public void The_second_root_names_the_first_and_the_way()
    {
        CauseRanking ranking = Ranking("{part: oil-pump, see: wiped}, {part: oil-debris, see: worn}, {part: main-bearing, see: wiped}, {part: rod-bearing, see: scored}");

        RootBefore before = Of(ranking, "valve-stuck").After!;
        before.Root.Id.Should().Be("neglect");
        before.Way.Select(s => s.Id).Should().Equal("varnish");
        Of(ranking, "neglect").After.Should().BeNull("nothing leads back to it");
        Of(ranking, "apart").After.Should().BeNull("no way leads to it");
        Phrases.Story(ranking).Should().Contain("neglect → valve stuck").And.Contain(" + ");
    }

    [Fact]
    public void A_first_root_that_is_hardly_possible_is_not_named() =>
        Of(Ranking("{part: oil-pump, see: sound}, {part: oil-debris, not: worn}, {part: main-bearing, see: wiped}"), "valve-stuck").After.Should().BeNull();
}
