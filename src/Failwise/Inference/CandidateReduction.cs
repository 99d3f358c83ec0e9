namespace Failwise.Inference;

/// <summary>A smaller network in which only the candidates are free to vary.</summary>
/// <param name="Network">The reduced network.</param>
/// <param name="Evidence">The evidence in the reduced network.</param>
/// <param name="NumberOf">New index of an old node, or -1 when it was folded away.</param>
public sealed record ReducedNetwork(NoisyOrNetwork Network, IReadOnlyList<Evidence> Evidence, IReadOnlyList<int> NumberOf);

/// <summary>
/// Cuts a network with hundreds of roots down to what one case needs, so that the exact engine answers in about a millisecond.
/// <list type="bullet">
/// <item>A root that is no candidate keeps acting at its usual frequency: it is folded into the leaks of its children.</item>
/// <item>A state under which nothing was found (only looks that came out clean) is folded upwards: what it would have shown becomes a
/// clean look on its own parents. Exact for one parent; with several active at once it counts slightly too much against them.</item>
/// <item>A state that no candidate reaches with real strength keeps its usual frequency.</item>
/// </list>
/// Candidates are found by a forward pass per root, alone and on top of the best story so far, so that a root that only matters beside
/// another one is not lost.
/// </summary>
public sealed class CandidateReduction
{
    private const int LongestStory = 6;
    private const int StoryPool = 60;
    private const double WeakestReach = 0.04;
    private readonly int size;
    private readonly string[] ids;
    private readonly double[] leak;
    // Links of node n stand at first[n] to first[n + 1], in plain arrays: this code walks all of them some hundred times a case.
    private readonly int[] first;
    private readonly int[] parents;
    private readonly double[] strengths;
    private readonly Lazy<int[][]> children;
    private readonly bool[] reported;
    private readonly int[] seen;
    private int seenNow;
    private readonly int[] placeInOrder;
    private readonly Dictionary<int, int[]> below = [];
    private readonly int[] order;
    private readonly bool?[] fixedTo;
    private readonly sbyte[] report;
    private readonly double[] resting;
    private readonly double[] trial;
    private readonly int[] stamp;
    private readonly bool[] positive;
    private readonly bool[] kept;
    private readonly double[] shown;
    private readonly double[] clean;
    private int stampNow;
    private IReadOnlyList<int>? reachedFrom;
    private double[] reached = [];

    /// <summary>Prepares the reduction for one set of evidence; only plain present and absent are allowed, and only on roots and leaves.</summary>
    /// <exception cref="ArgumentException">Evidence is a likelihood pair that is neither present nor absent.</exception>
    public CandidateReduction(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence)
    {
        size = network.Nodes.Count;
        ids = new string[size];
        leak = new double[size];
        first = new int[size + 1];
        for (int n = 0; n < size; n++)
        {
            NetworkNode node = network.Nodes[n];
            ids[n] = node.Id;
            leak[n] = node.Leak;
            first[n + 1] = first[n] + node.Links.Count;
        }

        parents = new int[first[size]];
        strengths = new double[first[size]];
        for (int n = 0; n < size; n++)
        {
            IReadOnlyList<NetworkLink> links = network.Nodes[n].Links;
            for (int i = 0; i < links.Count; i++)
            {
                parents[first[n] + i] = links[i].Parent;
                strengths[first[n] + i] = links[i].Strength;
            }
        }

        order = network.ParentsFirst.ToArray();
        placeInOrder = new int[size];
        for (int i = 0; i < order.Length; i++)
        {
            placeInOrder[order[i]] = i;
        }

        children = new Lazy<int[][]>(Children);
        reported = new bool[size];
        fixedTo = new bool?[size];
        report = new sbyte[size];
        foreach (Evidence e in evidence)
        {
            if (e.IfPresent != 0 && e.IfAbsent != 0)
            {
                throw new ArgumentException("Only plain evidence can be reduced: fold a likelihood pair into the node's leak first.", nameof(evidence));
            }

            bool present = e.IfAbsent == 0;
            if (IsRoot(e.Node))
            {
                fixedTo[e.Node] = present;
            }
            else
            {
                report[e.Node] = (sbyte)(present ? 1 : -1);
            }
        }

        for (int o = size - 1; o >= 0; o--)
        {
            int node = order[o];
            reported[node] |= report[node] != 0;
            for (int i = first[node]; reported[node] && i < first[node + 1]; i++)
            {
                reported[parents[i]] = true;
            }
        }

        seen = new int[size];
        resting = new double[size];
        trial = new double[size];
        stamp = new int[size];
        positive = new bool[size];
        kept = new bool[size];
        shown = new double[size];
        clean = new double[size];
        foreach (int node in order)
        {
            resting[node] = Forward(node, resting);
        }
    }

