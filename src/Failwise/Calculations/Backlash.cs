namespace Failwise.Calculations;

/// <summary>Gear backlash and bearing preload by rotating torque.</summary>
public static class Backlash
{
    /// <summary>Backlash at the teeth from a dial set on another radius.</summary>
    /// <param name="dialMm">Dial reading [mm], 0 to 5.</param>
    /// <param name="dialRadiusMm">Radius the dial rests on [mm], above 0.</param>
    /// <param name="pitchRadiusMm">Pitch radius of the gear [mm], above 0.</param>
    /// <returns>Backlash at the pitch line [mm].</returns>
    /// <remarks>
    /// Formula: dial reading times pitch radius over dial radius. Valid: mating gear held fast, dial square to the radius. Source: by
    /// geometry.
    /// Example: by hand, 0.20 mm at 50 mm is 0.40 mm at 100 mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double AtPitchLineMm(double dialMm, double dialRadiusMm, double pitchRadiusMm)
    {
        Require.Within(dialMm, 0, 5, "dial reading", "mm");
        Require.Above(dialRadiusMm, 0, "dial radius", "mm");
        Require.Above(pitchRadiusMm, 0, "pitch radius", "mm");
        return dialMm * pitchRadiusMm / dialRadiusMm;
    }

    /// <summary>Rise of the turning torque that carrier-bearing preload causes.</summary>
    /// <param name="pinionOnlyNm">Turning torque of the pinion alone [N·m], 0 or above.</param>
    /// <param name="assembledNm">Turning torque with the ring gear fitted [N·m].</param>
    /// <returns>Rise [N·m].</returns>
    /// <remarks>
    /// Formula: assembled less pinion alone. Valid: both read at the pinion, turning steadily, oiled. Source: TM 10-3930-669-34 (US Army),
    /// page 10-29, which asks a rise of 3 to 4 lbf·in.
    /// Example: by hand, 10 lbf·in alone and 13.5 assembled is a rise of 3.5 lbf·in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The torque fell.</exception>
    public static double TorqueRiseNm(double pinionOnlyNm, double assembledNm)
    {
        Require.AtLeast(pinionOnlyNm, 0, "pinion torque", "N·m");
        Require.That(
            assembledNm >= pinionOnlyNm,
            $"the torque fell from {pinionOnlyNm:G3} to {assembledNm:G3} N·m when the ring gear was fitted: read both again.");
        return assembledNm - pinionOnlyNm;
    }
}
