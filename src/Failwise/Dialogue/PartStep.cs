using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Dialogue;

/// <summary>Which part next?</summary>
/// <param name="Last">The part entered last, whose next number stands ready.</param>
internal sealed record PartStep(Part? Last) : Step
{
    private const int Looks = 3;
    private const int Questions = 2;
    private const int PartsFrom = 6;
    private const double Near = 0.45;

    public override Step Before => this with { Last = null };

    /// <summary>A number follows a code or a word and a space; straight after letters it chooses from what was found.</summary>
    public override bool DigitGoesOn(string typed) => typed.Length <= 2 || !char.IsLetter(typed[^1]) || typed.Any(c => char.IsAsciiDigit(c) || c is ';' or '!');

    public override Screen Show(Talk talk) => talk.Typed.Trim().Length > 0
        ? Ask(talk, "", "Which part?", [], Found(talk), "Enter takes the first  " + CommonKeys)
        : Ask(talk, "", "What next? Choose, or type a part in your own words, or a line of codes.", Told(talk), Suggested(talk), "letters search  " + CommonKeys);

    public override Turn Take(Talk talk, string text)
    {
        CodeReading codes = ShortCodes.Read(talk.Knowledge, text, talk.Case.Machine);
        if (codes.Problems.Count == 0)
        {
            return new Turn(talk, new Save(codes.Entries, string.Join("; ", codes.Entries.Select(e => e.Yaml)), false, false, new PartStep(Last: null)));
        }

        if (ShortCodePart(talk, text) is { } part)
        {
            return Open(talk, part);
        }

        bool looksLikeEntry = text.Any(c => char.IsAsciiDigit(c) || c is ';' or '!' or '"' or '=');
        return looksLikeEntry || Found(talk).Count == 0 ? talk.Say(["Not saved.", .. codes.Problems.Select(p => p.Message)]) : Told(TakeFirst(talk, text), codes);
    }

    /// <summary>Where only the part was understood, what was not is said: nothing typed is dropped in silence.</summary>
    private static Turn Told(Turn turn, CodeReading codes) =>
        turn with { Next = turn.Next with { Messages = [.. turn.Next.Messages, .. codes.Problems.Where(p => p.Code == "FW096").Select(p => "Not taken: " + p.Message)] } };

    private static Part? ShortCodePart(Talk talk, string text) =>
        talk.Knowledge.PartWords.Find(text) is { } word ? talk.Knowledge.Parts[word]
        : talk.Knowledge.Codes.FirstOrDefault(c => c.Kind == "part" && c.Code.Equals(text, StringComparison.OrdinalIgnoreCase)) is { } code ? talk.Knowledge.Parts[code.Id] : null;

    private static Turn Open(Talk talk, Part part) => talk.To(NumberStep.For(talk, Draft.Of(part)));

    private static IReadOnlyList<string> Told(Talk talk) => talk.Next is null ? ["Working out what to look at next ..."] : talk.Next.Count == 0 ? ["Nothing more to look at would change the picture much."] : [];

    private IReadOnlyList<Choice> Suggested(Talk talk)
    {
        List<(string, string?, Func<Turn>)> options = [];
        if (Last is not null && talk.Guide.NextNumber(talk.Case, Last) is { } number)
        {
            options.Add(($"go on: {Last.Name} {number}", null, () => talk.To(PlaceStep.For(talk, Draft.Of(Last) with { At = number.ToString(System.Globalization.CultureInfo.InvariantCulture) }))));
        }

        HashSet<string> named = [];
        foreach (NextLook look in (talk.Next ?? []).Where(l => l.Intake is null).Take(Looks))
        {
            if (look.Part is { } part && named.Add(part))
            {
                options.Add(("look next: " + look.Says, look.Detail, () => Open(talk, talk.Knowledge.Parts[part])));
            }
            else if (look.Question is { } question)
            {
                options.Add(("ask: " + look.Says, look.Detail, () => talk.To(new StatementStep(question, look.IsSymptom))));
            }
        }

        foreach (NextLook look in (talk.Next ?? []).Where(l => l.Intake is { } id && !talk.Passed.Contains(id)).Take(Questions))
        {
            options.Add(("ask: " + look.Says, null, () => (talk with { Passed = [.. talk.Passed, look.Intake!] }).To(new IntakeStep(look.Intake!))));
        }

        // The parts keep their digits when the planner's choices come in: nothing moves under the finger.
        IEnumerable<(string, string?, Func<Turn>)> parts = talk.Guide.Untouched(talk.Case).Select(p => p.Part).Where(p => !named.Contains(p.Id)).Select(p => (p.Name, (string?)null, (Func<Turn>)(() => Open(talk, p))));
        return [.. Numbered(options.Take(PartsFrom - 1), 1), .. Numbered(parts.Take(10 - PartsFrom), from: PartsFrom, defaultNumber: options.Count == 0 ? PartsFrom : 0)];
    }

    private static IReadOnlyList<Choice> Found(Talk talk)
    {
        string text = talk.Typed.Trim();
        Part[] begun = [.. talk.Guide.Parts.Select(p => p.Part).Where(p => p.Name.Split(' ').Concat(p.Words.SelectMany(w => w.Split(' '))).Any(w => w.StartsWith(text, StringComparison.OrdinalIgnoreCase)))];
        Part[] coded = [.. talk.Guide.Parts.Where(p => text.Length is 1 or 2 && p.Code.StartsWith(text, StringComparison.OrdinalIgnoreCase)).Select(p => p.Part)];
        IEnumerable<Part> near = WordSearch.Find(talk.Knowledge, text, 8, talk.Case.Machine.Kinds).Where(m => m.Kind == "part" && m.Score >= Near).Select(m => talk.Knowledge.Parts[m.Id])
            .Where(p => p.Machines.Count == 0 || p.Machines.Any(talk.Case.Machine.Kinds.Contains));
        return Numbered(coded.Concat(near.Where(p => begun.Contains(p))).Concat(begun).Concat(near).DistinctBy(p => p.Id).Take(8)
            .Select(p => (p.Name, p.Words.Count > 0 ? "also: " + string.Join(", ", p.Words.Take(3)) : null, (Func<Turn>)(() => Open(talk, p)))));
    }
}
