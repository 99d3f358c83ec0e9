using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>A link into a node of the network, as strong as it speaks there.</summary>
/// <param name="Strength">Strength after the words of rule and report were matched, above 0 and at most 1.</param>
internal readonly record struct LinkInto(Cause Cause, CauseLink Link, double Strength);

/// <summary>Collects links into one node and keeps the strongest of each cause; the first of several that are equally strong.</summary>
internal sealed class StrongestLinks(int causes)
{
    private readonly LinkInto[] best = new LinkInto[causes];
    private readonly List<int> collected = [];

    public void Add(int number, Cause cause, CauseLink link, double strength)
    {
        if (best[number].Link is null)
        {
            collected.Add(number);
        }

        if (strength > best[number].Strength || best[number].Link is null)
        {
            best[number] = new LinkInto(cause, link, strength);
        }
    }

    /// <summary>What was collected, in order of the causes' numbers; the next node starts afresh.</summary>
    public LinkInto[] Take()
    {
        if (collected.Count == 0)
        {
            return [];
        }

        collected.Sort();
        LinkInto[] taken = new LinkInto[collected.Count];
        for (int i = 0; i < taken.Length; i++)
        {
            taken[i] = best[collected[i]];
            best[collected[i]] = default;
        }

        collected.Clear();
        return taken;
    }
}
