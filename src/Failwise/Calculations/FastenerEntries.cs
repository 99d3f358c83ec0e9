using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: bolts.</summary>
internal static class FastenerEntries
{
    private static readonly CalculationInput Thread = Num("thread", "mm", "thread diameter", from: 1, to: 200);
    private static readonly CalculationInput Pitch = Num("pitch", "mm", "thread pitch", above: 0, to: 12);
    private static readonly CalculationInput NutFactor = Num(
        "nut-factor", "-", "nut factor: about 0.2 dry, 0.15 oiled", from: 0.08, to: 0.4, def: "0.2");

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "bolt-torque",
            Title = "Torque for a preload",
            Tells = "The torque that gives a bolt a share of its proof load.",
            DoesNotTell =
                "What preload you really get: at one torque it scatters by about a quarter with the state of the thread. The maker's " +
                "torque comes first.",
            Formula = "F = share A Sp; T = K d F",
            Validity = "Below yield; nut factor 0.08 to 0.4.",
            Source =
                "Machine Design (Cengage India, 2007), example 6.1, transcription read; web example for an M12 8.8 bolt " +
                "(aionlinecalculator.com).",
            Inputs =
            [
                Thread,
                Num("stress-area", "mm²", "tensile stress area", above: 0, to: 50_000, optional: true),
                Num("proof", "MPa", "proof strength", above: 0, to: 2000, optional: true),
                Num("share", "-", "share of proof load", from: 0.1, to: 1, def: "0.75"),
                Num("preload", "N", "preload, if known instead", above: 0, to: 1e7, optional: true),
                NutFactor,
            ],
            Outputs = [Out("preload", "N", "preload", 4), Out("torque", "N·m", "torque"), Out("proof-load", "N", "proof load")],
            Work = (given, answer) =>
            {
                Require.That(
                    given.Has("preload") || (given.Has("stress-area") && given.Has("proof")),
                    "give the preload, or stress-area and proof.");
                var preload = given.Has("preload")
                    ? given["preload"]
                    : Fasteners.PreloadOfProofN(given["stress-area"], given["proof"], given["share"]);
                answer.Set("preload", preload);
                answer.Set("torque", Fasteners.TorqueNm(preload, given["thread"], given["nut-factor"]));
                if (given.Has("stress-area") && given.Has("proof"))
                    answer.Set("proof-load", Fasteners.PreloadOfProofN(given["stress-area"], given["proof"], 1));
            },
        },
        new()
        {
            Id = "bolt-preload",
            Title = "Preload from a torque",
            Tells =
                "The clamping force a torque gives, and how it changes when a dry thread is oiled: oil raises it by a third at the same " +
                "torque.",
            DoesNotTell = "Torque checked after angle tightening says nothing about preload.",
            Formula = "F = T / (K d)",
            Validity = "Nut factor 0.08 to 0.4, below yield.",
            Source =
                "As bolt-torque: Machine Design (Cengage India, 2007), example 6.1; web example for an M12 8.8 bolt " +
                "(aionlinecalculator.com), whose remark that 45 kN is past proof is wrong.",
            Inputs =
            [
                Num("torque", "N·m", "torque", above: 0, to: 1e6),
                Thread,
                NutFactor,
                Num("stress-area", "mm²", "tensile stress area", above: 0, to: 50_000, optional: true),
                Num("proof", "MPa", "proof strength", above: 0, to: 2000, optional: true),
            ],
            Outputs = [Out("preload", "N", "preload"), Out("of-proof", "%", "of proof load", 2), Says("verdict", "state")],
            Work = (given, answer) =>
            {
                var preload = Fasteners.PreloadN(given["torque"], given["thread"], given["nut-factor"]);
                answer.Set("preload", preload);
                if (!given.Has("stress-area") || !given.Has("proof"))
                    return;
                var share = preload / Fasteners.PreloadOfProofN(given["stress-area"], given["proof"], 1);
                answer.Set("of-proof", 100 * share);
                answer.Say("verdict", share > 1 ? "past proof load" : "below proof load");
            },
        },
        new()
        {
            Id = "bolt-stretch-and-angle",
            Title = "Stretch, angle and heating of a bolt",
            Tells = "How far a bolt stretches at a preload, the turn after snug that gives it, and the heating that would do the same.",
            DoesNotTell = "A joint that gives, such as a gasket, needs more turn.",
            Formula = "dL = F L/(A E); angle = 360 dL/p; dT = dL/(alpha L)",
            Validity = "Below yield, one cross-section, rigid joint.",
            Source = "Machine Design (Cengage India, 2007), examples 6.2 and 6.3, transcription read.",
            Inputs =
            [
                Num("preload", "N", "preload", from: 0, to: 1e7),
                Num("length", "mm", "stretched length", above: 0, to: 5000),
                Num("area", "mm²", "cross-section that stretches", above: 0, to: 50_000),
                Num("modulus", "MPa", "modulus of elasticity", above: 0, to: 500_000, def: "206000 MPa"),
                Num("pitch", "mm", "thread pitch", above: 0, to: 12, optional: true),
                Num("growth", "1/K", "heat growth", from: 1e-6, to: 3e-5, def: "11.7e-6"),
            ],
            Outputs =
            [
                Out("stretch", "mm", "stretch"),
                Out("angle", "deg", "turn after snug"),
                Out("heating", "K", "heating that gives the same"),
            ],
            Work = (given, answer) =>
            {
                var stretch = Fasteners.StretchMm(given["preload"], given["length"], given["area"], given["modulus"]);
                answer.Set("stretch", stretch);
                if (given.Has("pitch"))
                    answer.Set("angle", Fasteners.TurnDeg(stretch, given["pitch"]));
                answer.Set("heating", Fasteners.HeatingK(stretch, given["length"], given["growth"]));
            },
        },
        new()
        {
            Id = "nut-factor",
            Title = "Nut factor from friction",
            Tells = "The nut factor K of a thread from its friction, to see what grease or a dry face does to preload.",
            DoesNotTell = "Friction itself, which you must know or guess.",
            Formula = "K = (dm/2d)(tan a + mu/cos 30)/(1 - mu tan a/cos 30) + 0.625 mu_c, dm = d - 0.6495 p",
            Validity = "60 degree thread, standard hexagon head.",
            Source =
                "Machine Design (Dorling Kindersley India, 2010), example 9-3, transcription read; it prints 0.18343, this dm gives " +
                "0.1830.",
            Inputs =
            [
                Thread,
                Pitch,
                Num("thread-friction", "-", "friction in the thread", from: 0.03, to: 0.4),
                Num("face-friction", "-", "friction under the head", from: 0.03, to: 0.4),
            ],
            Outputs = [Out("nut-factor", "-", "nut factor")],
            Work = (given, answer) =>
                answer.Set(
                    "nut-factor", Fasteners.NutFactor(given["thread"], given["pitch"], given["thread-friction"], given["face-friction"])),
        },
        new()
        {
            Id = "bolted-joint-load",
            Title = "Bolt load under an outside load",
            Tells = "What a preloaded bolt feels of an outside load, its stress, and when the joint gapes.",
            DoesNotTell = "Fatigue life: that hangs on thread and bending too.",
            Formula = "bolt load = Fi + C P; C = A_bolts/(A_bolts + A_clamped); gapes at P = Fi/(1 - C)",
            Validity = "Rigid joint, equal length and material, until it gapes.",
            Source =
                "Machine Design (Cengage India, 2007), example 6.4, and (Dorling Kindersley India, 2010), example 9-6, transcriptions " +
                "read.",
            Inputs =
            [
                Num("preload", "N", "preload of all bolts together", above: 0, to: 1e9),
                Num("outside-load", "N", "outside load on all of them", from: 0, to: 1e9),
                Num("load-share", "-", "part a bolt feels, if known", from: 0, to: 1, optional: true),
                Num("bolt-area", "mm²", "stress area of all bolts together", above: 0, to: 1e7),
                Num("clamped-area", "mm²", "area of the clamped parts", above: 0, to: 1e8, optional: true),
            ],
            Outputs =
            [
                Out("load-share", "-", "part the bolts feel"),
                Out("bolt-load", "N", "load in all bolts", 4),
                Out("preload-stress", "MPa", "stress from preload", 4),
                Out("stress", "MPa", "stress in all", 4),
                Out("gaping-load", "N", "outside load at which it gapes"),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("load-share") || given.Has("clamped-area"), "give the load-share or the clamped-area.");
                var share = given.Has("load-share") ? given["load-share"] : Fasteners.LoadShare(given["bolt-area"], given["clamped-area"]);
                var load = Fasteners.BoltLoadN(given["preload"], given["outside-load"], share);
                answer.Set("load-share", share);
                answer.Set("bolt-load", load);
                answer.Set("preload-stress", given["preload"] / given["bolt-area"]);
                answer.Set("stress", load / given["bolt-area"]);
                if (share < 1)
                    answer.Set("gaping-load", given["preload"] / (1 - share));
            },
        },
        new()
        {
            Id = "published-torque",
            Title = "Published oiled torque of a metric bolt",
            Tells =
                "The torque an engine maker's standard gives for a coarse-thread bolt, corrected for what is on the thread, and the " +
                "preload that friction 0.125 would give.",
            DoesNotTell = "The torque of your bolt: the manual of the machine comes first.",
            Formula = "table; F = T/(0.16 P + 0.58 d2 mu + 0.65 d mu)",
            Validity = "M6 to M20 coarse, class 8.8 and 10.9, oil on thread and face. The preload formula is from memory.",
            Source = "MTN 5008 (MTU, 2014), hand tightening; factors TM 5-3810-294-34 (US Army), table 1-2 notes.",
            Inputs =
            [
                Word("size", "thread size", null, "M6", "M8", "M10", "M12", "M14", "M16", "M20"),
                Word("class", "strength class", "8.8", "8.8", "10.9"),
                Word("surface", "what is on the thread", "oiled", "oiled", "plated", "parkerized", "moly", "hardened-washer",
                    "threadlocker"),
            ],
            Outputs =
            [
                Out("torque", "N·m", "torque"),
                Out("factor", "-", "factor for the surface", 2),
                Out("preload", "N", "preload at friction 0.125 before the factor"),
                Out("stress", "MPa", "stress from it"),
            ],
            Work = (given, answer) =>
            {
                var size = int.Parse(given.Word("size")[1..]);
                var (pitch, soft, hard) = Fasteners.OiledTorque(size);
                var torque = given.Word("class") == "8.8" ? soft : hard;
                var factor = Fasteners.SurfaceFactor(given.Word("surface"));
                var preload = Fasteners.PreloadByFrictionN(torque, size, pitch, 0.125);
                answer.Set("torque", torque * factor);
                answer.Set("factor", factor);
                answer.Set("preload", preload);
                answer.Set("stress", preload / Fasteners.StressAreaMm2(size, pitch));
            },
        },
    ];
}
