namespace Failwise.Inference;

/// <summary>
/// A table over two-state variables before any order is chosen: bit i of a cell's index is the state of Variables[i].
/// A noisy-OR gate's hub variable ("none / some cause fired yet") appears in a table either as an accumulator, which combines by OR,
/// or as the cap that reads the finished gate; every other variable is plain.
/// </summary>
/// <param name="Variables">Distinct variable numbers.</param>
/// <param name="Cells">2^n values, none negative.</param>
/// <param name="Accumulators">Bit i set: Variables[i] is a hub in its accumulating role.</param>
/// <param name="Caps">Bit i set: Variables[i] is a hub, and this table is its one cap.</param>
internal sealed record FactorTable(int[] Variables, double[] Cells, uint Accumulators = 0, uint Caps = 0);

/// <summary>Variables, tables and a constant whose product, summed over the variables, is P(evidence).</summary>
internal sealed class FactorGraph
{
    private static readonly double[] Hub = [];

    private readonly List<double[]> _ownCells = [];
    private readonly List<double> _ownLog = [];

    /// <summary>Natural logarithm of everything that does not depend on a variable; minus infinity for impossible evidence.</summary>
    public double LogConstant { get; private set; }

    public List<FactorTable> Tables { get; } = [];

    public int VariableCount => _ownCells.Count;

    /// <summary>The one-variable factor of each variable; its derivative gives the variable's posterior.</summary>
    public double[] OwnCells(int variable) => _ownCells[variable];

    /// <summary>Natural logarithm of what scaling took out of the variable's own factor.</summary>
    public double OwnLog(int variable) => _ownLog[variable];

    public int AddVariable()
    {
        _ownCells.Add([1, 1]);
        _ownLog.Add(0);
        return _ownCells.Count - 1;
    }

    /// <summary>A gate hub: a variable that has no factor, and no posterior, of its own.</summary>
    public int AddHub()
    {
        _ownCells.Add(Hub);
        _ownLog.Add(0);
        return _ownCells.Count - 1;
    }

    public bool IsHub(int variable) => ReferenceEquals(_ownCells[variable], Hub);

    public void MultiplyConstant(double factor) => LogConstant += Math.Log(factor);

    public void AddLog(double log) => LogConstant += log;

    public void MultiplyOwn(int variable, double ifAbsent, double ifPresent)
    {
        var own = _ownCells[variable];
        own[0] *= ifAbsent;
        own[1] *= ifPresent;
        // A cause with hundreds of negative findings would otherwise sink below the smallest double.
        var largest = Math.Max(own[0], own[1]);
        if (largest is > 1e-100 or 0) return;
        own[0] /= largest;
        own[1] /= largest;
        _ownLog[variable] += Math.Log(largest);
    }

    public void Add(FactorTable table) => Tables.Add(table);
}
