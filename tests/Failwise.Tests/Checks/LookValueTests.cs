using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Inference;
using Failwise.Knowledge;
using Failwise.Tests.Causes;
using Failwise.Tests.Inference;

namespace Failwise.Tests.Checks;

/// <summary>The value of a look against adding up every state of the same small network, with arithmetic of its own.</summary>
public sealed class LookValueTests
{
    private static readonly KnowledgeBase Knowledge = TinyEngine.Rules.Knowledge();

    [Theory]
    [InlineData("{part: main-bearing, see: wiped}", "")]
    [InlineData("{part: main-bearing, see: wiped}, {part: rod-bearing, see: sound}", "")]
    [InlineData("{part: rod-bearing, see: wiped, sure: doubtful}", "symptoms: [oil-pressure-low]")]
    [InlineData("{part: main-bearing, see: [wiped, scored]}", "history: [oil-change-overdue]")]
    public void A_look_is_worth_what_adding_up_every_state_says(string observations, string more)
    {
        TeardownCase teardown = Bench.Case(Knowledge, observations, more);
        CauseRanking ranking = CauseRanker.Rank(Knowledge, teardown, Bench.Chain(Knowledge, teardown));

        PlannedCheck[] looks = [.. CheckPlanner.Plan(Knowledge, teardown, ranking, new PlanOptions(20, OnlyLooks: true)).Checks.Where(c => c.Kind == CheckKind.Look)];

        looks.Should().NotBeEmpty();
        foreach (PlannedCheck look in looks)
        {
            (double gain, double[] chances) = ByEnumeration(teardown, ranking, [.. look.Outcomes.SkipLast(1).Select(o => o.Id)]);
            string[] parts = [.. look.Outcomes.SkipLast(1).Select(o => o.Id.Split('/')[0])];
            Observation[] before = [.. teardown.Observations.Where(o => parts.Any(p => Knowledge.PartIs(o.Part, p) || Knowledge.PartIs(p, o.Part)))];
            // A part that was looked at already is worth less, the more marks were seen on it.
            double again = before.Length == 0 ? 1 : before.Count(o => o.Look == Look.Seen) switch { 1 => 1, 2 => 0.8, _ => 0.3 };
            const double near = 1e-6;
            string both = $"{look.Id}: {string.Join(' ', look.Outcomes.Select(o => o.Chance))} against {string.Join(' ', chances)}";
            look.Gain.Should().BeApproximately(gain * again, near, because: both);
            look.Outcomes.Select(o => o.Chance).Zip(chances).Should().OnlyContain(c => Math.Abs(c.First - c.Second) < near, because: both);
        }
    }

    [Fact]
    public void What_each_outcome_would_mean_is_what_the_engine_says_once_it_is_seen()
    {
        TeardownCase teardown = Bench.Case(Knowledge, "{part: main-bearing, see: wiped}");
        CauseRanking ranking = CauseRanker.Rank(Knowledge, teardown, Bench.Chain(Knowledge, teardown));
        PlannedCheck pump = CheckPlanner.Plan(Knowledge, teardown, ranking, new PlanOptions(20, OnlyLooks: true)).Checks.Single(c => c.Id == "look/oil-pump");

        TeardownCase after = Bench.Case(Knowledge, "{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}");
        CauseRanking then = CauseRanker.Rank(Knowledge, after, Bench.Chain(Knowledge, after));

        foreach (Mover mover in pump.Outcomes[0].Movers)
        {
            mover.Then.Should().BeApproximately(then.Ranked.First(r => r.Cause == mover.Root).Probability, 1e-6, because: mover.Root.Id);
        }
    }

    [Fact]
    public void The_gain_is_the_entropy_lost_on_the_average()
    {
        // Hand calculation: one root at 0.5; after the answer 0.9 or 0.1, each half the time: 1 - 0.468996 = 0.531004 bit.
        LookValue.Gain([0.5], [(0.5, [0.9]), (0.5, [0.1])]).Should().BeApproximately(0.531004, 1e-6);
        LookValue.Gain([0.5], [(0.5, [0.9]), (0.5, [0.1])], [0.5]).Should().BeApproximately(0.265502, 1e-6);
        LookValue.Gain([0.5, 0.2], [(1, [0.5, 0.2])]).Should().Be(0);
    }

    [Fact]
    public void The_quick_forecast_of_one_root_agrees_with_bayes_rule()
    {
        // Root at 0.3; the sign shows in 0.8 with it and 0.2 without: P(sign) = 0.38. After yes 0.631579, after no 0.096774.
        double expected = H(0.3) - 0.38 * H(0.24 / 0.38) - 0.62 * H(0.06 / 0.62);

        LookValue.QuickGain(0.3, [0.38], [0.8]).Should().BeApproximately(expected, 1e-12);
    }

    private static (double Gain, double[] Chances) ByEnumeration(TeardownCase teardown, CauseRanking ranking, string[] signs)
    {
        EvidenceItem[] open = [.. signs.Select(s => new EvidenceItem(s, EvidenceKind.Sign, "", true, Knowledge.Sureness["sure"], [], false))];
        CauseNetwork net = new CauseNetwork(Knowledge, teardown, ranking.Evidence).With(open);
        Evidence[] known = [.. net.Known.Where(i => i.Kind != EvidenceKind.Circumstance).Select(net.EvidenceOf)];
        (double start, double[] before) = Enumeration.Query(net.Network.Nodes, known);
        double gain = Entropy(before);
        List<double> chances = [];
        List<Evidence> absent = [];
        for (int k = 0; k <= open.Length; k++)
        {
            Evidence[] assumed = k < open.Length ? [.. known, .. absent, Evidence.Present(net.NumberOf(open[k]))] : [.. known, .. absent];
            (double evidence, double[] after) = Enumeration.Query(net.Network.Nodes, assumed);
            chances.Add(evidence / start);
            gain -= evidence / start * Entropy(after);
            if (k < open.Length)
            {
                absent.Add(Evidence.Absent(net.NumberOf(open[k])));
            }
        }

        return (gain, [.. chances]);

        // A root counts as far as the case has raised it above its usual frequency.
        double Entropy(double[] p) => net.Roots.Sum(r => Math.Clamp(1 - r.HowCommon / before[net.NumberOf(r)], 0, 1) * H(p[net.NumberOf(r)]));
    }

    private static double H(double p) => p is <= 0 or >= 1 ? 0 : -(p * Math.Log2(p) + (1 - p) * Math.Log2(1 - p));
}
