namespace Failwise.Calculations;

/// <summary>Oil film, friction and flow in plain bearings.</summary>
public static class JournalBearing
{
    /// <summary>Friction torque of a centred journal (Petroff).</summary>
    /// <param name="viscosityMPas">Dynamic viscosity [mPa·s], above 0.</param>
    /// <param name="speedRpm">Speed [rev/min], above 0.</param>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="lengthMm">Bearing length [mm], above 0.</param>
    /// <param name="diametralClearanceMm">Bore minus journal [mm], above 0.</param>
    /// <returns>Friction torque [N·m].</returns>
    /// <remarks>
    /// Formula: T = 4 pi² mu N r³ l / c with c the radial clearance. Valid: light load, eccentricity below about 0.2; too low under load.
    /// Source: Introduction to Fluid Mechanics, 5th ed. (Wiley India, 2001), example 8.2, transcription read.
    /// Example: 3 in journal, 1.25 in long, clearance 0.0025 in, 3600 rpm, 2.01e-4 lbf·s/ft² gives 11.16 lbf·in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input is 0 or below.</exception>
    public static double PetroffTorque(
        double viscosityMPas, double speedRpm, double diameterMm, double lengthMm, double diametralClearanceMm)
    {
        RequireBearing(viscosityMPas, speedRpm, diameterMm, lengthMm, diametralClearanceMm);
        var radiusM = diameterMm / 2000;
        return 4 * Math.PI * Math.PI * viscosityMPas / 1000 * (speedRpm / 60)
            * radiusM * radiusM * radiusM * (lengthMm / 1000) / (diametralClearanceMm / 2000);
    }

    /// <summary>Sommerfeld number of a loaded bearing.</summary>
    /// <param name="viscosityMPas">Dynamic viscosity at film temperature [mPa·s], above 0.</param>
    /// <param name="speedRpm">Speed [rev/min], above 0.</param>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="lengthMm">Bearing length [mm], above 0.</param>
    /// <param name="diametralClearanceMm">Bore minus journal [mm], above 0.</param>
    /// <param name="loadN">Load [N], above 0.</param>
    /// <returns>Sommerfeld number [-].</returns>
    /// <remarks>
    /// Formula: S = (r/c)² mu N / P with P = W / (d l) and N in rev/s. Valid: steady load, full bearing.
    /// Source: Machine Design (Dorling Kindersley India, 2010), example 17-4, transcription read.
    /// Example: 60 x 60 mm, 3000 N, 30 mPa·s, diametral clearance 0.12 mm, 1440 rpm gives 0.216.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input is 0 or below.</exception>
    public static double Sommerfeld(
        double viscosityMPas, double speedRpm, double diameterMm, double lengthMm, double diametralClearanceMm, double loadN)
    {
        RequireBearing(viscosityMPas, speedRpm, diameterMm, lengthMm, diametralClearanceMm);
        Require.Above(loadN, 0, "load", "N");
        var ratio = diameterMm / diametralClearanceMm;
        return ratio * ratio * (viscosityMPas / 1000) * (speedRpm / 60) / (MeanPressureMPa(loadN, diameterMm, lengthMm) * 1e6);
    }

    /// <summary>Viscosity a bearing needs to run at a stated Sommerfeld number.</summary>
    /// <param name="sommerfeld">Sommerfeld number [-], above 0.</param>
    /// <param name="speedRpm">Speed [rev/min], above 0.</param>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="lengthMm">Bearing length [mm], above 0.</param>
    /// <param name="diametralClearanceMm">Bore minus journal [mm], above 0.</param>
    /// <param name="loadN">Load [N], above 0.</param>
    /// <returns>Dynamic viscosity at film temperature [mPa·s].</returns>
    /// <remarks>
    /// Formula: mu = S P (c/r)² / N. Valid: steady load, full bearing.
    /// Source: Machine Design (Dorling Kindersley India, 2010), example 17-2, transcription read.
    /// Example: 60 x 60 mm, 6000 N, diametral clearance 0.08 mm, 1260 rpm, S 0.0446 gives 6.293 mPa·s.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input is 0 or below.</exception>
    public static double ViscosityNeeded(
        double sommerfeld, double speedRpm, double diameterMm, double lengthMm, double diametralClearanceMm, double loadN)
    {
        Require.Above(sommerfeld, 0, "Sommerfeld number");
        return sommerfeld / Sommerfeld(1, speedRpm, diameterMm, lengthMm, diametralClearanceMm, loadN);
    }

