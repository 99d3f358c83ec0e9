using System.Globalization;
using Failwise.Inference;

namespace Failwise.Tests.Inference;

public sealed class InvariantTests
{
    private static readonly NoisyOrNetwork Medium = PublishedNetworks.Load().Networks["medium"].AsNoisyOr();

    private static readonly List<Evidence> Mixed =
    [
        .. new[] { "f0", "f2", "f5", "f7", "f11", "f13" }.Select(id => Evidence.Present(Medium.IndexOf(id))),
        .. new[] { "f1", "f3", "f9", "f15" }.Select(id => Evidence.Absent(Medium.IndexOf(id))),
        Evidence.Likely(Medium.IndexOf("f10"), 20, 1),
    ];

    private static readonly int[] AllCauses = Enumerable.Range(0, 16).ToArray();

    [Theory]
    [InlineData(6, 0.001, 8.265089989640255e-15, 0.778716779718)]
    [InlineData(10, 0.001, 7.321616602906486e-16, 0.999594390019)]
    [InlineData(12, 0.0001, 2.1638663560726376e-16, 0.99999593914)]
    public void Many_surprising_findings_do_not_cancel_the_digits_away(int findings, double leak, double evidence, double posterior)
    {
        // Exact fractions; the alternating-sign algorithm in doubles gives 0.05 where the truth is 0.9996.
        var (network, all) = Trap(findings, leak);
        var result = ExactInference.Query(network, all, [0]);
        (Math.Exp(result.LogEvidence) / evidence).Should().BeApproximately(1, 1e-11);
        result.Of(0).Should().BeApproximately(posterior, 6e-13);
    }

    [Fact]
    [CheckValue("constructed-quickscore-cancellation")]
    public void A_thousand_surprising_findings_do_not_underflow()
    {
        // Six causes in parallel: ln P is six times that of one cause, which a few lines of arithmetic give in logarithms.
        var (network, all) = Trap(1200, 1e-6);
        var result = ExactInference.Query(network, all, [0]);
        var present = Math.Log(0.005) + 200 * Math.Log(1 - 0.3 * (1 - 1e-6));
        result.LogEvidence.Should().BeApproximately(6 * present, 1e-6);
        result.Of(0).Should().BeApproximately(1, 1e-12);
    }

    [Fact]
    public void The_order_of_the_evidence_does_not_matter()
    {
        var random = new Random(5);
        var expected = ExactInference.Query(Medium, Mixed, AllCauses);
        for (var i = 0; i < 20; i++)
        {
            var shuffled = Mixed.ToArray();
            random.Shuffle(shuffled);
            Same(ExactInference.Query(Medium, shuffled, AllCauses), expected);
        }
    }

    [Fact]
    public void The_order_of_the_nodes_does_not_matter()
    {
        var expected = ExactInference.Query(Medium, Mixed, AllCauses);
        var last = Medium.Nodes.Count - 1;
        var turned = new NoisyOrNetwork(Medium.Nodes.Reverse()
            .Select(n => n with { Links = n.Links.Select(l => l with { Parent = last - l.Parent }).ToList() }).ToList());
        var evidence = Mixed.ConvertAll(e => e with { Node = last - e.Node });
        Same(ExactInference.Query(turned, evidence, AllCauses.Select(n => last - n).ToArray()), expected);
    }

    [Fact]
    public void A_finding_nobody_looked_at_changes_nothing()
    {
        var expected = ExactInference.Query(Medium, Mixed, AllCauses);
        var broad = new NetworkNode("extra", 0.01, AllCauses.Select(c => new NetworkLink(c, 0.7)).ToList());
        var larger = new NoisyOrNetwork([.. Medium.Nodes, broad]);
        Same(ExactInference.Query(larger, Mixed, AllCauses), expected);
        Same(ExactInference.Query(larger, [.. Mixed, Evidence.Likely(Medium.Nodes.Count, 1, 1)], AllCauses), expected);
    }

    [Fact]
    public void A_report_of_one_to_one_changes_no_posterior_whatever_its_size()
    {
        var expected = ExactInference.Query(Medium, Mixed, AllCauses);
        var more = ExactInference.Query(Medium, [.. Mixed, Evidence.Likely(Medium.IndexOf("f16"), 0.5, 0.5)], AllCauses);
        more.LogEvidence.Should().BeApproximately(expected.LogEvidence + Math.Log(0.5), 1e-12);
        Same(more with { LogEvidence = expected.LogEvidence }, expected);
    }

    [Fact]
    public void Two_reports_on_one_node_multiply()
    {
        var f = Medium.IndexOf("f16");
        Same(
            ExactInference.Query(Medium, [.. Mixed, Evidence.Likely(f, 0.8, 0.2), Evidence.Likely(f, 0.6, 0.4)], AllCauses),
            ExactInference.Query(Medium, [.. Mixed, Evidence.Likely(f, 0.48, 0.08)], AllCauses));
    }

