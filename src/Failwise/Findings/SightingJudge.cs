using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Findings;

/// <summary>
/// Position logic: judges one sighting condition over everything that was looked at on its part.
/// "Not looked at" leaves the answer unknown; only a look can contradict.
/// </summary>
internal sealed class SightingJudge
{
    private readonly KnowledgeBase knowledge;
    private readonly TeardownCase teardown;
    private readonly SightingCondition condition;
    private readonly IReadOnlyDictionary<string, bool> stated;
    private readonly List<Observation> hits = [];
    private readonly List<Observation> maybe = [];
    private readonly List<Observation> looks = [];

    public SightingJudge(
        KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Observation> onPart, SightingCondition condition,
        IReadOnlyDictionary<string, bool> stated)
    {
        this.knowledge = knowledge;
        this.teardown = teardown;
        this.condition = condition;
        this.stated = stated;
        foreach (Observation o in onPart)
        {
            Truth here = PlaceMatches(o);
            if (here == Truth.Contradicted)
            {
                continue;
            }

            bool isHit = condition.See.Count == 0 ? o.Look == Look.Sound : o.Look == Look.Seen && Matches(o) && Enough(o.Extent);
            if (isHit && here == Truth.Holds)
            {
                hits.Add(o);
            }
            else if (isHit)
            {
                maybe.Add(o);
            }

            looks.Add(o);
        }
    }

    public Answer Judge()
    {
        if (hits.Count == 0)
        {
            return maybe.Count > 0 ? Unknown($"where on the {PartName} is not said")
                : looks.Exists(Denies) ? Against(looks.Where(Denies)) : Unknown($"{PartName} not looked at{(condition.On.Count > 0 ? " (" + string.Join(", ", condition.On) + ")" : "")}");
        }

        // A part is not sound because its other half is.
        if (condition.See.Count == 0 && condition.Spread.IsAnywhere && looks.Exists(l => Denies(l) && l.Extent != Extent.Trace && hits.TrueForAll(h => Overlap(h, l))))
        {
            return Against(looks.Where(Denies));
        }

        foreach (Answer part in new[] { JudgeCount(), JudgeWhere(), JudgeLie() })
        {
            if (part.Truth != Truth.Holds)
            {
                return part;
            }
        }

        return Yes();
    }

    private static bool Overlap(Observation a, Observation b) =>
        a.Spread != At.Numbers || b.Spread != At.Numbers || a.Places.Intersect(b.Places).Any();

    private string PartName => knowledge.Parts[condition.Part].Name;

    private bool Denies(Observation o) => condition.See.Count == 0
        ? o.Look == Look.Seen && !knowledge.Patterns[o.Pattern!].Sound
        : o.Look switch
        {
            Look.NotFound => condition.See.Any(see => knowledge.PatternIs(o.Pattern!, see)),
            _ => true,
        };

    private bool Matches(Observation o) =>
        condition.See.Any(see => see == o.Pattern || (knowledge.Patterns.ContainsKey(o.Pattern!) && knowledge.PatternIs(o.Pattern!, see)));

    private bool Enough(Extent extent) =>
        condition.AtLeast == Extent.Unstated || (extent == Extent.Unstated ? Extent.Moderate : extent) >= condition.AtLeast;

    /// <summary>Does the mark lie at the place asked for? Unknown when it does not say.</summary>
    private Truth PlaceMatches(Observation o)
    {
        Truth all = Truth.Holds;
        foreach (string wanted in condition.On)
        {
            Truth one = PlaceMatches(o.On, wanted);
            if (one == Truth.Contradicted)
            {
                return Truth.Contradicted;
            }

            all = one == Truth.Unknown ? Truth.Unknown : all;
        }

        return all;
    }

    private Truth PlaceMatches(IReadOnlyList<string> on, string wanted)
    {
        if (on.Contains(wanted) || on.Contains("all-round"))
        {
            return Truth.Holds;
        }

        if (wanted is "front-edge" or "rear-edge" && on.Contains("both-edges"))
        {
            return Truth.Holds;
        }

        if (wanted == "one-edge" && on.Any(w => w is "front-edge" or "rear-edge"))
        {
            return Truth.Holds;
        }

        string axis = knowledge.AxisOf[wanted];
        return on.Any(w => knowledge.AxisOf[w] == axis) ? Truth.Contradicted : Truth.Unknown;
    }

    private int[] HitNumbers => [.. hits.Where(h => h.Spread == At.Numbers).SelectMany(h => h.Places).Distinct().Order()];

    private int[] LookedNumbers => [.. looks.Where(l => l.Spread == At.Numbers).SelectMany(l => l.Places).Distinct().Order()];

    private bool HitSpread(params At[] spreads) => hits.Exists(h => Array.IndexOf(spreads, h.Spread) >= 0);