    /// <summary>Diametral clearance at which a bearing runs at a stated Sommerfeld number.</summary>
    /// <param name="sommerfeld">Sommerfeld number [-], above 0.</param>
    /// <param name="viscosityMPas">Dynamic viscosity [mPa·s], above 0.</param>
    /// <param name="speedRpm">Speed [rev/min], above 0.</param>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="lengthMm">Bearing length [mm], above 0.</param>
    /// <param name="loadN">Load [N], above 0.</param>
    /// <returns>Bore minus journal [mm].</returns>
    /// <remarks>
    /// Formula: c = r sqrt(mu N / (S P)). Valid: steady load, full bearing.
    /// Source: Machine Design (Dorling Kindersley India, 2010), example 17-5, transcription read.
    /// Example: 96 x 96 mm, 22 kN, 960 rpm, 20 mPa·s, S 0.0446 gives a radial clearance of 0.0832 mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input is 0 or below.</exception>
    public static double ClearanceFor(
        double sommerfeld, double viscosityMPas, double speedRpm, double diameterMm, double lengthMm, double loadN)
    {
        Require.Above(sommerfeld, 0, "Sommerfeld number");
        return Math.Sqrt(Sommerfeld(viscosityMPas, speedRpm, diameterMm, lengthMm, 1, loadN) / sommerfeld);
    }

    /// <summary>Oil drawn into the film.</summary>
    /// <param name="flowVariable">Flow variable from the table [-], above 0.</param>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="lengthMm">Bearing length [mm], above 0.</param>
    /// <param name="diametralClearanceMm">Bore minus journal [mm], above 0.</param>
    /// <param name="speedRpm">Speed [rev/min], above 0.</param>
    /// <returns>Flow [L/min].</returns>
    /// <remarks>
    /// Formula: Q = (flow variable) r c N l. Valid: as the table; pressure feed comes on top.
    /// Source: Machine Design (Dorling Kindersley India, 2010), example 17-3, transcription read.
    /// Example: flow variable 4.62, 60 x 60 mm, diametral clearance 0.048 mm, 1440 rpm gives 0.2874 L/min.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input is 0 or below.</exception>
    public static double FilmFlowLMin(double flowVariable, double diameterMm, double lengthMm, double diametralClearanceMm, double speedRpm)
    {
        Require.Above(flowVariable, 0, "flow variable");
        RequireBearing(1, speedRpm, diameterMm, lengthMm, diametralClearanceMm);
        return flowVariable * (diameterMm / 2) * (diametralClearanceMm / 2) * speedRpm * lengthMm / 1e6;
    }

    /// <summary>Temperature rise of the oil in the film.</summary>
    /// <param name="film">Film state from the table.</param>
    /// <param name="meanPressureMPa">Load over projected area [MPa], above 0.</param>
    /// <param name="heatCapacityMPaPerK">Density times specific heat of the oil [MPa/K]; textbook short form 1.514.</param>
    /// <returns>Rise [K].</returns>
    /// <remarks>
    /// Formula: dT = 4 pi P f(r/c) / (rho cp Q/(rcNl)); with rho cp = 1.514 MPa/K this is the textbook short form 8.3 P f(r/c) /
    /// (Q/(rcNl)).
    /// Valid: all friction heat leaves with the oil, none through the metal: an upper estimate.
    /// Source: Machine Design (Dorling Kindersley India, 2010), example 17-4, transcription read.
    /// Example: 0.8333 MPa, friction variable 4.927, flow variable 4.104 gives 8.3 K.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Pressure or heat capacity is 0 or below.</exception>
    public static double TemperatureRiseK(FilmState film, double meanPressureMPa, double heatCapacityMPaPerK = 4 * Math.PI / 8.3)
    {
        ArgumentNullException.ThrowIfNull(film);
        Require.Above(meanPressureMPa, 0, "mean pressure", "MPa");
        Require.Above(heatCapacityMPaPerK, 0, "heat capacity", "MPa/K");
        return 4 * Math.PI * meanPressureMPa * film.FrictionVariable / (heatCapacityMPaPerK * film.FlowVariable);
    }

    /// <summary>Load over the projected area of a bearing.</summary>
    /// <param name="loadN">Load [N], above 0.</param>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <param name="lengthMm">Bearing length [mm], above 0.</param>
    /// <returns>Mean pressure [MPa].</returns>
    /// <remarks>
    /// Formula: P = W / (d l). Valid: any bearing. Source: by definition.
    /// Example: 3000 N on 60 x 60 mm gives 0.8333 MPa.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input is 0 or below.</exception>
    public static double MeanPressureMPa(double loadN, double diameterMm, double lengthMm)
    {
        Require.Above(loadN, 0, "load", "N");
        Require.Above(diameterMm, 0, "journal diameter", "mm");
        Require.Above(lengthMm, 0, "bearing length", "mm");
        return loadN / (diameterMm * lengthMm);
    }

