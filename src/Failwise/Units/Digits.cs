namespace Failwise.Units;

/// <summary>Numbers with no more digits than the evidence bears.</summary>
internal static class Digits
{
    /// <summary>A number rounded to so many significant digits, never in exponent form.</summary>
    public static string Significant(double value, int digits)
    {
        if (value == 0 || !double.IsFinite(value))
            return value == 0 ? "0" : "no number";
        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        var decimals = digits - 1 - magnitude;
        if (decimals >= 0)
            return value.ToString($"F{Math.Min(decimals, 12)}");
        var scale = Math.Pow(10, -decimals);
        return (Math.Round(value / scale, MidpointRounding.AwayFromZero) * scale).ToString("F0");
    }
}
