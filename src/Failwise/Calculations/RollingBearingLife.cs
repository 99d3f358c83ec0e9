namespace Failwise.Calculations;

/// <summary>Life of ball and roller bearings.</summary>
public static class RollingBearingLife
{
    /// <summary>Basic rating life.</summary>
    /// <param name="capacityN">Dynamic capacity C [N], above 0.</param>
    /// <param name="loadN">Equivalent load P [N], above 0, half of C at most.</param>
    /// <param name="roller">True for roller bearings, false for ball bearings.</param>
    /// <returns>Life that 90 % reach [million revolutions].</returns>
    /// <remarks>
    /// Formula: L10 = (C/P)^3 for balls, ^(10/3) for rollers. Valid: load to half of C, clean and well oiled. Source: ISO 281 form; Machine
    /// Design (Cengage India, 2007), examples 20.1 and 20.4, transcription read.
    /// Example: 3350 and 1095 lbf, balls, gives 28.63 million.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double L10(double capacityN, double loadN, bool roller)
    {
        Require.Above(capacityN, 0, "capacity", "N");
        Require.Above(loadN, 0, "load", "N");
        Require.That(
            loadN <= capacityN / 2,
            $"the load {loadN:G4} N is above half the capacity {capacityN:G4} N: the life formula does not hold there.");
        return Math.Pow(capacityN / loadN, Exponent(roller));
    }

    /// <summary>Revolutions to hours.</summary>
    /// <param name="millionRev">Life [million revolutions], 0 or above.</param>
    /// <param name="speedRpm">Speed [rev/min], above 0.</param>
    /// <returns>Life [h].</returns>
    /// <remarks>Formula: 10^6 L / (60 n). Valid: steady speed. Source: Machine Design (Cengage India, 2007), example 20.1, transcription
    /// read. Example: (5050/2400)³ million at 1750 rev/min gives 88.73 h.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double Hours(double millionRev, double speedRpm)
    {
        Require.AtLeast(millionRev, 0, "life", "million revolutions");
        Require.Above(speedRpm, 0, "speed", "rpm");
        return millionRev * 1e6 / (60 * speedRpm);
    }

    /// <summary>Capacity needed for a life.</summary>
    /// <param name="loadN">Equivalent load [N], above 0.</param>
    /// <param name="millionRev">Life wanted [million revolutions], above 0.</param>
    /// <param name="roller">True for roller bearings.</param>
    /// <returns>Capacity [N].</returns>
    /// <remarks>Formula: C = P L^(1/p). Valid: as <see cref="L10"/>. Source: Machine Design (Cengage India, 2007), example 20.2,
    /// transcription read. Example: 2400 lbf, 21 million, balls, gives 6621 lbf.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double CapacityN(double loadN, double millionRev, bool roller)
    {
        Require.Above(loadN, 0, "load", "N");
        Require.Above(millionRev, 0, "life", "million revolutions");
        return loadN * Math.Pow(millionRev, 1 / Exponent(roller));
    }

    /// <summary>Equivalent load of a radial and an axial load.</summary>
    /// <param name="radialN">Radial load [N], 0 or above.</param>
    /// <param name="axialN">Axial load [N], 0 or above.</param>
    /// <param name="x">Radial factor X from the bearing's table [-], 0.3 to 1.</param>
    /// <param name="y">Axial factor Y from the bearing's table [-], 0 to 5.</param>
    /// <param name="rotation">1 for a turning inner ring, 1.2 for a turning outer ring in older books [-].</param>
    /// <returns>Equivalent load [N].</returns>
    /// <remarks>
    /// Formula: P = X V Fr + Y Fa, and V Fr at least. Valid: X and Y for this bearing and load ratio. Source: Machine Design (Dorling
    /// Kindersley India, 2010), example 18-2, transcription read.
    /// Example: 1250 and 625 N, 0.56, 1.2, outer ring turning gives 1590 N.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double EquivalentN(double radialN, double axialN, double x, double y, double rotation = 1)
    {
        Require.AtLeast(radialN, 0, "radial load", "N");
        Require.AtLeast(axialN, 0, "axial load", "N");
        Require.Within(x, 0.3, 1, "X");
        Require.Within(y, 0, 5, "Y");
        Require.Within(rotation, 1, 1.2, "rotation factor");
        return x * rotation * radialN + y * axialN;
    }

