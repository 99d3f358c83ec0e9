using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Dialogue;

/// <summary>How does it look?</summary>
/// <param name="From">The first mark shown, counted from 0.</param>
internal sealed record MarkStep(Draft Draft, int From) : Step
{
    private const int Shown = 7;

    public override Step Before => Draft.Part.Places.Count == 0 ? new PartStep(null) : new PlaceStep(Draft with { On = [] });

    /// <summary>A comma after the digit of a place: there is another.</summary>
    public override Step? LeadsTo(char first) => first is ',' or '+' && Draft.On.Count > 0 ? new PlaceStep(Draft) : null;

    /// <summary>A mark that is named before it is asked for; null when the text names none.</summary>
    public static Turn? Said(Talk talk, Draft draft, string text) => Named(talk, draft.Part, text) is null ? null : new MarkStep(draft, 0).Take(talk, text);

    public override Screen Show(Talk talk)
    {
        IReadOnlyList<Pattern> all = talk.Typed.Trim().Length > 0 ? Found(talk) : talk.Guide.MarksOf(Draft.Part);
        List<Choice> choices = [.. Numbered(all.Skip(talk.Typed.Trim().Length > 0 ? 0 : From).Take(Shown).Select(p => (p.Name, (string?)p.Says, (Func<Turn>)(() => Chosen(talk, p)))))];
        if (talk.Typed.Trim().Length == 0)
        {
            if (all.Count > Shown)
            {
                choices.Add(new Choice('8', "more marks", null, () => talk.To(this with { From = From + Shown < all.Count ? From + Shown : 0 })));
            }

            choices.Add(new Choice('9', "nobody looked at it", null, () => NotLooked(talk)));
            choices.Add(new Choice('0', "normal: looked at, and nothing wrong", null, () => Sound(talk)));
        }

        return Ask(talk, Draft.Says, "How does it look? Choose, or type what you see.", [], choices, "ok normal  nl not looked at  " + CommonKeys);
    }

    public override Turn Take(Talk talk, string text)
    {
        switch (text.ToLowerInvariant())
        {
            case "ok" or "sound" or "clean" or "good" or "normal":
                return Sound(talk);
            case "nl" or "not looked" or "not looked at":
                return NotLooked(talk);
        }

        if (Named(talk, Draft.Part, text) is not { } id)
        {
            return AsCodes(talk, Draft, text) ?? TakeFirst(talk, text);
        }

        // A word of the shop may name a mark of other parts; what this part can show comes first.
        Pattern said = talk.Knowledge.Patterns[id];
        IReadOnlyList<Pattern> own = talk.Guide.MarksOf(Draft.Part);
        bool byName = said.Id == Suggest.Fold(text) || said.Name.Equals(text, StringComparison.OrdinalIgnoreCase);
        return Chosen(talk, byName || own.Contains(said) ? said : Found(talk).FirstOrDefault(own.Contains) ?? said);
    }

    private static string? Named(Talk talk, Part part, string text) =>
        talk.Knowledge.Codes.FirstOrDefault(c => c.Kind == "pattern" && c.Code == text)?.Id ?? talk.Knowledge.PatternOn(part.Id, text);

    private IReadOnlyList<Pattern> Found(Talk talk)
    {
        string text = talk.Typed.Trim();
        IReadOnlyList<Pattern> own = talk.Guide.MarksOf(Draft.Part);
        IEnumerable<Pattern> begun = own.Where(p => p.Words.Append(p.Name).SelectMany(w => w.Split(' ')).Any(w => w.StartsWith(text, StringComparison.OrdinalIgnoreCase)));
        Pattern[] near = [.. WordSearch.Find(talk.Knowledge, text, 9).Where(m => m.Kind == "pattern").Select(m => talk.Knowledge.Patterns[m.Id])];
        return [.. near.Where(own.Contains).Concat(begun).Concat(near).DistinctBy(p => p.Id)];
    }

    private Turn Chosen(Talk talk, Pattern pattern)
    {
        Draft draft = Draft with { Pattern = pattern };
        return pattern.LookAlikes.Count > 0 || CloserWords.For(talk.Knowledge, draft.Part.Id, pattern.Id).Count > 0 ? talk.To(new LookAlikeStep(draft)) : draft.Saved(talk, false, new ExtentStep(draft));
    }

    private Turn Sound(Talk talk)
    {
        Draft draft = Draft with { Sound = true };
        return draft.Saved(talk, false, new PartStep(Draft.Part));
    }

    private Turn NotLooked(Talk talk) =>
        new(talk, new Save([new CaseEntry("not-looked-at", Draft.Part.Id, new Location("dialogue", 1, 1))], Draft.Part.Name + ": not looked at", false, false, new PartStep(null)));
}
