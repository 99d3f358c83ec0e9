namespace Failwise.Units;

/// <summary>What kind of thing a unit measures. Two units convert into each other only within one dimension.</summary>
public enum Dimension
{
    /// <summary>A pure number, a count or a ratio (also % and ppm).</summary>
    Number,
    Length,
    Area,
    Volume,
    Mass,
    Force,
    /// <summary>Pressure and mechanical stress.</summary>
    Pressure,
    Torque,
    /// <summary>A temperature on a thermometer.</summary>
    Temperature,
    /// <summary>A rise or a difference of temperature, which has no zero point.</summary>
    TemperatureDifference,
    KinematicViscosity,
    DynamicViscosity,
    Time,
    RotationalSpeed,
    Frequency,
    Velocity,
    Acceleration,
    Power,
    VolumeFlow,
    Angle,
    SpringRate,
    Density,
    /// <summary>Particles in a volume of oil.</summary>
    ParticleCount,
    /// <summary>A length change per length change per degree, as for heat growth.</summary>
    Expansion,
    /// <summary>Flow through a valve per square root of pressure.</summary>
    FlowCoefficient,
    /// <summary>Wear metal gained per running hour.</summary>
    ConcentrationRate,
}

/// <summary>The two systems a shop keeps rules in.</summary>
public enum UnitSystem
{
    /// <summary>Used alike in both, such as hours and degrees of angle.</summary>
    Both,
    Metric,
    Inch,
}
