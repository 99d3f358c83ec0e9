namespace Failwise.Inference;

/// <summary>
/// Turns a network, its evidence and the queries into connected factor graphs: barren nodes are left out, known nodes are absorbed,
/// each remaining gate becomes a small table or a star of two-state tables around one hub.
/// </summary>
internal sealed class RelevantGraph
{
    private const int NoVariable = -1;

    private readonly NoisyOrNetwork _network;
    private readonly NodeEvidence _evidence;
    private readonly FactorGraph _whole = new();
    private readonly int[] _variable;
    private readonly bool[] _relevant;
    private readonly bool[] _feeds;
    private readonly bool[] _fold;
    private readonly double _weakLink;
    private readonly double[]? _priors;
    private readonly List<Gate> _gates = [];
    private int _queried;
    private readonly List<NetworkLink> _absorbed = [];

    /// <summary>A gate that is not known absent, with its leak and the links from nodes that are not known.</summary>
    internal readonly record struct Gate(int Node, double Silent, double Fired, List<NetworkLink> Parents);

    /// <param name="network">The model.</param>
    /// <param name="evidence">Pairs multiplied up per node.</param>
    /// <param name="queries">Nodes that must have a variable.</param>
    /// <param name="fold">Children whose weak links go into their leak; null for none.</param>
    /// <param name="weakLink">Links weaker than this are weak.</param>
    public RelevantGraph(NoisyOrNetwork network, NodeEvidence evidence, IReadOnlyList<int> queries, bool[]? fold = null, double weakLink = 0)
    {
        _network = network;
        _evidence = evidence;
        var count = network.Nodes.Count;
        _variable = new int[count];
        Array.Fill(_variable, NoVariable);
        _relevant = new bool[count];
        _feeds = new bool[count];
        _fold = fold ?? new bool[count];
        _weakLink = weakLink;
        _priors = fold is null ? null : RoughPriors(network);
        MarkRelevant(queries);
        Build(queries);
        Parts = GraphParts.Split(_whole);
    }

    public IReadOnlyList<GraphParts.Part> Parts { get; }

    /// <summary>The gates that have a variable, parents first.</summary>
    public IReadOnlyList<Gate> Gates => _gates;

    /// <summary>Links into nodes known to be absent: each multiplies its parent's presence by 1 - strength.</summary>
    public IReadOnlyList<NetworkLink> Absorbed => _absorbed;

    public int VariableCount => _whole.VariableCount;

    public double LogConstant => _whole.LogConstant;

    /// <summary>Expected number of firings of the folded links, before evidence.</summary>
    public double MassFolded { get; private set; }

    /// <summary>The number of this node's variable, or -1 when the node is known or not relevant.</summary>
    public int VariableOf(int node) => _variable[node];

    /// <summary>True for a variable that stands for a node that was asked for.</summary>
    public bool IsQueried(int variable) => variable < _queried;

    /// <summary>A variable of the gate: its node's own, or else that of its first parent.</summary>
    public int AnyVariableOf(Gate gate) => _variable[gate.Node] >= 0 ? _variable[gate.Node] : _variable[gate.Parents[0].Parent];

    private void MarkRelevant(IReadOnlyList<int> queries)
    {
        foreach (var node in queries) _relevant[node] = true;
        var order = _network.ParentsFirst;
        for (var i = order.Length - 1; i >= 0; i--)
        {
            var node = order[i];
            if (_evidence.Names(node)) _relevant[node] = true;
            if (!_relevant[node]) continue;
            foreach (var link in _network.Nodes[node].Links)
            {
                if (link.Strength <= 0 || IsFolded(node, link)) continue;
                _relevant[link.Parent] = true;
                _feeds[link.Parent] = true;
            }
        }
    }

    private bool IsFolded(int child, NetworkLink link) => _fold[child] && link.Strength < _weakLink;

    private void Build(IReadOnlyList<int> queries)
    {
        foreach (var node in queries) GiveVariable(node);
        _queried = _whole.VariableCount;
        foreach (var node in _network.ParentsFirst)
            if (_relevant[node] && (_feeds[node] || _network.Nodes[node].IsRoot)) GiveVariable(node);
        foreach (var node in _network.ParentsFirst)
            if (_relevant[node]) AddNode(node);
        _whole.AddLog(_evidence.LogScale);
    }

    private void GiveVariable(int node)
    {
        if (_variable[node] < 0 && !_evidence.IsKnown(node)) _variable[node] = _whole.AddVariable();
    }

    private void AddNode(int node)
    {
        var gate = Leaky(node);
        var (_, silent, fired, parents) = gate;
        if (!_evidence.IsKnownAbsent(node) && (_variable[node] >= 0 || parents.Count > 0)) _gates.Add(gate);
        if (_evidence.IsKnownAbsent(node)) AbsorbAbsent(silent, parents);
        else if (parents.Count <= 2) AddSmallGate(node, silent, fired, parents);
        else AddStar(node, silent, fired, parents);
    }

