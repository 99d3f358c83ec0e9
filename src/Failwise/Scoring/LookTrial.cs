using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Problems;

namespace Failwise.Scoring;

/// <summary>How many looks brought the determined root to the first place, in three orders of looking.</summary>
/// <param name="Units">Things on the bench that the source says something about.</param>
/// <param name="Planned">Looks when the planner asked for them, misses counted.</param>
/// <param name="Missed">Those of them that no recorded observation answered.</param>
/// <param name="InSourceOrder">Looks in the order of the source.</param>
/// <param name="AtRandom">Mean looks over random orders of what was recorded.</param>
/// <param name="Fewest">Fewest looks that any order of what was recorded needs.</param>
/// <param name="Unguided">Mean looks over random walks through everything that such a machine has, misses counted.</param>
/// <param name="Asked">What the planner asked for, with a sign whether anything was recorded there.</param>
public sealed record LookScore(
    SolvedCase Case, int Units, int Planned, int Missed, int InSourceOrder, double AtRandom, int Fewest, double Unguided, IReadOnlyList<string> Asked)
{
    /// <summary>Looks of the planner that a recorded observation answered.</summary>
    public int Answered => Planned - Missed;
}

/// <summary>
/// Replays solved cases as an inspection: history and symptoms are told at the start, and what was seen comes out look by look.
/// docs/looks.md defines what a look is.
/// </summary>
public static class LookTrial
{
    private const int RandomOrders = 20;
    private const int LongestRun = 60;

    /// <summary>Replays every closed case in which the determined root stands first once everything is known.</summary>
    /// <param name="set">Only cases of this set (tune or held-out); all when null.</param>
    public static IReadOnlyList<LookScore> Run(KnowledgeBase knowledge, string folder, string? set = null)
    {
        ProblemList problems = new();
        SolvedCase[] solved = [.. SolvedCase.ReadFolder(folder, knowledge, problems).Where(c => !c.IsOpen && (set is null || c.Set == set))];
        return OverCases.Run(knowledge, solved, problems, (one, place, teardown) => new Replay(knowledge, one, teardown).Run(seed: place));
    }

    private sealed class Replay
    {
        private readonly KnowledgeBase knowledge;
        private readonly SolvedCase solved;
        private readonly TeardownCase whole;
        private readonly string[] units;
        private readonly Dictionary<(long Known, string? Over), bool> first = [];

        public Replay(KnowledgeBase knowledge, SolvedCase solved, TeardownCase whole)
        {
            this.knowledge = knowledge;
            this.solved = solved;
            this.whole = whole;
            units = [.. whole.Observations.Select(o => Unit(o.Part)).Concat(whole.Measurements.Select(m => Unit(m.Part))).Distinct().Take(62)];
        }

        public LookScore? Run(int seed)
        {
            if (!IsFirst((1L << units.Length) - 1))
            {
                return null;
            }

            (int planned, int missed, List<string> asked) = Planned();
            Random random = new(1000 + seed);
            double atRandom = Enumerable.Range(0, RandomOrders).Average(_ =>
            {
                int[] order = [.. Enumerable.Range(0, units.Length)];
                random.Shuffle(order);
                return Looks(order, 0);
            });
            return new LookScore(solved, units.Length, planned, missed, Looks([.. Enumerable.Range(0, units.Length)], 0), atRandom, Fewest(), Unguided(random), asked);
        }

        /// <summary>Tries every set of what was recorded, the smallest first; with everything known the root stands first.</summary>
        private int Fewest()
        {
            List<long> sets = [0];
            for (int looks = 0; looks < units.Length; looks++)
            {
                if (sets.Any(IsFirst))
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

                return looks + Looks([.. Enumerable.Range(0, units.Length)], known);
            });
        }

        private string Unit(string part) => LookCatalog.FamilyOf(knowledge, part);

        /// <summary>Looks until the root stands first, from what is known already.</summary>
        private int Looks(IReadOnlyList<int> order, long known, string? over = null)
        {
            int looks = 0;
            foreach (int unit in order)
            {
                if (IsFirst(known, over))
                {
                    break;
                }

                looks += (known >> unit & 1) == 0 ? 1 : 0;
                known |= 1L << unit;
            }

            return looks;
        }

        private (int Looks, int Missed, List<string> Asked) Planned()
        {
            long known = 0;
            string? over = null;
            int looks = 0, missed = 0;
            List<string> asked = [], nothingThere = [];
            while (!IsFirst(known, over) && looks < LongestRun)
            {
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

            return (looks + Looks([.. Enumerable.Range(0, units.Length)], known, over), missed, asked);
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

        private bool IsFirst(long known) => IsFirst(known, null);

        private bool IsFirst(long known, string? over)
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
}
