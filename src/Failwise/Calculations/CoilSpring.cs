namespace Failwise.Calculations;

/// <summary>Round-wire coil springs under compression.</summary>
public static class CoilSpring
{
    /// <summary>Spring rate from wire and coils.</summary>
    /// <param name="wireMm">Wire diameter [mm], above 0.</param>
    /// <param name="meanMm">Mean coil diameter (outside less one wire) [mm], 3 to 20 wires.</param>
    /// <param name="activeCoils">Coils that work [-], above 0.</param>
    /// <param name="shearModulusMPa">Shear modulus of the wire [MPa], above 0.</param>
    /// <returns>Rate [N/mm].</returns>
    /// <remarks>
    /// Formula: k = G d⁴ / (8 D³ n). Valid: round wire, spring index about 4 to 12, coils not touching.
    /// Source: Machine Design (Dorling Kindersley India, 2010), example 8-1, inputs read. Example: wire 5, mean 30 mm, 15 coils, 84 000 MPa
    /// gives 16.2 N/mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double RateNMm(double wireMm, double meanMm, double activeCoils, double shearModulusMPa)
    {
        _ = Index(wireMm, meanMm);
        Require.Above(activeCoils, 0, "active coils");
        Require.Above(shearModulusMPa, 0, "shear modulus", "MPa");
        return shearModulusMPa * Math.Pow(wireMm, 4) / (8 * Math.Pow(meanMm, 3) * activeCoils);
    }

    /// <summary>Active coils that give a wanted rate.</summary>
    /// <param name="wireMm">Wire diameter [mm].</param>
    /// <param name="meanMm">Mean coil diameter [mm].</param>
    /// <param name="rateNMm">Rate wanted [N/mm], above 0.</param>
    /// <param name="shearModulusMPa">Shear modulus [MPa].</param>
    /// <returns>Active coils [-].</returns>
    /// <remarks>
    /// Formula: n = G d⁴ / (8 D³ k); squared and ground ends add two. Valid: as <see cref="RateNMm"/>.
    /// Source: Machine Design (Cengage India, 2007), example 8.2, transcription read. Example: 0.105 in wire, 0.62 in mean, 70 lbf/in,
    /// 11.85e6 psi gives 10.79 active, 12.79 in all.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double ActiveCoils(double wireMm, double meanMm, double rateNMm, double shearModulusMPa)
    {
        Require.Above(rateNMm, 0, "spring rate", "N/mm");
        return RateNMm(wireMm, meanMm, 1, shearModulusMPa) / rateNMm;
    }

    /// <summary>Spring index.</summary>
    /// <param name="wireMm">Wire diameter [mm], above 0.</param>
    /// <param name="meanMm">Mean coil diameter [mm], 3 to 20 wires.</param>
    /// <returns>Index [-].</returns>
    /// <remarks>Formula: C = D / d. Valid: 3 to 20. Source: by definition. Example: wire 5, mean 30 mm gives 6.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The index is outside 3 to 20.</exception>
    public static double Index(double wireMm, double meanMm)
    {
        Require.Above(wireMm, 0, "wire diameter", "mm");
        Require.Within(meanMm / wireMm, 3, 20, "mean coil diameter over wire diameter");
        return meanMm / wireMm;
    }

    /// <summary>Wahl's factor for stress at the inside of the coil.</summary>
    /// <param name="index">Spring index [-], 3 to 20.</param>
    /// <returns>Factor [-].</returns>
    /// <remarks>Formula: (4C-1)/(4C-4) + 0.615/C. Valid: index 3 to 20. Source: Machine Design (Dorling Kindersley India, 2010), example
    /// 8-1, inputs read. Example: 6 gives 1.2525.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The index is outside 3 to 20.</exception>
    public static double WahlFactor(double index)
    {
        Require.Within(index, 3, 20, "spring index");
        return (4 * index - 1) / (4 * index - 4) + 0.615 / index;
    }

    /// <summary>Direct-shear factor.</summary>
    /// <param name="index">Spring index [-], 3 to 20.</param>
    /// <returns>Factor [-].</returns>
    /// <remarks>Formula: 1 + 0.5/C. Valid: index 3 to 20. Source: as <see cref="WahlFactor"/>. Example: 6 gives 1.0833.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The index is outside 3 to 20.</exception>
    public static double ShearFactor(double index)
    {
        Require.Within(index, 3, 20, "spring index");
        return 1 + 0.5 / index;
    }

    /// <summary>Shear stress in the wire.</summary>
    /// <param name="forceN">Force [N], 0 or above.</param>
    /// <param name="wireMm">Wire diameter [mm].</param>
    /// <param name="meanMm">Mean coil diameter [mm].</param>
    /// <returns>Stress with Wahl's factor [MPa].</returns>
    /// <remarks>
    /// Formula: tau = Kw 8 F D / (pi d³). Valid: as <see cref="RateNMm"/>. Source: Design of Machine Elements textbook, example 10.9
    /// (companion transcription), whose wire size it reproduces.
    /// Example: 4123.34 N, wire 13.242, index 6 gives 450 MPa.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double StressMPa(double forceN, double wireMm, double meanMm)
    {
        Require.AtLeast(forceN, 0, "force", "N");
        return WahlFactor(Index(wireMm, meanMm)) * 8 * forceN * meanMm / (Math.PI * Math.Pow(wireMm, 3));
    }

    /// <summary>Thinnest wire for a force and an allowed stress.</summary>
    /// <param name="forceN">Largest force [N], above 0.</param>
    /// <param name="index">Spring index [-], 3 to 20.</param>
    /// <param name="allowedMPa">Allowed shear stress [MPa], above 0.</param>
    /// <returns>Wire diameter [mm].</returns>
    /// <remarks>
    /// Formula: d = sqrt(Kw 8 F C / (pi tau)). Valid: as <see cref="StressMPa"/>. Source: as <see cref="StressMPa"/>. Example: 4123.34 N,
    /// index 6, 450 MPa gives 13.242 mm.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double WireMm(double forceN, double index, double allowedMPa)
    {
        Require.Above(forceN, 0, "force", "N");
        Require.Above(allowedMPa, 0, "allowed stress", "MPa");
        return Math.Sqrt(WahlFactor(index) * 8 * forceN * index / (Math.PI * allowedMPa));
    }
}
