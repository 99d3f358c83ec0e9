using Failwise.Inference;

namespace Failwise.Tests.Inference;

public sealed class LeafTrialsTests
{
    [Fact]
    public void Every_assumption_about_open_leaves_agrees_with_enumeration_whatever_was_assumed_before()
    {
        int asked = 0;
        for (int seed = 0; seed < 400; seed++)
        {
            RandomCase it = new(seed);
            int[] leaves = [.. Enumerable.Range(0, it.Nodes.Count).Where(n => it.Evidence.All(e => e.Node != n) && !it.Nodes.Any(o => o.Links.Any(l => l.Parent == n)))];
            int[] queries = [.. Enumerable.Range(0, it.Nodes.Count).Except(leaves)];
            if (leaves.Length == 0 || queries.Length == 0 || Enumeration.Query(it.Nodes, it.Evidence).Evidence == 0)
            {
                continue;
            }

            LeafTrials trials = new(it.Network, it.Evidence, queries, leaves);
            Random random = new(seed);
            for (int turn = 0; turn < 12; turn++)
            {
                Evidence[] assumed = Assume(random, leaves.Length);
                (double evidence, double[] posterior) = Enumeration.Query(it.Nodes, [.. it.Evidence, .. assumed.Select(e => e with { Node = leaves[e.Node] })]);
                double before = Enumeration.Query(it.Nodes, it.Evidence).Evidence;
                if (evidence < 1e-6 * before)
                {
                    continue;
                }

                asked++;
                Belief belief = trials.Given(assumed);
                belief.LogEvidence.Should().BeApproximately(Math.Log(evidence), 1e-8, because: $"seed {seed}, turn {turn}");
                for (int q = 0; q < queries.Length; q++)
                {
                    belief.Probabilities[q].Should().BeApproximately(posterior[queries[q]], 1e-8, because: $"seed {seed}, turn {turn}, node {queries[q]}");
                }
            }
        }

        asked.Should().BeGreaterThan(1000, because: "most random cases must be possible ones with something open");
    }

    [Fact]
    public void A_leaf_that_cannot_come_about_has_no_evidence_and_moves_nothing()
    {
        NoisyOrNetwork network = new([new("root", 0.2, []), new("mark", 0.1, [new NetworkLink(0, 0.5)]), new("never", 0, [new NetworkLink(0, 0)])]);
        LeafTrials trials = new(network, [Evidence.Present(1)], [0], [2]);

        Belief never = trials.Given([Evidence.Present(0)]);

        never.LogEvidence.Should().Be(double.NegativeInfinity);
        never.Probabilities[0].Should().BeApproximately(0.2 * 0.55 / (0.2 * 0.55 + 0.8 * 0.1), 1e-12);
    }

    private static Evidence[] Assume(Random random, int leaves)
    {
        int most = Math.Min(leaves, 4);
        int[] places = [.. Enumerable.Range(0, leaves)];
        random.Shuffle(places);
        int present = random.Next(0, 3);
        return [.. places.Take(random.Next(0, most + 1)).Select((p, i) => i < present ? Evidence.Present(p) : Evidence.Absent(p))];
    }
}
