namespace Failwise.Inference;

/// <summary>
/// A quick forecast of what each root would let one see: a forward pass per root in which every state carries along what the evidence has
/// already said about it. Approximate (parents are taken as independent), and some hundred times cheaper than asking the exact engine for
/// each sign; it serves to find the few signs that are then asked exactly.
/// </summary>
internal sealed class PromiseScan
{
    private readonly NoisyOrNetwork network;
    private readonly int[] order;
    private readonly int[] place;
    private readonly double[] now;
    private readonly double[] told;
    private readonly double[] trial;
    private readonly int[] stamp;
    private readonly int[][] children;
    private readonly Dictionary<int, int[]> below = [];
    private int stampNow;

    /// <param name="network">The model, with the signs that might be looked for as leaves.</param>
    /// <param name="posterior">What the evidence says of a node; null where nobody asked, which leaves its usual frequency.</param>
    public PromiseScan(NoisyOrNetwork network, Func<int, double?> posterior)
    {
        this.network = network;
        int size = network.Nodes.Count;
        order = network.ParentsFirst.ToArray();
        place = new int[size];
        now = new double[size];
        told = new double[size];
        trial = new double[size];
        stamp = new int[size];
        Array.Fill(told, 1);
        for (int i = 0; i < order.Length; i++)
        {
            place[order[i]] = i;
            int node = order[i];
            double usual = Forward(network.Nodes[node], p => now[p]);
            now[node] = usual;
            if (posterior(node) is { } known)
            {
                double inside = Math.Clamp(known, 1e-9, 1 - 1e-9);
                told[node] = Odds(inside) / Odds(usual);
                now[node] = inside;
            }
        }

        List<int>[] lists = new List<int>[size];
        for (int n = 0; n < size; n++)
        {
            foreach (NetworkLink link in network.Nodes[n].Links)
            {
                (lists[link.Parent] ??= []).Add(n);
            }
        }

        children = [.. lists.Select(l => l?.ToArray() ?? [])];
    }

    /// <summary>Probability of the node as things stand.</summary>
    public double Now(int node) => now[node];

    /// <summary>Probability of each of the nodes if the root were at work.</summary>
    public double[] Given(int root, IReadOnlyList<int> nodes)
    {
        stampNow++;
        stamp[root] = stampNow;
        trial[root] = 1;
        foreach (int node in Below(root))
        {
            double forward = Forward(network.Nodes[node], p => stamp[p] == stampNow ? trial[p] : now[p]);
            double odds = Odds(forward) * told[node];
            stamp[node] = stampNow;
            trial[node] = odds / (1 + odds);
        }

        return [.. nodes.Select(n => stamp[n] == stampNow ? trial[n] : now[n])];
    }

    private static double Odds(double p)
    {
        double inside = Math.Clamp(p, 1e-12, 1 - 1e-12);
        return inside / (1 - inside);
    }

    private static double Forward(NetworkNode node, Func<int, double> value)
    {
        double silent = 1 - node.Leak;
        foreach (NetworkLink link in node.Links)
        {
            silent *= 1 - link.Strength * value(link.Parent);
        }

        return 1 - silent;
    }

    private int[] Below(int root)
    {
        if (below.TryGetValue(root, out int[]? known))
        {
            return known;
        }

        HashSet<int> seen = [];
        Stack<int> open = new(children[root]);
        while (open.TryPop(out int node))
        {
            if (seen.Add(node))
            {
                foreach (int child in children[node])
                {
                    open.Push(child);
                }
            }
        }

        return below[root] = [.. seen.OrderBy(n => place[n])];
    }
}
