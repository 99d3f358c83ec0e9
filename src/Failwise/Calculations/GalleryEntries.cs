using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: leakage and gallery pressure.</summary>
internal static class GalleryEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "gap-leakage",
            Title = "Leakage past a shaft, plunger or valve stem",
            Tells = "How much oil leaks through a ring-shaped gap. Twice the gap leaks eight times as much.",
            DoesNotTell = "Leakage past a scored or tapered surface, or through a seal lip.",
            Formula = "Q = pi D h³ dp (1 + 1.5 e²) / (12 mu L)",
            Validity = "Smooth laminar flow, gap a tenth of the diameter or less. The off-centre bracket is from memory.",
            Source = "Introduction to Fluid Mechanics, 5th ed. (Wiley India, 2001), example 8.1, transcription read.",
            Inputs =
            [
                Num("diameter", "mm", "diameter of the gap", above: 0, to: 5000),
                Num("radial-gap", "mm", "gap on one side", above: 0, to: 50),
                Num("length", "mm", "length of the gap along the leak", above: 0, to: 5000),
                Num("pressure-drop", "MPa", "pressure difference", from: 0, to: 500),
                Num("viscosity", "mPa·s", "dynamic viscosity at leak temperature", above: 0, to: 1e5),
                Num("eccentricity", "-", "0 centred to 1 lying on one side", from: 0, to: 1, def: "0"),
            ],
            Outputs = [Out("leakage", "mm³/s", "leakage"), Out("mean-velocity", "m/s", "mean velocity in the gap")],
            Work = (given, answer) =>
            {
                var leak = GalleryPressure.AnnulusLeakMm3S(
                    given["diameter"],
                    given["radial-gap"],
                    given["length"],
                    given["pressure-drop"],
                    given["viscosity"],
                    given["eccentricity"]);
                answer.Set("leakage", leak);
                answer.Set("mean-velocity", leak / (Math.PI * given["diameter"] * given["radial-gap"]) / 1000);
            },
        },
        new()
        {
            Id = "crack-leakage",
            Title = "Leakage through a flat crack or gap",
            Tells = "How much leaks between two flat faces or through a long even crack.",
            DoesNotTell = "Flow through a rough or branching crack, which is less.",
            Formula = "Q = w h³ dp / (12 mu L); wall shear = h dp / (2 L)",
            Validity = "Smooth laminar flow, gap small against width and length.",
            Source =
                "Principles of Fluid Mechanics, 3rd ed. (Oxford and IBH, 1984), example 7.1, transcription read; its printed litres per " +
                "hour are per day.",
            Inputs =
            [
                Num("gap", "mm", "gap between the faces", above: 0, to: 10),
                Num("width", "mm", "width across the leak", above: 0, to: 1e6),
                Num("length", "mm", "length of the path", above: 0, to: 1e6),
                Num("pressure-drop", "MPa", "pressure difference", from: 0, to: 500),
                Num("viscosity", "mPa·s", "dynamic viscosity", above: 0, to: 1e5),
            ],
            Outputs =
            [
                Out("leakage", "mm³/s", "leakage"),
                Out("mean-velocity", "m/s", "mean velocity", 4),
                Out("wall-shear", "Pa", "drag on the wall", 4),
            ],
            Work = (given, answer) =>
            {
                var leak = GalleryPressure.SlotLeakMm3S(
                    given["gap"], given["width"], given["length"], given["pressure-drop"], given["viscosity"]);
                answer.Set("leakage", leak);
                answer.Set("mean-velocity", leak / (given["gap"] * given["width"]) / 1000);
                answer.Set("wall-shear", given["gap"] * given["pressure-drop"] * 1e6 / (2 * given["length"]));
            },
        },
        new()
        {
            Id = "leak-driven-piston",
            Title = "Speed of a piston that leaks past itself",
            Tells = "How fast a loose plunger or hydraulic tappet sinks when oil squeezes past it.",
            DoesNotTell = "The sink time of a tappet with a leaking valve ball.",
            Formula = "V = dp c³ / (6 mu L (r + c))",
            Validity = "Laminar, centred, cylinder at most a fifth larger than the piston.",
            Source = "Mechanics of Fluids, 8th ed. (Taylor and Francis, 2009), example 6.4, transcription read.",
            Inputs =
            [
                Num("piston", "mm", "piston diameter", above: 0, to: 2000),
                Num("cylinder", "mm", "cylinder diameter", above: 0, to: 2400),
                Num("length", "mm", "piston length", above: 0, to: 5000),
                Num("pressure-drop", "MPa", "pressure difference", from: 0, to: 500),
                Num("viscosity", "mPa·s", "dynamic viscosity", above: 0, to: 1e5),
            ],
            Outputs = [Out("speed", "m/s", "piston speed")],
            Work = (given, answer) =>
                answer.Set(
                    "speed",
                    GalleryPressure.LeakDrivenPistonSpeed(
                        given["piston"], given["cylinder"], given["length"], given["pressure-drop"], given["viscosity"])),
        },
        new()
        {
            Id = "gallery-pressure",
            Title = "Oil pressure along the gallery as clearances grow",
            Tells =
                "Pressure and leak at each bearing, nearest to the pump first, and whether the relief valve still opens. Compare worn " +
                "clearances with new ones.",
            DoesNotTell =
                "The true pressure in bar to the decimal: use it for ratios. It knows nothing of cam, rocker and turbo feeds, a worn " +
                "pump or a blocked strainer.",
            Formula =
                "each bearing leaks pi D h³ p / (6 mu l); each gallery piece loses 128 mu L Q / (pi d⁴); pressure scaled to pump " +
                "delivery or relief",
            Validity = "Laminar flow, equal grooved bearings, journals centred, one oil temperature.",
            Source =
                "Annulus and pipe flow from textbooks: Introduction to Fluid Mechanics, 5th ed. (Wiley India, 2001), example 8.1, " +
                "transcription read.",
            Inputs =
            [
                List("clearances", "mm", "diametral clearance of each bearing, nearest to the pump first", above: 0, to: 2),
                Num("diameter", "mm", "journal diameter", above: 0, to: 500),
                Num("land", "mm", "length of one land beside the oil groove", above: 0, to: 500),
                Num("pump-delivery", "L/min", "pump delivery at this speed", above: 0, to: 10_000),
                Num("relief-pressure", "bar", "pressure the relief valve holds", above: 0, to: 100),
                Num("viscosity", "mPa·s", "dynamic viscosity of the hot oil", above: 0, to: 1e4),
                Num("gallery-bore", "mm", "bore of the gallery", above: 0, to: 200, def: "12 mm"),
                Num("spacing", "mm", "distance from one feed to the next", from: 0, to: 2000, def: "0 mm"),
            ],
            Outputs =
            [
                Out("first-pressure", "bar", "pressure at the bearing nearest to the pump"),
                Out("last-pressure", "bar", "pressure at the bearing furthest from the pump"),
                Out("total-leak", "L/min", "oil leaving through the bearings"),
                Says("relief", "relief valve"),
                Says("by-bearing", "pressure at each bearing in bar"),
                Out("hungriest-bearing", "-", "number of the bearing that takes most oil", 2),
                Out("hungriest-share", "%", "its share of the oil", 2),
            ],
            Work = (given, answer) =>
            {
                var state = GalleryPressure.AlongGallery(
                    given.List("clearances"), given["diameter"], given["land"], given["pump-delivery"],
                    given["relief-pressure"], given["viscosity"], given["gallery-bore"], given["spacing"]);
                answer.Set("first-pressure", state.PressuresBar[0]);
                answer.Set("last-pressure", state.PressuresBar[^1]);
                answer.Set("total-leak", state.LeaksLMin.Sum());
                answer.Say("relief", state.ReliefOpen ? "open" : "closed");
                answer.Say("by-bearing", string.Join("; ", state.PressuresBar.Select(pressure => pressure.ToString("F2"))));
                var most = Enumerable.Range(0, state.LeaksLMin.Count).MaxBy(i => state.LeaksLMin[i]);
                answer.Set("hungriest-bearing", most + 1);
                answer.Set("hungriest-share", 100 * state.LeaksLMin[most] / state.LeaksLMin.Sum());
            },
        },
        new()
        {
            Id = "oil-pressure-rule",
            Title = "Oil pressure by the speed rule of thumb",
            Tells = "What the old saying of 10 psi for each 1000 rev/min would ask.",
            DoesNotTell =
                "Whether the pressure is right. It is folklore: no standard or maker's manual giving it was found. Never use it as a " +
                "limit.",
            Formula = "p = 10 psi x rev/min / 1000",
            Validity = "300 to 8000 rev/min; a figure to talk about, not to judge by.",
            Source = "Rico Instrument Co. web page on oil pressure; a second page says 7 to 10 psi.",
            Inputs = [Num("speed", "rpm", "engine speed", from: 300, to: 8000)],
            Outputs = [Out("pressure", "bar", "pressure by the saying", 2)],
            Work = (given, answer) =>
            {
                answer.Set("pressure", Compression.OilPressureFolkloreBar(given["speed"]));
                answer.Note("This is folklore, not a limit: look up the maker's figure.");
            },
        },
    ];
}
