using Failwise.Knowledge;

namespace Failwise.Reports;

/// <summary>Says a condition in words.</summary>
internal static class ConditionText
{
    public static string Say(KnowledgeBase knowledge, Condition condition) => condition switch
    {
        AllOf c => string.Join(" and ", c.Parts.Select(p => Say(knowledge, p))),
        AnyOf c => "either " + string.Join(" or ", c.Parts.Select(p => Say(knowledge, p))),
        NoneOf c => "and not: " + string.Join(", nor ", c.Parts.Select(p => Say(knowledge, p))),
        SightingCondition c => $"{knowledge.Parts[c.Part].Name} {(c.See.Count == 0 ? "sound" : string.Join(" or ", c.See.Select(s => knowledge.Patterns[s].Name)))}{Rest(c.On, c.AtLeast, c.Spread)}",
        StatedCondition c => c.Kind switch
        {
            StatedKind.History => knowledge.Circumstances[c.Id].Says.TrimEnd('.'),
            StatedKind.Symptom => knowledge.Symptoms[c.Id].Says.TrimEnd('.'),
            StatedKind.Finding => knowledge.Findings[c.Id].Says.TrimEnd('.'),
            _ => "the build: " + c.Id,
        },
        NumberCondition c => $"{c.Number}{(c.Below is { } b ? " below " + b : "")}{(c.Above is { } a ? " above " + a : "")}",
        ReadingCondition c => $"{c.Quantity} of {knowledge.Parts[c.Part].Name} {c.Is.Replace('-', ' ')}{Rest([], Extent.Unstated, c.Spread)}",
        ResultCondition c => $"{c.Output.Replace('-', ' ')} by {c.Calculation}{(c.Below is { } b ? " below " + b : "")}{(c.Above is { } a ? " above " + a : "")}{(c.Is is { } word ? " is " + word : "")}",
        _ => "",
    };

    private static string Rest(IReadOnlyList<string> on, Extent atLeast, Spread spread)
    {
        List<string> words = [.. on.Select(w => w.Replace('-', ' '))];
        if (atLeast != Extent.Unstated)
        {
            words.Add("at least " + atLeast.ToString().ToLowerInvariant());
        }

        words.AddRange(spread.Count switch
        {
            CountOver.Anywhere => [],
            CountOver.AtLeast => [$"on at least {spread.Least}"],
            CountOver.AllButOne => ["on all but one"],
            _ => new[] { "on " + spread.Count.ToString().ToLowerInvariant() },
        });
        if (spread.Where != WhereAlong.Anywhere)
        {
            words.Add(Spaced(spread.Where.ToString()));
        }

        if (spread.Lie != LieOn.Anywhere)
        {
            words.Add("on " + Spaced(spread.Lie.ToString()));
        }

        return words.Count == 0 ? "" : ", " + string.Join(", ", words);
    }

    private static string Spaced(string camel) =>
        string.Concat(camel.Select((c, i) => char.IsUpper(c) && i > 0 ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
}
