namespace Failwise.Calculations;

/// <summary>Particle counts to ISO 4406 codes and back.</summary>
public static class CleanlinessCode
{
    // Upper bound of each scale number 0 to 28, included; the table is rounded and is not just a power of two. Rows 12, 17, 18, 27 and 28
    // from memory, two of them confirmed by read examples.
    private static readonly double[] UpTo =
    [
        0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 1.3, 2.5, 5, 10, 20, 40, 80, 160, 320, 640, 1300, 2500,
        5000, 10_000, 20_000, 40_000, 80_000, 160_000, 320_000, 640_000, 1_300_000, 2_500_000,
    ];

    /// <summary>Scale number of one count.</summary>
    /// <param name="particlesPerMl">Particles in a millilitre [1/ml], 0 to 2 500 000.</param>
    /// <returns>Scale number [-].</returns>
    /// <remarks>
    /// Formula: table, lower bound excluded, upper bound included. Valid: counts at 4, 6 and 14 µm(c). Source: ISO 4406:1999, table 1,
    /// reprint read in a filter maker's appendix. Example: 1300 particles is 17.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The count is out of range.</exception>
    public static int ScaleNumber(double particlesPerMl)
    {
        Require.Within(particlesPerMl, 0, UpTo[^1], "particle count", "per ml");
        return Array.FindIndex(UpTo, bound => particlesPerMl <= bound);
    }

    /// <summary>Count range of a scale number.</summary>
    /// <param name="scaleNumber">Scale number [-], 0 to 28.</param>
    /// <returns>More than and up to [1/ml].</returns>
    /// <remarks>Formula: table. Valid: 0 to 28. Source: as <see cref="ScaleNumber"/>. Example: 17 is more than 640 up to 1300.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The number is not in the table.</exception>
    public static (double MoreThan, double UpToIncluded) Range(int scaleNumber)
    {
        Require.Within(scaleNumber, 0, UpTo.Length - 1, "scale number");
        return (scaleNumber == 0 ? 0 : UpTo[scaleNumber - 1], UpTo[scaleNumber]);
    }

    /// <summary>Code of three counts.</summary>
    /// <param name="over4">Particles of 4 µm(c) and larger [1/ml].</param>
    /// <param name="over6">Particles of 6 µm(c) and larger [1/ml], not more than the first.</param>
    /// <param name="over14">Particles of 14 µm(c) and larger [1/ml], not more than the second.</param>
    /// <returns>The code, for instance 14/12/7.</returns>
    /// <remarks>Formula: three scale numbers. Valid: counts must fall with size. Source: as <see cref="ScaleNumber"/>. Example: 100, 30 and
    /// 1 gives 14/12/7.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The counts rise with size or are out of range.</exception>
    public static string Code(double over4, double over6, double over14)
    {
        Require.That(
            over4 >= over6 && over6 >= over14,
            "there cannot be more large particles than small ones: check the order of the counts.");
        return $"{ScaleNumber(over4)}/{ScaleNumber(over6)}/{ScaleNumber(over14)}";
    }
}
