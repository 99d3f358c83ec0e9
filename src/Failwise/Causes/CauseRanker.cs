using Failwise.Cases;
using Failwise.Findings;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>Ranks root causes by exact inference over the evidence of a case.</summary>
public static class CauseRanker
{
    private const int ExplainedRoots = 5;
    private const int StoryRoots = 5;
    private const int NarrowRoots = 8;

    /// <summary>Ranks the roots; the knowledge base and the case stay untouched.</summary>
    public static CauseRanking Rank(KnowledgeBase knowledge, TeardownCase teardown, FindingSet findings) =>
        Explain(knowledge, OpenRanking.Of(knowledge, teardown, findings));

    /// <summary>Explains an order that was worked out: weights, chains, the story and the verdict.</summary>
    internal static CauseRanking Explain(KnowledgeBase knowledge, OpenRanking open) => Make(knowledge, open, ExplainedRoots);

    /// <summary>The story and the verdict alone, without weights and chains, for runs over many cases.</summary>
    internal static CauseRanking Judge(KnowledgeBase knowledge, OpenRanking open) => Make(knowledge, open, 0);

    private static CauseRanking Make(KnowledgeBase knowledge, OpenRanking open, int explained)
    {
        if (open.Inference is { } inference)
        {
            return new Explanation(knowledge, open, inference).Make(explained);
        }

        EvidenceItem[] important = [.. open.Items.Where(i => i.Important)];
        return new CauseRanking(
            VerdictMaker.WithoutRoots(important, open.Looked), [], open.States, new JointStory([], new Dictionary<string, double>()), open.Items, important, 1, null) { Net = open.Net };
    }

