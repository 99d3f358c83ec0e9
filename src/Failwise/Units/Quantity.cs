namespace Failwise.Units;

/// <summary>A measured or stated amount, kept as it was written.</summary>
/// <param name="Text">The text as written, for instance <c>1.5 thou</c>.</param>
/// <param name="Value">The number in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit as written.</param>
/// <param name="Decimals">How many places behind the point carry meaning, which says how finely it was read; -2 means hundreds.</param>
public sealed record Quantity(string Text, double Value, Unit Unit, int Decimals)
{
    /// <summary>A quantity that was worked out rather than written.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="significant">How many digits carry meaning.</param>
    /// <returns>The quantity with a text of that many digits.</returns>
    public static Quantity Worked(double value, Unit unit, int significant = 3)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var number = Digits.Significant(value, significant);
        var text = unit.Symbol == "-" ? number : $"{number} {unit.Symbol}";
        return new Quantity(text, value, unit, -Digits.StepOf(value, significant));
    }

    /// <summary>The value in another unit of the same dimension.</summary>
    /// <param name="unit">A spelling of the unit wanted.</param>
    /// <returns>The converted number.</returns>
    /// <exception cref="ArgumentException">The unit is unknown or measures something else.</exception>
    public double In(string unit) => Unit.Convert(Value, UnitTable.Get(unit));

    /// <summary>The same amount in the other system, with no more digits than were written; null when both systems share the
    /// unit.</summary>
    /// <returns>A quantity in the other system, or null.</returns>
    public Quantity? InOtherSystem()
    {
        if (Unit.Counterpart.Length == 0)
            return null;
        var target = UnitTable.Get(Unit.Counterpart);
        var value = Unit.Convert(Value, target);
        var step = Math.Pow(10, -Decimals) * Unit.Factor / target.Factor;
        var decimals = Math.Min((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 12);
        return new Quantity($"{Digits.ToStep(value, -decimals)} {target.Symbol}", value, target, decimals);
    }

    /// <summary>As written, with the other system in brackets where there is one.</summary>
    /// <returns>For instance <c>57.94 mm (2.2811 in)</c>.</returns>
    public string InBothSystems() => InOtherSystem() is { } other ? $"{Text} ({other.Text})" : Text;

    /// <summary>The text as written.</summary>
    public override string ToString() => Text;
}
