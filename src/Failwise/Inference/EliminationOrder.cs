using System.Numerics;

namespace Failwise.Inference;

/// <summary>
/// Min-fill elimination order: always the variable whose removal joins the fewest pairs of neighbours that are not joined yet;
/// ties by fewest neighbours (smallest table), then by number, so that the same query always runs the same way. A second and later try
/// breaks ties by a seeded draw instead; some tries also count neighbours, and some add a draw of a few pairs to every count, so that the
/// second best may come first: on tangled networks the best of a few dozen tries often costs a hundredth of the first.
/// </summary>
internal sealed class EliminationOrder
{
    private readonly int _count;
    private readonly int _words;
    private readonly ulong[] _neighbours;
    private readonly int[] _fill;
    private readonly int[] _degree;
    private readonly bool[] _gone;
    private readonly bool[] _last;
    private readonly Random? _ties;
    private readonly int _degreeWeight;
    private readonly int _mostAdded;

    private EliminationOrder(int count, IReadOnlyList<FactorTable> tables, int attempt, bool[]? last)
    {
        _last = last ?? new bool[count];
        _ties = attempt == 0 ? null : new Random(attempt);
        _mostAdded = (attempt % 8) switch { 2 or 6 => 1, 3 or 7 => 2, 5 => 4, _ => 0 };
        _degreeWeight = attempt % 2 == 0 ? 0 : 1 + attempt % 3;
        _count = count;
        _words = (count + 63) / 64;
        _neighbours = new ulong[count * _words];
        _fill = new int[count];
        _degree = new int[count];
        _gone = new bool[count];
        foreach (var table in tables) JoinAll(table.Variables);
        for (var v = 0; v < count; v++) Recount(v);
    }

    /// <param name="last">Variables that come after all others; null for none.</param>
    public static int[] MinFill(int count, IReadOnlyList<FactorTable> tables, int attempt = 0, bool[]? last = null)
    {
        var search = new EliminationOrder(count, tables, attempt, last);
        var order = new int[count];
        for (var i = 0; i < count; i++)
        {
            order[i] = search.Cheapest();
            search.Eliminate(order[i]);
        }

        return order;
    }

    private Span<ulong> Row(int v) => _neighbours.AsSpan(v * _words, _words);

    private void Join(int a, int b)
    {
        _neighbours[a * _words + (b >> 6)] |= 1UL << (b & 63);
        _neighbours[b * _words + (a >> 6)] |= 1UL << (a & 63);
    }

    private void JoinAll(ReadOnlySpan<int> variables)
    {
        for (var i = 0; i < variables.Length; i++)
            for (var j = i + 1; j < variables.Length; j++) Join(variables[i], variables[j]);
    }

    private int Cheapest()
    {
        var best = -1;
        var bestScore = long.MaxValue;
        var tied = 1;
        for (var v = 0; v < _count; v++)
        {
            if (_gone[v]) continue;
            var added = _ties is not null && _mostAdded > 0 ? _ties.Next(_mostAdded + 1) : 0;
            var score = ((long)(_fill[v] + _degreeWeight * _degree[v] + added) << 32) + _degree[v] + (_last[v] ? 1L << 62 : 0);
            if (score > bestScore) continue;
            tied = score == bestScore ? tied + 1 : 1;
            if (tied > 1 && (_ties is null || _ties.Next(tied) != 0)) continue;
            best = v;
            bestScore = score;
        }

        return best;
    }

    private void Eliminate(int v)
    {
        var around = Members(Row(v));
        var adds = _fill[v] > 0;
        _gone[v] = true;
        foreach (var u in around) _neighbours[u * _words + (v >> 6)] &= ~(1UL << (v & 63));
        if (adds) JoinAll(around);

        // Without new edges only the neighbours' counts change; a new edge also matters to whoever sees both its ends.
        Span<ulong> touched = _words <= 64 ? stackalloc ulong[_words] : new ulong[_words];
        touched.Clear();
        foreach (var u in around)
        {
            touched[u >> 6] |= 1UL << (u & 63);
            if (!adds) continue;
            var row = Row(u);
            for (var w = 0; w < _words; w++) touched[w] |= row[w];
        }

        foreach (var u in Members(touched)) Recount(u);
    }

    private void Recount(int v)
    {
        var row = Row(v);
        int degree = 0, missing = 0;
        for (var w = 0; w < _words; w++)
        {
            for (var bits = row[w]; bits != 0; bits &= bits - 1)
            {
                degree++;
                var other = Row((w << 6) + BitOperations.TrailingZeroCount(bits));
                for (var k = 0; k < _words; k++) missing += BitOperations.PopCount(row[k] & ~other[k]);
            }
        }

        _degree[v] = degree;
        // Each neighbour misses itself once, and each missing pair was met from both ends.
        _fill[v] = (missing - degree) / 2;
    }

    private static int[] Members(ReadOnlySpan<ulong> set)
    {
        var count = 0;
        foreach (var word in set) count += BitOperations.PopCount(word);
        var members = new int[count];
        var at = 0;
        for (var w = 0; w < set.Length; w++)
            for (var bits = set[w]; bits != 0; bits &= bits - 1) members[at++] = (w << 6) + BitOperations.TrailingZeroCount(bits);
        return members;
    }
}
