using System.Buffers;

namespace Failwise.Inference;

/// <summary>
/// Runs an elimination plan forwards for P(evidence) and, when posteriors are wanted, once backwards: P(evidence) is linear in every
/// table, so its derivative with respect to a variable's own factor is that variable's joint with the evidence. One backward sweep
/// gives all posteriors ("A differential approach to inference in Bayesian networks", Journal of the ACM, 2003). After a change of some
/// variables' own factors only the products that the change reaches are worked out again.
/// </summary>
internal sealed class Elimination
{
    // Two tables above it can be multiplied, and again, before anything comes near the smallest double.
    private const double SmallEnough = 1e-20;

    private readonly FactorGraph _graph;
    private readonly EliminationPlan _plan;
    private readonly int[] _offset;
    private readonly int _total;
    private readonly bool[] _changed;
    private readonly double[] _stepLog;
    private readonly double _ownLog;
    private double[] _values = [];
    private double[] _slopes = [];
    private bool[] _asked = [];
    private bool _filled;

    private Elimination(FactorGraph graph, EliminationPlan plan)
    {
        _graph = graph;
        _plan = plan;
        _offset = new int[plan.Shapes.Count];
        for (var t = 0; t < _offset.Length; t++)
        {
            _offset[t] = _total;
            _total += Size(t);
        }

        _changed = new bool[_offset.Length];
        _stepLog = new double[plan.Steps.Count];
        for (var v = 0; v < plan.VariableCount; v++) _ownLog += graph.OwnLog(v);
    }

    /// <summary>
    /// Natural logarithm of the graph's sum; P(state 1) of each variable goes to <paramref name="marginals"/> unless that is empty.
    /// The marginals are left alone when the sum is zero.
    /// </summary>
    /// <param name="asked">Variables whose P(state 1) is wanted; all when null.</param>
    public static double Run(FactorGraph graph, EliminationPlan plan, Span<double> marginals, bool[]? asked = null)
    {
        if (double.IsNegativeInfinity(graph.LogConstant)) return graph.LogConstant;
        var run = new Elimination(graph, plan);
        run._values = ArrayPool<double>.Shared.Rent(run._total);
        run._slopes = marginals.Length > 0 ? ArrayPool<double>.Shared.Rent(run._total) : [];
        try
        {
            var log = run.Sum();
            if (marginals.Length > 0 && !double.IsNegativeInfinity(log))
            {
                run.Ask(asked);
                run.Posteriors(marginals);
            }

            return log;
        }
        finally
        {
            ArrayPool<double>.Shared.Return(run._values);
            if (run._slopes.Length > 0) ArrayPool<double>.Shared.Return(run._slopes);
        }
    }

    /// <summary>A run that is kept, to be asked again with other factors in place of the variables' own.</summary>
    /// <param name="asked">Variables whose P(state 1) will be wanted.</param>
    public static Elimination Keep(FactorGraph graph, EliminationPlan plan, bool[] asked)
    {
        var run = new Elimination(graph, plan);
        run._values = new double[run._total];
        run._slopes = new double[run._total];
        run.Fill();
        run.Ask(asked);
        return run;
    }

    /// <summary>Puts another factor in place of the variable's own, until it is changed again.</summary>
    public void Change(int variable, double ifAbsent, double ifPresent)
    {
        var table = _plan.OwnTable(variable);
        var own = Cells(_values, table);
        (own[0], own[1]) = (ifAbsent, ifPresent);
        _changed[table] = true;
    }

    /// <summary>Natural logarithm of the graph's sum; minus infinity when it is zero.</summary>
    public double Sum()
    {
        if (!_filled) Fill();
        var log = _graph.LogConstant + _ownLog;
        var steps = _plan.CompiledSteps();
        for (var s = 0; s < steps.Length; s++)
        {
            ref readonly var step = ref steps[s].Step;
            if (_changed[step.Left] || _changed[step.Right])
            {
                _stepLog[s] = Multiply(step, steps[s].Product);
                _changed[step.Result] = true;
            }

            log += _stepLog[s];
        }

        Array.Clear(_changed);
        return log;
    }