    /// <summary>How often the node holds with nothing reported: what a node that is folded away is taken to be.</summary>
    public double Usual(int node) => resting[node];

    /// <summary>The roots most worth a look, best first.</summary>
    /// <param name="roots">Nodes that may be candidates.</param>
    /// <param name="count">How many.</param>
    public IReadOnlyList<int> Choose(IReadOnlyList<int> roots, int count)
    {
        double[] now = [.. resting];
        double[] best = new double[size];
        foreach (int r in roots)
        {
            best[r] = Gain(r, now);
        }

        List<int> story = [];
        int[] pool = [.. roots.OrderByDescending(r => best[r]).ThenBy(r => r).Take(StoryPool)];
        while (story.Count < LongestStory)
        {
            int next = -1;
            double most = 0;
            foreach (int r in pool.Where(r => !story.Contains(r)))
            {
                double gain = story.Count == 0 ? best[r] : Gain(r, now);
                best[r] = Math.Max(best[r], gain);
                if (gain > most)
                {
                    (next, most) = (r, gain);
                }
            }

            if (next < 0)
            {
                break;
            }

            story.Add(next);
            now[next] = 1;
            // Only what lies below the new member of the story changes.
            foreach (int node in Below(next))
            {
                if (!story.Contains(node))
                {
                    now[node] = Forward(node, now);
                }
            }
        }

        return [.. story, .. roots.Where(r => !story.Contains(r)).OrderByDescending(r => best[r]).ThenBy(r => r).Take(Math.Max(0, count - story.Count))];
    }

    /// <summary>The network in which the candidates vary and everything else acts as usual.</summary>
    /// <param name="candidates">Roots that stay free.</param>
    /// <param name="without">A leaf whose report is to be left out; -1 for none.</param>
    /// <param name="also">Leaves that are assumed present or absent besides.</param>
    /// <param name="open">Leaves without a report that are to be kept, so that something can be assumed of them afterwards.</param>
    public ReducedNetwork Reduce(IReadOnlyList<int> candidates, int without = -1, IReadOnlyList<Evidence>? also = null, IReadOnlyList<int>? open = null)
    {
        foreach (int leaf in open ?? [])
        {
            kept[leaf] = true;
        }

        List<(int Node, sbyte Report)> changed = [];
        void Change(int node, sbyte to)
        {
            changed.Add((node, report[node]));
            report[node] = to;
        }

        if (without >= 0)
        {
            Change(without, 0);
        }

        foreach (Evidence e in also ?? [])
        {
            Change(e.Node, (sbyte)(e.IfAbsent == 0 ? 1 : -1));
        }

        ReducedNetwork reduced = Reduce(candidates);
        for (int i = changed.Count - 1; i >= 0; i--)
        {
            report[changed[i].Node] = changed[i].Report;
        }

        Array.Clear(kept);
        return reduced;
    }

    /// <summary>True when some candidate brings the node about with a strength that matters.</summary>
    public bool IsReached(int node, IReadOnlyList<int> candidates) => Reach(candidates)[node] >= WeakestReach;

    private ReducedNetwork Reduce(IReadOnlyList<int> candidates)
    {
        double[] reach = Reach(candidates);
        Array.Clear(positive);
        Array.Clear(shown);
        Array.Fill(clean, 1);
        for (int o = order.Length - 1; o >= 0; o--)
        {
            int node = order[o];
            positive[node] |= report[node] > 0 || kept[node];
            shown[node] = report[node] < 0 ? 1 : 1 - clean[node];
            if (reach[node] < WeakestReach && report[node] == 0 && !kept[node])
            {
                continue;
            }

            for (int i = first[node]; i < first[node + 1]; i++)
            {
                positive[parents[i]] |= positive[node];
                clean[parents[i]] *= positive[node] ? 1 : 1 - Unseen(strengths[i], shown[node], report[node] != 0 ? 0 : leak[node]);
            }
        }

        return Build(candidates, reach);
    }

    /// <summary>
    /// Strength of the clean look that a folded state becomes on its parent: what the state would have shown, had this parent alone
    /// brought it about, beside what its leak would have shown anyway. For a leaf that was looked at, simply the link's own strength.
    /// </summary>
    private static double Unseen(double strength, double shown, double leak) =>
        shown >= 1 ? strength : strength * shown * (1 - leak) / (1 - shown * leak);

    private double[] Reach(IReadOnlyList<int> candidates)
    {
        if (ReferenceEquals(candidates, reachedFrom))
        {
            return reached;
        }

        double[] reach = new double[size];
        foreach (int c in candidates)
        {
            reach[c] = 1;
        }

        foreach (int node in order)
        {
            for (int i = first[node]; i < first[node + 1]; i++)
            {
                reach[node] = Math.Max(reach[node], strengths[i] * reach[parents[i]]);
            }
        }

        reachedFrom = candidates;
        reached = reach;
        return reach;
    }

