namespace Failwise.Calculations;

/// <summary>Oil thickness against temperature.</summary>
public static class OilViscosity
{
    private const double Kelvin = 273.15;

    // Lower and upper end at 100 °C, then a, b, c of L and d, e, f of H; from memory of the equation form of ASTM D2270, checked against
    // printed rows.
    private static readonly double[][] Bands =
    [
        [2.0, 3.8, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
        [3.8, 4.4, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
        [4.4, 5.0, 2.5000, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
        [5.0, 6.4, 0.10100, 16.6350, -45.469, 0.04985, 9.1613, -18.557],
        [6.4, 7.0, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
        [7.0, 7.7, 0.01191, 21.4750, -72.870, 0.79762, -0.7321, 14.610],
        [7.7, 9.0, 0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240],
        [9.0, 12, 0.88779, 7.5527, -16.600, 0.26665, 6.7015, -10.810],
        [12, 15, 0.76720, 10.7972, -38.180, 0.20073, 8.4658, -22.490],
        [15, 18, 0.97305, 5.3135, -2.200, 0.28889, 5.9741, -4.930],
        [18, 22, 0.97256, 5.2500, -0.980, 0.24504, 7.4160, -16.730],
        [22, 28, 0.91413, 7.4759, -21.820, 0.20323, 9.1267, -34.230],
        [28, 40, 0.87031, 9.7157, -50.770, 0.18411, 10.1015, -46.750],
        [40, 55, 0.84703, 12.6752, -133.310, 0.17029, 11.4866, -80.620],
        [55, 70, 0.85921, 11.1009, -83.190, 0.17130, 11.3680, -76.940],
        [70, 2000, 0.8353, 14.67, -216, 0.1684, 11.85, -97],
    ];

    /// <summary>The two constants of an oil's viscosity line.</summary>
    /// <param name="firstCSt">Viscosity at the first temperature [mm²/s], 2 or more.</param>
    /// <param name="firstC">First temperature [°C], above -60.</param>
    /// <param name="secondCSt">Viscosity at the second temperature [mm²/s], 2 or more.</param>
    /// <param name="secondC">Second temperature [°C].</param>
    /// <returns>A and B of the line.</returns>
    /// <remarks>
    /// Formula: log log (nu + 0.7) = A - B log T, T in kelvin. Valid: 2 mm²/s and above, oil still liquid and not over 200 °C; multigrades
    /// only roughly.
    /// Source: ASTM D341 form, read in a worked spreadsheet on a document site (scribd 361017004), which uses 273 for 273.15.
    /// Example: 32 at 40 °C and 5.4 at 100 °C gives A 9.53, B 3.75.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range or the oil would thicken when hot.</exception>
    public static (double A, double B) WaltherConstants(double firstCSt, double firstC, double secondCSt, double secondC)
    {
        RequireOil(firstCSt, firstC);
        RequireOil(secondCSt, secondC);
        Require.That(Math.Abs(firstC - secondC) >= 5, "the two temperatures must lie 5 °C or more apart.");
        Require.That(
            firstC < secondC == firstCSt > secondCSt,
            "oil gets thinner when hot: the two viscosities contradict their temperatures.");
        var slope = (LogLog(firstCSt) - LogLog(secondCSt)) / (Math.Log10(secondC + Kelvin) - Math.Log10(firstC + Kelvin));
        return (LogLog(firstCSt) + slope * Math.Log10(firstC + Kelvin), slope);
    }

    /// <summary>Viscosity at a third temperature.</summary>
    /// <param name="firstCSt">Viscosity at the first temperature [mm²/s], 2 or more.</param>
    /// <param name="firstC">First temperature [°C].</param>
    /// <param name="secondCSt">Viscosity at the second temperature [mm²/s], 2 or more.</param>
    /// <param name="secondC">Second temperature [°C].</param>
    /// <param name="wantedC">Temperature wanted [°C], -60 to 200.</param>
    /// <returns>Viscosity [mm²/s].</returns>
    /// <remarks>
    /// Formula: as <see cref="WaltherConstants"/>. Valid: result 2 mm²/s or more. Source: as <see cref="WaltherConstants"/>.
    /// Example: 32 at 40 °C and 5.4 at 100 °C gives 8.5 at 80 °C.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value or the result is out of range.</exception>
    public static double AtTemperature(double firstCSt, double firstC, double secondCSt, double secondC, double wantedC)
    {
        var (a, b) = WaltherConstants(firstCSt, firstC, secondCSt, secondC);
        Require.Within(wantedC, -60, 200, "temperature", "°C");
        var result = Math.Pow(10, Math.Pow(10, a - b * Math.Log10(wantedC + Kelvin))) - 0.7;
        Require.That(
            double.IsFinite(result) && result >= 2,
            $"at {wantedC:G4} °C the oil would be outside 2 mm²/s and thicker, where this form stops.");
        return result;
    }

    /// <summary>Reference viscosities L and H of the viscosity index.</summary>
    /// <param name="at100CSt">Viscosity at 100 °C [mm²/s], 2 to 2000.</param>
    /// <returns>L and H [mm²/s].</returns>
    /// <remarks>
    /// Formula: L = a Y² + b Y + c, H = d Y² + e Y + f by bands. Valid: 2 mm²/s and above.
    /// Source: ASTM D2270 (1993, reapproved 1998), 5.1.2 and 6.1.2 above 70; below 70 the equation form of its table, from memory, within
    /// 0.03 of the printed rows checked.
    /// Example: 100 mm²/s gives L 9604, H 2772.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Viscosity is out of range.</exception>
    public static (double L, double H) ReferenceViscosities(double at100CSt)
    {
        Require.Within(at100CSt, 2, 2000, "viscosity at 100 °C", "mm²/s");
        var band = Array.Find(Bands, row => at100CSt < row[1]) ?? Bands[^1];
        double Parabola(int at) => band[at] * at100CSt * at100CSt + band[at + 1] * at100CSt + band[at + 2];
        return (Parabola(2), Parabola(5));
    }

    /// <summary>Viscosity index.</summary>
    /// <param name="at40CSt">Viscosity at 40 °C [mm²/s], above the one at 100 °C.</param>
    /// <param name="at100CSt">Viscosity at 100 °C [mm²/s], 2 to 2000.</param>
    /// <returns>Viscosity index [-], not rounded.</returns>
    /// <remarks>
    /// Formula: 100 (L-U)/(L-H) up to 100, above it (10^N - 1)/0.00715 + 100 with N = (log H - log U)/log Y. Valid: 2 mm²/s and above at
    /// 100 °C.
    /// Source: ASTM D2270 (1993, reapproved 1998), sections 5 and 6; same method as ISO 2909. Example: 22.83 and 5.05 gives 156.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A viscosity is out of range.</exception>
    public static double Index(double at40CSt, double at100CSt)
    {
        var (l, h) = ReferenceViscosities(at100CSt);
        return IndexFromReference(at40CSt, at100CSt, l, h);
    }

    /// <summary>Viscosity index from given reference viscosities.</summary>
    /// <param name="at40CSt">Viscosity at 40 °C [mm²/s].</param>
    /// <param name="at100CSt">Viscosity at 100 °C [mm²/s].</param>
    /// <param name="l">Reference L [mm²/s].</param>
    /// <param name="h">Reference H [mm²/s].</param>
    /// <returns>Viscosity index [-], not rounded.</returns>
    /// <remarks>
    /// Formula: as <see cref="Index"/>. Valid: as <see cref="Index"/>. Source: as <see cref="Index"/>. Example: 22.83, 5.05, H 28.97 gives
    /// 156.37.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The oil would be thicker hot than cold.</exception>
    public static double IndexFromReference(double at40CSt, double at100CSt, double l, double h)
    {
        Require.That(at40CSt > at100CSt, $"viscosity at 40 °C ({at40CSt:G4}) must be above the one at 100 °C ({at100CSt:G4} mm²/s).");
        if (at40CSt >= h)
            return 100 * (l - at40CSt) / (l - h);
        var n = Math.Log10(h / at40CSt) / Math.Log10(at100CSt);
        return (Math.Pow(10, n) - 1) / 0.00715 + 100;
    }

    /// <summary>Typical dynamic viscosity of a straight engine oil.</summary>
    /// <param name="grade">SAE grade: 10, 20, 30, 40, 50 or 60.</param>
    /// <param name="temperatureC">Oil temperature [°C], 0 to 150.</param>
    /// <returns>Dynamic viscosity [mPa·s].</returns>
    /// <remarks>
    /// Formula: mu = mu0 exp(b / (T + 95)), mu in microreyn, T in °F. Valid: old straight grades; a stand-in where the oil's own figures
    /// are missing.
    /// Source: Shigley's Mechanical Engineering Design (McGraw-Hill), caption of the viscosity chart, Fig. 12-13, transcription read.
    /// Example: SAE 30 at 100 °C gives 8.16 mPa·s by hand.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Grade or temperature is out of range.</exception>
    public static double TypicalMPas(int grade, double temperatureC)
    {
        Require.Within(temperatureC, 0, 150, "oil temperature", "°C");
        var (mu0, b) = TypicalConstants(grade);
        return mu0 * Math.Exp(b / (temperatureC * 9 / 5 + 32 + 95)) * MPasPerMicroreyn;
    }

    /// <summary>Constants of the typical straight-oil line.</summary>
    /// <param name="grade">SAE grade: 10, 20, 30, 40, 50 or 60.</param>
    /// <returns>mu0 [microreyn] and b [°F].</returns>
    /// <remarks>Formula: table. Valid: grades 10 to 60. Source: as <see cref="TypicalMPas"/>. Example: SAE 30 gives 0.0141 and
    /// 1360.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">No constants for this grade.</exception>
    public static (double Mu0, double B) TypicalConstants(int grade) => grade switch
    {
        10 => (0.0158, 1157.5),
        20 => (0.0136, 1271.6),
        30 => (0.0141, 1360),
        40 => (0.0121, 1474.4),
        50 => (0.0170, 1509.6),
        60 => (0.0187, 1564),
        _ => throw new ArgumentOutOfRangeException(null, $"SAE grade must be 10, 20, 30, 40, 50 or 60, not {grade}."),
    };

    /// <summary>Dynamic from kinematic viscosity.</summary>
    /// <param name="kinematicCSt">Kinematic viscosity [mm²/s], above 0.</param>
    /// <param name="densityKgL">Density at that temperature [kg/L], 0.6 to 1.3.</param>
    /// <returns>Dynamic viscosity [mPa·s].</returns>
    /// <remarks>Formula: mu = nu rho. Valid: any oil. Source: by definition. Example: by hand, 100 mm²/s at 0.85 kg/L gives 85
    /// mPa·s.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double DynamicMPas(double kinematicCSt, double densityKgL)
    {
        Require.Above(kinematicCSt, 0, "kinematic viscosity", "mm²/s");
        Require.Within(densityKgL, 0.6, 1.3, "oil density", "kg/L");
        return kinematicCSt * densityKgL;
    }

    private const double MPasPerMicroreyn = 1e-3 * 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    private static double LogLog(double nu) => Math.Log10(Math.Log10(nu + 0.7));

    private static void RequireOil(double nu, double temperatureC)
    {
        Require.AtLeast(nu, 2, "viscosity", "mm²/s");
        Require.Within(temperatureC, -60, 200, "temperature", "°C");
    }
}
