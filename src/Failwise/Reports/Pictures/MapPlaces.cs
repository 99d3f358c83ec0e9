using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Reports.Pictures;

/// <summary>What was seen of one part, sorted by number and half.</summary>
internal sealed class MapPlaces
{
    private readonly KnowledgeBase knowledge;
    private readonly Observation[] about;

    public MapPlaces(Diagnosis diagnosis, string part)
    {
        knowledge = diagnosis.Knowledge;
        about = [.. diagnosis.Case.Observations.Where(o => o.Part == part)];
        Numbers = Count(diagnosis.Case.Machine, knowledge.Parts[part]) is { } total
            ? [.. Enumerable.Range(1, total)]
            : [.. about.SelectMany(o => o.Places).Distinct().Order()];
    }

    /// <summary>The numbers that the map shows: all that the machine has, or those written down when nobody knows how many it has.</summary>
    public IReadOnlyList<int> Numbers { get; }

    /// <summary>Everything seen of the part, with its numbers.</summary>
    public IEnumerable<MapMark> All => about.Select(o => Mark(o, numbers: true));

    /// <summary>Damage of which only "some" or "one" was written down.</summary>
    public IEnumerable<MapMark> Unplaced => about.Where(o => !IsPlaced(o)).Select(o => Mark(o, numbers: false) with { Says = $"{Word(o)}{Mark(o, false).Says}" }).DistinctBy(m => m.Says);

    /// <summary>How many of a part this machine has, when it is one that the machine counts.</summary>
    private static int? Count(Machine machine, Part part) => part.Count switch
    {
        "mains" => machine.Mains,
        "cylinders" or "rods" => machine.Cylinders,
        _ => null,
    };

    /// <summary>What was seen on one number, on one half; with no half, what was seen with no half said.</summary>
    public IReadOnlyList<MapMark> At(int number, string? half) =>
        [.. about.Where(o => IsPlaced(o) && (o.Spread != Cases.At.Numbers || o.Places.Contains(number)) && IsOn(o, half)).Select(o => Mark(o, numbers: false))];

    private static bool IsOn(Observation o, string? half) => half is null ? !o.On.Contains("upper") && !o.On.Contains("lower") : o.On.Contains(half);

    private static bool IsPlaced(Observation o) => o.Spread is Cases.At.Numbers or Cases.At.All or Cases.At.Unsaid;

    private static string Word(Observation o) => o.Spread switch
    {
        Cases.At.FirstOnFeed => "first on the feed: ",
        Cases.At.LastOnFeed => "last on the feed: ",
        _ => o.Spread.ToString().ToLowerInvariant() + ": ",
    };

    private MapMark Mark(Observation o, bool numbers)
    {
        Severity severity = SeveritySign.Of(knowledge, o);
        string[] on = [.. o.On.Where(w => w is not ("upper" or "lower"))];
        string says = SeveritySign.Say(knowledge, o) + (severity is Severity.Sound ? "" : ", " + SeveritySign.Word(severity)) + (on.Length > 0 ? " (" + string.Join(", ", on.Select(w => w.Replace('-', ' '))) + ")" : "");
        return new MapMark(severity, numbers && o.Places.Count > 0 ? $"No. {string.Join(", ", o.Places)} {says}" : says, o.On);
    }
}
