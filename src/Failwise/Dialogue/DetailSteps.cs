using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Dialogue;

/// <summary>How much of it? The observation is saved already; the answer is written over it.</summary>
internal sealed record ExtentStep(Draft Draft) : Step
{
    private static readonly (string Word, string Tell)[] Amounts =
    [
        ("trace", "only just to be seen"), ("light", "seen at once, hardly felt"), ("moderate", "felt with a fingernail, or over a good part of the face"),
        ("heavy", "over most of the face, or metal gone"), ("destroyed", "the part has lost its shape"),
    ];

    public override Step Before => new PartStep(Draft.Part);

    public override Screen Show(Talk talk) => Ask(talk, Draft.Says, "How much? Enter when it is hard to say.", [],
        Numbered(Amounts.Select(a => (a.Word, Draft.Part.OrderedAs == Part.Fluid ? null : (string?)a.Tell, (Func<Turn>)(() => With(talk, a.Word))))), EnoughKeys);

    public override Turn Empty(Talk talk) => talk.To(new SureStep(Draft));

    public override Turn Take(Talk talk, string text) =>
        Amounts.FirstOrDefault(a => a.Word.StartsWith(text, StringComparison.OrdinalIgnoreCase)).Word is { } word ? With(talk, word) : talk.Say("Choose 1 to 5.");

    private Turn With(Talk talk, string word)
    {
        Draft draft = Draft with { Extent = word };
        return draft.Saved(talk, true, new SureStep(draft));
    }
}

/// <summary>How sure?</summary>
internal sealed record SureStep(Draft Draft) : Step
{
    public override Step Before => new PartStep(Draft.Part);

    public override Screen Show(Talk talk) => Ask(talk, Draft.Says, "How sure are you?", [], Numbered(
    [
        ("sure", null, () => RestStep.After(talk, Draft)), ("fairly sure", null, () => With(talk, "fairly-sure")), ("doubtful", null, () => With(talk, "doubtful")),
    ], 1), EnoughKeys);

    public override Turn Take(Talk talk, string text) => text.ToLowerInvariant() switch
    {
        "sure" or "s" => RestStep.After(talk, Draft),
        "?" or "fairly" or "fairly sure" or "f" => With(talk, "fairly-sure"),
        "??" or "doubtful" or "d" => With(talk, "doubtful"),
        _ => talk.Say("Choose 1, 2 or 3."),
    };

    private Turn With(Talk talk, string word)
    {
        Draft draft = Draft with { Sure = word };
        return draft.Saved(talk, true, RestStep.Asked(talk, draft) ? new RestStep(draft) : new PartStep(draft.Part));
    }
}

/// <summary>What of the others of the row?</summary>
internal sealed record RestStep(Draft Draft) : Step
{
    public override Step Before => new PartStep(Draft.Part);

    public static bool Asked(Talk talk, Draft draft) => draft.At is not (null or "all") && draft.At.Any(char.IsAsciiDigit)
        && talk.Guide.CountOf(draft.Part) > NumberStep.Listed(draft.At).Distinct().Count();

    public static Turn After(Talk talk, Draft draft) => Asked(talk, draft) ? talk.To(new RestStep(draft)) : talk.To(new PartStep(draft.Part));

    public override Screen Show(Talk talk) => Ask(talk, Draft.Says, "And the other ones of this row? Enter when you have not got there yet.", [],
        Numbered(Options(talk).Select(o => (o.Says, (string?)null, o.Take))), EnoughKeys);

    public override Turn Empty(Talk talk) => talk.To(new PartStep(Draft.Part));

    public override Turn Take(Talk talk, string text) => text.ToLowerInvariant() switch
    {
        "ok" or "sound" or "good" => Options(talk)[0].Take(),
        "nl" => With(talk, "not-looked-at"),
        _ => talk.Say($"Choose 1 to {Options(talk).Count}; Enter leaves it open."),
    };

