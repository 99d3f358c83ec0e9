using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: particles, wear metals and water in oil.</summary>
internal static class OilDebrisEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "cleanliness-code",
            Title = "ISO 4406 cleanliness code",
            Tells = "The three-part code of particle counts. Each step up is about twice the dirt.",
            DoesNotTell = "What the dirt is. Below 20 counted particles the number is shaky.",
            Formula = "scale-number table; lower bound excluded, upper bound included",
            Validity = "Counts a millilitre at 4, 6 and 14 µm(c), to 2 500 000.",
            Source = "ISO 4406:1999, table 1, reprint read in a filter maker's appendix; rows 12, 17, 18, 27 and 28 from memory.",
            Inputs =
            [
                Num("over-4", "1/ml", "particles of 4 µm and larger", from: 0, to: 2.5e6),
                Num("over-6", "1/ml", "particles of 6 µm and larger", from: 0, to: 2.5e6),
                Num("over-14", "1/ml", "particles of 14 µm and larger", from: 0, to: 2.5e6),
            ],
            Outputs = [Says("code", "code")],
            Work = (given, answer) => answer.Say("code", CleanlinessCode.Code(given["over-4"], given["over-6"], given["over-14"])),
        },
        new()
        {
            Id = "cleanliness-range",
            Title = "What an ISO 4406 number means",
            Tells = "The particle range behind one number of a cleanliness code.",
            DoesNotTell = "The exact count.",
            Formula = "table",
            Validity = "Scale numbers 0 to 28.",
            Source = "ISO 4406:1999, table 1, reprint read in a filter maker's appendix; rows 12, 17, 18, 27 and 28 from memory.",
            Inputs = [Num("scale-number", "-", "scale number", from: 0, to: 28)],
            Outputs = [Out("more-than", "1/ml", "more than", 4), Out("up-to", "1/ml", "up to and including", 4)],
            Work = (given, answer) =>
            {
                Require.That(given["scale-number"] % 1 == 0, "a scale number is a whole number.");
                var (more, upTo) = CleanlinessCode.Range((int)given["scale-number"]);
                answer.Set("more-than", more);
                answer.Set("up-to", upTo);
            },
        },
        new()
        {
            Id = "wear-metal-level",
            Title = "A wear metal against published levels",
            Tells = "How one wear-metal reading stands against three published sets of levels, side by side.",
            DoesNotTell =
                "Whether your engine is ill: no uniform limits exist. Trend and own history count more, and the method of analysis " +
                "matters.",
            Formula = "tables",
            Validity =
                "Engine oil. Military levels: one two-stroke diesel, rotating disc, columns for lead and molybdenum inferred. Warning " +
                "levels: vehicle engines.",
            Source =
                "TM 38-301-4 (Joint Oil Analysis Program, 2012/2013), page 85; lubricant maker's handbook (2004), fleet guide Appendix " +
                "B; v8sho.com laboratory table (weak).",
            Inputs =
            [
                Word("element", "chemical symbol", null, "Fe", "Cr", "Cu", "Pb", "Sn", "Al", "Ag", "Si", "Mo", "B"),
                Num("reading", "ppm", "reading", from: 0, to: 10_000),
            ],
            Outputs =
            [
                Says("military-level", "on the military diesel scale"),
                Says("warning", "against the warning level"),
                Out("normal-to", "ppm", "military: normal up to"),
                Out("marginal-to", "ppm", "military: marginal up to"),
                Out("high-to", "ppm", "military: high up to"),
                Out("abnormal-rise", "ppm/10 h", "military: abnormal rise"),
                Out("warning-level", "ppm", "warning level"),
                Out("spread-low", "ppm", "lower end of what laboratories accept"),
                Out("spread-high", "ppm", "upper end of what laboratories accept"),
            ],
            Work = (given, answer) => ShowMetal(given.Word("element"), given["reading"], answer),
        },
        new()
        {
            Id = "wear-metal-trend",
            Title = "A wear metal against the engine's own history",
            Tells = "How far the latest reading stands off earlier ones of the same engine, and how fast it rises.",
            DoesNotTell = "Which part wears; and a run of like readings with a wrong oil age misleads.",
            Formula = "distance = (latest - mean)/s; rise = 10 (latest - last)/hours",
            Validity = "Four or more earlier readings at like oil age; for the rise, no oil change between.",
            Source =
                "Statistical practice, from memory; rise form from TM 38-301-4. An STLE article (May 2012) says no uniform condemning " +
                "limits exist.",
            Inputs =
            [
                List("history", "ppm", "earlier readings", from: 0, to: 10_000),
                Num("latest", "ppm", "latest reading", from: 0, to: 10_000),
                Num("hours", "h", "running hours since the last of them", above: 0, to: 1e5, optional: true),
            ],
            Outputs =
            [
                Out("distance", "-", "standard deviations off the mean", 2),
                Says("verdict", "state"),
                Out("rise", "ppm/10 h", "rise in ten hours", 2),
            ],
            Work = (given, answer) =>
            {
                var distance = WearMetals.OwnTrendSigma(given.List("history"), given["latest"]);
                answer.Set("distance", distance);
                answer.Say(
                    "verdict",
                    distance > 3 ? "far above its own history" : distance > 2 ? "above its own history" : "in line with its own history");
                if (given.Has("hours"))
                    answer.Set("rise", WearMetals.RisePerTenHours(given.List("history")[^1], given["latest"], given["hours"]));
            },
        },
        new()
        {
            Id = "ferrograph",
            Title = "Ferrograph indices",
            Tells = "Whether large wear particles outweigh small ones, the mark of wear that is getting worse.",
            DoesNotTell = "What the particles are: that takes a microscope.",
            Formula = "severity = DL² - DS²; concentration = DL + DS; ratio = DL/DS",
            Validity = "One instrument and one dilution; DL not below DS.",
            Source = "Trico DR-7 manual, page 24 (which also prints the false DL(DL - DS)); ratio alert above 2 from one laboratory page.",
            Inputs =
            [
                Num("large", "-", "reading of large particles DL", from: 0, to: 1e5),
                Num("small", "-", "reading of small particles DS", above: 0, to: 1e5),
            ],
            Outputs =
            [
                Out("severity", "-", "severity"),
                Out("concentration", "-", "wear particle concentration"),
                Out("ratio", "-", "large over small", 2),
                Says("verdict", "state"),
            ],
            Work = (given, answer) =>
            {
                var (severity, concentration, ratio) = WearMetals.Ferrograph(given["large"], given["small"]);
                answer.Set("severity", severity);
                answer.Set("concentration", concentration);
                answer.Set("ratio", ratio);
                answer.Say("verdict", ratio > 2 ? "above the alert ratio" : "below the alert ratio");
            },
        },
        new()
        {
            Id = "water-and-bearing-life",
            Title = "Water in the oil and rolling-bearing life",
            Tells = "How much longer a rolling bearing lives when the oil is dried, or shorter when it gets wet.",
            DoesNotTell =
                "Anything below 25 or above 400 ppm: the tests stop there, and stretching the formula is misuse. Rust damage is not in " +
                "it.",
            Formula = "life ratio = (100/X)^0.6, compared between two water contents",
            Validity = "25 to 400 ppm; tapered roller bearings, SAE 20 oil, tests of 1976.",
            Source = "Tribology and Lubrication Technology (STLE), June 2021, From the Editor.",
            Inputs =
            [
                Num("water-from", "ppm", "water now", from: 25, to: 400),
                Num("water-to", "ppm", "water after", from: 25, to: 400, def: "100 ppm"),
            ],
            Outputs = [Out("life-ratio", "-", "life after over life now", 2)],
            Work = (given, answer) =>
                answer.Set("life-ratio", WearMetals.WaterLife(given["water-to"]) / WearMetals.WaterLife(given["water-from"])),
        },
    ];

    private static void ShowMetal(string element, double ppm, Answer answer)
    {
        if (WearMetals.MilitaryDiesel.Any(row => row.Element == element))
        {
            var row = WearMetals.RowOf(element);
            answer.Say("military-level", WearMetals.Level(element, ppm));
            answer.Set("normal-to", row.NormalTo);
            answer.Set("marginal-to", row.MarginalTo);
            answer.Set("high-to", row.HighTo);
            answer.Set("abnormal-rise", row.AbnormalPerTenHours);
        }
        if (element is not ("Ag" or "Mo"))
        {
            answer.Set("warning-level", WearMetals.WarningPpm(element));
            answer.Say("warning", ppm > WearMetals.WarningPpm(element) ? "above the warning level" : "not above the warning level");
        }
        if (element is "Fe" or "Cr" or "Cu" or "Pb" or "Al" or "Ag" or "Si")
        {
            var (low, high) = WearMetals.AcceptableSpread(element);
            answer.Set("spread-low", low);
            answer.Set("spread-high", high);
        }
    }
}
