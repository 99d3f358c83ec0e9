namespace Failwise.Calculations;

/// <summary>End float of a crankshaft and the washers that set it.</summary>
public static class EndFloat
{
    /// <summary>Oversize of thrust washers by the published selection table.</summary>
    /// <param name="playMm">End play reduced to standard washers [mm], 0 to 3.</param>
    /// <returns>Oversize of the washer pair [mm]: 0, 0.127 or 0.254; null where the crank must be replaced.</returns>
    /// <remarks>
    /// Formula: up to 0.016 in standard, to 0.026 in 0.005 oversize, to 0.036 in 0.010 oversize, above it the crank is worn out. Valid: the
    /// engine of that manual; an example of the method for others.
    /// Source: TM 5-4210-233-14&amp;P-2 (US Army), par. 6-29, table c; it prints 0.017 as the start of the next step. Example: 0.020 in
    /// asks for 0.005 in oversize.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">End play is out of range.</exception>
    public static double? WasherOversizeMm(double playMm)
    {
        Require.Within(playMm, 0, 3, "end play", "mm");
        return Math.Round(playMm / 25.4, 6) switch { <= 0.016 => 0, <= 0.026 => 0.005 * 25.4, <= 0.036 => 0.010 * 25.4, _ => null };
    }

    /// <summary>End play the engine would have with standard washers.</summary>
    /// <param name="measuredMm">End play measured with the washers now fitted [mm], 0 or above.</param>
    /// <param name="washersMm">Thickness of the two lower washers together [mm], above 0.</param>
    /// <param name="nominalMm">Thickness of a standard pair [mm]; 0.244 in in that manual.</param>
    /// <returns>Reduced end play [mm].</returns>
    /// <remarks>
    /// Formula: measured - (nominal pair - fitted pair). Valid: as <see cref="WasherOversizeMm"/>. Source: as
    /// <see cref="WasherOversizeMm"/>.
    /// Example: by hand, 0.024 in with a pair of 0.240 in is 0.020 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double ReducedPlayMm(double measuredMm, double washersMm, double nominalMm = 0.244 * 25.4)
    {
        Require.Within(measuredMm, 0, 3, "end play", "mm");
        Require.Above(washersMm, 0, "washer thickness", "mm");
        Require.Above(nominalMm, 0, "standard washer thickness", "mm");
        return measuredMm - (nominalMm - washersMm);
    }
}
