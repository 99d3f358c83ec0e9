namespace Failwise.Calculations;

/// <summary>Differential compression (leak-down) test.</summary>
public static class LeakDown
{
    /// <summary>Part of the pressure lost in the cylinder.</summary>
    /// <param name="feedBar">Regulated feed pressure [bar], above 0.</param>
    /// <param name="readingBar">Pressure behind the orifice [bar], 0 to the feed.</param>
    /// <returns>Loss [%].</returns>
    /// <remarks>
    /// Formula: 100 (feed - reading) / feed. Valid: the figure depends on the orifice, so compare only readings of one tester.
    /// Source: AC 43.13-1B (FAA, 2001), par. 8-14, page 8-15. Example: 60 of 80 psi is 25 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double LossPercent(double feedBar, double readingBar)
    {
        Require.Above(feedBar, 0, "feed pressure", "bar");
        Require.Within(readingBar, 0, feedBar, "reading", "bar");
        return 100 * (feedBar - readingBar) / feedBar;
    }

    /// <summary>Loss above which a cylinder is suspect on the aircraft tester.</summary>
    /// <remarks>Source: AC 43.13-1B (FAA, 2001), par. 8-14 b(5).</remarks>
    internal const double SuspectLossPercent = 25;

    /// <summary>Orifice of the aircraft tester.</summary>
    /// <param name="boreMm">Bore of the engine [mm], 40 to 250.</param>
    /// <returns>Orifice diameter [mm].</returns>
    /// <remarks>
    /// Formula: 0.040 in below a 5 in bore, 0.060 in from 5 in, each 0.250 in long with a 60 degree approach. Valid: aircraft piston
    /// engines; other testers follow no single standard.
    /// Source: AC 43.13-1B (FAA, 2001), par. 8-14, quoted in a FAASTeam maintenance tip, November 2011. Example: 4 in bore takes 0.040 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Bore is out of range.</exception>
    public static double OrificeMm(double boreMm)
    {
        Require.Within(boreMm, 40, 250, "bore", "mm");
        return (boreMm < 5 * 25.4 ? 0.040 : 0.060) * 25.4;
    }
}
