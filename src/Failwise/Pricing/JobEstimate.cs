using Failwise.Knowledge;
using Failwise.Work;

namespace Failwise.Pricing;

/// <summary>What one scope of the plan costs.</summary>
/// <param name="Scope">Id of the scope.</param>
/// <param name="Hours">Hours in the shop, without the work that has a fixed price.</param>
/// <param name="Labour">Hours times the rate.</param>
/// <param name="Fixed">Work with a fixed price, such as another shop's.</param>
/// <param name="Parts">Parts whose number and price are known, and what is used up.</param>
/// <param name="Unpriced">What has no price or no known number, so that it stands outside the total.</param>
public sealed record ScopeCost(string Scope, Span Hours, Span Labour, Span Fixed, Span Parts, IReadOnlyList<string> Unpriced)
{
    /// <summary>Everything that could be priced.</summary>
    public Span Total => Labour + Fixed + Parts;
}

/// <summary>The cost of a job, by scope. A figure for talking about the job, not an offer.</summary>
public sealed record JobEstimate(string Currency, IReadOnlyList<ScopeCost> Scopes);

/// <summary>Prices a plan with a shop's rates.</summary>
public static class Estimator
{
    /// <summary>
    /// Prices every scope of the plan. Work that is to be checked first counts from nothing (the check shows no need) to all of it.
    /// </summary>
    public static JobEstimate Price(KnowledgeBase knowledge, WorkPlan plan, ShopRates rates)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(rates);
        return new JobEstimate(rates.Currency, [.. plan.Scopes.Select(s => Price(plan, s, rates))]);
    }

    private static ScopeCost Price(WorkPlan plan, ScopeOption scope, ShopRates rates)
    {
        HashSet<string> steps = new(scope.Steps, StringComparer.Ordinal);
        Span hours = Span.Zero, labour = Span.Zero, fixedPrice = Span.Zero;
        foreach (WorkItem item in plan.Items.Where(i => steps.Contains(i.Rule.Id)))
        {
            double least = item.Needed ? 1 : 0;
            if (rates.Work.TryGetValue(item.Rule.Id, out Span? whole))
            {
                fixedPrice += whole.Times(least, 1);
                continue;
            }

            Span time = new(least * item.Time.Least / 60 * rates.Hours, item.Time.Most / 60 * rates.Hours);
            Span rate = rates.LabourFor.GetValueOrDefault(item.Rule.Does) ?? rates.Labour;
            hours += time;
            labour += rate.Times(time.Least, time.Most);
        }

        (Span parts, List<string> unpriced) = Parts(plan, steps, rates);
        return new ScopeCost(scope.Id, hours, labour, fixedPrice, parts, unpriced);
    }

    private static (Span Sum, List<string> Unpriced) Parts(WorkPlan plan, HashSet<string> steps, ShopRates rates)
    {
        Span sum = Span.Zero;
        List<string> unpriced = [];
        foreach (PartsLine line in plan.Orders.Parts.Where(p => p.Steps.Count == 0 || p.Steps.Any(steps.Contains)))
        {
            if (line.Count is { } count && PriceOf(line, rates) is { } price)
            {
                sum += price.Times(line.CheckFirst ? 0 : count, count);
            }
            else
            {
                unpriced.Add(line.Count is null ? $"{line.Item} (how many is not known)" : line.Item);
            }
        }

        foreach (ConsumableLine line in plan.Orders.Consumables.Where(c => c.Steps.Any(steps.Contains)))
        {
            if (rates.UsedUp.TryGetValue(line.Item, out Span? price))
            {
                sum += price;
            }
            else
            {
                unpriced.Add(line.Item);
            }
        }

        return (sum, unpriced);
    }

    private static Span? PriceOf(PartsLine line, ShopRates rates) =>
        line.Part is { } part && rates.Parts.TryGetValue(part, out Span? price) ? price : rates.UsedUp.GetValueOrDefault(line.Item);
}
