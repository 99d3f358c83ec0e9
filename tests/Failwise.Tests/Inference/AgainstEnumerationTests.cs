using Failwise.Inference;

namespace Failwise.Tests.Inference;

public sealed class AgainstEnumerationTests
{
    [Theory]
    [InlineData(0, 500)]
    [InlineData(500, 500)]
    [InlineData(1000, 500)]
    public void Every_posterior_and_the_evidence_agree_with_enumeration_on_random_networks(int firstSeed, int count)
    {
        var answered = 0;
        for (var seed = firstSeed; seed < firstSeed + count; seed++)
        {
            var it = new RandomCase(seed);
            var (evidence, posterior) = Enumeration.Query(it.Nodes, it.Evidence);
            var log = ExactInference.LogEvidence(it.Network, it.Evidence);
            if (evidence == 0)
            {
                log.Should().Be(double.NegativeInfinity, "seed {0} has contradictory evidence", seed);
                continue;
            }

            answered++;
            var result = ExactInference.Query(it.Network, it.Evidence, it.Everything);
            result.Exact.Should().BeTrue();
            log.Should().BeApproximately(Math.Log(evidence), 1e-9, "seed {0}", seed);
            result.LogEvidence.Should().BeApproximately(log, 1e-12, "seed {0}", seed);
            for (var n = 0; n < posterior.Length; n++)
                result.Probabilities[n].Should().BeApproximately(posterior[n], 1e-9, "seed {0}, node {1}", seed, n);
        }

        answered.Should().BeGreaterThan(count * 9 / 10, "most random cases must be possible ones");
    }

    [Fact]
    public void Asking_for_one_node_gives_the_same_number_as_asking_for_all()
    {
        for (var seed = 3000; seed < 3200; seed++)
        {
            var it = new RandomCase(seed);
            var (evidence, posterior) = Enumeration.Query(it.Nodes, it.Evidence);
            if (evidence == 0) continue;
            for (var n = 0; n < posterior.Length; n++)
            {
                ExactInference.Query(it.Network, it.Evidence, [n]).Of(n)
                    .Should().BeApproximately(posterior[n], 1e-9, "seed {0}, node {1}", seed, n);
            }
        }
    }

    [Fact]
    public void Broad_findings_that_share_many_causes_agree_with_enumeration()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Random(seed);
            var nodes = new List<NetworkNode>();
            for (var c = 0; c < 8; c++) nodes.Add(new NetworkNode($"c{c}", 0.2 * random.NextDouble(), []));
            for (var f = 0; f < 7; f++)
            {
                var links = Enumerable.Range(0, 8).Where(_ => random.Next(4) > 0).Select(c => new NetworkLink(c, random.NextDouble())).ToList();
                nodes.Add(new NetworkNode($"f{f}", 0.01, links));
            }

            var evidence = Enumerable.Range(8, 7).Select(f => random.Next(5) == 0 ? Evidence.Likely(f, 4, 1) : Evidence.Present(f)).ToList();
            var (total, posterior) = Enumeration.Query(nodes, evidence);
            var result = ExactInference.Query(new NoisyOrNetwork(nodes), evidence, Enumerable.Range(0, 15).ToArray());
            result.LogEvidence.Should().BeApproximately(Math.Log(total), 1e-9);
            for (var n = 0; n < 15; n++) result.Probabilities[n].Should().BeApproximately(posterior[n], 1e-9, "seed {0}, node {1}", seed, n);
        }
    }
}
