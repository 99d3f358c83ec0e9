using Failwise.Entry;
using Failwise.Knowledge;

namespace Failwise.Dialogue;

/// <summary>Is it that, can it be said closer, or is it something that looks like it?</summary>
internal sealed record LookAlikeStep(Draft Draft) : Step
{
    public override Step Before => new MarkStep(Draft with { Pattern = null }, 0);

    public override Screen Show(Talk talk)
    {
        Pattern said = Draft.Pattern!;
        IReadOnlyList<Pattern> closer = CloserWords.For(talk.Knowledge, Draft.Part.Id, said.Id);
        LookAlike[] alike = [.. said.LookAlikes.Where(l => talk.Knowledge.Patterns.ContainsKey(l.Id) && !closer.Any(c => c.Id == l.Id))];
        string question = closer.Count == 0 ? $"Sure it is {said.Name}? Others look like it:" : $"{said.Name} is a broad word. Can you say closer?";
        return Ask(talk, Draft.Says, question, [], Numbered(
        [
            (closer.Count == 0 ? said.Name : $"{said.Name}, no closer", said.Says, () => Keep(talk, Draft)),
            .. closer.Select(c => (c.Name, (string?)c.Says, (Func<Turn>)(() => Keep(talk, Draft with { Pattern = c })))),
            .. alike.Select(l => Other(talk, l)),
        ], 1), "Enter keeps the first  " + CommonKeys);
    }

    public override Turn Take(Talk talk, string text) =>
        talk.Knowledge.PatternWords.Find(text) is { } id ? Keep(talk, Draft with { Pattern = talk.Knowledge.Patterns[id] }) : talk.Say("Choose with a digit; Enter keeps the first.");

    private (string, string?, Func<Turn>) Other(Talk talk, LookAlike alike)
    {
        Pattern pattern = talk.Knowledge.Patterns[alike.Id];
        return ("no: " + pattern.Name, alike.Tell, () => Keep(talk, Draft with { Pattern = pattern }));
    }

    private static Turn Keep(Talk talk, Draft draft) => draft.Saved(talk, false, new ExtentStep(draft));
}
