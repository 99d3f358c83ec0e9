namespace Failwise.Problems;

/// <summary>Finds the word a person probably meant.</summary>
internal static class Suggest
{
    private const int ListWhenAtMost = 6;

    /// <summary>A sentence such as <c> Did you mean 'wiped'?</c>, the allowed words when they are few, or nothing.</summary>
    public static string Nearest(string written, IReadOnlyCollection<string> known)
    {
        string? best = BestMatch(written, known);
        if (best is not null)
        {
            return $" Did you mean '{best}'?";
        }

        return known.Count is > 0 and <= ListWhenAtMost ? $" Allowed: {string.Join(", ", known)}." : "";
    }

    /// <summary>The known word nearest in spelling, or null when none is near.</summary>
    public static string? BestMatch(string written, IEnumerable<string> known)
    {
        string folded = Fold(written);
        if (folded.Length is 0 or > 80)
        {
            return null;
        }

        int allowed = folded.Length <= 3 ? 1 : folded.Length <= 6 ? 2 : 1 + folded.Length / 4;
        string[] words = [.. known];
        return Nearest(w => w, allowed) ?? (folded.Length >= 6 ? Nearest(w => w.Length > folded.Length ? w[..folded.Length] : w, 2) : null);

        // Second try: the beginning of a longer word, for people who leave its end off.
        string? Nearest(Func<string, string> part, int limit) => words
            .Select(word => (word, distance: Distance(folded, part(Fold(word)), limit)))
            .Where(m => m.distance <= limit)
            .OrderBy(m => m.distance).ThenBy(m => m.word.Length).ThenBy(m => m.word, StringComparer.Ordinal)
            .Select(m => m.word)
            .FirstOrDefault();
    }

    /// <summary>Folds case and separators: 'Main Bearing' and 'main-bearing' are one word.</summary>
    public static string Fold(string text)
    {
        ReadOnlySpan<char> written = text.AsSpan().Trim();
        Span<char> folded = written.Length <= 128 ? stackalloc char[128] : new char[written.Length];
        int length = 0;
        bool apart = false;
        foreach (char c in written)
        {
            if (c is ' ' or '-' or '_')
            {
                apart = length > 0;
                continue;
            }

            if (apart)
            {
                folded[length++] = '-';
                apart = false;
            }

            folded[length++] = char.ToLowerInvariant(c);
        }

        return folded[..length].SequenceEqual(text) ? text : new string(folded[..length]);
    }

    /// <summary>Edits (insert, delete, replace, swap neighbours) between two words; stops counting past the limit.</summary>
    internal static int Distance(string a, string b, int limit)
    {
        if (Math.Abs(a.Length - b.Length) > limit)
        {
            return limit + 1;
        }

        int[] beforeLast = new int[b.Length + 1], last = new int[b.Length + 1], now = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            now[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int replace = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                now[j] = Math.Min(Math.Min(now[j - 1], last[j]) + 1, replace);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    now[j] = Math.Min(now[j], beforeLast[j - 2] + 1);
                }
            }

            (beforeLast, last, now) = (last, now, beforeLast);
        }

        return last[b.Length];
    }
}
