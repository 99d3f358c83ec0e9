namespace Failwise.Knowledge;

/// <summary>How telling a word is: one that stands in many entries of the vocabulary says little, one that stands in few says much.</summary>
internal sealed class WordRarity
{
    private const double Filler = 0.05;

    // Words that join others; how rarely the vocabulary happens to use one says nothing.
    private static readonly HashSet<string> Idle =
    [
        "a", "an", "the", "of", "on", "in", "at", "by", "for", "from", "up", "is", "are", "was", "were", "be", "it", "its", "this", "that", "and", "or", "to", "with", "has", "had",
        "have", "when", "will", "would", "not", "no", "number", "my", "there", "some", "one", "two", "three", "four", "five", "six", "very", "all", "as", "like", "she", "her", "been", "got", "gets", "just",
    ];

    private readonly Dictionary<string, double> weights = new(StringComparer.Ordinal);

    /// <param name="entries">The words of each entry.</param>
    public WordRarity(IReadOnlyCollection<IEnumerable<string>> entries)
    {
        Dictionary<string, int> counts = new(StringComparer.Ordinal);
        foreach (string word in entries.SelectMany(e => e.Distinct()))
        {
            counts[word] = counts.GetValueOrDefault(word) + 1;
        }

        foreach ((string word, int count) in counts)
        {
            weights[word] = Idle.Contains(word) ? Filler : Math.Log(1 + (double)entries.Count / count) / Math.Log(1 + entries.Count);
        }
    }

    public static bool IsFiller(string word) => Idle.Contains(word);

    public bool Knows(string word) => weights.ContainsKey(word);

    /// <summary>Weight from above 0 to 1; 1 for a word that the vocabulary does not have.</summary>
    public double Of(string word) => weights.TryGetValue(word, out double weight) ? weight : Idle.Contains(word) ? Filler : 1;
}
