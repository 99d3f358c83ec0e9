namespace Failwise.Calculations;

/// <summary>The finite-bearing table: numerical solutions of the Reynolds equation for a full 360 degree bearing.</summary>
public static class BearingTable
{
    // Columns: S, eccentricity, position angle, friction variable, flow variable, side-flow ratio, mean over peak pressure.
    private static readonly FilmState[] Infinite =
    [
        new(0.240, 0.1, 69.10, 4.80, 3.03, 0, 0.826),
        new(0.123, 0.2, 67.26, 2.57, 2.83, 0, 0.814),
        new(0.0626, 0.4, 61.94, 1.52, 2.26, 0, 0.764),
        new(0.0389, 0.6, 54.31, 1.20, 1.56, 0, 0.667),
        new(0.0210, 0.8, 42.22, 0.961, 0.760, 0, 0.495),
        new(0.0115, 0.9, 31.62, 0.756, 0.411, 0, 0.358), // this row from memory
    ];

    private static readonly FilmState[] Square =
    [
        new(1.33, 0.1, 79.50, 26.4, 3.37, 0.150, 0.540),
        new(0.631, 0.2, 74.02, 12.8, 3.59, 0.280, 0.529),
        new(0.264, 0.4, 63.10, 5.79, 3.99, 0.497, 0.484),
        new(0.121, 0.6, 50.58, 3.22, 4.33, 0.680, 0.415),
        new(0.0446, 0.8, 36.24, 1.70, 4.62, 0.842, 0.313),
        new(0.0188, 0.9, 26.45, 1.05, 4.74, 0.919, 0.247),
        new(0.00474, 0.97, 15.47, 0.514, 4.82, 0.973, 0.152),
    ];

    private static readonly FilmState[] Half =
    [
        new(4.31, 0.1, 81.62, 85.6, 3.43, 0.173, 0.523),
        new(2.03, 0.2, 74.94, 40.9, 3.72, 0.318, 0.506),
        new(0.779, 0.4, 61.45, 17.0, 4.29, 0.552, 0.441),
        new(0.319, 0.6, 48.14, 8.10, 4.85, 0.730, 0.365),
        new(0.0923, 0.8, 33.31, 3.26, 5.41, 0.874, 0.267),
        new(0.0313, 0.9, 23.66, 1.60, 5.69, 0.939, 0.206),
        new(0.00609, 0.97, 13.75, 0.610, 5.88, 0.980, 0.126),
    ];

    private static readonly FilmState[] Quarter =
    [
        new(16.2, 0.1, 82.31, 322, 3.45, 0.180, 0.515),
        new(7.57, 0.2, 75.18, 153, 3.76, 0.330, 0.489),
        new(2.83, 0.4, 60.86, 61.1, 4.37, 0.567, 0.415),
        new(1.07, 0.6, 46.72, 26.7, 4.99, 0.746, 0.334),
        new(0.261, 0.8, 31.04, 8.80, 5.60, 0.884, 0.240),
        new(0.0736, 0.9, 21.85, 3.50, 5.91, 0.945, 0.180),
        new(0.0101, 0.97, 12.22, 0.922, 6.12, 0.984, 0.108),
    ];

    /// <summary>Film state at one eccentricity.</summary>
    /// <param name="lengthOverDiameter">Bearing length over diameter [-], 0.25 or more.</param>
    /// <param name="eccentricity">Eccentricity ratio [-], 0.1 to 0.9, or to 0.97 at a length ratio of just 1, 1/2 or 1/4.</param>
    /// <returns>The film state, straight-line between table rows.</returns>
    /// <remarks>
    /// Formula: table rows, between length ratios y = L^-3 [-(1/8)(1-L)(1-2L)(1-4L) y_inf + (1/3)(1-2L)(1-4L) y_1 - (1/4)(1-L)(1-4L) y_1/2
    /// + (1/24)(1-L)(1-2L) y_1/4].
    /// Valid: full 360 degree bearing, steady load, one viscosity, no supply pressure, 0.25 or longer.
    /// Source: ASLE Transactions vol. 1 (1958), finite journal bearing table as reprinted in machine-design textbooks, read in a
    /// transcription; infinite row at 0.9 from memory.
    /// Example: length ratio 1, eccentricity 0.8 gives S 0.0446.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside the table.</exception>
    public static FilmState AtEccentricity(double lengthOverDiameter, double eccentricity)
    {
        var rows = Rows(lengthOverDiameter);
        Require.Within(eccentricity, rows[0].Eccentricity, rows[^1].Eccentricity, "eccentricity ratio");
        return Between(rows, eccentricity, row => row.Eccentricity);
    }

