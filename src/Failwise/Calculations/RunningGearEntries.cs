using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: gears, crankshaft, rods and their bolts.</summary>
internal static class RunningGearEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "backlash",
            Title = "Backlash from a dial on another radius",
            Tells = "The backlash at the teeth when the dial could not be set on the pitch radius.",
            DoesNotTell = "Whether the tooth contact is right: check the pattern too, and read at several places for runout.",
            Formula = "backlash = dial reading x pitch radius / dial radius",
            Validity = "Mating gear held fast, dial square to the radius.",
            Source = "By geometry. Published limits to compare with: TM 9-2320-289-34 par. 6-5, TM 9-2520-246-34-1 table 2-2 (US Army).",
            Inputs =
            [
                Num("dial", "mm", "dial reading", from: 0, to: 5),
                Num("dial-radius", "mm", "radius the dial rests on", above: 0),
                Num("pitch-radius", "mm", "pitch radius of the gear", above: 0),
            ],
            Outputs = [Out("backlash", "mm", "backlash at the teeth")],
            Work = (given, answer) =>
                answer.Set("backlash", Backlash.AtPitchLineMm(given["dial"], given["dial-radius"], given["pitch-radius"])),
        },
        new()
        {
            Id = "preload-by-torque-rise",
            Title = "Carrier-bearing preload by the rise of turning torque",
            Tells = "How much the turning torque rises when the ring gear is fitted, and whether the rise lies in a wanted band.",
            DoesNotTell = "The right band for your axle: the default is one published truck axle.",
            Formula = "rise = torque with ring gear - torque of the pinion alone",
            Validity = "Both read at the pinion, turning steadily, bearings oiled.",
            Source = "TM 10-3930-669-34 (US Army), page 10-29.",
            Inputs =
            [
                Num("pinion-only", "N·m", "turning torque of the pinion alone", from: 0, to: 50),
                Num("assembled", "N·m", "turning torque with the ring gear", from: 0, to: 50),
                Num("wanted-lowest", "N·m", "lowest rise wanted", from: 0, def: "3 lbf·in"),
                Num("wanted-highest", "N·m", "highest rise wanted", from: 0, def: "4 lbf·in"),
            ],
            Outputs = [Out("rise", "N·m", "rise"), Says("verdict", "state of the preload")],
            Work = (given, answer) =>
            {
                var rise = Backlash.TorqueRiseNm(given["pinion-only"], given["assembled"]);
                answer.Set("rise", rise);
                answer.Say(
                    "verdict",
                    rise < given["wanted-lowest"] ? "too loose" : rise > given["wanted-highest"] ? "too tight" : "as wanted");
            },
        },
        new()
        {
            Id = "end-float",
            Title = "Thrust washers from measured end float",
            Tells = "Which thrust-washer oversize brings the end float of a crank back, by a published selection table.",
            DoesNotTell = "Your engine's own limits: the table is that of one fire-truck engine and shows the method.",
            Formula =
                "reduced play = measured - (standard pair - fitted pair); to 0.016 in standard, to 0.026 in 0.005, to 0.036 in 0.010 " +
                "oversize",
            Validity = "End play to 3 mm; defaults are that manual's washers.",
            Source = "TM 5-4210-233-14&P-2 (US Army), par. 6-29, table c, page 6-152.",
            Inputs =
            [
                Num("end-play", "mm", "end play measured", from: 0, to: 3),
                Num("fitted-pair", "mm", "thickness of the two lower washers together", above: 0, to: 50, def: "0.244 in"),
                Num("standard-pair", "mm", "thickness of a standard pair", above: 0, to: 50, def: "0.244 in"),
            ],
            Outputs =
            [
                Out("reduced-play", "mm", "end play with standard washers"),
                Says("verdict", "washers to fit"),
                Out("oversize", "mm", "oversize"),
            ],
            Work = (given, answer) =>
            {
                var play = Math.Round(EndFloat.ReducedPlayMm(given["end-play"], given["fitted-pair"], given["standard-pair"]), 9);
                answer.Set("reduced-play", play);
                var oversize = EndFloat.WasherOversizeMm(play);
                answer.Say(
                    "verdict",
                    oversize switch { null => "beyond the table: crankshaft worn out", 0 => "standard washers", _ => "oversize washers" });
                if (oversize is { } size)
                    answer.Set("oversize", size);
            },
        },
        new()
        {
            Id = "crank-bend",
            Title = "Crankshaft bend from dial readings",
            Tells = "The bend at one journal, and the runout between two neighbours when their high spots stand at an angle.",
            DoesNotTell = "Cracks: a bent crank must be crack-tested. The published limit is for one two-stroke diesel.",
            Formula = "bend = (dial swing - out-of-round)/2; neighbours: sqrt(a² + b² - 2ab cos phi)",
            Validity = "Shaft turned on its end journals; bend much larger than out-of-round.",
            Source = "TM 10-3930-653-14&P page 61 (half the dial total); TM 9-2815-202-34 par. 4-35 (neighbours) (US Army).",
            Inputs =
            [
                Num("dial-swing", "mm", "largest less smallest dial reading over a turn", from: 0, to: 5),
                Num("out-of-round", "mm", "out-of-round of the journal", from: 0, to: 1, def: "0 mm"),
                Num("neighbour-swing", "mm", "dial swing at the neighbour", from: 0, to: 5, optional: true),
                Num("high-spots-apart", "deg", "angle between the two high spots", from: 0, to: 180, def: "180 deg"),
            ],
            Outputs =
            [
                Out("bend", "mm", "bend"),
                Out("between-neighbours", "mm", "runout between the two, as dial swing"),
                Out("example-limit", "mm", "published example limit for it"),
            ],
            Work = (given, answer) =>
            {
                answer.Set("bend", CrankBend.BendMm(given["dial-swing"], given["out-of-round"]));
                if (!given.Has("neighbour-swing"))
                    return;
                answer.Set(
                    "between-neighbours", CrankBend.AdjacentMm(given["dial-swing"], given["neighbour-swing"], given["high-spots-apart"]));
                answer.Set("example-limit", CrankBend.AdjacentExampleLimitMm(given["high-spots-apart"]));
            },
        },
        new()
        {
            Id = "rod-bend-twist",
            Title = "Rod bend and twist over a common length",
            Tells = "Bend or twist read on a test bar, turned into the length your limit is written for.",
            DoesNotTell = "Which limit is right: published ones differ by a factor of six, so the maker's counts.",
            Formula = "offset x length of the limit / distance of the readings",
            Validity = "Straight bar through the small end, readings 20 mm apart or more.",
            Source = "By proportion; limits to compare with in vehicle service data (charm.li, 2006 V8: 0.038 and 0.050 mm per 25 mm).",
            Inputs =
            [
                Num("offset", "mm", "difference read between the two points", from: 0, to: 5),
                Num("bar-length", "mm", "distance between the two points", from: 20, to: 1000),
                Num("over-length", "mm", "length the limit is written for", above: 0, to: 1000, def: "100 mm"),
                Num("limit", "mm", "limit over that length", above: 0, to: 5, optional: true),
            ],
            Outputs = [Out("over-length-offset", "mm", "offset over that length"), Says("verdict", "state")],
            Work = (given, answer) =>
            {
                var offset = RodBend.OverLengthMm(given["offset"], given["bar-length"], given["over-length"]);
                answer.Set("over-length-offset", offset);
                if (given.Has("limit"))
                    answer.Say("verdict", offset <= given["limit"] * (1 + 1e-12) ? "within the limit" : "beyond the limit");
            },
        },
        new()
        {
            Id = "bolt-reuse",
            Title = "May an angle-tightened bolt be used again?",
            Tells = "How far a bolt has stayed stretched, or how much its neck has thinned, against a stated limit.",
            DoesNotTell = "Cracks and thread damage; many makers forbid re-use outright.",
            Formula = "stretch = length - new length; thinning = new diameter - diameter",
            Validity = "Limits are the maker's.",
            Source =
                "Vehicle service data reprints, 2008 (main bolt new 110.0 to 110.6, limit 111.3 mm) and 2009 (rod bolt 8.3 of 8.5 to " +
                "8.6 mm).",
            Inputs =
            [
                Num("length", "mm", "length measured", above: 0, to: 1000, optional: true),
                Num("new-length", "mm", "greatest length when new", above: 0, to: 1000, optional: true),
                Num("longest", "mm", "longest allowed", above: 0, to: 1000, optional: true),
                Num("neck", "mm", "smallest neck diameter measured", above: 0, to: 200, optional: true),
                Num("thinnest", "mm", "thinnest allowed", above: 0, to: 200, optional: true),
            ],
            Outputs = [Out("stretch", "mm", "lasting stretch", 2), Says("verdict", "state")],
            Work = (given, answer) =>
            {
                Require.That(
                    (given.Has("length") && given.Has("longest")) || (given.Has("neck") && given.Has("thinnest")),
                    "give length with longest, or neck with thinnest.");
                if (given.Has("length") && given.Has("new-length"))
                    answer.Set("stretch", Math.Round(given["length"] - given["new-length"], 9));
                var tooLong = given.Has("length") && given.Has("longest") && given["length"] > given["longest"];
                var tooThin = given.Has("neck") && given.Has("thinnest") && given["neck"] < given["thinnest"];
                answer.Say("verdict", tooLong || tooThin ? "replace" : "within the limit");
            },
        },
    ];
}
