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

            if (added.Look == Look.Seen && !IsKnownOn(knowledge, added.Part, added.Pattern!))
            {
                questions.Add(Question("FW093", added, $"no rule knows '{knowledge.Patterns[added.Pattern!].Name}' on {knowledge.Parts[added.Part].Name}: is it the right part, and the right word? {knowledge.Patterns[added.Pattern!].Says}"));
            }

            if (added.Look == Look.Seen && knowledge.Patterns[added.Pattern!].Check is { } check && check.LostBy.Contains("cleaning") && teardown.History.Any(h => h.Holds && h.Id == Cleaned))
            {
                questions.Add(Question("FW094", added, $"the case says that the parts were cleaned before anyone looked, and cleaning takes '{knowledge.Patterns[added.Pattern!].Name}' away: was it seen before?"));
            }
        }

        return questions;
    }

    private static string Where(Observation o) => o.Location.File == ShortCodes.Source ? "earlier in these codes" : $"at line {o.Location.Line}";

    private static Problem Question(string code, Observation at, string message) =>
        new(code, Severity.Warning, at.Location, message + " To keep it as written, add --anyway.");

    private static Observation? Earlier(TeardownCase teardown, Observation added) => teardown.Observations.FirstOrDefault(o =>
        o.Number < added.Number && o.Part == added.Part && o.Pattern == added.Pattern && o.Look == added.Look && o.Spread == added.Spread
        && o.On.Order(StringComparer.Ordinal).SequenceEqual(added.On.Order(StringComparer.Ordinal))
        && (o.Spread != At.Numbers || o.Places.Intersect(added.Places).Any()));

    private static string Name(KnowledgeBase knowledge, Observation o) =>
        $"{knowledge.Parts[o.Part].Name}: {(o.Pattern is { } pattern ? knowledge.Patterns[pattern].Name : "sound")}";

    private static string Amount(Observation o) => o.Extent == Extent.Unstated ? "no amount" : o.Extent.ToString().ToLowerInvariant();

    /// <summary>True when some cause or finding speaks of the pattern, or a kinship of it, on the part or a kinship of it.</summary>
    private static bool IsKnownOn(KnowledgeBase knowledge, string part, string pattern) =>
        knowledge.Patterns[pattern].Sound || knowledge.Causes.Values.Any(c => c.Leaves.Any(l => l.Sign is { } s && Fits(knowledge, s, part, pattern)))
        || knowledge.Findings.Values.Any(f => f.Refines.Any(s => Fits(knowledge, s, part, pattern)) || Sightings(f.When).Any(c => c.See.Any(see => Fits(knowledge, new Sign(c.Part, see), part, pattern))))
        || knowledge.Work.Values.Any(w => w.Because.Any(t => t.Part is { } p && t.See.Any(see => Fits(knowledge, new Sign(p, see), part, pattern))));

    private static bool Fits(KnowledgeBase knowledge, Sign sign, string part, string pattern) =>
        (knowledge.PartIs(part, sign.Part) || knowledge.PartIs(sign.Part, part)) && (knowledge.PatternIs(pattern, sign.Pattern) || knowledge.PatternIs(sign.Pattern, pattern));

    private static IEnumerable<SightingCondition> Sightings(Condition condition) => condition switch
    {
        AllOf c => c.Parts.SelectMany(Sightings),
        AnyOf c => c.Parts.SelectMany(Sightings),
        NoneOf c => c.Parts.SelectMany(Sightings),
        SightingCondition c => [c],
        _ => [],
    };
}
