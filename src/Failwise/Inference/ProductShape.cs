namespace Failwise.Inference;

/// <summary>Variables of a table in elimination order, and which of them are gate hubs in which role.</summary>
internal readonly record struct TableShape(int[] Variables, ulong Accumulators, ulong Caps)
{
    public static readonly TableShape Scalar = new([], 0, 0);
}

/// <summary>
/// What a multiplication of two tables amounts to, variable by variable. A plain variable pairs like states. Two accumulators of one
/// gate combine by OR. An accumulator goes into its gate's cap by cap'(b) = sum over a of accumulator(a) * cap(a OR b), and a gate that
/// is complete is read at "none", since its cap has by then absorbed everything that fired.
/// </summary>
internal sealed class ProductShape
{
    // Triples (left state, right state, result state) that contribute. State 2 is the sum of both states of a widened table: with it
    // three products do the work of four.
    private static readonly int[] Same = [0, 0, 0, 1, 1, 1];
    private static readonly int[] Or = [0, 0, 0, 1, 1, 1, 0, 1, 1, 1, 0, 1];
    private static readonly int[] OrWide = [0, 0, 0, 1, 2, 1, 0, 1, 1];
    private static readonly int[] LeftIntoCap = [0, 0, 0, 1, 1, 0, 0, 1, 1, 1, 1, 1];
    private static readonly int[] LeftIntoCapWide = [0, 0, 0, 1, 1, 0, 2, 1, 1];
    private static readonly int[] RightIntoCap = [0, 0, 0, 1, 1, 0, 1, 0, 1, 1, 1, 1];
    private static readonly int[] RightIntoCapWide = [0, 0, 0, 1, 1, 0, 1, 2, 1];
    private static readonly int[] ReadAtNone = [0, 0, 0];
    private static readonly int[] IntoCapReadAtNone = [0, 0, 0, 1, 1, 0];

    private enum Role { Missing, Plain, Accumulator, Cap }

    public List<int[]> Digits { get; } = [];

    public TableShape Result { get; private set; }

    public double Cost { get; private set; } = 1;

    public ulong WidenLeft { get; private set; }

    public ulong WidenRight { get; private set; }

    /// <summary>Cells of the larger widened table.</summary>
    public double WidenedCells { get; private set; }

    public static ProductShape Of(TableShape left, TableShape right, ReadOnlySpan<int> drop, bool widen, bool withDigits)
    {
        var shape = new ProductShape();
        shape.Merge(left, right, drop, widen, withDigits);
        return shape;
    }

    private void Merge(TableShape left, TableShape right, ReadOnlySpan<int> drop, bool widen, bool withDigits)
    {
        Span<int> kept = stackalloc int[left.Variables.Length + right.Variables.Length];
        ulong accumulators = 0, caps = 0;
        double cellsLeft = 1, cellsRight = 1;
        int i = 0, j = 0, count = 0;
        while (i < left.Variables.Length || j < right.Variables.Length)
        {
            var a = i < left.Variables.Length ? left.Variables[i] : int.MaxValue;
            var b = j < right.Variables.Length ? right.Variables[j] : int.MaxValue;
            var roleA = a <= b ? RoleOf(left, i) : Role.Missing;
            var roleB = b <= a ? RoleOf(right, j) : Role.Missing;
            var dropped = drop.Contains(Math.Min(a, b));
            var terms = Terms(roleA, roleB, dropped, widen);
            Cost *= terms.Length / 3;
            if (withDigits)
            {
                Digits.Add(Steps(
                    terms, roleA == Role.Missing ? 0 : (int)cellsLeft, roleB == Role.Missing ? 0 : (int)cellsRight, dropped ? 0 : 1 << count));
            }

            if (roleA != Role.Missing) WidenLeft |= Widen(ReferenceEquals(terms, LeftIntoCapWide), i++, ref cellsLeft);
            if (roleB != Role.Missing)
                WidenRight |= Widen(ReferenceEquals(terms, OrWide) || ReferenceEquals(terms, RightIntoCapWide), j++, ref cellsRight);
            if (dropped) continue;
            var role = (Role)Math.Max((int)roleA, (int)roleB);
            if (role == Role.Accumulator) accumulators |= 1UL << count;
            if (role == Role.Cap) caps |= 1UL << count;
            kept[count++] = Math.Min(a, b);
        }

        WidenedCells = Math.Max(cellsLeft, cellsRight);
        Result = new TableShape(kept[..count].ToArray(), accumulators, caps);
    }

    private static ulong Widen(bool wide, int variable, ref double cells)
    {
        cells *= wide ? 3 : 2;
        return wide ? 1UL << variable : 0;
    }

    private static int[] Steps(int[] terms, int strideLeft, int strideRight, int strideResult)
    {
        var steps = new int[terms.Length];
        for (var t = 0; t < terms.Length; t += 3)
        {
            steps[t] = terms[t] * strideLeft;
            steps[t + 1] = terms[t + 1] * strideRight;
            steps[t + 2] = terms[t + 2] * strideResult;
        }

        return steps;
    }

    private static Role RoleOf(TableShape shape, int i) =>
        (shape.Accumulators >> i & 1) != 0 ? Role.Accumulator : (shape.Caps >> i & 1) != 0 ? Role.Cap : Role.Plain;

    private static int[] Terms(Role left, Role right, bool dropped, bool widen) => (left, right) switch
    {
        (Role.Accumulator, Role.Accumulator) => widen ? OrWide : Or,
        (Role.Accumulator, Role.Cap) => dropped ? IntoCapReadAtNone : widen ? LeftIntoCapWide : LeftIntoCap,
        (Role.Cap, Role.Accumulator) => dropped ? IntoCapReadAtNone : widen ? RightIntoCapWide : RightIntoCap,
        (Role.Cap, Role.Missing) or (Role.Missing, Role.Cap) => dropped ? ReadAtNone : Same,
        _ => Same,
    };
}
