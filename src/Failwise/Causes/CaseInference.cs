using Failwise.Inference;

namespace Failwise.Causes;

/// <summary>
/// Asks the network of one case. The full network of a rule base with hundreds of roots is too tangled to solve whole, so the exact engine
/// runs over the candidates that this evidence brings up, and everything else acts at its usual frequency.
/// </summary>
internal sealed class CaseInference
{
    // About a hundred thousand multiplications keep an answer near a millisecond.
    private const double LargestCost = 120_000;
    private static readonly int[] Widths = [20, 14, 10, 8, 6];
    private readonly CauseNetwork net;
    private readonly EvidenceItem[] items;
    private readonly Evidence[] evidence;
    private readonly CandidateReduction reduction;
    private PlanCache plans = new();
    private ReducedNetwork? whole;

    public CaseInference(CauseNetwork net)
    {
        this.net = net;
        // Circumstances stand in the priors, not in the evidence.
        items = [.. net.Known.Where(i => i.Kind != EvidenceKind.Circumstance)];
        evidence = [.. items.Select(net.EvidenceOf)];
        RootNumbers = [.. net.Roots.Select(net.NumberOf)];
        reduction = new CandidateReduction(net.Network, evidence);
        IReadOnlyList<int> best = reduction.Choose(RootNumbers, RootNumbers.Count);
        Order = best;
        Candidates = [.. best.Take(Widths[^1])];
        foreach (int width in Widths)
        {
            int[] some = [.. best.Take(width)];
            ReducedNetwork reduced = reduction.Reduce(some);
            if (ExactInference.CostOf(reduced.Network, reduced.Evidence, LargestCost) <= LargestCost)
            {
                Candidates = some;
                whole = reduced;
                break;
            }
        }
    }

    /// <summary>Node numbers of all roots, in the order of the network's roots.</summary>
    public IReadOnlyList<int> RootNumbers { get; }

    /// <summary>All roots, most worth a look first.</summary>
    public IReadOnlyList<int> Order { get; }

    /// <summary>Roots that vary in the exact answer.</summary>
    public IReadOnlyList<int> Candidates { get; private set; }

    /// <summary>The same case with only a few of the candidates free, for the many small questions of an explanation.</summary>
    public CaseInference Narrow(IReadOnlyList<int> candidates)
    {
        CaseInference narrow = (CaseInference)MemberwiseClone();
        narrow.Candidates = candidates;
        narrow.plans = new PlanCache();
        narrow.whole = null;
        return narrow;
    }

    /// <summary>Posterior of the nodes asked for; a node that was folded away keeps its usual frequency.</summary>
    /// <param name="queries">Old node numbers.</param>
    /// <param name="without">Evidence to leave out.</param>
    /// <param name="also">Further evidence on leaves or candidates.</param>
    public (double LogEvidence, double[] Probabilities) Ask(IReadOnlyList<int> queries, EvidenceItem? without = null, IReadOnlyList<Evidence>? also = null)
    {
        (ReducedNetwork reduced, IReadOnlyList<Evidence> known) = Reduce(without, also);
        int[] asked = [.. queries.Select(q => reduced.NumberOf[q]).Where(n => n >= 0)];
        Posterior posterior = ExactInference.Query(reduced.Network, known, asked, null, plans);
        double[] result = new double[queries.Count];
        for (int i = 0, k = 0; i < result.Length; i++)
        {
            result[i] = reduced.NumberOf[queries[i]] >= 0 ? posterior.Probabilities[k++] : reduction.Usual(queries[i]);
        }

        return (posterior.LogEvidence, result);
    }

    /// <summary>The candidates under assumptions about leaves that nobody reported on.</summary>
    /// <param name="leaves">Old node numbers; what is assumed is asked by the place in this list.</param>
    public LeafTrials Try(IReadOnlyList<int> leaves)
    {
        ReducedNetwork reduced = reduction.Reduce(Candidates, open: leaves);
        return new LeafTrials(reduced.Network, reduced.Evidence, [.. Candidates.Select(c => reduced.NumberOf[c])], [.. leaves.Select(l => reduced.NumberOf[l])]);
    }

    /// <summary>Natural logarithm of the probability of the evidence together with <paramref name="also"/>.</summary>
    public double LogEvidence(IReadOnlyList<Evidence> also)
    {
        (ReducedNetwork reduced, IReadOnlyList<Evidence> known) = Reduce(null, also);
        return ExactInference.LogEvidence(reduced.Network, known, null, plans);
    }

    /// <summary>False when no candidate has anything to do with the evidence, so that leaving it out changes nothing.</summary>
    public bool Matters(EvidenceItem item) => item.Kind == EvidenceKind.Circumstance || reduction.IsReached(net.NumberOf(item), Candidates);

    /// <summary>The network as it is asked, for trials with moved strengths.</summary>
    public ReducedNetwork Reduced() => Whole;

    private ReducedNetwork Whole => whole ??= reduction.Reduce(Candidates);

    private (ReducedNetwork Network, IReadOnlyList<Evidence> Known) Reduce(EvidenceItem? without, IReadOnlyList<Evidence>? also)
    {
        // What is assumed of a candidate is asked of the reduced network; what is assumed of a leaf is part of the reduction.
        Evidence[] assumed = [.. (also ?? []).Where(e => Candidates.Contains(e.Node))];
        Evidence[] leaves = [.. (also ?? []).Where(e => !Candidates.Contains(e.Node))];
        ReducedNetwork reduced = leaves.Length > 0 ? reduction.Reduce(Candidates, also: leaves) : Whole;
        IReadOnlyList<Evidence> known = reduced.Evidence;
        if (without is { Kind: EvidenceKind.Circumstance })
        {
            reduced = new CandidateReduction(net.WithoutCircumstance(without.Id), evidence).Reduce(Candidates);
            known = reduced.Evidence;
        }
        else if (without is { Present: true } && reduced.NumberOf[net.NumberOf(without)] is >= 0 and var leaf)
        {
            // A report that says nothing leaves the question as it was but for one number.
            known = [.. known.Where(e => e.Node != leaf), Evidence.Likely(leaf, 1, 1)];
        }
        else if (without is not null)
        {
            reduced = reduction.Reduce(Candidates, net.NumberOf(without), leaves);
            known = reduced.Evidence;
        }

        return (reduced, [.. known, .. assumed.Select(e => e with { Node = reduced.NumberOf[e.Node] })]);
    }
}
