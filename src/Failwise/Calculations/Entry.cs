namespace Failwise.Calculations;

/// <summary>Short forms for writing catalogue entries.</summary>
internal static class Entry
{
    public static CalculationInput Num(
        string name,
        string unit,
        string what,
        double? above = null,
        double? from = null,
        double to = double.PositiveInfinity,
        string? def = null,
        bool optional = false) =>
        new(name, what, InputKind.Number, unit, above ?? from ?? double.NegativeInfinity, above is not null, to, def, optional, []);

    public static CalculationInput List(
        string name,
        string unit,
        string what,
        double? above = null,
        double? from = null,
        double to = double.PositiveInfinity,
        bool optional = false) =>
        new(name, what, InputKind.List, unit, above ?? from ?? double.NegativeInfinity, above is not null, to, null, optional, []);

    public static CalculationInput Word(string name, string what, string? def, params string[] words) =>
        new(name, what, InputKind.Word, "", double.NegativeInfinity, false, double.PositiveInfinity, def, false, words);

    public static CalculationOutput Out(string name, string unit, string what, int digits = 3) => new(name, what, unit, digits);

    public static CalculationOutput Says(string name, string what) => new(name, what, "", 0);
}
