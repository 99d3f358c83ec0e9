using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: coil springs.</summary>
internal static class SpringEntries
{
    private static readonly CalculationInput Wire = Num("wire", "mm", "wire diameter", above: 0, to: 100);
    private static readonly CalculationInput Mean = Num(
        "mean-diameter", "mm", "mean coil diameter: outside less one wire", above: 0, to: 1000);
    private static readonly CalculationInput Coils = Num("active-coils", "-", "coils that work: all less the dead ends", above: 0, to: 200);
    internal static readonly CalculationInput Shear = Num(
        "shear-modulus", "MPa", "shear modulus of the wire", above: 0, to: 200_000, def: "79300 MPa");

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "spring-rate",
            Title = "Spring rate from wire and coils",
            Tells = "How stiff a coil spring is, how far it gives under a force and the stress in its wire.",
            DoesNotTell = "Whether it has sagged: compare its free length and its force at a stated length.",
            Formula = "k = G d⁴ / (8 D³ n); Kw = (4C-1)/(4C-4) + 0.615/C; stress = Kw 8 F D / (pi d³)",
            Validity =
                "Round wire, index D/d of 3 to 20 (best 4 to 12), coils not touching. Default shear modulus 79 300 MPa for spring " +
                "steel, from memory.",
            Source = "Machine Design (Dorling Kindersley India, 2010), example 8-1, inputs read, result by the formula.",
            Inputs = [Wire, Mean, Coils, Shear, Num("force", "N", "force", from: 0, to: 1e6, optional: true)],
            Outputs =
            [
                Out("rate", "N/mm", "spring rate"),
                Out("index", "-", "spring index"),
                Out("shear-factor", "-", "direct-shear factor", 4),
                Out("wahl-factor", "-", "Wahl's factor", 4),
                Out("deflection", "mm", "deflection under the force", 4), Out("stress", "MPa", "shear stress in the wire"),
            ],
            Work = (given, answer) =>
            {
                var rate = CoilSpring.RateNMm(given["wire"], given["mean-diameter"], given["active-coils"], given["shear-modulus"]);
                var index = CoilSpring.Index(given["wire"], given["mean-diameter"]);
                answer.Set("rate", rate);
                answer.Set("index", index);
                answer.Set("shear-factor", CoilSpring.ShearFactor(index));
                answer.Set("wahl-factor", CoilSpring.WahlFactor(index));
                if (!given.Has("force"))
                    return;
                answer.Set("deflection", given["force"] / rate);
                answer.Set("stress", CoilSpring.StressMPa(given["force"], given["wire"], given["mean-diameter"]));
            },
        },
        new()
        {
            Id = "spring-coils",
            Title = "Coils for a wanted spring rate",
            Tells = "How many coils a spring of a wire needs, to judge whether a spring in hand can be the right one.",
            DoesNotTell = "Whether its steel and heat treatment are right.",
            Formula = "n = G d⁴ / (8 D³ k), k = force / deflection; squared and ground ends add two",
            Validity = "As the spring rate.",
            Source = "Machine Design (Cengage India, 2007), example 8.2, transcription read.",
            Inputs =
            [
                Wire,
                Mean,
                Num("force", "N", "force", above: 0, to: 1e6),
                Num("deflection", "mm", "deflection at that force", above: 0, to: 1000),
                Shear,
            ],
            Outputs =
            [
                Out("rate", "N/mm", "spring rate"),
                Out("active-coils", "-", "active coils", 4),
                Out("total-coils", "-", "coils in all with two dead ends", 4),
            ],
            Work = (given, answer) =>
            {
                var rate = given["force"] / given["deflection"];
                var coils = CoilSpring.ActiveCoils(given["wire"], given["mean-diameter"], rate, given["shear-modulus"]);
                answer.Set("rate", rate);
                answer.Set("active-coils", coils);
                answer.Set("total-coils", coils + 2);
            },
        },
        new()
        {
            Id = "valve-spring-size",
            Title = "Spring for a relief or safety valve",
            Tells = "Wire, coils and lengths of a spring that opens a valve at a pressure, to check a doubtful replacement.",
            DoesNotTell =
                "Flutter, wear of the seat and the sizes a spring maker stocks: round wire and coils up to whole sizes and run " +
                "spring-rate again.",
            Formula = "Fi = p A; Fmax = Fi (x0 + lift)/x0; d = sqrt(Kw 8 Fmax C/(pi tau)); n = G d/(8 C³ k)",
            Validity = "Round wire, squared and ground ends; wire and coils may be given when already chosen.",
            Source = "Design of Machine Elements textbook, example 10.9 (companion transcription; identity of the book from memory).",
            Inputs =
            [
                Num("seat", "mm", "valve diameter the pressure acts on", above: 0, to: 500),
                Num("opening-pressure", "bar", "opening pressure", above: 0, to: 1000),
                Num("preload", "mm", "compression when shut", above: 0, to: 500),
                Num("lift", "mm", "lift", from: 0, to: 500),
                Num("index", "-", "spring index", from: 3, to: 20),
                Num("allowed-stress", "MPa", "allowed shear stress", above: 0, to: 2000),
                Shear,
                Num("gap", "mm", "gap between coils at full lift", from: 0, to: 50, def: "1 mm"),
                Num("chosen-wire", "mm", "wire chosen", above: 0, to: 100, optional: true),
                Num("chosen-coils", "-", "active coils chosen", above: 0, to: 200, optional: true),
                Num("chosen-length", "mm", "free length chosen", above: 0, to: 2000, optional: true),
            ],
            Outputs =
            [
                Out("preload-force", "N", "force when shut"),
                Out("largest-force", "N", "force at full lift"),
                Out("wire", "mm", "thinnest wire", 4),
                Out("mean-diameter", "mm", "mean coil diameter", 4),
                Out("active-coils", "-", "active coils", 4),
                Out("total-coils", "-", "coils in all", 4),
                Out("solid-length", "mm", "length pressed solid", 4),
                Out("free-length", "mm", "free length", 4),
                Out("pitch", "mm", "pitch of the coils", 4),
                Out("rate", "N/mm", "spring rate", 4),
            ],
            Work = SizeSpring,
        },
    ];

    private static void SizeSpring(Given given, Answer answer)
    {
        var (lift, preload, index) = (given["lift"], given["preload"], given["index"]);
        var shut = given["opening-pressure"] / 10 * Math.PI / 4 * given["seat"] * given["seat"];
        var largest = shut * (preload + lift) / preload;
        var wire = CoilSpring.WireMm(largest, index, given["allowed-stress"]);
        var used = given.Has("chosen-wire") ? given["chosen-wire"] : wire;
        var coils = CoilSpring.ActiveCoils(used, used * index, shut / preload, given["shear-modulus"]);
        var active = given.Has("chosen-coils") ? given["chosen-coils"] : coils;
        var rate = CoilSpring.RateNMm(used, used * index, active, given["shear-modulus"]);
        var free = (active + 2) * used + largest / rate + (active + 1) * given["gap"];
        answer.Set("preload-force", shut);
        answer.Set("largest-force", largest);
        answer.Set("wire", wire);
        answer.Set("mean-diameter", used * index);
        answer.Set("active-coils", coils);
        answer.Set("total-coils", active + 2);
        answer.Set("solid-length", (active + 2) * used);
        answer.Set("free-length", free);
        answer.Set("pitch", (given.Has("chosen-length") ? given["chosen-length"] : free) / (active + 1));
        answer.Set("rate", rate);
    }
}
