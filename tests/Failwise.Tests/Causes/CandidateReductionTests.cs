using Failwise.Inference;
using Failwise.Tests.Inference;
using Xunit.Abstractions;

namespace Failwise.Tests.Causes;

/// <summary>
/// What the reduction costs when every root is a candidate, against plain enumeration of 200 random networks each. The tolerances are
/// what was measured, rounded up, not what was hoped for.
/// </summary>
public class CandidateReductionTests(ITestOutputHelper output)
{
    [Fact]
    public void With_one_parent_for_each_state_the_folding_of_clean_states_is_exact() =>
        Measure(parentsOfState: 1, stateLeak: 0, weakest: 0.25).Worst.Should().BeLessThan(1e-9);

    [Fact]
    public void With_several_parents_the_folding_of_clean_states_costs_little()
    {
        (double worst, double mean) = Measure(parentsOfState: 3, stateLeak: 0.0005, weakest: 0.25);

        worst.Should().BeLessThan(0.05);
        mean.Should().BeLessThan(0.002);
    }

    [Fact]
    public void A_way_too_weak_to_be_followed_can_cost_a_root_its_only_sign()
    {
        // A state that no root reaches with 0.04 keeps its usual frequency; where it is the only explanation, the root is not credited.
        (double worst, double mean) = Measure(parentsOfState: 1, stateLeak: 0.0005, weakest: 0.03);

        worst.Should().BeLessThan(0.3);
        mean.Should().BeLessThan(0.005);
    }

    private (double Worst, double Mean) Measure(int parentsOfState, double stateLeak, double weakest)
    {
        (double Worst, double Mean)[] all = [.. Enumerable.Range(0, 200).Select(seed => Difference(new Random(seed), parentsOfState, stateLeak, weakest))];
        output.WriteLine($"worst difference {all.Max(d => d.Worst):0.000000}, mean {all.Average(d => d.Mean):0.000000}");
        return (all.Max(d => d.Worst), all.Average(d => d.Mean));
    }

    /// <summary>Two levels of states between four roots and seven signs, priors and strengths as rules have them.</summary>
    private static (double Worst, double Mean) Difference(Random random, int parentsOfState, double stateLeak, double weakest)
    {
        const int Roots = 4, Firsts = 3, Causes = 9, Signs = 6;
        List<NetworkNode> nodes = [.. Enumerable.Range(0, Roots).Select(i => new NetworkNode($"root{i}", 0.005 + 0.1 * random.NextDouble(), []))];
        for (int i = Roots; i < Causes; i++)
        {
            nodes.Add(new NetworkNode($"state{i}", stateLeak, Parents(i < Roots + Firsts ? 0 : 2, i < Roots + Firsts ? Roots : Roots + Firsts, random.Next(1, parentsOfState + 1))));
        }

        for (int i = 0; i < Signs; i++)
        {
            nodes.Add(new NetworkNode($"sign{i}", 0.005 + 0.1 * random.NextDouble(), Parents(0, Causes, random.Next(1, 4))));
        }

        Evidence[] evidence = [.. Enumerable.Range(Causes, Signs).Where(_ => random.Next(3) > 0).Select(n => random.Next(3) == 0 ? Evidence.Present(n) : Evidence.Absent(n))];
        int[] roots = [.. Enumerable.Range(0, Roots)];
        ReducedNetwork reduced = new CandidateReduction(new NoisyOrNetwork(nodes), evidence).Reduce(roots);
        Posterior posterior = ExactInference.Query(reduced.Network, reduced.Evidence, [.. roots.Select(r => reduced.NumberOf[r])]);
        (_, double[] exact) = Enumeration.Query(nodes, evidence);
        double[] off = [.. roots.Select((r, i) => Math.Abs(posterior.Probabilities[i] - exact[r]))];
        return (off.Max(), off.Average());

        NetworkLink[] Parents(int from, int to, int count) =>
            [.. Enumerable.Range(from, to - from).OrderBy(_ => random.Next()).Take(count).Order().Select(p => new NetworkLink(p, weakest + (0.95 - weakest) * random.NextDouble()))];
    }
}
