using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: wear of bores, rings, pistons and chains.</summary>
internal static class WearEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "wear-rules",
            Title = "Wear allowed by the per-inch rules",
            Tells = "How much wear a published army manual allows in proportion to size, when no figure for your engine can be found.",
            DoesNotTell = "Your maker's limit, which comes first. The rules are for small industrial engines.",
            Formula =
                "bore wear 0.001, taper 0.0005 per travel, piston 0.0005, clearance over high limit 0.0005, out-of-round 0.0004, each " +
                "per unit of size",
            Validity = "Bores of 40 to 300 mm, journals of 15 to 200 mm. The page prints two columns run together; re-check on the scan.",
            Source = WearRules.Source,
            Inputs =
            [
                Num("bore", "mm", "bore diameter", from: 40, to: 300, optional: true),
                Num("travel", "mm", "piston travel (stroke)", from: 30, to: 400, optional: true),
                Num("journal", "mm", "journal diameter", from: 15, to: 200, optional: true),
            ],
            Outputs =
            [
                Out("bore-wear", "mm", "bore wear allowed", 2),
                Out("bore-taper", "mm", "bore taper allowed", 2),
                Out("piston-wear", "mm", "piston wear allowed", 2),
                Out("clearance-over", "mm", "bearing clearance allowed over the high limit of new", 2),
                Out("out-of-round", "mm", "journal out-of-round allowed", 2),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("bore") || given.Has("travel") || given.Has("journal"), "give a bore, a travel or a journal.");
                if (given.Has("bore"))
                {
                    answer.Set("bore-wear", WearRules.BoreWearMm(given["bore"]));
                    answer.Set("piston-wear", WearRules.PistonWearMm(given["bore"]));
                }
                if (given.Has("travel"))
                    answer.Set("bore-taper", WearRules.BoreTaperMm(given["travel"]));
                if (given.Has("journal"))
                {
                    var (over, round) = WearRules.JournalMm(given["journal"]);
                    answer.Set("clearance-over", over);
                    answer.Set("out-of-round", round);
                }
            },
        },
        new()
        {
            Id = "ring-gap-growth",
            Title = "Ring gap and bore wear",
            Tells = "How much the ring gap opens for a bore increase, or what bore wear a measured gap stands for.",
            DoesNotTell = "A worn ring face opens the gap too, so wear found from the gap is an upper guess.",
            Formula = "gap increase = pi x increase of diameter",
            Validity = "Ring pushed square, below the wear ridge; bore increase to 5 mm.",
            Source = "Engine Builder magazine, June 2012, tips for measuring ring end gaps; TM 5-6115-593-34 (US Army), table 1-2.",
            Inputs =
            [
                Num("bore-increase", "mm", "increase of the bore diameter", from: 0, to: 5, optional: true),
                Num("gap", "mm", "measured gap", from: 0, to: 30, optional: true),
                Num("new-gap", "mm", "gap of the same ring when new", from: 0, to: 30, optional: true),
            ],
            Outputs = [Out("gap-increase", "mm", "increase of the gap"), Out("bore-wear", "mm", "bore wear the gap stands for")],
            Work = (given, answer) =>
            {
                Require.That(
                    given.Has("bore-increase") || (given.Has("gap") && given.Has("new-gap")),
                    "give a bore-increase, or a gap with its new-gap.");
                if (given.Has("bore-increase"))
                    answer.Set("gap-increase", RingGap.GrowthMm(given["bore-increase"]));
                if (given.Has("gap") && given.Has("new-gap"))
                    answer.Set("bore-wear", RingGap.BoreWearMm(given["gap"], given["new-gap"]));
            },
        },
        new()
        {
            Id = "ring-gap-minimum",
            Title = "Smallest ring gap by the workshop rule",
            Tells = "The gap below which a ring may butt when hot, by the 0.004 in per inch rule.",
            DoesNotTell = "The ring maker's figure, which comes first for boosted, air-cooled or hard-worked engines.",
            Formula = "gap = 0.004 x bore",
            Validity = "Bores of 2.5 to 4.5 in (63.5 to 114.3 mm).",
            Source = "engineproblem.com.au, knowledge test 1/49 (2019), a workshop web page.",
            Inputs =
            [
                Num("bore", "mm", "bore diameter", from: 2.5 * 25.4, to: 4.5 * 25.4),
                Num("gap-per-bore", "-", "gap for each unit of bore", from: 0.002, to: 0.008, def: "0.004"),
            ],
            Outputs = [Out("minimum-gap", "mm", "smallest gap", 2)],
            Work = (given, answer) => answer.Set("minimum-gap", RingGap.SmallestMm(given["bore"], given["gap-per-bore"])),
        },
        new()
        {
            Id = "piston-clearance",
            Title = "Piston clearance",
            Tells =
                "Clearance of a piston in its bore, as a length and in thousandths of the bore, and what is left of it when both are " +
                "warm.",
            DoesNotTell = "Skirt shape and local hot spots: measure the piston where its maker says.",
            Formula = "clearance = bore - piston; lost when warm = bore (alpha_p dT_p - alpha_b dT_b)",
            Validity = "Even warming. Heat growth 21 and 11 millionths per K for aluminium and grey iron, from memory.",
            Source = "By definition; published example TM 9-6115-604-34 (US Army), table 1-4.",
            Inputs =
            [
                Num("bore", "mm", "bore diameter", from: 20, to: 1000),
                Num("piston", "mm", "piston diameter at its gauge point", from: 20, to: 1000, optional: true),
                Num("clearance", "mm", "clearance, if known instead of the piston", from: 0, to: 5, optional: true),
                Num("piston-rise", "K", "warming of the skirt", from: 0, to: 300, optional: true),
                Num("bore-rise", "K", "warming of the bore", from: 0, to: 300, optional: true),
                Num("piston-growth", "1/K", "heat growth of the piston", from: 1e-6, to: 3e-5, def: "21e-6"),
                Num("bore-growth", "1/K", "heat growth of the bore", from: 1e-6, to: 3e-5, def: "11e-6"),
            ],
            Outputs =
            [
                Out("clearance", "mm", "cold clearance"),
                Out("per-thousand", "-", "clearance in thousandths of the bore"),
                Out("warm-clearance", "mm", "clearance when warm"),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("piston") || given.Has("clearance"), "give the piston or the clearance.");
                var clearance = given.Has("clearance") ? given["clearance"] : Math.Round(given["bore"] - given["piston"], 9);
                Require.That(
                    clearance >= 0,
                    $"the piston is {-clearance:G4} mm larger than its bore {given["bore"]:G6} mm: were the two swapped?");
                answer.Set("clearance", clearance);
                answer.Set("per-thousand", PistonClearance.PerThousand(clearance, given["bore"]));
                if (given.Has("piston-rise") && given.Has("bore-rise"))
                    answer.Set(
                        "warm-clearance",
                        clearance - PistonClearance.LostWhenWarmMm(
                            given["bore"], given["piston-rise"], given["bore-rise"], given["piston-growth"], given["bore-growth"]));
            },
        },
        new()
        {
            Id = "chain-elongation",
            Title = "Chain elongation",
            Tells = "How far a roller chain has worn longer, and the limit for its sprocket and drive.",
            DoesNotTell = "Whether single links are stiff or rollers cracked; a timing chain's own limit comes first.",
            Formula = "elongation = 100 (measured - nominal) / nominal; limit 3 % to 66 teeth, 200/teeth above, 1.5 % on fixed centres",
            Validity = "Chain pulled straight and measured pin to pin over many links.",
            Source = "trywhisler.com worked example; diamondchain.com FAQ; regalbeloit FAQ citing ANSI B29.1.",
            Inputs =
            [
                Num("measured", "mm", "length over a counted number of links", above: 0),
                Num("nominal", "mm", "length of the same links when new", above: 0),
                Num("teeth", "-", "teeth of the large sprocket", from: 9, to: 200, def: "40"),
                Word("fixed-centres", "fixed centres, as in a timing drive", "no", "yes", "no"),
            ],
            Outputs = [Out("elongation", "%", "elongation", 4), Out("limit", "%", "limit", 4), Says("verdict", "state")],
            Work = (given, answer) =>
            {
                var (percent, limit) = (
                    ChainElongation.Percent(given["measured"], given["nominal"]),
                    ChainElongation.LimitPercent(given["teeth"], given.Yes("fixed-centres")));
                answer.Set("elongation", percent);
                answer.Set("limit", limit);
                answer.Say("verdict", percent > limit ? "worn out" : "within the limit");
            },
        },
    ];
}
