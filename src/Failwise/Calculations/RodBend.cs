namespace Failwise.Calculations;

/// <summary>Bend and twist of connecting rods.</summary>
public static class RodBend
{
    /// <summary>Bend or twist over a common length.</summary>
    /// <param name="offsetMm">Difference read between the two ends of the test bar [mm], 0 to 5.</param>
    /// <param name="barMm">Distance between the two reading points [mm], 20 or more.</param>
    /// <param name="overMm">Length the limit is written for [mm], above 0.</param>
    /// <returns>Offset over that length [mm].</returns>
    /// <remarks>
    /// Formula: offset times (length of the limit) / (distance of the readings). Valid: straight bar through the small end. Source: by
    /// proportion; limits published for 25 and 100 mm differ by a factor of six, so the maker's counts.
    /// Example: 0.038 mm over 25 mm is 0.152 mm over 100 mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double OverLengthMm(double offsetMm, double barMm, double overMm)
    {
        Require.Within(offsetMm, 0, 5, "offset", "mm");
        Require.AtLeast(barMm, 20, "distance of the readings", "mm");
        Require.Above(overMm, 0, "length of the limit", "mm");
        return offsetMm * overMm / barMm;
    }
}
