using Failwise.Calculations;
using Failwise.Problems;
using Failwise.Yaml;
using Shape = Failwise.Yaml.Shape;

namespace Failwise.Cases;

/// <summary>Reads the figures that a case gives for calculations, each checked against the range of the formula that takes it.</summary>
internal sealed class NumbersReader(ProblemList problems, CaseBuilder words)
{
    /// <summary>The requests whose sheet is known, in the order of the case.</summary>
    public IReadOnlyList<NumberRequest> Read(MapNode map)
    {
        List<NumberRequest> requests = [];
        foreach (MapNode entry in map.Groups("numbers"))
        {
            string? part = words.Part(entry);
            if (FindSheet(entry) is { } sheet && entry["given"] is MapNode given)
            {
                Dictionary<string, string> figures = ReadGiven(sheet, given);
                requests.Add(new NumberRequest(
                    requests.Count + 1, sheet.Id, part, part is null ? [] : words.Places(entry, part), entry.Text("when"), figures, entry.Text("note"), entry.At));
            }
        }

        return requests;
    }

    private Sheet? FindSheet(MapNode entry)
    {
        if (entry["work-out"] is not ScalarNode name)
        {
            return null;
        }

        Sheet? sheet = SheetCatalog.Find(Suggest.Fold(name.Text));
        if (sheet is null)
        {
            string[] known = [.. SheetCatalog.All.Select(s => s.Id), .. CalculationCatalog.All.Select(c => c.Id)];
            problems.Error("FW063", name.At, $"unknown calculation '{Shape.Short(name.Text)}'.{Suggest.Nearest(name.Text, known)}");
        }

        return sheet;
    }

    private Dictionary<string, string> ReadGiven(Sheet sheet, MapNode given)
    {
        Dictionary<string, string> figures = new(StringComparer.Ordinal);
        IReadOnlyList<(string Name, CalculationInput Input)> known = sheet.Givens;
        foreach (MapEntry entry in given.Entries)
        {
            string name = Suggest.Fold(entry.Key.Text);
            CalculationInput[] inputs = [.. known.Where(k => k.Name == name).Select(k => k.Input)];
            if (inputs.Length == 0)
            {
                string[] names = [.. known.Select(k => k.Name).Distinct(StringComparer.Ordinal)];
                string hint = Suggest.BestMatch(name, names) is { } near ? $" Did you mean '{near}'?" : $" It takes {string.Join(", ", names)}.";
                problems.Error("FW064", entry.Key.At, $"'{sheet.Id}' takes no '{Shape.Short(entry.Key.Text)}'.{hint}");
                continue;
            }

            string text = TextOf(entry.Value);
            Check(inputs, text, entry.Value);
            figures[name] = text;
        }

        return figures;
    }

    private void Check(CalculationInput[] inputs, string text, Node node)
    {
        string? wrong = inputs.SelectMany(i => InputReader.ProblemsOf(i, text)).FirstOrDefault();
        if (wrong is not null)
        {
            Node at = node is ListNode list
                ? Flat(list).FirstOrDefault(n => inputs.SelectMany(i => InputReader.ProblemsOf(i, n.Text)).Any()) ?? node : node;
            problems.Error(wrong.Contains(" comma", StringComparison.Ordinal) ? "FW011" : "FW065", at.At, Shape.Short(wrong, 200));
        }
    }

    private static IEnumerable<ScalarNode> Flat(ListNode list) =>
        list.Items.SelectMany(i => i is ListNode inner ? Flat(inner) : i is ScalarNode scalar ? [scalar] : []);

    /// <summary>A list becomes readings between semicolons; a list of lists, planes between bars.</summary>
    private static string TextOf(Node node) => node switch
    {
        ScalarNode scalar => scalar.Text.Trim(),
        ListNode { Items: [ListNode, ..] } planes => string.Join(" | ", planes.Items.Select(TextOf)),
        ListNode list => string.Join("; ", list.Items.Select(TextOf)),
        _ => "",
    };
}
