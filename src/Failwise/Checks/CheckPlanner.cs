using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>An inspection or question that would tell the leading roots apart.</summary>
/// <param name="Says">What to look for or ask.</param>
/// <param name="Gain">Expected drop in uncertainty about the leading roots [bit].</param>
/// <param name="Minutes">Estimated time, opening included [min].</param>
/// <param name="Chance">Chance that it is found, 0 to 1.</param>
/// <param name="IfFound">Roots that gain most when it is found, with their new probability.</param>
/// <param name="IfNot">Roots that gain most when it is not.</param>
/// <param name="LostBy">What destroys this evidence.</param>
public sealed record PlannedCheck(
    string Id, string Says, string? How, double Gain, double Minutes, double Chance, IReadOnlyList<(Cause Root, double Probability)> IfFound,
    IReadOnlyList<(Cause Root, double Probability)> IfNot, IReadOnlyList<string> LostBy)
{
    /// <summary>Gain per minute of work, with a floor of a few minutes for fetching the tools [bit/min].</summary>
    public double Worth => Gain / (Minutes + 3);
}

/// <summary>Chooses the few checks worth most: expected gain in certainty per minute.</summary>
public static class CheckPlanner
{
    private const int Leaders = 6;
    private const int Candidates = 24;
    private const int Shown = 6;
    private const double LeastGain = 0.01;

    /// <summary>The checks worth their effort, best first; none when nothing would change the picture.</summary>
    public static IReadOnlyList<PlannedCheck> Plan(KnowledgeBase knowledge, TeardownCase teardown, CauseRanking ranking)
    {
        RankedCause[] leaders = [.. ranking.Ranked.Where(r => r.Probability > 0.02).Take(Leaders)];
        if (leaders.Length == 0)
        {
            return [];
        }

        List<EvidenceItem> open = OpenSigns(knowledge, teardown, ranking, leaders);
        CauseNetwork net = new(knowledge, teardown, ranking.Evidence, open);
        int[] queries = [.. leaders.Select(l => net.NumberOf(l.Cause))];
        CaseInference inference = new CaseInference(net).Narrow(queries);
        (double LogEvidence, double[] Probabilities) now = inference.Ask(queries);
        List<PlannedCheck> checks = [];
        foreach (EvidenceItem item in open.Where(net.Has))
        {
            if (Judge(knowledge, net, inference, queries, now, leaders, item) is { } check && check.Gain >= LeastGain)
            {
                checks.Add(check);
            }
        }

        return
        [
            .. checks.OrderByDescending(c => c.LostBy.Contains("cleaning") ? 1.3 * c.Worth : c.Worth).ThenBy(c => c.Id, StringComparer.Ordinal).Take(Shown),
        ];
    }

    private static PlannedCheck? Judge(
        KnowledgeBase knowledge, CauseNetwork net, CaseInference inference, int[] queries, (double LogEvidence, double[] Probabilities) now,
        RankedCause[] leaders, EvidenceItem item)
    {
        (double LogEvidence, double[] Probabilities) found = inference.Ask(queries, also: [Evidence.Present(net.NumberOf(item))]);
        double chance = Math.Exp(found.LogEvidence - now.LogEvidence);
        if (chance is <= 1e-6 or >= 1 - 1e-6)
        {
            return null;
        }

        double before = 0, after = 0;
        double[] absent = new double[queries.Length];
        for (int i = 0; i < queries.Length; i++)
        {
            absent[i] = Math.Clamp((now.Probabilities[i] - chance * found.Probabilities[i]) / (1 - chance), 0, 1);
            before += Entropy(now.Probabilities[i]);
            after += chance * Entropy(found.Probabilities[i]) + (1 - chance) * Entropy(absent[i]);
        }

        (string says, string? how, double minutes, IReadOnlyList<string> lostBy) = Describe(knowledge, item);
        return new PlannedCheck(item.Id, says, how, before - after, minutes, chance,
            Movers(leaders, now.Probabilities, i => found.Probabilities[i]), Movers(leaders, now.Probabilities, i => absent[i]), lostBy);
    }

    private static IReadOnlyList<(Cause, double)> Movers(RankedCause[] leaders, double[] now, Func<int, double> then) =>
    [
        .. Enumerable.Range(0, leaders.Length).Where(i => then(i) > now[i] + 0.01)
            .OrderByDescending(i => then(i)).ThenBy(i => i).Take(2)
            .Select(i => (leaders[i].Cause, Math.Min(CauseRanking.Ceiling, then(i)))),
    ];

    private static double Entropy(double p) => p is <= 0 or >= 1 ? 0 : -(p * Math.Log2(p) + (1 - p) * Math.Log2(1 - p));

