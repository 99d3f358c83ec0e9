using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: is an oil film good enough?</summary>
internal static class FilmCheckEntries
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "film-against-roughness",
            Title = "Oil film against roughness",
            Tells = "Whether the peaks of journal and shell touch through the oil film.",
            DoesNotTell = "Dirt: one grain thicker than the film bridges it whatever the ratio.",
            Formula = "lambda = h0 / sqrt(Rq1² + Rq2²)",
            Validity = "Rq, not Ra (Rq is about 1.25 Ra). Customary bands, from memory: below 1 touching, 1 to 3 mixed, above 3 full film.",
            Source = "From memory; no published worked example was found. Film by the finite-bearing table.",
            Inputs =
            [
                Num("least-film", "µm", "least film", from: 0, to: 1000),
                Num("journal-rq", "µm", "roughness Rq of the journal", above: 0, to: 100),
                Num("bearing-rq", "µm", "roughness Rq of the bearing", above: 0, to: 100),
            ],
            Outputs = [Out("lambda", "-", "film over roughness", 2), Says("state", "state of lubrication")],
            Work = (given, answer) =>
            {
                var lambda = JournalBearing.Lambda(given["least-film"], given["journal-rq"], given["bearing-rq"]);
                answer.Set("lambda", lambda);
                answer.Say("state", lambda < 1 ? "touching" : lambda <= 3 ? "mixed" : "full film");
            },
        },
        new()
        {
            Id = "bearing-design-check",
            Title = "Design check of a plain bearing",
            Tells = "Whether film, oil temperature and starting pressure meet a textbook's design criteria.",
            DoesNotTell = "Whether an engine bearing will live: engine bearings are often outside these on purpose.",
            Formula = "h0 at least 0.005 mm + 0.00004 d; oil 121 °C at most; starting pressure 2.07 MPa at most",
            Validity = "Steady industrial bearings.",
            Source = "Shigley's Mechanical Engineering Design (McGraw-Hill), section 12-14, transcription read.",
            Inputs =
            [
                BearingEntries.Diameter,
                BearingEntries.Length,
                BearingEntries.Load,
                Num("least-film", "mm", "least film", from: 0, to: 2),
                Num("oil-temperature", "°C", "oil temperature", from: -40, to: 300),
            ],
            Outputs =
            [
                Out("film-wanted", "mm", "film wanted", 2),
                Out("mean-pressure", "MPa", "load over projected area"),
                Says("verdict", "what fails"),
            ],
            Work = (given, answer) =>
            {
                var (film, pressure) = (
                    JournalBearing.DesignFilmMm(given["diameter"]),
                    JournalBearing.MeanPressureMPa(given["load"], given["diameter"], given["length"]));
                answer.Set("film-wanted", film);
                answer.Set("mean-pressure", pressure);
                var fails = new List<string>();
                if (given["least-film"] < film)
                    fails.Add("film too thin");
                if (given["oil-temperature"] > 121)
                    fails.Add("oil too hot");
                if (pressure > 2.07)
                    fails.Add("starting pressure too high");
                answer.Say("verdict", fails.Count == 0 ? "meets the criteria" : string.Join(", ", fails));
            },
        },
    ];
}