    /// <summary>Where one half was asked about, nothing is said of the other half that nobody has turned over.</summary>
    private IReadOnlyList<(string Says, Func<Turn> Take)> Options(Talk talk) => Draft.On.FirstOrDefault(w => w is "upper" or "lower") is { } half
        ?
        [
            ($"their {half} halves looked at, and sound", () => Others(talk, half)), ("both halves of them looked at, and sound; the other half of this one too", () => With(talk, "sound")),
            ("not looked at", () => With(talk, "not-looked-at")),
        ]
        : [("looked at, and sound", () => With(talk, "sound")), ("not looked at", () => With(talk, "not-looked-at"))];

    private Turn With(Talk talk, string word)
    {
        Draft draft = Draft with { Rest = word };
        return draft.Saved(talk, true, new PartStep(draft.Part));
    }

    private Turn Others(Talk talk, string half)
    {
        IEnumerable<int> others = Enumerable.Range(1, talk.Guide.CountOf(Draft.Part) ?? 0).Except(NumberStep.Listed(Draft.At!));
        Draft rest = Draft.Of(Draft.Part) with { At = "[" + string.Join(", ", others) + "]", On = [half], Sound = true };
        return new Turn(talk, new Save([Draft.Entry(), rest.Entry()], $"{Draft.Says}; {rest.Says}", true, Draft.Anyway, new PartStep(Draft.Part)));
    }
}

/// <summary>Was it so? A question about symptoms or history.</summary>
internal sealed record StatementStep(string Id, bool IsSymptom) : Step
{
    public override Step Before => new PartStep(null);

    public override Screen Show(Talk talk)
    {
        string says = IsSymptom ? talk.Knowledge.Symptoms[Id].Says : talk.Knowledge.Circumstances[Id].Says;
        string? ask = IsSymptom ? talk.Knowledge.Symptoms[Id].Ask : talk.Knowledge.Circumstances[Id].Ask;
        return Ask(talk, says, "Was it so? Enter when nobody knows.", ask is null ? [] : [ask], Numbered(
        [
            ("yes", null, () => With(talk, Id, says)), ("no, asked and not so", null, () => With(talk, $"{{not: {Id}}}", "not so: " + says)),
        ]));
    }

    public override Turn Empty(Talk talk) => talk.To(new PartStep(null));

    public override Turn Take(Talk talk, string text) => text.ToLowerInvariant() switch
    {
        "y" or "yes" => Show(talk).Choices[0].Take(),
        "n" or "no" => Show(talk).Choices[1].Take(),
        _ => talk.Say("Choose 1 for yes or 2 for no."),
    };

    private Turn With(Talk talk, string yaml, string says) =>
        new(talk, new Save([new CaseEntry(IsSymptom ? "symptoms" : "history", yaml, new Location("dialogue", 1, 1))], says, false, false, new PartStep(null)));
}

/// <summary>Something about an entry that a careful person would ask.</summary>
internal sealed record ConfirmStep(Save Save, IReadOnlyList<string> Asked, Step Back) : Step
{
    private const string ForCommandLine = " To keep it as written, add --anyway.";

    public override Step Before => Back;

    /// <summary>The message as somebody says it who looks at the case file with you. An entry stands at no line before it is saved.</summary>
    public static string Plain(Problem problem) =>
        problem.Message.Replace(ForCommandLine, "", StringComparison.Ordinal).Replace(" at line 1;", " in what you just said;", StringComparison.Ordinal)
        + (problem.At is { File: not ("codes" or "dialogue"), Line: > 0 } at ? $" (line {at.Line} of the file)" : "");

    public override Screen Show(Talk talk) => Ask(talk, Save.Says, "Please look again:", Asked, Numbered(
    [
        ("change it", null, () => talk.To(Back)), ("keep it as I said", null, () => Keep(talk)), ("leave it out", null, () => talk.To(new PartStep(null), "Left out: " + Save.Says)),
    ], 1));

    public override Turn Take(Talk talk, string text) => talk.Say("Choose 1, 2 or 3.");

    private Turn Keep(Talk talk) => new(talk, Save with { Anyway = true, Then = Accepted(Save.Then) });

    /// <summary>What is asked on about the same observation does not bring the same question again.</summary>
    private static Step Accepted(Step then) => then is ExtentStep e ? new ExtentStep(e.Draft with { Anyway = true })
        : then is SureStep s ? new SureStep(s.Draft with { Anyway = true })
        : then is RestStep r ? new RestStep(r.Draft with { Anyway = true }) : then;
}
