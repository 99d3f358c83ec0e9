namespace Failwise.Inference;

/// <summary>Sets of causes that together account for everything seen, none of them to spare.</summary>
public static class Covers
{
    /// <summary>
    /// All minimal hitting sets of a family: sets that share an element with each member and from which nothing can be taken away.
    /// Given, for each finding, the causes that can produce it, these are the irredundant explanations; given conflicts between parts
    /// that cannot all be sound, they are the minimal diagnoses ("A Theory of Diagnosis from First Principles", Artificial Intelligence
    /// 32, 1987). Smallest first, then by the elements in ascending order. The number can grow exponentially with the family.
    /// </summary>
    /// <param name="family">Sets to hit; an empty set makes the answer empty.</param>
    /// <param name="largest">Sets with more elements are not looked for.</param>
    public static IReadOnlyList<IReadOnlyList<int>> MinimalHittingSets(IReadOnlyList<IReadOnlyCollection<int>> family, int largest = int.MaxValue)
    {
        var found = new List<SortedSet<int>> { new() };
        foreach (var member in family)
        {
            var hitting = found.Where(set => set.Overlaps(member)).ToList();
            var minimal = new List<SortedSet<int>>(hitting);
            foreach (var set in found)
            {
                if (set.Count >= largest || set.Overlaps(member)) continue;
                foreach (var element in member.Distinct())
                {
                    SortedSet<int> longer = [.. set, element];
                    // Only a set that hit the member before can be smaller than one that has just been made longer.
                    if (!hitting.Exists(h => h.IsSubsetOf(longer))) minimal.Add(longer);
                }
            }

            found = minimal;
        }

        return found.Select(set => (IReadOnlyList<int>)set.ToArray()).OrderBy(s => s.Count).ThenBy(s => s, Lexicographic).ToList();
    }

    private static readonly Comparer<IReadOnlyList<int>> Lexicographic = Comparer<IReadOnlyList<int>>.Create((a, b) =>
    {
        for (var i = 0; i < Math.Min(a.Count, b.Count); i++)
            if (a[i] != b[i]) return a[i].CompareTo(b[i]);
        return a.Count.CompareTo(b.Count);
    });
}
