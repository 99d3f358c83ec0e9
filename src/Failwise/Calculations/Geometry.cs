namespace Failwise.Calculations;

/// <summary>Several diameters of one part boiled down to what a limit is written for.</summary>
/// <param name="MeanMm">Mean diameter [mm].</param>
/// <param name="SmallestMm">Smallest reading [mm].</param>
/// <param name="LargestMm">Largest reading [mm].</param>
/// <param name="TaperMm">Largest difference between the mean diameters of two planes [mm].</param>
/// <param name="OutOfRoundMm">Largest difference within one plane [mm].</param>
public sealed record Shape(double MeanMm, double SmallestMm, double LargestMm, double TaperMm, double OutOfRoundMm);

/// <summary>Readings to size, taper, out-of-round and clearance.</summary>
public static class Geometry
{
    /// <summary>Size, taper and out-of-round from readings in several planes and directions.</summary>
    /// <param name="planes">One list of diameters a plane, each with the readings of its directions [mm], all above 0.</param>
    /// <returns>The shape; taper is 0 with one plane and out-of-round 0 with one direction.</returns>
    /// <remarks>
    /// Formula: taper = largest less smallest plane mean; out-of-round = largest less smallest diameter of the worst plane. Valid:
    /// two-point readings; a three-lobed form shows as round.
    /// Source: common practice, no source. Example: by hand, planes (50.00, 50.02) and (50.03, 50.03) give taper 0.02, out-of-round 0.02,
    /// mean 50.02.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">No reading, or a reading of 0 or below.</exception>
    public static Shape FromReadings(IReadOnlyList<IReadOnlyList<double>> planes)
    {
        ArgumentNullException.ThrowIfNull(planes);
        Require.That(planes.Count > 0 && planes.All(plane => plane.Count > 0), "each plane needs one reading or more.");
        foreach (var reading in planes.SelectMany(plane => plane))
            Require.Above(reading, 0, "diameter", "mm");
        var means = planes.Select(plane => plane.Average()).ToList();
        var all = planes.SelectMany(plane => plane).ToList();
        return new Shape(means.Average(), all.Min(), all.Max(), means.Max() - means.Min(), planes.Max(plane => plane.Max() - plane.Min()));
    }

    /// <summary>Clearance of a pair, with its extremes.</summary>
    /// <param name="bore">Shape of the bore.</param>
    /// <param name="shaft">Shape of the journal or piston.</param>
    /// <returns>Mean, smallest and largest clearance [mm].</returns>
    /// <remarks>
    /// Formula: mean bore less mean shaft; smallest bore less largest shaft; largest bore less smallest shaft. Valid: both at one
    /// temperature, shells fitted and cap torqued.
    /// Source: by definition. Example: by hand, bore 50.06 and shaft 50.00 mm gives 0.06 mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The shaft is larger than the bore on the mean.</exception>
    public static (double MeanMm, double SmallestMm, double LargestMm) Clearance(Shape bore, Shape shaft)
    {
        ArgumentNullException.ThrowIfNull(bore);
        ArgumentNullException.ThrowIfNull(shaft);
        Require.That(
            bore.MeanMm >= shaft.MeanMm,
            $"shaft {shaft.MeanMm:G6} mm is larger than its bore {bore.MeanMm:G6} mm: were the two swapped?");
        return (bore.MeanMm - shaft.MeanMm, bore.SmallestMm - shaft.LargestMm, bore.LargestMm - shaft.SmallestMm);
    }

    /// <summary>Ranges of plastic gauge strips.</summary>
    /// <param name="colour">green, red or blue.</param>
    /// <returns>Lowest and highest clearance the strip reads [mm].</returns>
    /// <remarks>
    /// Formula: table. Valid: the US colours; strips of other makers differ. Source: TM 5-2420-222-34 (US Army), par. 1-16. Example: green
    /// 0.001 to 0.003 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">No such colour.</exception>
    public static (double LowMm, double HighMm) PlasticGaugeRangeMm(string colour) => colour switch
    {
        "green" => (0.001 * 25.4, 0.003 * 25.4),
        "red" => (0.002 * 25.4, 0.006 * 25.4),
        "blue" => (0.004 * 25.4, 0.009 * 25.4),
        _ => throw new ArgumentOutOfRangeException(null, $"the strip must be green, red or blue, not '{colour}'."),
    };
}
