using Failwise.Inference;

namespace Failwise.Checks;

/// <summary>
/// For the few best looks, what they and the best look after each of their outcomes would tell together for their time: a look that is
/// only middling by itself may be the one that makes the next one decide.
/// </summary>
internal sealed class LookAhead(ExactSuspects exact, Opening opening)
{
    private const int FollowedUp = 6;
    private const int LookedAhead = 4;
    private const double LeastFollowed = 0.05;

    /// <summary>The same looks in the same order, the best few with what they tell together with the next.</summary>
    /// <param name="looks">Each look with the leaves of its signs, in the order in which they are looked for.</param>
    public IEnumerable<Candidate> Rate(IReadOnlyList<(Candidate Candidate, int[] Nodes)> looks)
    {
        (Candidate Candidate, int[] Nodes)[] best =
            [.. looks.OrderByDescending(l => l.Candidate.Check.Gain / Minutes(l.Candidate)).ThenBy(l => l.Candidate.Check.Id, StringComparer.Ordinal).Take(FollowedUp)];
        foreach ((Candidate candidate, int[] nodes) in looks)
        {
            int place = Array.FindIndex(best, b => b.Candidate == candidate);
            yield return place is >= 0 and < LookedAhead ? candidate with { Ahead = RateOfTwo(candidate, nodes, [.. best.Where(b => b.Candidate != candidate)]) } : candidate;
        }
    }

    private double Minutes(Candidate c) => c.Check.Minutes + opening.MinutesTo(c.Cover) + CheckPlanner.FetchMinutes;

    private double RateOfTwo(Candidate first, int[] nodes, (Candidate Candidate, int[] Nodes)[] next)
    {
        double gain = first.Check.Gain, time = Minutes(first);
        List<Evidence> absent = [];
        for (int k = 0; k <= nodes.Length; k++)
        {
            double chance = first.Check.Outcomes[k].Chance;
            if (chance > LeastFollowed)
            {
                Evidence[] assumed = k < nodes.Length ? [.. absent, Evidence.Present(nodes[k])] : [.. absent];
                (double after, double takes) = BestAfter(assumed, next);
                gain += chance * after;
                time += chance * takes;
            }

            if (k < nodes.Length)
            {
                absent.Add(Evidence.Absent(nodes[k]));
            }
        }

        return gain / time;
    }

    /// <summary>The look that tells most for its time once something is assumed, judged by its first sign.</summary>
    private (double Gain, double Minutes) BestAfter(Evidence[] assumed, (Candidate Candidate, int[] Nodes)[] next)
    {
        Belief start = exact.After(assumed);
        (double Gain, double Minutes) best = (0, 0);
        foreach ((Candidate candidate, int[] nodes) in next)
        {
            Belief found = exact.After([.. assumed, Evidence.Present(nodes[0])]);
            double chance = Math.Clamp(Math.Exp(found.LogEvidence - start.LogEvidence), 0, 1 - 1e-9);
            double[] not = [.. start.Probabilities.Select((p, i) => Math.Clamp((p - chance * found.Probabilities[i]) / (1 - chance), 0, 1))];
            double gain = LookValue.Gain(start.Probabilities, [(chance, found.Probabilities), (1 - chance, not)], exact.Weights);
            if (best.Minutes == 0 || gain / Minutes(candidate) > best.Gain / best.Minutes)
            {
                best = (gain, Minutes(candidate));
            }
        }

        return best;
    }
}