    /// <summary>Sommerfeld number of a short bearing (Ocvirk).</summary>
    /// <param name="lengthOverDiameter">Length over diameter [-], above 0, 0.5 at most.</param>
    /// <param name="eccentricity">Eccentricity ratio [-], 0.01 to 0.95.</param>
    /// <returns>Sommerfeld number [-].</returns>
    /// <remarks>
    /// Formula: S (l/d)² = (1-e²)² / (pi e sqrt(pi² (1-e²) + 16 e²)). Valid: length a quarter of the diameter or less and eccentricity to
    /// 0.8;
    /// against the finite table at l/d 1/4 it lies 2 % low at e 0.1, 7 % at 0.6, 15 % at 0.8, 28 % at 0.9: it promises too much film.
    /// Source: short-bearing theory, NACA TN 2808 and TN 3491 (abstract of the second read); comparison with ASLE Transactions vol. 1
    /// (1958).
    /// Example: l/d 1/4, e 0.1 gives 15.84 (table 16.2).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A ratio lies outside its range.</exception>
    public static double ShortBearingSommerfeld(double lengthOverDiameter, double eccentricity)
    {
        Require.That(
            lengthOverDiameter is > 0 and <= 0.5,
            $"length over diameter must lie above 0 and at most 0.5 for the short-bearing form, not {lengthOverDiameter:G4}.");
        Require.Within(eccentricity, 0.01, 0.95, "eccentricity ratio");
        var open = 1 - eccentricity * eccentricity;
        var root = Math.Sqrt(Math.PI * Math.PI * open + 16 * eccentricity * eccentricity);
        return open * open / (Math.PI * eccentricity * root) / (lengthOverDiameter * lengthOverDiameter);
    }

    /// <summary>Eccentricity at which a short bearing carries its load.</summary>
    /// <param name="lengthOverDiameter">Length over diameter [-], above 0, 0.5 at most.</param>
    /// <param name="sommerfeld">Sommerfeld number [-].</param>
    /// <returns>Eccentricity ratio [-].</returns>
    /// <remarks>
    /// Formula: inverse of <see cref="ShortBearingSommerfeld"/> by halving. Valid: eccentricity 0.01 to 0.95.
    /// Source: as <see cref="ShortBearingSommerfeld"/>. Example: l/d 1/4, S 15.84 gives 0.1.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The load is too light or too heavy for the form.</exception>
    public static double ShortBearingEccentricity(double lengthOverDiameter, double sommerfeld)
    {
        var (low, high) = (0.01, 0.95);
        Require.Within(
            sommerfeld,
            ShortBearingSommerfeld(lengthOverDiameter, high),
            ShortBearingSommerfeld(lengthOverDiameter, low),
            "Sommerfeld number");
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (ShortBearingSommerfeld(lengthOverDiameter, middle) > sommerfeld)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>Film thickness against roughness.</summary>
    /// <param name="filmUm">Least film [µm], 0 or above.</param>
    /// <param name="journalRqUm">Root-mean-square roughness Rq of the journal [µm], above 0.</param>
    /// <param name="bearingRqUm">Root-mean-square roughness Rq of the bearing [µm], above 0.</param>
    /// <returns>Lambda ratio [-].</returns>
    /// <remarks>
    /// Formula: lambda = h0 / sqrt(Rq1² + Rq2²). Valid: Rq, not Ra (Rq is about 1.25 Ra on turned and ground surfaces).
    /// Customary reading, from memory: below 1 touching, 1 to 3 mixed, above 3 full film.
    /// Source: from memory; no published worked example was found. Example: by hand, film 5 µm, Rq 3 and 4 µm gives 1.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double Lambda(double filmUm, double journalRqUm, double bearingRqUm)
    {
        Require.AtLeast(filmUm, 0, "least film", "µm");
        Require.Above(journalRqUm, 0, "journal roughness", "µm");
        Require.Above(bearingRqUm, 0, "bearing roughness", "µm");
        return filmUm / Math.Sqrt(journalRqUm * journalRqUm + bearingRqUm * bearingRqUm);
    }

    /// <summary>Least film a designer asks for.</summary>
    /// <param name="diameterMm">Journal diameter [mm], above 0.</param>
    /// <returns>Least film wanted [mm].</returns>
    /// <remarks>
    /// Formula: h0 = 0.005 + 0.00004 d. Valid: a design rule for steady industrial bearings; engine bearings run thinner for moments.
    /// Source: Shigley's Mechanical Engineering Design (McGraw-Hill), section 12-14, transcription read.
    /// Example: by hand, 50 mm gives 0.007 mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Diameter is 0 or below.</exception>
    public static double DesignFilmMm(double diameterMm)
    {
        Require.Above(diameterMm, 0, "journal diameter", "mm");
        return 0.005 + 0.00004 * diameterMm;
    }

    private static void RequireBearing(double viscosityMPas, double speedRpm, double diameterMm, double lengthMm, double clearanceMm)
    {
        Require.Above(viscosityMPas, 0, "viscosity", "mPa·s");
        Require.Above(speedRpm, 0, "speed", "rpm");
        Require.Above(diameterMm, 0, "journal diameter", "mm");
        Require.Above(lengthMm, 0, "bearing length", "mm");
        Require.Above(clearanceMm, 0, "clearance", "mm");
    }
}