    [Fact]
    public void The_same_query_gives_the_same_digits_and_leaves_the_model_as_it_was()
    {
        var before = Print(Medium);
        var first = ExactInference.Query(Medium, Mixed, AllCauses);
        ExactInference.Query(Medium, [Evidence.Likely(0, 0.9, 0.1)], AllCauses);
        var second = ExactInference.Query(Medium, Mixed, AllCauses);
        second.Probabilities.Should().Equal(first.Probabilities);
        Print(Medium).Should().Be(before);
    }

    [Fact]
    public void A_negative_finding_never_raises_a_cause_whose_only_path_it_is()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var it = new RandomCase(7000 + seed);
            if (double.IsNegativeInfinity(ExactInference.LogEvidence(it.Network, it.Evidence))) continue;
            // A new root whose one child is a new sign; other causes of the sign are those of the random network.
            var root = it.Nodes.Count;
            var others = it.Nodes.Take(2).Select((_, i) => new NetworkLink(i, 0.4));
            var network = new NoisyOrNetwork(
                [.. it.Nodes, new NetworkNode("new", 0.2, []), new NetworkNode("sign", 0.05, [new NetworkLink(root, 0.6), .. others])]);
            var before = ExactInference.Query(network, it.Evidence, [root]).Of(root);
            var after = ExactInference.Query(network, [.. it.Evidence, Evidence.Absent(root + 1)], [root]).Of(root);
            after.Should().BeLessThan(before, "seed {0}", seed);
        }
    }

    [Fact]
    public void A_chain_of_five_thousand_links_is_solved()
    {
        const int length = 5000;
        var nodes = new List<NetworkNode> { new("n0", 0.3, []) };
        for (var i = 1; i < length; i++) nodes.Add(new NetworkNode($"n{i}", 0.001, [new NetworkLink(i - 1, 0.999)]));
        var result = ExactInference.Query(new NoisyOrNetwork(nodes), [Evidence.Present(length - 1)], [0, length - 1]);

        // The chain is a two-state recursion: P(end | n0 present) and P(end | n0 absent).
        double ifPresent = 1, ifAbsent = 0;
        for (var i = 1; i < length; i++)
        {
            ifPresent = 0.001 + 0.999 * 0.999 * ifPresent;
            ifAbsent = 0.001 + 0.999 * 0.999 * ifAbsent;
        }

        var evidence = 0.3 * ifPresent + 0.7 * ifAbsent;
        result.LogEvidence.Should().BeApproximately(Math.Log(evidence), 1e-9);
        result.Of(0).Should().BeApproximately(0.3 * ifPresent / evidence, 1e-9);
        result.Of(length - 1).Should().Be(1);
    }

    [Fact]
    public void Parts_that_are_not_connected_do_not_touch_one_another()
    {
        var a = new NetworkNode("a", 0.1, []);
        var b = new NetworkNode("b", 0.2, []);
        var network = new NoisyOrNetwork(
            [a, b, new NetworkNode("sign a", 0.05, [new NetworkLink(0, 0.8)]), new NetworkNode("sign b", 0.05, [new NetworkLink(1, 0.8)])]);
        var result = ExactInference.Query(network, [Evidence.Present(2)], [0, 1, 3]);
        // 0.1 * (1 - 0.95 * 0.2) = 0.081 against 0.9 * 0.05 = 0.045.
        result.Of(0).Should().BeApproximately(0.081 / 0.126, 1e-12);
        result.Of(1).Should().BeApproximately(0.2, 1e-12);
        result.Of(3).Should().BeApproximately(0.2 * 0.81 + 0.8 * 0.05, 1e-12);
        result.LogEvidence.Should().BeApproximately(Math.Log(0.126), 1e-12);
    }

    private static (NoisyOrNetwork Network, List<Evidence> All) Trap(int findings, double leak)
    {
        var causes = Enumerable.Range(0, 6).Select(c => new NetworkNode($"c{c}", 0.005, []));
        var signs = Enumerable.Range(0, findings).Select(f => new NetworkNode($"f{f}", leak, [new NetworkLink(f % 6, 0.7)]));
        return (new NoisyOrNetwork([.. causes, .. signs]), Enumerable.Range(6, findings).Select(Evidence.Present).ToList());
    }

    private static string Print(NoisyOrNetwork network) => string.Join('\n', network.Nodes.Select(n =>
        $"{n.Id} {n.Leak.ToString("R", CultureInfo.InvariantCulture)} {string.Join(' ', n.Links)}"));

    private static void Same(Posterior actual, Posterior expected)
    {
        actual.LogEvidence.Should().BeApproximately(expected.LogEvidence, 1e-10);
        for (var i = 0; i < expected.Probabilities.Count; i++)
            actual.Probabilities[i].Should().BeApproximately(expected.Probabilities[i], 1e-12);
    }
}
