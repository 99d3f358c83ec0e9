namespace Failwise.Calculations;

/// <summary>Where an input of a step may come from.</summary>
internal enum FeedKind
{
    /// <summary>The person gives it.</summary>
    Given,
    /// <summary>An earlier step gave it.</summary>
    Result,
    /// <summary>The readings of the case give it.</summary>
    Measured,
    /// <summary>A customary value stands in, and is named as such.</summary>
    Assumed,
}

/// <summary>One source of an input.</summary>
/// <param name="Name">The name to give it by, the earlier calculation, the kind of reading, or the value assumed.</param>
/// <param name="Output">With <see cref="FeedKind.Result"/>: which output.</param>
internal sealed record Feed(FeedKind Kind, string Name, string? Output = null);

/// <summary>One calculation of a sheet.</summary>
/// <param name="Calculation">Its id in the catalogue.</param>
/// <param name="StartedBy">Names of which one at least must be given, so that data for another step do not start this one.</param>
/// <param name="Feeds">Sources of each input, the first that has something wins; an input that is not listed is given under its own
/// name.</param>
internal sealed record SheetStep(string Calculation, IReadOnlyList<string> StartedBy, IReadOnlyDictionary<string, IReadOnlyList<Feed>> Feeds)
{
    /// <summary>A calculation that this one stands in for when its formula refuses the figures; null when it is worked in any case.</summary>
    public string? InsteadOf { get; init; }

    /// <summary>The calculation itself.</summary>
    public Calculation Entry => CalculationCatalog.Find(Calculation)!;

    /// <summary>Sources of an input.</summary>
    public IReadOnlyList<Feed> FeedsOf(string input) => Feeds.GetValueOrDefault(input) ?? [new Feed(FeedKind.Given, input)];
}

/// <summary>Calculations that follow from each other, so that a person gives each figure once.</summary>
/// <param name="Id">Name under <c>work-out</c>; a calculation alone is a sheet of its own name.</param>
/// <param name="Title">What it works out.</param>
internal sealed record Sheet(string Id, string Title, IReadOnlyList<SheetStep> Steps)
{
    /// <summary>Every figure that can be given, with the inputs that it feeds.</summary>
    public IReadOnlyList<(string Name, CalculationInput Input)> Givens =>
    [
        .. Steps.SelectMany(s => s.Entry.Inputs, (step, input) => (step, input))
            .SelectMany(x => x.step.FeedsOf(x.input.Name).Where(f => f.Kind == FeedKind.Given).Select(f => (f.Name, x.input))),
    ];
}

/// <summary>The sheets that a case may fill in.</summary>
internal static class SheetCatalog
{
    private static readonly Feed[] HotOil =
    [
        new(FeedKind.Given, "viscosity"), new(FeedKind.Result, "viscosity-at-temperature", "dynamic-viscosity"),
        new(FeedKind.Result, "typical-oil-viscosity", "viscosity"),
    ];

    private static readonly string[] FilmStart = ["diameter", "length", "clearance", "speed", "load"];

    private static readonly (string Input, Feed[] Feeds)[] FilmFeeds =
    [
        ("viscosity", HotOil), ("diameter", [Given("diameter"), new Feed(FeedKind.Measured, "shaft-diameter")]),
        ("clearance", [Given("clearance"), new Feed(FeedKind.Measured, "clearance")]),
    ];

    private static readonly SheetStep[] OilSteps =
    [
        Step("viscosity-at-temperature", ["viscosity-40", "viscosity-100"],
            ("first-viscosity", [Given("viscosity-40")]), ("second-viscosity", [Given("viscosity-100")]), ("first-temperature", []),
            ("second-temperature", []), ("temperature", [Given("oil-temperature")]),
            ("density", [Given("density"), new Feed(FeedKind.Assumed, "0.85 kg/L")])),
        Step("typical-oil-viscosity", ["grade"], ("temperature", [Given("oil-temperature")])),
    ];

    /// <summary>All sheets of several steps.</summary>
    public static IReadOnlyList<Sheet> All { get; } =
    [
        new("bearing-film", "Oil film of a plain bearing, from the oil to the roughness",
        [
            .. OilSteps,
            Step("journal-bearing-film", FilmStart, FilmFeeds),
            Step("short-bearing-film", FilmStart, FilmFeeds) with { InsteadOf = "journal-bearing-film" },
            Step("film-against-roughness", ["journal-rq", "bearing-rq"],
                ("least-film",
                [
                    Given("least-film"), new Feed(FeedKind.Result, "journal-bearing-film", "least-film"),
                    new Feed(FeedKind.Result, "short-bearing-film", "least-film"),
                ])),
        ]),
        new("relief-valve", "Opening pressure of the relief valve, and what is left when it hangs open",
        [
            Step("relief-valve-pressure", ["rate", "wire", "mean-diameter", "active-coils", "preload", "should-be"]),
            Step("stuck-relief-valve", ["stuck-lift", "pump-delivery"]),
        ]),
        new("oil-gallery", "Oil pressure along the gallery with the clearances as measured",
        [
            .. OilSteps,
            Step("gallery-pressure", ["clearances", "land", "pump-delivery", "relief-pressure"],
                ("clearances", [Given("clearances"), new Feed(FeedKind.Measured, "clearances")]),
                ("diameter", [Given("diameter"), new Feed(FeedKind.Measured, "shaft-diameter")]), ("viscosity", HotOil)),
        ]),
    ];

    /// <summary>Finds a sheet, or makes one of a single calculation.</summary>
    /// <param name="id">Name of a sheet or of a calculation.</param>
    /// <returns>The sheet, or null.</returns>
    public static Sheet? Find(string id) =>
        All.FirstOrDefault(s => s.Id == id)
        ?? (CalculationCatalog.Find(id) is { } one ? new Sheet(one.Id, one.Title, [Step(one.Id, [.. one.Inputs.Select(i => i.Name)])]) : null);

    private static Feed Given(string name) => new(FeedKind.Given, name);

    private static SheetStep Step(string calculation, IReadOnlyList<string> startedBy, params (string Input, Feed[] Feeds)[] feeds) =>
        new(calculation, startedBy, feeds.ToDictionary(f => f.Input, f => (IReadOnlyList<Feed>)f.Feeds, StringComparer.Ordinal));
}
