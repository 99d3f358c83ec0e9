namespace Failwise.Calculations;

/// <summary>Oil pressure and leak of the bearings along one gallery.</summary>
/// <param name="PressuresBar">Pressure at each bearing, nearest to the pump first [bar].</param>
/// <param name="LeaksLMin">Oil leaving through each bearing [L/min].</param>
/// <param name="ReliefOpen">True when the relief valve limits the pressure.</param>
public sealed record GalleryState(IReadOnlyList<double> PressuresBar, IReadOnlyList<double> LeaksLMin, bool ReliefOpen);

/// <summary>Leakage through worn clearances and the pressure that is left.</summary>
public static class GalleryPressure
{
    /// <summary>Leakage through the ring gap round a shaft, plunger or valve stem.</summary>
    /// <param name="diameterMm">Diameter of the gap [mm], above 0.</param>
    /// <param name="radialGapMm">Radial gap [mm], above 0, at most a tenth of the diameter.</param>
    /// <param name="lengthMm">Length of the gap along the leak [mm], above 0.</param>
    /// <param name="pressureDropMPa">Pressure difference [MPa], 0 or above.</param>
    /// <param name="viscosityMPas">Dynamic viscosity [mPa·s], above 0.</param>
    /// <param name="eccentricity">0 for a centred shaft to 1 for one lying on the bore [-].</param>
    /// <returns>Leakage [mm³/s].</returns>
    /// <remarks>
    /// Formula: Q = pi D h³ dp (1 + 1.5 e²) / (12 mu L); the bracket from memory. Valid: smooth laminar flow, even gap: the gap counts with
    /// its third power.
    /// Source: Introduction to Fluid Mechanics, 5th ed. (Wiley India, 2001), example 8.1, transcription read.
    /// Example: 25 mm, gap 0.005 mm, 15 mm long, 19 MPa, 18 mPa·s gives 57.57 mm³/s.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double AnnulusLeakMm3S(
        double diameterMm, double radialGapMm, double lengthMm, double pressureDropMPa, double viscosityMPas, double eccentricity = 0)
    {
        Require.Above(diameterMm, 0, "diameter", "mm");
        Require.Above(radialGapMm, 0, "radial gap", "mm");
        Require.That(
            radialGapMm <= diameterMm / 10,
            $"the gap {radialGapMm:G4} mm is not small against the diameter {diameterMm:G4} mm: the gap must be a tenth of the " +
                $"diameter or less.");
        Require.Above(lengthMm, 0, "gap length", "mm");
        Require.AtLeast(pressureDropMPa, 0, "pressure difference", "MPa");
        Require.Above(viscosityMPas, 0, "viscosity", "mPa·s");
        Require.Within(eccentricity, 0, 1, "eccentricity ratio");
        return Math.PI * diameterMm * Math.Pow(radialGapMm, 3) * pressureDropMPa * 1e9 * (
            1 + 1.5 * eccentricity * eccentricity) / (12 * viscosityMPas * lengthMm);
    }

    /// <summary>Leakage of a bearing fed by a groove right round its middle.</summary>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="diametralClearanceMm">Bore minus journal [mm], above 0.</param>
    /// <param name="landMm">Length of one land beside the groove [mm], above 0.</param>
    /// <param name="pressureBar">Feed pressure [bar], 0 or above.</param>
    /// <param name="viscosityMPas">Dynamic viscosity at film temperature [mPa·s], above 0.</param>
    /// <param name="eccentricity">Eccentricity ratio [-], 0 to 1.</param>
    /// <returns>Leakage [L/min].</returns>
    /// <remarks>
    /// Formula: Q = pi D h³ dp (1 + 1.5 e²) / (6 mu l), two lands. Valid: as the annulus; use it for ratios, not as an absolute flow.
    /// Source: the groove form from memory; the annulus it doubles as <see cref="AnnulusLeakMm3S"/>. Example: by hand, twice the annulus
    /// leak of one land.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double GroovedBearingLeakLMin(
        double diameterMm, double diametralClearanceMm, double landMm, double pressureBar, double viscosityMPas, double eccentricity = 0) =>
        2 * AnnulusLeakMm3S(diameterMm, diametralClearanceMm / 2, landMm, pressureBar / 10, viscosityMPas, eccentricity) * 60 / 1e6;

    /// <summary>Leakage through a long flat crack or between two flat faces.</summary>
    /// <param name="gapMm">Gap between the faces [mm], above 0.</param>
    /// <param name="widthMm">Width of the gap across the leak [mm], above 0.</param>
    /// <param name="lengthMm">Length of the path [mm], above 0.</param>
    /// <param name="pressureDropMPa">Pressure difference [MPa], 0 or above.</param>
    /// <param name="viscosityMPas">Dynamic viscosity [mPa·s], above 0.</param>
    /// <returns>Leakage [mm³/s].</returns>
    /// <remarks>
    /// Formula: Q = w h³ dp / (12 mu L), mean velocity Q / (w h). Valid: smooth laminar flow, gap small against width and length.
    /// Source: Principles of Fluid Mechanics, 3rd ed. (Oxford and IBH, 1984), example 7.1, transcription read; the printed 7112.4 litres
    /// per hour is per day.
    /// Example: gap 0.15 mm, width 11.2 m, path 1.5 m, 4 m of water, 1 mPa·s gives 296.7 L/h.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double SlotLeakMm3S(double gapMm, double widthMm, double lengthMm, double pressureDropMPa, double viscosityMPas)
    {
        Require.Above(gapMm, 0, "gap", "mm");
        Require.Above(widthMm, 0, "gap width", "mm");
        Require.Above(lengthMm, 0, "path length", "mm");
        Require.AtLeast(pressureDropMPa, 0, "pressure difference", "MPa");
        Require.Above(viscosityMPas, 0, "viscosity", "mPa·s");
        return widthMm * Math.Pow(gapMm, 3) * pressureDropMPa * 1e9 / (12 * viscosityMPas * lengthMm);
    }

    /// <summary>Speed of a loose piston that pushes its own leakage past itself.</summary>
    /// <param name="pistonMm">Piston diameter [mm], above 0.</param>
    /// <param name="cylinderMm">Cylinder diameter [mm], above the piston.</param>
    /// <param name="lengthMm">Piston length [mm], above 0.</param>
    /// <param name="pressureDropMPa">Pressure difference [MPa], 0 or above.</param>
    /// <param name="viscosityMPas">Dynamic viscosity [mPa·s], above 0.</param>
    /// <returns>Piston speed [m/s].</returns>
    /// <remarks>
    /// Formula: V = dp c³ / (6 mu L (r + c)), r the piston radius, c the radial gap. Valid: laminar, centred, gap at most a tenth of the
    /// diameter.
    /// Source: Mechanics of Fluids, 8th ed. (Taylor and Francis, 2009), example 6.4, transcription read.
    /// Example: 50 mm in 50.4 mm, 130 mm long, 1.4 MPa, 87 mPa·s gives 0.0065 m/s.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double LeakDrivenPistonSpeed(
        double pistonMm, double cylinderMm, double lengthMm, double pressureDropMPa, double viscosityMPas)
    {
        Require.Above(pistonMm, 0, "piston diameter", "mm");
        Require.Within(cylinderMm, pistonMm, pistonMm * 1.2, "cylinder diameter", "mm");
        Require.Above(lengthMm, 0, "piston length", "mm");
        Require.AtLeast(pressureDropMPa, 0, "pressure difference", "MPa");
        Require.Above(viscosityMPas, 0, "viscosity", "mPa·s");
        var gapMm = (cylinderMm - pistonMm) / 2;
        return pressureDropMPa * 1e6 * Math.Pow(gapMm, 3) / (6 * viscosityMPas * lengthMm * (pistonMm / 2 + gapMm));
    }

    /// <summary>Pressure and leak at each bearing along a gallery.</summary>
    /// <param name="clearancesMm">Diametral clearance of each bearing, nearest to the pump first [mm], 1 to 40 of them.</param>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="landMm">Length of one land beside the oil groove [mm], above 0.</param>
    /// <param name="pumpLMin">Pump delivery at this speed [L/min], above 0.</param>
    /// <param name="reliefBar">Pressure at which the relief valve holds [bar], above 0.</param>
    /// <param name="viscosityMPas">Dynamic viscosity of the hot oil [mPa·s], above 0.</param>
    /// <param name="galleryMm">Bore of the gallery [mm], above 0.</param>
    /// <param name="spacingMm">Distance from one bearing feed to the next [mm], 0 or above.</param>
    /// <returns>Pressures and leaks.</returns>
    /// <remarks>
    /// Formula: each bearing leaks pi D h³ p / (6 mu l), each gallery piece loses 128 mu L Q / (pi d⁴); solved from the far end backwards
    /// and scaled to
    /// the pump delivery or to the relief pressure, whichever is lower. Valid: laminar, centred journals, equal journals, fixed oil
    /// temperature: an estimate of
    /// ratios, not of absolute pressure. Source: annulus and pipe flow as in textbooks (annulus: Introduction to Fluid Mechanics, 5th ed.,
    /// 2001, example 8.1).
    /// Example: by hand, without gallery loss 26 % more clearance at every bearing halves the pressure (1.26³ = 2.0).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static GalleryState AlongGallery(
        IReadOnlyList<double> clearancesMm, double diameterMm, double landMm, double pumpLMin,
        double reliefBar, double viscosityMPas, double galleryMm, double spacingMm)
    {
        ArgumentNullException.ThrowIfNull(clearancesMm);
        Require.Within(clearancesMm.Count, 1, 40, "number of bearings");
        Require.Above(pumpLMin, 0, "pump delivery", "L/min");
        Require.Above(reliefBar, 0, "relief pressure", "bar");
        Require.Above(galleryMm, 0, "gallery bore", "mm");
        Require.AtLeast(spacingMm, 0, "bearing spacing", "mm");
        var lossPerFlow = 128 * viscosityMPas * 1e-9 * spacingMm / (Math.PI * Math.Pow(galleryMm, 4)) * (1e6 / 60) * 10;
        var count = clearancesMm.Count;
        var (pressures, leaks) = (new double[count], new double[count]);
        var (pressure, flow) = (1.0, 0.0);
        for (var i = count - 1; i >= 0; i--)
        {
            pressures[i] = pressure;
            leaks[i] = GroovedBearingLeakLMin(diameterMm, clearancesMm[i], landMm, pressure, viscosityMPas);
            flow += leaks[i];
            pressure += flow * lossPerFlow;
        }
        var scale = Math.Min(pumpLMin / flow, reliefBar / pressures[0]);
        return new GalleryState([.. pressures.Select(p => p * scale)], [.. leaks.Select(q => q * scale)], pumpLMin / flow > scale);
    }
}