    /// <summary>Steady load that wears like a changing one.</summary>
    /// <param name="loadsN">Load of each step [N], all above 0.</param>
    /// <param name="speedsRpm">Speed of each step [rev/min], all above 0.</param>
    /// <param name="shares">Share of time of each step [-]; they add up to 1.</param>
    /// <param name="roller">True for roller bearings.</param>
    /// <returns>Mean load [N] and mean speed [rev/min].</returns>
    /// <remarks>
    /// Formula: Pm = (sum P^p n t / sum n t)^(1/p). Valid: as <see cref="L10"/> for each step. Source: Machine Design (Dorling Kindersley
    /// India, 2010), example 18-9, transcription read.
    /// Example: 3, 4, 5 kN at 1440, 1080, 720 rev/min for 0.25, 0.5, 0.25 gives 3954 N.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The lists do not match or the shares do not add up to 1.</exception>
    public static (double LoadN, double SpeedRpm) MeanLoad(
        IReadOnlyList<double> loadsN, IReadOnlyList<double> speedsRpm, IReadOnlyList<double> shares, bool roller)
    {
        ArgumentNullException.ThrowIfNull(loadsN);
        ArgumentNullException.ThrowIfNull(speedsRpm);
        ArgumentNullException.ThrowIfNull(shares);
        Require.That(
            loadsN.Count > 0 && loadsN.Count == speedsRpm.Count && loadsN.Count == shares.Count,
            "loads, speeds and shares must be lists of one length.");
        foreach (var value in loadsN.Concat(speedsRpm).Concat(shares))
            Require.Above(value, 0, "load, speed or share");
        Require.Within(shares.Sum(), 0.999, 1.001, "sum of the shares");
        var power = Exponent(roller);
        var turns = speedsRpm.Zip(shares, (speed, share) => speed * share).ToList();
        var mean = Math.Pow(loadsN.Zip(turns, (load, part) => Math.Pow(load, power) * part).Sum() / turns.Sum(), 1 / power);
        return (mean, turns.Sum());
    }

    /// <summary>Reliability factor.</summary>
    /// <param name="reliabilityPercent">90, 95, 97, 98 or 99 [%].</param>
    /// <param name="older">True for the older table, false for ISO 281:2007.</param>
    /// <returns>Factor a1 [-].</returns>
    /// <remarks>
    /// Formula: table. Valid: never mix the two; a two-parameter Weibull line gives 0.244 at 98 % instead. Source: ISO 281:2007 (read in an
    /// open library's data) and older catalogues (easymanua.ls, skf concentra page 9). Example: 98 % gives 0.37, older 0.33.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The reliability is not in the table.</exception>
    public static double ReliabilityFactor(int reliabilityPercent, bool older = false) => (reliabilityPercent, older) switch
    {
        (90, _) => 1,
        (95, false) => 0.64,
        (95, true) => 0.62,
        (97, false) => 0.47,
        (97, true) => 0.44,
        (98, false) => 0.37,
        (98, true) => 0.33,
        (99, false) => 0.25,
        (99, true) => 0.21,
        _ => throw new ArgumentOutOfRangeException(null, $"reliability must be 90, 95, 97, 98 or 99 %, not {reliabilityPercent} %."),
    };

    /// <summary>Share of L10 reached at another reliability on a two-parameter Weibull line.</summary>
    /// <param name="reliability">Reliability [-], 0.5 to 0.999.</param>
    /// <param name="exponent">Weibull slope [-], 0.8 to 3; 1.17 in the textbook.</param>
    /// <returns>Share of L10 [-].</returns>
    /// <remarks>
    /// Formula: (ln(1/R) / ln(1/0.9))^(1/b). Valid: one of three conventions, see <see cref="ReliabilityFactor"/>. Source: Machine Design
    /// (Dorling Kindersley India, 2010), example 18-7, transcription read. Example: 0.98 and 1.17 gives 0.2438.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double WeibullShare(double reliability, double exponent = 1.17)
    {
        Require.Within(reliability, 0.5, 0.999, "reliability");
        Require.Within(exponent, 0.8, 3, "Weibull slope");
        return Math.Pow(Math.Log(1 / reliability) / Math.Log(1 / 0.9), 1 / exponent);
    }

