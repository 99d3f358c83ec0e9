namespace Failwise.Calculations;

/// <summary>Engine, gear and industrial oil grades.</summary>
public static class OilGrades
{
    private const double None = double.PositiveInfinity;

    /// <summary>SAE J300 rows, viscosity at 100 °C; 8 and 20W from memory, the others read.</summary>
    public static IReadOnlyList<OilGrade> Engine { get; } =
    [
        new("0W", 3.8, None, 0, 6200, -35, -40),
        new("5W", 3.8, None, 0, 6600, -30, -35),
        new("10W", 4.1, None, 0, 7000, -25, -30),
        new("15W", 5.6, None, 0, 7000, -20, -25),
        new("20W", 5.6, None, 0, 9500, -15, -20),
        new("25W", 9.3, None, 0, 13000, -10, -15),
        new("8", 4.0, 6.1, 1.7),
        new("12", 5.0, 7.1, 2.0),
        new("16", 6.1, 8.2, 2.3),
        new("20", 6.9, 9.3, 2.6),
        new("30", 9.3, 12.5, 2.9),
        new("40 (0W, 5W, 10W)", 12.5, 16.3, 3.5),
        new("40", 12.5, 16.3, 3.7),
        new("50", 16.3, 21.9, 3.7),
        new("60", 21.9, 26.1, 3.7),
    ];

    /// <summary>SAE J306 rows, viscosity at 100 °C; 75 from memory, the others read.</summary>
    public static IReadOnlyList<OilGrade> Gear { get; } =
    [
        new("70W", 3.8, None, PumpingC: -55),
        new("75W", 3.8, None, PumpingC: -40),
        new("80W", 8.5, None, PumpingC: -26),
        new("85W", 11.0, None, PumpingC: -12),
        new("65", 3.8, 5.0),
        new("70", 5.0, 6.5),
        new("75", 6.5, 8.5),
        new("80", 8.5, 11.0),
        new("85", 11.0, 13.5),
        new("90", 13.5, 18.5),
        new("110", 18.5, 24.0),
        new("140", 24.0, 32.5),
        new("190", 32.5, 41.0),
        new("250", 41.0, None),
    ];

    private static readonly double[] IsoMidpoints = [2.2, 3.2, 4.6, 6.8, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500];

    /// <summary>ISO 3448 rows, viscosity at 40 °C, midpoint plus and minus 10 %.</summary>
    public static IReadOnlyList<OilGrade> Industrial { get; } =
        [.. IsoMidpoints.Select(mid => new OilGrade($"VG {Math.Round(mid, MidpointRounding.AwayFromZero):F0}", mid * 0.9, mid * 1.1))];

    /// <summary>Engine-oil grades that a hot viscosity fits.</summary>
    /// <param name="at100CSt">Viscosity at 100 °C [mm²/s], above 0.</param>
    /// <returns>Names of the summer grades, thinnest first; empty between or outside grades.</returns>
    /// <remarks>
    /// Formula: table. Valid: fresh oil; used oil is judged against its own new figure first. Source: SAE J300 (January 2015 figures),
    /// table 1, reprint read.
    /// Example: 10.5 mm²/s is SAE 30.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Viscosity is 0 or below.</exception>
    public static IReadOnlyList<string> EngineGrades(double at100CSt) => Fitting(Engine.Where(g => !g.Name.Contains('W')), at100CSt, false);

    /// <summary>Gear-oil grades that a hot viscosity fits.</summary>
    /// <param name="at100CSt">Viscosity at 100 °C [mm²/s], above 0.</param>
    /// <returns>Names of the summer grades; empty outside.</returns>
    /// <remarks>
    /// Formula: table. Valid: fresh oil. Source: SAE J306 (February 2019), table 1, reprint read. Example: 15 mm²/s is SAE 90.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Viscosity is 0 or below.</exception>
    public static IReadOnlyList<string> GearGrades(double at100CSt) => Fitting(Gear.Where(g => !g.Name.Contains('W')), at100CSt, false);

    /// <summary>Industrial-oil grade that a viscosity fits.</summary>
    /// <param name="at40CSt">Viscosity at 40 °C [mm²/s], above 0.</param>
    /// <returns>The ISO VG grade; empty between grades.</returns>
    /// <remarks>
    /// Formula: midpoint plus and minus 10 %. Valid: fresh oil. Source: ISO 3448 (1992), table 1, reprint read. Example: 44 mm²/s is VG 46.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Viscosity is 0 or below.</exception>
    public static IReadOnlyList<string> IndustrialGrades(double at40CSt) => Fitting(Industrial, at40CSt, true);

    private static IReadOnlyList<string> Fitting(IEnumerable<OilGrade> grades, double nu, bool upperIncluded)
    {
        Require.Above(nu, 0, "viscosity", "mm²/s");
        return [.. grades.Where(grade => grade.Holds(nu, upperIncluded)).Select(grade => grade.Name).Distinct()];
    }
}
