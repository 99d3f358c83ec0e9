namespace Failwise.Inference;

/// <summary>One query from start to end: the exact way for every part that fits the limit, the fallbacks for the others.</summary>
internal sealed class QueryRun(NoisyOrNetwork network, IReadOnlyList<Evidence> items, IReadOnlyList<int> queries, InferenceLimits limits, PlanCache? known = null)
{
    private readonly NodeEvidence _evidence = new(network, items);
    private double[] _marginals = [];
    private ProbabilityRange[] _ranges = [];
    private double _logEvidence;
    private int _width;
    private bool _folded;
    private double _effectiveSamples = double.PositiveInfinity;

    public double Cost(double most)
    {
        double cost = 1;
        foreach (var part in new RelevantGraph(network, _evidence, queries).Parts)
        {
            var plan = EliminationPlan.MakeOnce(part.Graph, most);
            cost += plan.Cost;
        }

        return cost;
    }

    public Posterior Solve()
    {
        var graph = new RelevantGraph(network, _evidence, queries);
        var plans = MakePlans(graph);
        foreach (var plan in plans) _width = Math.Max(_width, (int)Math.Ceiling(Math.Log2(plan.Cells)));
        if (plans.Exists(IsTooWide))
        {
            graph = new RelevantGraph(network, _evidence, queries, NodesOfWideParts(graph, plans), limits.WeakLink);
            plans = MakePlans(graph);
            _folded = graph.MassFolded > 0;
        }

        SolveParts(graph, plans);
        return Result(graph);
    }

    private List<EliminationPlan> MakePlans(RelevantGraph graph)
    {
        var plans = new List<EliminationPlan>(graph.Parts.Count);
        foreach (var part in graph.Parts) plans.Add(known?.PlanFor(part.Graph) ?? EliminationPlan.Make(part.Graph));
        return plans;
    }

    // Multiplying tables that share gate hubs takes several multiplications a cell; past 64 a cell it is time, not memory, that runs out.
    private bool IsTooWide(EliminationPlan plan) =>
        plan.TooWide || plan.Cells > Math.Min(limits.MaxTableCells, 1L << 30) || plan.Multiplications > 64.0 * limits.MaxTableCells;

    private bool[] NodesOfWideParts(RelevantGraph graph, List<EliminationPlan> plans)
    {
        var wide = new HashSet<int>();
        for (var p = 0; p < plans.Count; p++)
            if (IsTooWide(plans[p])) wide.UnionWith(graph.Parts[p].Original);
        var nodes = new bool[network.Nodes.Count];
        foreach (var gate in graph.Gates) nodes[gate.Node] = wide.Contains(graph.AnyVariableOf(gate));
        return nodes;
    }

    private void SolveParts(RelevantGraph graph, List<EliminationPlan> plans)
    {
        _logEvidence = graph.LogConstant;
        _marginals = new double[graph.VariableCount];
        _ranges = new ProbabilityRange[graph.VariableCount];
        for (var p = 0; p < plans.Count && !double.IsNegativeInfinity(_logEvidence); p++)
        {
            if (IsTooWide(plans[p])) SamplePart(graph, graph.Parts[p]);
            else EliminatePart(graph, graph.Parts[p], plans[p]);
        }
    }

    private void EliminatePart(RelevantGraph graph, GraphParts.Part part, EliminationPlan plan)
    {
        var asked = Array.ConvertAll(part.Original, graph.IsQueried);
        var local = Array.Exists(asked, a => a) ? new double[part.Original.Length] : [];
        _logEvidence += Elimination.Run(part.Graph, plan, local, asked);
        for (var v = 0; v < local.Length; v++)
        {
            _marginals[part.Original[v]] = local[v];
            _ranges[part.Original[v]] = new ProbabilityRange(local[v], local[v]);
        }
    }

    private void SamplePart(RelevantGraph graph, GraphParts.Part part)
    {
        var sampler = new WeightedSampler(graph, _evidence, part, limits);
        if (double.IsNegativeInfinity(sampler.LogSum))
        {
            throw new InvalidOperationException(
                $"A part of the network with {part.Original.Length} variables is too tangled for the limit of {limits.MaxTableCells} table "
                + $"cells, and none of {limits.Samples} samples agreed with the evidence: no answer can be given.");
        }

        _logEvidence += sampler.LogSum;
        _effectiveSamples = Math.Min(_effectiveSamples, sampler.EffectiveSamples);
        foreach (var variable in part.Original)
        {
            _marginals[variable] = sampler.Probability(variable);
            _ranges[variable] = sampler.Range(variable);
        }
    }

    private Posterior Result(RelevantGraph graph)
    {
        var probabilities = new double[queries.Count];
        var ranges = new ProbabilityRange[queries.Count];
        for (var q = 0; q < queries.Count; q++)
        {
            var variable = graph.VariableOf(queries[q]);
            probabilities[q] = variable >= 0 ? _marginals[variable] : _evidence.IsKnownAbsent(queries[q]) ? 0 : 1;
            ranges[q] = variable >= 0 ? _ranges[variable] : new ProbabilityRange(probabilities[q], probabilities[q]);
        }

        var sampled = !double.IsPositiveInfinity(_effectiveSamples);
        return new Posterior(
            _logEvidence, [.. queries], probabilities, _width, !_folded && !sampled, Describe(graph, sampled),
            sampled ? ranges : null, _folded ? graph.MassFolded : null);
    }

    private string? Describe(RelevantGraph graph, bool sampled)
    {
        var folded = $"links weaker than {limits.WeakLink} were folded into the leak of their finding or cause (together expected to fire "
            + $"{graph.MassFolded:0.####} times before any evidence)";
        var drawn = $"{limits.Samples} weighted samples with seed {limits.Seed}, worth {_effectiveSamples:0} equal ones, were drawn";
        var why = $"An exact answer would need 2^{_width} table cells or more, and too many multiplications for the limit of {limits.MaxTableCells} cells; ";
        return (_folded, sampled) switch
        {
            (true, true) => $"{why}{folded}, and because that was not enough, {drawn}.",
            (true, false) => $"{why}{folded}.",
            (false, true) => $"{why}{drawn}.",
            _ => null,
        };
    }
}
