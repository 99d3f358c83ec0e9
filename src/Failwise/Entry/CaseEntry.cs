using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>Something to be added to a case: a list of the case file and one item in YAML.</summary>
/// <param name="Section">observations, history, symptoms, readings, not-looked-at, debris or photos.</param>
/// <param name="Yaml">The item on one line, such as <c>{part: oil-pump, see: sound}</c>.</param>
/// <param name="At">Where the person wrote it, for messages.</param>
public sealed record CaseEntry(string Section, string Yaml, Location At)
{
    private static readonly string[] Noted = ["observations", "debris", "readings"];

    /// <summary>The entry with more in its note; entries of lists that have no notes stay as they are.</summary>
    internal CaseEntry WithNote(string note)
    {
        if (!Noted.Contains(Section) || YamlFile.Parse(Yaml, "entry", new ProblemList()) is not MapNode map)
        {
            return this;
        }

        string whole = map.Text("note") is { } own ? $"{own} ({note})" : note;
        return this with { Yaml = YamlText.Group([.. map.Entries.Where(e => e.Key.Text != "note").Select(e => (e.Key.Text, YamlText.Of(e.Value))), ("note", YamlText.Of(whole))]) };
    }
}
