using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Sheets;

/// <summary>Which marks a part of this machine may show, the likely ones first.</summary>
internal sealed class PartMarks
{
    private const double FromMachinePart = 0.8;
    private const double FromElement = 0.25;
    private readonly KnowledgeBase knowledge;
    private readonly Dictionary<string, Dictionary<string, double>> byPart = new(StringComparer.Ordinal);

    private readonly Dictionary<string, int> positionRules;

    public PartMarks(KnowledgeBase knowledge, Machine machine)
    {
        this.knowledge = knowledge;
        positionRules = knowledge.Findings.Values.SelectMany(f => Condition.Atoms(f.When).OfType<SightingCondition>().Select(c => c.Part).Distinct())
            .GroupBy(part => part, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        foreach (Cause cause in knowledge.Causes.Values.Where(c => CauseNetwork.Applies(c, machine)))
        {
            foreach (CauseLink link in cause.Leaves.Where(l => l.Sign is not null))
            {
                Dictionary<string, double> marks = byPart.TryGetValue(link.Sign!.Part, out Dictionary<string, double>? known) ? known : byPart[link.Sign.Part] = new(StringComparer.Ordinal);
                marks[link.Sign.Pattern] = marks.GetValueOrDefault(link.Sign.Pattern) + link.Strength;
            }
        }
    }

    /// <summary>True when something leaves a mark on just this part.</summary>
    public bool HasOwn(string part) => byPart.ContainsKey(part);

    /// <summary>How much the place of a mark on the part can tell: the position rules that speak of it.</summary>
    public double Weight(string part) => knowledge.PartLine(part).Where(id => id != "part")
        .Sum(id => positionRules.GetValueOrDefault(id) * Closeness(id, part));

    /// <summary>Patterns, likeliest first. What is said of a broader part counts, but less.</summary>
    public IReadOnlyList<Pattern> Of(string part) =>
        [.. Scores(part).OrderByDescending(s => s.Value).ThenBy(s => s.Key, StringComparer.Ordinal).Select(s => knowledge.Patterns[s.Key])];

    private double Closeness(string id, string part) => id == part ? 1 : knowledge.Parts[id].Machines.Count > 0 ? FromMachinePart : FromElement;

    private Dictionary<string, double> Scores(string part)
    {
        Dictionary<string, double> scores = new(StringComparer.Ordinal);
        foreach (string id in knowledge.PartLine(part).Where(id => id != "part"))
        {
            foreach ((string pattern, double weight) in byPart.GetValueOrDefault(id) ?? [])
            {
                scores[pattern] = scores.GetValueOrDefault(pattern) + Closeness(id, part) * weight;
            }
        }

        return scores;
    }
}
