namespace Failwise.Calculations;

/// <summary>Cranking compression test.</summary>
public static class Compression
{
    /// <summary>Lowest cylinder as a part of the highest.</summary>
    /// <param name="readingsBar">Highest steady reading of each cylinder [bar], 2 to 24 of them, all above 0.</param>
    /// <returns>Lowest over highest [%].</returns>
    /// <remarks>
    /// Formula: 100 lowest / highest. Valid: throttle open, engine warm, same number of strokes each; petrol and diesel alike as a
    /// comparison.
    /// Source: vehicle service data, engine compression test (2006 reprint): 70 %; two other makers ask 75 %. Example: by hand, 725 of 1035
    /// kPa is 70 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Too few readings or one of 0 or below.</exception>
    public static double LowestPercent(IReadOnlyList<double> readingsBar)
    {
        ArgumentNullException.ThrowIfNull(readingsBar);
        Require.Within(readingsBar.Count, 2, 24, "number of cylinders");
        foreach (var reading in readingsBar)
            Require.AtLeast(reading, 0, "reading", "bar");
        Require.Above(readingsBar.Max(), 0, "highest reading", "bar");
        return 100 * readingsBar.Min() / readingsBar.Max();
    }

    /// <summary>Lowest reading allowed beside a highest one.</summary>
    /// <param name="highestBar">Highest reading [bar], above 0.</param>
    /// <param name="sharePercent">Share asked [%], 50 to 100; 70 in the published example.</param>
    /// <returns>Lowest allowed [bar].</returns>
    /// <remarks>Formula: share times highest, and 690 kPa at least. Valid: as <see cref="LowestPercent"/>. Source: as
    /// <see cref="LowestPercent"/>. Example: 1035 kPa asks for 725 kPa.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double LowestAllowedBar(double highestBar, double sharePercent = 70)
    {
        Require.Above(highestBar, 0, "highest reading", "bar");
        Require.Within(sharePercent, 50, 100, "share", "%");
        return Math.Max(highestBar * sharePercent / 100, 6.9);
    }

    /// <summary>Minimum oil pressure by the speed rule of thumb.</summary>
    /// <param name="speedRpm">Engine speed [rev/min], 300 to 8000.</param>
    /// <returns>Pressure [bar].</returns>
    /// <remarks>
    /// Formula: 10 psi for each 1000 rev/min. Valid: folklore: no standard or maker's manual giving it was found; never a limit.
    /// Source: Rico Instrument Co. web page on oil pressure (a second page says 7 to 10 psi). Example: 1000 rev/min gives 10 psi.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Speed is out of range.</exception>
    public static double OilPressureFolkloreBar(double speedRpm)
    {
        Require.Within(speedRpm, 300, 8000, "speed", "rpm");
        return speedRpm / 1000 * 10 * (0.45359237 * 9.80665 / (0.0254 * 0.0254)) / 1e5;
    }
}