    /// <summary>Film state at one Sommerfeld number.</summary>
    /// <param name="lengthOverDiameter">Bearing length over diameter [-], 0.25 or more.</param>
    /// <param name="sommerfeld">Sommerfeld number [-], inside the table.</param>
    /// <returns>The film state, straight-line in S between table rows.</returns>
    /// <remarks>
    /// Formula: as <see cref="AtEccentricity"/>; straight-line interpolation in S, as the textbook example does (interpolation in log S
    /// lies about 3 % higher in film).
    /// Valid: S between the table ends, which are eccentricity 0.1 and 0.9 or 0.97; lighter loads are Petroff's case, heavier ones touch.
    /// Source: as <see cref="AtEccentricity"/>; Machine Design (Dorling Kindersley India, 2010), example 17-4.
    /// Example: length ratio 1, S 0.216 gives film ratio 0.533.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside the table.</exception>
    public static FilmState AtSommerfeld(double lengthOverDiameter, double sommerfeld)
    {
        var rows = Rows(lengthOverDiameter);
        Require.That(
            sommerfeld <= rows[0].Sommerfeld,
            $"the film is nearly centred: S {sommerfeld:G4} is above {rows[0].Sommerfeld:G4}, where the table ends. Use the " +
                $"light-load (Petroff) calculation.");
        Require.That(
            sommerfeld >= rows[^1].Sommerfeld,
            $"the film is thinner than the table covers: S {sommerfeld:G4} is below {rows[^1].Sommerfeld:G4} (eccentricity " +
                $"{rows[^1].Eccentricity:G2}). Expect contact.");
        return Between(rows, sommerfeld, row => row.Sommerfeld);
    }

    private static FilmState[] Rows(double ratio)
    {
        Require.That(
            ratio >= 0.25,
            $"bearing length over diameter must be 0.25 or more, not {ratio:G4}: use the short-bearing calculation.");
        return ratio switch
        {
            1 => Square,
            0.5 => Half,
            0.25 => Quarter,
            double.PositiveInfinity => Infinite,
            _ => [.. Infinite.Select((_, row) => Weighted(ratio, row))],
        };
    }

    private static FilmState Weighted(double ratio, int row)
    {
        var (a, b, c) = (1 / ratio - 1, 1 / ratio - 2, 1 / ratio - 4);
        double[] weights = [-a * b * c / 8, b * c / ratio / 3, -a * c / ratio / 4, a * b / ratio / 24];
        double Mix(Func<FilmState, double> pick) =>
            weights[0] * pick(Infinite[row]) + weights[1] * pick(Square[row])
            + weights[2] * pick(Half[row]) + weights[3] * pick(Quarter[row]);
        return new FilmState(
            Mix(s => s.Sommerfeld), Infinite[row].Eccentricity, Mix(s => s.PositionAngleDeg), Mix(s => s.FrictionVariable),
            Mix(s => s.FlowVariable), Mix(s => s.SideFlowRatio), Mix(s => s.PressureRatio));
    }

    private static FilmState Between(FilmState[] rows, double at, Func<FilmState, double> key)
    {
        var upper = 1;
        while (upper < rows.Length - 1 && (key(rows[0]) < key(rows[^1]) ? at > key(rows[upper]) : at < key(rows[upper])))
            upper++;
        var (left, right) = (rows[upper - 1], rows[upper]);
        var part = (at - key(left)) / (key(right) - key(left));
        double Line(Func<FilmState, double> pick) => pick(left) + part * (pick(right) - pick(left));
        return new FilmState(
            Line(s => s.Sommerfeld), Line(s => s.Eccentricity), Line(s => s.PositionAngleDeg), Line(s => s.FrictionVariable),
            Line(s => s.FlowVariable), Line(s => s.SideFlowRatio), Line(s => s.PressureRatio));
    }
}
