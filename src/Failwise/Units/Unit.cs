namespace Failwise.Units;

/// <summary>One unit of measure: how it is written, what it measures and how it converts.</summary>
/// <param name="Symbol">The spelling used in reports.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="System">Metric, inch or both.</param>
/// <param name="Factor">Multiplies a value in this unit into the base unit of the dimension.</param>
/// <param name="Offset">Added after <paramref name="Factor"/>; not 0 only for thermometer readings.</param>
/// <param name="Counterpart">Symbol of the unit a person of the other system would use, or empty.</param>
/// <param name="Spellings">Other ways a shop writes it.</param>
public sealed record Unit(
    string Symbol,
    Dimension Dimension,
    UnitSystem System,
    double Factor,
    double Offset,
    string Counterpart,
    IReadOnlyList<string> Spellings)
{
    /// <summary>Converts a value in this unit into another unit of the same dimension.</summary>
    /// <param name="value">The value in this unit.</param>
    /// <param name="target">The unit wanted.</param>
    /// <returns>The value in <paramref name="target"/>.</returns>
    /// <exception cref="ArgumentException">The two units measure different things.</exception>
    public double Convert(double value, Unit target)
    {
        ArgumentNullException.ThrowIfNull(target);
        if (target.Dimension != Dimension)
            throw new ArgumentException(
                $"{Symbol} measures {Words.Of(Dimension)}, {target.Symbol} measures {Words.Of(target.Dimension)}.",
                nameof(target));
        return ReferenceEquals(this, target) ? value : (value * Factor + Offset - target.Offset) / target.Factor;
    }

    /// <summary>Symbol of the unit.</summary>
    public override string ToString() => Symbol;
}
