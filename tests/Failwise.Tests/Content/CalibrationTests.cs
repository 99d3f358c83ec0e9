using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Xunit.Abstractions;

namespace Failwise.Tests.Content;

/// <summary>
/// Synthetic engines drawn from the rule base itself: roots by how common they are, then states, then signs. Which signs are looked at is
/// drawn without regard to what is there, so a ranking that does its sums right is right as often as it says.
/// </summary>
public sealed class CalibrationTests(ITestOutputHelper output)
{
    private const int Cases = 4000;
    // The aim is the diagonal; over 8,000 cases no tenth was further from it than 0.08 (docs/how-it-decides.md).
    private const double Tolerance = 0.1;
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    // An engine that has everything: how likely a build is to have a feature is no part of this question.
    private static readonly Machine Engine = new(null, ["engine"], 4, 5, null, false, null, [.. Knowledge.Features.Keys], []);

    [Fact]
    public void What_is_called_seventy_per_cent_is_so_in_seven_of_ten_synthetic_cases()
    {
        Sampler sampler = new();
        double[] sum = new double[10];
        int[] count = new int[10], right = new int[10];
        object gate = new();

        Parallel.For(0, Cases, seed =>
        {
            (TeardownCase teardown, HashSet<string> present) = sampler.Draw(seed);
            foreach ((string id, double p) in CauseRanker.RankWithStates(Knowledge, teardown, new FindingSet([], [], new Dictionary<string, bool>())))
            {
                if (Knowledge.Causes[id].IsRoot)
                {
                    lock (gate)
                    {
                        int bin = Math.Min(9, (int)(10 * p));
                        sum[bin] += p;
                        count[bin]++;
                        right[bin] += present.Contains(id) ? 1 : 0;
                    }
                }
            }
        });

        for (int i = 0; i < 10; i++)
        {
            output.WriteLine($"said {i / 10.0:0.0}-{(i + 1) / 10.0:0.0}: {count[i],6} predictions, mean {sum[i] / Math.Max(1, count[i]):0.000}, true {(double)right[i] / Math.Max(1, count[i]):0.000}");
        }

        int[] filled = [.. Enumerable.Range(0, 10).Where(i => count[i] >= 50)];
        filled.Should().HaveCountGreaterThanOrEqualTo(6, "a curve needs points");
        filled.Should().OnlyContain(i => Math.Abs((sum[i] - right[i]) / count[i]) <= Math.Max(Tolerance, ChanceError(right[i], count[i])));
    }

    /// <summary>Two and a half standard errors: with a hundred predictions in a bin, chance alone moves its share by that much.</summary>
    private static double ChanceError(double right, double count) => 2.5 * Math.Sqrt(right / count * (1 - right / count) / count);

    private sealed class Sampler
    {
        private readonly Cause[] causes = [.. Knowledge.Causes.Values.Where(c => CauseNetwork.Applies(c, Engine)).OrderBy(c => c.Id, StringComparer.Ordinal)];
        private readonly List<Cause> order = [];
        private readonly Dictionary<string, List<(string From, double Strength)>> into = new(StringComparer.Ordinal);

        public Sampler()
        {
            foreach (Cause cause in causes)
            {
                foreach (IGrouping<string, CauseLink> link in cause.LeadsTo.GroupBy(l => l.Id, StringComparer.Ordinal))
                {
                    if (!into.TryGetValue(link.Key, out List<(string, double)>? list))
                    {
                        into[link.Key] = list = [];
                    }

                    list.Add((cause.Id, link.Max(l => l.Strength)));
                }
            }

            HashSet<string> done = new(StringComparer.Ordinal);
            foreach (Cause cause in causes)
            {
                Place(cause, done);
            }
        }

        public (TeardownCase Case, HashSet<string> Present) Draw(int seed)
        {
            Random random = new(seed);
            HashSet<string> present = new(StringComparer.Ordinal);
            foreach (Cause cause in order)
            {
                double silent = (into.GetValueOrDefault(cause.Id) ?? []).Where(l => present.Contains(l.From)).Aggregate(1 - BuildFit.Commonness(Knowledge, cause), (s, l) => s * (1 - l.Strength));
                if (random.NextDouble() < 1 - silent)
                {
                    present.Add(cause.Id);
                }
            }

            List<Observation> observations = [];
            foreach (Sign sign in Looked(random))
            {
                // The report may slip once in sixty either way, as the ranking takes a sure observer to do.
                bool there = random.NextDouble() < ChanceOf(sign, present) ? random.NextDouble() >= 1.0 / 60 : random.NextDouble() < 1.0 / 60;
                observations.Add(new Observation(observations.Count + 1, sign.Part, there ? Look.Seen : Look.NotFound, sign.Pattern, At.Unsaid, [], [], Extent.Unstated, 60, null, null, null, null, default));
            }

            return (new TeardownCase("drawn", Engine, [], new Dictionary<string, double>(), [], observations, [], [], [], [], "drawn.yaml"), present);
        }

        /// <summary>The signs of sixty causes drawn at random: a mechanic looks at whole assemblies, not at single marks.</summary>
        private IEnumerable<Sign> Looked(Random random) => Enumerable.Range(0, 60)
            .SelectMany(_ => causes[random.Next(causes.Length)].Leaves.Where(l => l.Target == LinkTarget.Sign && l.Sign!.Part != "part"))
            .Select(l => l.Sign!).DistinctBy(s => $"{s.Part}/{s.Pattern}").Take(300);

        private static double ChanceOf(Sign sign, HashSet<string> present)
        {
            Dictionary<string, double> best = new(StringComparer.Ordinal);
            foreach ((string part, double weight) in CauseIndex.Of(Knowledge).Match.Parts(sign.Part))
            {
                foreach ((Cause cause, CauseLink link, _, _) in CauseIndex.Of(Knowledge).ByPart.GetValueOrDefault(part) ?? [])
                {
                    double strength = weight * link.Strength * CauseIndex.Of(Knowledge).Match.Pattern(link.Sign!.Pattern, sign.Pattern);
                    best[cause.Id] = Math.Max(best.GetValueOrDefault(cause.Id), strength);
                }
            }

            return 1 - best.Where(b => present.Contains(b.Key)).Aggregate(1 - Knowledge.Patterns[sign.Pattern].SeenAnyway, (s, b) => s * (1 - b.Value));
        }

        private void Place(Cause cause, HashSet<string> done)
        {
            if (!done.Add(cause.Id))
            {
                return;
            }

            foreach ((string from, _) in into.GetValueOrDefault(cause.Id) ?? [])
            {
                Place(Knowledge.Causes[from], done);
            }

            order.Add(cause);
        }
    }
}
