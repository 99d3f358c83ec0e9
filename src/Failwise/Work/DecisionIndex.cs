using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Finds the decision rule that speaks most closely of a part and what was seen or measured on it.</summary>
internal static class DecisionIndex
{
    private const int Far = 1000;

    private static readonly DecisionRule NoRule = new(
        "no-rule", ["part"], [], false, null, Extent.Unstated, "measure-first", false, null, null, "No rule speaks of this; look it up in the maker's manual before it goes back in.",
        [new SourceRef("common-practice", null)], default);

    /// <summary>The rule for an observation; <paramref name="marked"/> is false for a sound part and for what only looks alarming.</summary>
    public static DecisionRule For(KnowledgeBase knowledge, Observation seen, bool marked) => Nearest(
        knowledge, seen.Part, rule => rule.Reading is not null || (rule.AtLeast != Extent.Unstated && Job.Stated(seen.Extent) < rule.AtLeast) ? null
            : rule.Sound ? (marked ? null : Far)
            : seen.Look == Look.Seen ? PatternDistance(knowledge, rule, seen.Pattern!) : null);

    /// <summary>The rule for a reading that stands to its limit as named.</summary>
    public static DecisionRule ForReading(KnowledgeBase knowledge, string part, string stands) =>
        Nearest(knowledge, part, rule => rule.Reading == stands ? 0 : null);

    private static int? PatternDistance(KnowledgeBase knowledge, DecisionRule rule, string pattern)
    {
        if (rule.See.Contains(DecisionRule.AnyMark))
        {
            return knowledge.Patterns[pattern].Sound ? null : Far;
        }

        IReadOnlyList<string> line = knowledge.PatternLine(pattern);
        int nearest = rule.See.Select(see => IndexOf(line, see)).Where(i => i >= 0).DefaultIfEmpty(Far + 1).Min();
        return nearest > Far ? null : nearest;
    }

    /// <summary>Nearest part first, then nearest pattern, then the rule that asks for most; ties by id.</summary>
    private static DecisionRule Nearest(KnowledgeBase knowledge, string part, Func<DecisionRule, int?> patternDistance)
    {
        IReadOnlyList<string> line = knowledge.PartLine(part);
        return knowledge.Decisions.Values
            .Select(rule => (rule, part: rule.Parts.Select(p => IndexOf(line, p)).Where(i => i >= 0).DefaultIfEmpty(-1).Min()))
            .Where(x => x.part >= 0)
            .Select(x => (x.rule, x.part, pattern: patternDistance(x.rule)))
            .Where(x => x.pattern is not null)
            .OrderBy(x => x.part).ThenBy(x => x.pattern).ThenByDescending(x => x.rule.AtLeast).ThenBy(x => x.rule.Id, StringComparer.Ordinal)
            .Select(x => x.rule).FirstOrDefault() ?? NoRule;
    }

    private static int IndexOf(IReadOnlyList<string> line, string id)
    {
        for (int i = 0; i < line.Count; i++)
        {
            if (line[i] == id)
            {
                return i;
            }
        }

        return -1;
    }
}
