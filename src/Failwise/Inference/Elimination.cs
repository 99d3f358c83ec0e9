using System.Buffers;

namespace Failwise.Inference;

/// <summary>
/// Runs an elimination plan forwards for P(evidence) and, when posteriors are wanted, once backwards: P(evidence) is linear in every
/// table, so its derivative with respect to a variable's own factor is that variable's joint with the evidence. One backward sweep
/// gives all posteriors ("A differential approach to inference in Bayesian networks", Journal of the ACM, 2003).
/// </summary>
internal sealed class Elimination
{
    private readonly FactorGraph _graph;
    private readonly EliminationPlan _plan;
    private readonly int[] _offset;
    private readonly int _total;

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
    }

    /// <summary>
    /// Natural logarithm of the graph's sum; P(state 1) of each variable goes to <paramref name="marginals"/> unless that is empty.
    /// The marginals are left alone when the sum is zero.
    /// </summary>
    public static double Run(FactorGraph graph, EliminationPlan plan, Span<double> marginals)
    {
        if (double.IsNegativeInfinity(graph.LogConstant)) return graph.LogConstant;
        var run = new Elimination(graph, plan);
        var values = ArrayPool<double>.Shared.Rent(run._total);
        try
        {
            values.AsSpan(0, run._total).Clear();
            var log = run.Forward(values);
            if (marginals.Length > 0 && !double.IsNegativeInfinity(log)) run.Backward(values, marginals);
            return log;
        }
        finally
        {
            ArrayPool<double>.Shared.Return(values);
        }
    }

    private int Size(int table) => 1 << _plan.Shapes[table].Variables.Length;

    private Span<double> Cells(double[] arena, int table) => arena.AsSpan(_offset[table], Size(table));

    private double Forward(double[] values)
    {
        for (var t = 0; t < _graph.Tables.Count; t++)
        {
            var table = _plan.FirstTable + t;
            _plan.FillCells(_graph.Tables[t], _plan.Shapes[table], Cells(values, table));
        }

        var log = _graph.LogConstant;
        for (var v = 0; v < _plan.VariableCount; v++)
        {
            if (_plan.OwnTable(v) >= 0) _graph.OwnCells(v).CopyTo(Cells(values, _plan.OwnTable(v)));
            log += _graph.OwnLog(v);
        }

        foreach (var (step, product) in _plan.CompiledSteps())
        {
            // The scalar that lets a lone table be summed out like any other.
            if (_plan.Shapes[step.Right].Variables.Length == 0) Cells(values, step.Right)[0] = 1;
            var result = Cells(values, step.Result);
            product.Multiply(Cells(values, step.Left), Cells(values, step.Right), result);
            var scale = Normalise(result);
            if (scale == 0) return double.NegativeInfinity;
            log += Math.Log(scale);
        }

        return log;
    }

    private void Backward(double[] values, Span<double> marginals)
    {
        var slopes = ArrayPool<double>.Shared.Rent(_total);
        try
        {
            slopes.AsSpan(0, _total).Clear();
            SweepBack(values, slopes);
            for (var v = 0; v < _plan.VariableCount; v++)
            {
                if (_plan.OwnTable(v) < 0) continue;
                var own = Cells(values, _plan.OwnTable(v));
                var slope = Cells(slopes, _plan.OwnTable(v));
                var absent = own[0] * slope[0];
                var present = own[1] * slope[1];
                marginals[v] = present / (absent + present);
            }
        }
        finally
        {
            ArrayPool<double>.Shared.Return(slopes);
        }
    }

    private void SweepBack(double[] values, double[] slopes)
    {
        var steps = _plan.CompiledSteps();
        for (var s = steps.Count - 1; s >= 0; s--)
        {
            var (step, product) = steps[s];
            var outcome = Cells(slopes, step.Result);
            if (outcome.Length == 1) outcome[0] = 1;
            if (_plan.NeedsSlope(step.Left))
                Spread(product, outcome, Cells(values, step.Right), Cells(slopes, step.Left), true);
            if (_plan.NeedsSlope(step.Right))
                Spread(product, outcome, Cells(values, step.Left), Cells(slopes, step.Right), false);
        }
    }

    // Every table is used in exactly one product, so a slope may be scaled freely: only ratios within it matter.
    private static void Spread(TableProduct product, Span<double> outcome, Span<double> other, Span<double> target, bool ofLeft)
    {
        product.Differentiate(outcome, other, target, ofLeft);
        Normalise(target);
    }

    private static double Normalise(Span<double> cells)
    {
        var largest = 0.0;
        foreach (var cell in cells)
            if (cell > largest) largest = cell;
        if (largest is 0 or 1) return largest;
        var factor = 1 / largest;
        for (var i = 0; i < cells.Length; i++) cells[i] *= factor;
        return largest;
    }
}
