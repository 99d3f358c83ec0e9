using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>Finds the likeliest way from a root through states to each piece of evidence.</summary>
internal sealed class ChainFinder(KnowledgeBase knowledge, CauseNetwork net, IReadOnlyDictionary<string, double> probabilities)
{
    /// <summary>A chain that is weaker explains nothing.</summary>
    internal const double WeakestChain = 0.02;

    private readonly Dictionary<string, Dictionary<string, (double Strength, string? Before)>> reach = new(StringComparer.Ordinal);

    /// <summary>True when a chain of real strength leads from the root to the evidence.</summary>
    public bool Reaches(Cause root, EvidenceItem item) => BestInto(root, item).Strength >= WeakestChain;

    /// <summary>Chains to the present evidence, one per way through the states, the most telling first.</summary>
    public IReadOnlyList<IReadOnlyList<ChainStep>> From(Cause root)
    {
        Dictionary<string, (double Told, List<ChainStep> Steps)> byWay = new(StringComparer.Ordinal);
        foreach (EvidenceItem item in net.Known.Where(i => i.Present && i.Kind != EvidenceKind.Circumstance))
        {
            (double strength, string? last) = BestInto(root, item);
            if (strength < WeakestChain || last is null)
            {
                continue;
            }

            List<string> way = [];
            for (string? at = last; at is not null; at = Reach(root)[at].Before)
            {
                way.Insert(0, at);
            }

            string key = string.Join('>', way);
            if (!byWay.TryGetValue(key, out (double Told, List<ChainStep> Steps) known))
            {
                known = (0, [.. way.Select(Step)]);
            }

            known.Steps.Add(new ChainStep(item.Id, item.Says, null));
            // A way that leads to several real marks tells more than the single strongest link.
            byWay[key] = (known.Told + strength * (item.Important ? 1 : 0.3), known.Steps);
        }

        return [.. byWay.OrderByDescending(w => w.Value.Told).ThenBy(w => w.Key, StringComparer.Ordinal).Select(w => w.Value.Steps)];
    }

    /// <summary>Which of the others may have brought a root about, by the strongest way there is; null when no way is of real strength.</summary>
    public RootBefore? Before(Cause root, IEnumerable<Cause> others)
    {
        Cause? first = others.Where(o => o.Id != root.Id && Strength(o, root) >= WeakestChain && Strength(o, root) > Strength(root, o))
            .OrderByDescending(o => Strength(o, root)).ThenBy(o => o.Id, StringComparer.Ordinal).FirstOrDefault();
        if (first is null)
        {
            return null;
        }

        List<string> way = [];
        for (string? at = Reach(first)[root.Id].Before; at is not null && at != first.Id; at = Reach(first)[at].Before)
        {
            way.Insert(0, at);
        }

        return new RootBefore(first, [.. way.Select(Step)]);
    }

    private double Strength(Cause from, Cause to) => Reach(from).GetValueOrDefault(to.Id).Strength;

    private ChainStep Step(string id) => new(id, knowledge.Causes[id].Title, Math.Min(CauseRanking.Ceiling, probabilities[id]));

    private (double Strength, string? Last) BestInto(Cause root, EvidenceItem item)
    {
        (double Strength, string? Last) best = (0, null);
        if (!net.Has(item))
        {
            return best;
        }

        Dictionary<string, (double Strength, string? Before)> reached = Reach(root);
        foreach (LinkInto link in net.LinksInto(item))
        {
            if (reached.TryGetValue(link.Cause.Id, out (double Strength, string? Before) way) && way.Strength * link.Strength > best.Strength)
            {
                best = (way.Strength * link.Strength, link.Cause.Id);
            }
        }

        return best;
    }

    /// <summary>Strongest product of strengths from the root to every cause it can bring about.</summary>
    private Dictionary<string, (double Strength, string? Before)> Reach(Cause root)
    {
        if (reach.TryGetValue(root.Id, out Dictionary<string, (double, string?)>? known))
        {
            return known;
        }

        Dictionary<string, (double Strength, string? Before)> reached = new(StringComparer.Ordinal) { [root.Id] = (1, null) };
        PriorityQueue<string, double> open = new();
        open.Enqueue(root.Id, -1);
        HashSet<string> done = new(StringComparer.Ordinal);
        while (open.TryDequeue(out string? id, out _))
        {
            if (!done.Add(id))
            {
                continue;
            }

            foreach (CauseLink link in knowledge.Causes[id].LeadsTo.Where(l => probabilities.ContainsKey(l.Id)))
            {
                // A state that is itself unlikely here is no road.
                double strength = reached[id].Strength * link.Strength * Math.Max(0.05, probabilities[link.Id]);
                if (strength > reached.GetValueOrDefault(link.Id).Strength)
                {
                    reached[link.Id] = (strength, id);
                    open.Enqueue(link.Id, -strength);
                }
            }
        }

        return reach[root.Id] = reached;
    }
}
