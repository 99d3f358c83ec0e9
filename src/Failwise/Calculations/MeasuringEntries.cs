using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: readings, clearances and what they prove.</summary>
internal static class MeasuringEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "size-taper-out-of-round",
            Title = "Size, taper and out-of-round from several readings",
            Tells =
                "Boils the diameters of one journal, pin or bore down to mean size, taper along it and out-of-round in its worst plane.",
            DoesNotTell =
                "A three-lobed or bent part shows as round with a two-point gauge; nor does it say whether the readings are good.",
            Formula = "taper = largest - smallest plane mean; out-of-round = largest - smallest diameter within one plane",
            Validity =
                "Two-point readings of one part at one temperature. A bar starts the next plane; readings of a plane stand between " +
                "semicolons.",
            Source = "Common practice, no source.",
            Inputs = [List("readings", "mm", "diameters, for instance 57.94; 57.95 | 57.92; 57.94", above: 0, to: 3000)],
            Outputs =
            [
                Out("mean", "mm", "mean diameter", 6),
                Out("smallest", "mm", "smallest reading", 6),
                Out("largest", "mm", "largest reading", 6),
                Out("taper", "mm", "taper"),
                Out("out-of-round", "mm", "out-of-round"),
            ],
            Work = (given, answer) =>
            {
                var shape = Geometry.FromReadings(given.Planes("readings"));
                answer.Set("mean", shape.MeanMm);
                answer.Set("smallest", shape.SmallestMm);
                answer.Set("largest", shape.LargestMm);
                answer.Set("taper", Math.Round(shape.TaperMm, 9));
                answer.Set("out-of-round", Math.Round(shape.OutOfRoundMm, 9));
                if (given.Planes("readings").Count == 1)
                    answer.Note("Only one plane was read, so taper is not known.");
                if (given.Planes("readings").All(plane => plane.Count == 1))
                    answer.Note("Only one direction was read, so out-of-round is not known.");
            },
        },
        new()
        {
            Id = "oil-clearance",
            Title = "Clearance of a journal in its bore",
            Tells = "The running clearance of a pair, with its smallest and largest value over the places measured.",
            DoesNotTell =
                "Nothing about crush, alignment or how the surface looks; the shells must be in and the cap torqued when the bore is " +
                "read.",
            Formula = "clearance = bore - journal; smallest = smallest bore - largest journal; largest = largest bore - smallest journal",
            Validity = "Both parts measured at one temperature.",
            Source = "By definition; strip ranges TM 5-2420-222-34 (US Army), par. 1-16.",
            Inputs =
            [
                List("bore", "mm", "bore diameters with shells fitted and cap torqued", above: 0, to: 3000),
                List("journal", "mm", "journal diameters", above: 0, to: 3000),
            ],
            Outputs =
            [
                Out("clearance", "mm", "mean clearance"),
                Out("smallest", "mm", "smallest clearance"),
                Out("largest", "mm", "largest clearance"),
                Says("plastic-gauge", "plastic strips that can read it"),
            ],
            Work = (given, answer) =>
            {
                var (mean, smallest, largest) = Geometry.Clearance(
                    Geometry.FromReadings(given.Planes("bore")), Geometry.FromReadings(given.Planes("journal")));
                answer.Set("clearance", Math.Round(mean, 9));
                answer.Set("smallest", Math.Round(smallest, 9));
                answer.Set("largest", Math.Round(largest, 9));
                string[] strips = [.. new[] { "green", "red", "blue" }.Where(colour => StripReads(colour, mean))];
                answer.Say("plastic-gauge", strips.Length == 0 ? "none" : string.Join(", ", strips));
            },
        },
        new()
        {
            Id = "plastic-gauge-range",
            Title = "Range of a plastic gauge strip",
            Tells = "Which clearance a coloured strip can read.",
            DoesNotTell = "Whether the bore is round: a strip reads one line only. Colours differ between makers.",
            Formula = "table",
            Validity = "The US colours green, red and blue.",
            Source = "TM 5-2420-222-34 (US Army), par. 1-16.",
            Inputs = [Word("colour", "colour of the strip", null, "green", "red", "blue")],
            Outputs = [Out("lowest", "mm", "lowest clearance it reads"), Out("highest", "mm", "highest clearance it reads")],
            Work = (given, answer) =>
            {
                var (low, high) = Geometry.PlasticGaugeRangeMm(given.Word("colour"));
                answer.Set("lowest", low);
                answer.Set("highest", high);
            },
        },
        new()
        {
            Id = "conformance",
            Title = "Does a reading prove a part good or bad?",
            Tells =
                "Whether a reading with its uncertainty lies within, beyond or too close to a limit, and how probable it is that the " +
                "part conforms.",
            DoesNotTell = "Nothing about readings you did not take, and nothing if the instrument is worse than you believe.",
            Formula =
                "p = Phi((upper - y)/u) - Phi((lower - y)/u); within: inside both limits by U; beyond: outside one by more than U; else " +
                "too close to call",
            Validity =
                "Errors about normal. U is k times u; k = 2 is the older rule, 1.645 the 95 % rule of the 2017 edition (from memory).",
            Source = "JCGM 106:2012, 7.4 (inputs quoted on metrologyrules.com); ISO 14253-1 decision rule as read in web notes.",
            Inputs =
            [
                Num("reading", "mm", "the reading"), Num("standard-uncertainty", "mm", "standard uncertainty of the reading", above: 0),
                Num("lower-limit", "mm", "lower limit", optional: true), Num("upper-limit", "mm", "upper limit", optional: true),
                Num("coverage", "-", "coverage factor k", from: 1, to: 4, def: "2"),
            ],
            Outputs =
            [
                Says("verdict", "what the reading proves"),
                Out("probability", "%", "probability that the part conforms"),
                Out("guard-band", "mm", "guard band U"),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("lower-limit") || given.Has("upper-limit"), "give a lower-limit, an upper-limit or both.");
                var low = given.Has("lower-limit") ? given["lower-limit"] : double.NegativeInfinity;
                var high = given.Has("upper-limit") ? given["upper-limit"] : double.PositiveInfinity;
                var guard = given["coverage"] * given["standard-uncertainty"];
                answer.Say("verdict", Words(Conformance.Decide(given["reading"], guard, low, high)));
                answer.Set("probability", 100 * Conformance.Probability(given["reading"], given["standard-uncertainty"], low, high));
                answer.Set("guard-band", guard);
                if (2 * guard > high - low)
                    answer.Note("The uncertainty is wider than the tolerance: with this instrument no reading can prove the part good.");
            },
        },
        new()
        {
            Id = "measurement-uncertainty",
            Title = "Uncertainty of a micrometer reading",
            Tells = "How far a reading may lie from the truth, from repeat readings, the step of the scale and the setting piece.",
            DoesNotTell = "Operator, warmth and form of the part come on top; a budget for a measuring room is no shop-floor figure.",
            Formula = "u = sqrt((s/sqrt n)² + (step/sqrt 12)² + (U_setting/2)² + (limit/sqrt 3)²); U = k u",
            Validity = "Parts independent of each other. Leave out what you have already counted.",
            Source = "JCGM 100 (GUM); numbers from a micrometer budget on talalspecialbolt.com.",
            Inputs =
            [
                Num("repeat-deviation", "mm", "standard deviation of repeat readings", from: 0, to: 10, def: "0 mm"),
                Num("repeats", "-", "number of repeat readings", from: 1, to: 1000, def: "1"),
                Num("step", "mm", "smallest step of the scale or display", from: 0, to: 10, def: "0 mm"),
                Num("setting-uncertainty", "mm", "expanded uncertainty (k = 2) of the setting piece", from: 0, to: 10, def: "0 mm"),
                Num("error-limit", "mm", "error limit of the instrument, if not set to a piece", from: 0, to: 10, def: "0 mm"),
                Num("coverage", "-", "coverage factor k", from: 1, to: 4, def: "2"),
            ],
            Outputs =
            [
                Out("repeat-part", "mm", "part of the repeats", 2),
                Out("step-part", "mm", "part of the step", 2),
                Out("setting-part", "mm", "part of the setting piece", 2),
                Out("standard-uncertainty", "mm", "standard uncertainty", 2),
                Out("expanded-uncertainty", "mm", "expanded uncertainty U", 2),
            ],
            Work = (given, answer) =>
            {
                var repeat = given["repeat-deviation"] / Math.Sqrt(given["repeats"]);
                var step = Conformance.FromStep(given["step"]);
                var setting = given["setting-uncertainty"] / 2;
                var combined = Conformance.Combined(repeat, step, setting, Conformance.FromLimit(given["error-limit"]));
                Require.That(combined > 0, "give a repeat-deviation, a step, a setting-uncertainty or an error-limit above 0.");
                answer.Set("repeat-part", repeat);
                answer.Set("step-part", step);
                answer.Set("setting-part", setting);
                answer.Set("standard-uncertainty", combined);
                answer.Set("expanded-uncertainty", given["coverage"] * combined);
            },
        },
        new()
        {
            Id = "micrometer-error-limit",
            Title = "Error limit of an outside micrometer",
            Tells = "How far a good outside micrometer of a range may be off, and how much its frame gives.",
            DoesNotTell = "Whether yours still meets it: check it on its setting piece.",
            Formula = "table",
            Validity = "Outside micrometers to that standard, ranges ending at 25 to 150 mm.",
            Source = "DIN 863, one-page extract (scribd 564783692).",
            Inputs = [Word("range-end", "upper end of the range in mm", null, "25", "50", "75", "100", "125", "150")],
            Outputs = [Out("error-limit", "µm", "error limit", 2), Out("frame-give", "µm", "frame give at 10 N", 2)],
            Work = (given, answer) =>
            {
                var (error, frame) = Conformance.MicrometerMm(int.Parse(given.Word("range-end")));
                answer.Set("error-limit", error * 1000);
                answer.Set("frame-give", frame * 1000);
            },
        },
        new()
        {
            Id = "reading-against-limits",
            Title = "A reading against new dimensions and a wear limit",
            Tells =
                "Whether a clearance, gap, play or backlash is as new, worn but allowed, or beyond the wear limit, and how much of the " +
                "wear allowance is used.",
            DoesNotTell = "Not why it wore, nor how long it will last; the limit must be that of your own machine.",
            Formula = "used = (reading - new highest) / (wear limit - new highest)",
            Validity = "Values that grow with wear. Uncertainty is looked after by the conformance calculation.",
            Source = "Common practice, no source; the limits come from the maker's manual.",
            Inputs =
            [
                Num("reading", "mm", "the reading", from: 0), Num("new-lowest", "mm", "lowest value when new", from: 0, def: "0 mm"),
                Num("new-highest", "mm", "highest value when new", from: 0),
                Num("wear-limit", "mm", "wear limit", above: 0, optional: true),
            ],
            Outputs = [Says("verdict", "where the reading lies"), Out("allowance-used", "%", "wear allowance used up", 2)],
            Work = (given, answer) =>
            {
                var (reading, lowest, highest) = (given["reading"], given["new-lowest"], given["new-highest"]);
                Require.That(
                    lowest <= highest,
                    $"the lowest new value {lowest:G4} mm is above the highest {highest:G4} mm: were the two swapped?");
                var limit = given.Has("wear-limit") ? given["wear-limit"] : highest;
                Require.That(
                    limit >= highest,
                    $"the wear limit {limit:G4} mm is tighter than the {highest:G4} mm allowed for a new part: is one of them a misprint?");
                answer.Say(
                    "verdict",
                    reading < lowest
                        ? "tighter than new"
                        : reading <= highest
                        ? "as new"
                        : reading <= limit
                        ? "worn, within the limit"
                        : "beyond the limit");
                if (limit > highest)
                    answer.Set("allowance-used", 100 * Math.Max(0, reading - highest) / (limit - highest));
                if (!given.Has("wear-limit"))
                    answer.Note("No wear limit was given, so the highest new value counts as the limit.");
            },
        },
    ];

    private static bool StripReads(string colour, double clearanceMm)
    {
        var (low, high) = Geometry.PlasticGaugeRangeMm(colour);
        return clearanceMm >= low - 1e-9 && clearanceMm <= high + 1e-9;
    }

    private static string Words(Verdict verdict) =>
        verdict switch { Verdict.Within => "within", Verdict.Beyond => "beyond", _ => "too close to call" };
}