    private bool OthersSound => looks.Exists(l => l.Look == Look.Sound && l.Spread is At.Some or At.Most or At.Unsaid or At.One && l.Look == Look.Sound);

    private Answer JudgeCount()
    {
        if (condition.Spread.Count == CountOver.Anywhere)
        {
            return Yes();
        }

        int hit = HitNumbers.Length, looked = LookedNumbers.Length;
        bool numbersTell = hit > 0 && looked >= 2;
        return condition.Spread.Count switch
        {
            CountOver.One => HitSpread(At.All, At.Most, At.Some, At.Neighbours) || hit > 1 ? Against(hits)
                : (hit == 1 && (looked >= 2 || OthersSound)) || HitSpread(At.One, At.LastOnFeed, At.FirstOnFeed) ? Yes()
                : OthersSound && HitSpread(At.Unsaid) && hit == 0 ? Yes()
                : Unknown($"how many {PartName}s are like this; the others were not looked at"),
            CountOver.All => HitSpread(At.All) && !OthersSound ? Yes()
                : OthersSound || HitSpread(At.One, At.Some, At.Most, At.Neighbours) || (numbersTell && hit < looked) ? Against(looks)
                : numbersTell ? Yes() : Unknown($"the other {PartName}s were not looked at"),
            CountOver.Some => HitSpread(At.One, At.Some, At.Most, At.Neighbours) || (hit > 0 && (OthersSound || looked > hit)) ? Yes()
                : HitSpread(At.All) || (numbersTell && hit == looked) ? Against(hits) : Unknown($"the other {PartName}s were not looked at"),
            CountOver.Most => HitSpread(At.Most, At.All) || (numbersTell && 2 * hit > looked) ? Yes()
                : HitSpread(At.One) || (numbersTell && 2 * hit <= looked) ? Against(looks) : Unknown($"how many {PartName}s are like this"),
            CountOver.AllButOne => looked >= 3 && looked - hit == 1 ? Yes()
                : HitSpread(At.All, At.One) || looked >= 3 ? Against(looks) : Unknown($"how many {PartName}s are like this"),
            _ => JudgeAtLeast(hit, looked),
        };
    }

    private Answer JudgeAtLeast(int hit, int looked)
    {
        int least = condition.Spread.Least;
        bool wordsTell = HitSpread(At.All, At.Most, At.Neighbours, At.Some) && least <= 2;
        return hit >= least || wordsTell ? Yes()
            : HitSpread(At.One) || (Total is { } total && looked >= total) || (OthersSound && hit > 0) ? Against(hits)
            : Unknown($"how many {PartName}s are like this");
    }

    private int? Total => knowledge.Parts[condition.Part].Count switch
    {
        "mains" => teardown.Machine.Mains,
        "cylinders" or "rods" => teardown.Machine.Cylinders,
        _ => null,
    };

    /// <summary>Positions in the order in which the oil reaches them.</summary>
    private List<int> FeedOrder(int[] looked)
    {
        int total = Math.Max(Total ?? 0, looked.Length == 0 ? 0 : looked[^1]);
        IEnumerable<int> natural = Enumerable.Range(1, total);
        if (teardown.Machine.Feed is not { } feed)
        {
            return [.. natural];
        }

        // A rod bearing is fed through the crankshaft from the main bearing beside it.
        return [.. natural.OrderBy(n => feed.IndexOf(n) is >= 0 and var i ? i : n)];
    }

    private Answer JudgeWhere()
    {
        WhereAlong where = condition.Spread.Where;
        if (where == WhereAlong.Anywhere)
        {
            return Yes();
        }

        if (where == WhereAlong.SamePlaceAgain)
        {
            return stated.TryGetValue("same-place-failed-before", out bool again)
                ? again ? Yes() : Against(hits) : Unknown("whether the same place failed before");
        }

        if ((where == WhereAlong.Neighbours && HitSpread(At.Neighbours))
            || (where is WhereAlong.LastOnFeed or WhereAlong.WorseAlongFeed && HitSpread(At.LastOnFeed))
            || (where == WhereAlong.FirstOnFeed && HitSpread(At.FirstOnFeed)))
        {
            return Yes();
        }

        int[] hit = HitNumbers, looked = LookedNumbers;
        if (hit.Length == 0)
        {
            return HitSpread(At.All) ? Against(hits) : Unknown($"which {PartName} it is");
        }

        List<int> order = FeedOrder(looked);
        int first = order[0], last = order[^1];
        int drive = teardown.Machine.DriveEndFirst ? 1 : order.Max(), free = teardown.Machine.DriveEndFirst ? order.Max() : 1;
        bool holds = where switch
        {
            WhereAlong.FirstOnFeed => hit.Contains(first) && !hit.Contains(last),
            WhereAlong.LastOnFeed => hit.Contains(last) && !hit.Contains(first),
            WhereAlong.DriveEnd => hit.Contains(drive) && !hit.Contains(free),
            WhereAlong.FreeEnd => hit.Contains(free) && !hit.Contains(drive),
            WhereAlong.Middle => order.Count >= 3 && !hit.Contains(first) && !hit.Contains(last) && !hit.Contains(drive) && !hit.Contains(free),
            WhereAlong.Ends => order.Count >= 3 && hit.Contains(drive) && hit.Contains(free) && hit.Length < order.Count,
            WhereAlong.Neighbours => hit.Length == 2 && order.Count > 2 && hit[1] == hit[0] + 1,
            _ => IsWorseAlong(order, looked),
        };
        if (where is WhereAlong.WorseAlongFeed && looked.Length < 2)
        {
            return Unknown($"the other {PartName}s were not looked at");
        }

        return holds ? Yes() : Against(hits);
    }

