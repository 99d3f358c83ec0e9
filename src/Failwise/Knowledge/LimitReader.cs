using Failwise.Problems;
using Failwise.Units;
using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>Reads the rows of a limit file whose form has been checked.</summary>
internal static class LimitReader
{
    /// <summary>Reads a shop's own limit file, with its words resolved.</summary>
    /// <param name="path">The file.</param>
    /// <param name="shownAs">The name to show in problems.</param>
    public static IReadOnlyList<LimitRow> ReadFile(KnowledgeBase knowledge, string path, string shownAs, ProblemList problems)
    {
        ProblemList mine = new();
        Node? root = YamlFile.Read(path, shownAs, mine);
        if (root is not null)
        {
            LimitShapes.File.Check(root, mine);
        }

        problems.AddRange(mine.All);
        return root is MapNode map ? Rows(map, example: false, problems, part => Resolve(knowledge, part, problems)) : [];
    }

    /// <summary>The rows of a table.</summary>
    /// <param name="resolve">Gives the id of the part that is meant, or null after reporting that there is none.</param>
    public static IReadOnlyList<LimitRow> Rows(MapNode map, bool example, ProblemList problems, Func<ScalarNode, string?> resolve)
    {
        List<LimitRow> rows = [];
        foreach (MapNode row in map.Groups("limits"))
        {
            if (row["part"] is ScalarNode written && resolve(written) is { } part && row.Text("quantity") is { } quantity)
            {
                (string? newMin, string? newMax) = New(row);
                string from = row.Text("from") ?? map.Text("from") ?? "";
                rows.Add(new LimitRow(
                    part, Suggest.Fold(quantity), Readable(row.Text("min")), Readable(row.Text("max")), Readable(newMin), Readable(newMax), from, example, row.At));
            }

            LimitCheck.Check(row, problems);
        }

        return rows;
    }

    // What cannot be read is reported by the check of the row.
    private static string? Readable(string? text) => QuantityParser.TryParse(text, out _, out _) ? text : null;

    /// <summary>The span of a new part under the key new.</summary>
    public static (string? Min, string? Max) New(MapNode map) => map["new"] switch
    {
        ScalarNode one => (one.Text.Trim(), one.Text.Trim()),
        MapNode span => (span.Text("min"), span.Text("max")),
        _ => (null, null),
    };

    private static string? Resolve(KnowledgeBase knowledge, ScalarNode written, ProblemList problems)
    {
        string? id = knowledge.PartWords.Find(written.Text);
        if (id is null)
        {
            problems.Error("FW012", written.At, $"unknown part '{Shape.Short(written.Text)}'.{Suggest.Nearest(written.Text, knowledge.PartWords.Words)}");
        }

        return id;
    }
}

/// <summary>Checks that the values of a limit can be read and agree with each other.</summary>
internal static class LimitCheck
{
    /// <summary>Checks min, max and new of one limit.</summary>
    /// <param name="unit">Unit of a number written without one; null refuses such a number.</param>
    public static void Check(MapNode limit, ProblemList problems, Unit? unit = null)
    {
        ScalarNode?[] nodes =
        [
            limit["min"] as ScalarNode, limit["max"] as ScalarNode,
            .. limit["new"] is MapNode span ? new[] { span["min"] as ScalarNode, span["max"] as ScalarNode } : [limit["new"] as ScalarNode, null],
        ];
        Quantity?[] values = [.. nodes.Select(n => n is null ? null : Parse(n, problems, unit))];
        Quantity? first = values.FirstOrDefault(v => v is not null);
        for (int i = 0; i < nodes.Length; i++)
        {
            if (values[i] is { } value && value.Unit.Dimension != first!.Unit.Dimension)
            {
                problems.Error("FW030", nodes[i]!.At, $"'{Shape.Short(value.Text)}' cannot be compared with '{first.Text}': they measure different things.");
                return;
            }
        }

        Ordered(values[0], values[1], nodes[0], "the lower limit", "the upper limit", problems);
        Ordered(values[2], values[3], nodes[2], "the least new size", "the most new size", problems);
        if (values[1] is { } max && (values[3] ?? values[2]) is { } newMax && SlipDetector.LimitInsideNew(max, newMax) is { } slip)
        {
            problems.Warning("FW060", nodes[1]!.At, slip.Question);
        }
    }

    /// <summary>Reads a value, or says why it cannot be read.</summary>
    public static Quantity? Parse(ScalarNode node, ProblemList problems, Unit? unit = null)
    {
        if (QuantityParser.TryParse(node.Text, out Quantity? quantity, out string? reason, unit))
        {
            return quantity;
        }

        problems.Error(Numbers.HasCommaDecimal(node.Text) ? "FW011" : "FW030", node.At, Shape.Short(reason));
        return null;
    }

    private static void Ordered(Quantity? low, Quantity? high, ScalarNode? at, string lowName, string highName, ProblemList problems)
    {
        if (low is not null && high is not null && low.In(high.Unit.Symbol) > high.Value)
        {
            problems.Error("FW061", at!.At, $"{lowName} {low.Text} is above {highName} {high.Text}: one of them is a slip.");
        }
    }
}
