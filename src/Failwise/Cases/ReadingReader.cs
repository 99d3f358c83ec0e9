using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Units;
using Failwise.Yaml;

namespace Failwise.Cases;

/// <summary>Reads the readings of a case: a single value, several readings at one place, or a table of places.</summary>
internal sealed class ReadingReader(KnowledgeBase knowledge, ProblemList problems, CaseBuilder words)
{
    /// <summary>The quantity of a table that names none.</summary>
    public const string Diameter = "diameter";

    /// <summary>The measurements of one entry: one, or one for each place of its table.</summary>
    public IEnumerable<Measurement> Read(MapNode map)
    {
        if (words.Part(map) is not { } part)
        {
            return [];
        }

        Unit? unit = UnitOf(map);
        CheckQuantityWord(map);
        Measurement all = new(
            Suggest.Fold(map.Text("quantity") ?? Diameter), part, words.Places(map, part), words.On(map), "", ReadLimit(map["limit"] as MapNode, unit),
            map.Text("with"), (map["uncertainty"] as ScalarNode)?.Text.Trim(), map.Text("note"), map.At)
        {
            New = ReadNew(map, unit),
            FormLimits = ReadFormLimits(map, unit),
        };
        all = all with { Uncertainty = ReadText(map["uncertainty"] as ScalarNode, unit) };
        Measurement[] read = map["table"] is MapNode table ? [.. ReadTable(table, all, unit)]
            : map["readings"] is { } several ? [WithSpots(all, several, unit)]
            : [all with { Value = ReadText(map["value"] as ScalarNode, unit) ?? "" }];
        read = [.. read.Where(m => m.Value.Length > 0)];
        Array.ForEach(read, m => CheckComparable(m, map));
        return read;
    }

    private IEnumerable<Measurement> ReadTable(MapNode table, Measurement all, Unit? unit)
    {
        foreach (MapEntry row in table.Entries)
        {
            MapNode at = new(row.Key.At, [new MapEntry(new ScalarNode(row.Key.At, "at", false), row.Key)]);
            Measurement here = all with { Places = words.Places(at, all.Part), At = row.Key.At };
            yield return row.Value is ScalarNode one ? here with { Value = ReadText(one, unit) ?? "" } : WithSpots(here, row.Value, unit);
        }
    }

    private Measurement WithSpots(Measurement here, Node several, Unit? unit)
    {
        List<Spot> spots = [];
        foreach ((string plane, string direction, ScalarNode node) in SpotNodes(several))
        {
            if (LimitCheck.Parse(node, problems, unit) is { } value)
            {
                spots.Add(new Spot(plane, direction, value, node.At));
            }
        }

        string text = string.Join(" | ", spots.GroupBy(s => s.Plane, StringComparer.Ordinal).Select(p => string.Join(", ", p.Select(s => s.Value.Text))));
        return here with { Value = text, Spots = spots };
    }

    /// <summary>A group {a-x: .., a-y: .., b-x: ..}, a list of one plane, or a list of lists, a plane each.</summary>
    private static IEnumerable<(string Plane, string Direction, ScalarNode Node)> SpotNodes(Node several)
    {
        if (several is MapNode map)
        {
            foreach (MapEntry entry in map.Entries)
            {
                string[] name = entry.Key.Text.Split('-', 2);
                if (entry.Value is ScalarNode node)
                {
                    yield return (name[0], name.Length > 1 ? name[1] : "", node);
                }
            }

            yield break;
        }

        // A scalar here is of the wrong form, which has been reported.
        IReadOnlyList<Node> planes = several is ListNode lists ? lists.Items : [];
        for (int i = 0; i < planes.Count; i++)
        {
            bool nested = planes[i] is ListNode;
            IReadOnlyList<Node> directions = planes[i] is ListNode list ? list.Items : [planes[i]];
            for (int j = 0; j < directions.Count; j++)
            {
                if (directions[j] is ScalarNode node)
                {
                    yield return (nested ? $"{i + 1}" : "1", nested ? $"{j + 1}" : $"{i + 1}", node);
                }
            }
        }
    }

