namespace Failwise.Calculations;

/// <summary>Wear of roller chains.</summary>
public static class ChainElongation
{
    /// <summary>Elongation of a chain.</summary>
    /// <param name="measuredMm">Length over a counted number of links, pulled straight [mm].</param>
    /// <param name="nominalMm">Length of the same links when new [mm], above 0.</param>
    /// <returns>Elongation [%].</returns>
    /// <remarks>
    /// Formula: 100 (measured - nominal) / nominal. Valid: chain pulled straight, pin to pin. Source: trywhisler.com, roller chain
    /// replacement, worked example (printed as 3 %).
    /// Example: 24.75 in over 24 in gives 3.125 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The chain would be shorter than new by more than 0.5 % or longer by more than 15
    /// %.</exception>
    public static double Percent(double measuredMm, double nominalMm)
    {
        Require.Above(nominalMm, 0, "nominal length", "mm");
        var percent = 100 * (measuredMm - nominalMm) / nominalMm;
        Require.That(
            percent is >= -0.5 and <= 15,
            $"{measuredMm:G5} mm against {nominalMm:G5} mm is {percent:F1} %: outside -0.5 to 15 %, so the links were counted wrongly.");
        return percent;
    }

    /// <summary>Elongation at which a chain is worn out.</summary>
    /// <param name="teeth">Teeth of the large sprocket [-], 9 to 200.</param>
    /// <param name="fixedCentres">True for fixed centres, parallel strands or smooth running, as in timing drives.</param>
    /// <returns>Limit [%].</returns>
    /// <remarks>
    /// Formula: 3 % up to 66 teeth, above it 200 / teeth; 1.5 % with fixed centres. Valid: roller chains; the maker's limit comes first.
    /// Source: diamondchain.com FAQ; regalbeloit FAQ citing ANSI B29.1. Example: 67 teeth gives 2.985 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Teeth are out of range.</exception>
    public static double LimitPercent(double teeth, bool fixedCentres)
    {
        Require.Within(teeth, 9, 200, "teeth");
        var general = teeth <= 66 ? 3 : 200 / teeth;
        return fixedCentres ? Math.Min(1.5, general) : general;
    }
}
