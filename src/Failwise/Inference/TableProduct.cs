using System.Buffers;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Failwise.Inference;

/// <summary>
/// One multiplication of two tables, summing out the variables that no other table needs. Every operation is a sum of products of
/// non-negative cells, so nothing cancels; and each is linear in either table, so the same index walk run backwards gives the derivatives.
/// </summary>
internal sealed class TableProduct
{
    /// <summary>Multiplications that are walked by a list of places; the variables beyond go by an odometer.</summary>
    private const int MostListed = 256;

    /// <summary>Below this many multiplications, widening a table costs more than it saves.</summary>
    private const double WorthWidening = 4096;

    /// <summary>A widened table is a scratch copy; past this size the plain way is taken to spare memory.</summary>
    private const double MostWidenedCells = 1 << 22;

    private readonly (int Left, int Right, int Result) _cells;
    private readonly int[] _innerLeft;
    private readonly int[] _innerRight;
    private readonly int[] _innerResult;
    private readonly int[][] _outer;
    private readonly ulong _widenLeft;
    private readonly ulong _widenRight;

    private TableProduct(ProductShape shape, TableShape left, TableShape right)
    {
        _cells = (1 << left.Variables.Length, 1 << right.Variables.Length, 1 << shape.Result.Variables.Length);
        var inner = new List<int[]>();
        var outer = new List<int[]>();
        var listed = 1;
        foreach (var digit in shape.Digits)
        {
            var isInner = outer.Count == 0 && listed * (digit.Length / 3) <= MostListed;
            (isInner ? inner : outer).Add(digit);
            if (isInner) listed *= digit.Length / 3;
        }

        _innerLeft = Offsets(inner, 0);
        _innerRight = Offsets(inner, 1);
        _innerResult = Offsets(inner, 2);
        _outer = outer.ToArray();
        _widenLeft = shape.WidenLeft;
        _widenRight = shape.WidenRight;
    }

    /// <summary>The table that results, and how many multiplications that takes, without building any index.</summary>
    public static (TableShape Result, double Cost) Estimate(TableShape left, TableShape right, ReadOnlySpan<int> drop)
    {
        var shape = ProductShape.Of(left, right, drop, widen: true, withDigits: false);
        return (shape.Result, shape.Cost);
    }

    public static TableProduct Compile(TableShape left, TableShape right, ReadOnlySpan<int> drop)
    {
        var plain = ProductShape.Of(left, right, drop, widen: false, withDigits: true);
        if (plain.Cost < WorthWidening) return new TableProduct(plain, left, right);
        var wide = ProductShape.Of(left, right, drop, widen: true, withDigits: true);
        return new TableProduct(wide.WidenedCells > MostWidenedCells ? plain : wide, left, right);
    }

    /// <summary>With the way of multiplying chosen by the caller.</summary>
    internal static TableProduct Compile(TableShape left, TableShape right, ReadOnlySpan<int> drop, bool widen) =>
        new(ProductShape.Of(left, right, drop, widen, withDigits: true), left, right);

    /// <exception cref="ArgumentException">A table has not the shape that the product was compiled for.</exception>
    public void Multiply(ReadOnlySpan<double> left, ReadOnlySpan<double> right, Span<double> result)
    {
        Check(left.Length, right.Length, result.Length);
        using var wideLeft = new Scratch(left.Length, _widenLeft);
        using var wideRight = new Scratch(right.Length, _widenRight);
        left = Widened(left, _widenLeft, wideLeft.Cells);
        right = Widened(right, _widenRight, wideRight.Cells);
        var walk = new OuterWalk(_outer);
        do
        {
            var l = left[walk.Left..];
            var r = right[walk.Right..];
            var o = result[walk.Result..];
            MultiplyInner(ref MemoryMarshal.GetReference(l), ref MemoryMarshal.GetReference(r), ref MemoryMarshal.GetReference(o));
        }
        while (walk.Next());
    }

    // The offsets were made for tables of these shapes, so that they always lie inside; checking each of them again took half the time.
    private void MultiplyInner(ref double left, ref double right, ref double result)
    {
        int[] lefts = _innerLeft, rights = _innerRight, results = _innerResult;
        for (var i = 0; i < lefts.Length && i < rights.Length && i < results.Length; i++)
            Unsafe.Add(ref result, results[i]) += Unsafe.Add(ref left, lefts[i]) * Unsafe.Add(ref right, rights[i]);
    }

    private static void DifferentiateInner(ref double outcome, int[] outcomes, ref double other, int[] others, ref double target, int[] targets)
    {
        for (var i = 0; i < outcomes.Length && i < others.Length && i < targets.Length; i++)
            Unsafe.Add(ref target, targets[i]) += Unsafe.Add(ref outcome, outcomes[i]) * Unsafe.Add(ref other, others[i]);
    }