    private Unit? UnitOf(MapNode map)
    {
        if (map["unit"] is not ScalarNode written)
        {
            return null;
        }

        Unit? unit = UnitTable.Find(written.Text);
        if (unit is null)
        {
            problems.Error("FW030", written.At, $"unknown unit '{Shape.Short(written.Text)}'.{(UnitTable.Nearest(written.Text) is { } near ? $" Did you mean '{near}'?" : "")}");
        }

        return unit;
    }

    private string? ReadText(ScalarNode? node, Unit? unit) => node is null ? null : LimitCheck.Parse(node, problems, unit)?.Text;

    private Limit? ReadLimit(MapNode? limit, Unit? unit)
    {
        if (limit is null)
        {
            return null;
        }

        LimitCheck.Check(limit, problems, unit);
        return new Limit(Quiet(limit["min"], unit), Quiet(limit["max"], unit), limit.Text("from"));
    }

    private Limit? ReadNew(MapNode map, Unit? unit)
    {
        if (map["new"] is null)
        {
            return null;
        }

        LimitCheck.Check(new MapNode(map.At, [.. map.Entries.Where(e => e.Key.Text == "new")]), problems, unit);
        return map["new"] is MapNode span
            ? new Limit(Quiet(span["min"], unit), Quiet(span["max"], unit), null)
            : new Limit(Quiet(map["new"], unit), Quiet(map["new"], unit), null);
    }

    private Dictionary<string, Limit> ReadFormLimits(MapNode map, Unit? unit)
    {
        Dictionary<string, Limit> limits = new(StringComparer.Ordinal);
        foreach (string form in new[] { "taper", "out-of-round" })
        {
            if (ReadLimit(map[form] as MapNode, unit) is { } limit)
            {
                limits[form] = limit with { From = limit.From ?? (map["limit"] as MapNode)?.Text("from") };
            }
        }

        return limits;
    }

    // The check has reported what cannot be read.
    private static string? Quiet(Node? node, Unit? unit) =>
        node is ScalarNode scalar && QuantityParser.TryParse(scalar.Text, out Quantity? quantity, out _, unit) ? quantity.Text : null;

    /// <summary>All values of one entry must measure the same thing, and a diameter must be a length.</summary>
    private void CheckComparable(Measurement m, MapNode map)
    {
        Quantity[] values = m.Spots.Count > 0 ? [.. m.Spots.Select(s => s.Value)] : [QuantityParser.Reread(m.Value)];
        Quantity first = values[0];
        foreach (Spot spot in m.Spots.Where(s => s.Value.Unit.Dimension != first.Unit.Dimension))
        {
            problems.Error("FW030", spot.At, $"'{Shape.Short(spot.Value.Text)}' cannot be compared with the reading '{first.Text}': they measure different things.");
        }

        if (m.Quantity == Diameter && (first.Unit.Dimension != Dimension.Length || values.Any(v => v.Value <= 0)))
        {
            problems.Error("FW030", m.At, $"'{Shape.Short(m.Value)}' is no diameter; a length above 0 is expected.");
        }

        foreach ((string key, Node? node) in OthersOf(map))
        {
            if (node is ScalarNode scalar && Quiet(scalar, first.Unit) is { } text && QuantityParser.Reread(text).Unit.Dimension != first.Unit.Dimension)
            {
                problems.Error("FW030", scalar.At, $"'{Shape.Short(scalar.Text)}' cannot be compared with the reading '{first.Text}': they measure different things.");
            }
        }
    }

    private static IEnumerable<(string Key, Node? Node)> OthersOf(MapNode map)
    {
        yield return ("uncertainty", map["uncertainty"]);
        foreach (string key in new[] { "limit", "taper", "out-of-round", "new" })
        {
            yield return (key, (map[key] as MapNode)?["min"] ?? map[key]);
            yield return (key, (map[key] as MapNode)?["max"]);
        }
    }

    /// <summary>A misspelt quantity would be read and never be asked about.</summary>
    private void CheckQuantityWord(MapNode map)
    {
        if (map["quantity"] is ScalarNode written && !knowledge.Quantities.Contains(Suggest.Fold(written.Text))
            && Suggest.BestMatch(written.Text, knowledge.Quantities) is { } near)
        {
            problems.Warning("FW066", written.At, $"no rule asks about '{Shape.Short(written.Text)}'. Did you mean '{near}'?");
        }
    }
}
