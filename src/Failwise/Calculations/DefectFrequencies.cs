namespace Failwise.Calculations;

/// <summary>Frequencies at which a damaged rolling bearing knocks.</summary>
/// <param name="CageHz">Cage [Hz].</param>
/// <param name="OuterHz">Rolling elements over a mark on the outer ring [Hz].</param>
/// <param name="InnerHz">Rolling elements over a mark on the inner ring [Hz].</param>
/// <param name="ElementHz">Spin of a rolling element; a mark on it strikes twice as often [Hz].</param>
public sealed record BearingTones(double CageHz, double OuterHz, double InnerHz, double ElementHz);

/// <summary>Kinematics of rolling bearings.</summary>
public static class DefectFrequencies
{
    /// <summary>Defect frequencies with the inner ring turning.</summary>
    /// <param name="elements">Number of rolling elements [-], 3 to 200.</param>
    /// <param name="elementMm">Diameter of one element [mm], above 0.</param>
    /// <param name="pitchMm">Pitch diameter of the row [mm], above the element.</param>
    /// <param name="contactDeg">Contact angle [deg], 0 to 60.</param>
    /// <param name="speedRpm">Speed of the inner ring [rev/min], above 0.</param>
    /// <returns>The frequencies.</returns>
    /// <remarks>
    /// Formula: k = (d/D) cos a; cage f(1-k)/2, outer Z f(1-k)/2, inner Z f(1+k)/2, element (D/2d) f (1-k²). Valid: outer ring still, no
    /// slip; slip shifts 1 to 3 %.
    /// Source: codingace.net bearing fault frequency calculator, sample row. Example: 8 balls, 10 on 50 mm, 1800 rev/min gives 12, 96, 144,
    /// 72 Hz.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static BearingTones Of(double elements, double elementMm, double pitchMm, double contactDeg, double speedRpm)
    {
        Require.Within(elements, 3, 200, "number of rolling elements");
        Require.Above(elementMm, 0, "element diameter", "mm");
        Require.Above(pitchMm, elementMm, "pitch diameter", "mm");
        Require.Within(contactDeg, 0, 60, "contact angle", "deg");
        Require.Above(speedRpm, 0, "speed", "rpm");
        var turns = speedRpm / 60;
        var k = elementMm / pitchMm * Math.Cos(contactDeg * Math.PI / 180);
        return new BearingTones(
            turns * (1 - k) / 2,
            elements * turns * (1 - k) / 2,
            elements * turns * (1 + k) / 2,
            pitchMm / (2 * elementMm) * turns * (1 - k * k));
    }
}
