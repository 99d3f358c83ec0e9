using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: oil thickness and grades.</summary>
internal static class OilEntries
{
    private static readonly string[] EngineNames =
        [.. OilGrades.Engine.Select(grade => grade.Name.Replace(",", "", StringComparison.Ordinal))];
    private static readonly string[] GearNames = [.. OilGrades.Gear.Select(grade => grade.Name)];
    private static readonly string[] IndustrialNames = [.. OilGrades.Industrial.Select(grade => grade.Name)];

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "viscosity-at-temperature",
            Title = "Oil thickness at another temperature",
            Tells = "The viscosity at running temperature from the two figures on the data sheet.",
            DoesNotTell = "Thickening by soot or thinning by fuel in used oil, and the shear of a multigrade in the film.",
            Formula = "log log (nu + 0.7) = A - B log T",
            Validity = "2 mm²/s and above, -60 to 200 °C, oil liquid.",
            Source = "ASTM D341 form, read in a worked spreadsheet (scribd 361017004) that uses 273 in place of 273.15.",
            Inputs =
            [
                Num("first-viscosity", "cSt", "viscosity at the first temperature", from: 2, to: 1e6),
                Num("first-temperature", "°C", "first temperature", from: -60, to: 200, def: "40 °C"),
                Num("second-viscosity", "cSt", "viscosity at the second temperature", from: 2, to: 1e6),
                Num("second-temperature", "°C", "second temperature", from: -60, to: 200, def: "100 °C"),
                Num("temperature", "°C", "temperature wanted", from: -60, to: 200),
                Num("density", "kg/L", "density at that temperature", from: 0.6, to: 1.3, optional: true),
            ],
            Outputs =
            [
                Out("viscosity", "cSt", "viscosity"),
                Out("dynamic-viscosity", "mPa·s", "dynamic viscosity"),
                Out("constant-a", "-", "constant A", 5),
                Out("constant-b", "-", "constant B", 5),
            ],
            Work = (given, answer) =>
            {
                var (nu1, t1, nu2, t2) = (
                    given["first-viscosity"], given["first-temperature"], given["second-viscosity"], given["second-temperature"]);
                var (a, b) = OilViscosity.WaltherConstants(nu1, t1, nu2, t2);
                var viscosity = OilViscosity.AtTemperature(nu1, t1, nu2, t2, given["temperature"]);
                answer.Set("viscosity", viscosity);
                if (given.Has("density"))
                    answer.Set("dynamic-viscosity", OilViscosity.DynamicMPas(viscosity, given["density"]));
                answer.Set("constant-a", a);
                answer.Set("constant-b", b);
            },
        },
        new()
        {
            Id = "viscosity-index",
            Title = "Viscosity index",
            Tells =
                "How little an oil thins when hot: the higher, the flatter. A drop against the new oil means sheared thickener or a " +
                "wrong oil.",
            DoesNotTell = "How thick the oil is, nor how good.",
            Formula = "100 (L - U)/(L - H) to 100; above it (10^N - 1)/0.00715 + 100 with N = log(H/U)/log Y",
            Validity =
                "2 mm²/s and above at 100 °C. Below 70 mm²/s the reference values come from the equation form of the table (from " +
                "memory), within one unit of the table.",
            Source = "ASTM D2270 (1993, reapproved 1998), sections 5 and 6; same method as ISO 2909.",
            Inputs =
            [
                Num("viscosity-40", "cSt", "viscosity at 40 °C", above: 2, to: 1e6),
                Num("viscosity-100", "cSt", "viscosity at 100 °C", from: 2, to: 2000),
                Num("reference-l", "cSt", "reference L, if read from the standard's table", above: 0, optional: true),
                Num("reference-h", "cSt", "reference H, if read from the standard's table", above: 0, optional: true),
            ],
            Outputs =
            [
                Out("viscosity-index", "-", "viscosity index"),
                Out("reference-l", "cSt", "reference L", 4),
                Out("reference-h", "cSt", "reference H", 4),
            ],
            Work = (given, answer) =>
            {
                var (l, h) = OilViscosity.ReferenceViscosities(given["viscosity-100"]);
                (l, h) = (given.Has("reference-l") ? given["reference-l"] : l, given.Has("reference-h") ? given["reference-h"] : h);
                answer.Set("viscosity-index", OilViscosity.IndexFromReference(given["viscosity-40"], given["viscosity-100"], l, h));
                answer.Set("reference-l", l);
                answer.Set("reference-h", h);
            },
        },
        new()
        {
            Id = "typical-oil-viscosity",
            Title = "Typical thickness of a straight engine oil",
            Tells = "About how thick a straight SAE oil is at a temperature, when its data sheet is missing.",
            DoesNotTell = "Your oil's figure: today's oils and multigrades differ, the line is that of an older generation.",
            Formula = "mu = mu0 exp(b / (T + 95)), microreyn and °F",
            Validity = "Straight SAE 10 to 60, 0 to 150 °C.",
            Source = "Shigley's Mechanical Engineering Design (McGraw-Hill), Fig. 12-13 caption, transcription read.",
            Inputs =
            [
                Word("grade", "SAE grade", null, "10", "20", "30", "40", "50", "60"),
                Num("temperature", "°C", "oil temperature", from: 0, to: 150, def: "100 °C"),
            ],
            Outputs =
            [
                Out("viscosity", "mPa·s", "dynamic viscosity"),
                Out("constant-mu0", "microreyn", "constant mu0"),
                Out("constant-b", "-", "constant b in °F", 5),
            ],
            Work = (given, answer) =>
            {
                var grade = int.Parse(given.Word("grade"));
                var (mu0, b) = OilViscosity.TypicalConstants(grade);
                answer.Set("viscosity", OilViscosity.TypicalMPas(grade, given["temperature"]));
                answer.Set("constant-mu0", mu0);
                answer.Set("constant-b", b);
            },
        },
        new()
        {
            Id = "engine-oil-grade",
            Title = "SAE engine-oil grade",
            Tells = "The limits of an SAE J300 grade, or which grade a hot viscosity fits.",
            DoesNotTell = "Whether a used oil is fit: compare it with its own new figure. Cold limits need a laboratory.",
            Formula = "table; the upper viscosity limit reads less than",
            Validity =
                "Fresh oil, January 2015 figures. Rows 8 and 20W from memory. Older tables differ: SAE 20 began at 5.6, light SAE 40 " +
                "had 2.9 at high shear.",
            Source = "SAE J300, table 1 (January 2015 figures; the 2021 edition lists the same grades), reprint read at raso.name.",
            Inputs =
            [
                new("grade", "grade to look up", InputKind.Word, "", 0, false, 0, null, true, EngineNames),
                Num("viscosity-100", "cSt", "viscosity at 100 °C", above: 0, to: 1000, optional: true),
            ],
            Outputs =
            [
                Says("grades", "grades it fits"),
                Out("lowest", "cSt", "lowest viscosity at 100 °C", 4),
                Out("below", "cSt", "viscosity at 100 °C must be below", 4),
                Out("high-shear", "mPa·s", "lowest viscosity at 150 °C and high shear", 2),
                Out("cranking", "mPa·s", "highest cranking viscosity", 4),
                Out("cranking-temperature", "°C", "at", 2),
                Out("pumping", "mPa·s", "highest pumping viscosity", 4),
                Out("pumping-temperature", "°C", "at", 2),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("grade") || given.Has("viscosity-100"), "give a grade or a viscosity-100.");
                if (given.Has("viscosity-100"))
                    answer.Say("grades", Listed(OilGrades.EngineGrades(given["viscosity-100"])));
                if (given.Has("grade"))
                    ShowEngine(answer, OilGrades.Engine[Array.IndexOf(EngineNames, given.Word("grade"))]);
            },
        },
        new()
        {
            Id = "gear-oil-grade",
            Title = "SAE gear-oil grade",
            Tells = "The limits of an SAE J306 grade, or which grade a hot viscosity fits.",
            DoesNotTell =
                "Whether the additives suit the gear or the synchronisers: grade says thickness only. SAE 90 gear oil is about as thick " +
                "as SAE 50 engine oil.",
            Formula = "table; the upper limit reads less than",
            Validity = "Fresh oil, February 2019 figures. Row 75 from memory.",
            Source = "SAE J306 (February 2019), table 1, reprint read at pmlubrication.com.au.",
            Inputs =
            [
                new("grade", "grade to look up", InputKind.Word, "", 0, false, 0, null, true, GearNames),
                Num("viscosity-100", "cSt", "viscosity at 100 °C", above: 0, to: 1000, optional: true),
            ],
            Outputs =
            [
                Says("grades", "grades it fits"),
                Out("lowest", "cSt", "lowest viscosity at 100 °C", 4),
                Out("below", "cSt", "viscosity at 100 °C must be below", 4),
                Out("cold-temperature", "°C", "highest temperature for 150 000 mPa·s", 2),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("grade") || given.Has("viscosity-100"), "give a grade or a viscosity-100.");
                if (given.Has("viscosity-100"))
                    answer.Say("grades", Listed(OilGrades.GearGrades(given["viscosity-100"])));
                if (!given.Has("grade"))
                    return;
                var grade = OilGrades.Gear[Array.IndexOf(GearNames, given.Word("grade"))];
                answer.Set("lowest", grade.LowestCSt);
                if (double.IsFinite(grade.HighestCSt))
                    answer.Set("below", grade.HighestCSt);
                if (grade.PumpingC != 0)
                    answer.Set("cold-temperature", grade.PumpingC);
            },
        },
        new()
        {
            Id = "industrial-oil-grade",
            Title = "ISO viscosity grade",
            Tells = "The limits of an ISO VG grade, or which grade a viscosity at 40 °C fits.",
            DoesNotTell = "How it thins when hot: that needs the viscosity index.",
            Formula = "midpoint plus and minus 10 %",
            Validity = "Fresh oil, VG 2 to VG 1500.",
            Source = "ISO 3448 (1992), table 1, reprint read at fusito-japan.com.",
            Inputs =
            [
                new("grade", "grade to look up", InputKind.Word, "", 0, false, 0, null, true, IndustrialNames),
                Num("viscosity-40", "cSt", "viscosity at 40 °C", above: 0, to: 1e5, optional: true),
            ],
            Outputs =
            [
                Says("grades", "grade it fits"),
                Out("middle", "cSt", "middle", 4),
                Out("lowest", "cSt", "lowest", 4),
                Out("highest", "cSt", "highest", 4),
            ],
            Work = (given, answer) =>
            {
                Require.That(given.Has("grade") || given.Has("viscosity-40"), "give a grade or a viscosity-40.");
                if (given.Has("viscosity-40"))
                    answer.Say("grades", Listed(OilGrades.IndustrialGrades(given["viscosity-40"])));
                if (!given.Has("grade"))
                    return;
                var grade = OilGrades.Industrial[Array.IndexOf(IndustrialNames, given.Word("grade"))];
                answer.Set("middle", (grade.LowestCSt + grade.HighestCSt) / 2);
                answer.Set("lowest", grade.LowestCSt);
                answer.Set("highest", grade.HighestCSt);
            },
        },
    ];

    private static string Listed(IReadOnlyList<string> grades) => grades.Count == 0 ? "none" : string.Join("; ", grades);

    private static void ShowEngine(Answer answer, OilGrade grade)
    {
        answer.Set("lowest", grade.LowestCSt);
        if (double.IsFinite(grade.HighestCSt))
            answer.Set("below", grade.HighestCSt);
        if (grade.HighShearMPas > 0)
            answer.Set("high-shear", grade.HighShearMPas);
        if (grade.CrankingMPas == 0)
            return;
        answer.Set("cranking", grade.CrankingMPas);
        answer.Set("cranking-temperature", grade.CrankingC);
        answer.Set("pumping", 60_000);
        answer.Set("pumping-temperature", grade.PumpingC);
    }
}
