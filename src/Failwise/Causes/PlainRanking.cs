using Failwise.Cases;
using Failwise.Findings;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>
/// The ranking without its explanations, for questions that are asked many times over: what to look at next, what if. The numbers are those
/// of <see cref="CauseRanker"/>; weights, chains, the story and the verdict are left out.
/// </summary>
internal static class PlainRanking
{
    private static readonly Verdict Unsaid = new(VerdictKind.NotEnoughEvidence, [], []);
    private static readonly JointStory NoStory = new([], new Dictionary<string, double>());

    /// <summary>Ranks the roots and the states.</summary>
    public static CauseRanking Of(KnowledgeBase knowledge, TeardownCase teardown, FindingSet findings)
    {
        IReadOnlyList<EvidenceItem> items = EvidenceGathering.Gather(knowledge, teardown, findings);
        CauseNetwork net = new(knowledge, teardown, items);
        if (net.Roots.Count == 0)
        {
            return new CauseRanking(Unsaid, [], new Dictionary<string, double>(), NoStory, items, [], 1, null);
        }

        CaseInference inference = new(net);
        (_, double[] p) = inference.Ask([.. inference.RootNumbers, .. net.States.Select(net.NumberOf)]);
        Dictionary<int, int> place = inference.Order.Select((n, i) => (n, i)).ToDictionary(x => x.n, x => x.i);
        int[] order = [.. Enumerable.Range(0, net.Roots.Count).OrderByDescending(i => p[i]).ThenBy(i => place[inference.RootNumbers[i]])];
        Dictionary<string, double> states = new(StringComparer.Ordinal);
        for (int i = 0; i < net.States.Count; i++)
        {
            states[net.States[i].Id] = p[net.Roots.Count + i];
        }

        RankedCause[] ranked =
            [.. order.Select(i => new RankedCause(net.Roots[i], Math.Min(CauseRanking.Ceiling, p[i]), BuildFit.Commonness(knowledge, net.Roots[i]), [], [], [], []))];
        return new CauseRanking(Unsaid, ranked, states, NoStory, items, [], 0, null);
    }
}
