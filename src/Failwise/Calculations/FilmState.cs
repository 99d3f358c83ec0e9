namespace Failwise.Calculations;

/// <summary>The dimensionless state of an oil film in a full round bearing.</summary>
/// <param name="Sommerfeld">Sommerfeld number S [-].</param>
/// <param name="Eccentricity">Eccentricity ratio: 0 is a centred journal, 1 touches [-].</param>
/// <param name="PositionAngleDeg">Where the thinnest film lies, measured from the load line [deg].</param>
/// <param name="FrictionVariable">f r / c [-].</param>
/// <param name="FlowVariable">Q / (r c N l) [-].</param>
/// <param name="SideFlowRatio">Part of the flow that leaves at the sides [-].</param>
/// <param name="PressureRatio">Mean pressure over peak film pressure [-].</param>
public sealed record FilmState(
    double Sommerfeld,
    double Eccentricity,
    double PositionAngleDeg,
    double FrictionVariable,
    double FlowVariable,
    double SideFlowRatio,
    double PressureRatio)
{
    /// <summary>Least film over radial clearance [-].</summary>
    public double FilmRatio => 1 - Eccentricity;
}