    /// <summary>
    /// The leak after known and folded parents have gone into it, as P(none fired) and P(some fired), both built without subtracting
    /// nearly equal numbers; and the links that are left.
    /// </summary>
    private Gate Leaky(int node)
    {
        var model = _network.Nodes[node];
        double silent = 1 - model.Leak, fired = model.Leak;
        var parents = new List<NetworkLink>(model.Links.Count);
        foreach (var link in model.Links)
        {
            if (link.Strength <= 0 || _evidence.IsKnownAbsent(link.Parent)) continue;
            var constant = _evidence.IsKnown(link.Parent) ? link.Strength
                : IsFolded(node, link) ? FoldedStrength(link)
                : double.NaN;
            if (double.IsNaN(constant))
            {
                parents.Add(link);
                continue;
            }

            fired += constant * silent;
            silent *= 1 - constant;
        }

        return new Gate(node, silent, fired, parents);
    }

    private double FoldedStrength(NetworkLink link)
    {
        var expected = link.Strength * _priors![link.Parent];
        MassFolded += expected;
        return expected;
    }

    private void AbsorbAbsent(double silent, List<NetworkLink> parents)
    {
        _whole.MultiplyConstant(silent);
        foreach (var link in parents) _whole.MultiplyOwn(_variable[link.Parent], 1, 1 - link.Strength);
        _absorbed.AddRange(parents);
    }

    /// <summary>With up to two parents a plain table is never larger than the star.</summary>
    private void AddSmallGate(int node, double silent, double fired, List<NetworkLink> parents)
    {
        var own = _variable[node];
        var width = parents.Count + (own >= 0 ? 1 : 0);
        Span<double> cells = stackalloc double[1 << width];
        for (var index = 0; index < 1 << parents.Count; index++)
        {
            double none = silent, some = fired;
            for (var p = 0; p < parents.Count; p++)
            {
                if ((index >> p & 1) == 0) continue;
                some += parents[p].Strength * none;
                none *= 1 - parents[p].Strength;
            }

            if (own < 0) cells[index] = none * _evidence.IfAbsent(node) + some * _evidence.IfPresent(node);
            else (cells[index], cells[index | 1 << parents.Count]) = (none, some);
        }

        if (own >= 0) _whole.MultiplyOwn(own, _evidence.IfAbsent(node), _evidence.IfPresent(node));
        AddSmallTable(parents, own, cells);
    }

    private void AddSmallTable(List<NetworkLink> parents, int own, Span<double> cells)
    {
        var variables = new List<int>(3);
        foreach (var link in parents) variables.Add(_variable[link.Parent]);
        if (own >= 0) variables.Add(own);
        if (variables.Count == 0) _whole.MultiplyConstant(cells[0]);
        else if (variables.Count == 1) _whole.MultiplyOwn(variables[0], cells[0], cells[1]);
        else _whole.Add(new FactorTable(variables.ToArray(), cells.ToArray()));
    }

    /// <summary>
    /// One hub with the states "none fired" and "some fired", tied to each parent by a table of its own. The cap holds the node's
    /// own likelihood for each state, with the leak already taken in: cap(s) = silent * outcome(s) + fired * outcome(some).
    /// </summary>
    private void AddStar(int node, double silent, double fired, List<NetworkLink> parents)
    {
        var hub = _whole.AddHub();
        var own = _variable[node];
        var first = 0;
        if (own >= 0)
        {
            _whole.MultiplyOwn(own, _evidence.IfAbsent(node), _evidence.IfPresent(node));
            _whole.Add(new FactorTable([hub, own], [silent, 0, fired, 1], Caps: 1));
        }
        else
        {
            var some = _evidence.IfPresent(node);
            _whole.Add(CapOverLink(parents[first++], hub, silent * _evidence.IfAbsent(node) + fired * some, some));
        }

        for (var p = first; p < parents.Count; p++)
        {
            var link = parents[p];
            _whole.Add(new FactorTable([_variable[link.Parent], hub], [1, 1 - link.Strength, 0, link.Strength], Accumulators: 2));
        }
    }

    // A cap that has absorbed the first link at once saves a multiplication, and lets the gate be read off in the product that completes it.
    private FactorTable CapOverLink(NetworkLink link, int hub, double none, double some) =>
        new([_variable[link.Parent], hub], [none, (1 - link.Strength) * none + link.Strength * some, some, some], Caps: 2);

    /// <summary>Prior marginals as if parents were independent: good enough to weigh a weak link by how often its parent occurs.</summary>
    private static double[] RoughPriors(NoisyOrNetwork network)
    {
        var priors = new double[network.Nodes.Count];
        foreach (var node in network.ParentsFirst)
        {
            var silent = 1 - network.Nodes[node].Leak;
            foreach (var link in network.Nodes[node].Links) silent *= 1 - link.Strength * priors[link.Parent];
            priors[node] = 1 - silent;
        }

        return priors;
    }
}
