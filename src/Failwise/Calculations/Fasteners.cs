namespace Failwise.Calculations;

/// <summary>Torque, preload, angle and stretch of bolts.</summary>
public static class Fasteners
{
    /// <summary>Torque for a preload by the nut factor.</summary>
    /// <param name="preloadN">Preload [N], above 0.</param>
    /// <param name="threadMm">Thread diameter [mm], 1 to 200.</param>
    /// <param name="nutFactor">Nut factor K [-], 0.08 to 0.4; about 0.2 dry steel, 0.15 oiled.</param>
    /// <returns>Torque [N·m].</returns>
    /// <remarks>
    /// Formula: T = K d F. Valid: real preload scatters by about a quarter at one torque (from memory). Source: Machine Design (Cengage
    /// India, 2007), example 6.1, transcription read.
    /// Example: 24 131.5 lbf, 0.75 in, K 0.2 gives 3619.7 lbf·in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double TorqueNm(double preloadN, double threadMm, double nutFactor)
    {
        Require.Above(preloadN, 0, "preload", "N");
        Require.Within(threadMm, 1, 200, "thread diameter", "mm");
        Require.Within(nutFactor, 0.08, 0.4, "nut factor");
        return nutFactor * threadMm * preloadN / 1000;
    }

    /// <summary>Preload from a torque by the nut factor.</summary>
    /// <param name="torqueNm">Torque [N·m], above 0.</param>
    /// <param name="threadMm">Thread diameter [mm].</param>
    /// <param name="nutFactor">Nut factor K [-].</param>
    /// <returns>Preload [N].</returns>
    /// <remarks>
    /// Formula: F = T / (K d). Valid: as <see cref="TorqueNm"/>. Source: as <see cref="TorqueNm"/>; web example for an M12 8.8 bolt
    /// (aionlinecalculator.com), whose remark that 45 kN is past proof is wrong (proof 48.9 kN).
    /// Example: 82.14 N·m, M12, K 0.15 gives 45.6 kN.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double PreloadN(double torqueNm, double threadMm, double nutFactor)
    {
        Require.Above(torqueNm, 0, "torque", "N·m");
        return torqueNm / TorqueNm(1, threadMm, nutFactor);
    }

    /// <summary>Preload as a share of proof load.</summary>
    /// <param name="stressAreaMm2">Tensile stress area [mm²], above 0.</param>
    /// <param name="proofMPa">Proof strength [MPa], above 0.</param>
    /// <param name="share">Share of proof [-], 0.1 to 1.</param>
    /// <returns>Preload [N].</returns>
    /// <remarks>Formula: F = share A Sp. Valid: below yield. Source: as <see cref="TorqueNm"/>. Example: 0.334 in², 85 000 psi, 0.85 gives
    /// 24 131.5 lbf.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double PreloadOfProofN(double stressAreaMm2, double proofMPa, double share)
    {
        Require.Above(stressAreaMm2, 0, "stress area", "mm²");
        Require.Above(proofMPa, 0, "proof strength", "MPa");
        Require.Within(share, 0.1, 1, "share of proof");
        return share * stressAreaMm2 * proofMPa;
    }

    /// <summary>Stretch of a bolt.</summary>
    /// <param name="preloadN">Preload [N], 0 or above.</param>
    /// <param name="lengthMm">Stretched length [mm], above 0.</param>
    /// <param name="areaMm2">Cross-section that stretches [mm²], above 0.</param>
    /// <param name="modulusMPa">Modulus of elasticity [MPa], above 0.</param>
    /// <returns>Stretch [mm].</returns>
    /// <remarks>
    /// Formula: dL = F L / (A E). Valid: below yield, one cross-section. Source: Machine Design (Cengage India, 2007), example 6.2,
    /// transcription read. Example: 24 131.5 lbf, 5 in, 0.334 in², 30e6 psi gives 0.01204 in.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double StretchMm(double preloadN, double lengthMm, double areaMm2, double modulusMPa)
    {
        Require.AtLeast(preloadN, 0, "preload", "N");
        Require.Above(lengthMm, 0, "stretched length", "mm");
        Require.Above(areaMm2, 0, "cross-section", "mm²");
        Require.Above(modulusMPa, 0, "modulus of elasticity", "MPa");
        return preloadN * lengthMm / (areaMm2 * modulusMPa);
    }

    /// <summary>Turn of the nut for a stretch.</summary>
    /// <param name="stretchMm">Stretch [mm], 0 or above.</param>
    /// <param name="pitchMm">Thread pitch [mm], above 0.</param>
    /// <returns>Angle after snug [deg].</returns>
    /// <remarks>
    /// Formula: 360 dL / p. Valid: rigid joint; a gasket or long sleeve needs more. Source: as <see cref="StretchMm"/>. Example: 0.01204 in
    /// at 0.1 in pitch gives 43.35 deg.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double TurnDeg(double stretchMm, double pitchMm)
    {
        Require.AtLeast(stretchMm, 0, "stretch", "mm");
        Require.Above(pitchMm, 0, "pitch", "mm");
        return 360 * stretchMm / pitchMm;
    }

