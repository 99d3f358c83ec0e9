namespace Failwise.Calculations;

/// <summary>Fuel in the oil, estimated from lost viscosity.</summary>
public static class FuelDilution
{
    /// <summary>Viscosity blending number.</summary>
    /// <param name="viscosityCSt">Viscosity [mm²/s], above 0.21.</param>
    /// <returns>Blending number [-].</returns>
    /// <remarks>
    /// Formula: 14.534 ln ln (nu + 0.8) + 10.975. Valid: above 0.21 mm²/s. Source: Refutas form as printed on calculator.academy; its
    /// example is printed 12.492 where its own formula gives 12.490.
    /// Example: 2.234 mm²/s gives 12.490.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Viscosity is out of range.</exception>
    public static double BlendingNumber(double viscosityCSt)
    {
        Require.Above(viscosityCSt, 0.21, "viscosity", "mm²/s");
        return 14.534 * Math.Log(Math.Log(viscosityCSt + 0.8)) + 10.975;
    }

    /// <summary>Part of fuel in the oil by three blending rules.</summary>
    /// <param name="newCSt">Viscosity of the new oil [mm²/s], above the used one.</param>
    /// <param name="usedCSt">Viscosity of the used oil at the same temperature [mm²/s], above the fuel.</param>
    /// <param name="fuelCSt">Viscosity of the fuel at the same temperature [mm²/s], 0.5 or more.</param>
    /// <returns>Lowest and highest estimate of the three rules, and the double-log one [%].</returns>
    /// <remarks>
    /// Formula: x = (g(new) - g(used)) / (g(new) - g(fuel)) with g the Refutas number, ln nu, and the cube root of nu (last two from
    /// memory).
    /// Valid: thinning by fuel alone; soot and oxidation thicken, shear thins, so read it as a band.
    /// Source: Refutas form as in <see cref="BlendingNumber"/>; band compared with the Visgage fuel dilution chart (160 to 137 is read
    /// there as 3 %).
    /// Example: 160 new, 137 used, fuel 3 mm²/s gives 2.3 % by the double-log rule and contains 3 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The viscosities do not lie in order.</exception>
    public static (double LowPercent, double HighPercent, double DoubleLogPercent) Band(double newCSt, double usedCSt, double fuelCSt)
    {
        Require.AtLeast(fuelCSt, 0.5, "fuel viscosity", "mm²/s");
        Require.That(
            usedCSt > fuelCSt && usedCSt <= newCSt,
            $"used oil ({usedCSt:G4}) must lie between the fuel ({fuelCSt:G4}) and the new oil ({newCSt:G4} mm²/s); oil that " +
                $"thickened says nothing about fuel.");
        double Part(Func<double, double> g) => 100 * (g(newCSt) - g(usedCSt)) / (g(newCSt) - g(fuelCSt));
        var doubleLog = Part(BlendingNumber);
        double[] parts = [doubleLog, Part(Math.Log), Part(Math.Cbrt)];
        return (parts.Min(), parts.Max(), doubleLog);
    }

    /// <summary>Viscosity of oil with a part of fuel in it, by three blending rules.</summary>
    /// <param name="newCSt">Viscosity of the new oil [mm²/s].</param>
    /// <param name="fuelCSt">Viscosity of the fuel [mm²/s], 0.5 or more.</param>
    /// <param name="fuelPercent">Fuel in the oil [%], 0 to 50.</param>
    /// <returns>Lowest and highest viscosity of the three rules [mm²/s].</returns>
    /// <remarks>
    /// Formula: the rules of <see cref="Band"/> the other way round. Valid: as <see cref="Band"/>. Source: as <see cref="Band"/>.
    /// Example: by hand, 160 with 3 % of fuel at 3 mm²/s gives 130.9 (Refutas), 142.0 (log), 149.7 (cube root).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static (double LowCSt, double HighCSt) Diluted(double newCSt, double fuelCSt, double fuelPercent)
    {
        Require.AtLeast(fuelCSt, 0.5, "fuel viscosity", "mm²/s");
        Require.Above(newCSt, fuelCSt, "oil viscosity", "mm²/s");
        Require.Within(fuelPercent, 0, 50, "fuel part", "%");
        var part = fuelPercent / 100;
        double Mix(Func<double, double> g, Func<double, double> back) => back((1 - part) * g(newCSt) + part * g(fuelCSt));
        double[] mixed =
        [
            Mix(BlendingNumber, number => Math.Exp(Math.Exp((number - 10.975) / 14.534)) - 0.8),
            Mix(Math.Log, Math.Exp),
            Mix(Math.Cbrt, root => root * root * root),
        ];
        return (mixed.Min(), mixed.Max());
    }

    /// <summary>Change of viscosity against the new oil.</summary>
    /// <param name="newCSt">Viscosity of the new oil [mm²/s], above 0.</param>
    /// <param name="usedCSt">Viscosity of the used oil at the same temperature [mm²/s], above 0.</param>
    /// <returns>Change [%], negative when thinner.</returns>
    /// <remarks>
    /// Formula: 100 (used - new) / new. Valid: both at one temperature. Source: warning levels 25 % at 40 °C and 15 % at 100 °C from a
    /// lubricant maker's handbook (2004), reprinted in a fleet guide, Appendix B.
    /// Example: by hand, 100 new and 75 used gives -25 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is 0 or below.</exception>
    public static double ViscosityChangePercent(double newCSt, double usedCSt)
    {
        Require.Above(newCSt, 0, "new viscosity", "mm²/s");
        Require.Above(usedCSt, 0, "used viscosity", "mm²/s");
        return 100 * (usedCSt - newCSt) / newCSt;
    }
}
