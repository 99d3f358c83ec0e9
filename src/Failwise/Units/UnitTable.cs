using static Failwise.Units.Dimension;
using static Failwise.Units.UnitSystem;

namespace Failwise.Units;

/// <summary>Every unit Failwise reads, with exact factors written from their parts.</summary>
/// <remarks>
/// Source: the inch is 25.4 mm, the pound 0.45359237 kg and the US gallon 231 cubic inches by definition (international yard
/// and pound agreement, 1959; US customary gallon); standard gravity is 9.80665 m/s² by definition (CGPM, 1901).
/// </remarks>
public static class UnitTable
{
    private const double InchM = 0.0254;
    private const double FootM = 12 * InchM;
    private const double PoundKg = 0.45359237;
    private const double PoundForceN = PoundKg * 9.80665;
    private const double PsiPa = PoundForceN / (InchM * InchM);
    private const double GallonM3 = 231 * InchM * InchM * InchM;
    private const double HorsepowerW = 550 * FootM * PoundForceN;

    /// <summary>All units, grouped by dimension.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        U("-", Number, Both, 1, "", "1"),
        U("%", Number, Both, 0.01, "", "percent", "pct"),
        U("ppm", Number, Both, 1e-6, "", "mg/kg"),

        U("mm", Length, Metric, 1e-3, "in", "millimetre", "millimeter", "mms"),
        U("µm", Length, Metric, 1e-6, "thou", "um", "micron", "microns", "micrometre"),
        U("cm", Length, Metric, 1e-2, "in"),
        U("m", Length, Metric, 1, "ft", "metre", "meter"),
        U("km", Length, Metric, 1e3, "mi", "kms", "kilometre", "kilometer"),
        U("in", Length, Inch, InchM, "mm", "inch", "inches", "\""),
        U("thou", Length, Inch, InchM / 1000, "mm", "mil", "mils", "thous"),
        U("ft", Length, Inch, FootM, "m", "foot", "feet"),
        U("mi", Length, Inch, 5280 * FootM, "km", "mile", "miles"),

        U("mm²", Area, Metric, 1e-6, "in²", "mm2", "sqmm"),
        U("cm²", Area, Metric, 1e-4, "in²", "cm2", "sqcm"),
        U("in²", Area, Inch, InchM * InchM, "mm²", "in2", "sqin"),

        U("L", Volume, Metric, 1e-3, "US qt", "litre", "liter", "litres", "liters"),
        U("ml", Volume, Metric, 1e-6, "US fl oz", "mL", "cc", "cm3", "cm³"),
        U("m³", Volume, Metric, 1, "US gal", "m3"),
        U("US qt", Volume, Inch, GallonM3 / 4, "L", "qt", "quart", "quarts"),
        U("US gal", Volume, Inch, GallonM3, "L", "gal", "gallon", "gallons"),
        U("US fl oz", Volume, Inch, GallonM3 / 128, "ml", "floz"),
        U("in³", Volume, Inch, InchM * InchM * InchM, "ml", "in3", "cuin"),

        U("g", Mass, Metric, 1e-3, "oz", "gram", "grams"),
        U("kg", Mass, Metric, 1, "lb", "kilo", "kilos", "kilogram"),
        U("oz", Mass, Inch, PoundKg / 16, "g", "ounce", "ounces"),
        U("lb", Mass, Inch, PoundKg, "kg", "lbm", "lbs", "pound", "pounds"),

        U("N", Force, Metric, 1, "lbf", "newton", "newtons"),
        U("kN", Force, Metric, 1e3, "lbf"),
        U("kgf", Force, Metric, 9.80665, "lbf", "kp"),
        U("lbf", Force, Inch, PoundForceN, "N"),

        U("bar", Pressure, Metric, 1e5, "psi"),
        U("kPa", Pressure, Metric, 1e3, "psi"),
        U("MPa", Pressure, Metric, 1e6, "psi", "N/mm2", "N/mm²"),
        U("GPa", Pressure, Metric, 1e9, "psi"),
        U("Pa", Pressure, Metric, 1, "psi"),
        U("kgf/cm²", Pressure, Metric, 9.80665e4, "psi", "kgf/cm2", "kg/cm2", "kg/cm²", "at"),
        U("psi", Pressure, Inch, PsiPa, "bar", "lbf/in2", "lbf/in²", "psig", "lb/in2"),

