namespace Failwise.Calculations;

/// <summary>Published levels of one wear metal in engine oil.</summary>
/// <param name="Element">Chemical symbol.</param>
/// <param name="NormalTo">Upper end of normal [ppm].</param>
/// <param name="MarginalTo">Upper end of marginal [ppm].</param>
/// <param name="HighTo">Upper end of high; above it abnormal [ppm].</param>
/// <param name="AbnormalPerTenHours">Abnormal rise [ppm in 10 running hours].</param>
public sealed record WearLevel(string Element, double NormalTo, double MarginalTo, double HighTo, double AbnormalPerTenHours);

/// <summary>Wear metals, particles and water in oil.</summary>
public static class WearMetals
{
    /// <summary>Military levels of one two-stroke diesel; lead and molybdenum columns inferred.</summary>
    public static IReadOnlyList<WearLevel> MilitaryDiesel { get; } =
    [
        new("Fe", 123, 170, 215, 43),
        new("Ag", 6, 7, 10, 3),
        new("Al", 18, 27, 36, 7),
        new("Cu", 47, 67, 88, 17),
        new("Si", 40, 55, 75, 15),
        new("Sn", 43, 62, 81, 16),
        new("Pb", 27, 38, 49, 10),
        new("Mo", 2, 4, 6, 2),
    ];

    /// <summary>Level word of a reading on the military diesel scale.</summary>
    /// <param name="element">Fe, Ag, Al, Cu, Si, Sn, Pb or Mo.</param>
    /// <param name="ppm">Reading [ppm], 0 to 10 000.</param>
    /// <returns>normal, marginal, high or abnormal.</returns>
    /// <remarks>
    /// Formula: table. Valid: that two-stroke diesel, rotating-disc method; other engines and other methods read differently. Source: TM
    /// 38-301-4 (Joint Oil Analysis Program manual, 2012/2013), component page 85. Example: Fe 216 is abnormal.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">No level for the element, or the reading is out of range.</exception>
    public static string Level(string element, double ppm)
    {
        Require.Within(ppm, 0, 10_000, "reading", "ppm");
        var row = RowOf(element);
        return ppm <= row.NormalTo ? "normal" : ppm <= row.MarginalTo ? "marginal" : ppm <= row.HighTo ? "high" : "abnormal";
    }

    /// <summary>Levels of one element on the military diesel scale.</summary>
    internal static WearLevel RowOf(string element) =>
        MilitaryDiesel.FirstOrDefault(row => row.Element == element)
        ?? throw new ArgumentOutOfRangeException(
            null, $"the element must be {string.Join(", ", MilitaryDiesel.Select(row => row.Element))}, not '{element}'.");

    /// <summary>Warning level of a lubricant maker.</summary>
    /// <param name="element">Fe, Cr, Sn, Al, Pb, Cu, B or Si.</param>
    /// <returns>Level [ppm].</returns>
    /// <remarks>
    /// Formula: table. Valid: vehicle engines, 2004; lead means nothing with leaded petrol; boron and silicon against the new oil. Source:
    /// lubricant maker's handbook (2004), reprinted in a fleet guide, Appendix B, page 53. Example: Fe 100 ppm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">No level for the element.</exception>
    public static double WarningPpm(string element) => element switch
    {
        "Fe" => 100,
        "Cr" or "Sn" => 10,
        "Al" or "Cu" or "B" or "Si" => 20,
        "Pb" => 25,
        _ => throw new ArgumentOutOfRangeException(null, $"the element must be Fe, Cr, Sn, Al, Pb, Cu, B or Si, not '{element}'."),
    };

    /// <summary>Spread of acceptable levels in a weak web source.</summary>
    /// <param name="element">Fe, Cr, Cu, Pb, Al, Ag or Si.</param>
    /// <returns>Lower and upper end of what laboratories call acceptable [ppm]; the lower end is no floor.</returns>
    /// <remarks>
    /// Formula: table. Valid: shows only how far published limits lie apart. Source: v8sho.com, interpreting oil analysis, quoting a
    /// laboratory table. Example: Fe 100 to 200 ppm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">No spread for the element.</exception>
    public static (double LowPpm, double HighPpm) AcceptableSpread(string element) => element switch
    {
        "Fe" => (100, 200),
        "Cr" or "Al" or "Si" => (10, 30),
        "Cu" => (10, 50),
        "Pb" => (40, 100),
        "Ag" => (2, 5),
        _ => throw new ArgumentOutOfRangeException(null, $"the element must be Fe, Cr, Cu, Pb, Al, Ag or Si, not '{element}'."),
    };

