namespace Failwise.Inference;

/// <summary>
/// What was learnt about one node, as a likelihood pair. Only the ratio moves a posterior; the size scales the probability of the evidence.
/// Several items on one node multiply.
/// </summary>
/// <param name="Node">Index in <see cref="NoisyOrNetwork.Nodes"/>.</param>
/// <param name="IfPresent">P(what was reported | node holds), 0 or more and finite.</param>
/// <param name="IfAbsent">P(what was reported | node does not hold), 0 or more and finite.</param>
public readonly record struct Evidence(int Node, double IfPresent, double IfAbsent)
{
    public static Evidence Present(int node) => new(node, 1, 0);

    public static Evidence Absent(int node) => new(node, 0, 1);

    /// <summary>An unsure report. A pair with a ratio of 1 says nothing.</summary>
    public static Evidence Likely(int node, double ifPresent, double ifAbsent) => new(node, ifPresent, ifAbsent);
}

/// <summary>The evidence has probability zero under the network, so that no posterior exists.</summary>
public sealed class ContradictoryEvidenceException : InvalidOperationException
{
    public ContradictoryEvidenceException() { }

    public ContradictoryEvidenceException(string message) : base(message) { }

    public ContradictoryEvidenceException(string message, Exception innerException) : base(message, innerException) { }
}
