using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Entry;

/// <summary>What a careful person would ask before writing an entry down. Nothing here is certain to be wrong; nothing is dropped in silence.</summary>
internal static class EntryQuestions
{
    private const string Cleaned = "parts-cleaned-before-looking";

    public static IReadOnlyList<Problem> Ask(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<CaseEntry> entries)
    {
        HashSet<Location> places = [.. entries.Select(e => e.At)];
        List<Problem> questions = [];
        foreach (Observation added in teardown.Observations.Where(o => places.Contains(o.Location)))
        {
            if (Earlier(teardown, added) is { } earlier)
            {
                bool same = earlier.Extent == added.Extent && earlier.Look == added.Look;
                questions.Add(Question(same ? "FW092" : "FW091", added, same
                    ? $"this stands already {Where(earlier)}; add it a second time?"
                    : $"{Name(knowledge, added)} stands {Where(earlier)} with another amount ({Amount(earlier)}, now {Amount(added)}); which is right?"));
            }

            if (added.On.FirstOrDefault(on => !HasPlace(knowledge, added.Part, on)) is { } place)
            {
                questions.Add(Question("FW099", added, $"'{place}' is no usual place on {knowledge.Parts[added.Part].Name}: is it the right part, and the right place?"));
            }

            if (added.Look == Look.Seen && !knowledge.Marks.IsKnownOn(added.Part, added.Pattern!))
            {
                questions.Add(Question("FW093", added, Unknown(knowledge, added)));
            }

            if (added.Look == Look.Seen && knowledge.Patterns[added.Pattern!].Check is { } check && check.LostBy.Contains("cleaning") && teardown.History.Any(h => h.Holds && h.Id == Cleaned))
            {
                questions.Add(Question("FW094", added, $"the case says that the parts were cleaned before anyone looked, and cleaning takes '{knowledge.Patterns[added.Pattern!].Name}' away: was it seen before?"));
            }
        }

        questions.AddRange(teardown.Measurements.Where(m => places.Contains(m.At)).Select(m => AboutReading(knowledge, teardown, m)).OfType<Problem>());
        questions.AddRange(teardown.NotLookedAt.Where(n => places.Contains(n.At)).Select(n => AboutUnlooked(knowledge, teardown, n)).OfType<Problem>());
        return [.. questions.Distinct().OrderBy(q => q.At.Line).ThenBy(q => q.At.Column).ThenBy(q => q.Code, StringComparer.Ordinal)];
    }

    private static Problem? AboutReading(KnowledgeBase knowledge, TeardownCase teardown, Measurement added)
    {
        Measurement? earlier = teardown.Measurements.TakeWhile(m => m != added).FirstOrDefault(m =>
            m.Quantity == added.Quantity && m.Part == added.Part && m.Places.SequenceEqual(added.Places) && m.On.Order(StringComparer.Ordinal).SequenceEqual(added.On.Order(StringComparer.Ordinal)));
        if (earlier is null)
        {
            return null;
        }

        string where = Where(earlier.At);
        return Question(earlier.Value == added.Value ? "FW092" : "FW091", added.At, earlier.Value == added.Value
            ? $"this reading stands already {where}; add it a second time?"
            : $"{added.Quantity.Replace('-', ' ')} of {knowledge.Parts[added.Part].Name} stands {where} as {earlier.Value}, now {added.Value}; is it a second reading of the same place, or was one misread?");
    }

    private static Problem? AboutUnlooked(KnowledgeBase knowledge, TeardownCase teardown, NotLookedAt added)
    {
        if (teardown.NotLookedAt.TakeWhile(n => n != added).FirstOrDefault(n => n.Part == added.Part) is { } twice)
        {
            return Question("FW092", added.At, $"{knowledge.Parts[added.Part].Name} stands already as not looked at {Where(twice.At)}; add it a second time?");
        }

        return teardown.Observations.FirstOrDefault(o => o.Part == added.Part) is { } seen
            ? Question("FW091", added.At, $"{knowledge.Parts[added.Part].Name} was looked at {Where(seen.Location)} and is now said not to have been; which is right?")
            : null;
    }

    private static bool HasPlace(KnowledgeBase knowledge, string part, string place) =>
        knowledge.PartLine(part).SelectMany(p => knowledge.Parts[p].Places).ToArray() is var axes
        && (axes.Length == 0 || !knowledge.AxisOf.TryGetValue(place, out string? axis) || axes.Contains(axis));

    private static string Where(Observation o) => Where(o.Location);

    private static string Where(Location at) => at.File == ShortCodes.Source ? "earlier in these codes" : $"at line {at.Line}";

    private static Problem Question(string code, Observation at, string message) => Question(code, at.Location, message);

    private static Problem Question(string code, Location at, string message) => new(code, Severity.Warning, at, message + " To keep it as written, add --anyway.");

    private static Observation? Earlier(TeardownCase teardown, Observation added) => teardown.Observations.FirstOrDefault(o =>
        o.Number < added.Number && o.Part == added.Part && o.Pattern == added.Pattern && o.Look == added.Look && o.Spread == added.Spread
        && o.On.Order(StringComparer.Ordinal).SequenceEqual(added.On.Order(StringComparer.Ordinal))
        && (o.Spread != At.Numbers || o.Places.Intersect(added.Places).Any()));

    /// <summary>What is asked about a mark that no rule speaks of on its part.</summary>
    public static string Unknown(KnowledgeBase knowledge, Observation o) =>
        $"no rule knows '{knowledge.Patterns[o.Pattern!].Name}' on {knowledge.Parts[o.Part].Name}: is it the right part, and the right word? {knowledge.Patterns[o.Pattern!].Says}";

    private static string Name(KnowledgeBase knowledge, Observation o) =>
        $"{knowledge.Parts[o.Part].Name}: {(o.Pattern is { } pattern ? knowledge.Patterns[pattern].Name : "sound")}";

    private static string Amount(Observation o) => o.Extent == Extent.Unstated ? "no amount" : o.Extent.ToString().ToLowerInvariant();
}
