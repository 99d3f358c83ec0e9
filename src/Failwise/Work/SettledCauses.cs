using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>A ranking in which some roots are settled and no other is followed up.</summary>
internal static class SettledCauses
{
    public static CauseRanking Settle(KnowledgeBase knowledge, CauseRanking ranking, IReadOnlyList<string> roots)
    {
        Dictionary<string, double> states = new(StringComparer.Ordinal);
        Queue<(string Id, double P)> open = new(roots.Select(r => (r, CauseRanking.Ceiling)));
        while (open.TryDequeue(out (string Id, double P) at))
        {
            foreach (CauseLink link in knowledge.Causes[at.Id].LeadsTo)
            {
                // What was seen may make a state likelier than the root alone does.
                double p = at.P * link.Strength;
                if (p >= 0.05 && p > states.GetValueOrDefault(link.Id) && !knowledge.Causes[link.Id].IsRoot)
                {
                    states[link.Id] = p;
                    open.Enqueue((link.Id, p));
                }
            }
        }

        foreach ((string state, double p) in ranking.States)
        {
            states[state] = Math.Max(states.GetValueOrDefault(state), p);
        }

        Dictionary<string, RankedCause> before = ranking.Ranked.ToDictionary(r => r.Cause.Id, StringComparer.Ordinal);
        RankedCause[] settled =
        [
            .. roots.Distinct().Select(id => (before.GetValueOrDefault(id)
                ?? new RankedCause(knowledge.Causes[id], 0, knowledge.Causes[id].HowCommon, [], [], [], [])) with { Probability = CauseRanking.Ceiling }),
        ];
        return ranking with
        {
            Ranked = [.. settled, .. ranking.Ranked.Where(r => !roots.Contains(r.Cause.Id)).Select(r => r with { Probability = Math.Min(r.Probability, 0.04) })],
            States = states,
            Verdict = new Verdict(VerdictKind.RootNamed, [.. roots.Distinct()], ["Taken as settled."]),
            Story = new JointStory([.. settled.Select(s => s.Cause)], settled.ToDictionary(s => s.Cause.Id, _ => 20.0, StringComparer.Ordinal)),
        };
    }
}
