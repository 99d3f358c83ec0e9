using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Dialogue;

/// <summary>A question of the general kind: what was done, how it stood, what was noticed. Answered by a digit, in words, or not at all.</summary>
internal sealed record IntakeStep(string Id) : Step
{
    private const int Most = 8;

    /// <summary>A digit chooses only at the start: an answer may hold numbers.</summary>
    public override bool DigitGoesOn(string typed) => typed.Length > 0;

    public override Step Before => new PartStep(null);

    public override Screen Show(Talk talk)
    {
        IntakeQuestion question = talk.Knowledge.Questions[Id];
        (string Id, string Says)[] open = [.. Open(talk).Take(Most)];
        return Ask(talk, "", question.Asks, [.. question.Why is { } why ? [why] : Array.Empty<string>(), "Choose, or answer in your own words; Enter when nobody knows, or nothing more is to be said."], Numbered(
            open.Select(o => (o.Says, (string?)null, (Func<Turn>)(() => With(talk, [Entry(talk, o.Id, true)], o.Says, this))))
                .Concat(open.Length == 0 ? [] : [("none of these", (string?)null, (Func<Turn>)(() => None(talk, open)))])));
    }

    public override Turn Empty(Talk talk) => talk.To(new PartStep(null));

    /// <summary>A known word, a line of codes, or else a note beside the question.</summary>
    public override Turn Take(Talk talk, string text)
    {
        foreach (string codes in new[] { "!" + text, text })
        {
            if (ShortCodes.Read(talk.Knowledge, codes, talk.Case.Machine) is { Problems.Count: 0 } reading)
            {
                return With(talk, reading.Entries, text, this);
            }
        }

        string note = $"{talk.Knowledge.Questions[Id].Asks} {text}";
        return With(talk, [new CaseEntry("history", YamlText.Group([("note", YamlText.Of(note))]), new Location("dialogue", 1, 1))], "your answer, as a note", new PartStep(null));
    }

    /// <summary>What the question covers, can be so on such a machine and nobody has spoken of, what is about just such machines first, then the most usual.</summary>
    private IEnumerable<(string Id, string Says)> Open(Talk talk)
    {
        KnowledgeBase knowledge = talk.Knowledge;
        HashSet<string> known = [.. talk.Case.History.Concat(talk.Case.Symptoms).Select(s => s.Id)];
        return knowledge.Questions[Id].Covers.Where(id => !known.Contains(id) && knowledge.FitOf(id, talk.Case.Machine.Kinds, talk.Case.Machine.Features) > 0)
            .Select(id => knowledge.Circumstances.TryGetValue(id, out Circumstance? c) ? (id, c.Says, Usual: c.HowCommon) : (id, knowledge.Symptoms[id].Says, Usual: knowledge.Symptoms[id].SeenAnyway))
            .OrderByDescending(x => knowledge.FitOf(x.id, talk.Case.Machine.Kinds, talk.Case.Machine.Features)).ThenByDescending(x => x.Usual).ThenBy(x => x.id, StringComparer.Ordinal).Select(x => (x.id, x.Says));
    }

    private static Turn None(Talk talk, (string Id, string Says)[] open) =>
        With(talk, [.. open.Select(o => Entry(talk, o.Id, false))], "none of these", new PartStep(null));

    private static CaseEntry Entry(Talk talk, string id, bool holds) => new(
        talk.Knowledge.Circumstances.ContainsKey(id) ? "history" : "symptoms", holds ? id : YamlText.Group([("not", id)]), new Location("dialogue", 1, 1));

    private static Turn With(Talk talk, IReadOnlyList<CaseEntry> entries, string says, Step then) => new(talk, new Save(entries, says, false, false, then));
}
