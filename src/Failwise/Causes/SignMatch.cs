using System.Collections.Concurrent;
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
    public const double Broader = 0.7;
    public const double Narrower = 0.5;

    private readonly KnowledgeBase knowledge;
    private readonly Dictionary<string, List<string>> narrowerParts;
    private readonly Dictionary<string, List<string>> narrowerPatterns;
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, (string Part, double Weight)[]> parts = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, double[]> weights = new(StringComparer.Ordinal);

    public SignMatch(KnowledgeBase knowledge)
    {
        this.knowledge = knowledge;
        narrowerParts = KindsOf(knowledge.Parts.Keys.Order(StringComparer.Ordinal), knowledge.PartLine);
        narrowerPatterns = KindsOf(knowledge.Patterns.Keys, knowledge.PatternLine);
        foreach (string pattern in knowledge.Patterns.Keys)
        {
            numbers[pattern] = numbers.Count;
        }
    }

    private static Dictionary<string, List<string>> KindsOf(IEnumerable<string> all, Func<string, IReadOnlyList<string>> line)
    {
        Dictionary<string, List<string>> narrower = new(StringComparer.Ordinal);
        foreach (string id in all)
        {
            foreach (string broader in line(id).Skip(1))
            {
                if (!narrower.TryGetValue(broader, out List<string>? list))
                {
                    narrower[broader] = list = [];
                }

                list.Add(id);
            }
        }

        return narrower;
    }

    /// <summary>The part, broader and narrower ones, each with how far a link there speaks to a mark here, 0 to 1.</summary>
    public IReadOnlyList<(string Part, double Weight)> Parts(string part) => parts.GetOrAdd(part, static (part, match) => match.Line(part), this);

    private (string Part, double Weight)[] Line(string part) =>
    [
        .. knowledge.PartLine(part).Select(p => (p, 1.0)), .. part == "part" ? [] : (narrowerParts.GetValueOrDefault(part) ?? []).Select(p => (p, Narrower)),
    ];

    public int NumberOf(string pattern) => numbers[pattern];

    /// <summary>For the number of each pattern, how far a link that says it speaks to a report of this one, 0 to 1.</summary>
    public ReadOnlySpan<double> Patterns(string seen) => weights.GetOrAdd(seen, static (seen, match) => match.Weigh(seen), this);

    /// <summary>How far a link that says one pattern speaks to a report of another, 0 to 1.</summary>
    public double Pattern(string linked, string seen) => Patterns(seen)[numbers[linked]];

    private double[] Weigh(string seen)
    {
        double[] all = new double[numbers.Count];
        foreach (string pattern in narrowerPatterns.GetValueOrDefault(seen) ?? [])
        {
            all[numbers[pattern]] = Narrower;
        }

        foreach (string pattern in knowledge.PatternLine(seen))
        {
            all[numbers[pattern]] = Broader;
        }

        all[numbers[seen]] = 1;
        return all;
    }
}
