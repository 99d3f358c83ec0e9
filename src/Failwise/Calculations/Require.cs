namespace Failwise.Calculations;

/// <summary>Refuses a value outside the range a formula was made for, and names the range.</summary>
internal static class Require
{
    public static void Above(double value, double limit, string what, string unit = "")
    {
        if (!(value > limit) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(null, $"{what} must be above {Show(limit, unit)}, not {Show(value, unit)}.");
    }

    public static void AtLeast(double value, double limit, string what, string unit = "")
    {
        if (!(value >= limit) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(null, $"{what} must be {Show(limit, unit)} or more, not {Show(value, unit)}.");
    }

    public static void Within(double value, double low, double high, string what, string unit = "")
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(
                null, $"{what} must lie between {Show(low, "")} and {Show(high, unit)}, not {Show(value, unit)}.");
    }

    public static void That(bool holds, string otherwise)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(null, otherwise);
    }

    private static string Show(double value, string unit) => unit.Length == 0 ? value.ToString("G6") : $"{value:G6} {unit}";
}
