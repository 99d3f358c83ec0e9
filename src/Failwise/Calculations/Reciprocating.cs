namespace Failwise.Calculations;

/// <summary>Forces along the rod of one cylinder.</summary>
/// <param name="GasN">Gas force on the piston [N].</param>
/// <param name="InertiaN">Force that speeds the moving mass up, positive towards the crank [N].</param>
/// <param name="PinN">Net force along the cylinder at the piston pin [N].</param>
/// <param name="RodN">Force along the rod [N].</param>
/// <param name="SideN">Force of the piston on the cylinder wall [N].</param>
/// <param name="ReversalRpm">Speed at which the pin load would vanish at this angle [rev/min].</param>
public sealed record PinForces(double GasN, double InertiaN, double PinN, double RodN, double SideN, double ReversalRpm);

/// <summary>Motion and inertia of piston and rod.</summary>
public static class Reciprocating
{
    private const double Gravity = 9.80665;

    /// <summary>Mean piston speed.</summary>
    /// <param name="strokeMm">Stroke [mm], above 0.</param>
    /// <param name="speedRpm">Crankshaft speed [rev/min], 0 or above.</param>
    /// <returns>Mean piston speed [m/s].</returns>
    /// <remarks>
    /// Formula: v = 2 s n / 60 000. Valid: any slider-crank; says nothing about peak speed. Source: by definition, two strokes a
    /// revolution.
    /// Example: 80 mm at 6000 rev/min gives 16.0 m/s.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Stroke is 0 or below, or speed is below 0.</exception>
    public static double MeanPistonSpeed(double strokeMm, double speedRpm)
    {
        Require.Above(strokeMm, 0, "stroke", "mm");
        Require.AtLeast(speedRpm, 0, "speed", "rpm");
        return 2 * strokeMm * speedRpm / 60_000;
    }

    /// <summary>Piston velocity.</summary>
    /// <param name="crankRadiusMm">Half the stroke [mm], above 0.</param>
    /// <param name="rodLengthMm">Rod length between centres [mm], 3 crank radii or more.</param>
    /// <param name="speedRpm">Crankshaft speed [rev/min], above 0.</param>
    /// <param name="angleDeg">Crank angle after top dead centre [deg].</param>
    /// <returns>Velocity away from the head [m/s].</returns>
    /// <remarks>
    /// Formula: v = w r (sin t + r sin 2t / (2 l)). Valid: rod of 3 crank radii or more (two-term series).
    /// Source: Theory of Machines, 14th ed. (Eurasia, 2009), example 15.4, transcription read. Example: 300 mm, 1500 mm, 180 rev/min, 40
    /// deg gives 4.19 m/s.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double PistonVelocity(double crankRadiusMm, double rodLengthMm, double speedRpm, double angleDeg)
    {
        var ratio = Ratio(crankRadiusMm, rodLengthMm, speedRpm);
        var angle = angleDeg * Math.PI / 180;
        return Omega(speedRpm) * crankRadiusMm / 1000 * (Math.Sin(angle) + ratio * Math.Sin(2 * angle) / 2);
    }

    /// <summary>Piston acceleration.</summary>
    /// <param name="crankRadiusMm">Half the stroke [mm], above 0.</param>
    /// <param name="rodLengthMm">Rod length between centres [mm], 3 crank radii or more.</param>
    /// <param name="speedRpm">Crankshaft speed [rev/min], above 0.</param>
    /// <param name="angleDeg">Crank angle after top dead centre [deg].</param>
    /// <returns>Acceleration away from the head [m/s²].</returns>
    /// <remarks>
    /// Formula: a = w² r (cos t + r cos 2t / l). Valid: as <see cref="PistonVelocity"/>. Source: as <see cref="PistonVelocity"/>.
    /// Example: 300 mm, 1500 mm, 180 rev/min, 40 deg gives 85.36 m/s².
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double PistonAcceleration(double crankRadiusMm, double rodLengthMm, double speedRpm, double angleDeg)
    {
        var ratio = Ratio(crankRadiusMm, rodLengthMm, speedRpm);
        var angle = angleDeg * Math.PI / 180;
        return Omega(speedRpm) * Omega(speedRpm) * crankRadiusMm / 1000 * (Math.Cos(angle) + ratio * Math.Cos(2 * angle));
    }

    /// <summary>Crank angle at which the piston stops speeding up.</summary>
    /// <param name="crankRadiusMm">Half the stroke [mm], above 0.</param>
    /// <param name="rodLengthMm">Rod length between centres [mm], 3 crank radii or more.</param>
    /// <returns>Angle after top dead centre [deg].</returns>
    /// <remarks>
    /// Formula: root of 2 c² r/l + c - r/l = 0, c the cosine. Valid: as <see cref="PistonVelocity"/>. Source: as
    /// <see cref="PistonVelocity"/>. Example: 300 and 1500 mm gives 79.27 deg.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double ZeroAccelerationDeg(double crankRadiusMm, double rodLengthMm)
    {
        var ratio = Ratio(crankRadiusMm, rodLengthMm, 1);
        return Math.Acos((Math.Sqrt(1 + 8 * ratio * ratio) - 1) / (4 * ratio)) * 180 / Math.PI;
    }

