using Failwise.Cases;
using Failwise.Findings;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>The order of the roots of one case, worked out, with everything that is needed to explain it or to ask further.</summary>
internal sealed class OpenRanking
{
    private static readonly Verdict Unsaid = new(VerdictKind.NotEnoughEvidence, [], []);
    private static readonly JointStory NoStory = new([], new Dictionary<string, double>());
    private readonly KnowledgeBase knowledge;

    private OpenRanking(KnowledgeBase knowledge, IReadOnlyList<EvidenceItem> items, CauseNetwork net)
    {
        this.knowledge = knowledge;
        Items = items;
        Net = net;
    }

    /// <summary>Everything observed, as evidence.</summary>
    public IReadOnlyList<EvidenceItem> Items { get; }

    public CauseNetwork Net { get; }

    /// <summary>Whether anybody looked at a part or measured one; symptoms and history are only told.</summary>
    public bool Looked { get; private init; }

    /// <summary>The engine that answered; null when the evidence touches no root.</summary>
    public CaseInference? Inference { get; private init; }

    /// <summary>What absent signs say against each root; null when the evidence touches no root.</summary>
    public Denials? Denials { get; private init; }

    /// <summary>Posterior of each root, in the order of the network's roots.</summary>
    public double[] Posterior { get; private init; } = [];

    /// <summary>Places in the network's roots, likeliest root first.</summary>
    public int[] Order { get; private init; } = [];

    /// <summary>Posterior of each state that the evidence touches.</summary>
    public Dictionary<string, double> States { get; } = new(StringComparer.Ordinal);

    /// <summary>Ranks the roots and the states; the knowledge base and the case stay untouched.</summary>
    public static OpenRanking Of(KnowledgeBase knowledge, TeardownCase teardown, FindingSet findings)
    {
        IReadOnlyList<EvidenceItem> items = EvidenceGathering.Gather(knowledge, teardown, findings);
        CauseNetwork net = new(knowledge, teardown, items);
        bool looked = teardown.Observations.Count + teardown.Measurements.Count > 0;
        if (net.Roots.Count == 0)
        {
            return new OpenRanking(knowledge, items, net) { Looked = looked };
        }

        CaseInference inference = new(net);
        (_, double[] p) = inference.Ask([.. inference.RootNumbers, .. net.States.Select(net.NumberOf)]);
        Denials denials = new(net);
        HashSet<int> exact = [.. inference.Candidates];
        for (int i = 0; i < net.Roots.Count; i++)
        {
            p[i] = exact.Contains(inference.RootNumbers[i]) ? p[i] : denials.Lowered(inference.RootNumbers[i], p[i]);
        }

        Dictionary<int, int> place = inference.Order.Select((n, i) => (n, i)).ToDictionary(x => x.n, x => x.i);
        int[] order = [.. Enumerable.Range(0, net.Roots.Count).OrderByDescending(i => p[i]).ThenBy(i => place[inference.RootNumbers[i]])];
        OpenRanking open = new(knowledge, items, net) { Looked = looked, Inference = inference, Denials = denials, Posterior = p[..net.Roots.Count], Order = order };
        for (int i = 0; i < net.States.Count; i++)
        {
            open.States[net.States[i].Id] = p[net.Roots.Count + i];
        }

        return open;
    }

    /// <summary>
    /// The ranking without its explanations, for questions that are asked many times over: what to look at next, what if. Weights, chains, the
    /// story and the verdict are left out.
    /// </summary>
    public CauseRanking Plain() => new(
        Unsaid, [.. Order.Select(i => new RankedCause(Net.Roots[i], Math.Min(CauseRanking.Ceiling, Posterior[i]), BuildFit.Commonness(knowledge, Net.Roots[i]), [], [], [], []))],
        States, NoStory, Items, [], Inference is null ? 1 : 0, null) { Net = Net };
}
