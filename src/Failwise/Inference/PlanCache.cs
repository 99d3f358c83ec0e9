namespace Failwise.Inference;

/// <summary>
/// Elimination plans by the structure of what they eliminate. The many small questions of an explanation ask the same tables with other
/// numbers in them; the plan depends on the tables' variables alone. For one thread.
/// </summary>
internal sealed class PlanCache
{
    private const int Most = 64;
    private readonly Dictionary<int, List<(int[] Structure, EliminationPlan Plan)>> _known = [];
    private readonly List<int> _structure = [];
    private int _count;

    public EliminationPlan PlanFor(FactorGraph graph)
    {
        Describe(graph);
        var hash = new HashCode();
        foreach (var number in _structure) hash.Add(number);
        var key = hash.ToHashCode();
        if (!_known.TryGetValue(key, out var same)) _known[key] = same = [];
        foreach (var (structure, plan) in same)
            if (structure.AsSpan().SequenceEqual(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_structure))) return plan;

        var made = EliminationPlan.Make(graph);
        if (_count++ < Most) same.Add((_structure.ToArray(), made));
        return made;
    }

    private void Describe(FactorGraph graph)
    {
        _structure.Clear();
        for (var v = 0; v < graph.VariableCount; v++) _structure.Add(graph.IsHub(v) ? 1 : 0);
        foreach (var table in graph.Tables)
        {
            _structure.Add(-1 - table.Variables.Length);
            _structure.AddRange(table.Variables);
            _structure.Add((int)table.Accumulators);
            _structure.Add((int)table.Caps);
        }
    }
}
