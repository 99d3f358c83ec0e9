using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: fuel, water and thickness of used oil.</summary>
internal static class OilConditionEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "fuel-dilution",
            Title = "Fuel in the oil from lost viscosity",
            Tells = "A band for the fuel in the oil when fuel is the only reason the oil got thinner.",
            DoesNotTell =
                "One sure figure: three blending rules differ, soot and oxidation hide fuel, a sheared multigrade looks like fuel. Only " +
                "a flash-point or gas test proves it.",
            Formula = "x = (g(new) - g(used)) / (g(new) - g(fuel)), g = double log, log and cube root",
            Validity = "All three viscosities at one temperature; fuel 0.5 mm²/s or more. Log and cube-root rules from memory.",
            Source =
                "Refutas form (calculator.academy); compared with the Visgage fuel dilution chart; action levels: labcheck.com.au (4 " +
                "%), lubricant maker's handbook 2004 (5 %).",
            Inputs =
            [
                Num("new-viscosity", "cSt", "viscosity of the new oil", above: 0, to: 1e5),
                Num("used-viscosity", "cSt", "viscosity of the used oil", above: 0, to: 1e5),
                Num("fuel-viscosity", "cSt", "viscosity of the fuel", from: 0.5, to: 100, def: "3 cSt"),
            ],
            Outputs =
            [
                Out("lowest", "%", "lowest estimate", 2),
                Out("highest", "%", "highest estimate", 2),
                Out("double-log", "%", "estimate of the double-log rule", 2),
                Says("verdict", "against the 4 % action level"),
            ],
            Work = (given, answer) =>
            {
                var (low, high, doubleLog) = FuelDilution.Band(given["new-viscosity"], given["used-viscosity"], given["fuel-viscosity"]);
                answer.Set("lowest", low);
                answer.Set("highest", high);
                answer.Set("double-log", doubleLog);
                answer.Say(
                    "verdict",
                    low > 4 ? "above the action level" : high < 4 ? "below the action level" : "may be above the action level");
            },
        },
        new()
        {
            Id = "oil-with-fuel",
            Title = "What fuel does to the oil's thickness",
            Tells = "How thick an oil is left with a part of fuel in it, as a band.",
            DoesNotTell = "What fuel does to the additives, nor whether the fuel will boil off on a long run.",
            Formula = "g(mixed) = (1 - x) g(oil) + x g(fuel), g = double log, log and cube root",
            Validity = "Fuel to 50 %; log and cube-root rules from memory.",
            Source =
                "Refutas form (calculator.academy); rule of one laboratory (labcheck.com.au): 5 % fuel turns SAE 30 into about SAE 20.",
            Inputs =
            [
                Num("new-viscosity", "cSt", "viscosity of the oil", above: 0, to: 1e5),
                Num("fuel-viscosity", "cSt", "viscosity of the fuel at the same temperature", from: 0.5, to: 100),
                Num("fuel", "%", "fuel in the oil", from: 0, to: 50),
            ],
            Outputs =
            [
                Out("lowest", "cSt", "thinnest estimate"),
                Out("highest", "cSt", "thickest estimate"),
                Out("blending-number", "-", "blending number of the oil", 5),
            ],
            Work = (given, answer) =>
            {
                var (low, high) = FuelDilution.Diluted(given["new-viscosity"], given["fuel-viscosity"], given["fuel"]);
                answer.Set("lowest", low);
                answer.Set("highest", high);
                answer.Set("blending-number", FuelDilution.BlendingNumber(given["new-viscosity"]));
            },
        },
        new()
        {
            Id = "blending-number",
            Title = "Viscosity blending number",
            Tells = "The figure that oils bring into a blend in proportion to their mass.",
            DoesNotTell = "Whether two oils may be mixed: additives can clash.",
            Formula = "VBN = 14.534 ln ln (nu + 0.8) + 10.975",
            Validity = "Above 0.21 mm²/s.",
            Source = "Refutas form as printed on calculator.academy; its example prints 12.492 where its own formula gives 12.490.",
            Inputs = [Num("viscosity", "cSt", "viscosity", above: 0.21, to: 1e6)],
            Outputs = [Out("blending-number", "-", "blending number", 5)],
            Work = (given, answer) => answer.Set("blending-number", FuelDilution.BlendingNumber(given["viscosity"])),
        },
        new()
        {
            Id = "oil-condition",
            Title = "Used oil against warning levels",
            Tells = "Which of viscosity change, water, fuel and glycol lie above a lubricant maker's warning levels.",
            DoesNotTell = "Why: thinning may be fuel or shear, thickening soot, oxidation or a wrong top-up.",
            Formula = "change = 100 (used - new)/new; warn above 25 % at 40 °C, 15 % at 100 °C, water 0.1 %, fuel 5 %, any glycol",
            Validity = "Vehicle engines; always against the same new oil.",
            Source = "Lubricant maker's handbook (2004), reprinted in a fleet guide, Appendix B, page 53.",
            Inputs =
            [
                Num("new-viscosity", "cSt", "viscosity of the new oil", above: 0, to: 1e5, optional: true),
                Num("used-viscosity", "cSt", "viscosity of the used oil", above: 0, to: 1e5, optional: true),
                Word("measured-at", "temperature of both", "100", "40", "100"),
                Num("water", "%", "water in the oil", from: 0, to: 100, optional: true),
                Num("fuel", "%", "fuel in the oil", from: 0, to: 100, optional: true),
                Word("glycol", "glycol found", "not-tested", "yes", "no", "not-tested"),
            ],
            Outputs =
            [
                Out("viscosity-change", "%", "change of viscosity"),
                Out("viscosity-limit", "%", "warning level for it", 2),
                Out("water-limit", "%", "warning level for water", 1),
                Out("fuel-limit", "%", "warning level for fuel", 1),
                Says("verdict", "above the warning level"),
            ],
            Work = (given, answer) => JudgeOil(given, answer),
        },
    ];

    private static void JudgeOil(Given given, Answer answer)
    {
        var limit = given.Word("measured-at") == "40" ? 25 : 15;
        var above = new List<string>();
        Require.That(
            given.Has("water") || given.Has("fuel") || given.Word("glycol") != "not-tested" || (
                given.Has("new-viscosity") && given.Has("used-viscosity")),
            "give new-viscosity with used-viscosity, water, fuel or glycol.");
        answer.Set("viscosity-limit", limit);
        answer.Set("water-limit", 0.1);
        answer.Set("fuel-limit", 5);
        if (given.Has("new-viscosity") && given.Has("used-viscosity"))
        {
            var change = FuelDilution.ViscosityChangePercent(given["new-viscosity"], given["used-viscosity"]);
            answer.Set("viscosity-change", change);
            if (Math.Abs(change) > limit)
                above.Add(change < 0 ? "thinned" : "thickened");
        }
        if (given.Has("water") && given["water"] > 0.1)
            above.Add("water");
        if (given.Has("fuel") && given["fuel"] > 5)
            above.Add("fuel");
        if (given.Word("glycol") == "yes")
            above.Add("glycol");
        answer.Say("verdict", above.Count == 0 ? "none" : string.Join(", ", above));
    }
}
