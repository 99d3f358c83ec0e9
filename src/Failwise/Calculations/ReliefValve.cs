namespace Failwise.Calculations;

/// <summary>Relief valves: opening pressure, flow and what a stuck piston does.</summary>
public static class ReliefValve
{
    /// <summary>Pressure that lifts a sprung valve.</summary>
    /// <param name="rateNMm">Spring rate [N/mm], above 0.</param>
    /// <param name="compressionMm">How far the spring is compressed: preload to crack, preload plus lift for full flow [mm], 0 or
    /// above.</param>
    /// <param name="seatMm">Diameter that the pressure acts on [mm], above 0.</param>
    /// <returns>Pressure [bar].</returns>
    /// <remarks>
    /// Formula: p = k x / A. Valid: still valve, no back pressure, no friction. Source: Fluid Power with Applications, 6th ed. (Pearson,
    /// 2005), chapter 8; safety valve of a Design of Machine Elements textbook, example 10.9.
    /// Example: 50 mm valve with 2945 N of preload opens at 1.5 MPa.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double OpeningBar(double rateNMm, double compressionMm, double seatMm)
    {
        Require.Above(rateNMm, 0, "spring rate", "N/mm");
        Require.AtLeast(compressionMm, 0, "spring compression", "mm");
        Require.Above(seatMm, 0, "seat diameter", "mm");
        return rateNMm * compressionMm / (Math.PI / 4 * seatMm * seatMm) * 10;
    }

    /// <summary>Flow through an opening.</summary>
    /// <param name="areaMm2">Open area [mm²], above 0.</param>
    /// <param name="pressureDropBar">Pressure difference [bar], 0 or above.</param>
    /// <param name="densityKgL">Oil density [kg/L], 0.6 to 1.3.</param>
    /// <param name="discharge">Discharge coefficient [-], 0.5 to 1.</param>
    /// <returns>Flow [L/min].</returns>
    /// <remarks>
    /// Formula: Q = Cd A sqrt(2 dp / rho). Valid: sharp edges and thin oil, Cd 0.6 to 0.8; slow oil through long gaps follows the leak
    /// formulas.
    /// Source: Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-4, transcription read; its rounded constant 38.1 gives
    /// 252, full units 251.5 gpm.
    /// Example: 1 in hole, 100 psi, 0.9 kg/L, Cd 0.8 gives 251.5 US gal/min.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double OrificeLMin(double areaMm2, double pressureDropBar, double densityKgL, double discharge)
    {
        Require.Above(areaMm2, 0, "open area", "mm²");
        Require.AtLeast(pressureDropBar, 0, "pressure difference", "bar");
        Require.Within(densityKgL, 0.6, 1.3, "oil density", "kg/L");
        Require.Within(discharge, 0.5, 1, "discharge coefficient");
        return discharge * areaMm2 * 1e-6 * Math.Sqrt(2 * pressureDropBar * 1e5 / (densityKgL * 1e3)) * 60_000;
    }

    /// <summary>Pressure left when a valve stuck open swallows the whole pump delivery.</summary>
    /// <param name="pumpLMin">Pump delivery [L/min], above 0.</param>
    /// <param name="areaMm2">Area left open [mm²], above 0.</param>
    /// <param name="densityKgL">Oil density [kg/L].</param>
    /// <param name="discharge">Discharge coefficient [-].</param>
    /// <returns>Highest pressure the pump can hold [bar].</returns>
    /// <remarks>
    /// Formula: p = rho/2 (Q / (Cd A))². Valid: as <see cref="OrificeLMin"/>; bearings take further flow, so the true pressure is lower.
    /// Source: inverse of the orifice law, as <see cref="OrificeLMin"/>. Example: 251.5 US gal/min through a 1 in hole, 0.9 kg/L, Cd 0.8
    /// gives 100 psi.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double StuckOpenBar(double pumpLMin, double areaMm2, double densityKgL, double discharge)
    {
        Require.Above(pumpLMin, 0, "pump delivery", "L/min");
        var flowAtOneBar = OrificeLMin(areaMm2, 1, densityKgL, discharge);
        return pumpLMin / flowAtOneBar * (pumpLMin / flowAtOneBar);
    }

    /// <summary>Power turned into heat over a valve.</summary>
    /// <param name="pressureBar">Pressure drop [bar], 0 or above.</param>
    /// <param name="flowLMin">Flow [L/min], 0 or above.</param>
    /// <returns>Power [kW].</returns>
    /// <remarks>
    /// Formula: P = p Q. Valid: always. Source: Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-2, transcription read.
    /// Example: 1000 psi at 20 US gal/min gives 11.7 hp.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is negative.</exception>
    public static double LostPowerKW(double pressureBar, double flowLMin)
    {
        Require.AtLeast(pressureBar, 0, "pressure", "bar");
        Require.AtLeast(flowLMin, 0, "flow", "L/min");
        return pressureBar * flowLMin / 600;
    }

    /// <summary>Flow coefficient of a valve.</summary>
    /// <param name="flowLMin">Flow [L/min], above 0.</param>
    /// <param name="pressureDropKPa">Pressure drop [kPa], above 0.</param>
    /// <param name="specificGravity">Density over that of water [-], 0.6 to 1.3.</param>
    /// <returns>Coefficient [L/min per square root of kPa].</returns>
    /// <remarks>
    /// Formula: Cv = Q / sqrt(dp / SG). Valid: turbulent flow. Source: Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-5,
    /// transcription read. Example: 94.8 L/min at 687 kPa, 0.9 gives 3.43.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double FlowCoefficient(double flowLMin, double pressureDropKPa, double specificGravity)
    {
        Require.Above(flowLMin, 0, "flow", "L/min");
        Require.Above(pressureDropKPa, 0, "pressure drop", "kPa");
        Require.Within(specificGravity, 0.6, 1.3, "specific gravity");
        return flowLMin / Math.Sqrt(pressureDropKPa / specificGravity);
    }
}