    private bool IsWorseAlong(List<int> order, int[] looked)
    {
        int[] severity = [.. order.Where(looked.Contains).Select(n => hits.Where(h => h.Places.Contains(n)).Select(h => h.Extent == Extent.Unstated ? (int)Extent.Moderate : (int)h.Extent).DefaultIfEmpty(0).Max())];
        int agree = 0, differ = 0;
        for (int i = 0; i < severity.Length; i++)
        {
            for (int j = i + 1; j < severity.Length; j++)
            {
                agree += severity[j] > severity[i] ? 1 : 0;
                differ += severity[j] < severity[i] ? 1 : 0;
            }
        }

        return agree > 2 * differ && severity.Length >= 2 && severity[^1] == severity.Max() && severity[0] < severity[^1];
    }

    private Answer JudgeLie()
    {
        if (condition.Spread.Lie == LieOn.Anywhere)
        {
            return Yes();
        }

        HashSet<string> upper = Edges("upper"), lower = Edges("lower"), any = Edges(null);
        bool halfKnown = hits.Exists(h => h.On.Contains("upper") || h.On.Contains("lower"));
        bool diagonal = (upper.SetEquals(["front-edge"]) && lower.SetEquals(["rear-edge"])) || (upper.SetEquals(["rear-edge"]) && lower.SetEquals(["front-edge"]));
        bool both = any.Contains("both-edges") || (any.Contains("front-edge") && any.Contains("rear-edge") && !diagonal);
        switch (condition.Spread.Lie)
        {
            case LieOn.Diagonal:
                return diagonal ? Yes() : any.Count == 0 || !halfKnown ? Unknown("which edge of which half") : Against(hits);
            case LieOn.BothEdges:
                return both ? Yes() : any.Count == 0 ? Unknown("which edge") : Against(hits);
            case LieOn.OneEdge:
                return any.Count == 0 ? Unknown("which edge") : !both && !diagonal ? Yes() : Against(hits);
            case LieOn.OneHalf:
            {
                string[] halves = [.. new[] { "upper", "lower" }.Where(h => hits.Exists(o => o.On.Contains(h)))];
                if (halves.Length != 1)
                {
                    return halves.Length == 0 ? Unknown("which half") : Against(hits);
                }

                string other = halves[0] == "upper" ? "lower" : "upper";
                return looks.Exists(l => l.On.Contains(other)) ? Yes() : Unknown($"the {other} half of the {PartName} was not looked at");
            }

            default:
                return hits.Exists(h => h.On.Contains("upper")) && hits.Exists(h => h.On.Contains("lower")) ? Yes()
                    : halfKnown && looks.Exists(l => l.Look == Look.Sound && l.On.Any(w => w is "upper" or "lower")) ? Against(looks) : Unknown("which half");
        }
    }

    private HashSet<string> Edges(string? half) =>
    [
        .. hits.Where(h => half is null || h.On.Contains(half)).SelectMany(h => h.On)
            .Where(w => w is "front-edge" or "rear-edge" or "both-edges" or "one-edge"),
    ];

    private Answer Yes() => new(Truth.Holds, Reasons(hits), [], hits.Count == 0 ? 1 : hits.Max(h => h.Sure));

    private Answer Against(IEnumerable<Observation> because) => new(Truth.Contradicted, Reasons(because), [], looks.Count == 0 ? 1 : looks.Max(l => l.Sure));

    private static Answer Unknown(string missing) => new(Truth.Unknown, [], [missing], 1000);

    private static IReadOnlyList<Reason> Reasons(IEnumerable<Observation> observations) =>
        [.. observations.Select(o => o.Number).Distinct().Order().Select(n => new Reason("observation", n.ToString()))];
}

internal static class ListSearch
{
    public static int IndexOf(this IReadOnlyList<int> list, int value)
    {
        for (int i = 0; i < list.Count; i++)
        {
            if (list[i] == value)
            {
                return i;
            }
        }

        return -1;
    }
}
