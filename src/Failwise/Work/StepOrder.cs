using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Puts steps into an order in which nothing comes before what it needs.</summary>
internal static class StepOrder
{
    /// <summary>Sorts ids so that each stands after all its prerequisites; among those that may come next the smallest comes first.</summary>
    /// <param name="ids">The ids, each once.</param>
    /// <param name="before">What must stand before an id; ids that are not to be sorted are passed over.</param>
    /// <param name="comparer">The order in which free ids come.</param>
    /// <exception cref="InvalidOperationException">Some wait for each other; the message names the loop.</exception>
    public static IReadOnlyList<string> Sort(IReadOnlyCollection<string> ids, Func<string, IEnumerable<string>> before, IComparer<string> comparer)
    {
        HashSet<string> waiting = new(ids, StringComparer.Ordinal);
        Dictionary<string, string[]> needs = ids.ToDictionary(id => id, id => before(id).Where(waiting.Contains).Distinct().ToArray(), StringComparer.Ordinal);
        List<string> ordered = [];
        while (waiting.Count > 0)
        {
            string? next = waiting.Where(id => !needs[id].Any(waiting.Contains)).Order(comparer).FirstOrDefault();
            if (next is null)
            {
                throw new InvalidOperationException($"These steps wait for each other: {string.Join(" → ", Loop(waiting, needs))}.");
            }

            waiting.Remove(next);
            ordered.Add(next);
        }

        return ordered;
    }

    private static List<string> Loop(HashSet<string> waiting, Dictionary<string, string[]> needs)
    {
        List<string> path = [waiting.Order(StringComparer.Ordinal).First()];
        while (true)
        {
            string next = needs[path[^1]].Where(waiting.Contains).Order(StringComparer.Ordinal).First();
            int at = path.IndexOf(next);
            path.Add(next);
            if (at >= 0)
            {
                return path[at..];
            }
        }
    }

    /// <summary>
    /// The prerequisites of each step that are in the plan, seen through those that are not: if washing waits for a crack test and assembly for
    /// washing, assembly waits for the crack test even when nothing has to be washed.
    /// </summary>
    public static IReadOnlyDictionary<string, string[]> Prerequisites(KnowledgeBase knowledge, IReadOnlyCollection<string> steps)
    {
        HashSet<string> planned = new(steps, StringComparer.Ordinal);
        Dictionary<string, string[]> known = new(StringComparer.Ordinal);
        return steps.ToDictionary(s => s, s => Before(s).Order(StringComparer.Ordinal).ToArray(), StringComparer.Ordinal);

        string[] Before(string id)
        {
            if (!known.TryGetValue(id, out string[]? found))
            {
                known[id] = found = [.. knowledge.Work[id].After.SelectMany(a => planned.Contains(a) ? [a] : Before(a)).Distinct()];
            }

            return found;
        }
    }
}
