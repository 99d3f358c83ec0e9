using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Securing;

/// <summary>Finds the marks that likely roots would leave and that would soon be gone.</summary>
internal static class FleetingLooks
{
    private const int Depth = 3;
    private const double LeastStrength = 0.15;
    private const int MostOfAKind = 8;

    public static IReadOnlyList<FleetingLook> Of(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<ForecastRoot> forecast)
    {
        Dictionary<Sign, Dictionary<Cause, double>> speaks = [];
        foreach (ForecastRoot root in forecast)
        {
            foreach ((Sign sign, double strength) in Signs(knowledge, teardown.Machine, root.Cause, 1, 0))
            {
                if (!speaks.TryGetValue(sign, out Dictionary<Cause, double>? by))
                {
                    speaks[sign] = by = [];
                }

                by[root.Cause] = Math.Max(by.GetValueOrDefault(root.Cause), root.Probability * strength);
            }
        }

        HashSet<Sign> looked = [.. teardown.Observations.Where(o => o.Pattern is not null).Select(o => new Sign(o.Part, o.Pattern!))];
        HashSet<string> sound = [.. teardown.Observations.Where(o => o.Look == Look.Sound).Select(o => o.Part)];
        FleetingLook[] all =
        [
            .. speaks.Where(s => !looked.Contains(s.Key) && !sound.Contains(s.Key.Part) && ThreatTo(knowledge.Patterns[s.Key.Pattern]) is not null)
                .Select(s => new FleetingLook(
                    s.Key.Part, s.Key.Pattern, ThreatTo(knowledge.Patterns[s.Key.Pattern])!.Value, s.Value.Values.Sum(),
                    [.. s.Value.OrderByDescending(c => c.Value).ThenBy(c => c.Key.Id, StringComparer.Ordinal).Take(2).Select(c => c.Key)]))
                .OrderByDescending(l => l.Chance).ThenBy(l => l.Part, StringComparer.Ordinal).ThenBy(l => l.Pattern, StringComparer.Ordinal),
        ];
        // One line for the part itself says more than one for all its kind.
        all = [.. all.Where(l => !all.Any(o => o.Part != l.Part && o.Pattern == l.Pattern && knowledge.PartIs(o.Part, l.Part)))];
        return [.. all.GroupBy(l => l.LostBy).OrderBy(g => g.Key).SelectMany(g => g.Take(MostOfAKind))];
    }

    /// <summary>
    /// The last sheet on which it can still be looked at; null when the mark stays. What washing takes away lies inside as a rule, so that it
    /// cannot be seen before the strip, even where running would take it away too.
    /// </summary>
    private static Threat? ThreatTo(Pattern pattern) => pattern.Check?.LostBy switch
    {
        null or { Count: 0 } => null,
        { } by when by.Contains("dismantling") => Threat.Dismantling,
        { } by when by.Contains("cleaning") => Threat.Cleaning,
        _ => Threat.Turning,
    };

    private static IEnumerable<(Sign Sign, double Strength)> Signs(KnowledgeBase knowledge, Machine machine, Cause cause, double by, int depth)
    {
        // A broad part such as "part" is no place to look at.
        foreach (CauseLink link in cause.Leaves.Where(l => l.Target == LinkTarget.Sign && l.Sign!.Part != "part" && Has(knowledge, machine, l.Sign.Part)))
        {
            yield return (link.Sign!, by * link.Strength);
        }

        if (depth == Depth)
        {
            yield break;
        }

        foreach (CauseLink next in cause.LeadsTo.Where(l => by * l.Strength > LeastStrength && CauseNetwork.Applies(knowledge.Causes[l.Id], machine)))
        {
            foreach ((Sign, double) further in Signs(knowledge, machine, knowledge.Causes[next.Id], by * next.Strength, depth + 1))
            {
                yield return further;
            }
        }
    }

    private static bool Has(KnowledgeBase knowledge, Machine machine, string part) =>
        (knowledge.Parts[part].Machines.Count == 0 || knowledge.Parts[part].Machines.Any(machine.Kinds.Contains))
        && !knowledge.Features.Values.Any(f => machine.Without.Contains(f.Id) && f.ShownBy.Any(shown => knowledge.PartIs(part, shown)));
}
