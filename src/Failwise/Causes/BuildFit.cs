using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>Whether, and how likely, the machine of a case is built so that a cause can be at work in it.</summary>
internal sealed class BuildFit(KnowledgeBase knowledge, TeardownCase teardown)
{
    private readonly string[] marked =
    [
        .. teardown.Observations.Where(o => o.Look == Look.Seen && !knowledge.Patterns[o.Pattern!].Sound).Select(o => o.Part).Distinct(),
    ];

    private readonly string[] looked = [.. teardown.Observations.Select(o => o.Part).Distinct()];
    private readonly Dictionary<string, bool> allowed = new(StringComparer.Ordinal);

    /// <summary>False for a cause that this machine cannot have, and for a general root where particular ones speak of every marked part.</summary>
    public bool Allows(Cause cause)
    {
        if (!allowed.TryGetValue(cause.Id, out bool known))
        {
            allowed[cause.Id] = known = CauseNetwork.Applies(cause, teardown.Machine) && !StepsAside(cause);
        }

        return known;
    }

    /// <summary>Chance that the build has what the cause needs, 0 to 1: 1 when stated or shown by a part that was looked at.</summary>
    public double Chance(Cause cause)
    {
        double chance = 1;
        foreach (string need in cause.Needs.Where(n => !teardown.Machine.Features.Contains(n)))
        {
            Feature feature = knowledge.Features[need];
            if (!feature.ShownBy.Any(shown => looked.Any(part => knowledge.PartIs(part, shown))))
            {
                chance *= ShareOf(feature, teardown.Machine.Kinds);
            }
        }

        return chance;
    }

    /// <summary>
    /// How common the cause is in a machine that has what it needs, as far as the author's count is trusted, 0 to 1. Nobody has counted a fault that
    /// comes once in two thousand jobs, so the counts of roots are drawn towards the usual root; the order stays.
    /// </summary>
    public static double Commonness(KnowledgeBase knowledge, Cause cause)
    {
        if (!cause.IsRoot || cause.HowCommon <= 0 || !knowledge.Counts.TryGetValue("usual-root", out double usual))
        {
            return cause.HowCommon;
        }

        return Math.Min(0.5, usual * Math.Pow(cause.HowCommon / usual, knowledge.Counts["trust"]));
    }

    /// <summary>Share of the machines of these kinds that have the feature, 0 to 1; the kind that has it most counts.</summary>
    public static double ShareOf(Feature feature, IReadOnlyList<string> kinds) => kinds.Select(k => feature.Share.GetValueOrDefault(k, 1)).DefaultIfEmpty(1).Max();

    private bool StepsAside(Cause cause)
    {
        if (cause.GivesWayTo.Count == 0)
        {
            return false;
        }

        string[] own = [.. SignsOf(cause).Select(s => s.Part).Where(p => p != "part").Distinct()];
        string[] spoken = [.. marked.Where(part => own.Length == 0 || own.Any(o => knowledge.PartIs(part, o)))];
        string[] particular =
        [
            .. cause.GivesWayTo.Select(id => knowledge.Causes[id]).Where(c => CauseNetwork.Applies(c, teardown.Machine))
                .SelectMany(SignsOf).Select(s => s.Part).Where(p => p != "part" && !own.Contains(p)).Distinct(),
        ];
        return spoken.Length > 0 && spoken.All(part => particular.Any(p => knowledge.PartIs(part, p)));
    }

    /// <summary>Signs of the cause itself and of the states it leads to straight away.</summary>
    private IEnumerable<Sign> SignsOf(Cause cause) => cause.Leaves
        .Concat(cause.LeadsTo.Select(l => knowledge.Causes[l.Id]).Where(c => !c.IsRoot).SelectMany(c => c.Leaves))
        .Where(l => l.Target == LinkTarget.Sign).Select(l => l.Sign!);
}
