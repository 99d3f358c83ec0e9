namespace Failwise.Calculations;

/// <summary>What a reading with its uncertainty proves against a limit.</summary>
public enum Verdict
{
    /// <summary>Inside the limits by more than the guard band.</summary>
    Within,
    /// <summary>Outside the limits by more than the guard band.</summary>
    Beyond,
    /// <summary>So near a limit that the reading proves neither.</summary>
    TooCloseToCall,
}

/// <summary>Measurement uncertainty and decisions near a limit.</summary>
public static class Conformance
{
    /// <summary>Probability that the true value conforms.</summary>
    /// <param name="reading">Reading.</param>
    /// <param name="standardUncertainty">Standard uncertainty u, in the unit of the reading, above 0.</param>
    /// <param name="lowest">Lower limit, minus infinity for none.</param>
    /// <param name="highest">Upper limit, infinity for none.</param>
    /// <returns>Probability [-].</returns>
    /// <remarks>
    /// Formula: Phi((TU-y)/u) - Phi((TL-y)/u). Valid: errors about normal, nothing known of the part beforehand. Source: JCGM 106:2012,
    /// 7.4, inputs quoted on metrologyrules.com; printed answer not seen.
    /// Example: 13.6 with u 1.8 between 12.5 and 16.3 gives 0.66.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Uncertainty is 0 or below, or the limits are crossed.</exception>
    public static double Probability(double reading, double standardUncertainty, double lowest, double highest)
    {
        Require.Above(standardUncertainty, 0, "standard uncertainty");
        Require.That(
            !double.IsNaN(reading) && lowest < highest,
            $"the lower limit {lowest:G6} must be below the upper limit {highest:G6}.");
        return NormalBelow((highest - reading) / standardUncertainty) - NormalBelow((lowest - reading) / standardUncertainty);
    }

    /// <summary>Decision near a limit.</summary>
    /// <param name="reading">Reading.</param>
    /// <param name="expandedUncertainty">Guard band: expanded uncertainty U (k = 2), or 1.645 u for a 95 % rule; 0 or above.</param>
    /// <param name="lowest">Lower limit, minus infinity for none.</param>
    /// <param name="highest">Upper limit, infinity for none.</param>
    /// <returns>Within, beyond or too close to call.</returns>
    /// <remarks>
    /// Formula: within when the reading lies inside both limits by U, beyond when it lies outside one by more than U. Valid: guard band
    /// smaller than half the tolerance. Source: ISO 14253-1 decision rule, read in web notes; 1.645 u of the 2017 edition from memory.
    /// Example: 20.040 mm with U 0.015 against 20.050 is too close to call.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Uncertainty is negative, or the limits are crossed.</exception>
    public static Verdict Decide(double reading, double expandedUncertainty, double lowest, double highest)
    {
        Require.AtLeast(expandedUncertainty, 0, "expanded uncertainty");
        Require.That(
            !double.IsNaN(reading) && lowest < highest,
            $"the lower limit {lowest:G6} must be below the upper limit {highest:G6}.");
        if (reading > highest + expandedUncertainty || reading < lowest - expandedUncertainty)
            return Verdict.Beyond;
        return reading <= highest - expandedUncertainty && reading >= lowest + expandedUncertainty
            ? Verdict.Within
            : Verdict.TooCloseToCall;
    }

    /// <summary>Combined standard uncertainty.</summary>
    /// <param name="parts">Standard uncertainty of each part, 0 or above.</param>
    /// <returns>Root of the sum of squares.</returns>
    /// <remarks>
    /// Formula: sqrt(sum u²). Valid: parts independent of each other; for a clearance the parts are bore and journal. Source: JCGM 100
    /// (GUM); numbers from a micrometer budget on talalspecialbolt.com. Example: 0.33, 0.29 and 0.25 µm gives 0.51 µm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">No part, or a negative one.</exception>
    public static double Combined(params IReadOnlyList<double> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        Require.AtLeast(parts.Count, 1, "number of parts");
        foreach (var part in parts)
            Require.AtLeast(part, 0, "standard uncertainty");
        return Math.Sqrt(parts.Sum(part => part * part));
    }

    /// <summary>Standard uncertainty of a limit of error.</summary>
    /// <param name="halfWidth">Largest error either way, 0 or above.</param>
    /// <returns>Standard uncertainty.</returns>
    /// <remarks>Formula: a / sqrt 3. Valid: any error up to the limit equally likely. Source: JCGM 100 (GUM), 4.3.7. Example: by hand, 3 µm
    /// gives 1.73 µm.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public static double FromLimit(double halfWidth)
    {
        Require.AtLeast(halfWidth, 0, "limit of error");
        return halfWidth / Math.Sqrt(3);
    }

    /// <summary>Standard uncertainty of a reading step.</summary>
    /// <param name="step">Smallest step of the display or scale, 0 or above.</param>
    /// <returns>Standard uncertainty.</returns>
    /// <remarks>Formula: q / sqrt 12. Valid: reading rounded to the step. Source: JCGM 100 (GUM), F.2.2.1; micrometer budget on
    /// talalspecialbolt.com. Example: 1 µm gives 0.29 µm.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public static double FromStep(double step)
    {
        Require.AtLeast(step, 0, "reading step");
        return step / Math.Sqrt(12);
    }

    /// <summary>Error limit of an outside micrometer.</summary>
    /// <param name="rangeEndMm">Upper end of its range: 25, 50, 75, 100, 125 or 150 mm.</param>
    /// <returns>Error limit and frame give at 10 N [mm].</returns>
    /// <remarks>
    /// Formula: table. Valid: micrometers in good order to that standard. Source: DIN 863 extract (scribd 564783692). Example: 25 to 50 mm
    /// gives 4 µm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The range is not in the table.</exception>
    public static (double ErrorMm, double FrameMm) MicrometerMm(int rangeEndMm) => rangeEndMm switch
    {
        25 or 50 => (0.004, 0.002),
        75 or 100 => (0.005, 0.003),
        125 => (0.006, 0.004),
        150 => (0.006, 0.005),
        _ => throw new ArgumentOutOfRangeException(
            null, $"the micrometer range must end at 25, 50, 75, 100, 125 or 150 mm, not {rangeEndMm}."),
    };

    /// <summary>Chance that a standard normal value lies below z.</summary>
    internal static double NormalBelow(double z)
    {
        if (z is > 8.3 or < -8.3)
            return z > 0 ? 1 : 0;
        var (term, sum) = (z, z);
        for (var odd = 3; Math.Abs(term) > 1e-17 * Math.Abs(sum) && odd < 400; odd += 2)
        {
            term *= z * z / odd;
            sum += term;
        }
        return 0.5 + sum * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
    }
}