    /// <summary>Inertia force at top dead centre.</summary>
    /// <param name="massKg">Moving mass: piston, rings, pin and small end [kg], above 0.</param>
    /// <param name="crankRadiusMm">Half the stroke [mm], above 0.</param>
    /// <param name="rodLengthMm">Rod length between centres [mm].</param>
    /// <param name="speedRpm">Crankshaft speed [rev/min], above 0.</param>
    /// <returns>Force that pulls on rod bolts and cap [N].</returns>
    /// <remarks>
    /// Formula: F = m r w² (1 + r/l). Valid: as <see cref="PistonVelocity"/>. Source: as <see cref="PistonVelocity"/>, at angle 0. Example:
    /// by hand, 1 kg, 50 and 200 mm, 1800 rev/min gives 2221 N.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double TopDeadCentreN(double massKg, double crankRadiusMm, double rodLengthMm, double speedRpm)
    {
        Require.Above(massKg, 0, "moving mass", "kg");
        return massKg * PistonAcceleration(crankRadiusMm, rodLengthMm, speedRpm, 0);
    }

    /// <summary>Forces at piston pin, rod and wall.</summary>
    /// <param name="boreMm">Bore [mm], above 0.</param>
    /// <param name="crankRadiusMm">Half the stroke [mm], above 0.</param>
    /// <param name="rodLengthMm">Rod length between centres [mm].</param>
    /// <param name="massKg">Moving mass [kg], above 0.</param>
    /// <param name="speedRpm">Crankshaft speed [rev/min], above 0.</param>
    /// <param name="angleDeg">Crank angle after top dead centre [deg], 0 to 90.</param>
    /// <param name="pressureMPa">Gas pressure above crankcase pressure [MPa], 0 or above.</param>
    /// <param name="vertical">True for a cylinder standing above the crank, where weight helps.</param>
    /// <returns>The forces.</returns>
    /// <remarks>
    /// Formula: pin = p A - m a (+ m g); rod = pin / cos b; side = pin tan b; sin b = r sin t / l. Valid: no friction, going down.
    /// Source: Theory of Machines, 14th ed. (Eurasia, 2009), examples 15.9 and 15.11, transcription read; the second prints 2265 N where
    /// correct arithmetic gives 2263.5 N.
    /// Example: 80 mm, 50 and 200 mm, 1 kg, 1800 rev/min, 33 deg, 0.7 MPa gives 1848 N at the pin.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static PinForces Forces(
        double boreMm, double crankRadiusMm, double rodLengthMm, double massKg,
        double speedRpm, double angleDeg, double pressureMPa, bool vertical)
    {
        Require.Above(boreMm, 0, "bore", "mm");
        Require.Above(massKg, 0, "moving mass", "kg");
        Require.AtLeast(pressureMPa, 0, "gas pressure", "MPa");
        Require.Within(angleDeg, 0, 90, "crank angle", "deg");
        var gas = pressureMPa * Math.PI / 4 * boreMm * boreMm;
        var inertia = massKg * PistonAcceleration(crankRadiusMm, rodLengthMm, speedRpm, angleDeg);
        var push = gas + (vertical ? massKg * Gravity : 0);
        var tilt = Math.Asin(crankRadiusMm / rodLengthMm * Math.Sin(angleDeg * Math.PI / 180));
        var pin = push - inertia;
        return new PinForces(
            gas, inertia, pin, pin / Math.Cos(tilt), pin * Math.Tan(tilt), inertia > 0 ? speedRpm * Math.Sqrt(push / inertia) : 0);
    }

    /// <summary>Spread of a set of rods or pistons.</summary>
    /// <param name="massesG">Mass of each part [g], 2 or more, all above 0.</param>
    /// <returns>Heaviest less lightest [g].</returns>
    /// <remarks>
    /// Formula: largest less smallest. Valid: weigh rods as whole sets and, better, both ends apart. Source: diesel service manual page
    /// 9-76 (manualshelf.com vm1012-b) allows 18 g in a set of four; no piston tolerance was found.
    /// Example: by hand, 612, 618, 615 and 630 g spread 18 g.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Too few parts or a mass of 0 or below.</exception>
    public static double SetSpreadG(IReadOnlyList<double> massesG)
    {
        ArgumentNullException.ThrowIfNull(massesG);
        Require.Within(massesG.Count, 2, 24, "number of parts");
        foreach (var mass in massesG)
            Require.Above(mass, 0, "mass", "g");
        return massesG.Max() - massesG.Min();
    }

    private static double Omega(double speedRpm) => speedRpm * 2 * Math.PI / 60;

    private static double Ratio(double crankRadiusMm, double rodLengthMm, double speedRpm)
    {
        Require.Above(crankRadiusMm, 0, "crank radius", "mm");
        Require.AtLeast(rodLengthMm, 3 * crankRadiusMm, "rod length", "mm");
        Require.Above(speedRpm, 0, "speed", "rpm");
        return crankRadiusMm / rodLengthMm;
    }
}