    /// <summary>Heating that gives a stud the same stretch.</summary>
    /// <param name="stretchMm">Stretch [mm], 0 or above.</param>
    /// <param name="lengthMm">Heated length [mm], above 0.</param>
    /// <param name="growthPerK">Heat growth [1/K], about 11.7e-6 for steel.</param>
    /// <returns>Rise [K].</returns>
    /// <remarks>
    /// Formula: dT = dL / (alpha L). Valid: even heating of the whole length. Source: Machine Design (Cengage India, 2007), example 6.3,
    /// transcription read. Example: 0.01204 in, 5 in, 6.5e-6 per °F gives 370.46 °F.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double HeatingK(double stretchMm, double lengthMm, double growthPerK)
    {
        Require.AtLeast(stretchMm, 0, "stretch", "mm");
        Require.Above(lengthMm, 0, "heated length", "mm");
        Require.Within(growthPerK, 1e-6, 3e-5, "heat growth", "1/K");
        return stretchMm / (growthPerK * lengthMm);
    }

    /// <summary>Nut factor from friction.</summary>
    /// <param name="threadMm">Thread diameter [mm], 1 to 200.</param>
    /// <param name="pitchMm">Pitch [mm], above 0, at most a quarter of the diameter.</param>
    /// <param name="threadFriction">Friction in the thread [-], 0.03 to 0.4.</param>
    /// <param name="faceFriction">Friction under the head [-], 0.03 to 0.4.</param>
    /// <returns>Nut factor [-].</returns>
    /// <remarks>
    /// Formula: K = (dm/2d)(tan a + mu/cos 30)/(1 - mu tan a/cos 30) + 0.625 mu_c, dm = d - 0.6495 p. Valid: 60 degree thread, standard
    /// head.
    /// Source: Machine Design (Dorling Kindersley India, 2010), example 9-3, transcription read; it prints 0.18343, straight arithmetic
    /// with this dm gives 0.1830. Example: M18 x 2.5, 0.15 and 0.13 gives 0.183.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double NutFactor(double threadMm, double pitchMm, double threadFriction, double faceFriction)
    {
        Require.Within(threadMm, 1, 200, "thread diameter", "mm");
        Require.That(
            pitchMm > 0 && pitchMm <= threadMm / 4,
            $"pitch {pitchMm:G4} mm must lie above 0 and at most a quarter of the thread diameter {threadMm:G4} mm.");
        Require.Within(threadFriction, 0.03, 0.4, "thread friction");
        Require.Within(faceFriction, 0.03, 0.4, "friction under the head");
        var mean = threadMm - 0.6495 * pitchMm;
        var slope = pitchMm / (Math.PI * mean);
        var wedge = threadFriction / Math.Cos(Math.PI / 6);
        return mean / (2 * threadMm) * (slope + wedge) / (1 - wedge * slope) + 0.625 * faceFriction;
    }

    /// <summary>Part of an outside load that a bolt feels.</summary>
    /// <param name="boltArea">Cross-section of all bolts [mm²], above 0.</param>
    /// <param name="clampedArea">Cross-section of the clamped parts [mm²], above 0.</param>
    /// <returns>Part [-].</returns>
    /// <remarks>
    /// Formula: C = A_bolts / (A_bolts + A_clamped), equal length and material. Valid: rigid joint, not separated. Source: Machine Design
    /// (Cengage India, 2007), example 6.4, transcription read.
    /// Example: 10 studs of 1.073 in² and 50 in² of flange gives 0.1767.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is 0 or below.</exception>
    public static double LoadShare(double boltArea, double clampedArea)
    {
        Require.Above(boltArea, 0, "bolt area", "mm²");
        Require.Above(clampedArea, 0, "clamped area", "mm²");
        return boltArea / (boltArea + clampedArea);
    }

    /// <summary>Bolt load with an outside load.</summary>
    /// <param name="preloadN">Preload [N], 0 or above.</param>
    /// <param name="outsideN">Outside load [N], 0 or above.</param>
    /// <param name="loadShare">Part of it the bolt feels [-], 0 to 1.</param>
    /// <returns>Bolt load [N].</returns>
    /// <remarks>
    /// Formula: F = Fi + C P. Valid: until the joint separates at P = Fi / (1 - C). Source: Machine Design (Dorling Kindersley India,
    /// 2010), example 9-6, transcription read. Example: 120 and 30 kN, share 0.35 gives 130.5 kN.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range or the joint would separate.</exception>
    public static double BoltLoadN(double preloadN, double outsideN, double loadShare)
    {
        Require.AtLeast(preloadN, 0, "preload", "N");
        Require.AtLeast(outsideN, 0, "outside load", "N");
        Require.Within(loadShare, 0, 1, "load share");
        Require.That(
            outsideN * (1 - loadShare) <= preloadN,
            $"the joint separates: {outsideN:G4} N is more than the preload {preloadN:G4} N can hold together.");
        return preloadN + loadShare * outsideN;
    }

