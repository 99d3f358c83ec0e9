namespace Failwise.Calculations;

/// <summary>Clearance of a piston in its bore.</summary>
public static class PistonClearance
{
    /// <summary>Clearance as a part of the bore.</summary>
    /// <param name="clearanceMm">Clearance [mm], 0 or above.</param>
    /// <param name="boreMm">Bore [mm], above 0.</param>
    /// <returns>Clearance in thousandths of the bore [-].</returns>
    /// <remarks>
    /// Formula: 1000 (bore - piston) / bore. Valid: any. Source: by definition; TM 9-6115-604-34, table 1-4 gives 0.0105 to 0.013 in on
    /// about 6.25 in.
    /// Example: 0.0105 in on 6.25 in gives 1.68 thousandths.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double PerThousand(double clearanceMm, double boreMm)
    {
        Require.AtLeast(clearanceMm, 0, "clearance", "mm");
        Require.Above(boreMm, 0, "bore", "mm");
        return 1000 * clearanceMm / boreMm;
    }

    /// <summary>Clearance lost when piston and bore warm up.</summary>
    /// <param name="boreMm">Bore [mm], above 0.</param>
    /// <param name="pistonRiseK">Warming of the piston skirt [K], 0 to 300.</param>
    /// <param name="boreRiseK">Warming of the bore [K], 0 to 300.</param>
    /// <param name="pistonGrowth">Heat growth of the piston [1/K], for aluminium alloy about 21e-6.</param>
    /// <param name="boreGrowth">Heat growth of the bore [1/K], for grey iron about 11e-6.</param>
    /// <returns>Clearance lost [mm], negative when gained.</returns>
    /// <remarks>
    /// Formula: bore (alpha_p dT_p - alpha_b dT_b). Valid: even warming; a skirt is not evenly warm. Source: linear heat growth, by
    /// definition; growth figures from memory.
    /// Example: by hand, 100 mm, both 100 K warmer, 21 and 11 millionths gives 0.1 mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double LostWhenWarmMm(
        double boreMm, double pistonRiseK, double boreRiseK, double pistonGrowth = 21e-6, double boreGrowth = 11e-6)
    {
        Require.Above(boreMm, 0, "bore", "mm");
        Require.Within(pistonRiseK, 0, 300, "warming of the piston", "K");
        Require.Within(boreRiseK, 0, 300, "warming of the bore", "K");
        Require.Within(pistonGrowth, 1e-6, 3e-5, "heat growth of the piston", "1/K");
        Require.Within(boreGrowth, 1e-6, 3e-5, "heat growth of the bore", "1/K");
        return boreMm * (pistonGrowth * pistonRiseK - boreGrowth * boreRiseK);
    }
}