    /// <summary>P(state 1) of the variables asked for, after <see cref="Sum"/> gave more than zero.</summary>
    public void Posteriors(Span<double> marginals)
    {
        _slopes.AsSpan(0, _total).Clear();
        SweepBack();
        for (var v = 0; v < _plan.VariableCount; v++)
        {
            var table = _plan.OwnTable(v);
            if (table < 0 || !_asked[table]) continue;
            var own = Cells(_values, table);
            var slope = Cells(_slopes, table);
            var absent = own[0] * slope[0];
            var present = own[1] * slope[1];
            marginals[v] = present / (absent + present);
        }
    }

    private int Size(int table) => 1 << _plan.Shapes[table].Variables.Length;

    private Span<double> Cells(double[] arena, int table) => arena.AsSpan(_offset[table], Size(table));

    private void Fill()
    {
        for (var t = 0; t < _graph.Tables.Count; t++)
        {
            var table = _plan.FirstTable + t;
            _plan.FillCells(_graph.Tables[t], _plan.Shapes[table], Cells(_values, table));
        }

        for (var v = 0; v < _plan.VariableCount; v++)
            if (_plan.OwnTable(v) >= 0) _graph.OwnCells(v).CopyTo(Cells(_values, _plan.OwnTable(v)));
        Array.Fill(_changed, true);
        _filled = true;
    }

    private double Multiply(in EliminationPlan.Step step, TableProduct product)
    {
        // The scalar that lets a lone table be summed out like any other.
        if (_plan.Shapes[step.Right].Variables.Length == 0) Cells(_values, step.Right)[0] = 1;
        var result = Cells(_values, step.Result);
        result.Clear();
        product.Multiply(Cells(_values, step.Left), Cells(_values, step.Right), result);
        var scale = Normalise(result);
        return scale == 1 ? 0 : Math.Log(scale);
    }

    /// <summary>Marks every table into which an asked variable's own factor went: only there the backward sweep has to go.</summary>
    private void Ask(bool[]? asked)
    {
        _asked = new bool[_offset.Length];
        for (var v = 0; v < _plan.VariableCount; v++)
            if (_plan.OwnTable(v) >= 0) _asked[_plan.OwnTable(v)] = asked?[v] ?? true;
        foreach (var (step, _) in _plan.CompiledSteps()) _asked[step.Result] = _asked[step.Left] || _asked[step.Right];
    }

    private void SweepBack()
    {
        var steps = _plan.CompiledSteps();
        for (var s = steps.Length - 1; s >= 0; s--)
        {
            var (step, product) = steps[s];
            if (!_asked[step.Result]) continue;
            var outcome = Cells(_slopes, step.Result);
            if (outcome.Length == 1) outcome[0] = 1;
            if (_asked[step.Left]) Spread(product, outcome, Cells(_values, step.Right), Cells(_slopes, step.Left), true);
            if (_asked[step.Right]) Spread(product, outcome, Cells(_values, step.Left), Cells(_slopes, step.Right), false);
        }
    }

    // Every table is used in exactly one product, so a slope may be scaled freely: only ratios within it matter.
    private static void Spread(TableProduct product, Span<double> outcome, Span<double> other, Span<double> target, bool ofLeft)
    {
        product.Differentiate(outcome, other, target, ofLeft);
        Normalise(target);
    }

    /// <summary>Gives back what was taken out of the cells: 1 while they are of a size that loses nothing.</summary>
    private static double Normalise(Span<double> cells)
    {
        var largest = 0.0;
        foreach (var cell in cells)
            if (cell > largest) largest = cell;
        if (largest is 0) return 0;
        // A lone number is an answer, or a factor of it, and nothing reads it again but the logarithm.
        if (cells.Length > 1 && largest is > SmallEnough and < 1 / SmallEnough) return 1;
        var factor = 1 / largest;
        for (var i = 0; i < cells.Length; i++) cells[i] *= factor;
        return largest;
    }
}
