using Failwise.Knowledge;

namespace Failwise.Dialogue;

/// <summary>Is it that, or something that looks like it?</summary>
internal sealed record LookAlikeStep(Draft Draft) : Step
{
    public override Step Before => new MarkStep(Draft with { Pattern = null }, 0);

    public override Screen Show(Talk talk) => Ask(talk, Draft.Says, $"Sure it is {Draft.Pattern!.Name}? Others look like it:", [],
        Numbered([(Draft.Pattern.Name, Draft.Pattern.Says, () => Keep(talk, Draft)), .. Draft.Pattern.LookAlikes.Where(l => talk.Knowledge.Patterns.ContainsKey(l.Id)).Select(l => Other(talk, l))], 1),
        "Enter keeps the first  " + CommonKeys);

    public override Turn Take(Talk talk, string text) =>
        talk.Knowledge.PatternWords.Find(text) is { } id ? Keep(talk, Draft with { Pattern = talk.Knowledge.Patterns[id] }) : talk.Say("Choose with a digit; Enter keeps the first.");

    private (string, string?, Func<Turn>) Other(Talk talk, LookAlike alike)
    {
        Pattern pattern = talk.Knowledge.Patterns[alike.Id];
        return ("no: " + pattern.Name, alike.Tell, () => Keep(talk, Draft with { Pattern = pattern }));
    }

    private static Turn Keep(Talk talk, Draft draft) => draft.Saved(talk, false, new ExtentStep(draft));
}