        U("N·m", Torque, Metric, 1, "lbf·ft", "Nm", "newtonmetre"),
        U("kgf·m", Torque, Metric, 9.80665, "lbf·ft", "kgfm", "kgm", "mkg", "mkp", "kpm"),
        U("lbf·ft", Torque, Inch, FootM * PoundForceN, "N·m", "lbft", "ftlb", "ftlbf", "ftlbs", "footpound", "footpounds"),
        U("lbf·in", Torque, Inch, InchM * PoundForceN, "N·m", "lbin", "inlb", "inlbf", "inlbs", "inchpound", "inchpounds"),

        new("°C", Temperature, Metric, 1, 273.15, "°F", ["C", "degC", "celsius", "centigrade"]),
        new("°F", Temperature, Inch, 5.0 / 9, 273.15 - 32 * 5.0 / 9, "°C", ["F", "degF", "fahrenheit"]),
        U("K", TemperatureDifference, Metric, 1, "F°", "kelvin", "C°", "degCrise", "°Crise"),
        U("F°", TemperatureDifference, Inch, 5.0 / 9, "K", "degFrise", "°Frise"),

        U("cSt", KinematicViscosity, Both, 1e-6, "", "mm2/s", "mm²/s", "centistoke", "centistokes"),
        U("m²/s", KinematicViscosity, Both, 1, "", "m2/s"),
        U("mPa·s", DynamicViscosity, Both, 1e-3, "", "mPas", "cP", "centipoise", "cPs"),
        U("Pa·s", DynamicViscosity, Both, 1, "", "Pas"),
        U("microreyn", DynamicViscosity, Both, 1e-6 * PsiPa, "mPa·s", "ureyn", "µreyn"),
        U("lbf·s/ft²", DynamicViscosity, Both, PoundForceN / (FootM * FootM), "mPa·s", "lbfs/ft2"),

        U("h", Time, Both, 3600, "", "hr", "hrs", "hour", "hours"),
        U("min", Time, Both, 60, "", "minute", "minutes", "mins"),
        U("s", Time, Both, 1, "", "sec", "second", "seconds"),

        U("rpm", RotationalSpeed, Both, 1.0 / 60, "", "rev/min", "r/min", "1/min", "revmin"),
        U("rev/s", RotationalSpeed, Both, 1, "", "rps", "r/s"),
        U("Hz", Frequency, Both, 1, "", "hertz", "c/s", "cps"),

        U("m/s", Velocity, Metric, 1, "ft/min"),
        U("ft/min", Velocity, Inch, FootM / 60, "m/s", "fpm"),
        U("ft/s", Velocity, Inch, FootM, "m/s", "fps"),
        U("in/s", Velocity, Inch, InchM, "m/s", "ips"),
        U("m/s²", Acceleration, Metric, 1, "ft/s²", "m/s2"),
        U("ft/s²", Acceleration, Inch, FootM, "m/s²", "ft/s2"),

        U("kW", Power, Metric, 1e3, "hp"),
        U("W", Power, Metric, 1, "hp", "watt", "watts"),
        U("hp", Power, Inch, HorsepowerW, "kW", "bhp", "HP"),

        U("L/min", VolumeFlow, Metric, 1e-3 / 60, "US gal/min", "lpm", "litre/min", "liter/min"),
        U("mm³/s", VolumeFlow, Metric, 1e-9, "in³/h", "mm3/s"),
        U("L/h", VolumeFlow, Metric, 1e-3 / 3600, "US gal/min"),
        U("US gal/min", VolumeFlow, Inch, GallonM3 / 60, "L/min", "gpm", "USgpm", "gal/min"),
        U("in³/h", VolumeFlow, Inch, InchM * InchM * InchM / 3600, "mm³/s", "in3/h"),

        U("deg", Angle, Both, 1, "", "°", "degree", "degrees", "degs"),

        U("N/mm", SpringRate, Metric, 1e3, "lbf/in"),
        U("N/m", SpringRate, Metric, 1, "lbf/in"),
        U("lbf/in", SpringRate, Inch, PoundForceN / InchM, "N/mm", "lb/in"),

