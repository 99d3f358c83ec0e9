namespace Failwise.Inference;

/// <summary>
/// The multiplications that eliminate every variable of one connected part, worked out on shapes alone, so that the cost is known
/// before any table is filled.
/// </summary>
internal sealed class EliminationPlan
{
    /// <summary>Tables beyond this many variables are refused whatever the limit says: their index would not fit an int.</summary>
    private const int MostVariables = 28;

    private const int AttemptsToKeep = 2;

    private readonly List<TableShape> _shapes = [];
    private readonly List<Step> _steps = [];
    private readonly int[] _position;
    private (Step, TableProduct)[]? _compiled;

    private readonly int[] _users;
    private readonly int[] _ownTable;
    private readonly double _giveUpAt;
    private readonly List<int> _drops = [];

    private EliminationPlan(int[] position, double giveUpAt)
    {
        _position = position;
        _ownTable = new int[position.Length];
        _users = new int[position.Length];
        _giveUpAt = giveUpAt;
    }

    internal readonly record struct Step(int Left, int Right, int Result, int[] Drops, double Cost);

    public IReadOnlyList<TableShape> Shapes => _shapes;

    public IReadOnlyList<Step> Steps => _steps;

    public int VariableCount => _position.Length;

    /// <summary>The number of the graph's first table; its others follow.</summary>
    public int FirstTable { get; private set; }

    public double Cells { get; private set; }

    public double Multiplications { get; private set; }

    public bool TooWide { get; private set; }

    /// <summary>What the plan costs to run, forwards.</summary>
    public double Cost => TooWide ? double.PositiveInfinity : Cells + Multiplications;

    /// <summary>One try, given up past a cost: enough to say whether a network is small.</summary>
    public static EliminationPlan MakeOnce(FactorGraph graph, double giveUpAt) => Make(graph, 0, giveUpAt);

    /// <summary>The cheapest of a few elimination orders; the dearer the best so far, the more are tried.</summary>
    public static EliminationPlan Make(FactorGraph graph)
    {
        var best = Make(graph, 0, double.PositiveInfinity);
        for (var attempt = 1; attempt < Attempts(best.Cost); attempt++)
        {
            var plan = Make(graph, attempt, best.Cost);
            if (plan.Cost < best.Cost) best = plan;
        }

        return best;
    }

    /// <summary>
    /// For a graph that is asked many times: with the variables asked for eliminated last, the backward sweep has only a few products to
    /// cross, which often more than pays for a dearer forward run.
    /// </summary>
    public static EliminationPlan MakeToKeep(FactorGraph graph, bool[] asked)
    {
        var best = Make(graph);
        var cost = best.CostOfAll(asked);
        for (var attempt = 0; attempt < AttemptsToKeep; attempt++)
        {
            foreach (var plan in new[] { Make(graph, attempt, cost, asked), Make(graph, attempt + 1, cost) })
            {
                if (plan.TooWide || plan.CostOfAll(asked) is var its && its >= cost) continue;
                (best, cost) = (plan, its);
            }
        }

        return best;
    }

    /// <summary>Multiplications and cells of a forward run and of a backward sweep to the variables asked for.</summary>
    private double CostOfAll(bool[] asked)
    {
        if (TooWide) return double.PositiveInfinity;
        var cost = Cost;
        var crossed = new bool[_shapes.Count];
        for (var v = 0; v < asked.Length; v++)
            if (_ownTable[v] >= 0) crossed[_ownTable[v]] = asked[v];
        foreach (var step in _steps)
        {
            crossed[step.Result] = crossed[step.Left] || crossed[step.Right];
            cost += step.Cost * ((crossed[step.Left] ? 1 : 0) + (crossed[step.Right] ? 1 : 0));
        }

        return cost;
    }

    // One try costs about as much as a hundred thousand multiplications.
    private static int Attempts(double cost) => cost switch
    {
        < 1 << 18 => 1,
        < 1 << 21 => 6,
        < 1 << 25 => 24,
        < 1 << 27 => 64,
        _ => 160,
    };

    internal static EliminationPlan Make(FactorGraph graph, int attempt, double giveUpAt, bool[]? last = null)
    {
        var order = EliminationOrder.MinFill(graph.VariableCount, graph.Tables, attempt, last);
        var position = new int[order.Length];
        for (var i = 0; i < order.Length; i++) position[order[i]] = i;

        var plan = new EliminationPlan(position, giveUpAt);
        for (var v = 0; v < order.Length; v++) plan._ownTable[v] = graph.IsHub(v) ? -1 : plan.AddShape(new TableShape([position[v]], 0, 0));
        plan.FirstTable = plan._shapes.Count;
        foreach (var table in graph.Tables) plan.AddShape(plan.ShapeOf(table));
        plan.PlanBuckets();
        return plan;
    }

