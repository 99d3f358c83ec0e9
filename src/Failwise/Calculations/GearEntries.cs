using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: gear teeth.</summary>
internal static class GearEntries
{
    private const string Shigley = "Shigley's Mechanical Engineering Design (McGraw-Hill), example 14-4, transcription read.";

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "gear-tooth-stress",
            Title = "Contact and bending stress of spur gears",
            Tells =
                "How hard a pair of spur gears is loaded at flank and root, to see whether pitting or a broken tooth needs an overload " +
                "to explain it.",
            DoesNotTell = "Stress of teeth out of line or already worn, which is higher.",
            Formula = "sigma_c = Cp sqrt(W Ko Kv Ks Km/(d F I)); sigma_b = W Ko Kv Ks Km/(F m J)",
            Validity = "Spur gears with 20 degree teeth, quality number 3 to 11, steel on steel unless Cp is given.",
            Source = Shigley + " Straight arithmetic lies 0.05 % below the printed pair; J there is back-fitted.",
            Inputs =
            [
                Num("pinion-teeth", "-", "teeth of the pinion", from: 8, to: 300),
                Num("gear-teeth", "-", "teeth of the gear", from: 8, to: 2000),
                Num("module", "mm", "module: pitch diameter over teeth", above: 0, to: 50),
                Num("face-width", "mm", "face width", above: 0, to: 1000),
                Num("speed", "rpm", "pinion speed", above: 0, to: 1e5),
                Num("power", "kW", "power", above: 0, to: 1e5),
                Num("quality", "-", "AGMA quality number", from: 3, to: 11, def: "6"),
                Num("size-factor", "-", "size factor Ks", from: 1, to: 2, def: "1"),
                Num("alignment-factor", "-", "load-distribution factor Km", from: 1, to: 5, def: "1.2"),
                Num("overload-factor", "-", "overload factor Ko", from: 1, to: 5, def: "1"),
                Num("elastic-coefficient", "-", "Cp in root of MPa", above: 0, to: 500, def: "191"),
                Num("geometry-j", "-", "bending geometry factor J", from: 0.1, to: 0.6, optional: true),
            ],
            Outputs =
            [
                Out("velocity", "m/s", "pitch-line velocity", 4),
                Out("tooth-force", "N", "tooth force", 4),
                Out("dynamic-factor", "-", "dynamic factor", 4),
                Out("geometry-i", "-", "pitting geometry factor"),
                Out("contact-stress", "MPa", "contact stress"),
                Out("bending-stress", "MPa", "bending stress"),
            ],
            Work = StressTeeth,
        },
        new()
        {
            Id = "gear-strength",
            Title = "Allowable stress of through-hardened gears",
            Tells = "What a through-hardened steel gear stands at flank and root, from its hardness and number of load cycles.",
            DoesNotTell = "Case-hardened gears, and gears with dirty oil.",
            Formula = "Sc = (322 HB + 29 100) psi; St = (77.3 HB + 12 800) psi; ZN = 1.4488 N^-0.023; YN = 1.3558 N^-0.0178",
            Validity = "180 to 400 HB, grade 1, 10 million cycles and more.",
            Source = Shigley,
            Inputs =
            [
                Num("hardness", "-", "Brinell hardness", from: 180, to: 400),
                Num("cycles", "-", "load cycles of this gear", from: 1e7, to: 1e10, def: "1e7"),
            ],
            Outputs =
            [
                Out("contact-strength", "MPa", "allowable contact stress", 4),
                Out("bending-strength", "MPa", "allowable bending stress", 4),
                Out("contact-cycle-factor", "-", "cycle factor at the flank", 4),
                Out("bending-cycle-factor", "-", "cycle factor at the root", 4),
            ],
            Work = (given, answer) =>
            {
                var (contact, bending) = GearContact.AllowableMPa(given["hardness"]);
                var (zn, yn) = GearContact.CycleFactors(given["cycles"]);
                answer.Set("contact-strength", contact);
                answer.Set("bending-strength", bending);
                answer.Set("contact-cycle-factor", zn);
                answer.Set("bending-cycle-factor", yn);
            },
        },
        new()
        {
            Id = "line-contact-stress",
            Title = "Peak pressure where two cylinders touch",
            Tells = "The pressure under a cam, roller or tooth flank and the width of the touching stripe.",
            DoesNotTell = "Edge pressure of a misaligned roller, which is far higher.",
            Formula = "pmax = sqrt(F' E*/(pi R)); half width = sqrt(4 F' R/(pi E*)); 1/R = 1/R1 + 1/R2; E* = E/(2 (1 - v²))",
            Validity = "Elastic, smooth, long cylinders of one material; leave the second radius out for a flat.",
            Source = "From memory (Hertz); no printed example found apart from the elastic coefficient of the gear case. " + Shigley,
            Inputs =
            [
                Num("force-per-length", "N/mm", "force for each length of contact", above: 0, to: 1e5),
                Num("first-radius", "mm", "first radius", above: 0, to: 1e5),
                Num("second-radius", "mm", "second radius", above: 0, to: 1e6, optional: true),
                Num("modulus", "MPa", "modulus of both", above: 0, to: 500_000, def: "206000 MPa"),
                Num("poisson", "-", "Poisson's ratio", from: 0, to: 0.49, def: "0.3"),
            ],
            Outputs =
            [
                Out("peak-pressure", "MPa", "peak pressure"),
                Out("half-width", "mm", "half width of the stripe"),
                Out("elastic-coefficient", "-", "elastic coefficient in root of MPa", 4),
            ],
            Work = (given, answer) =>
            {
                var (peak, half) = GearContact.LineContact(
                    given["force-per-length"],
                    given["first-radius"],
                    given.Has("second-radius") ? given["second-radius"] : double.PositiveInfinity,
                    given["modulus"],
                    given["poisson"]);
                answer.Set("peak-pressure", peak);
                answer.Set("half-width", half);
                answer.Set("elastic-coefficient", GearContact.ElasticCoefficient(given["modulus"], given["poisson"]));
            },
        },
    ];

    private static void StressTeeth(Given given, Answer answer)
    {
        var pinion = given["module"] * given["pinion-teeth"];
        var velocity = GearContact.PitchVelocity(pinion, given["speed"]);
        var force = GearContact.ToothForceN(given["power"], velocity);
        var dynamic = GearContact.DynamicFactor(given["quality"], velocity);
        Require.That(
            given["gear-teeth"] >= given["pinion-teeth"],
            "the gear must have as many teeth as the pinion or more: were the two swapped?");
        var geometry = GearContact.PittingGeometry(given["gear-teeth"] / given["pinion-teeth"]);
        var factors = given["overload-factor"] * dynamic * given["size-factor"] * given["alignment-factor"];
        answer.Set("velocity", velocity);
        answer.Set("tooth-force", force);
        answer.Set("dynamic-factor", dynamic);
        answer.Set("geometry-i", geometry);
        answer.Set(
            "contact-stress",
            GearContact.ContactStressMPa(force, pinion, given["face-width"], geometry, factors, given["elastic-coefficient"]));
        if (given.Has("geometry-j"))
            answer.Set(
                "bending-stress", GearContact.BendingStressMPa(force, given["module"], given["face-width"], given["geometry-j"], factors));
    }
}