    /// <summary>Rise of a wear metal in ten hours.</summary>
    /// <param name="earlierPpm">Earlier reading [ppm], 0 or above.</param>
    /// <param name="laterPpm">Later reading [ppm], 0 or above.</param>
    /// <param name="hours">Running hours between the two [h], above 0, no oil change between.</param>
    /// <returns>Rise [ppm in 10 h].</returns>
    /// <remarks>
    /// Formula: 10 (later - earlier) / hours. Valid: no oil change and no large top-up between. Source: form of the trend limits in TM
    /// 38-301-4. Example: by hand, 60 to 103 ppm in 10 h is 43.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double RisePerTenHours(double earlierPpm, double laterPpm, double hours)
    {
        Require.AtLeast(earlierPpm, 0, "earlier reading", "ppm");
        Require.AtLeast(laterPpm, 0, "later reading", "ppm");
        Require.Above(hours, 0, "running hours", "h");
        return 10 * (laterPpm - earlierPpm) / hours;
    }

    /// <summary>How far a reading lies off the engine's own history.</summary>
    /// <param name="historyPpm">Earlier readings at like oil age [ppm], 4 or more, not all alike.</param>
    /// <param name="latestPpm">Latest reading [ppm], 0 or above.</param>
    /// <returns>Distance from their mean in standard deviations [-].</returns>
    /// <remarks>
    /// Formula: (latest - mean) / s, s with n - 1. Valid: like oil age, like service, four readings or more. Source: statistical practice,
    /// from memory; an STLE article (May 2012) says no uniform condemning limits exist. Example: by hand, 10, 12, 14, 16 then 18: mean 13,
    /// s 2.582, gives 1.94.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Too few readings, or all alike.</exception>
    public static double OwnTrendSigma(IReadOnlyList<double> historyPpm, double latestPpm)
    {
        ArgumentNullException.ThrowIfNull(historyPpm);
        Require.Within(historyPpm.Count, 4, 1000, "number of earlier readings");
        Require.AtLeast(latestPpm, 0, "latest reading", "ppm");
        var mean = historyPpm.Average();
        var spread = Math.Sqrt(historyPpm.Sum(ppm => (ppm - mean) * (ppm - mean)) / (historyPpm.Count - 1));
        Require.That(spread > 0, "the earlier readings are all alike: they give no spread to judge by.");
        return (latestPpm - mean) / spread;
    }

    /// <summary>Ferrograph indices from large and small particle readings.</summary>
    /// <param name="large">Reading of large particles DL [-], 0 or above.</param>
    /// <param name="small">Reading of small particles DS [-], above 0, not above DL.</param>
    /// <returns>Severity, wear particle concentration and large over small [-].</returns>
    /// <remarks>
    /// Formula: severity DL² - DS², concentration DL + DS, ratio DL/DS. Valid: one instrument and one dilution. Source: Trico DR-7 manual
    /// page 24, which also prints the false DL(DL-DS); ratio alert above 2 from one laboratory page.
    /// Example: by hand, 20 and 8 gives 336, 28 and 2.5.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static (double Severity, double Concentration, double Ratio) Ferrograph(double large, double small)
    {
        Require.Above(small, 0, "small-particle reading");
        Require.AtLeast(large, small, "large-particle reading");
        return (large * large - small * small, large + small, large / small);
    }

    /// <summary>Bearing life with water in the oil.</summary>
    /// <param name="waterPpm">Water [ppm], 25 to 400.</param>
    /// <returns>Life over the life at 100 ppm [-].</returns>
    /// <remarks>
    /// Formula: (100 / X)^0.6. Valid: 25 to 400 ppm only; the tests used tapered roller bearings and an SAE 20 oil at 25, 100 and 400 ppm.
    /// Source: Tribology and Lubrication Technology (STLE), June 2021, From the Editor. Example: going from 400 to 100 ppm gives 2.3 times
    /// the life.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Water is outside 25 to 400 ppm.</exception>
    public static double WaterLife(double waterPpm)
    {
        Require.Within(waterPpm, 25, 400, "water", "ppm");
        return Math.Pow(100 / waterPpm, 0.6);
    }
}
