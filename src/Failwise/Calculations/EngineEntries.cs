using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: compression, leak-down and moving masses.</summary>
internal static class EngineEntries
{
    private const string TheoryOfMachines = "Theory of Machines, 14th ed. (Eurasia, 2009), chapter 15, transcription read.";

    private static readonly CalculationInput CrankRadius = Num("crank-radius", "mm", "half the stroke", above: 0, to: 2000);
    private static readonly CalculationInput RodLength = Num("rod-length", "mm", "rod length between centres", above: 0, to: 10_000);
    private static readonly CalculationInput Speed = Num("speed", "rpm", "crankshaft speed", above: 0, to: 30_000);
    private static readonly CalculationInput Mass = Num("mass", "kg", "piston, rings, pin and small end of the rod", above: 0, to: 10_000);

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "leak-down",
            Title = "Leak-down test",
            Tells =
                "The part of the pressure a cylinder loses, and what the place of the hiss points to: rings and bore, a valve, or the " +
                "head gasket.",
            DoesNotTell =
                "How bad it is on another tester: the figure hangs on the orifice. The 25 % is from aircraft practice, do not carry it " +
                "over blindly.",
            Formula = "loss = 100 (feed - reading) / feed; suspect above 25 %",
            Validity =
                "Warm engine, piston at top dead centre of compression; re-test after 3 minutes running. Aircraft orifice 0.040 in " +
                "below 5 in bore, 0.060 in from 5 in.",
            Source =
                "AC 43.13-1B (FAA, 2001), par. 8-14, page 8-15, and as quoted in a FAASTeam maintenance tip, November 2011. " +
                "Places of the hiss: common practice, no source.",
            Inputs =
            [
                Num("feed-pressure", "bar", "regulated feed pressure", above: 0, to: 20, def: "80 psi"),
                Num("reading", "bar", "pressure behind the orifice", from: 0, to: 20),
                Num("bore", "mm", "bore, for the orifice", from: 40, to: 250, optional: true),
                Word(
                    "heard-at", "where the air hisses", "not-listened",
                    "not-listened", "crankcase", "exhaust", "intake", "radiator", "next-cylinder", "nowhere"),
            ],
            Outputs =
            [
                Out("loss", "%", "loss", 2),
                Says("verdict", "by the aircraft rule"),
                Says("points-to", "what the hiss points to"),
                Out("suspect-reading", "bar", "reading below which it is suspect", 2),
                Out("orifice", "mm", "orifice of the aircraft tester", 2),
            ],
            Work = (given, answer) =>
            {
                var loss = LeakDown.LossPercent(given["feed-pressure"], given["reading"]);
                answer.Set("loss", loss);
                answer.Say("verdict", loss > LeakDown.SuspectLossPercent + 1e-9 ? "suspect" : "not suspect");
                if (given.Word("heard-at") != "not-listened")
                    answer.Say("points-to", HissPointsTo(given.Word("heard-at")));
                answer.Set("suspect-reading", given["feed-pressure"] * (1 - LeakDown.SuspectLossPercent / 100));
                if (given.Has("bore"))
                    answer.Set("orifice", LeakDown.OrificeMm(given["bore"]));
            },
        },
        new()
        {
            Id = "compression",
            Title = "Compression test",
            Tells = "Whether the lowest cylinder keeps up with the highest, and what a spoonful of oil changes.",
            DoesNotTell = "Cylinders all worn alike, and a slow starter motor. Absolute figures hang on the gauge and the engine.",
            Formula =
                "lowest allowed = share x highest, and 690 kPa at least; after 15 ml of oil: a rise points to rings, none to valves or " +
                "gasket",
            Validity = "Throttle open, engine warm, same strokes each (four in the example). Default share 70 %; other makers ask 75 %.",
            Source = "Vehicle service data, engine compression test (2006 reprint); 75 % on two further pages.",
            Inputs =
            [
                List("readings", "bar", "highest steady reading of each cylinder in order", from: 0, to: 100),
                Num("share", "%", "share of the highest asked", from: 50, to: 100, def: "70"),
                List("with-oil", "bar", "readings after a shot of oil, in order", from: 0, to: 100, optional: true),
            ],
            Outputs =
            [
                Out("lowest-share", "%", "lowest over highest", 2),
                Out("lowest-allowed", "bar", "lowest allowed"),
                Says("verdict", "state"),
                Says("low-cylinders", "cylinders below"),
                Says("oil-shot", "what the oil changed"),
            ],
            Work = JudgeCompression,
        },
        new()
        {
            Id = "piston-motion",
            Title = "Piston speed and acceleration",
            Tells = "Velocity and acceleration of the piston at a crank angle, mean piston speed, and the angle of greatest velocity.",
            DoesNotTell = "Forces: use pin-load.",
            Formula = "v = w r (sin t + r sin 2t/(2l)); a = w² r (cos t + r cos 2t/l)",
            Validity = "Two-term series: rod of 3 crank radii or more.",
            Source = TheoryOfMachines,
            Inputs =
            [
                CrankRadius,
                RodLength,
                Speed,
                Num("angle", "deg", "crank angle after top dead centre", from: -360, to: 720, def: "0 deg"),
            ],
            Outputs =
            [
                Out("velocity", "m/s", "velocity"),
                Out("acceleration", "m/s²", "acceleration", 4),
                Out("zero-acceleration-angle", "deg", "angle of no acceleration", 4),
                Out("mean-speed", "m/s", "mean piston speed"),
            ],
            Work = (given, answer) =>
            {
                var (r, l, n, angle) = (given["crank-radius"], given["rod-length"], given["speed"], given["angle"]);
                answer.Set("velocity", Reciprocating.PistonVelocity(r, l, n, angle));
                answer.Set("acceleration", Reciprocating.PistonAcceleration(r, l, n, angle));
                answer.Set("zero-acceleration-angle", Reciprocating.ZeroAccelerationDeg(r, l));
                answer.Set("mean-speed", Reciprocating.MeanPistonSpeed(2 * r, n));
            },
        },
        new()
        {
            Id = "inertia-load",
            Title = "Inertia load on rod bolts and cap",
            Tells = "The pull on rod bolts and cap at top dead centre when no gas pushes back. It grows with the square of speed.",
            DoesNotTell = "The gas force, and the pull of the big end of the rod itself.",
            Formula = "F = m r w² (1 + r/l)",
            Validity = "Rod of 3 crank radii or more.",
            Source = TheoryOfMachines,
            Inputs =
            [
                Mass,
                CrankRadius,
                RodLength,
                Speed,
                Num("over-speed", "rpm", "an over-speed to compare with", above: 0, to: 30_000, optional: true),
            ],
            Outputs =
            [
                Out("force", "N", "pull at top dead centre"),
                Out("over-speed-force", "N", "pull at the over-speed"),
                Out("ratio", "-", "times as much", 2),
            ],
            Work = (given, answer) =>
            {
                var force = Reciprocating.TopDeadCentreN(given["mass"], given["crank-radius"], given["rod-length"], given["speed"]);
                answer.Set("force", force);
                if (!given.Has("over-speed"))
                    return;
                var over = Reciprocating.TopDeadCentreN(given["mass"], given["crank-radius"], given["rod-length"], given["over-speed"]);
                answer.Set("over-speed-force", over);
                answer.Set("ratio", over / force);
            },
        },
        new()
        {
            Id = "pin-load",
            Title = "Forces at piston pin, rod and wall",
            Tells =
                "Gas less inertia at the pin, the thrust along the rod and against the wall, and the speed at which the pin load turns " +
                "over.",
            DoesNotTell = "Friction and the pressure below the piston.",
            Formula = "pin = p A - m a (+ m g when upright); rod = pin/cos b; side = pin tan b; sin b = r sin t/l",
            Validity = "Crank angle 0 to 90 deg, power stroke, no friction, rod of 3 crank radii or more.",
            Source =
                "Theory of Machines, 14th ed. (Eurasia, 2009), examples 15.9 and 15.11, transcription read; the second prints 2265 N " +
                "where correct arithmetic gives 2263.5 N.",
            Inputs =
            [
                Num("bore", "mm", "bore", above: 0, to: 2000),
                CrankRadius,
                RodLength,
                Mass,
                Speed,
                Num("angle", "deg", "crank angle after top dead centre", from: 0, to: 90),
                Num("gas-pressure", "MPa", "gas pressure above the crankcase", from: 0, to: 50),
                Word("upright", "cylinder stands above the crank and weight counts", "no", "yes", "no"),
            ],
            Outputs =
            [
                Out("gas-force", "N", "gas force", 4),
                Out("inertia-force", "N", "inertia force", 4),
                Out("pin-load", "N", "net force at the pin", 4),
                Out("rod-thrust", "N", "thrust along the rod", 4),
                Out("side-thrust", "N", "thrust on the wall"), Out("reversal-speed", "rpm", "speed at which the pin load is nil", 4),
            ],
            Work = (given, answer) =>
            {
                var forces = Reciprocating.Forces(
                    given["bore"],
                    given["crank-radius"],
                    given["rod-length"],
                    given["mass"],
                    given["speed"],
                    given["angle"],
                    given["gas-pressure"],
                    given.Yes("upright"));
                answer.Set("gas-force", forces.GasN);
                answer.Set("inertia-force", forces.InertiaN);
                answer.Set("pin-load", forces.PinN);
                answer.Set("rod-thrust", forces.RodN);
                answer.Set("side-thrust", forces.SideN);
                if (forces.ReversalRpm > 0)
                    answer.Set("reversal-speed", forces.ReversalRpm);
            },
        },
        new()
        {
            Id = "rod-set-balance",
            Title = "Mass spread of a set of rods or pistons",
            Tells = "How far the masses of a set lie apart, and which is heaviest.",
            DoesNotTell =
                "Where the mass sits: weigh big and small ends apart. The default limit is one diesel's; no published piston limit was " +
                "found.",
            Formula = "spread = heaviest - lightest",
            Validity = "2 to 24 parts weighed on one scale.",
            Source = "Diesel engine service manual page 9-76 (manualshelf.com vm1012-b): 18 g in a set of four rods.",
            Inputs =
            [
                List("masses", "g", "mass of each part in order", above: 0, to: 1e6),
                Num("limit", "g", "largest difference allowed", above: 0, to: 1e5, def: "18 g"),
            ],
            Outputs =
            [
                Out("spread", "g", "heaviest less lightest"),
                Says("verdict", "state"),
                Out("heaviest", "-", "number of the heaviest", 2),
            ],
            Work = (given, answer) =>
            {
                var masses = given.List("masses");
                var spread = Math.Round(Reciprocating.SetSpreadG(masses), 9);
                answer.Set("spread", spread);
                answer.Say("verdict", spread <= given["limit"] ? "within the limit" : "beyond the limit");
                answer.Set("heaviest", Enumerable.Range(0, masses.Count).MaxBy(i => masses[i]) + 1);
            },
        },
    ];

    // Common practice, no source: where the air comes out is where it leaks.
    private static string HissPointsTo(string place) => place switch
    {
        "crankcase" => "rings, piston or bore",
        "exhaust" => "exhaust valve",
        "intake" => "intake valve",
        "radiator" => "head gasket, head or block cracked to the water",
        "next-cylinder" => "head gasket between the cylinders",
        _ => "the tester's own fittings, or no leak worth hearing",
    };

    private static void JudgeCompression(Given given, Answer answer)
    {
        var readings = given.List("readings");
        var allowed = Compression.LowestAllowedBar(readings.Max(), given["share"]);
        int[] low = [.. Enumerable.Range(0, readings.Count).Where(i => readings[i] < allowed * (1 - 1e-9))];
        answer.Set("lowest-share", Compression.LowestPercent(readings));
        answer.Set("lowest-allowed", allowed);
        answer.Say(
            "verdict",
            low.Length == 0
                ? "within the rule"
                : low.Length == readings.Count
                ? "all low"
                : low.Zip(low.Skip(1)).Any(pair => pair.Second == pair.First + 1)
                ? "low, two neighbours"
                : "low");
        answer.Say("low-cylinders", low.Length == 0 ? "none" : string.Join(", ", low.Select(i => i + 1)));
        if (low.Zip(low.Skip(1)).Any(pair => pair.Second == pair.First + 1))
            answer.Note("Two low neighbours point to the gasket between them, if the cylinders stand in this order.");
        if (!given.Has("with-oil"))
            return;
        var wet = given.List("with-oil");
        Require.That(
            wet.Count == readings.Count,
            $"with-oil has {wet.Count} readings, readings has {readings.Count}: give one for each cylinder.");
        // A tenth is the least change a hand-held gauge shows reliably: judgement, no source.
        answer.Say(
            "oil-shot",
            low.Length == 0
                ? "nothing low to explain"
                : string.Join(
                    "; ",
                    low.Select(
                        i => $"{i + 1}: {(wet[i] > readings[i] * 1.1 ? "rose, rings or bore" : "did not rise, valves or gasket")}")));
    }
}
