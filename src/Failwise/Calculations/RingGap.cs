namespace Failwise.Calculations;

/// <summary>Piston-ring end gaps.</summary>
public static class RingGap
{
    /// <summary>How much a ring gap opens when the bore wears.</summary>
    /// <param name="boreIncreaseMm">Increase of the bore diameter where the ring stands [mm], 0 to 5.</param>
    /// <returns>Increase of the gap [mm].</returns>
    /// <remarks>
    /// Formula: pi times the increase of diameter. Valid: ring face not worn; a worn face opens the gap more. Source: Engine Builder
    /// magazine, June 2012 (0.003 in per 0.001 in); TM 5-6115-593-34, table 1-2.
    /// Example: 0.001 in gives 0.00314 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Increase is out of range.</exception>
    public static double GrowthMm(double boreIncreaseMm)
    {
        Require.Within(boreIncreaseMm, 0, 5, "bore increase", "mm");
        return Math.PI * boreIncreaseMm;
    }

    /// <summary>Bore wear that a measured gap stands for.</summary>
    /// <param name="gapMm">Gap measured square in the worn bore [mm].</param>
    /// <param name="newGapMm">Gap of the same ring in a new bore [mm], 0 or above.</param>
    /// <returns>Increase of diameter if the ring face were unworn [mm].</returns>
    /// <remarks>Formula: (gap - new gap) / pi. Valid: as <see cref="GrowthMm"/>. Source: as <see cref="GrowthMm"/>. Example: by hand, 0.314
    /// mm more gap is 0.1 mm of bore.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The gap is smaller than new.</exception>
    public static double BoreWearMm(double gapMm, double newGapMm)
    {
        Require.AtLeast(newGapMm, 0, "new gap", "mm");
        Require.That(gapMm >= newGapMm, $"the gap {gapMm:G4} mm is smaller than new ({newGapMm:G4} mm): is it the same ring?");
        return (gapMm - newGapMm) / Math.PI;
    }

    /// <summary>Smallest gap by the workshop rule.</summary>
    /// <param name="boreMm">Bore [mm], 2.5 to 4.5 in.</param>
    /// <param name="gapPerBore">Gap for each unit of bore [-], usually 0.004.</param>
    /// <returns>Smallest gap [mm].</returns>
    /// <remarks>
    /// Formula: 0.004 in for each inch of bore. Valid: bores of 2.5 to 4.5 in, plain engines; the ring maker's figure comes first. Source:
    /// engineproblem.com.au knowledge test 1/49 (2019).
    /// Example: 3 in bore gives 0.012 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double SmallestMm(double boreMm, double gapPerBore = 0.004)
    {
        Require.Within(boreMm, 2.5 * 25.4, 4.5 * 25.4, "bore", "mm");
        Require.Within(gapPerBore, 0.002, 0.008, "gap per bore");
        return gapPerBore * boreMm;
    }
}