    /// <summary>Viscosity a rolling bearing asks for.</summary>
    /// <param name="speedRpm">Speed [rev/min], 10 to 100 000.</param>
    /// <param name="meanDiameterMm">Mean of bore and outside diameter [mm], 5 to 2000.</param>
    /// <returns>Reference viscosity at running temperature [mm²/s].</returns>
    /// <remarks>
    /// Formula: 45 000 n^-0.83 dm^-0.5 below 1000 rev/min, 4500 n^-0.5 dm^-0.5 from there. Valid: mineral oil; makers' diagrams differ by
    /// about a sixth. Source: ISO 281:2007, transcription read.
    /// Example: by hand, 1000 rev/min, 100 mm gives 14.2 mm²/s.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double ReferenceViscosityCSt(double speedRpm, double meanDiameterMm)
    {
        Require.Within(speedRpm, 10, 100_000, "speed", "rpm");
        Require.Within(meanDiameterMm, 5, 2000, "mean diameter", "mm");
        return (speedRpm < 1000 ? 45_000 * Math.Pow(speedRpm, -0.83) : 4500 * Math.Pow(speedRpm, -0.5)) / Math.Sqrt(meanDiameterMm);
    }

    /// <summary>Life factor for oil film and dirt.</summary>
    /// <param name="kappa">Running over reference viscosity [-], 0.1 to 4 (above 4 counts as 4).</param>
    /// <param name="contamination">Contamination factor eC, 0 filthy to 1 extremely clean [-].</param>
    /// <param name="fatigueLoadRatio">Fatigue load limit over load, Cu/P [-], above 0.</param>
    /// <param name="roller">True for radial roller bearings, false for radial ball bearings.</param>
    /// <returns>Factor a_ISO [-], 0.1 to 50.</returns>
    /// <remarks>
    /// Formula: balls 0.1 [1 - (2.5671 - B/k^m)^0.83 (eC Cu/P)^(1/3)]^-9.3, rollers 0.1 [1 - (1.5859 - B/k^m) (eC Cu/P)^0.4]^-9.185. Valid:
    /// kappa 0.1 to 4, capped at 50.
    /// Source: ISO 281:2007, 9.3.3, constants read in an open library's data file, whose middle exponent 0.019087 must be 0.19087. Example:
    /// by hand, balls, kappa 1, product 0.1 gives 2.43.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double LifeFactor(double kappa, double contamination, double fatigueLoadRatio, bool roller)
    {
        Require.AtLeast(kappa, 0.1, "viscosity ratio kappa");
        Require.Within(contamination, 0, 1, "contamination factor");
        Require.Above(fatigueLoadRatio, 0, "fatigue load ratio");
        // Just at kappa 0.1 the published constants give a term a hair below 0, where the factor must be 0.1.
        var term = Math.Max(0, FilmTerm(Math.Min(kappa, 4), roller));
        var dirt = contamination * fatigueLoadRatio;
        var inner = roller ? 1 - term * Math.Pow(dirt, 0.4) : 1 - Math.Pow(term, 0.83) * Math.Cbrt(dirt);
        return inner <= 0 ? 50 : Math.Min(50, 0.1 * Math.Pow(inner, roller ? -9.185 : -9.3));
    }

    /// <summary>Film term of the life factor.</summary>
    internal static double FilmTerm(double kappa, bool roller)
    {
        var (top, low, high) = roller ? (1.5859, 1.3993, 1.2348) : (2.5671, 2.2649, 1.9987);
        var (b, m) = kappa switch { < 0.4 => (low, 0.054381), < 1 => (high, 0.19087), _ => (high, 0.071739) };
        return top - b / Math.Pow(kappa, m);
    }

    private static double Exponent(bool roller) => roller ? 10.0 / 3 : 3;
}
