namespace Failwise.Inference;

/// <summary>The evidence items of one query, checked and multiplied up per node, each pair scaled so that its larger side is 1.</summary>
internal sealed class NodeEvidence
{
    private readonly double[] _ifPresent;
    private readonly double[] _ifAbsent;
    private readonly bool[] _named;

    /// <exception cref="ArgumentException">An item names no node of the network, or its pair is negative, not finite or 0:0.</exception>
    public NodeEvidence(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence)
    {
        _ifPresent = new double[network.Nodes.Count];
        _ifAbsent = new double[network.Nodes.Count];
        _named = new bool[network.Nodes.Count];
        Array.Fill(_ifPresent, 1);
        Array.Fill(_ifAbsent, 1);
        foreach (var item in evidence) Multiply(network, item);
    }

    /// <summary>Natural logarithm of what scaling took out of the pairs; minus infinity when two items on one node exclude each other.</summary>
    public double LogScale { get; private set; }

    public double IfPresent(int node) => _ifPresent[node];

    public double IfAbsent(int node) => _ifAbsent[node];

    /// <summary>True when an item names the node, even one that says nothing: leaving a report out so keeps the structure of the question.</summary>
    public bool Names(int node) => _named[node];

    public bool IsKnownAbsent(int node) => _ifPresent[node] == 0;

    public bool IsKnown(int node) => _ifPresent[node] == 0 || _ifAbsent[node] == 0;

    private void Multiply(NoisyOrNetwork network, Evidence item)
    {
        if (item.Node < 0 || item.Node >= _ifPresent.Length)
            throw new ArgumentException($"Evidence names node {item.Node}, which the network does not have.", nameof(item));
        if (!(item.IfPresent >= 0 && item.IfAbsent >= 0 && item.IfPresent + item.IfAbsent > 0) || !double.IsFinite(item.IfPresent + item.IfAbsent))
        {
            throw new ArgumentException(
                $"Evidence on '{network.Nodes[item.Node].Id}': {item.IfPresent} : {item.IfAbsent} is no likelihood pair.", nameof(item));
        }

        _named[item.Node] = true;
        var present = _ifPresent[item.Node] * item.IfPresent;
        var absent = _ifAbsent[item.Node] * item.IfAbsent;
        var largest = Math.Max(present, absent);
        LogScale += Math.Log(largest);
        _ifPresent[item.Node] = largest > 0 ? present / largest : 0;
        _ifAbsent[item.Node] = largest > 0 ? absent / largest : 0;
    }
}
