using Failwise.Units;

namespace Failwise.Calculations;

/// <summary>How an input is written.</summary>
public enum InputKind
{
    /// <summary>One quantity.</summary>
    Number,
    /// <summary>Several quantities between semicolons; a bar starts the next plane of a part.</summary>
    List,
    /// <summary>One of a few words.</summary>
    Word,
}

/// <summary>One input of a calculation.</summary>
/// <param name="Name">Name in kebab-case.</param>
/// <param name="What">What it is, in shop words.</param>
/// <param name="Kind">How it is written.</param>
/// <param name="Unit">Unit of the range and of a bare number; empty for a word.</param>
/// <param name="Lowest">Lower end of the valid range, in <paramref name="Unit"/>.</param>
/// <param name="LowestExcluded">True when the lower end itself is not valid.</param>
/// <param name="Highest">Upper end of the valid range.</param>
/// <param name="Default">Text used when nothing is given; null when there is none.</param>
/// <param name="Optional">True when the calculation also works without it.</param>
/// <param name="Words">The allowed words.</param>
public sealed record CalculationInput(
    string Name,
    string What,
    InputKind Kind,
    string Unit,
    double Lowest,
    bool LowestExcluded,
    double Highest,
    string? Default,
    bool Optional,
    IReadOnlyList<string> Words)
{
    /// <summary>The valid range in words.</summary>
    public string Range => Kind == InputKind.Word ? string.Join(", ", Words) : (double.IsFinite(Lowest), double.IsFinite(Highest)) switch
    {
        (true, true) => $"{(LowestExcluded ? "above " : "")}{Show(Lowest)} to {Show(Highest)}{Suffix}",
        (true, false) => LowestExcluded ? $"above {Show(Lowest)}{Suffix}" : $"{Show(Lowest)}{Suffix} or more",
        (false, true) => $"up to {Show(Highest)}{Suffix}",
        _ => "any",
    };

    private string Suffix => Unit is "-" or "" ? "" : $" {Unit}";

    internal bool Holds(double value) => value <= Highest && (LowestExcluded ? value > Lowest : value >= Lowest);

    internal static string Show(double value) =>
        Math.Abs(value) is > 0 and < 1e-4 ? value.ToString("G6") : Digits.Significant(value, 6).TrimTrailingZeros();
}

/// <summary>One output of a calculation.</summary>
/// <param name="Name">Name in kebab-case.</param>
/// <param name="What">What it is, in shop words.</param>
/// <param name="Unit">Unit; empty when the output is a word.</param>
/// <param name="Digits">Significant digits worth printing.</param>
public sealed record CalculationOutput(string Name, string What, string Unit, int Digits);

/// <summary>One output with its value.</summary>
/// <param name="Output">What it is.</param>
/// <param name="Number">The value with all its digits, or null for a word.</param>
/// <param name="Text">The value as printed, with sensible digits and both systems of units.</param>
public sealed record OutputValue(CalculationOutput Output, double? Number, string Text)
{
    /// <summary>The number in another unit of the same dimension.</summary>
    /// <param name="unit">The unit wanted.</param>
    /// <returns>The converted number.</returns>
    /// <exception cref="InvalidOperationException">The output is a word.</exception>
    public double In(string unit) =>
        UnitTable.Get(Output.Unit).Convert(Number ?? throw new InvalidOperationException($"{Output.Name} is a word."), UnitTable.Get(unit));
}

/// <summary>One input as it was understood.</summary>
/// <param name="Input">Which input.</param>
/// <param name="Text">As written, with the other system in brackets.</param>
/// <param name="Assumed">True when the default was used.</param>
public sealed record InputEcho(CalculationInput Input, string Text, bool Assumed);

/// <summary>What a calculation gave, or why it gave nothing.</summary>
/// <param name="Calculation">The calculation.</param>
/// <param name="Inputs">The inputs as understood.</param>
/// <param name="Outputs">The outputs; empty when something is missing or wrong.</param>
/// <param name="Notes">Cautions that go with this very result.</param>
/// <param name="Missing">Inputs still needed.</param>
/// <param name="Problems">What is wrong with the inputs, in shop words.</param>
public sealed record CalculationResult(
    Calculation Calculation,
    IReadOnlyList<InputEcho> Inputs,
    IReadOnlyList<OutputValue> Outputs,
    IReadOnlyList<string> Notes,
    IReadOnlyList<CalculationInput> Missing,
    IReadOnlyList<string> Problems)
{
    /// <summary>True when the calculation could be worked.</summary>
    public bool Worked => Missing.Count == 0 && Problems.Count == 0;

    /// <summary>The output of that name.</summary>
    /// <param name="output">Name of the output.</param>
    /// <returns>The output, or null when the calculation did not give it.</returns>
    public OutputValue? this[string output] => Outputs.FirstOrDefault(value => value.Output.Name == output);
}