    /// <summary>Adds to <paramref name="target"/>, all zero, the derivative with respect to the left table (or the right one).</summary>
    /// <exception cref="ArgumentException">A table has not the shape that the product was compiled for.</exception>
    public void Differentiate(ReadOnlySpan<double> outcome, ReadOnlySpan<double> other, Span<double> target, bool ofLeft)
    {
        if (ofLeft) Check(target.Length, other.Length, outcome.Length);
        else Check(other.Length, target.Length, outcome.Length);
        var widen = ofLeft ? _widenLeft : _widenRight;
        var widenOther = ofLeft ? _widenRight : _widenLeft;
        using var wideOther = new Scratch(other.Length, widenOther);
        using var wideTarget = new Scratch(target.Length, widen);
        other = Widened(other, widenOther, wideOther.Cells);
        wideTarget.Cells.Clear();
        var wide = widen == 0 ? target : wideTarget.Cells;
        var innerTarget = ofLeft ? _innerLeft : _innerRight;
        var innerOther = ofLeft ? _innerRight : _innerLeft;
        var walk = new OuterWalk(_outer);
        do
        {
            var d = outcome[walk.Result..];
            var x = other[(ofLeft ? walk.Right : walk.Left)..];
            var t = wide[(ofLeft ? walk.Left : walk.Right)..];
            DifferentiateInner(
                ref MemoryMarshal.GetReference(d), _innerResult, ref MemoryMarshal.GetReference(x), innerOther, ref MemoryMarshal.GetReference(t), innerTarget);
        }
        while (walk.Next());
        if (widen != 0) Narrow(wide, widen, target);
    }

    private void Check(int left, int right, int result)
    {
        if ((left, right, result) != _cells) throw new ArgumentException("The tables are not those that the product was compiled for.");
    }

    private static int WidenedLength(int length, ulong widen)
    {
        for (var k = BitOperations.PopCount(widen); k > 0; k--) length = length / 2 * 3;
        return length;
    }

    /// <summary>
    /// Gives each marked variable a third state that holds the sum of its two. The copy grows in place, from its end down, so that the
    /// cells not yet spread are never written over.
    /// </summary>
    private static ReadOnlySpan<double> Widened(ReadOnlySpan<double> cells, ulong widen, Span<double> wide)
    {
        if (widen == 0) return cells;
        cells.CopyTo(wide);
        var length = cells.Length;
        var below = 1;
        for (var v = 0; widen >> v != 0; v++)
        {
            if ((widen >> v & 1) == 0)
            {
                below *= 2;
                continue;
            }

            for (int from = length - 2 * below, to = length / 2 * 3 - 3 * below; from >= 0; from -= 2 * below, to -= 3 * below)
            {
                for (var i = below - 1; i >= 0; i--)
                {
                    double none = wide[from + i], some = wide[from + below + i];
                    wide[to + 2 * below + i] = none + some;
                    wide[to + below + i] = some;
                    wide[to + i] = none;
                }
            }

            length = length / 2 * 3;
            below *= 3;
        }

        return wide;
    }

    /// <summary>The derivative of <see cref="Widened"/>: what a sum earned goes to both its parts. Works from the last variable down.</summary>
    private static void Narrow(Span<double> wide, ulong widen, Span<double> target)
    {
        var length = wide.Length;
        for (var v = 63 - BitOperations.LeadingZeroCount(widen); v >= 0; v--)
        {
            if ((widen >> v & 1) == 0) continue;
            var below = WidenedLength(1 << v, widen & ((1UL << v) - 1));
            var to = 0;
            for (var from = 0; from < length; from += 3 * below, to += 2 * below)
            {
                for (var i = 0; i < below; i++)
                {
                    var both = wide[from + 2 * below + i];
                    var none = wide[from + i] + both;
                    var some = wide[from + below + i] + both;
                    wide[to + i] = none;
                    wide[to + below + i] = some;
                }
            }

            length = to;
        }

        wide[..length].CopyTo(target);
    }

    private static int[] Offsets(List<int[]> digits, int column)
    {
        int[] offsets = [0];
        foreach (var digit in digits)
        {
            var wider = new int[offsets.Length * (digit.Length / 3)];
            for (int t = 0, to = 0; t < digit.Length; t += 3)
                foreach (var offset in offsets) wider[to++] = offset + digit[t + column];
            offsets = wider;
        }

        return offsets;
    }

    /// <summary>A borrowed array for a widened table; nothing when the table is taken as it is.</summary>
    private readonly ref struct Scratch : IDisposable
    {
        private readonly double[]? _rented;

        public Scratch(int length, ulong widen)
        {
            if (widen == 0) return;
            var size = WidenedLength(length, widen);
            _rented = ArrayPool<double>.Shared.Rent(size);
            Cells = _rented.AsSpan(0, size);
        }

        public Span<double> Cells { get; }

        public void Dispose()
        {
            if (_rented is not null) ArrayPool<double>.Shared.Return(_rented);
        }
    }

    /// <summary>An odometer over the variables that the inner loop does not cover.</summary>
    private ref struct OuterWalk(int[][] digits)
    {
        private readonly int[] _at = digits.Length == 0 ? [] : new int[digits.Length];

        public int Left;
        public int Right;
        public int Result;

        public bool Next()
        {
            for (var d = 0; d < digits.Length; d++)
            {
                var steps = digits[d];
                var old = _at[d];
                var now = old + 3 < steps.Length ? old + 3 : 0;
                _at[d] = now;
                Left += steps[now] - steps[old];
                Right += steps[now + 1] - steps[old + 1];
                Result += steps[now + 2] - steps[old + 2];
                if (now != 0) return true;
            }

            return false;
        }
    }
}
