using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: rolling bearings.</summary>
internal static class RollingBearingEntries
{
    private static readonly CalculationInput Capacity = Num(
        "capacity", "N", "dynamic capacity C from the bearing's table", above: 0, to: 1e9);
    private static readonly CalculationInput Load = Num("load", "N", "equivalent load P", above: 0, to: 1e9);
    private static readonly CalculationInput Speed = Num("speed", "rpm", "speed", above: 0, to: 1e5, optional: true);
    private static readonly CalculationInput Elements = Word("elements", "ball or roller", "ball", "ball", "roller");

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "rolling-bearing-life",
            Title = "Life of a rolling bearing",
            Tells =
                "The life that nine of ten bearings reach when clean, well oiled and rightly fitted. Twice the load, an eighth of the " +
                "life.",
            DoesNotTell = "When this bearing will fail. Most bearings die of dirt, water and fitting, long before.",
            Formula = "L10 = (C/P)^p million revolutions, p = 3 balls, 10/3 rollers; L10h = 10^6 L10/(60 n)",
            Validity = "Load to half the capacity.",
            Source = "ISO 281 form; Machine Design (Cengage India, 2007), examples 20.1 and 20.4, transcription read.",
            Inputs = [Capacity, Load, Speed, Elements],
            Outputs = [Out("life", "-", "life in million revolutions"), Out("hours", "h", "life in hours")],
            Work = (given, answer) =>
            {
                var life = RollingBearingLife.L10(given["capacity"], given["load"], given.Word("elements") == "roller");
                answer.Set("life", life);
                if (given.Has("speed"))
                    answer.Set("hours", RollingBearingLife.Hours(life, given["speed"]));
            },
        },
        new()
        {
            Id = "rolling-bearing-capacity",
            Title = "Capacity a bearing needs for a life",
            Tells = "The dynamic capacity a bearing must have for a life at a load, also at a reliability above 90 %.",
            DoesNotTell = "Whether the bearing fits, or can run at the speed.",
            Formula = "C = P L^(1/p); at reliability R: L10 = L / (ln(1/R)/ln(1/0.9))^(1/1.17)",
            Validity =
                "As rolling-bearing-life. Reliability by a two-parameter Weibull line: one of three conventions that must not be mixed.",
            Source =
                "Machine Design (Cengage India, 2007), example 20.2, and (Dorling Kindersley India, 2010), example 18-7, transcriptions " +
                "read.",
            Inputs =
            [
                Load,
                Num("life", "-", "life wanted in million revolutions", above: 0, to: 1e7, optional: true),
                Num("hours", "h", "life wanted in hours", above: 0, to: 1e7, optional: true),
                Speed,
                Num("reliability", "-", "reliability", from: 0.5, to: 0.999, def: "0.9"),
                Elements,
            ],
            Outputs =
            [
                Out("capacity", "N", "capacity needed", 4),
                Out("life", "-", "life in million revolutions"),
                Out("weibull-share", "-", "share of L10 at that reliability"),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("life") || (given.Has("hours") && given.Has("speed")), "give the life, or hours and speed.");
                var life = given.Has("life") ? given["life"] : given["hours"] * 60 * given["speed"] / 1e6;
                var share = RollingBearingLife.WeibullShare(given["reliability"]);
                answer.Set("capacity", RollingBearingLife.CapacityN(given["load"], life / share, given.Word("elements") == "roller"));
                answer.Set("life", life);
                answer.Set("weibull-share", share);
            },
        },
        new()
        {
            Id = "equivalent-bearing-load",
            Title = "Equivalent load and life with thrust",
            Tells = "One load that wears a bearing like a radial and a thrust load together, and the life under it.",
            DoesNotTell = "X and Y: look them up for the bearing and the ratio of the loads.",
            Formula = "P = X V Fr + Y Fa",
            Validity = "V = 1.2 for a turning outer ring is an older book rule.",
            Source = "Machine Design (Dorling Kindersley India, 2010), example 18-2, transcription read.",
            Inputs =
            [
                Num("radial", "N", "radial load", from: 0, to: 1e9),
                Num("axial", "N", "thrust load", from: 0, to: 1e9),
                Num("x", "-", "radial factor X", from: 0.3, to: 1),
                Num("y", "-", "thrust factor Y", from: 0, to: 5),
                Num("rotation", "-", "1 inner ring turns, 1.2 outer ring turns", from: 1, to: 1.2, def: "1"),
                Capacity with { Optional = true },
                Elements,
            ],
            Outputs = [Out("load", "N", "equivalent load", 4), Out("life", "-", "life in million revolutions", 4)],
            Work = (given, answer) =>
            {
                var load = RollingBearingLife.EquivalentN(given["radial"], given["axial"], given["x"], given["y"], given["rotation"]);
                answer.Set("load", load);
                if (given.Has("capacity"))
                    answer.Set("life", RollingBearingLife.L10(given["capacity"], load, given.Word("elements") == "roller"));
            },
        },
        new()
        {
            Id = "mean-bearing-load",
            Title = "Steady load that wears like a changing one",
            Tells = "The mean load of a bearing that works in steps, and the capacity for a life under it.",
            DoesNotTell = "Shock loads between the steps.",
            Formula = "Pm = (sum P^p n t / sum n t)^(1/p)",
            Validity = "Shares add up to 1; each step within the life formula.",
            Source = "Machine Design (Dorling Kindersley India, 2010), example 18-9, transcription read.",
            Inputs =
            [
                List("loads", "N", "load of each step", above: 0, to: 1e9),
                List("speeds", "rpm", "speed of each step", above: 0, to: 1e5),
                List("shares", "-", "share of time of each step", above: 0, to: 1),
                Num("hours", "h", "life wanted", above: 0, to: 1e7, optional: true),
                Elements,
            ],
            Outputs =
            [
                Out("load", "N", "mean load", 4),
                Out("mean-speed", "rpm", "mean speed", 4),
                Out("capacity", "N", "capacity needed", 4),
            ],
            Work = (given, answer) =>
            {
                var roller = given.Word("elements") == "roller";
                var (load, speed) = RollingBearingLife.MeanLoad(given.List("loads"), given.List("speeds"), given.List("shares"), roller);
                answer.Set("load", load);
                answer.Set("mean-speed", speed);
                if (given.Has("hours"))
                    answer.Set("capacity", RollingBearingLife.CapacityN(load, given["hours"] * 60 * speed / 1e6, roller));
            },
        },
        new()
        {
            Id = "reliability-factor",
            Title = "Reliability factor of bearing life",
            Tells = "The part of the rated life that more than nine of ten bearings reach.",
            DoesNotTell = "Which table a textbook used: the old and the 2007 one differ.",
            Formula = "tables",
            Validity = "90, 95, 97, 98, 99 %. Never mix the two columns.",
            Source = "ISO 281:2007 (read in an open library's data) and older maker catalogues (easymanua.ls, skf concentra page 9).",
            Inputs = [Word("reliability", "reliability in %", null, "90", "95", "97", "98", "99")],
            Outputs = [Out("factor", "-", "factor of ISO 281:2007", 2), Out("older-factor", "-", "factor of older tables", 2)],
            Work = (given, answer) =>
            {
                var reliability = int.Parse(given.Word("reliability"));
                answer.Set("factor", RollingBearingLife.ReliabilityFactor(reliability));
                answer.Set("older-factor", RollingBearingLife.ReliabilityFactor(reliability, older: true));
            },
        },
        new()
        {
            Id = "modified-bearing-life",
            Title = "Bearing life with oil film and dirt",
            Tells =
                "How oil film and cleanliness multiply the rated life: dirt can take nine tenths of it, a clean thick film can give " +
                "many times.",
            DoesNotTell = "Water, currents, poor fitting.",
            Formula =
                "L = a1 a_ISO L10; a_ISO = 0.1 [1 - (2.5671 - B/k^m)^0.83 (eC Cu/P)^(1/3)]^-9.3 for balls; rollers with 0.4 and -9.185",
            Validity = "Viscosity ratio kappa 0.1 to 4, factor capped at 50. eC guide from 1 extremely clean to 0 filthy.",
            Source =
                "ISO 281:2007, 9.3.3, constants read in an open library's data file, whose middle exponent 0.019087 must be 0.19087 " +
                "(the curve would jump at kappa 0.4).",
            Inputs =
            [
                Num("kappa", "-", "running over reference viscosity, if known", from: 0.1, to: 100, optional: true),
                Num("viscosity", "cSt", "oil at running temperature, else", above: 0, to: 1e5, optional: true),
                Num("mean-diameter", "mm", "mean of bore and outside diameter", from: 5, to: 2000, optional: true),
                Num("speed", "rpm", "speed", from: 10, to: 100_000, optional: true),
                Num("contamination", "-", "contamination factor eC", from: 0, to: 1),
                Num("fatigue-ratio", "-", "fatigue load limit over load, Cu/P", above: 0, to: 100),
                Num("rated-life", "-", "rated life in million revolutions", above: 0, to: 1e9, optional: true),
                Word("reliability", "reliability in %", "90", "90", "95", "97", "98", "99"),
                Elements,
            ],
            Outputs =
            [
                Out("factor", "-", "life factor"),
                Out("kappa", "-", "viscosity ratio"),
                Out("film-term", "-", "film term", 6),
                Out("life", "-", "life in million revolutions"),
            ],
            Work = (given, answer) =>
            {
                Require.That(
                    given.Has("kappa") || (given.Has("viscosity") && given.Has("mean-diameter") && given.Has("speed")),
                    "give kappa, or viscosity, mean-diameter and speed.");
                var kappa = given.Has("kappa")
                    ? given["kappa"]
                    : given["viscosity"] / RollingBearingLife.ReferenceViscosityCSt(given["speed"], given["mean-diameter"]);
                var roller = given.Word("elements") == "roller";
                var factor = RollingBearingLife.LifeFactor(kappa, given["contamination"], given["fatigue-ratio"], roller);
                answer.Set("factor", factor);
                answer.Set("kappa", kappa);
                answer.Set("film-term", RollingBearingLife.FilmTerm(Math.Min(kappa, 4), roller));
                if (given.Has("rated-life"))
                    answer.Set(
                        "life", given["rated-life"] * factor * RollingBearingLife.ReliabilityFactor(int.Parse(given.Word("reliability"))));
            },
        },
        new()
        {
            Id = "bearing-defect-frequencies",
            Title = "Frequencies of a damaged rolling bearing",
            Tells = "The knocking frequencies to look for in a vibration reading, for cage, rings and rolling elements.",
            DoesNotTell = "Whether the bearing is damaged; slip moves them by 1 to 3 %.",
            Formula = "k = (d/D) cos a; cage f(1-k)/2; outer Z f(1-k)/2; inner Z f(1+k)/2; element (D/2d) f (1-k²)",
            Validity = "Inner ring turns, outer ring still.",
            Source = "codingace.net bearing fault frequency calculator, sample row.",
            Inputs =
            [
                Num("balls", "-", "number of rolling elements", from: 3, to: 200),
                Num("ball-diameter", "mm", "diameter of one", above: 0, to: 500),
                Num("pitch-diameter", "mm", "pitch diameter of the row", above: 0, to: 5000),
                Num("contact-angle", "deg", "contact angle", from: 0, to: 60, def: "0 deg"),
                Num("speed", "rpm", "speed of the inner ring", above: 0, to: 1e5),
            ],
            Outputs =
            [
                Out("cage", "Hz", "cage", 4),
                Out("outer-ring", "Hz", "mark on the outer ring", 4),
                Out("inner-ring", "Hz", "mark on the inner ring", 4),
                Out("element", "Hz", "spin of a rolling element", 4),
            ],
            Work = (given, answer) =>
            {
                var tones = DefectFrequencies.Of(
                    given["balls"], given["ball-diameter"], given["pitch-diameter"], given["contact-angle"], given["speed"]);
                answer.Set("cage", tones.CageHz);
                answer.Set("outer-ring", tones.OuterHz);
                answer.Set("inner-ring", tones.InnerHz);
                answer.Set("element", tones.ElementHz);
            },
        },
    ];
}
