using Failwise.Inference;
using Failwise.Tests.Inference;

namespace Failwise.Tests.Causes;

public sealed class CandidateReductionTests
{
    [Fact]
    public void With_every_root_free_and_one_parent_a_state_the_reduction_is_exact()
    {
        Random random = new(11);
        for (int trial = 0; trial < 200; trial++)
        {
            (NetworkNode[] nodes, Evidence[] evidence, int[] roots) = Network(random, parentsOfState: 1);

            double[] reduced = Ask(nodes, evidence, roots);
            double[] exact = Enumeration.Query(nodes, evidence).Posterior;

            for (int i = 0; i < roots.Length; i++)
            {
                reduced[i].Should().BeApproximately(exact[roots[i]], 1e-9, because: $"trial {trial}, root {i}");
            }
        }
    }

    [Fact]
    public void With_several_parents_a_clean_state_counts_a_little_too_much_against_them_and_never_by_more_than_a_few_percent()
    {
        Random random = new(12);
        double worst = 0;
        for (int trial = 0; trial < 200; trial++)
        {
            (NetworkNode[] nodes, Evidence[] evidence, int[] roots) = Network(random, parentsOfState: 3);
            double[] reduced = Ask(nodes, evidence, roots);
            double[] exact = Enumeration.Query(nodes, evidence).Posterior;
            for (int i = 0; i < roots.Length; i++)
            {
                worst = Math.Max(worst, Math.Abs(reduced[i] - exact[roots[i]]));
            }
        }

        worst.Should().BeInRange(1e-12, 0.06, because: "folding clean states upwards is an approximation, and a mild one");
    }

    [Fact]
    public void A_way_too_weak_to_be_followed_can_cost_a_root_most_of_its_only_sign()
    {
        // The root brings the state about with 0.03, under the 0.04 from which a state stays free; so it keeps its usual frequency.
        NetworkNode[] nodes =
        [
            new("root", 0.1, []), new("state", 0.0005, [new NetworkLink(0, 0.03)]), new("sign", 0.005, [new NetworkLink(1, 0.9)]),
        ];
        Evidence[] evidence = [Evidence.Present(2)];
        double exact = Enumeration.Query(nodes, evidence).Posterior[0];

        ReducedNetwork reduced = new CandidateReduction(new NoisyOrNetwork(nodes), evidence).Reduce([0]);
        double folded = ExactInference.Query(reduced.Network, reduced.Evidence, [reduced.NumberOf[0]]).Probabilities[0];

        exact.Should().BeApproximately(0.1 * (1 - 0.995 * (1 - 0.9 * (1 - 0.9995 * 0.97))) / (0.1 * (1 - 0.995 * (1 - 0.9 * (1 - 0.9995 * 0.97))) + 0.9 * (1 - 0.995 * (1 - 0.9 * 0.0005))), 1e-9);
        folded.Should().BeApproximately(0.1, 1e-9, because: "the sign no longer speaks for the root: the price of leaving out weak ways");
    }

    [Fact]
    public void The_root_behind_the_evidence_is_among_the_first_candidates()
    {
        List<NetworkNode> nodes = [.. Enumerable.Range(0, 40).Select(i => new NetworkNode($"root{i}", 0.01, []))];
        nodes.AddRange(Enumerable.Range(0, 40).Select(i => new NetworkNode($"sign{i}", 0.02, [new NetworkLink(i, 0.8), new NetworkLink((i + 1) % 40, 0.1)])));

        IReadOnlyList<int> chosen = new CandidateReduction(new NoisyOrNetwork(nodes), [Evidence.Present(47), Evidence.Absent(60)]).Choose([.. Enumerable.Range(0, 40)], 3);

        chosen[0].Should().Be(7, because: "sign 7 is what root 7 leaves");
    }

    private static double[] Ask(NetworkNode[] nodes, Evidence[] evidence, int[] roots)
    {
        ReducedNetwork reduced = new CandidateReduction(new NoisyOrNetwork(nodes), evidence).Reduce(roots);
        return [.. ExactInference.Query(reduced.Network, reduced.Evidence, [.. roots.Select(r => reduced.NumberOf[r])]).Probabilities];
    }

    /// <summary>Five roots, four states, seven signs reported present or absent; links strong enough not to be folded for weakness.</summary>
    private static (NetworkNode[] Nodes, Evidence[] Evidence, int[] Roots) Network(Random random, int parentsOfState)
    {
        List<NetworkNode> nodes = [.. Enumerable.Range(0, 5).Select(i => new NetworkNode($"root{i}", 0.02 + 0.1 * random.NextDouble(), []))];
        for (int s = 0; s < 4; s++)
        {
            nodes.Add(new NetworkNode($"state{s}", 0.01, Links(random, 5, parentsOfState)));
        }

        List<Evidence> evidence = [];
        for (int s = 0; s < 7; s++)
        {
            nodes.Add(new NetworkNode($"sign{s}", 0.05, [new NetworkLink(5 + s % 4, 0.3 + 0.6 * random.NextDouble())]));
            evidence.Add(random.Next(3) == 0 ? Evidence.Present(9 + s) : Evidence.Absent(9 + s));
        }

        return ([.. nodes], [.. evidence], [0, 1, 2, 3, 4]);
    }

    private static NetworkLink[] Links(Random random, int from, int count) =>
        [.. Enumerable.Range(0, from).OrderBy(_ => random.Next()).Take(count).Select(p => new NetworkLink(p, 0.3 + 0.6 * random.NextDouble()))];
}
