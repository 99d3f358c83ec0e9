namespace Failwise.Inference;

/// <summary>A causal link into a node: how often this parent alone, with the leak silent, brings the node about.</summary>
/// <param name="Parent">Index of the parent in <see cref="NoisyOrNetwork.Nodes"/>.</param>
/// <param name="Strength">Probability in 0..1.</param>
public sealed record NetworkLink(int Parent, double Strength);

/// <summary>A two-state node of a leaky noisy-OR network.</summary>
/// <param name="Id">Name used in messages; unique in the network.</param>
/// <param name="Leak">Probability in 0..1 that the node holds with no listed parent present; for a root, its prior.</param>
/// <param name="Links">Parents and strengths; empty for a root.</param>
public sealed record NetworkNode(string Id, double Leak, IReadOnlyList<NetworkLink> Links)
{
    public bool IsRoot => Links.Count == 0;
}

/// <summary>
/// An immutable leaky noisy-OR network. Nodes may come in any order; P(node) = 1 - (1-leak) * product over present parents of (1-strength).
/// </summary>
public sealed class NoisyOrNetwork
{
    private readonly NetworkNode[] _nodes;
    private readonly int[] _parentsFirst;

    /// <exception cref="ArgumentException">
    /// An id is empty or used twice, a probability lies outside 0..1, a parent does not exist or is linked twice, or the links form a cycle
    /// (the message names the ids on it).
    /// </exception>
    public NoisyOrNetwork(IReadOnlyList<NetworkNode> nodes)
    {
        ArgumentNullException.ThrowIfNull(nodes);
        // The links are copied too: a caller's list that changes later must not change the model.
        _nodes = nodes.Select(n => n with { Links = Array.AsReadOnly(n.Links.ToArray()) }).ToArray();
        Nodes = Array.AsReadOnly(_nodes);
        CheckNodes();
        _parentsFirst = OrderParentsFirst(_nodes);
    }

    private NoisyOrNetwork(NetworkNode[] nodes, int[] parentsFirst)
    {
        _nodes = nodes;
        Nodes = _nodes;
        _parentsFirst = parentsFirst;
    }

    public IReadOnlyList<NetworkNode> Nodes { get; }

    /// <summary>Node indices, every parent before its children; ties in the order given.</summary>
    internal ReadOnlySpan<int> ParentsFirst => _parentsFirst;

    /// <summary>A network cut from a checked one, so that nothing has to be checked or copied again; parents stand before their children.</summary>
    internal static NoisyOrNetwork Cut(NetworkNode[] parentsFirst)
    {
        var order = new int[parentsFirst.Length];
        for (var i = 0; i < order.Length; i++) order[i] = i;
        return new NoisyOrNetwork(parentsFirst, order);
    }

    /// <summary>A network from nodes that are known to be sound and that nobody else holds: nothing is checked or copied.</summary>
    internal static NoisyOrNetwork Trusted(NetworkNode[] nodes) => new(nodes, OrderParentsFirst(nodes));

    /// <summary>The same nodes and parents with other numbers.</summary>
    internal NoisyOrNetwork WithNumbers(NetworkNode[] nodes) => new(nodes, _parentsFirst);

    /// <exception cref="ArgumentException">No node has this id.</exception>
    public int IndexOf(string id)
    {
        var index = Array.FindIndex(_nodes, n => n.Id == id);
        return index >= 0 ? index : throw new ArgumentException($"The network has no node '{id}'.", nameof(id));
    }

    private void CheckNodes()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var linked = new HashSet<int>();
        foreach (var node in _nodes)
        {
            if (string.IsNullOrEmpty(node.Id)) throw new ArgumentException("A node has no id.");
            if (!seen.Add(node.Id)) throw new ArgumentException($"Two nodes have the id '{node.Id}'.");
            if (!IsProbability(node.Leak))
                throw new ArgumentException($"Node '{node.Id}': the {(node.IsRoot ? "prior" : "leak")} {node.Leak} lies outside 0 to 1.");
            linked.Clear();
            foreach (var link in node.Links) CheckLink(node, link, linked);
        }
    }

    private void CheckLink(NetworkNode node, NetworkLink link, HashSet<int> linked)
    {
        if (link.Parent < 0 || link.Parent >= _nodes.Length)
            throw new ArgumentException($"Node '{node.Id}' links to parent {link.Parent}, which does not exist.");
        var parent = _nodes[link.Parent].Id;
        if (!IsProbability(link.Strength))
            throw new ArgumentException($"Node '{node.Id}': the strength {link.Strength} of its link from '{parent}' lies outside 0 to 1.");
        if (!linked.Add(link.Parent))
            throw new ArgumentException($"Node '{node.Id}' is linked twice to parent '{parent}'.");
    }

    private static bool IsProbability(double value) => value is >= 0 and <= 1;

    private static int[] OrderParentsFirst(NetworkNode[] nodes)
    {
        var children = new List<int>[nodes.Length];
        var waiting = new int[nodes.Length];
        for (var i = 0; i < nodes.Length; i++) children[i] = [];
        for (var i = 0; i < nodes.Length; i++)
        {
            waiting[i] = nodes[i].Links.Count;
            foreach (var link in nodes[i].Links) children[link.Parent].Add(i);
        }

        var order = new int[nodes.Length];
        var placed = 0;
        for (var i = 0; i < nodes.Length; i++)
            if (waiting[i] == 0) order[placed++] = i;
        for (var next = 0; next < placed; next++)
            foreach (var child in children[order[next]])
                if (--waiting[child] == 0) order[placed++] = child;

        return placed == nodes.Length ? order : throw new ArgumentException($"The links form a cycle: {DescribeCycle(nodes, waiting)}.");
    }

    private static string DescribeCycle(NetworkNode[] nodes, int[] waiting)
    {
        // Every node still waiting has a waiting parent, so walking up must come round to a node already met.
        var path = new List<int>();
        var at = Array.FindIndex(waiting, w => w > 0);
        while (!path.Contains(at))
        {
            path.Add(at);
            at = nodes[at].Links.First(l => waiting[l.Parent] > 0).Parent;
        }

        var cycle = path.Skip(path.IndexOf(at)).Reverse().Select(i => nodes[i].Id).ToList();
        cycle.Add(cycle[0]);
        return string.Join(" -> ", cycle);
    }
}
