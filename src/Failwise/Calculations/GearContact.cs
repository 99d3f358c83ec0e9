namespace Failwise.Calculations;

/// <summary>Contact and bending stress of gear teeth.</summary>
public static class GearContact
{
    private const double FootMinutePerMs = 60 / 0.3048;
    private const double MPaPerPsi = 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1e6;

    /// <summary>Pitch-line velocity.</summary>
    /// <param name="pitchMm">Pitch diameter [mm], above 0.</param>
    /// <param name="speedRpm">Speed [rev/min], above 0.</param>
    /// <returns>Velocity [m/s].</returns>
    /// <remarks>Formula: pi d n. Valid: always. Source: by definition. Example: 1.7 in at 1800 rev/min gives 801.1 ft/min.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is 0 or below.</exception>
    public static double PitchVelocity(double pitchMm, double speedRpm)
    {
        Require.Above(pitchMm, 0, "pitch diameter", "mm");
        Require.Above(speedRpm, 0, "speed", "rpm");
        return Math.PI * pitchMm / 1000 * speedRpm / 60;
    }

    /// <summary>Tooth force along the pitch line.</summary>
    /// <param name="powerKW">Power [kW], above 0.</param>
    /// <param name="velocityMs">Pitch-line velocity [m/s], above 0.</param>
    /// <returns>Force [N].</returns>
    /// <remarks>Formula: W = P / v. Valid: steady power. Source: by definition. Example: 4 hp at 801.1 ft/min gives 164.8 lbf.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is 0 or below.</exception>
    public static double ToothForceN(double powerKW, double velocityMs)
    {
        Require.Above(powerKW, 0, "power", "kW");
        Require.Above(velocityMs, 0, "velocity", "m/s");
        return powerKW * 1000 / velocityMs;
    }

    /// <summary>Dynamic factor.</summary>
    /// <param name="quality">AGMA quality number [-], 3 to 11.</param>
    /// <param name="velocityMs">Pitch-line velocity [m/s], 0 or above.</param>
    /// <returns>Factor [-].</returns>
    /// <remarks>
    /// Formula: ((A + sqrt V)/A)^B, V in ft/min, B = 0.25 (12 - Q)^(2/3), A = 50 + 56 (1 - B). Valid: quality 3 to 11. Source: Shigley's
    /// Mechanical Engineering Design (McGraw-Hill), example 14-4, transcription read.
    /// Example: quality 6 at 801.1 ft/min gives 1.377.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double DynamicFactor(double quality, double velocityMs)
    {
        Require.Within(quality, 3, 11, "quality number");
        Require.AtLeast(velocityMs, 0, "velocity", "m/s");
        var b = 0.25 * Math.Pow(12 - quality, 2.0 / 3);
        var a = 50 + 56 * (1 - b);
        return Math.Pow((a + Math.Sqrt(velocityMs * FootMinutePerMs)) / a, b);
    }

    /// <summary>Pitting geometry factor of outside spur gears.</summary>
    /// <param name="ratio">Gear teeth over pinion teeth [-], 1 to 20.</param>
    /// <param name="pressureAngleDeg">Pressure angle [deg], 14 to 30.</param>
    /// <returns>Factor I [-].</returns>
    /// <remarks>Formula: cos a sin a / 2 times m / (m + 1). Valid: outside spur gears. Source: as <see cref="DynamicFactor"/>. Example:
    /// 52/17 at 20 deg gives 0.121.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double PittingGeometry(double ratio, double pressureAngleDeg = 20)
    {
        Require.Within(ratio, 1, 20, "gear ratio");
        Require.Within(pressureAngleDeg, 14, 30, "pressure angle", "deg");
        var angle = pressureAngleDeg * Math.PI / 180;
        return Math.Cos(angle) * Math.Sin(angle) / 2 * ratio / (ratio + 1);
    }

