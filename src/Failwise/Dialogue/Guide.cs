using System.Globalization;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Sheets;

namespace Failwise.Dialogue;

/// <summary>What this machine has, what its parts may show, and what has been looked at.</summary>
internal sealed class Guide
{
    private readonly InspectionSheet sheet;
    private readonly PartMarks marks;
    private readonly Machine machine;

    // The parts on which rules speak of a place.
    private readonly Lazy<Dictionary<string, string[]>> speakers;

    public Guide(KnowledgeBase knowledge, TeardownCase teardown)
    {
        Knowledge = knowledge;
        machine = teardown.Machine;
        sheet = SheetPlanner.Plan(knowledge, teardown, []);
        marks = new PartMarks(knowledge, machine);
        speakers = new(() => knowledge.Findings.Values.SelectMany(f => Condition.Atoms(f.When).OfType<SightingCondition>()).SelectMany(c => c.On, (c, on) => (On: on, c.Part))
            .GroupBy(x => x.On, x => x.Part, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Distinct().ToArray(), StringComparer.Ordinal));
    }

    public KnowledgeBase Knowledge { get; }

    public IReadOnlyList<SheetPart> Parts => sheet.Parts;

    public string Status(Talk talk)
    {
        int seen = Parts.Count(p => IsTouched(talk.Case, p.Part.Id));
        return string.Create(CultureInfo.InvariantCulture, $"{talk.Case.Observations.Count} observation{(talk.Case.Observations.Count == 1 ? "" : "s")}; {seen} of {Parts.Count} parts written about; {talk.Saves} saved in this sitting");
    }

    /// <summary>How many of the part the machine has; null when that is not known or there is no telling them apart.</summary>
    public int? CountOf(Part part) => part.Count switch
    {
        "mains" => machine.Mains,
        "cylinders" or "rods" => machine.Cylinders,
        "one" => 1,
        _ => null,
    };

    /// <summary>Marks that the part may show, likeliest first; normal ones last.</summary>
    public IReadOnlyList<Pattern> MarksOf(Part part) => [.. marks.Of(part.Id).OrderBy(p => p.Sound)];

    /// <summary>
    /// Places on the part that are worth asking for, those with a letter first: of the kinds of place that some rule speaks of on it, without
    /// what rules speak of on other parts only, such as the back of a shell. Any place can be typed.
    /// </summary>
    public IReadOnlyList<string> PlacesOf(Part part)
    {
        IEnumerable<string> all = part.Places.Select(axis => Knowledge.Axes.FirstOrDefault(a => a.Id == axis)?.Words ?? []).Where(words => words.Any(w => Speaks(w) == true)).SelectMany(w => w);
        return [.. all.Where(w => Speaks(w) != false).OrderBy(w => Knowledge.Codes.Any(c => c.Kind == "place" && c.Id == w) ? 0 : 1)];

        bool? Speaks(string word) => speakers.Value.TryGetValue(word, out string[]? parts) ? parts.Any(p => Knowledge.PartIs(part.Id, p) || Knowledge.PartIs(p, part.Id)) : null;
    }

    public bool IsTouched(TeardownCase teardown, string part) =>
        teardown.Observations.Any(o => Knowledge.PartIs(o.Part, part)) || teardown.NotLookedAt.Any(n => Knowledge.PartIs(n.Part, part));

    /// <summary>Parts nobody has written about, what cleaning would destroy first.</summary>
    public IEnumerable<SheetPart> Untouched(TeardownCase teardown) =>
        Parts.Where(p => !p.IfFitted && !IsTouched(teardown, p.Part.Id)).OrderBy(p => p.Marks.Take(3).Any(m => m.BeforeCleaning) ? 0 : 1);

    /// <summary>The lowest number of the part that nothing is written about; null when all are or the count is not known.</summary>
    public int? NextNumber(TeardownCase teardown, Part part)
    {
        if (CountOf(part) is not { } count || count < 2)
        {
            return null;
        }

        Observation[] own = [.. teardown.Observations.Where(o => o.Part == part.Id)];
        return own.Any(o => o.Spread == At.All) ? null
            : Enumerable.Range(1, count).Where(n => !own.Any(o => o.Places.Contains(n))).Select(n => (int?)n).FirstOrDefault();
    }

    /// <summary>What the case says of the part, one line each.</summary>
    public IReadOnlyList<string> Said(TeardownCase teardown, Part part) =>
    [
        .. teardown.Observations.Where(o => o.Part == part.Id).Select(Say),
        .. teardown.NotLookedAt.Where(n => n.Part == part.Id).Select(_ => "not looked at"),
    ];

    private string Say(Observation o)
    {
        string where = o.Spread switch
        {
            At.Unsaid => "",
            At.Numbers => string.Join(", ", o.Places.Select(p => p.ToString(CultureInfo.InvariantCulture))) + ": ",
            _ => o.Spread.ToString().ToLowerInvariant() + ": ",
        };
        string what = o.Look switch
        {
            Look.Sound => "sound",
            Look.NotFound => "no " + Knowledge.Patterns[o.Pattern!].Name,
            _ => Knowledge.Patterns[o.Pattern!].Name,
        };
        return where + string.Join(", ", [.. o.On.Select(p => p.Replace('-', ' ')), what])
            + (o.Extent == Extent.Unstated || o.Look != Look.Seen ? "" : ", " + o.Extent.ToString().ToLowerInvariant());
    }
}
