using System.Text.Json;
using Failwise.Inference;

namespace Failwise.Tests.Inference;

internal sealed record PublishedNetworks(Dictionary<string, PublishedNetwork> Networks, List<PublishedEntry> Entries)
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    public static PublishedNetworks Load() => JsonSerializer.Deserialize<PublishedNetworks>(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Inference", "published-networks.json")), Web)!;
}

internal sealed record PublishedNetwork(string Form, List<PublishedNode> Nodes)
{
    public int IndexOf(string id) => Nodes.FindIndex(n => n.Id == id);

    public NoisyOrNetwork AsNoisyOr() => new(Nodes.ConvertAll(n => new NetworkNode(
        n.Id, n.Leak, n.Causes!.Select(c => new NetworkLink(IndexOf(c.Key), c.Value)).ToList())));

    /// <summary>Full tables go straight to the elimination core, one table for each node.</summary>
    public FactorGraph AsTables()
    {
        var graph = new FactorGraph();
        foreach (var _ in Nodes) graph.AddVariable();
        for (var n = 0; n < Nodes.Count; n++)
        {
            var rows = Nodes[n].Present!;
            var variables = Nodes[n].Parents!.ConvertAll(IndexOf);
            variables.Add(n);
            graph.Add(new FactorTable([.. variables], [.. rows.Select(p => 1 - p), .. rows]));
        }

        return graph;
    }
}

internal sealed record PublishedNode(string Id, double Leak, Dictionary<string, double>? Causes, List<string>? Parents, double[]? Present);

internal sealed record PublishedEntry(string Id, string What, PublishedSource Source, string? Remark, string Network, List<PublishedCase> Cases);

internal sealed record PublishedSource(string Title);

internal sealed record PublishedCase(
    string Name,
    List<string> Present,
    List<string> Absent,
    Dictionary<string, double[]>? Soft,
    double? EvidenceProbability,
    double EvidenceRelativeTolerance,
    List<ExpectedPosterior> Expect);

internal sealed record ExpectedPosterior(string Node, double Value, double Within, string Basis);
