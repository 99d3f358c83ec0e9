using Failwise.Entry;

namespace Failwise.Dialogue;

/// <summary>A question of the dialogue.</summary>
internal abstract record Step
{
    protected const string CommonKeys = "Esc back  Ctrl-Z undo  ?+Enter help  q+Enter stop";
    protected const string EnoughKeys = "Esc enough said  Ctrl-Z undo  ?+Enter help  q+Enter stop";

    /// <summary>False where digits are the answer itself, such as the number of a bearing.</summary>
    public virtual bool DigitsChoose => true;

    /// <summary>True when a digit belongs to what was typed so far, as in MB3, and does not choose.</summary>
    public virtual bool DigitGoesOn(string typed) => false;

    /// <summary>Where a mark leads that is typed before anything else; null when it begins an answer like any other.</summary>
    public virtual Step? LeadsTo(char first) => null;

    /// <summary>The question that Escape goes back to.</summary>
    public abstract Step Before { get; }

    public abstract Screen Show(Talk talk);

    /// <summary>An answer in words.</summary>
    public abstract Turn Take(Talk talk, string text);

    /// <summary>Enter with nothing typed and no choice standing ready.</summary>
    public virtual Turn Empty(Talk talk) => talk.Say("Choose with a digit, or type a word.");

    protected static Screen Ask(Talk talk, string path, string question, IReadOnlyList<string> told, IReadOnlyList<Choice> choices, string keys = CommonKeys) =>
        new(talk.Case.Title, talk.Guide.Status(talk), talk.Messages, path, question, told, choices, talk.Typed, keys);

    /// <summary>Takes the first choice for Enter, when there is any.</summary>
    protected static Turn TakeFirst(Talk talk, string text)
    {
        IReadOnlyList<Choice> choices = talk.Show().Choices;
        return choices.Count > 0 ? choices[0].Take() : talk.Say($"Nothing is near '{text}'. Try another word; Esc clears it.");
    }

    /// <summary>The rest of an entry in short codes, typed where one thing was asked for; null when it does not read so.</summary>
    protected static Turn? AsCodes(Talk talk, Draft draft, string text)
    {
        string begun = string.Join(' ', [draft.Part.Id, .. draft.At is { } at ? [at.Trim('[', ']').Replace(" ", "", StringComparison.Ordinal)] : Array.Empty<string>(), .. draft.On]);
        return ShortCodes.Read(talk.Knowledge, $"{begun} {text}", talk.Case.Machine) is { Problems.Count: 0 } reading
            ? new Turn(talk, new Save(reading.Entries, $"{draft.Says}: {text}", false, false, new PartStep(draft.Part))) : null;
    }

    /// <summary>Numbers the choices up to 9 in their order.</summary>
    protected static IReadOnlyList<Choice> Numbered(IEnumerable<(string Says, string? Detail, Func<Turn> Take)> options, int defaultNumber = 0, int from = 1) =>
        [.. options.Take(10 - from).Select((o, i) => new Choice((char)('0' + from + i), o.Says, o.Detail, o.Take, from + i == defaultNumber))];
}
