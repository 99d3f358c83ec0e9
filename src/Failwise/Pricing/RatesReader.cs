using System.Globalization;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Pricing;

/// <summary>What reading a rate file gave: the rates when there were no errors, and every problem.</summary>
public sealed record RatesReading(ShopRates? Rates, IReadOnlyList<Problem> Problems);

/// <summary>Reads a shop's rate file.</summary>
public static class RatesReader
{
    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Amount = new TextShape("an amount, as 30 or 25-40", "^[0-9]{1,9}(\\.[0-9]{1,4})?(-[0-9]{1,9}(\\.[0-9]{1,4})?)?$");

    /// <summary>The form of a rate file; docs/schema/rates.schema.json is printed from it.</summary>
    internal static readonly GroupShape Form = new("a rate file", null,
        new("currency", Word, true, "The currency, as the shop writes it."),
        new("labour", Amount, true, "Money for an hour: 30, or 25-40."),
        new("labour-for", new OpenGroupShape(Amount), false, "Money for an hour of one sort of work: machine, clean, measure ..."),
        new("hours", new NumberShape(0.1, 10), false, "How this shop's hours compare with those of the rules: 1.2 is a fifth longer."),
        new("work", new OpenGroupShape(Amount), false, "Fixed price of a piece of work, by its id."),
        new("parts", new OpenGroupShape(Amount), false, "Price of one, by part: an id, its name, or what the shop calls it."),
        new("used-up", new OpenGroupShape(Amount), false, "Money for what a job uses up, by its name in the plan."),
        new("note", new TextShape("a sentence"), false, "Where the figures come from, and of what date."));

    /// <summary>Reads a rate file; every word in it must be known to <paramref name="knowledge"/>.</summary>
    public static RatesReading Read(KnowledgeBase knowledge, string path)
    {
        ProblemList problems = new();
        Node? root = YamlFile.Read(path, path.Replace('\\', '/'), problems);
        return root is null ? new RatesReading(null, problems.Sorted()) : Read(knowledge, root, problems);
    }

    internal static RatesReading Read(KnowledgeBase knowledge, Node root, ProblemList problems)
    {
        ProblemList form = new();
        Form.Check(root, form);
        problems.AddRange(form.All);
        if (root is not MapNode map)
        {
            return new RatesReading(null, problems.Sorted());
        }

        string[] usedUp = [.. knowledge.Work.Values.SelectMany(w => w.Materials).Where(m => m.UsedUp || m.Part is null).Select(m => m.Item).Distinct().Order(StringComparer.Ordinal)];
        ShopRates rates = new(
            map.Text("currency") ?? "", Amounts(map["labour"], problems), Table(map, "labour-for", key => WorkShapes.Deeds.Contains(key) ? key : null, "FW008", "sort of work", WorkShapes.Deeds, problems),
            map.Number("hours") ?? 1, Table(map, "work", key => knowledge.Work.ContainsKey(key) ? key : null, "FW021", "work", knowledge.Work.Keys, problems),
            Table(map, "parts", knowledge.PartWords.Find, "FW012", "part", knowledge.PartWords.Words, problems),
            Table(map, "used-up", key => Array.Find(usedUp, u => Suggest.Fold(u) == Suggest.Fold(key)), "FW074", "thing that work uses up", usedUp, problems));
        return new RatesReading(problems.HasErrors ? null : rates, problems.Sorted());
    }

    private static SortedDictionary<string, Span> Table(
        MapNode map, string group, Func<string, string?> find, string code, string what, IEnumerable<string> known, ProblemList problems)
    {
        SortedDictionary<string, Span> table = new(StringComparer.Ordinal);
        foreach (MapEntry entry in (map[group] as MapNode)?.Entries ?? [])
        {
            if (find(entry.Key.Text.Trim()) is not { } id)
            {
                problems.Error(code, entry.Key.At, $"unknown {what} '{Shape.Short(entry.Key.Text)}'.{Suggest.Nearest(entry.Key.Text, [.. known])}");
            }
            else if (!table.TryAdd(id, Amounts(entry.Value, problems)))
            {
                problems.Error("FW004", entry.Key.At, $"'{Shape.Short(entry.Key.Text)}' is priced twice; keep one.");
            }
        }

        return table;
    }

    /// <summary>One amount is a span without width.</summary>
    private static Span Amounts(Node? node, ProblemList problems)
    {
        if (node is not ScalarNode { Text: { } text } || text.Split('-') is not { Length: 1 or 2 } ends
            || !double.TryParse(ends[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double least)
            || !double.TryParse(ends[^1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double most))
        {
            return Span.Zero;
        }

        if (most < least)
        {
            problems.Error("FW071", node.At, $"the span {text} runs backwards; write the smaller figure first: {ends[^1]}-{ends[0]}.");
        }

        return new Span(least, most);
    }
}
