namespace Failwise.Dialogue;

/// <summary>Which of the numbered ones?</summary>
internal sealed record NumberStep(Draft Draft) : Step
{
    private static readonly Dictionary<string, string> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["a"] = "all", ["all"] = "all", ["*"] = "all", ["one"] = "one", ["s"] = "some", ["some"] = "some", ["m"] = "most", ["most"] = "most",
    };

    public override bool DigitsChoose => false;

    public override Step Before => new PartStep(null);

    /// <summary>This question, or the next one when there is only one of the part.</summary>
    public static Step For(Talk talk, Draft draft) => draft.Part.Count == "one" || talk.Guide.CountOf(draft.Part) == 1 ? PlaceStep.For(talk, draft) : new NumberStep(draft);

    public override Screen Show(Talk talk)
    {
        string which = talk.Guide.CountOf(Draft.Part) is > 1 and var count ? $"1 to {count}" : "its number";
        return Ask(talk, Draft.Says, $"Which one? Type {which}, a list (1,3), a range (2-4) or all; Enter when it has no number.", Said(talk), [], CommonKeys);
    }

    public override Turn Empty(Talk talk) => talk.To(PlaceStep.For(talk, Draft));

    public override Turn Take(Talk talk, string text)
    {
        if (Words.TryGetValue(text, out string? word))
        {
            return talk.To(PlaceStep.For(talk, Draft with { At = word }));
        }

        if (!Numbers(text, out string at, out int highest))
        {
            return MarkStep.Said(talk, Draft, text) ?? AsCodes(talk, Draft, text) ?? talk.Say($"'{text}' is no number, list or range. Write 3, or 1,3, or 2-4, or all; the mark comes after it.");
        }

        return talk.Guide.CountOf(Draft.Part) is { } count && highest > count
            ? talk.Say($"This machine has {count} of them by the case; there is no {highest}. Correct the number here, or the machine in the case file.")
            : talk.To(PlaceStep.For(talk, Draft with { At = at }));
    }

    /// <summary>The numbers of a list or range, as the case writes it.</summary>
    public static IEnumerable<int> Listed(string at) => at.Trim('[', ']').Split([',', ' '], StringSplitOptions.RemoveEmptyEntries)
        .Select(s => s.Split('-').Select(n => int.Parse(n, System.Globalization.CultureInfo.InvariantCulture)).ToArray())
        .SelectMany(ends => Enumerable.Range(ends[0], Math.Max(0, ends[^1] - ends[0] + 1)));

    private IReadOnlyList<string> Said(Talk talk)
    {
        IReadOnlyList<string> said = talk.Guide.Said(talk.Case, Draft.Part);
        return said.Count == 0 ? [] : ["Entered so far: " + string.Join("; ", said)];
    }

    private static bool Numbers(string text, out string at, out int highest)
    {
        string[] several = text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);
        int[] all = [.. several.SelectMany(s => s.Split('-')).Select(s => s.Length is > 0 and < 4 && s.All(char.IsAsciiDigit) ? int.Parse(s, System.Globalization.CultureInfo.InvariantCulture) : 0)];
        highest = all.Length == 0 ? 0 : all.Max();
        at = several.Length == 1 ? several[0] : "[" + string.Join(", ", several) + "]";
        return all.Length > 0 && all.Min() > 0 && several.All(s => s.Count(c => c == '-') <= 1) && (several.Length == 1 || !text.Contains('-', StringComparison.Ordinal));
    }
}
