using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Scoring;

/// <summary>Replays one solved case as an inspection, in several orders of looking.</summary>
internal sealed class LookReplay
{
    private const int RandomOrders = 20;
    private const int LongestRun = 60;
    private readonly KnowledgeBase knowledge;
    private readonly SolvedCase solved;
    private readonly TeardownCase whole;
    private readonly string[] units;
    private readonly Dictionary<(long Known, string? Over), bool> first = [];

    public LookReplay(KnowledgeBase knowledge, SolvedCase solved, TeardownCase whole)
    {
        this.knowledge = knowledge;
        this.solved = solved;
        this.whole = whole;
        units = [.. whole.Observations.Select(o => Unit(o.Part)).Concat(whole.Measurements.Select(m => Unit(m.Part))).Distinct().Take(62)];
    }

    /// <summary>Null when the determined root does not stand first once everything is known.</summary>
    public LookScore? Run(int seed)
    {
        if (!IsFirst((1L << units.Length) - 1))
        {
            return null;
        }

        Random random = new(1000 + seed);
        int[][] orders = [.. Enumerable.Range(0, RandomOrders).Select(_ => Shuffled(random))];
        (int looks, int missed, int stayingLooks, int stayingMissed, List<string> asked) = Planned();
        return new LookScore(
            solved, units.Length, Count((known, over) => IsFirst(known, over), orders, looks, missed), Count(Stays, orders, stayingLooks, stayingMissed), Unguided(random), asked);
    }

    private LookCounts Count(Func<long, string?, bool> found, int[][] orders, int planned, int missed) => new(
        planned, missed, Looks(found, SourceOrder, 0), orders.Average(o => Looks(found, o, 0)), Fewest(found));

    private int[] SourceOrder => [.. Enumerable.Range(0, units.Length)];

    private int[] Shuffled(Random random)
    {
        int[] order = SourceOrder;
        random.Shuffle(order);
        return order;
    }

    /// <summary>Tries every set of what was recorded, the smallest first; with everything known the root stands first.</summary>
    private int Fewest(Func<long, string?, bool> found)
    {
        List<long> sets = [0];
        for (int looks = 0; looks < units.Length; looks++)
        {
            if (sets.Any(s => found(s, null)))
            {
                return looks;
            }

            // A set grows by what comes after its last thing only, so that each is met once.
            sets = [.. sets.SelectMany(s => Enumerable.Range(64 - System.Numerics.BitOperations.LeadingZeroCount((ulong)s), units.Length).Where(u => u < units.Length).Select(u => s | 1L << u))];
        }

        return units.Length;
    }

    private double Unguided(Random random)
    {
        PartPresence presence = new(knowledge, Known(0));
        string[] all = [.. knowledge.Parts.Values.Where(p => (p.Access is not null || p.Machines.Count == 0) && p.Id != "part" && presence.Of(p.Id) >= PartPresence.Hardly).Select(p => Unit(p.Id)).Distinct().Order(StringComparer.Ordinal)];
        return Enumerable.Range(0, RandomOrders).Average(_ =>
        {
            random.Shuffle(all);
            long known = 0;
            int looks = 0;
            foreach (string part in all)
            {
                if (IsFirst(known))
                {
                    break;
                }

                looks++;
                known |= Shown([part]);
            }

            return looks + Looks((at, over) => IsFirst(at, over), SourceOrder, known);
        });
    }

    private string Unit(string part) => LookCatalog.FamilyOf(knowledge, part);

    /// <summary>Looks until the root is found, from what is known already.</summary>
    private static int Looks(Func<long, string?, bool> found, IReadOnlyList<int> order, long known, string? over = null)
    {
        int looks = 0;
        foreach (int unit in order)
        {
            if (found(known, over))
            {
                break;
            }

            looks += (known >> unit & 1) == 0 ? 1 : 0;
            known |= 1L << unit;
        }

        return looks;
    }

