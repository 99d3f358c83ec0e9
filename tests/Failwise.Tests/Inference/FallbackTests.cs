using Failwise.Inference;

namespace Failwise.Tests.Inference;

public sealed class FallbackTests
{
    private static readonly InferenceLimits Tiny = new() { MaxTableCells = 64 };

    [Fact]
    public void An_exact_answer_says_so()
    {
        var (network, evidence, causes) = Tangle(seed: 1, weakest: 0.2);
        var result = ExactInference.Query(network, evidence, causes);
        result.Exact.Should().BeTrue();
        result.Approximation.Should().BeNull();
        result.Ranges.Should().BeNull();
        result.WeakMassFolded.Should().BeNull();
        result.Width.Should().BeInRange(6, 16);
    }

    [Fact]
    public void Folding_weak_links_alone_is_named_and_comes_close()
    {
        var causes = Enumerable.Range(0, 12).Select(c => new NetworkNode($"c{c}", 0.05, [])).ToList();
        // Each finding has one strong cause and eleven hardly noticeable ones.
        var findings = Enumerable.Range(0, 12).Select(f => new NetworkNode(
            $"f{f}", 0.02, Enumerable.Range(0, 12).Select(c => new NetworkLink(c, c == f ? 0.9 : 0.01)).ToList()));
        var network = new NoisyOrNetwork([.. causes, .. findings]);
        var evidence = Enumerable.Range(12, 4).Select(Evidence.Present).ToList();
        var asked = Enumerable.Range(0, 12).ToArray();

        var exact = ExactInference.Query(network, evidence, asked);
        var folded = ExactInference.Query(network, evidence, asked, Tiny);

        folded.Exact.Should().BeFalse();
        folded.Approximation.Should().Contain("folded").And.NotContain("samples");
        folded.WeakMassFolded.Should().BeApproximately(4 * 11 * 0.01 * 0.05, 1e-12);
        folded.Width.Should().Be(exact.Width);
        // Folding takes a parent's prior for its posterior, so a likely parent's weak links count too little: a few percent here.
        for (var c = 0; c < 12; c++) folded.Probabilities[c].Should().BeApproximately(exact.Probabilities[c], 0.08);
        // Folded, the four findings are independent, each with one cause of 5 % and a leak of 0.02 raised by eleven times 0.01 * 0.05.
        var silent = 0.98 * Math.Pow(1 - 0.01 * 0.05, 11);
        folded.LogEvidence.Should().BeApproximately(4 * Math.Log(0.05 * (1 - 0.1 * silent) + 0.95 * (1 - silent)), 1e-9);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Sampling_is_named_and_its_ranges_hold_the_exact_values(int seed)
    {
        var (network, evidence, causes) = Tangle(seed, weakest: 0.2);
        var exact = ExactInference.Query(network, evidence, causes);
        var sampled = ExactInference.Query(network, evidence, causes, Tiny);

        sampled.Exact.Should().BeFalse();
        sampled.Approximation.Should().Contain("samples").And.Contain("seed 1");
        sampled.LogEvidence.Should().BeApproximately(exact.LogEvidence, 0.1);
        var held = 0;
        for (var c = 0; c < causes.Length; c++)
        {
            var range = sampled.Ranges![c];
            (range.High - range.Low).Should().BeLessThan(0.1);
            sampled.Probabilities[c].Should().BeInRange(range.Low, range.High);
            sampled.Probabilities[c].Should().BeApproximately(exact.Probabilities[c], 0.05);
            if (range.Low <= exact.Probabilities[c] && exact.Probabilities[c] <= range.High) held++;
        }

        held.Should().BeGreaterThanOrEqualTo(causes.Length - 2, "about 95 % of the ranges should hold");
    }

    [Fact]
    public void The_same_seed_gives_the_same_samples_and_another_seed_others()
    {
        var (network, evidence, causes) = Tangle(4, weakest: 0.2);
        var first = ExactInference.Query(network, evidence, causes, Tiny);
        ExactInference.Query(network, evidence, causes, Tiny).Probabilities.Should().Equal(first.Probabilities);
        ExactInference.Query(network, evidence, causes, Tiny with { Seed = 2 }).Probabilities.Should().NotEqual(first.Probabilities);
    }

    [Fact]
    public void A_part_that_fits_stays_exact_beside_one_that_is_sampled()
    {
        var (network, evidence, causes) = Tangle(5, weakest: 0.2);
        var count = network.Nodes.Count;
        var larger = new NoisyOrNetwork(
            [.. network.Nodes, new NetworkNode("apart", 0.1, []), new NetworkNode("its sign", 0.05, [new NetworkLink(count, 0.8)])]);
        var result = ExactInference.Query(larger, [.. evidence, Evidence.Present(count + 1)], [.. causes, count], Tiny);
        result.Exact.Should().BeFalse();
        result.Of(count).Should().BeApproximately(0.081 / 0.126, 1e-12);
        result.Ranges![^1].Low.Should().Be(result.Ranges[^1].High);
    }

    [Fact]
    public void When_no_sample_agrees_there_is_no_answer_rather_than_a_wrong_one()
    {
        // Every sign needs a cause that is almost never drawn and then almost never shows.
        var nodes = new List<NetworkNode>();
        for (var c = 0; c < 40; c++) nodes.Add(new NetworkNode($"c{c}", 1e-9, []));
        for (var f = 0; f < 40; f++)
        {
            var links = Enumerable.Range(0, 20).Select(k => new NetworkLink((f + k * 7) % 40, 1e-9)).DistinctBy(l => l.Parent).ToList();
            nodes.Add(new NetworkNode($"f{f}", 0, links));
        }

        var evidence = Enumerable.Range(40, 40).Select(Evidence.Present).ToList();
        FluentActions.Invoking(() => ExactInference.Query(new NoisyOrNetwork(nodes), evidence, [0], Tiny with { Samples = 100, WeakLink = 0 }))
            .Should().Throw<InvalidOperationException>().WithMessage("*no answer*");
    }

    private static (NoisyOrNetwork Network, List<Evidence> Evidence, int[] Causes) Tangle(int seed, double weakest)
    {
        var random = new Random(seed);
        var nodes = new List<NetworkNode>();
        for (var c = 0; c < 10; c++) nodes.Add(new NetworkNode($"c{c}", 0.05 + 0.1 * random.NextDouble(), []));
        for (var f = 0; f < 8; f++)
        {
            var causes = Enumerable.Range(0, 10).OrderBy(_ => random.Next()).Take(6);
            nodes.Add(new NetworkNode($"f{f}", 0.02, causes.Select(c => new NetworkLink(c, weakest + 0.7 * random.NextDouble())).ToList()));
        }

        List<Evidence> evidence = [.. Enumerable.Range(10, 6).Select(Evidence.Present), Evidence.Absent(16), Evidence.Likely(17, 1, 3)];
        return (new NoisyOrNetwork(nodes), evidence, Enumerable.Range(0, 10).ToArray());
    }
}
