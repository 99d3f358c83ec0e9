using Failwise.Inference;

namespace Failwise.Tests.Inference;

public sealed class NetworkTests
{
    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void A_prior_or_strength_outside_zero_to_one_is_refused_with_the_id(double value)
    {
        Building(new NetworkNode("dry start", value, [])).Should().Throw<ArgumentException>().WithMessage("*'dry start'*prior*");
        Building(new NetworkNode("dry start", 0.1, []), new NetworkNode("wiped shell", 0.1, [new NetworkLink(0, value)]))
            .Should().Throw<ArgumentException>().WithMessage("*'wiped shell'*'dry start'*");
    }

    [Fact]
    public void A_cycle_is_refused_with_the_ids_on_it()
    {
        Building(
                new NetworkNode("root", 0.1, []),
                new NetworkNode("heat", 0.1, [new NetworkLink(0, 0.5), new NetworkLink(2, 0.5)]),
                new NetworkNode("friction", 0.1, [new NetworkLink(1, 0.5)]),
                new NetworkNode("smell", 0.1, [new NetworkLink(2, 0.5)]))
            .Should().Throw<ArgumentException>().Where(e => e.Message.Contains("heat -> friction -> heat") || e.Message.Contains("friction -> heat -> friction"))
            .And.Message.Should().NotContain("root").And.NotContain("smell");
    }

    [Fact]
    public void Missing_parents_double_links_and_double_ids_are_refused()
    {
        Building(new NetworkNode("a", 0.1, [new NetworkLink(3, 0.5)])).Should().Throw<ArgumentException>().WithMessage("*'a'*parent 3*");
        Building(new NetworkNode("a", 0.1, []), new NetworkNode("b", 0.1, [new NetworkLink(0, 0.5), new NetworkLink(0, 0.2)]))
            .Should().Throw<ArgumentException>().WithMessage("*'b'*twice*'a'*");
        Building(new NetworkNode("a", 0.1, []), new NetworkNode("a", 0.1, [])).Should().Throw<ArgumentException>().WithMessage("*'a'*");
    }

    [Fact]
    public void A_list_changed_after_building_does_not_change_the_model()
    {
        var links = new List<NetworkLink> { new(0, 0.5) };
        var nodes = new List<NetworkNode> { new("cause", 0.1, []), new("sign", 0.1, links) };
        var network = new NoisyOrNetwork(nodes);
        links.Clear();
        nodes.Clear();
        network.Nodes[1].Links.Should().ContainSingle();
    }

    [Fact]
    public void Evidence_that_is_no_likelihood_pair_is_refused_with_the_id()
    {
        var network = new NoisyOrNetwork([new NetworkNode("cause", 0.1, [])]);
        foreach (var (present, absent) in new[] { (-1.0, 1.0), (0.0, 0.0), (double.NaN, 1.0), (double.PositiveInfinity, 1.0) })
        {
            FluentActions.Invoking(() => ExactInference.LogEvidence(network, [new Evidence(0, present, absent)]))
                .Should().Throw<ArgumentException>().WithMessage("*'cause'*");
        }

        FluentActions.Invoking(() => ExactInference.LogEvidence(network, [Evidence.Present(1)])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => ExactInference.Query(network, [], [-1])).Should().Throw<ArgumentException>();
    }

    [Fact]
    public void Impossible_evidence_is_reported_with_the_findings_and_not_as_a_number()
    {
        var network = new NoisyOrNetwork([new NetworkNode("cause", 0.1, []), new NetworkNode("sign", 0, [new NetworkLink(0, 0.5)])]);
        List<Evidence>[] impossible =
        [
            [Evidence.Absent(0), Evidence.Present(1)],
            [Evidence.Present(1), Evidence.Absent(1)],
        ];
        foreach (var evidence in impossible)
        {
            ExactInference.LogEvidence(network, evidence).Should().Be(double.NegativeInfinity);
            FluentActions.Invoking(() => ExactInference.Query(network, evidence, [0]))
                .Should().Throw<ContradictoryEvidenceException>().WithMessage("*sign present*");
        }
    }

    private static Action Building(params NetworkNode[] nodes) => () => _ = new NoisyOrNetwork(nodes);
}
