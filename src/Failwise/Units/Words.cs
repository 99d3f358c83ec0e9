namespace Failwise.Units;

/// <summary>The names a mechanic uses for what a unit measures.</summary>
internal static class Words
{
    public static string Of(Dimension dimension) => dimension switch
    {
        Dimension.Number => "a plain number",
        Dimension.Length => "a length",
        Dimension.Area => "an area",
        Dimension.Volume => "a volume",
        Dimension.Mass => "a mass",
        Dimension.Force => "a force",
        Dimension.Pressure => "a pressure or stress",
        Dimension.Torque => "a torque",
        Dimension.Temperature => "a temperature",
        Dimension.TemperatureDifference => "a temperature rise",
        Dimension.KinematicViscosity => "an oil thickness in cSt",
        Dimension.DynamicViscosity => "an oil thickness in mPa·s",
        Dimension.Time => "a time",
        Dimension.RotationalSpeed => "a speed of rotation",
        Dimension.Frequency => "a frequency",
        Dimension.Velocity => "a velocity",
        Dimension.Acceleration => "an acceleration",
        Dimension.Power => "a power",
        Dimension.VolumeFlow => "a flow",
        Dimension.Angle => "an angle",
        Dimension.SpringRate => "a spring rate",
        Dimension.Density => "a density",
        Dimension.ParticleCount => "a particle count",
        Dimension.Expansion => "a heat growth",
        Dimension.FlowCoefficient => "a valve coefficient",
        Dimension.ConcentrationRate => "a wear-metal trend",
        _ => "something else",
    };
}