    /// <summary>Contact stress of spur gear teeth.</summary>
    /// <param name="forceN">Tooth force [N], above 0.</param>
    /// <param name="pinionMm">Pitch diameter of the pinion [mm], above 0.</param>
    /// <param name="faceMm">Face width [mm], above 0.</param>
    /// <param name="geometry">Pitting geometry factor I [-], 0.03 to 0.3.</param>
    /// <param name="factors">Product of overload, dynamic, size and load-distribution factors [-], 1 or more.</param>
    /// <param name="elastic">Elastic coefficient [square root of MPa], 191 for steel on steel.</param>
    /// <returns>Contact stress [MPa].</returns>
    /// <remarks>
    /// Formula: Cp sqrt(W K / (d F I)). Valid: spur gears of good form; worn flanks carry worse. Source: Shigley's Mechanical Engineering
    /// Design (McGraw-Hill), example 14-4, transcription read; the printed pair needs rounded factors, allow 0.1 %.
    /// Example: that pinion gives 70 360 psi.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double ContactStressMPa(
        double forceN, double pinionMm, double faceMm, double geometry, double factors, double elastic = 191)
    {
        Require.Above(forceN, 0, "tooth force", "N");
        Require.Above(pinionMm, 0, "pinion diameter", "mm");
        Require.Above(faceMm, 0, "face width", "mm");
        Require.Within(geometry, 0.03, 0.3, "geometry factor");
        Require.AtLeast(factors, 1, "load factors");
        Require.Above(elastic, 0, "elastic coefficient");
        return elastic * Math.Sqrt(forceN * factors / (pinionMm * faceMm * geometry));
    }

    /// <summary>Bending stress at the tooth root.</summary>
    /// <param name="forceN">Tooth force [N], above 0.</param>
    /// <param name="moduleMm">Module, pitch diameter over teeth [mm], above 0.</param>
    /// <param name="faceMm">Face width [mm], above 0.</param>
    /// <param name="bendingGeometry">Geometry factor J [-], 0.1 to 0.6.</param>
    /// <param name="factors">Product of overload, dynamic, size and load-distribution factors [-], 1 or more.</param>
    /// <returns>Bending stress [MPa].</returns>
    /// <remarks>
    /// Formula: W K / (F m J). Valid: as <see cref="ContactStressMPa"/>. Source: as <see cref="ContactStressMPa"/>; J 0.30 and 0.40 are
    /// back-fitted there. Example: that pinion gives 6417 psi.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double BendingStressMPa(double forceN, double moduleMm, double faceMm, double bendingGeometry, double factors)
    {
        Require.Above(forceN, 0, "tooth force", "N");
        Require.Above(moduleMm, 0, "module", "mm");
        Require.Above(faceMm, 0, "face width", "mm");
        Require.Within(bendingGeometry, 0.1, 0.6, "geometry factor J");
        Require.AtLeast(factors, 1, "load factors");
        return forceN * factors / (faceMm * moduleMm * bendingGeometry);
    }

    /// <summary>Allowable contact and bending stress of through-hardened steel.</summary>
    /// <param name="brinell">Hardness [HB], 180 to 400.</param>
    /// <returns>Contact and bending number [MPa].</returns>
    /// <remarks>
    /// Formula: 322 HB + 29 100 and 77.3 HB + 12 800 psi. Valid: grade 1 through-hardened steel, 10 million cycles, 99 %. Source: Shigley's
    /// Mechanical Engineering Design (McGraw-Hill), example 14-4, transcription read.
    /// Example: 240 HB gives 106 400 and 31 350 psi.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Hardness is out of range.</exception>
    public static (double ContactMPa, double BendingMPa) AllowableMPa(double brinell)
    {
        Require.Within(brinell, 180, 400, "hardness", "HB");
        return ((322 * brinell + 29_100) * MPaPerPsi, (77.3 * brinell + 12_800) * MPaPerPsi);
    }

    /// <summary>Stress-cycle factors.</summary>
    /// <param name="cycles">Load cycles of this gear [-], 1e7 to 1e10.</param>
    /// <returns>Contact factor ZN and bending factor YN [-].</returns>
    /// <remarks>Formula: ZN = 1.4488 N^-0.023, YN = 1.3558 N^-0.0178. Valid: 10 million cycles and more. Source: as
    /// <see cref="AllowableMPa"/>. Example: 1e8 gives 0.948 and 0.977.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Cycles are out of range.</exception>
    public static (double Contact, double Bending) CycleFactors(double cycles)
    {
        Require.Within(cycles, 1e7, 1e10, "load cycles");
        return (1.4488 * Math.Pow(cycles, -0.023), 1.3558 * Math.Pow(cycles, -0.0178));
    }

    /// <summary>Elastic coefficient of a pair.</summary>
    /// <param name="modulusMPa">Modulus of both gears [MPa], above 0.</param>
    /// <param name="poisson">Poisson's ratio of both [-], 0 to 0.5.</param>
    /// <returns>Coefficient [square root of MPa].</returns>
    /// <remarks>Formula: sqrt(1 / (pi 2 (1 - v²) / E)). Valid: both of one material. Source: as <see cref="AllowableMPa"/>, where 2291 is
    /// rounded to 2300 psi^0.5. Example: 30e6 psi and 0.3 gives 2291 psi^0.5.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double ElasticCoefficient(double modulusMPa, double poisson)
    {
        Require.Above(modulusMPa, 0, "modulus", "MPa");
        Require.Within(poisson, 0, 0.5, "Poisson's ratio");
        return Math.Sqrt(modulusMPa / (2 * Math.PI * (1 - poisson * poisson)));
    }

    /// <summary>Line contact of two cylinders (Hertz).</summary>
    /// <param name="forcePerLength">Force for each millimetre of length [N/mm], above 0.</param>
    /// <param name="firstRadiusMm">Radius of the first [mm], above 0.</param>
    /// <param name="secondRadiusMm">Radius of the second [mm], above 0; infinite for a flat.</param>
    /// <param name="modulusMPa">Modulus of both [MPa], above 0.</param>
    /// <param name="poisson">Poisson's ratio of both [-].</param>
    /// <returns>Peak pressure [MPa] and half width [mm].</returns>
    /// <remarks>
    /// Formula: pmax = sqrt(F' E* / (pi R)), a = sqrt(4 F' R / (pi E*)), 1/R = 1/R1 + 1/R2, E* = E / (2 (1 - v²)). Valid: elastic, smooth,
    /// long cylinders.
    /// Source: from memory; no printed example found apart from the gear case. Example: by hand, pmax times a times pi/2 must give F'.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static (double PeakMPa, double HalfWidthMm) LineContact(
        double forcePerLength, double firstRadiusMm, double secondRadiusMm, double modulusMPa, double poisson)
    {
        Require.Above(forcePerLength, 0, "force per length", "N/mm");
        Require.Above(firstRadiusMm, 0, "first radius", "mm");
        Require.That(secondRadiusMm > 0, "the second radius must be above 0 mm.");
        Require.Above(modulusMPa, 0, "modulus", "MPa");
        Require.Within(poisson, 0, 0.5, "Poisson's ratio");
        var radius = 1 / (1 / firstRadiusMm + 1 / secondRadiusMm);
        var stiff = modulusMPa / (2 * (1 - poisson * poisson));
        return (Math.Sqrt(forcePerLength * stiff / (Math.PI * radius)), Math.Sqrt(4 * forcePerLength * radius / (Math.PI * stiff)));
    }
}
