using Failwise.Knowledge;

namespace Failwise.Dialogue;

/// <summary>Where on the part? With a place in the draft already: where else?</summary>
internal sealed record PlaceStep(Draft Draft) : Step
{
    public override Step Before => Draft.Part.Count == "one" ? new PartStep(null) : new NumberStep(Draft with { At = null, On = [] });

    public static Step For(Talk talk, Draft draft) => talk.Guide.PlacesOf(draft.Part).Count == 0 ? new MarkStep(draft, 0) : new PlaceStep(draft);

    public override Screen Show(Talk talk)
    {
        string typed = talk.Typed.Trim().Replace(' ', '-');
        string question = Draft.On.Count > 0 ? "And where else on it? Enter when that is all." : "Where on it? Several with a comma: 1,2. Enter when it is all over or you cannot say.";
        IReadOnlyList<string> places = talk.Guide.PlacesOf(Draft.Part);
        IEnumerable<string> shown = typed.Length == 0 ? places : places.Where(w => w.Contains(typed, StringComparison.OrdinalIgnoreCase));
        // A place keeps its digit when another is chosen, so that 1,3 means what stood beside 1 and 3.
        return Ask(talk, Draft.Says, question, [], [.. Numbered(shown.Select(w => (w.Replace('-', ' '), (string?)null, (Func<Turn>)(() => With(talk, [w])))))
            .Where(c => !Draft.On.Contains(c.Says.Replace(' ', '-')))]);
    }

    public override Turn Empty(Talk talk) => talk.To(new MarkStep(Draft, 0));

    public override Turn Take(Talk talk, string text)
    {
        string[] parts = text.Split([',', '+', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        string?[] places = [.. parts.Select(p => PlaceOf(talk, p))];
        return talk.Knowledge.PlaceWords.Find(text) is { } whole ? With(talk, [whole])
            : places.Length > 0 && places.All(p => p is not null) ? With(talk, places.OfType<string>())
            : MarkStep.Said(talk, Draft, text) ?? AsCodes(talk, Draft, text) ?? TakeFirst(talk, text);
    }

    private Turn With(Talk talk, IEnumerable<string> places) => talk.To(new MarkStep(Draft with { On = [.. Draft.On.Concat(places).Distinct()] }, 0));

    /// <summary>A word, a place letter, or the digit of a place on the screen.</summary>
    private string? PlaceOf(Talk talk, string text) =>
        text is [>= '1' and <= '9'] && talk.Guide.PlacesOf(Draft.Part).ElementAtOrDefault(text[0] - '1') is { } shown ? shown
        : talk.Knowledge.PlaceWords.Find(text) ?? talk.Knowledge.Codes.FirstOrDefault(c => c.Kind == "place" && c.Code.Equals(text, StringComparison.OrdinalIgnoreCase))?.Id;
}