    /// <summary>Preload from torque by thread and head friction.</summary>
    /// <param name="torqueNm">Torque [N·m], above 0.</param>
    /// <param name="threadMm">Thread diameter [mm], 1 to 200.</param>
    /// <param name="pitchMm">Pitch [mm], above 0.</param>
    /// <param name="friction">Friction in thread and under head [-], 0.03 to 0.4.</param>
    /// <returns>Preload [N].</returns>
    /// <remarks>
    /// Formula: F = T / (0.16 P + 0.58 d2 mu + 0.5 Dk mu), d2 = d - 0.6495 P, Dk taken as 1.3 d. Valid: metric thread, hexagon head.
    /// Source: VDI 2230 form, from memory; mean head diameter from memory. Example: by hand, M10 x 1.5, mu 0.125, 42 N·m: d2 9.026, bracket
    /// 0.24 + 0.654 + 0.8125 = 1.707 mm, gives 24.6 kN.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double PreloadByFrictionN(double torqueNm, double threadMm, double pitchMm, double friction)
    {
        Require.Above(torqueNm, 0, "torque", "N·m");
        Require.Within(threadMm, 1, 200, "thread diameter", "mm");
        Require.That(
            pitchMm > 0 && pitchMm <= threadMm / 4,
            $"pitch {pitchMm:G4} mm must lie above 0 and at most a quarter of the thread diameter {threadMm:G4} mm.");
        Require.Within(friction, 0.03, 0.4, "friction");
        return torqueNm * 1000 / (0.16 * pitchMm + 0.58 * (threadMm - 0.6495 * pitchMm) * friction + 0.5 * 1.3 * threadMm * friction);
    }

    /// <summary>Stress area of a metric thread.</summary>
    /// <param name="threadMm">Thread diameter [mm], 1 to 200.</param>
    /// <param name="pitchMm">Pitch [mm].</param>
    /// <returns>Area [mm²].</returns>
    /// <remarks>Formula: pi/4 (d - 0.9382 P)². Valid: 60 degree metric thread. Source: ISO 898-1 form, from memory; web example for M12
    /// lists 84.3 mm². Example: M12 x 1.75 gives 84.3 mm².</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double StressAreaMm2(double threadMm, double pitchMm)
    {
        Require.Within(threadMm, 1, 200, "thread diameter", "mm");
        Require.That(
            pitchMm > 0 && pitchMm <= threadMm / 4,
            $"pitch {pitchMm:G4} mm must lie above 0 and at most a quarter of the thread diameter {threadMm:G4} mm.");
        return Math.PI / 4 * Math.Pow(threadMm - 0.9382 * pitchMm, 2);
    }

    /// <summary>Coarse pitch and published oiled torque of a metric bolt.</summary>
    /// <param name="threadMm">6, 8, 10, 12, 14, 16 or 20.</param>
    /// <returns>Coarse pitch [mm], torque for class 8.8 and for class 10.9 [N·m].</returns>
    /// <remarks>
    /// Formula: table. Valid: oil on thread and face, friction 0.125, hand tightening; the engine's own figure comes first. Source: MTN
    /// 5008 (MTU, 2014), hand tightening; pitches from ISO 261, from memory.
    /// Example: M12 gives 74 and 100 N·m.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The size is not in the table.</exception>
    public static (double PitchMm, double Class88Nm, double Class109Nm) OiledTorque(int threadMm) => threadMm switch
    {
        6 => (1, 9, 12),
        8 => (1.25, 21, 31),
        10 => (1.5, 42, 60),
        12 => (1.75, 74, 100),
        14 => (2, 115, 160),
        16 => (2, 180, 250),
        20 => (2.5, 350, 500),
        _ => throw new ArgumentOutOfRangeException(null, $"the thread must be M6, M8, M10, M12, M14, M16 or M20, not M{threadMm}."),
    };

    /// <summary>Torque correction for what is on the thread.</summary>
    /// <param name="surface">oiled, plated, parkerized, moly, hardened-washer or threadlocker.</param>
    /// <returns>Factor on an oiled torque [-].</returns>
    /// <remarks>
    /// Formula: table. Valid: US steel bolts with torques stated for oiled threads. Source: TM 5-3810-294-34 (US Army), table 1-2 notes.
    /// Example: moly gives 0.70.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The surface is not in the table.</exception>
    public static double SurfaceFactor(string surface) => surface switch
    {
        "oiled" => 1,
        "plated" => 0.85,
        "parkerized" => 0.75,
        "moly" => 0.70,
        "hardened-washer" => 0.90,
        "threadlocker" => 1.20,
        _ => throw new ArgumentOutOfRangeException(
            null, $"the surface must be oiled, plated, parkerized, moly, hardened-washer or threadlocker, not '{surface}'."),
    };
}
