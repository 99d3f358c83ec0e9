using Failwise.Inference;

namespace Failwise.Tests.Inference;

public sealed class PublishedNetworkTests
{
    private static readonly PublishedNetworks Published = PublishedNetworks.Load();

    public static TheoryData<string> Ids => new(Published.Entries.Select(e => e.Id));

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_published_numbers_come_out(string id)
    {
        var entry = Published.Entries.Single(e => e.Id == id);
        var network = Published.Networks[entry.Network];
        foreach (var it in entry.Cases)
        {
            var evidence = EvidenceOf(network, it);
            var (log, posterior) = network.Form == "table" ? SolveTables(network, evidence) : SolveNoisyOr(network, evidence);
            if (it.EvidenceProbability is { } p)
                (Math.Exp(log) / p).Should().BeApproximately(1, it.EvidenceRelativeTolerance, "{0}: P(evidence)", it.Name);
            foreach (var e in it.Expect)
                posterior[network.IndexOf(e.Node)].Should().BeApproximately(e.Value, e.Within, "{0}: {1} ({2})", it.Name, e.Node, e.Basis);
        }
    }

    [Fact]
    public void Every_entry_names_its_source_and_expects_something()
    {
        Published.Entries.Should().OnlyContain(e => e.Source.Title.Length > 0);
        Published.Entries.SelectMany(e => e.Cases).Should().OnlyContain(c => c.Expect.Count > 0 || c.EvidenceProbability != null);
    }

    private static List<Evidence> EvidenceOf(PublishedNetwork network, PublishedCase it) =>
    [
        .. it.Present.Select(id => Evidence.Present(network.IndexOf(id))),
        .. it.Absent.Select(id => Evidence.Absent(network.IndexOf(id))),
        .. (it.Soft ?? []).Select(s => Evidence.Likely(network.IndexOf(s.Key), s.Value[0], s.Value[1])),
    ];

    private static (double Log, double[] Posterior) SolveNoisyOr(PublishedNetwork network, List<Evidence> evidence)
    {
        var result = ExactInference.Query(network.AsNoisyOr(), evidence, Enumerable.Range(0, network.Nodes.Count).ToArray());
        return (result.LogEvidence, [.. result.Probabilities]);
    }

    private static (double Log, double[] Posterior) SolveTables(PublishedNetwork network, List<Evidence> evidence)
    {
        var graph = network.AsTables();
        foreach (var item in evidence) graph.MultiplyOwn(item.Node, item.IfAbsent, item.IfPresent);
        var posterior = new double[graph.VariableCount];
        return (Elimination.Run(graph, EliminationPlan.Make(graph), posterior), posterior);
    }
}
