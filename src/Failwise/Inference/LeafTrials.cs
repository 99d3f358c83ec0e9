namespace Failwise.Inference;

/// <summary>What is believed under some assumption.</summary>
/// <param name="LogEvidence">Natural logarithm of the probability of the evidence together with what is assumed.</param>
/// <param name="Probabilities">Posterior of each node asked for.</param>
internal sealed record Belief(double LogEvidence, double[] Probabilities);

/// <summary>
/// Posteriors of a few nodes under many assumptions about leaves that nobody reported on. That a leaf is absent only multiplies the own
/// factors of its parents, so one elimination plan serves all assumptions, and after each only what the change reaches is worked out again.
/// That a leaf is present is what remains when absent is taken from all. The subtraction costs a few digits where the leaf is very rare:
/// a leaf of chance c is told with a relative error of about 1e-15/c.
/// </summary>
internal sealed class LeafTrials
{
    /// <summary>A rarer leaf is taken as not to occur, since the subtraction would leave noise.</summary>
    private const double Noise = 1e-11;

    private readonly NoisyOrNetwork _network;
    private readonly IReadOnlyList<int> _queries;
    private readonly IReadOnlyList<int> _leaves;
    private readonly NodeEvidence _evidence;
    private readonly RelevantGraph _graph;
    private readonly bool[][] _asked;
    private readonly EliminationPlan[] _plans;
    private readonly Elimination?[] _runs;
    private readonly double[][] _marginals;
    private readonly double[] _logs;
    private readonly (int Part, int Local)[] _places;
    private readonly Dictionary<string, Belief> _known = new(StringComparer.Ordinal);
    private readonly Dictionary<int, double> _factors = [];
    private readonly HashSet<int> _moved = [];

    /// <param name="network">The model; a leaf has no children and no evidence.</param>
    /// <param name="evidence">What was reported.</param>
    /// <param name="queries">Nodes whose posteriors are wanted.</param>
    /// <param name="leaves">Leaves about which something will be assumed.</param>
    public LeafTrials(NoisyOrNetwork network, IReadOnlyList<Evidence> evidence, IReadOnlyList<int> queries, IReadOnlyList<int> leaves)
    {
        _network = network;
        _queries = queries;
        _leaves = leaves;
        _evidence = new NodeEvidence(network, evidence);
        int[] variables = [.. queries.Concat(leaves.SelectMany(l => network.Nodes[l].Links).Select(l => l.Parent)).Distinct()];
        _graph = new RelevantGraph(network, _evidence, variables);
        _asked = [.. _graph.Parts.Select(p => Array.ConvertAll(p.Original, v => queries.Any(q => _graph.VariableOf(q) == v)))];
        _plans = [.. _graph.Parts.Select((p, i) => EliminationPlan.MakeToKeep(p.Graph, _asked[i]))];
        _runs = new Elimination[_plans.Length];
        _marginals = new double[_plans.Length][];
        _logs = new double[_plans.Length];
        _places = new (int, int)[_graph.VariableCount];
        for (var p = 0; p < _plans.Length; p++)
            for (var v = 0; v < _graph.Parts[p].Original.Length; v++) _places[_graph.Parts[p].Original[v]] = (p, v);
    }

    /// <summary>Table cells and multiplications that the first answer takes; infinity when it cannot be given.</summary>
    public double Cost => _plans.Sum(p => p.Cost);

    /// <summary>The belief when some leaves are assumed present or absent.</summary>
    /// <param name="assumed">Plain evidence; its node is a place in the list of leaves.</param>
    public Belief Given(IReadOnlyList<Evidence> assumed)
    {
        int[] absent = [.. assumed.Where(e => e.IfPresent == 0).Select(e => e.Node)];
        int[] present = [.. assumed.Where(e => e.IfPresent != 0).Select(e => e.Node)];
        var all = Without(absent);
        if (present.Length == 0 || double.IsNegativeInfinity(all.LogEvidence)) return all;
        double total = 0;
        double[] sums = new double[_queries.Count];
        for (var some = 0; some < 1 << present.Length; some++)
        {
            var part = Without([.. absent, .. present.Where((_, bit) => (some >> bit & 1) == 1)]);
            var share = Math.Exp(part.LogEvidence - all.LogEvidence) * (int.IsEvenInteger(System.Numerics.BitOperations.PopCount((uint)some)) ? 1 : -1);
            total += share;
            for (var q = 0; q < sums.Length; q++) sums[q] += share * part.Probabilities[q];
        }

        return total < Noise
            ? new Belief(double.NegativeInfinity, all.Probabilities)
            : new Belief(all.LogEvidence + Math.Log(total), Array.ConvertAll(sums, s => Math.Clamp(s / total, 0, 1)));
    }

    private void Work(int p)
    {
        var run = _runs[p] ??= Keep(p);
        _logs[p] = run.Sum();
        if (!double.IsNegativeInfinity(_logs[p])) run.Posteriors(_marginals[p]);
    }

    private Elimination Keep(int p)
    {
        _marginals[p] = new double[_asked[p].Length];
        return Elimination.Keep(_graph.Parts[p].Graph, _plans[p], _asked[p]);
    }

    /// <summary>The belief when some leaves are assumed absent.</summary>
    private Belief Without(int[] absent)
    {
        Array.Sort(absent);
        string key = string.Create(absent.Length, absent, static (text, leaves) =>
        {
            for (var i = 0; i < leaves.Length; i++) text[i] = (char)leaves[i];
        });
        return _known.TryGetValue(key, out Belief? known) ? known : _known[key] = Work(absent);
    }

    private Belief Work(int[] absent)
    {
        var log = _graph.LogConstant;
        _factors.Clear();
        foreach (var leaf in absent) log += Absorb(leaf);
        HashSet<int> parts = [];
        for (var p = 0; p < _runs.Length; p++)
            if (_runs[p] is null) parts.Add(p);
        foreach (var variable in _moved.Union(_factors.Keys))
        {
            var (p, local) = _places[variable];
            var own = _graph.Parts[p].Graph.OwnCells(local);
            (_runs[p] ??= Keep(p)).Change(local, own[0], own[1] * _factors.GetValueOrDefault(variable, 1));
            parts.Add(p);
        }

        _moved.Clear();
        _moved.UnionWith(_factors.Keys);
        foreach (var p in parts) Work(p);
        foreach (var part in _logs) log += part;
        return new Belief(log, Posteriors());
    }

    /// <summary>Puts a clean look at the leaf in this place into its parents' factors; gives the logarithm of what does not depend on them.</summary>
    private double Absorb(int leaf)
    {
        var node = _network.Nodes[_leaves[leaf]];
        var silent = 1 - node.Leak;
        foreach (var link in node.Links)
        {
            var variable = _graph.VariableOf(link.Parent);
            if (variable >= 0) _factors[variable] = _factors.GetValueOrDefault(variable, 1) * (1 - link.Strength);
            else if (!_evidence.IsKnownAbsent(link.Parent)) silent *= 1 - link.Strength;
        }

        return Math.Log(silent);
    }

    private double[] Posteriors()
    {
        double[] result = new double[_queries.Count];
        for (var q = 0; q < result.Length; q++)
        {
            var variable = _graph.VariableOf(_queries[q]);
            result[q] = variable >= 0 ? _marginals[_places[variable].Part][_places[variable].Local] : _evidence.IsKnownAbsent(_queries[q]) ? 0 : 1;
        }

        return result;
    }
}
