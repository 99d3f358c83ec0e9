namespace Failwise.Calculations;

/// <summary>One row of an oil classification.</summary>
/// <param name="Name">Grade name, for instance 30 or 15W.</param>
/// <param name="LowestCSt">Lowest viscosity allowed [mm²/s].</param>
/// <param name="HighestCSt">Upper viscosity limit [mm²/s]; infinite where none is set.</param>
/// <param name="HighShearMPas">Lowest viscosity at 150 °C and high shear [mPa·s]; 0 where none is set.</param>
/// <param name="CrankingMPas">Highest cold-cranking viscosity [mPa·s]; 0 where none is set.</param>
/// <param name="CrankingC">Temperature of the cranking limit [°C].</param>
/// <param name="PumpingC">Temperature at which pumping must stay below 60 000 mPa·s, or for gear oil the highest temperature for 150 000
/// mPa·s [°C].</param>
public sealed record OilGrade(
    string Name, double LowestCSt, double HighestCSt, double HighShearMPas = 0,
    double CrankingMPas = 0, double CrankingC = 0, double PumpingC = 0)
{
    /// <summary>True when a viscosity lies in the grade; the upper SAE limit is "less than", the ISO one included.</summary>
    internal bool Holds(double nu, bool upperIncluded) => nu >= LowestCSt && (upperIncluded ? nu <= HighestCSt : nu < HighestCSt);
}
