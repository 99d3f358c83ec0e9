using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Units;
using Failwise.Yaml;

namespace Failwise.Cases;

/// <summary>Finds the limit tables of a case: the files it names or has beside it, example tables it names, and the shop's own.</summary>
internal sealed class LimitTables(KnowledgeBase knowledge, ProblemList problems, string file)
{
    /// <summary>The limit file that is used without being named.</summary>
    public const string FileInFolder = "limits.yaml";

    /// <summary>The tables, the nearest to the case first.</summary>
    public IReadOnlyList<IReadOnlyList<LimitRow>> Read(MapNode map, string? limitsFile)
    {
        List<IReadOnlyList<LimitRow>> tables = [], examples = [];
        string folder = Path.GetDirectoryName(file) ?? "";
        ScalarNode[] named = [.. map.Scalars("limits")];
        foreach (ScalarNode name in named)
        {
            if (knowledge.Limits.TryGetValue(name.Text.Trim(), out LimitSet? set))
            {
                examples.Add(set.Rows);
            }
            else if (PathOf(name, folder) is { } path)
            {
                tables.Add(LimitReader.ReadFile(knowledge, path, path.Replace('\\', '/'), problems));
            }
        }

        string beside = Path.Combine(folder, FileInFolder);
        bool isNamed = Array.Exists(named, n => n.Text.Trim() == FileInFolder);
        if (!isNamed && Path.GetFileName(file) == CaseReader.FileInFolder && File.Exists(beside))
        {
            tables.Add(LimitReader.ReadFile(knowledge, beside, beside.Replace('\\', '/'), problems));
        }

        if (limitsFile is not null)
        {
            tables.Add(LimitReader.ReadFile(knowledge, limitsFile, limitsFile.Replace('\\', '/'), problems));
        }

        return [.. tables, .. examples];
    }

    /// <summary>A row must measure what the reading measures that it is held against.</summary>
    public void Check(IReadOnlyList<Measurement> readings, IReadOnlyList<IReadOnlyList<LimitRow>> tables)
    {
        foreach (Measurement m in readings.Where(m => m.Limit is null))
        {
            Quantity read = m.Spots.Count > 0 ? m.Spots[0].Value : QuantityParser.Reread(m.Value);
            if (LimitLookup.Find(knowledge, tables, m.Part, m.Quantity) is { } row
                && new[] { row.Min, row.Max }.OfType<string>().Select(QuantityParser.Reread).FirstOrDefault(l => l.Unit.Dimension != read.Unit.Dimension) is { } limit)
            {
                problems.Error("FW030", row.At, $"the limit '{Shape.Short(limit.Text)}' cannot be compared with the reading '{read.Text}': they measure different things.");
            }
        }
    }

    private string? PathOf(ScalarNode name, string folder)
    {
        string text = name.Text.Trim();
        bool plain = text.Length > 0 && text.IndexOfAny(Path.GetInvalidPathChars()) < 0 && !text.Split('/', '\\').Contains("..") && !Path.IsPathRooted(text);
        if (plain && File.Exists(Path.Combine(folder, text)))
        {
            return Path.Combine(folder, text);
        }

        string hint = Suggest.Nearest(text, [.. knowledge.Limits.Keys]);
        problems.Error("FW062", name.At, plain
            ? $"'{Shape.Short(text)}' is neither a file in the case folder nor an example table.{hint}"
            : $"'{Shape.Short(text)}' lies outside the case folder; give it with --limits, or copy it into the folder.");
        return null;
    }
}

/// <summary>Looks a limit up in the tables of a case.</summary>
internal static class LimitLookup
{
    /// <summary>The row for this quantity of this part: the nearest table first, in a table the narrowest part first.</summary>
    public static LimitRow? Find(KnowledgeBase knowledge, IReadOnlyList<IReadOnlyList<LimitRow>> tables, string part, string quantity)
    {
        foreach (IReadOnlyList<LimitRow> table in tables)
        {
            LimitRow? best = knowledge.PartLine(part)
                .Select(line => table.FirstOrDefault(r => r.Part == line && r.Quantity == quantity)).FirstOrDefault(r => r is not null);
            if (best is not null)
            {
                return best;
            }
        }

        return null;
    }
}
