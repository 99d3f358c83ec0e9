namespace Failwise.Inference;

/// <summary>Splits a factor graph into parts that share no variable; each is solved, and if need be approximated, on its own.</summary>
internal static class GraphParts
{
    /// <param name="Graph">The part, with its variables numbered anew.</param>
    /// <param name="Original">The whole graph's number of each of the part's variables.</param>
    internal sealed record Part(FactorGraph Graph, int[] Original);

    public static IReadOnlyList<Part> Split(FactorGraph whole)
    {
        var leader = FindLeaders(whole);
        var parts = new List<Part>();
        var partOf = new int[whole.VariableCount];
        var local = new int[whole.VariableCount];
        var members = new List<List<int>>();
        for (var v = 0; v < leader.Length; v++)
        {
            if (leader[v] == v)
            {
                partOf[v] = members.Count;
                members.Add([]);
            }

            partOf[v] = partOf[leader[v]];
            local[v] = members[partOf[v]].Count;
            members[partOf[v]].Add(v);
        }

        foreach (var list in members) parts.Add(new Part(CopyVariables(whole, list), list.ToArray()));
        foreach (var table in whole.Tables)
        {
            var variables = Array.ConvertAll(table.Variables, v => local[v]);
            parts[partOf[table.Variables[0]]].Graph.Add(table with { Variables = variables });
        }

        return parts;
    }

    private static FactorGraph CopyVariables(FactorGraph whole, List<int> members)
    {
        var graph = new FactorGraph();
        for (var i = 0; i < members.Count; i++)
        {
            if (whole.IsHub(members[i]))
            {
                graph.AddHub();
                continue;
            }

            graph.AddVariable();
            var own = whole.OwnCells(members[i]);
            graph.MultiplyOwn(i, own[0], own[1]);
            graph.AddLog(whole.OwnLog(members[i]));
        }

        return graph;
    }

    // The smallest number of a part leads it, so that parts come out in a fixed order.
    private static int[] FindLeaders(FactorGraph whole)
    {
        var leader = new int[whole.VariableCount];
        for (var v = 0; v < leader.Length; v++) leader[v] = v;
        foreach (var table in whole.Tables)
        {
            for (var i = 1; i < table.Variables.Length; i++)
            {
                var a = Find(leader, table.Variables[0]);
                var b = Find(leader, table.Variables[i]);
                leader[Math.Max(a, b)] = Math.Min(a, b);
            }
        }

        for (var v = 0; v < leader.Length; v++) leader[v] = Find(leader, v);
        return leader;
    }

    private static int Find(int[] leader, int v)
    {
        while (leader[v] != v)
        {
            leader[v] = leader[leader[v]];
            v = leader[v];
        }

        return v;
    }
}
