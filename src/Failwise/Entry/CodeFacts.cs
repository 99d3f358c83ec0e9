using System.Text;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>Reads entries as a case of their own on a given machine, for a question that is not to be written anywhere.</summary>
internal static class CodeFacts
{
    /// <summary>The facts of the entries; no case when the machine cannot have them.</summary>
    public static CaseReading Read(KnowledgeBase knowledge, Machine machine, IReadOnlyList<CaseEntry> entries, string shownAs)
    {
        StringBuilder text = new($"title: assumed\nmachine: {{kind: [{string.Join(", ", machine.Kinds)}]");
        text.Append(machine.Cylinders is { } cylinders ? $", cylinders: {cylinders}" : "").Append(machine.Mains is { } mains ? $", mains: {mains}" : "").Append("}\n");
        foreach (IGrouping<string, CaseEntry> section in entries.GroupBy(e => e.Section, StringComparer.Ordinal))
        {
            text.Append(section.Key).Append(":\n");
            foreach (CaseEntry entry in section)
            {
                text.Append("  - ").Append(entry.Yaml).Append('\n');
            }
        }

        ProblemList problems = new();
        return YamlFile.Parse(text.ToString(), shownAs, problems) is { } root
            ? CaseReader.Read(knowledge, root, shownAs, problems)
            : new CaseReading(null, problems.Sorted());
    }
}
