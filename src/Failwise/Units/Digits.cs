namespace Failwise.Units;

/// <summary>Numbers with no more digits than the evidence bears.</summary>
internal static class Digits
{
    /// <summary>A number rounded to so many significant digits, never in exponent form.</summary>
    public static string Significant(double value, int digits)
    {
        if (value == 0 || !double.IsFinite(value))
            return value == 0 ? "0" : "no number";
        return ToStep(value, StepOf(value, digits));
    }

    /// <summary>Power of ten of the last digit when a number shows so many significant digits; -2 means hundredths.</summary>
    public static int StepOf(double value, int digits)
    {
        if (value == 0 || !double.IsFinite(value))
            return 0;
        var step = (int)Math.Floor(Math.Log10(Math.Abs(value))) - digits + 1;
        // 9.996 shows as 10.0 with three digits: rounding can gain a digit in front.
        return Math.Abs(value) / Math.Pow(10, step) >= Math.Pow(10, digits) - 0.5 ? step + 1 : step;
    }

    /// <summary>A number rounded to a power of ten.</summary>
    public static string ToStep(double value, int step)
    {
        if (step <= 0)
            return value.ToString($"F{Math.Min(-step, 12)}");
        var scale = Math.Pow(10, step);
        return (Math.Round(value / scale, MidpointRounding.AwayFromZero) * scale).ToString("F0");
    }
}
