namespace Failwise.Calculations;

/// <summary>Crankshaft bend from dial readings.</summary>
public static class CrankBend
{
    /// <summary>Bend from the full swing of the dial.</summary>
    /// <param name="dialTotalMm">Largest less smallest reading over one turn [mm], 0 to 5.</param>
    /// <param name="outOfRoundMm">Out-of-round of the journal itself [mm], 0 or above.</param>
    /// <returns>Bend [mm].</returns>
    /// <remarks>
    /// Formula: (swing - out-of-round) / 2. Valid: shaft on V-blocks at the end journals; out-of-round taken off is the worst case, from
    /// memory. Source: TM 10-3930-653-14&amp;P (US Army), page 61, which counts half the dial total as bend.
    /// Example: 0.10 mm of dial is 0.05 mm of bend.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double BendMm(double dialTotalMm, double outOfRoundMm = 0)
    {
        Require.Within(dialTotalMm, 0, 5, "dial swing", "mm");
        Require.Within(outOfRoundMm, 0, dialTotalMm, "out-of-round", "mm");
        return (dialTotalMm - outOfRoundMm) / 2;
    }

    /// <summary>Runout of one journal against its neighbour.</summary>
    /// <param name="firstMm">Dial swing at the first journal [mm], 0 or above.</param>
    /// <param name="secondMm">Dial swing at the neighbour [mm], 0 or above.</param>
    /// <param name="highSpotsApartDeg">Angle between the two high spots [deg], 0 to 180.</param>
    /// <returns>Runout between the two, as dial swing [mm].</returns>
    /// <remarks>
    /// Formula: sqrt(a² + b² - 2 a b cos phi): opposite high spots add, high spots in line subtract. Valid: bend much larger than
    /// out-of-round.
    /// Source: TM 9-2815-202-34 (US Army), par. 4-35, gives the two ends of the rule; the angle in between by geometry. Example: 0.001 and
    /// 0.002 in opposite is 0.003 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double AdjacentMm(double firstMm, double secondMm, double highSpotsApartDeg)
    {
        Require.Within(firstMm, 0, 5, "dial swing", "mm");
        Require.Within(secondMm, 0, 5, "dial swing", "mm");
        Require.Within(highSpotsApartDeg, 0, 180, "angle between high spots", "deg");
        return Math.Sqrt(
            Math.Max(0, firstMm * firstMm + secondMm * secondMm - 2 * firstMm * secondMm * Math.Cos(highSpotsApartDeg * Math.PI / 180)));
    }

    /// <summary>Runout allowed between neighbours in the published example.</summary>
    /// <param name="highSpotsApartDeg">Angle between the two high spots [deg], 0 to 180.</param>
    /// <returns>Limit [mm]: 0.004 in at right angles, 0.003 in when opposed, and the stricter one elsewhere.</returns>
    /// <remarks>
    /// Formula: table. Valid: that two-stroke diesel only. Source: TM 9-2815-202-34 (US Army), par. 4-35. Example: 180 deg gives 0.003 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Angle is out of range.</exception>
    public static double AdjacentExampleLimitMm(double highSpotsApartDeg)
    {
        Require.Within(highSpotsApartDeg, 0, 180, "angle between high spots", "deg");
        return Math.Abs(highSpotsApartDeg - 90) <= 20 ? 0.004 * 25.4 : 0.003 * 25.4;
    }
}