    private static (string Says, string? How, double Minutes, IReadOnlyList<string> LostBy) Describe(KnowledgeBase knowledge, EvidenceItem item)
    {
        if (item.Kind == EvidenceKind.Sign)
        {
            string[] ids = item.Id.Split('/');
            Part part = knowledge.Parts[ids[0]];
            Pattern pattern = knowledge.Patterns[ids[1]];
            return ($"{EvidenceGathering.Capital(part.Name)}: is it {pattern.Name}? {pattern.Says}", pattern.Check?.How,
                part.Minutes + (pattern.Check?.Minutes ?? 5), pattern.Check?.LostBy ?? []);
        }

        if (item.Kind == EvidenceKind.Symptom)
        {
            Symptom symptom = knowledge.Symptoms[item.Id[(item.Id.IndexOf('/') + 1)..]];
            return (symptom.Ask ?? $"Was it so? {symptom.Says}", null, 1, []);
        }

        FindingRule rule = knowledge.Findings[item.Id[(item.Id.IndexOf('/') + 1)..]];
        return ($"Is it so? {rule.Says}", rule.Check?.How, rule.Check?.Minutes ?? 10, rule.Check?.LostBy ?? []);
    }

    /// <summary>Signs and symptoms the leading roots would leave that nobody has looked at yet.</summary>
    private static List<EvidenceItem> OpenSigns(KnowledgeBase knowledge, TeardownCase teardown, CauseRanking ranking, RankedCause[] leaders)
    {
        HashSet<string> known = [.. ranking.Evidence.Select(e => e.Id)];
        HashSet<string> soundParts = [.. ranking.Evidence.Where(e => e.Kind == EvidenceKind.SoundPart).Select(e => e.Id.Split('/')[0])];
        Dictionary<string, double[]> strengths = new(StringComparer.Ordinal);
        Dictionary<string, EvidenceItem> items = new(StringComparer.Ordinal);
        for (int i = 0; i < leaders.Length; i++)
        {
            foreach ((CauseLink link, double strength) in Leaves(knowledge, teardown, leaders[i].Cause))
            {
                if (ItemFor(knowledge, teardown, link) is not { } item || known.Contains(item.Id) || soundParts.Contains(item.Id.Split('/')[0]))
                {
                    continue;
                }

                items[item.Id] = item;
                if (!strengths.TryGetValue(item.Id, out double[]? row))
                {
                    strengths[item.Id] = row = new double[leaders.Length];
                }

                row[i] = Math.Max(row[i], strength);
            }
        }

        return [.. strengths.OrderByDescending(s => s.Value.Max() - s.Value.Min()).ThenBy(s => s.Key, StringComparer.Ordinal).Take(Candidates).Select(s => items[s.Key])];
    }

    private static IEnumerable<(CauseLink Link, double Strength)> Leaves(KnowledgeBase knowledge, TeardownCase teardown, Cause cause, double by = 1, int depth = 0)
    {
        foreach (CauseLink link in cause.Leaves)
        {
            yield return (link, by * link.Strength);
        }

        if (depth < 3)
        {
            foreach (CauseLink next in cause.LeadsTo.Where(l => by * l.Strength > 0.15 && CauseNetwork.Applies(knowledge.Causes[l.Id], teardown.Machine)))
            {
                foreach ((CauseLink, double) further in Leaves(knowledge, teardown, knowledge.Causes[next.Id], by * next.Strength, depth + 1))
                {
                    yield return further;
                }
            }
        }
    }

    private static EvidenceItem? ItemFor(KnowledgeBase knowledge, TeardownCase teardown, CauseLink link) => link.Target switch
    {
        // A broad part such as "shaft" is no place to look at; the case has to say which one.
        LinkTarget.Sign when link.Sign!.Part != "part" && FitsMachine(knowledge.Parts[link.Sign.Part], teardown.Machine) =>
            new EvidenceItem(link.Id, EvidenceKind.Sign, "", true, 20, [], false),
        LinkTarget.Symptom => new EvidenceItem("symptom/" + link.Id, EvidenceKind.Symptom, "", true, 20, [], false),
        LinkTarget.Finding when knowledge.Findings[link.Id] is { Role: FindingRole.Sign, Refines.Count: 0 } =>
            new EvidenceItem("finding/" + link.Id, EvidenceKind.Finding, "", true, 20, [], false),
        _ => null,
    };

    private static bool FitsMachine(Part part, Machine machine) => part.Machines.Count == 0 || part.Machines.Any(machine.Kinds.Contains);
}
