using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>How likely this machine is to have a part at all, so that nobody is sent to look at, or to work on, what is not there.</summary>
internal sealed class PartPresence(KnowledgeBase knowledge, TeardownCase teardown)
{
    /// <summary>Below this a machine hardly has the part, and it is not asked about.</summary>
    public const double Hardly = 0.45;

    /// <summary>Below this a build is too rare to plan work for it unasked.</summary>
    public const double Rare = 0.3;

    private readonly HashSet<string> met =
    [
        .. teardown.Observations.Select(o => o.Part).Concat(teardown.Measurements.Select(m => m.Part))
            .Where(knowledge.Parts.ContainsKey).SelectMany(knowledge.PartLine),
    ];

    private readonly Dictionary<string, double> answers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string[]> featuresOf = knowledge.Features.Values.SelectMany(f => f.ShownBy.Select(part => (part, f.Id)))
        .GroupBy(x => x.part, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Select(x => x.Id).ToArray(), StringComparer.Ordinal);

    /// <summary>Chance that the machine has the part, 0 to 1; 1 when the case names it.</summary>
    public double Of(string part)
    {
        if (!answers.TryGetValue(part, out double known))
        {
            answers[part] = known = met.Contains(part) ? 1 : Judge(part);
        }

        return known;
    }

    private double Judge(string part)
    {
        if (knowledge.AskedOf.Values.Any(a => a.Parts.Contains(part) && !a.Suits(teardown.Machine.Kinds, teardown.Machine.Features)))
        {
            return 0;
        }

        double chance = 1;
        foreach (string id in knowledge.PartLine(part))
        {
            Part known = knowledge.Parts[id];
            if (known.Machines.Count > 0 && !known.Machines.Any(teardown.Machine.Kinds.Contains))
            {
                return 0;
            }

            chance = Math.Min(chance, Built([.. known.Needs, .. featuresOf.GetValueOrDefault(id) ?? []]));
        }

        return chance;
    }

    /// <summary>Chance that a build has what is needed; of features of one choice, one is enough.</summary>
    public double Built(IReadOnlyList<string> needs) => needs
        .GroupBy(id => knowledge.Features.TryGetValue(id, out Feature? f) ? f.Choice ?? id : id, StringComparer.Ordinal)
        .Select(choice => Math.Min(1, choice.Sum(HasFeature)))
        .DefaultIfEmpty(1).Min();

    private double HasFeature(string id)
    {
        Machine machine = teardown.Machine;
        if (machine.Features.Contains(id) || machine.Without.Contains(id))
        {
            return machine.Features.Contains(id) ? 1 : 0;
        }

        if (knowledge.Features.TryGetValue(id, out Feature? known) && known.ShownBy.Any(met.Contains))
        {
            return 1;
        }

        return knowledge.Features.TryGetValue(id, out Feature? feature) ? BuildFit.ShareOf(feature, machine.Kinds) : 1;
    }
}