    /// <summary>Roots and states by probability, without explanations, for runs over many cases.</summary>
    internal static (string Id, double Probability)[] RankWithStates(KnowledgeBase knowledge, TeardownCase teardown, FindingSet findings)
    {
        OpenRanking open = OpenRanking.Of(knowledge, teardown, findings);
        return
        [
            .. open.Order.Select(i => (open.Net.Roots[i].Id, P: open.Posterior[i]))
                .Concat(open.States.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => (s.Key, P: s.Value))).OrderByDescending(c => c.P),
        ];
    }

    private sealed class Explanation(KnowledgeBase knowledge, OpenRanking open, CaseInference inference)
    {
        private readonly CauseNetwork net = open.Net;
        private readonly IReadOnlyList<EvidenceItem> items = open.Items;
        private CaseInference narrow = null!;

        public CauseRanking Make(int most)
        {
            double[] posterior = open.Posterior;
            Dictionary<string, double> states = open.States;
            int[] order = open.Order;
            narrow = inference.Narrow([.. order.Take(NarrowRoots).Select(i => inference.RootNumbers[i]).Where(inference.Candidates.Contains)]);
            Dictionary<string, double> probabilities = net.Roots.Select((r, i) => (r.Id, posterior[i])).ToDictionary(x => x.Id, x => x.Item2, StringComparer.Ordinal);
            foreach ((string id, double p) in states)
            {
                probabilities[id] = p;
            }

            int[] explained = [.. order.Take(most)];
            Cause[] possible = [.. explained.Where(i => posterior[i] >= CauseRanking.Possible).Select(i => net.Roots[i])];
            Dictionary<int, List<WeighedEvidence>> weights = Weigh(explained);
            ChainFinder chains = new(knowledge, net, probabilities);
            List<RankedCause> ranked = [];
            foreach (int i in order)
            {
                Cause root = net.Roots[i];
                List<WeighedEvidence> all = weights.GetValueOrDefault(i) ?? Denied(i);
                bool close = weights.ContainsKey(i);
                // The verdict asks what the first root leaves unexplained.
                bool first = i == order[0];
                ranked.Add(new RankedCause(
                    root, Math.Min(CauseRanking.Ceiling, posterior[i]), BuildFit.Commonness(knowledge, root),
                    [.. all.Where(w => w.Decibans > 0).OrderByDescending(w => w.Decibans).ThenBy(w => w.Item.Id, StringComparer.Ordinal)],
                    [.. all.Where(w => w.Decibans < 0).OrderBy(w => w.Decibans).ThenBy(w => w.Item.Id, StringComparer.Ordinal)],
                    close ? chains.From(root) : [], close || first ? [.. items.Where(e => e.Important && !chains.Reaches(root, e))] : [])
                {
                    After = possible.Contains(root) ? chains.Before(root, possible) : null,
                });
            }

            JointStory story = BestStory(order, posterior);
            EvidenceItem[] unexplained = [.. items.Where(e => e.Important && e.Kind == EvidenceKind.Sign && ExplainedShare(e, probabilities) < 0.5)];
            double none = SomethingElse();
            Verdict verdict = VerdictMaker.Decide(ranked, story, items, unexplained, none, open.Looked, Flips);
            return new CauseRanking(verdict, ranked, states, story, items, unexplained, none, Note()) { Net = net };
        }

        /// <summary>Weight of each piece of evidence for each of the leading roots: what changes in the odds when it is left out.</summary>
        private Dictionary<int, List<WeighedEvidence>> Weigh(int[] explained)
        {
            int[] queries = [.. explained.Select(i => inference.RootNumbers[i])];
            Dictionary<int, List<WeighedEvidence>> weights = explained.ToDictionary(i => i, _ => new List<WeighedEvidence>());
            if (queries.Length == 0)
            {
                return weights;
            }

            (_, double[] full) = narrow.Ask(queries);
            for (int e = 0; e < net.Known.Count; e++)
            {
                if (!narrow.Matters(net.Known[e]))
                {
                    continue;
                }

                (_, double[] without) = narrow.Ask(queries, without: net.Known[e]);
                for (int k = 0; k < explained.Length; k++)
                {
                    double decibans = 10 * (LogOdds(full[k]) - LogOdds(without[k])) / Math.Log(10);
                    // A circumstance that makes a root likelier may at the same time feed its rival; it still does not speak against the root.
                    bool fedRival = decibans < 0 && net.Known[e] is { Kind: EvidenceKind.Circumstance, Present: true } c && net.Roots[explained[k]].RaisedBy.Any(r => c.Id.EndsWith("/" + r.Id, StringComparison.Ordinal));
                    if (Math.Abs(decibans) >= 0.3 && !fedRival && narrow.Candidates.Contains(queries[k]))
                    {
                        weights[explained[k]].Add(new WeighedEvidence(net.Known[e], decibans, SourcesOf(net.Known[e], net.Roots[explained[k]])));
                    }
                }
            }

            return weights;
        }

        /// <summary>For a root that was folded away: the absent signs that hold it down.</summary>
        private List<WeighedEvidence> Denied(int i) => inference.Candidates.Contains(inference.RootNumbers[i]) ? []
            : [.. open.Denials!.Against(inference.RootNumbers[i]).Where(d => d.Decibans <= -1).Take(6).Select(d => new WeighedEvidence(d.Item, d.Decibans, SourcesOf(d.Item, net.Roots[i])))];

        private IReadOnlyList<SourceRef> SourcesOf(EvidenceItem item, Cause root)
        {
            CauseLink? link = net.LinksInto(item).FirstOrDefault(l => l.Cause.Id == root.Id).Link;
            return link is null ? [] : link.Sources.Count > 0 ? link.Sources : root.Sources;
        }

        private static double LogOdds(double p)
        {
            double inside = Math.Clamp(p, 1e-12, 1 - 1e-12);
            return Math.Log(inside / (1 - inside));
        }

        /// <summary>The likeliest combination of the leading roots, all others left open.</summary>
        private JointStory BestStory(int[] order, double[] posterior)
        {
            int[] leading = [.. order.Where(i => posterior[i] > 0.08 && narrow.Candidates.Contains(inference.RootNumbers[i])).Take(StoryRoots)];
            double[] score = new double[1 << leading.Length];
            for (int set = 0; set < score.Length; set++)
            {
                score[set] = narrow.LogEvidence([.. leading.Select((i, bit) => (set >> bit & 1) == 1 ? Evidence.Present(inference.RootNumbers[i]) : Evidence.Absent(inference.RootNumbers[i]))]);
            }

            int best = Array.IndexOf(score, score.Max());
            List<Cause> members = [];
            Dictionary<string, double> needed = new(StringComparer.Ordinal);
            for (int bit = 0; bit < leading.Length; bit++)
            {
                if ((best >> bit & 1) == 1)
                {
                    Cause root = net.Roots[leading[bit]];
                    members.Add(root);
                    needed[root.Id] = 10 * (score[best] - score[best ^ (1 << bit)]) / Math.Log(10);
                }
            }

            return new JointStory(members, needed);
        }

        /// <summary>Chance that none of the candidates is at work: what was found then came from rarer roots or from nothing listed.</summary>
        private double SomethingElse() =>
            Math.Exp(inference.LogEvidence([.. inference.Candidates.Select(Evidence.Absent)]) - inference.LogEvidence([]));

        private string? Note() => inference.Candidates.Count < net.Roots.Count
            ? $"{inference.Candidates.Count} of {net.Roots.Count} causes that such a machine can have were weighed exactly; the others stand at their usual frequency, less what was looked for and not found."
            : null;

        private double ExplainedShare(EvidenceItem item, Dictionary<string, double> probabilities)
        {
            if (!net.Has(item))
            {
                return 0;
            }

            NetworkNode node = net.Network.Nodes[net.NumberOf(item)];
            double silent = 1;
            foreach (LinkInto link in net.LinksInto(item))
            {
                silent *= 1 - link.Strength * probabilities[link.Cause.Id];
            }

            double fired = 1 - silent;
            return fired / (fired + node.Leak - fired * node.Leak);
        }

        /// <summary>Share of trials in which another root leads, when every strength is moved by about one word at random (seeded).</summary>
        private double Flips(string leader)
        {
            const int Trials = 30;
            Random random = new(20_260_101);
            ReducedNetwork reduced = narrow.Reduced();
            int[] queries = [.. narrow.Candidates.Select(c => reduced.NumberOf[c])];
            PlanCache plans = new();
            int flips = 0;
            for (int t = 0; t < Trials; t++)
            {
                NetworkNode[] moved = [.. reduced.Network.Nodes.Select(n => n with { Links = [.. n.Links.Select(l => l with { Strength = Move(l.Strength, random.Next(3) - 1) })] })];
                Posterior p = ExactInference.Query(NoisyOrNetwork.Cut(moved), reduced.Evidence, queries, null, plans);
                int top = 0;
                for (int i = 1; i < queries.Length; i++)
                {
                    top = p.Probabilities[i] > p.Probabilities[top] ? i : top;
                }

                flips += reduced.Network.Nodes[queries[top]].Id == "cause/" + leader ? 0 : 1;
            }

            return (double)flips / Trials;
        }

        private static double Move(double strength, int steps)
        {
            double inside = Math.Clamp(strength, 0.001, 0.995);
            double moved = Math.Log(inside / (1 - inside)) + 0.9 * steps;
            return 1 / (1 + Math.Exp(-moved));
        }
    }
}
