namespace Failwise.Inference;

/// <summary>
/// A quick forecast of what each root would let one see: a forward pass per root in which every state carries along what the evidence has
/// already said about it. Approximate (parents are taken as independent), and some hundred times cheaper than asking the exact engine for
/// each sign; it serves to find the few signs that are then asked exactly.
/// </summary>
internal sealed class PromiseScan
{
    private readonly double[] silent;
    // Links of node n stand at first[n] to first[n + 1], in plain arrays: every root walks most of them.
    private readonly int[] first;
    private readonly int[] parents;
    private readonly double[] strengths;
    private readonly int[] order;
    private readonly int[] foreseen;
    private readonly double[] now;
    private readonly double[] told;
    private readonly double[] trial;
    private readonly int[] stamp;
    private int stampNow;

    /// <param name="network">The model, with the signs that might be looked for as leaves.</param>
    /// <param name="posterior">What the evidence says of a node; null where nobody asked, which leaves its usual frequency.</param>
    /// <param name="leaves">The leaves to be foreseen.</param>
    public PromiseScan(NoisyOrNetwork network, Func<int, double?> posterior, IReadOnlyList<int> leaves)
    {
        int size = network.Nodes.Count;
        order = network.ParentsFirst.ToArray();
        silent = new double[size];
        first = new int[size + 1];
        now = new double[size];
        told = new double[size];
        trial = new double[size];
        stamp = new int[size];
        Array.Fill(told, 1);
        List<int> parent = [];
        List<double> strength = [];
        for (int n = 0; n < size; n++)
        {
            NetworkNode node = network.Nodes[n];
            silent[n] = 1 - node.Leak;
            foreach (NetworkLink link in node.Links)
            {
                parent.Add(link.Parent);
                strength.Add(link.Strength);
            }

            first[n + 1] = parent.Count;
        }

        parents = [.. parent];
        strengths = [.. strength];
        Settle(posterior);
        foreseen = LeadingTo(leaves);
    }

    /// <summary>Probability of the node as things stand.</summary>
    public double Now(int node) => now[node];

    /// <summary>Probability of each of the nodes if the root were at work.</summary>
    /// <param name="nodes">Some of the leaves to be foreseen.</param>
    public double[] Given(int root, IReadOnlyList<int> nodes)
    {
        stampNow++;
        stamp[root] = stampNow;
        trial[root] = 1;
        foreach (int node in foreseen)
        {
            double rest = silent[node];
            bool below = false;
            for (int i = first[node]; i < first[node + 1]; i++)
            {
                int parent = parents[i];
                bool moved = stamp[parent] == stampNow;
                below |= moved;
                rest *= 1 - strengths[i] * (moved ? trial[parent] : now[parent]);
            }

            if (below)
            {
                double odds = Odds(1 - rest) * told[node];
                stamp[node] = stampNow;
                trial[node] = odds / (1 + odds);
            }
        }

        double[] given = new double[nodes.Count];
        for (int i = 0; i < given.Length; i++)
        {
            given[i] = stamp[nodes[i]] == stampNow ? trial[nodes[i]] : now[nodes[i]];
        }

        return given;
    }

    private void Settle(Func<int, double?> posterior)
    {
        foreach (int node in order)
        {
            double rest = silent[node];
            for (int i = first[node]; i < first[node + 1]; i++)
            {
                rest *= 1 - strengths[i] * now[parents[i]];
            }

            now[node] = 1 - rest;
            if (posterior(node) is { } known)
            {
                double inside = Math.Clamp(known, 1e-9, 1 - 1e-9);
                told[node] = Odds(inside) / Odds(now[node]);
                now[node] = inside;
            }
        }
    }

    /// <summary>The leaves and every node on a way to them, parents before children, roots left out.</summary>
    private int[] LeadingTo(IReadOnlyList<int> leaves)
    {
        bool[] leads = new bool[now.Length];
        foreach (int leaf in leaves)
        {
            leads[leaf] = true;
        }

        for (int o = order.Length - 1; o >= 0; o--)
        {
            for (int i = first[order[o]]; leads[order[o]] && i < first[order[o] + 1]; i++)
            {
                leads[parents[i]] = true;
            }
        }

        return [.. order.Where(n => leads[n] && first[n + 1] > first[n])];
    }

    private static double Odds(double p)
    {
        double inside = Math.Clamp(p, 1e-12, 1 - 1e-12);
        return inside / (1 - inside);
    }
}
