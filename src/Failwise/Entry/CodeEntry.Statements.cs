using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>Entries that are no looks: symptoms, history, numbers and readings.</summary>
internal sealed partial class CodeEntry
{
    private CaseEntry? ReadStatement(Location start)
    {
        // "No compression" is said of an engine that has none: only what is not called so as a whole is denied.
        bool denied = words.Count > 2 && Suggest.Fold(words[1].Text) is "no" or "not" && Stated(1) is (null, null);
        int from = denied ? 2 : 1;
        (string? symptom, string? circumstance) = Stated(from);
        if ((symptom ?? circumstance) is not { } id)
        {
            string said = Said(from);
            Location where = from < words.Count ? words[from].At : start;
            return Wrong("FW018", where, $"unknown symptom or history word '{Shape.Short(said.Replace('-', ' '))}'.{StatementMeant(said)}");
        }

        return new CaseEntry(symptom is not null ? "symptoms" : "history", denied ? YamlText.Group([("not", id)]) : id, start);
    }

    private string Said(int from) => string.Join('-', words.Skip(from).TakeWhile(w => !w.Quoted).Select(w => w.Text));

    private (string? Symptom, string? Circumstance) Stated(int from)
    {
        string said = Said(from);
        string? symptom = said.Length == 0 ? null : knowledge.SymptomWords.Find(said, Fit);
        return (symptom, said.Length == 0 || symptom is not null ? null : knowledge.HistoryWords.Find(said, Fit));

        double Fit(string id) => machine is null ? 1 : knowledge.FitOf(id, machine.Kinds, machine.Features);
    }

    private CaseEntry? ReadNumber(Location start)
    {
        string value = string.Concat(words.Skip(1).Where(w => w.Text != "=").Select(w => w.Text));
        return Yaml.Numbers.TryParse(value, out double number) && number >= 0
            ? new CaseEntry("history", YamlText.Group([(words[0].Text, value)]), start)
            : Wrong("FW009", start, $"'{words[0].Text}' is followed by a number, such as '{words[0].Text} 3900'.");
    }

    private CaseEntry? ReadReading(string part, int equals, Location start)
    {
        List<string> quantity = [];
        while (next < equals)
        {
            CodeWord word = words[next];
            if (ReadPhrase(knowledge.PlaceWords, next) is { } place)
            {
                on.Add(place);
            }
            else
            {
                quantity.Add(Suggest.Fold(word.Text));
                next++;
            }
        }

        Dictionary<string, string> after = new(StringComparer.Ordinal);
        string key = "value";
        foreach (CodeWord word in words.Skip(equals + 1))
        {
            if (!word.Quoted && word.Text is "min" or "max" or "from" or "with" or "uncertainty")
            {
                key = word.Text;
                continue;
            }

            string to = word.Quoted ? "note" : key;
            after[to] = after.TryGetValue(to, out string? before) ? before + " " + word.Text : word.Text;
        }

        if (quantity.Count == 0 || !after.TryGetValue("value", out string? value))
        {
            return Wrong("FW097", words[equals].At, "a reading names what was measured and its value: 'MJ2 diameter = 57.94 mm max 58.00 mm'.");
        }

        List<(string, string)> limit = [.. new[] { "min", "max", "from" }.Where(after.ContainsKey).Select(k => (k, YamlText.Of(after[k])))];
        List<(string, string)> fields = [("quantity", string.Join('-', quantity)), ("part", part)];
        fields.AddRange(at is null ? [] : [("at", at)]);
        fields.AddRange(on.Count == 0 ? [] : [("on", YamlText.List(on))]);
        fields.Add(("value", YamlText.Of(value)));
        fields.AddRange(limit.Count == 0 ? [] : [("limit", YamlText.Group(limit))]);
        fields.AddRange(new[] { "with", "uncertainty", "note" }.Where(after.ContainsKey).Select(k => (k, YamlText.Of(after[k]))));
        return new CaseEntry("readings", YamlText.Group(fields), start);
    }
}
