namespace Failwise.Calculations;

/// <summary>Number text without idle zeros.</summary>
internal static class TextTrim
{
    public static string TrimTrailingZeros(this string number) =>
        number.Contains('.', StringComparison.Ordinal) ? number.TrimEnd('0').TrimEnd('.') : number;
}
