using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Tests.Content;

public sealed class CalibrationTests
{
    /// <summary>
    /// Machines are drawn from the rule base itself: roots by how common they are, states and signs by the strengths, some signs looked at.
    /// If the inference is right, what it calls 70 % is there seven times in ten. The random numbers are seeded.
    /// </summary>
    [Fact]
    public void Over_2000_machines_drawn_from_the_rules_what_is_called_likely_is_there_as_often_as_said()
    {
        KnowledgeBase knowledge = Repository.Knowledge;
        Sampler sampler = new(knowledge, new Random(2_026));
        double[] said = new double[10], there = new double[10];
        int[] count = new int[10];
        for (int machine = 0; machine < 2_000; machine++)
        {
            (TeardownCase teardown, HashSet<string> roots) = sampler.Draw();
            foreach ((string id, double p) in CauseRanker.RankWithStates(knowledge, teardown, new FindingSet([], [], new Dictionary<string, bool>())).Where(c => knowledge.Causes[c.Id].IsRoot).Take(3))
            {
                int bin = Math.Min(9, (int)(10 * p));
                count[bin]++;
                said[bin] += p;
                there[bin] += roots.Contains(id) ? 1 : 0;
            }
        }

        int judged = 0;
        for (int bin = 0; bin < 10; bin++)
        {
            if (count[bin] >= 60)
            {
                judged++;
                (there[bin] / count[bin]).Should().BeApproximately(said[bin] / count[bin], 0.12, because: $"bin {bin / 10.0:0.0} with {count[bin]} predictions");
            }
        }

        judged.Should().BeGreaterThanOrEqualTo(5);
    }

    private sealed class Sampler(KnowledgeBase knowledge, Random random)
    {
        private static readonly Machine Engine = new(null, ["engine"], 4, 5, null, false, null, [], []);
        private readonly Cause[] causes = Order(knowledge);

        private readonly (string Part, string[] Signs)[] parts =
        [
            .. knowledge.Causes.Values.Where(c => CauseNetwork.Applies(c, Engine)).SelectMany(c => c.Leaves)
                .Where(l => l.Sign is { } s && s.Part != "part" && !knowledge.Patterns[s.Pattern].Sound).Select(l => l.Id).Distinct()
                .GroupBy(id => id.Split('/')[0]).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (g.Key, g.Order(StringComparer.Ordinal).ToArray())),
        ];

        public (TeardownCase Case, HashSet<string> Roots) Draw()
        {
            HashSet<string> active = new(StringComparer.Ordinal);
            foreach (Cause cause in causes)
            {
                double silent = 1 - cause.HowCommon;
                foreach (Cause from in causes.Where(c => active.Contains(c.Id)))
                {
                    silent *= from.LeadsTo.Where(l => l.Id == cause.Id).Select(l => 1 - l.Strength).DefaultIfEmpty(1).Min();
                }

                if (random.NextDouble() < 1 - silent)
                {
                    active.Add(cause.Id);
                }
            }

            List<Observation> observations = [];
            Cause[] on = [.. causes.Where(c => active.Contains(c.Id))];

            // Which parts are looked at must not depend on what is wrong, or the looking itself would be evidence.
            foreach (string id in parts.OrderBy(_ => random.Next()).Take(30).SelectMany(p => p.Signs))
            {
                string[] sign = id.Split('/');
                double silent = 1 - knowledge.Patterns[sign[1]].SeenAnyway;
                foreach (Cause cause in on)
                {
                    silent *= cause.Leaves.Where(l => l.Sign is { } s && knowledge.PartIs(sign[0], s.Part) && knowledge.PatternIs(sign[1], s.Pattern)).Select(l => 1 - l.Strength).DefaultIfEmpty(1).Min();
                }

                bool present = random.NextDouble() < 1 - silent;
                // The observer slips as the model says: a false alarm, or an oversight, once in sixty.
                bool reported = present ? random.NextDouble() > 1.0 / 60 : random.NextDouble() < 1.0 / 60;
                observations.Add(new Observation(observations.Count + 1, sign[0], reported ? Look.Seen : Look.NotFound, sign[1], At.Unsaid, [], [], Extent.Heavy, 60, null, null, null, null, default));
            }

            TeardownCase teardown = new("drawn", Engine, [], new Dictionary<string, double>(), [], observations, [], [], [], [], "drawn");
            return (teardown, [.. active.Where(id => knowledge.Causes[id].IsRoot)]);
        }

        /// <summary>Causes of an engine, every one after what can bring it about.</summary>
        private static Cause[] Order(KnowledgeBase knowledge)
        {
            List<Cause> waiting = [.. knowledge.Causes.Values.Where(c => CauseNetwork.Applies(c, Engine)).OrderBy(c => c.Id, StringComparer.Ordinal)];
            List<Cause> ordered = [];
            while (waiting.Count > 0)
            {
                Cause next = waiting.First(c => !waiting.Any(w => w.LeadsTo.Any(l => l.Id == c.Id)));
                waiting.Remove(next);
                ordered.Add(next);
            }

            return [.. ordered];
        }
    }
}
