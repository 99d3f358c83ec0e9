namespace Failwise.Inference;

/// <summary>Variables of a table in elimination order, and which of them are gate helpers in which role.</summary>
internal readonly record struct TableShape(int[] Variables, ulong Accumulators, ulong Caps)
{
    public static readonly TableShape Scalar = new([], 0, 0);
}

/// <summary>
/// One multiplication of two tables, optionally summing out the first variable. Every operation is a sum of products of non-negative
/// cells, so nothing cancels; and each is linear in either table, so the same index walk run backwards yields the derivatives.
/// </summary>
internal sealed class TableProduct
{
    private const int InnerDigits = 8;

    // For each variable: the combinations (left state, right state, result state) that contribute.
    private static readonly int[] Free = [0, 0, 0, 1, 1, 1];
    private static readonly int[] Or = [0, 0, 0, 1, 1, 1, 0, 1, 1, 1, 0, 1];
    private static readonly int[] LeftIntoCap = [0, 0, 0, 1, 1, 0, 0, 1, 1, 1, 1, 1];
    private static readonly int[] RightIntoCap = [0, 0, 0, 1, 1, 0, 1, 0, 1, 1, 1, 1];
    private static readonly int[] FirstOnly = [0, 0, 0];
    private static readonly int[] CapFirstOnly = [0, 0, 0, 1, 1, 0];

    private readonly int _innerCount;
    private readonly int[] _innerLeft;
    private readonly int[] _innerRight;
    private readonly int[] _innerResult;
    private readonly int[][] _outer;

    private TableProduct(TableShape result, List<int[]> inner, List<int[]> outer)
    {
        Result = result;
        _innerCount = 1 << inner.Count;
        _innerLeft = Offsets(inner, 0);
        _innerRight = Offsets(inner, 1);
        _innerResult = Offsets(inner, 2);
        _outer = outer.ToArray();
    }

    public TableShape Result { get; }

    /// <summary>The table that results, and how many multiplications that takes, without building any index.</summary>
    public static (TableShape Shape, double Cost) Estimate(TableShape left, TableShape right, bool eliminate)
    {
        var cost = 1.0;
        var shape = Merge(left, right, eliminate, (_, terms, _, _, _) => cost *= terms.Length / 3);
        return (shape, cost);
    }

    public static TableProduct Compile(TableShape left, TableShape right, bool eliminate)
    {
        var inner = new List<int[]>();
        var outer = new List<int[]>();
        var shape = Merge(left, right, eliminate, (free, terms, strideLeft, strideRight, strideResult) =>
        {
            var steps = new int[terms.Length];
            for (var t = 0; t < terms.Length; t += 3)
            {
                steps[t] = terms[t] * strideLeft;
                steps[t + 1] = terms[t + 1] * strideRight;
                steps[t + 2] = terms[t + 2] * strideResult;
            }

            (free && inner.Count < InnerDigits ? inner : outer).Add(steps);
        });
        return new TableProduct(shape, inner, outer);
    }

    public void Multiply(ReadOnlySpan<double> left, ReadOnlySpan<double> right, Span<double> result)
    {
        var walk = new OuterWalk(_outer);
        do
        {
            var l = left[walk.Left..];
            var r = right[walk.Right..];
            var o = result[walk.Result..];
            for (var i = 0; i < _innerCount; i++) o[_innerResult[i]] += l[_innerLeft[i]] * r[_innerRight[i]];
        }
        while (walk.Next());
    }

    /// <summary>Adds to <paramref name="target"/> the derivative with respect to the left table (or the right one).</summary>
    public void Differentiate(ReadOnlySpan<double> outcome, ReadOnlySpan<double> other, Span<double> target, bool ofLeft)
    {
        var innerTarget = ofLeft ? _innerLeft : _innerRight;
        var innerOther = ofLeft ? _innerRight : _innerLeft;
        var walk = new OuterWalk(_outer);
        do
        {
            var d = outcome[walk.Result..];
            var x = other[(ofLeft ? walk.Right : walk.Left)..];
            var t = target[(ofLeft ? walk.Left : walk.Right)..];
            for (var i = 0; i < _innerCount; i++) t[innerTarget[i]] += d[_innerResult[i]] * x[innerOther[i]];
        }
        while (walk.Next());
    }

    private delegate void OnVariable(bool free, int[] terms, int strideLeft, int strideRight, int strideResult);

    private static TableShape Merge(TableShape left, TableShape right, bool eliminate, OnVariable visit)
    {
        var variables = new List<int>(left.Variables.Length + right.Variables.Length);
        ulong accumulators = 0, caps = 0;
        int i = 0, j = 0;
        var first = true;
        while (i < left.Variables.Length || j < right.Variables.Length)
        {
            var a = i < left.Variables.Length ? left.Variables[i] : int.MaxValue;
            var b = j < right.Variables.Length ? right.Variables[j] : int.MaxValue;
            var roleA = a <= b ? RoleOf(left, i) : Role.Missing;
            var roleB = b <= a ? RoleOf(right, j) : Role.Missing;
            var strideA = a <= b ? 1 << i++ : 0;
            var strideB = b <= a ? 1 << j++ : 0;
            var role = (Role)Math.Max((int)roleA, (int)roleB);
            var drop = first && eliminate;
            first = false;
            var terms = Terms(roleA, roleB, drop && role >= Role.Accumulator);
            visit(ReferenceEquals(terms, Free), terms, strideA, strideB, drop ? 0 : 1 << variables.Count);
            if (drop) continue;
            if (role == Role.Accumulator) accumulators |= 1UL << variables.Count;
            if (role == Role.Cap) caps |= 1UL << variables.Count;
            variables.Add(Math.Min(a, b));
        }

        return new TableShape(variables.ToArray(), accumulators, caps);
    }

    private enum Role { Missing, Plain, Accumulator, Cap }

    private static Role RoleOf(TableShape shape, int i) =>
        (shape.Accumulators >> i & 1) != 0 ? Role.Accumulator : (shape.Caps >> i & 1) != 0 ? Role.Cap : Role.Plain;

    // A finished gate is read at "none": its cap has by then absorbed everything that fired.
    private static int[] Terms(Role left, Role right, bool readFinishedGate) => (left, right) switch
    {
        (Role.Accumulator, Role.Accumulator) => Or,
        (Role.Accumulator, Role.Cap) => readFinishedGate ? CapFirstOnly : LeftIntoCap,
        (Role.Cap, Role.Accumulator) => readFinishedGate ? CapFirstOnly : RightIntoCap,
        _ => readFinishedGate ? FirstOnly : Free,
    };

    private static int[] Offsets(List<int[]> digits, int column)
    {
        var offsets = new int[1 << digits.Count];
        for (var d = 0; d < digits.Count; d++)
            for (var k = 1 << d; k < 2 << d; k++) offsets[k] = offsets[k - (1 << d)] + digits[d][3 + column];
        return offsets;
    }

    /// <summary>An odometer over the variables that the inner loop does not cover.</summary>
    private ref struct OuterWalk(int[][] digits)
    {
        private readonly int[] _at = new int[digits.Length];

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
