using Failwise.Inference;

namespace Failwise.Causes;

/// <summary>
/// What was looked for and not found speaks against the roots that would have left it. With only absent signs a noisy-OR network falls apart into
/// one factor a root: exact for a root that leaves its signs itself, and near where a state stands between, as long as the state is rare without
/// the root. It serves the many roots that the exact answer folds away.
/// </summary>
internal sealed class Denials
{
    private readonly Dictionary<int, List<(int Child, double Strength)>> children = [];
    private readonly Dictionary<int, EvidenceItem> absent = [];
    private readonly Dictionary<int, double> silence = [];
    private readonly int[] order;
    private readonly double[] ways;

    public Denials(CauseNetwork net)
    {
        ways = new double[net.Network.Nodes.Count];
        foreach (EvidenceItem item in net.Known.Where(i => !i.Present && i.Kind != EvidenceKind.Circumstance && net.Has(i)))
        {
            absent[net.NumberOf(item)] = item;
            Climb(net.Network.Nodes, net.NumberOf(item));
        }

        order = [.. net.Network.ParentsFirst.ToArray().Where(n => children.ContainsKey(n) || absent.ContainsKey(n))];
    }

    /// <summary>Weight of each absent sign on its own against a root [decibans, below 0], strongest first; none for a root that nothing denies.</summary>
    /// <param name="root">Node number of the root.</param>
    public IEnumerable<(EvidenceItem Item, double Decibans)> Against(int root)
    {
        List<(EvidenceItem Item, double Decibans)> against = [];
        Array.Clear(ways);
        ways[root] = 1;
        foreach (int node in children.ContainsKey(root) ? order : [])
        {
            double way = ways[node];
            if (way > 0 && absent.TryGetValue(node, out EvidenceItem? item))
            {
                against.Add((item, 10 * Math.Log10(1 - Math.Min(way, 0.999))));
            }
            else if (way > 0)
            {
                Widen(node, way);
            }
        }

        return against.OrderBy(r => r.Decibans).ThenBy(r => r.Item.Id, StringComparer.Ordinal);
    }

    /// <summary>The probability of a root once its absent signs have had their say.</summary>
    /// <param name="root">Node number of the root.</param>
    /// <param name="usual">Probability before, 0 to 1.</param>
    public double Lowered(int root, double usual)
    {
        double silent = Silence(root);
        return usual * silent / (1 - usual + usual * silent);
    }

    /// <summary>Chance that a node at work leaves none of the absent signs.</summary>
    private double Silence(int node)
    {
        if (!silence.TryGetValue(node, out double known))
        {
            known = 1;
            foreach ((int child, double strength) in children.GetValueOrDefault(node) ?? [])
            {
                known *= absent.ContainsKey(child) ? 1 - strength : 1 - strength + strength * Silence(child);
            }

            silence[node] = known;
        }

        return known;
    }

    /// <summary>Passes the strongest way to a node on to its children: every node is met after its parents, once, however many ways lead to it.</summary>
    private void Widen(int node, double way)
    {
        foreach ((int child, double link) in children[node])
        {
            ways[child] = Math.Max(ways[child], way * link);
        }
    }

    private void Climb(IReadOnlyList<NetworkNode> nodes, int node)
    {
        foreach (NetworkLink link in nodes[node].Links)
        {
            bool known = children.TryGetValue(link.Parent, out List<(int, double)>? below);
            if (!known)
            {
                children[link.Parent] = below = [];
            }

            if (!below!.Exists(c => c.Item1 == node))
            {
                below.Add((node, link.Strength));
            }

            if (!known)
            {
                Climb(nodes, link.Parent);
            }
        }
    }
}