        U("kg/m³", Density, Metric, 1, "lb/in³", "kg/m3"),
        U("kg/L", Density, Metric, 1e3, "lb/in³", "g/cm3", "g/cm³", "g/ml"),
        U("lb/in³", Density, Inch, PoundKg / (InchM * InchM * InchM), "kg/L", "lbm/in3", "lb/in3"),

        U("1/ml", ParticleCount, Both, 1, "", "/ml", "particles/ml"),
        U("1/K", Expansion, Metric, 1, "1/F°", "mm/mmK"),
        U("1/F°", Expansion, Inch, 9.0 / 5, "1/K", "1/degF"),
        U("L/min/√kPa", FlowCoefficient, Metric, 1e-3 / 60 / Math.Sqrt(1e3), "gpm/√psi", "Lpm/sqrtkPa"),
        U("gpm/√psi", FlowCoefficient, Inch, GallonM3 / 60 / Math.Sqrt(PsiPa), "L/min/√kPa", "gpm/sqrtpsi"),
        U("ppm/h", ConcentrationRate, Both, 1, "", "ppmperh"),
        U("ppm/10 h", ConcentrationRate, Both, 0.1, "", "ppm/10h", "ppmper10h"),
    ];

    private static readonly Dictionary<string, Unit> Exact = Index(StringComparer.Ordinal, refuseTwins: true);
    private static readonly Dictionary<string, Unit> AnyCase = Index(StringComparer.OrdinalIgnoreCase, refuseTwins: false);

    /// <summary>Finds a unit by any of its spellings; capital letters matter only where two units differ by them alone.</summary>
    /// <param name="written">The unit as written, for instance <c>ft-lb</c> or <c>µm</c>.</param>
    /// <returns>The unit, or null when no unit is spelt like that.</returns>
    public static Unit? Find(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        var key = Plain(written);
        return Exact.GetValueOrDefault(key) ?? AnyCase.GetValueOrDefault(key);
    }

    /// <summary>The unit with this spelling.</summary>
    /// <param name="symbol">A spelling that is known to exist.</param>
    /// <returns>The unit.</returns>
    /// <exception cref="ArgumentException">No unit is spelt like that.</exception>
    public static Unit Get(string symbol) =>
        Find(symbol) ?? throw new ArgumentException($"there is no unit '{symbol}'.", nameof(symbol));

    /// <summary>The spelling nearest to a misspelt unit.</summary>
    internal static string? Nearest(string written)
    {
        var key = Plain(written).ToLowerInvariant();
        var best = All
            .SelectMany(
                unit => unit.Spellings.Append(unit.Symbol),
                (unit, spelling) => (unit, distance: EditDistance.Between(key, Plain(spelling).ToLowerInvariant())))
            .OrderBy(pair => pair.distance)
            .ThenBy(pair => pair.unit.Symbol, StringComparer.Ordinal)
            .First();
        return best.distance <= Math.Max(1, key.Length / 3) ? best.unit.Symbol : null;
    }

    private static Unit U(
        string symbol, Dimension dimension, UnitSystem system, double factor, string counterpart, params string[] spellings) =>
        new(symbol, dimension, system, factor, 0, counterpart, spellings);

    private static Dictionary<string, Unit> Index(StringComparer comparer, bool refuseTwins)
    {
        var index = new Dictionary<string, Unit>(comparer);
        foreach (var unit in All)
            foreach (var spelling in unit.Spellings.Prepend(unit.Symbol))
                if (!index.TryAdd(Plain(spelling), unit) && refuseTwins && !ReferenceEquals(index[Plain(spelling)], unit))
                    throw new InvalidOperationException($"two units are spelt '{spelling}'.");
        return index;
    }

    /// <summary>Drops the marks between the letters, so that N·m, N.m, N-m and N m are one spelling.</summary>
    private static string Plain(string written)
    {
        if (written.Trim() is "-" or "")
            return "-";
        Span<char> kept = stackalloc char[written.Length];
        var count = 0;
        foreach (var letter in written)
        {
            if (letter is ' ' or '·' or '⋅' or '.' or '-' or '*' or '_' or '\u00a0')
                continue;
            kept[count++] = letter switch { '²' => '2', '³' => '3', 'µ' or 'μ' => 'u', '″' or '”' => '"', _ => letter };
        }
        return new string(kept[..count]);
    }
}
