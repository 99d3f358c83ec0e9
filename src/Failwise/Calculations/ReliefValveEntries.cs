using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: relief valves and openings.</summary>
internal static class ReliefValveEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "relief-valve-pressure",
            Title = "Opening pressure of a relief valve",
            Tells = "The pressure at which a valve starts to open and at which it is fully open, from its spring.",
            DoesNotTell = "What dirt under the seat, a scored bore or a hung piston does; a right spring does not clear the valve.",
            Formula = "cracking = k x0 / A; full flow = k (x0 + lift) / A",
            Validity = "Valve at rest, no back pressure, no friction.",
            Source =
                "Fluid Power with Applications, 6th ed. (Pearson, 2005), chapter 8; worked safety valve: Design of Machine Elements " +
                "textbook, example 10.9.",
            Inputs =
            [
                Num("rate", "N/mm", "spring rate, if known", above: 0, to: 1e5, optional: true),
                Num("wire", "mm", "wire diameter, else", above: 0, to: 100, optional: true),
                Num("mean-diameter", "mm", "mean coil diameter", above: 0, to: 1000, optional: true),
                Num("active-coils", "-", "coils that work", above: 0, to: 200, optional: true),
                SpringEntries.Shear,
                Num("preload", "mm", "compression when shut: free length less fitted length", from: 0, to: 500),
                Num("lift", "mm", "lift at full flow", from: 0, to: 500, def: "0 mm"),
                Num("seat", "mm", "diameter the pressure acts on", above: 0, to: 500),
                Num("should-be", "bar", "opening pressure it should have", above: 0, to: 1000, optional: true),
            ],
            Outputs =
            [
                Out("cracking-pressure", "bar", "pressure at which it starts to open"),
                Out("full-flow-pressure", "bar", "pressure at full lift"),
                Out("rate", "N/mm", "spring rate"),
                Out("against-should-be", "%", "cracking pressure against what it should be"),
            ],
            Work = (given, answer) =>
            {
                Require.That(
                    given.Has("rate") || (given.Has("wire") && given.Has("mean-diameter") && given.Has("active-coils")),
                    "give the rate, or wire, mean-diameter and active-coils.");
                var rate = given.Has("rate")
                    ? given["rate"]
                    : CoilSpring.RateNMm(given["wire"], given["mean-diameter"], given["active-coils"], given["shear-modulus"]);
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
            Source =
                "Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-4, transcription read; its rounded constant 38.1 " +
                "gives 252 US gal/min, full units 251.5.",
            Inputs =
            [
                Num("diameter", "mm", "diameter of the opening", above: 0, to: 500),
                Num("pressure-drop", "bar", "pressure difference", from: 0, to: 1000),
                Num("density", "kg/L", "oil density", from: 0.6, to: 1.3, def: "0.85 kg/L"),
                Num("discharge", "-", "discharge coefficient", from: 0.5, to: 1, def: "0.7"),
            ],
            Outputs = [Out("flow", "L/min", "flow")],
            Work = (given, answer) =>
                answer.Set(
                    "flow",
                    ReliefValve.OrificeLMin(
                        Math.PI / 4 * given["diameter"] * given["diameter"], given["pressure-drop"], given["density"], given["discharge"])),
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
            Inputs =
            [
                Num("pump-delivery", "L/min", "pump delivery at this speed", above: 0, to: 10_000),
                Num("seat", "mm", "seat diameter", above: 0, to: 200),
                Num("stuck-lift", "mm", "gap it hangs open by", above: 0, to: 50),
                Num("density", "kg/L", "oil density", from: 0.6, to: 1.3, def: "0.85 kg/L"),
                Num("discharge", "-", "discharge coefficient", from: 0.5, to: 1, def: "0.7"),
            ],
            Outputs = [Out("pressure", "bar", "most pressure left", 2), Out("open-area", "mm²", "open area")],
            Work = (given, answer) =>
            {
                Require.That(
                    given["stuck-lift"] <= given["seat"] / 4,
                    $"above a lift of a quarter of the seat ({given["seat"] / 4:G3} mm) the opening is the seat itself: use the " +
                        $"seat diameter in orifice-flow.");
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
            Inputs =
            [
                Num("flow", "L/min", "flow", above: 0, to: 1e5),
                Num("pressure-drop", "kPa", "pressure drop", above: 0, to: 1e5),
                Num("specific-gravity", "-", "density over that of water", from: 0.6, to: 1.3, def: "0.85"),
            ],
            Outputs = [Out("coefficient", "L/min/√kPa", "flow coefficient")],
            Work = (given, answer) =>
                answer.Set("coefficient", ReliefValve.FlowCoefficient(given["flow"], given["pressure-drop"], given["specific-gravity"])),
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
                Num("speed", "m/s", "cylinder speed", above: 0, to: 5),
                Num("piston-area", "mm²", "piston area", above: 0, to: 1e6),
                Num("rod-area", "mm²", "rod area", from: 0, to: 1e6),
                Num("load", "N", "load", from: 0, to: 1e7),
                Num("supply-pressure", "bar", "supply pressure", above: 0, to: 1000),
                Num("specific-gravity", "-", "density over that of water", from: 0.6, to: 1.3, def: "0.85"),
            ],
            Outputs =
            [
                Out("rod-side-pressure", "bar", "pressure on the rod side"),
                Out("flow", "L/min", "flow out"),
                Out("coefficient", "L/min/√kPa", "flow coefficient"),
            ],
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
}