    /// <summary>The planner asks until the root stands first to stay; where it first stood first is noted on the way.</summary>
    private (int Looks, int Missed, int StayingLooks, int StayingMissed, List<string> Asked) Planned()
    {
        long known = 0;
        string? over = null;
        int looks = 0, missed = 0;
        (int Looks, int Missed)? first = null;
        List<string> asked = [], nothingThere = [];
        while (looks < LongestRun)
        {
            first ??= IsFirst(known, over) ? (looks, missed) : null;
            if (first is not null && Stays(known, over))
            {
                break;
            }

            TeardownCase now = Known(known, over) with { NotLookedAt = [.. whole.NotLookedAt, .. nothingThere.Select(p => new NotLookedAt(p, "not recorded", default))] };
            CheckPlan plan = CheckPlanner.Plan(knowledge, now, OpenRanking.Of(knowledge, now, Find(now)).Plain(), new PlanOptions(1, OnlyLooks: true, AllOpen: true));
            if (plan.Checks.Count == 0)
            {
                break;
            }

            looks++;
            PlannedCheck check = plan.Checks[0];
            bool glance = check.Kind == CheckKind.Gap;
            over = glance ? check.Id[4..] : over;
            long shown = Shown(check.Parts) & ~known;
            bool met = glance ? Known(known, over).Observations.Count > now.Observations.Count : shown != 0;
            asked.Add((met ? "+" : "-") + check.Id);
            missed += met ? 0 : 1;
            known |= shown;
            nothingThere.AddRange(check.Parts.Select(Unit).Distinct().Where(p => !nothingThere.Contains(p)));
        }

        int staying = looks + Looks(Stays, SourceOrder, known, over);
        first ??= (looks + Looks((at, glance) => IsFirst(at, glance), SourceOrder, known, over), missed);
        return (first.Value.Looks, first.Value.Missed, staying, missed, asked);
    }

    /// <summary>What a look at these parts brings out: everything recorded about them, about their places, and about what they are kinds of.</summary>
    private long Shown(IReadOnlyList<string> parts)
    {
        string[] families = [.. parts.Select(Unit).Distinct()];
        long shown = 0;
        foreach (string part in whole.Observations.Select(o => o.Part).Concat(whole.Measurements.Select(m => m.Part)))
        {
            int unit = Array.IndexOf(units, Unit(part));
            bool met = part != "part" && families.Any(f => knowledge.PartIs(part, f) || parts.Any(p => knowledge.PartIs(p, part)));
            shown |= met && unit >= 0 ? 1L << unit : 0;
        }

        return shown;
    }

    /// <summary>The root stands first, and keeps its place while the rest is told in the order of the source.</summary>
    private bool Stays(long known, string? over)
    {
        if (!IsFirst(known, over))
        {
            return false;
        }

        foreach (int unit in SourceOrder)
        {
            known |= 1L << unit;
            if (!IsFirst(known, over))
            {
                return false;
            }
        }

        return true;
    }

    private bool IsFirst(long known, string? over = null)
    {
        if (!first.TryGetValue((known, over), out bool answer))
        {
            TeardownCase now = Known(known, over);
            string? top = CauseRanker.RankWithStates(knowledge, now, Find(now)).Select(r => r.Id).FirstOrDefault(id => knowledge.Causes[id].IsRoot);
            first[(known, over)] = answer = top is not null && solved.Roots.Contains(top);
        }

        return answer;
    }

    private FindingSet Find(TeardownCase now) => FindingEngine.Chain(knowledge, now, MeasurementAssessor.Assess(knowledge, now));

    /// <summary>The case as far as it is known.</summary>
    /// <param name="over">The glance that was made over everything: it brings out its own marks and nothing finer.</param>
    private TeardownCase Known(long known, string? over = null)
    {
        IntakeQuestion? glance = over is null ? null : knowledge.Questions[over];
        bool Has(string part) => Array.IndexOf(units, Unit(part)) is >= 0 and var unit && (known >> unit & 1) == 1;
        bool AtAGlance(Observation o) => glance is not null && o.Look == Look.Seen && glance.Shows.Any(p => knowledge.PatternIs(o.Pattern!, p));
        return whole with
        {
            Observations = [.. whole.Observations.Where(o => Has(o.Part) || AtAGlance(o))],
            Measurements = [.. whole.Measurements.Where(m => Has(m.Part))],
            Notes = glance is null ? whole.Notes : [.. whole.Notes, glance.Asks],
        };
    }
}