    /// <summary>The steps with their index walks; built once, on the first run.</summary>
    public (Step Step, TableProduct Product)[] CompiledSteps()
    {
        if (_compiled is not null) return _compiled;
        _compiled = new (Step, TableProduct)[_steps.Count];
        for (var s = 0; s < _compiled.Length; s++)
        {
            var step = _steps[s];
            _compiled[s] = (step, TableProduct.Compile(_shapes[step.Left], _shapes[step.Right], step.Drops));
        }

        return _compiled;
    }

    /// <summary>The table that is the variable's own factor; -1 for a gate hub.</summary>
    public int OwnTable(int variable) => _ownTable[variable];

    /// <summary>The table's cells with its variables put into elimination order.</summary>
    public void FillCells(FactorTable table, TableShape shape, Span<double> cells)
    {
        Span<int> target = stackalloc int[table.Variables.Length];
        for (var i = 0; i < target.Length; i++) target[i] = Array.IndexOf(shape.Variables, _position[table.Variables[i]]);
        for (var from = 0; from < table.Cells.Length; from++)
        {
            var to = 0;
            for (var i = 0; i < target.Length; i++) to |= (from >> i & 1) << target[i];
            cells[to] = table.Cells[from];
        }
    }

    private TableShape ShapeOf(FactorTable table)
    {
        var sorted = new int[table.Variables.Length];
        for (var i = 0; i < sorted.Length; i++) sorted[i] = _position[table.Variables[i]];
        Array.Sort(sorted);
        ulong accumulators = 0, caps = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            var bit = 1UL << Array.IndexOf(sorted, _position[table.Variables[i]]);
            if ((table.Accumulators >> i & 1) != 0) accumulators |= bit;
            if ((table.Caps >> i & 1) != 0) caps |= bit;
        }

        return new TableShape(sorted, accumulators, caps);
    }

    private int AddShape(TableShape shape)
    {
        _shapes.Add(shape);
        Cells += Math.ScaleB(1, shape.Variables.Length);
        foreach (var variable in shape.Variables) _users[variable]++;
        return _shapes.Count - 1;
    }

    private void PlanBuckets()
    {
        var buckets = new List<int>[_position.Length];
        for (var b = 0; b < buckets.Length; b++) buckets[b] = [];
        for (var t = 0; t < _shapes.Count; t++) buckets[_shapes[t].Variables[0]].Add(t);
        foreach (var bucket in buckets)
        {
            if (bucket.Count == 0) continue;
            var left = Combine(bucket);
            if (TooWide) return;
            var shape = _shapes[left];
            if (shape.Variables.Length > 0) buckets[shape.Variables[0]].Add(left);
        }
    }

    /// <summary>Multiplies a bucket's tables, small ones first.</summary>
    private int Combine(List<int> bucket)
    {
        bucket.Sort((a, b) => _shapes[a].Variables.Length != _shapes[b].Variables.Length
            ? _shapes[a].Variables.Length.CompareTo(_shapes[b].Variables.Length)
            : a.CompareTo(b));
        if (bucket.Count == 1) return Multiply(bucket[0], AddShape(TableShape.Scalar));
        var product = bucket[0];
        for (var i = 1; i < bucket.Count && !TooWide; i++) product = Multiply(product, bucket[i]);
        return product;
    }

    private int Multiply(int left, int right)
    {
        var drops = NeededNowhereElse(_shapes[left].Variables, _shapes[right].Variables);
        var (shape, cost) = TableProduct.Estimate(_shapes[left], _shapes[right], drops);
        Multiplications += cost;
        foreach (var variable in _shapes[left].Variables) _users[variable]--;
        foreach (var variable in _shapes[right].Variables) _users[variable]--;
        var result = AddShape(shape);
        _steps.Add(new Step(left, right, result, drops, cost));
        TooWide |= shape.Variables.Length > MostVariables || Cells + Multiplications > _giveUpAt;
        return result;
    }

    /// <summary>Variables that only these two tables mention: the sooner they are summed out, the smaller everything after.</summary>
    private int[] NeededNowhereElse(int[] left, int[] right)
    {
        _drops.Clear();
        foreach (var variable in left)
            if (_users[variable] == (Array.IndexOf(right, variable) >= 0 ? 2 : 1)) _drops.Add(variable);
        foreach (var variable in right)
            if (_users[variable] == 1) _drops.Add(variable);
        return _drops.Count == 0 ? [] : _drops.ToArray();
    }
}
