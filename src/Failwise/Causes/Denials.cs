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

    public Denials(CauseNetwork net)
    {
        foreach (EvidenceItem item in net.Known.Where(i => !i.Present && i.Kind != EvidenceKind.Circumstance && net.Has(i)))
        {
            absent[net.NumberOf(item)] = item;
            Climb(net.Network.Nodes, net.NumberOf(item));
        }
    }

    /// <summary>Weight of each absent sign on its own against a root [decibans, below 0], strongest first; none for a root that nothing denies.</summary>
    /// <param name="root">Node number of the root.</param>
    public IEnumerable<(EvidenceItem Item, double Decibans)> Against(int root)
    {
        Dictionary<int, double> reach = [];
        Reach(root, 1, reach);
        return reach.Select(r => (absent[r.Key], Decibans: 10 * Math.Log10(1 - Math.Min(r.Value, 0.999)))).OrderBy(r => r.Decibans).ThenBy(r => r.Item1.Id, StringComparer.Ordinal);
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

    private void Reach(int node, double strength, Dictionary<int, double> reach)
    {
        foreach ((int child, double link) in children.GetValueOrDefault(node) ?? [])
        {
            if (absent.ContainsKey(child))
            {
                reach[child] = Math.Max(reach.GetValueOrDefault(child), strength * link);
            }
            else
            {
                Reach(child, strength * link, reach);
            }
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
