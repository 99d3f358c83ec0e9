using Failwise.Knowledge;

namespace Failwise.Dialogue;

/// <summary>Where on the part?</summary>
internal sealed record PlaceStep(Draft Draft) : Step
{
    public override Step Before => Draft.Part.Count == "one" ? new PartStep(null) : new NumberStep(Draft with { At = null });

    public static Step For(Talk talk, Draft draft) => Words(talk.Knowledge, draft.Part).Count == 0 ? new MarkStep(draft, 0) : new PlaceStep(draft);

    public override Screen Show(Talk talk)
    {
        string typed = talk.Typed.Trim();
        IEnumerable<string> words = Words(talk.Knowledge, Draft.Part).Where(w => typed.Length == 0 || w.Contains(typed.Replace(' ', '-'), StringComparison.OrdinalIgnoreCase));
        return Ask(talk, Draft.Says, "Where on it? Enter when it is all over or you cannot say.", [],
            Numbered(words.Select(w => (w.Replace('-', ' '), (string?)null, (Func<Turn>)(() => talk.To(new MarkStep(Draft with { On = [w] }, 0)))))));
    }

    public override Turn Empty(Talk talk) => talk.To(new MarkStep(Draft, 0));

    public override Turn Take(Talk talk, string text)
    {
        string[] parts = text.Split([',', '+'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        string?[] places = [.. parts.Select(p => talk.Knowledge.PlaceWords.Find(p) ?? ByLetter(talk.Knowledge, p))];
        return places.Length > 0 && places.All(p => p is not null) ? talk.To(new MarkStep(Draft with { On = [.. places.OfType<string>()] }, 0)) : TakeFirst(talk, text);
    }

    private static string? ByLetter(KnowledgeBase knowledge, string text) =>
        knowledge.Codes.FirstOrDefault(c => c.Kind == "place" && c.Code.Equals(text, StringComparison.OrdinalIgnoreCase))?.Id;

    /// <summary>Place words of the part, those with a letter first.</summary>
    private static IReadOnlyList<string> Words(KnowledgeBase knowledge, Part part)
    {
        string[] all = [.. part.Places.SelectMany(axis => knowledge.Axes.FirstOrDefault(a => a.Id == axis)?.Words ?? [])];
        return [.. all.OrderBy(w => knowledge.Codes.Any(c => c.Kind == "place" && c.Id == w) ? 0 : 1)];
    }
}