    private ReducedNetwork Build(IReadOnlyList<int> candidates, double[] reach)
    {
        bool[] isCandidate = new bool[size];
        foreach (int c in candidates)
        {
            isCandidate[c] = true;
        }

        int[] number = new int[size];
        Array.Fill(number, -1);
        List<NetworkNode> made = [];
        List<Evidence> evidence = [];
        foreach (int node in order)
        {
            bool leaf = report[node] != 0 || kept[node];
            bool free = isCandidate[node] || (!IsRoot(node) && reach[node] >= WeakestReach && (positive[node] || (shown[node] > 0 && !leaf)));
            if (!free && !leaf)
            {
                continue;
            }

            bool folded = !isCandidate[node] && !positive[node];
            double silent = 1 - leak[node];
            List<NetworkLink> links = [];
            for (int i = first[node]; i < first[node + 1]; i++)
            {
                int parent = parents[i];
                if (number[parent] >= 0 && !(Folded(parent) && folded))
                {
                    links.Add(new NetworkLink(number[parent], folded ? Unseen(strengths[i], shown[node], leak[node]) : strengths[i]));
                }
                else if (!(Folded(parent) && folded && number[parent] >= 0))
                {
                    silent *= 1 - strengths[i] * resting[parent];
                }
            }

            if (folded && links.Count == 0)
            {
                continue;
            }

            number[node] = made.Count;
            if (folded)
            {
                evidence.Add(Evidence.Absent(made.Count));
            }
            else if (report[node] != 0)
            {
                evidence.Add(Evidence.Present(made.Count));
            }

            made.Add(new NetworkNode(ids[node], folded ? 0 : 1 - silent, links));
        }

        return new ReducedNetwork(NoisyOrNetwork.Cut([.. made]), evidence, number);

        bool Folded(int node) => !isCandidate[node] && !positive[node] && !IsRoot(node);
    }

    private bool IsRoot(int node) => first[node] == first[node + 1];

    private double Forward(int node, double[] values)
    {
        if (fixedTo[node] is { } known)
        {
            return known ? 1 : 0;
        }

        double silent = 1 - leak[node];
        for (int i = first[node]; i < first[node + 1]; i++)
        {
            silent *= 1 - strengths[i] * values[parents[i]];
        }

        return 1 - silent;
    }

    /// <summary>Log odds of the root given the evidence, when everything not downstream of it stays as it is now.</summary>
    private double Gain(int root, double[] now)
    {
        if (fixedTo[root] is not null || now[root] <= 0)
        {
            return double.NegativeInfinity;
        }

        stampNow++;
        stamp[root] = stampNow;
        trial[root] = 1;
        double gain = Math.Log(now[root] / Math.Max(1e-12, 1 - now[root]));
        foreach (int node in Below(root))
        {
            if (fixedTo[node] is not null)
            {
                continue;
            }

            double silent = 1 - leak[node];
            for (int i = first[node]; i < first[node + 1]; i++)
            {
                int parent = parents[i];
                silent *= 1 - strengths[i] * (stamp[parent] == stampNow ? trial[parent] : now[parent]);
            }

            stamp[node] = stampNow;
            trial[node] = 1 - silent;
            gain += report[node] switch
            {
                > 0 => Math.Log(trial[node] / now[node]),
                < 0 => Math.Log(Math.Max(1e-12, silent) / Math.Max(1e-12, 1 - now[node])),
                _ => 0,
            };
        }

        return gain;
    }

    /// <summary>The children of each node that lead to a report: nothing else can move what is asked.</summary>
    private int[][] Children()
    {
        List<int>[] lists = new List<int>[size];
        for (int i = 0; i < size; i++)
        {
            for (int l = first[i]; reported[i] && l < first[i + 1]; l++)
            {
                (lists[parents[l]] ??= []).Add(i);
            }
        }

        return Array.ConvertAll(lists, l => l?.ToArray() ?? []);
    }

    /// <summary>Every node downstream that leads to a report, parents before children.</summary>
    private int[] Below(int root)
    {
        if (below.TryGetValue(root, out int[]? known))
        {
            return known;
        }

        seenNow++;
        List<int> places = [];
        Stack<int> open = new(children.Value[root]);
        while (open.TryPop(out int node))
        {
            if (seen[node] == seenNow)
            {
                continue;
            }

            seen[node] = seenNow;
            places.Add(placeInOrder[node]);
            foreach (int child in children.Value[node])
            {
                open.Push(child);
            }
        }

        places.Sort();
        return below[root] = [.. places.Select(p => order[p])];
    }
}
