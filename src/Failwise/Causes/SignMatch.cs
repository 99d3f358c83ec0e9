using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>
/// Which links a mark on a part answers to. A rule and a report seldom use the very same words: one says gear, the other helical gear; one
/// says worn, the other scuffed. They meet when part and pattern are each the same, broader or narrower.
/// </summary>
internal sealed class SignMatch
{
    // Judgement. A rule for the broader part means this one too. A rule for a broader mark leaves open which of its kinds it leaves; a rule
    // for a narrower part or mark says more than the report, which may well be of another of its kind.
    private const double PatternBroad = 0.7;
    private const double PartNarrow = 0.5;
    private const double PatternNarrow = 0.5;

    private readonly KnowledgeBase knowledge;
    private readonly Dictionary<string, List<string>> narrower = new(StringComparer.Ordinal);

    public SignMatch(KnowledgeBase knowledge)
    {
        this.knowledge = knowledge;
        foreach (string part in knowledge.Parts.Keys.Order(StringComparer.Ordinal))
        {
            foreach (string broader in knowledge.PartLine(part).Skip(1))
            {
                if (!narrower.TryGetValue(broader, out List<string>? list))
                {
                    narrower[broader] = list = [];
                }

                list.Add(part);
            }
        }
    }

    /// <summary>The part, broader and narrower ones, each with how far a link there speaks to a mark here, 0 to 1.</summary>
    public IEnumerable<(string Part, double Weight)> Parts(string part) =>
        knowledge.PartLine(part).Select(p => (p, 1.0))
            .Concat(part == "part" ? [] : (narrower.GetValueOrDefault(part) ?? []).Select(p => (p, PartNarrow)));

    /// <summary>How far a link that says one pattern speaks to a report of another, 0 to 1.</summary>
    public double Pattern(string linked, string seen) =>
        linked == seen ? 1 : knowledge.PatternIs(seen, linked) ? PatternBroad : knowledge.PatternIs(linked, seen) ? PatternNarrow : 0;
}
