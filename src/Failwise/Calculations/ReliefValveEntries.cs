using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: relief valves, springs and openings.</summary>
internal static class ReliefValveEntries
{
    private static readonly CalculationInput Wire = Num("wire", "mm", "wire diameter", above: 0, to: 100);
    private static readonly CalculationInput Mean = Num("mean-diameter", "mm", "mean coil diameter: outside less one wire", above: 0, to: 1000);
    private static readonly CalculationInput Coils = Num("active-coils", "-", "coils that work: all less the dead ends", above: 0, to: 200);
    private static readonly CalculationInput Shear = Num("shear-modulus", "MPa", "shear modulus of the wire", above: 0, to: 200_000, def: "79300 MPa");

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "spring-rate",
            Title = "Spring rate from wire and coils",
            Tells = "How stiff a coil spring is, how far it gives under a force and the stress in its wire.",
            DoesNotTell = "Whether it has sagged: compare its free length and its force at a stated length.",
            Formula = "k = G d⁴ / (8 D³ n); Kw = (4C-1)/(4C-4) + 0.615/C; stress = Kw 8 F D / (pi d³)",
            Validity = "Round wire, index D/d of 3 to 20 (best 4 to 12), coils not touching. Default shear modulus 79 300 MPa for spring steel, from memory.",
            Source = "Machine Design (Dorling Kindersley India, 2010), example 8-1, inputs read, result by the formula.",
            Inputs = [Wire, Mean, Coils, Shear, Num("force", "N", "force", from: 0, to: 1e6, optional: true)],
            Outputs =
            [
                Out("rate", "N/mm", "spring rate"), Out("index", "-", "spring index"), Out("shear-factor", "-", "direct-shear factor", 4), Out("wahl-factor", "-", "Wahl's factor", 4),
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
            Inputs = [Wire, Mean, Num("force", "N", "force", above: 0, to: 1e6), Num("deflection", "mm", "deflection at that force", above: 0, to: 1000), Shear],
            Outputs = [Out("rate", "N/mm", "spring rate"), Out("active-coils", "-", "active coils", 4), Out("total-coils", "-", "coils in all with two dead ends", 4)],
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
            DoesNotTell = "Flutter, wear of the seat and the sizes a spring maker stocks: round wire and coils up to whole sizes and run spring-rate again.",
            Formula = "Fi = p A; Fmax = Fi (x0 + lift)/x0; d = sqrt(Kw 8 Fmax C/(pi tau)); n = G d/(8 C³ k)",
            Validity = "Round wire, squared and ground ends; wire and coils may be given when already chosen.",
            Source = "Design of Machine Elements textbook, example 10.9 (companion transcription; identity of the book from memory).",
            Inputs =
            [
                Num("seat", "mm", "valve diameter the pressure acts on", above: 0, to: 500), Num("opening-pressure", "bar", "opening pressure", above: 0, to: 1000), Num("preload", "mm", "compression when shut", above: 0, to: 500),
                Num("lift", "mm", "lift", from: 0, to: 500), Num("index", "-", "spring index", from: 3, to: 20), Num("allowed-stress", "MPa", "allowed shear stress", above: 0, to: 2000), Shear,
                Num("gap", "mm", "gap between coils at full lift", from: 0, to: 50, def: "1 mm"), Num("chosen-wire", "mm", "wire chosen", above: 0, to: 100, optional: true), Num("chosen-coils", "-", "active coils chosen", above: 0, to: 200, optional: true),
                Num("chosen-length", "mm", "free length chosen", above: 0, to: 2000, optional: true),
            ],
            Outputs =
            [
                Out("preload-force", "N", "force when shut"), Out("largest-force", "N", "force at full lift"), Out("wire", "mm", "thinnest wire", 4), Out("mean-diameter", "mm", "mean coil diameter", 4), Out("active-coils", "-", "active coils", 4),
                Out("total-coils", "-", "coils in all", 4), Out("solid-length", "mm", "length pressed solid", 4), Out("free-length", "mm", "free length", 4), Out("pitch", "mm", "pitch of the coils", 4), Out("rate", "N/mm", "spring rate", 4),
            ],
            Work = SizeSpring,
        },
        new()
        {
            Id = "relief-valve-pressure",
            Title = "Opening pressure of a relief valve",
            Tells = "The pressure at which a valve starts to open and at which it is fully open, from its spring.",
            DoesNotTell = "What dirt under the seat, a scored bore or a hung piston does; a right spring does not clear the valve.",
            Formula = "cracking = k x0 / A; full flow = k (x0 + lift) / A",
            Validity = "Valve at rest, no back pressure, no friction.",
            Source = "Fluid Power with Applications, 6th ed. (Pearson, 2005), chapter 8; worked safety valve: Design of Machine Elements textbook, example 10.9.",
            Inputs =
            [
                Num("rate", "N/mm", "spring rate, if known", above: 0, to: 1e5, optional: true), Num("wire", "mm", "wire diameter, else", above: 0, to: 100, optional: true), Num("mean-diameter", "mm", "mean coil diameter", above: 0, to: 1000, optional: true),
                Num("active-coils", "-", "coils that work", above: 0, to: 200, optional: true), Shear, Num("preload", "mm", "compression when shut: free length less fitted length", from: 0, to: 500),
                Num("lift", "mm", "lift at full flow", from: 0, to: 500, def: "0 mm"), Num("seat", "mm", "diameter the pressure acts on", above: 0, to: 500), Num("should-be", "bar", "opening pressure it should have", above: 0, to: 1000, optional: true),
            ],
            Outputs = [Out("cracking-pressure", "bar", "pressure at which it starts to open"), Out("full-flow-pressure", "bar", "pressure at full lift"), Out("rate", "N/mm", "spring rate"), Out("against-should-be", "%", "cracking pressure against what it should be")],
            Work = (given, answer) =>
            {
                Require.That(given.Has("rate") || (given.Has("wire") && given.Has("mean-diameter") && given.Has("active-coils")), "give the rate, or wire, mean-diameter and active-coils.");
                var rate = given.Has("rate") ? given["rate"] : CoilSpring.RateNMm(given["wire"], given["mean-diameter"], given["active-coils"], given["shear-modulus"]);
                var cracking = ReliefValve.OpeningBar(rate, given["preload"], given["seat"]);
                answer.Set("cracking-pressure", cracking);
                answer.Set("full-flow-pressure", ReliefValve.OpeningBar(rate, given["preload"] + given["lift"], given["seat"]));
                answer.Set("rate", rate);
                if (given.Has("should-be"))
                    answer.Set("against-should-be", 100 * cracking / given["should-be"]);
            },
        },
        new()
        {
            Id = "orifice-flow",
            Title = "Flow through an opening",
            Tells = "How much oil passes an oil jet, a hole or an open valve.",
            DoesNotTell = "Flow of cold thick oil or through a long thin gap: use the leakage calculations.",
            Formula = "Q = Cd A sqrt(2 dp / rho)",
            Validity = "Sharp-edged opening, thin oil; Cd 0.6 to 0.8.",
            Source = "Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-4, transcription read; its rounded constant 38.1 gives 252 US gal/min, full units 251.5.",
            Inputs = [Num("diameter", "mm", "diameter of the opening", above: 0, to: 500), Num("pressure-drop", "bar", "pressure difference", from: 0, to: 1000), Num("density", "kg/L", "oil density", from: 0.6, to: 1.3, def: "0.85 kg/L"), Num("discharge", "-", "discharge coefficient", from: 0.5, to: 1, def: "0.7")],
            Outputs = [Out("flow", "L/min", "flow")],
            Work = (given, answer) => answer.Set("flow", ReliefValve.OrificeLMin(Math.PI / 4 * given["diameter"] * given["diameter"], given["pressure-drop"], given["density"], given["discharge"])),
        },
        new()
        {
            Id = "stuck-relief-valve",
            Title = "Pressure left with a valve stuck open",
            Tells = "The most pressure a pump can hold when a relief valve hangs open by a measured gap.",
            DoesNotTell = "The pressure with the bearings drinking as well, which is lower, and it does not prove that the valve hung.",
            Formula = "p = rho/2 (Q / (Cd pi D lift))²",
            Validity = "Ring-shaped opening with a lift to a quarter of the seat; thin oil.",
            Source = "Inverse of the orifice law: Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-4, transcription read.",
            Inputs = [Num("pump-delivery", "L/min", "pump delivery at this speed", above: 0, to: 10_000), Num("seat", "mm", "seat diameter", above: 0, to: 200), Num("stuck-lift", "mm", "gap it hangs open by", above: 0, to: 50), Num("density", "kg/L", "oil density", from: 0.6, to: 1.3, def: "0.85 kg/L"), Num("discharge", "-", "discharge coefficient", from: 0.5, to: 1, def: "0.7")],
            Outputs = [Out("pressure", "bar", "most pressure left", 2), Out("open-area", "mm²", "open area")],
            Work = (given, answer) =>
            {
                Require.That(given["stuck-lift"] <= given["seat"] / 4, $"above a lift of a quarter of the seat ({given["seat"] / 4:G3} mm) the opening is the seat itself: use the seat diameter in orifice-flow.");
                var area = Math.PI * given["seat"] * given["stuck-lift"];
                answer.Set("pressure", ReliefValve.StuckOpenBar(given["pump-delivery"], area, given["density"], given["discharge"]));
                answer.Set("open-area", area);
            },
        },
        new()
        {
            Id = "valve-flow-coefficient",
            Title = "Flow coefficient of a valve",
            Tells = "One figure for how freely a valve lets oil through, to compare a doubtful valve with a good one.",
            DoesNotTell = "Leakage when shut.",
            Formula = "Cv = Q / sqrt(dp / SG)",
            Validity = "Turbulent flow.",
            Source = "Fluid Power with Applications, 6th ed. (Pearson, 2005), examples 8-5 and 8-6, transcription read.",
            Inputs = [Num("flow", "L/min", "flow", above: 0, to: 1e5), Num("pressure-drop", "kPa", "pressure drop", above: 0, to: 1e5), Num("specific-gravity", "-", "density over that of water", from: 0.6, to: 1.3, def: "0.85")],
            Outputs = [Out("coefficient", "L/min/√kPa", "flow coefficient")],
            Work = (given, answer) => answer.Set("coefficient", ReliefValve.FlowCoefficient(given["flow"], given["pressure-drop"], given["specific-gravity"])),
        },
        new()
        {
            Id = "cylinder-outlet-coefficient",
            Title = "Throttle coefficient from the speed of a cylinder",
            Tells = "The flow coefficient of the throttle behind an extending cylinder, from its speed, load and supply pressure.",
            DoesNotTell = "Leakage past the piston, which makes the cylinder drift as well.",
            Formula = "p2 = (p1 A1 - F)/(A1 - Arod); Q = v (A1 - Arod); Cv = Q / sqrt(p2 / SG)",
            Validity = "Steady speed, no friction, no pressure behind the throttle.",
            Source = "Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-6, transcription read.",
            Inputs =
            [
                Num("speed", "m/s", "cylinder speed", above: 0, to: 5), Num("piston-area", "mm²", "piston area", above: 0, to: 1e6), Num("rod-area", "mm²", "rod area", from: 0, to: 1e6), Num("load", "N", "load", from: 0, to: 1e7),
                Num("supply-pressure", "bar", "supply pressure", above: 0, to: 1000), Num("specific-gravity", "-", "density over that of water", from: 0.6, to: 1.3, def: "0.85"),
            ],
            Outputs = [Out("rod-side-pressure", "bar", "pressure on the rod side"), Out("flow", "L/min", "flow out"), Out("coefficient", "L/min/√kPa", "flow coefficient")],
            Work = (given, answer) =>
            {
                var ring = given["piston-area"] - given["rod-area"];
                Require.That(ring > 0, "the rod area must be smaller than the piston area.");
                var pressure = (given["supply-pressure"] / 10 * given["piston-area"] - given["load"]) / ring;
                Require.That(pressure > 0, "the supply pressure cannot move this load.");
                var flow = given["speed"] * ring * 0.06;
                answer.Set("rod-side-pressure", pressure * 10);
                answer.Set("flow", flow);
                answer.Set("coefficient", ReliefValve.FlowCoefficient(flow, pressure * 1000, given["specific-gravity"]));
            },
        },
        new()
        {
            Id = "valve-power-loss",
            Title = "Power turned into heat over a valve",
            Tells = "How much power a flow loses over a valve: all of it warms the oil.",
            DoesNotTell = "How hot the oil gets: that hangs on the cooler.",
            Formula = "P = p Q",
            Validity = "Always.",
            Source = "Fluid Power with Applications, 6th ed. (Pearson, 2005), examples 8-2 and 8-3, transcription read.",
            Inputs = [Num("pressure-drop", "bar", "pressure drop", from: 0, to: 2000), Num("flow", "L/min", "flow", from: 0, to: 1e5)],
            Outputs = [Out("power", "kW", "power lost")],
            Work = (given, answer) => answer.Set("power", ReliefValve.LostPowerKW(given["pressure-drop"], given["flow"])),
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
