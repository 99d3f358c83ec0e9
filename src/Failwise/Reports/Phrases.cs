using Failwise.Causes;

namespace Failwise.Reports;

/// <summary>Small turns of phrase that every edition says alike.</summary>
internal static class Phrases
{
    /// <summary>Less than this moves nothing that a person would notice.</summary>
    private const double LeastDecibans = 1;

    private const string Denied = "Not so: ";

    public static string Percent(double p) => p < 0.01 ? "under 1\u00a0%" : $"{100 * Math.Min(CauseRanking.Ceiling, p):0}\u00a0%";

    public static string ShortPercent(double p) => p < 0.01 ? "<1\u00a0%" : Percent(p);

    /// <summary>A chance as people count: 97 of 100.</summary>
    public static string OutOfHundred(double p) => p < 0.01 ? "fewer than 1 of 100" : $"{100 * Math.Min(CauseRanking.Ceiling, p):0} of 100";

    public static string Decibans(double d) => $"{d:+0;-0}\u00a0dB";

    public static bool Tells(WeighedEvidence e) => Math.Abs(e.Decibans) >= LeastDecibans;

    /// <summary>Evidence for a cause that is worth telling; how a machine is built is no finding.</summary>
    public static bool SpeaksFor(WeighedEvidence e) => Tells(e) && !IsBuild(e);

    /// <summary>What is missing speaks against a cause; what is there and only fits a rival better does not, whatever it does to the odds.</summary>
    public static bool SpeaksAgainst(Knowledge.Cause cause, WeighedEvidence e) => Tells(e) && !IsBuild(e) && !e.Item.Present
        && (e.Item.Kind != EvidenceKind.Circumstance || cause.RaisedBy.Any(r => e.Item.Id.EndsWith("/" + r.Id, StringComparison.Ordinal)));

    private static bool IsBuild(WeighedEvidence e) => e.Item.Id.StartsWith("history/build-", StringComparison.Ordinal);

    /// <summary>Joins with commas and a last "and".</summary>
    public static string And(IReadOnlyList<string> words) => words.Count < 2 ? string.Concat(words) : string.Join(", ", words.Take(words.Count - 1)) + " and " + words[^1];

    public static string Sentence(string says) => says.Length == 0 || says[^1] is '.' or '!' or '?' or ':' ? says : says + ".";

    /// <summary>What was asked about and denied, said so that it cannot be misread as found.</summary>
    public static string Plain(string says) => says.StartsWith(Denied, StringComparison.Ordinal) ? $"Asked or looked for: it is not so that {char.ToLowerInvariant(says[Denied.Length])}{says[(Denied.Length + 1)..]}" : says;

    /// <summary>Where another root may have brought this one about, and by what way; empty when none may.</summary>
    public static string MayComeFrom(RankedCause cause) => cause.After is not { } before ? ""
        : $"It may itself have come from '{before.Root.Title}'{(before.Way.Count > 0 ? ", by way of " + And([.. before.Way.Select(s => $"'{s.Says}'")]) : "")}.";

    /// <summary>The roots of the best story, each behind the one that may have brought it about.</summary>
    public static string Story(CauseRanking causes)
    {
        HashSet<string> members = [.. causes.Story.Roots.Select(r => r.Id)];
        RankedCause[] told = [.. causes.Ranked.Where(r => members.Contains(r.Cause.Id))];
        string From(RankedCause root) => string.Join(" → ", new[] { root.Cause.Title, And([.. told.Where(r => r.After?.Root.Id == root.Cause.Id).Select(From)]) }.Where(t => t.Length > 0));
        return string.Join(" + ", told.Where(r => r.After is null || !members.Contains(r.After.Root.Id)).Select(From));
    }

    public static string Steps(int count) => count == 1 ? "1 step" : $"{count} steps";

    public static string Minutes(double minutes) => $"{minutes:0} {(Math.Round(minutes) == 1 ? "minute" : "minutes")}";

    /// <summary>Words of certainty and what they mean; the thresholds are those of <see cref="CauseRanking.WordFor"/>.</summary>
    public static IReadOnlyList<(string Word, string Means)> CertaintyWords { get; } =
    [
        ("almost certain", "95 % or more; nothing is ever said above 98 %"),
        ("very likely", "80 % to 95 %"),
        ("likely", "55 % to 80 %: more likely true than not"),
        ("about even", "45 % to 55 %"),
        ("possible", "20 % to 45 %: can be, is not shown to be more likely than not"),
        ("unlikely", "5 % to 20 %"),
        ("very unlikely", "under 5 %"),
    ];

    public static string StageTitle(string stage) => stage switch
    {
        "secure" => "Secure the evidence",
        "inspect" => "Inspect",
        "measure" => "Measure",
        "machine" => "Machine shop",
        "clean" => "Clean",
        "assemble" => "Renew and assemble",
        "close-up" => "Before closing up",
        "first-start" => "First start",
        _ => "Afterwards",
    };
}
