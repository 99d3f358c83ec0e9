namespace Failwise.Pricing;

/// <summary>A span of money or hours; both 0 or above, <paramref name="Most"/> not below <paramref name="Least"/>.</summary>
public sealed record Span(double Least, double Most)
{
    /// <summary>Nothing.</summary>
    public static Span Zero { get; } = new(0, 0);

    public static Span operator +(Span a, Span b) => Add(a, b);

    /// <summary>Both together.</summary>
    public static Span Add(Span a, Span b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return new Span(a.Least + b.Least, a.Most + b.Most);
    }

    /// <summary>The span as many times over.</summary>
    public Span Times(double least, double most) => new(Least * least, Most * most);
}

/// <summary>What a shop charges.</summary>
/// <param name="Currency">The currency, as the shop writes it.</param>
/// <param name="Labour">Money for an hour.</param>
/// <param name="LabourFor">Money for an hour of one sort of work, by the word of the rules (machine, clean ...).</param>
/// <param name="Hours">How this shop's hours compare with those of the rules; 1 when they are alike.</param>
/// <param name="Work">Fixed prices for pieces of work, by id: what another shop charges for the whole job.</param>
/// <param name="Parts">Price of one, by part id.</param>
/// <param name="UsedUp">Money for what a job uses up, by the name it has in the plan.</param>
public sealed record ShopRates(
    string Currency, Span Labour, IReadOnlyDictionary<string, Span> LabourFor, double Hours, IReadOnlyDictionary<string, Span> Work,
    IReadOnlyDictionary<string, Span> Parts, IReadOnlyDictionary<string, Span> UsedUp);
