using System.Globalization;
using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Work;

namespace Failwise.Reports;

/// <summary>Words for the plan of work, the same in text, Markdown and JSON.</summary>
internal static class PlanWords
{
    public static string Of(Decision decision) => WorkShapes.Decisions[(int)decision];

    /// <summary>The decision as the shop says it.</summary>
    public static string Say(Decision decision) => decision switch
    {
        Decision.MeasureFirst => "measure first",
        Decision.Monitor => "reuse and watch",
        _ => Of(decision),
    };

    public static string Of(DownstreamAction action) => action.ToString().ToLowerInvariant();

    public static string Stage(string stage) => Phrases.StageTitle(stage);

    /// <summary>A part with its numbers: "main bearing 1, 2, 3".</summary>
    public static string Part(KnowledgeBase knowledge, string part, IReadOnlyList<int> places) =>
        knowledge.Parts[part].Name + (places.Count > 0 ? " " + string.Join(", ", places) : "");

    public static string Limit(PartDecision d) => d.LimitFrom is { } from ? $"{d.Limit} ({from})" : d.Limit;

    public static string Hours(WorkTime time) =>
        (time.Most < 60 ? $"{time.Least:0} to {time.Most:0} min" : $"{Number(time.Least / 60)} to {Number(time.Most / 60)} h") + (time.Stated ? "" : ", in part estimated");

    public static string Money(Span span, string currency) =>
        span.Most - span.Least < 0.5 ? $"{Whole(span.Least)} {currency}" : $"{Whole(span.Least)} to {Whole(span.Most)} {currency}";

    public static string Risk(ScopeOption scope)
    {
        if (scope.Left.Count == 0)
        {
            return "no listed cause of 5 % or more stays";
        }

        string least = Percent(scope.RiskLeast), most = Percent(scope.RiskMost);
        return least == most ? least : $"{least} to {most}";
    }

    /// <summary>Cost of a scope, for a table cell.</summary>
    public static string Cost(JobEstimate estimate, ScopeOption scope) => Money(estimate.Scopes.First(c => c.Scope == scope.Id).Total, estimate.Currency)
        + (estimate.Scopes.First(c => c.Scope == scope.Id) is { Unpriced.Count: > 0 } open ? open.Parts.Most > 0 ? ", and what has no price (below)" : ", for the work alone: no part has a price (below)" : "");

    /// <summary>What has no price or no known number and so stands outside every sum; null when everything is priced.</summary>
    public static string? Unpriced(JobEstimate estimate)
    {
        string[] open = [.. estimate.Scopes.SelectMany(c => c.Unpriced).Distinct()];
        return open.Length == 0 ? null : "Not in the sums, for want of a price or a number: " + string.Join(", ", open) + ".";
    }

    public static string Percent(double p) => $"{100 * p:0} %";

    public static string Number(double value) => value.ToString(value < 10 ? "0.#" : "0", CultureInfo.InvariantCulture);

    private static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);
}
