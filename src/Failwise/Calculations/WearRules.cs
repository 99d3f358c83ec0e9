namespace Failwise.Calculations;

/// <summary>Published rules of wear that scale with size. Examples only: the maker's limit comes first.</summary>
public static class WearRules
{
    private const string Manual = "TM 10-3930-647-14&P (US Army), wear limits, page 175";

    /// <summary>Bore wear allowed by the per-inch rule.</summary>
    /// <param name="boreMm">Bore diameter [mm], 40 to 300.</param>
    /// <returns>Wear allowed [mm].</returns>
    /// <remarks>
    /// Formula: 0.001 in for each inch of bore. Valid: small industrial engines. Source: TM 10-3930-647-14&amp;P (US Army), page 175; two
    /// columns run together there, re-check on the scan.
    /// Example: 4 in bore gives 0.004 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Bore is out of range.</exception>
    public static double BoreWearMm(double boreMm)
    {
        Require.Within(boreMm, 40, 300, "bore", "mm");
        return 0.001 * boreMm;
    }

    /// <summary>Bore taper allowed by the per-inch rule.</summary>
    /// <param name="travelMm">Piston travel [mm], 30 to 400.</param>
    /// <returns>Taper allowed [mm].</returns>
    /// <remarks>Formula: 0.0005 in for each inch of piston travel. Valid: as <see cref="BoreWearMm"/>. Source: as <see cref="BoreWearMm"/>.
    /// Example: 4 in travel gives 0.002 in.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Travel is out of range.</exception>
    public static double BoreTaperMm(double travelMm)
    {
        Require.Within(travelMm, 30, 400, "piston travel", "mm");
        return 0.0005 * travelMm;
    }

    /// <summary>Journal and bearing wear allowed by the per-inch rules.</summary>
    /// <param name="diameterMm">Journal diameter [mm], 15 to 200.</param>
    /// <returns>Clearance allowed over the high limit of new, and out-of-round allowed [mm].</returns>
    /// <remarks>
    /// Formula: 0.0005 in per inch over the high limit; 0.0004 in per inch out of round. Valid: as <see cref="BoreWearMm"/>. Source: as
    /// <see cref="BoreWearMm"/>.
    /// Example: 2 in journal gives 0.001 in and 0.0008 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Diameter is out of range.</exception>
    public static (double ClearanceOverMm, double OutOfRoundMm) JournalMm(double diameterMm)
    {
        Require.Within(diameterMm, 15, 200, "journal diameter", "mm");
        return (0.0005 * diameterMm, 0.0004 * diameterMm);
    }

    /// <summary>Piston wear allowed by the per-inch rule.</summary>
    /// <param name="diameterMm">Piston diameter [mm], 40 to 300.</param>
    /// <returns>Wear allowed [mm].</returns>
    /// <remarks>Formula: 0.0005 in per inch of diameter. Valid: as <see cref="BoreWearMm"/>. Source: as <see cref="BoreWearMm"/>. Example:
    /// 4 in piston gives 0.002 in.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Diameter is out of range.</exception>
    public static double PistonWearMm(double diameterMm)
    {
        Require.Within(diameterMm, 40, 300, "piston diameter", "mm");
        return 0.0005 * diameterMm;
    }

    /// <summary>Where the rules come from.</summary>
    internal static string Source => Manual;
}
