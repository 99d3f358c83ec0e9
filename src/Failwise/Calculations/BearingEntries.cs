using static Failwise.Calculations.Entry;

namespace Failwise.Calculations;

/// <summary>Catalogue entries: plain-bearing oil film.</summary>
internal static class BearingEntries
{
    private const string Textbook =
        "Machine Design (Dorling Kindersley India, 2010), chapter 17, transcription read; table from ASLE Transactions vol. 1 (1958) as " +
        "reprinted in textbooks.";

    private const double HeaviestEccentricity = 0.95;

    internal static readonly CalculationInput Diameter = Num("diameter", "mm", "journal diameter", above: 0, to: 2000);
    internal static readonly CalculationInput Length = Num("length", "mm", "bearing length", above: 0, to: 2000);
    internal static readonly CalculationInput Clearance = Num("clearance", "mm", "diametral clearance: bore less journal", above: 0, to: 5);
    internal static readonly CalculationInput Speed = Num("speed", "rpm", "journal speed", above: 0, to: 50_000);
    internal static readonly CalculationInput Load = Num("load", "N", "load on the bearing", above: 0, to: 1e8);
    internal static readonly CalculationInput Viscosity = Num(
        "viscosity", "mPa·s", "dynamic viscosity at film temperature", above: 0, to: 1e4);

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new()
        {
            Id = "journal-bearing-film",
            Title = "Oil film of a loaded plain bearing",
            Tells = "Least oil film, friction, oil flow and warming of a round bearing under a steady load, by the finite-bearing table.",
            DoesNotTell =
                "The film of an engine bearing at the firing moment: its load swings, so take this as a comparison of oils, clearances " +
                "and speeds.",
            Formula =
                "S = (r/c)² mu N / P, then film, friction and flow from the table, straight-line in S; dT = 8.3 P f(r/c) / (Q/(rcNl))",
            Validity =
                "Full round bearing, length 0.25 diameters or more, eccentricity 0.1 to 0.9 (0.97 at a length of 1, 1/2 or 1/4 " +
                "diameter), one viscosity, no feed pressure.",
            Source = Textbook,
            Inputs = [Diameter, Length, Clearance, Speed, Load, Viscosity],
            Outputs =
            [
                Out("sommerfeld", "-", "Sommerfeld number"),
                Out("eccentricity", "-", "eccentricity ratio"),
                Out("least-film", "mm", "least film", 2),
                Out("friction-coefficient", "-", "friction coefficient"),
                Out("oil-flow", "L/min", "oil drawn into the film"),
                Out("side-flow", "L/min", "oil leaving at the sides"),
                Out("temperature-rise", "K", "warming of the oil", 2),
                Out("power-loss", "kW", "power lost"),
                Out("peak-pressure", "MPa", "peak film pressure"),
                Out("design-film", "mm", "film a designer asks for", 2),
            ],
            Work = (given, answer) =>
            {
                var (d, l, c, n, w) = (given["diameter"], given["length"], given["clearance"], given["speed"], given["load"]);
                var film = BearingTable.AtSommerfeld(l / d, JournalBearing.Sommerfeld(given["viscosity"], n, d, l, c, w));
                var pressure = JournalBearing.MeanPressureMPa(w, d, l);
                var friction = film.FrictionVariable * c / d;
                var flow = JournalBearing.FilmFlowLMin(film.FlowVariable, d, l, c, n);
                answer.Set("sommerfeld", film.Sommerfeld);
                answer.Set("eccentricity", film.Eccentricity);
                answer.Set("least-film", film.FilmRatio * c / 2);
                answer.Set("friction-coefficient", friction);
                answer.Set("oil-flow", flow);
                answer.Set("side-flow", flow * film.SideFlowRatio);
                answer.Set("temperature-rise", JournalBearing.TemperatureRiseK(film, pressure));
                answer.Set("power-loss", friction * w * Math.PI * d * n / 60 / 1e6);
                answer.Set("peak-pressure", pressure / film.PressureRatio);
                answer.Set("design-film", JournalBearing.DesignFilmMm(d));
            },
        },
        new()
        {
            Id = "journal-bearing-table",
            Title = "Finite-bearing table at one eccentricity",
            Tells = "The dimensionless figures of a full bearing at a length ratio and an eccentricity.",
            DoesNotTell = "Anything of your bearing until its Sommerfeld number is known.",
            Formula = "table; between length ratios the cubic weighting of the four columns",
            Validity =
                "Length ratio 0.25 or more (write 1000000 for an endless bearing); eccentricity 0.1 to 0.9, at a ratio of 1, 1/2 or 1/4 " +
                "to 0.97.",
            Source = Textbook,
            Inputs =
            [
                Num("length-ratio", "-", "length over diameter", from: 0.25, to: 1e6),
                Num("eccentricity", "-", "eccentricity ratio", from: 0.1, to: 0.97),
            ],
            Outputs =
            [
                Out("sommerfeld", "-", "Sommerfeld number"),
                Out("film-ratio", "-", "least film over radial clearance"),
                Out("position-angle", "deg", "place of the least film"),
                Out("friction-variable", "-", "friction variable"),
                Out("flow-variable", "-", "flow variable"),
                Out("side-flow-ratio", "-", "side flow over flow"),
                Out("pressure-ratio", "-", "mean over peak pressure"),
            ],
            Work = (given, answer) =>
            {
                var film = BearingTable.AtEccentricity(given["length-ratio"], given["eccentricity"]);
                answer.Set("sommerfeld", film.Sommerfeld);
                answer.Set("film-ratio", film.FilmRatio);
                answer.Set("position-angle", film.PositionAngleDeg);
                answer.Set("friction-variable", film.FrictionVariable);
                answer.Set("flow-variable", film.FlowVariable);
                answer.Set("side-flow-ratio", film.SideFlowRatio);
                answer.Set("pressure-ratio", film.PressureRatio);
            },
        },
        new()
        {
            Id = "bearing-oil-needed",
            Title = "Oil thickness a bearing needs for a film",
            Tells = "The viscosity at film temperature that keeps a wanted least film, and the oil flow that goes with it.",
            DoesNotTell = "Which grade to buy: look up what a grade has at your oil temperature.",
            Formula = "e = 1 - h0/c; S from the table; mu = S P (c/r)² / N",
            Validity = "As the finite-bearing table.",
            Source = Textbook,
            Inputs = [Diameter, Length, Clearance, Speed, Load, Num("least-film", "mm", "least film wanted", above: 0, to: 2)],
            Outputs =
            [
                Out("viscosity", "mPa·s", "viscosity needed"),
                Out("sommerfeld", "-", "Sommerfeld number"),
                Out("oil-flow", "L/min", "oil drawn into the film"),
            ],
            Work = (given, answer) =>
            {
                var (d, l, c, n) = (given["diameter"], given["length"], given["clearance"], given["speed"]);
                Require.That(
                    given["least-film"] < c / 2,
                    $"a film of {given["least-film"]:G4} mm does not fit into a radial clearance of {c / 2:G4} mm.");
                var film = BearingTable.AtEccentricity(l / d, 1 - given["least-film"] / (c / 2));
                answer.Set("viscosity", JournalBearing.ViscosityNeeded(film.Sommerfeld, n, d, l, c, given["load"]));
                answer.Set("sommerfeld", film.Sommerfeld);
                answer.Set("oil-flow", JournalBearing.FilmFlowLMin(film.FlowVariable, d, l, c, n));
            },
        },
        new()
        {
            Id = "bearing-clearance-for-film",
            Title = "Clearance at which a bearing runs at a film ratio",
            Tells = "The clearance that gives a wanted ratio of least film to radial clearance, with film and flow.",
            DoesNotTell = "The clearance to machine to: that is the maker's.",
            Formula = "S from the table at e = 1 - ratio; c = r sqrt(mu N / (S P))",
            Validity = "As the finite-bearing table.",
            Source = Textbook,
            Inputs =
            [
                Diameter,
                Length,
                Speed,
                Load,
                Viscosity,
                Num("film-ratio", "-", "least film over radial clearance", from: 0.03, to: 0.9),
            ],
            Outputs =
            [
                Out("clearance", "mm", "diametral clearance"),
                Out("least-film", "mm", "least film"),
                Out("oil-flow", "L/min", "oil drawn into the film"),
            ],
            Work = (given, answer) =>
            {
                var (d, l, n) = (given["diameter"], given["length"], given["speed"]);
                var film = BearingTable.AtEccentricity(l / d, 1 - given["film-ratio"]);
                var clearance = JournalBearing.ClearanceFor(film.Sommerfeld, given["viscosity"], n, d, l, given["load"]);
                answer.Set("clearance", clearance);
                answer.Set("least-film", clearance / 2 * given["film-ratio"]);
                answer.Set("oil-flow", JournalBearing.FilmFlowLMin(film.FlowVariable, d, l, clearance, n));
            },
        },
        new()
        {
            Id = "petroff-friction",
            Title = "Friction of a lightly loaded bearing",
            Tells = "Drag torque, power and friction coefficient of a bearing whose journal runs nearly centred.",
            DoesNotTell = "Friction under load, which is higher, and nothing about film thickness.",
            Formula = "T = 4 pi² mu N r³ l / c; power = 2 pi N T; f = T / (W r)",
            Validity = "Light load, eccentricity below about 0.2.",
            Source = "Introduction to Fluid Mechanics, 5th ed. (Wiley India, 2001), example 8.2, transcription read.",
            Inputs =
            [
                Diameter,
                Length,
                Clearance,
                Speed,
                Viscosity,
                Num("load", "N", "load, for the friction coefficient", above: 0, to: 1e8, optional: true),
            ],
            Outputs =
            [
                Out("torque", "N·m", "drag torque"),
                Out("power", "kW", "power lost"),
                Out("friction-force", "N", "drag at the journal surface"),
                Out("friction-coefficient", "-", "friction coefficient"),
            ],
            Work = (given, answer) =>
            {
                var torque = JournalBearing.PetroffTorque(
                    given["viscosity"], given["speed"], given["diameter"], given["length"], given["clearance"]);
                var force = torque / (given["diameter"] / 2000);
                answer.Set("torque", torque);
                answer.Set("power", 2 * Math.PI * given["speed"] / 60 * torque / 1000);
                answer.Set("friction-force", force);
                if (given.Has("load"))
                    answer.Set("friction-coefficient", force / given["load"]);
            },
        },
        new()
        {
            Id = "short-bearing",
            Title = "Short bearing (Ocvirk)",
            Tells = "The film of a bearing shorter than half its diameter, where the finite table ends.",
            DoesNotTell =
                "It promises too much film at heavy load: 7 % at eccentricity 0.6, 15 % at 0.8, 28 % at 0.9 in S at a quarter-length " +
                "bearing.",
            Formula = "S (l/d)² = (1-e²)² / (pi e sqrt(pi² (1-e²) + 16 e²))",
            Validity = "Length to half the diameter, best to a quarter; eccentricity 0.01 to 0.95, best to 0.8.",
            Source =
                "Short-bearing theory, NACA TN 2808 and TN 3491 (abstract of the second read); compared with ASLE Transactions vol. 1 " +
                "(1958).",
            Inputs =
            [
                Num("length-ratio", "-", "length over diameter", above: 0, to: 0.5),
                Num("eccentricity", "-", "eccentricity ratio, to get S", from: 0.01, to: 0.95, optional: true),
                Num("sommerfeld", "-", "Sommerfeld number, to get the eccentricity", above: 0, optional: true),
            ],
            Outputs =
            [
                Out("sommerfeld", "-", "Sommerfeld number", 4),
                Out("eccentricity", "-", "eccentricity ratio"),
                Out("film-ratio", "-", "least film over radial clearance"),
            ],
            Work = (given, answer) =>
            {
                Require.That(
                    given.Has("eccentricity") != given.Has("sommerfeld"),
                    "give either eccentricity or sommerfeld, not both and not none.");
                var e = given.Has("eccentricity")
                    ? given["eccentricity"]
                    : JournalBearing.ShortBearingEccentricity(given["length-ratio"], given["sommerfeld"]);
                answer.Set("sommerfeld", JournalBearing.ShortBearingSommerfeld(given["length-ratio"], e));
                answer.Set("eccentricity", e);
                answer.Set("film-ratio", 1 - e);
                if (e > 0.8)
                    answer.Note("Above eccentricity 0.8 the short-bearing form promises 15 % too much and more.");
            },
        },
        new()
        {
            Id = "short-bearing-film",
            Title = "Oil film of a short plain bearing",
            Tells = "The film that an engine bearing has at most, where its load is too heavy for the finite-bearing table.",
            DoesNotTell =
                "The film itself: the form promises too much, and more the heavier the load. It shows contact when it says so; it does " +
                "not prove a film.",
            Formula = "S = (r/c)² mu N / P; e from S (l/d)² = (1-e²)² / (pi e sqrt(pi² (1-e²) + 16 e²)); h0 = c (1 - e)",
            Validity =
                "Full round bearing, length to half the diameter, steady load, one viscosity. Beyond eccentricity 0.95 the film at 0.95 " +
                "is given as the most it can be.",
            Source =
                "Short-bearing theory, NACA TN 2808 and TN 3491 (abstract of the second read); compared with ASLE Transactions vol. 1 " +
                "(1958).",
            Inputs = [Diameter, Length, Clearance, Speed, Load, Viscosity],
            Outputs =
            [
                Out("sommerfeld", "-", "Sommerfeld number"),
                Out("eccentricity", "-", "eccentricity ratio"),
                Out("least-film", "mm", "least film, at most", 2),
            ],
            Work = (given, answer) =>
            {
                var (d, l, c) = (given["diameter"], given["length"], given["clearance"]);
                var s = JournalBearing.Sommerfeld(given["viscosity"], given["speed"], d, l, c, given["load"]);
                var tooHeavy = s < JournalBearing.ShortBearingSommerfeld(l / d, HeaviestEccentricity);
                var e = tooHeavy ? HeaviestEccentricity : JournalBearing.ShortBearingEccentricity(l / d, s);
                answer.Set("sommerfeld", s);
                answer.Set("eccentricity", e);
                answer.Set("least-film", c / 2 * (1 - e));
                if (tooHeavy)
                    answer.Note("The load is heavier than the form covers: the film is thinner than this. Expect contact.");
                else if (e > 0.8)
                    answer.Note("Above eccentricity 0.8 the short-bearing form promises 15 % too much and more.");
            },
        },
    ];
}
