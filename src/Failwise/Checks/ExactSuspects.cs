using Failwise.Causes;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>The leading suspects as the exact engine sees them, now and once something is assumed of what nobody has looked at.</summary>
internal sealed class ExactSuspects
{
    // A tenth of a second for a plan's hundred answers, or some.
    private const double LargestCost = 1_500_000;
    private static readonly int[] Widths = [8, 6, 4, 2, 1, 0];
    private readonly LeafTrials trials = null!;
    private readonly Dictionary<int, int> places = [];

    /// <param name="net">The network with what might be looked at as leaves.</param>
    /// <param name="whole">The engine over it.</param>
    /// <param name="suspects">Roots under suspicion, likeliest first.</param>
    /// <param name="weight">How much each of them counts, 0 to 1.</param>
    /// <param name="leaves">Numbers of the leaves about which something will be assumed.</param>
    public ExactSuspects(CauseNetwork net, CaseInference whole, IReadOnlyList<Cause> suspects, IReadOnlyList<double> weight, IReadOnlyList<int> leaves)
    {
        HashSet<int> free = [.. whole.Candidates];
        int[] able = [.. Enumerable.Range(0, suspects.Count).Where(i => net.Has(suspects[i]) && free.Contains(net.NumberOf(suspects[i])))];
        int[] chosen = able;
        foreach (int width in Widths)
        {
            chosen = [.. able.Take(width)];
            trials = whole.Narrow([.. chosen.Select(i => net.NumberOf(suspects[i]))]).Try(leaves);
            if (trials.Cost <= LargestCost)
            {
                break;
            }
        }

        Roots = [.. chosen.Select(i => suspects[i])];
        Weights = [.. chosen.Select(i => weight[i])];
        for (int i = 0; i < leaves.Count; i++)
        {
            places[leaves[i]] = i;
        }

        Start = After([]);
    }

    /// <summary>The suspects that vary in the exact answers, likeliest first.</summary>
    public IReadOnlyList<Cause> Roots { get; }

    /// <summary>How much each of <see cref="Roots"/> counts, 0 to 1.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>The belief as things stand.</summary>
    public Belief Start { get; }

    /// <summary>The belief in each of <see cref="Roots"/> once something is assumed of the leaves.</summary>
    public Belief After(IReadOnlyList<Evidence> assumed) => trials.Given([.. assumed.Select(e => e with { Node = places[e.Node] })]);
}
