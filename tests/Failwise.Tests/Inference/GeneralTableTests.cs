using Failwise.Inference;

namespace Failwise.Tests.Inference;

/// <summary>The elimination core on tables that are no noisy-OR: a full joint, and variables with more than two states.</summary>
public sealed class GeneralTableTests
{
    [Fact]
    [CheckValue("joint-dentist")]
    public void A_full_joint_table_gives_the_textbook_probability_of_a_cavity()
    {
        // Bits: toothache, catch, cavity. "Artificial Intelligence: A Modern Approach", full-joint example.
        var graph = new FactorGraph();
        for (var v = 0; v < 3; v++) graph.AddVariable();
        graph.Add(new FactorTable([0, 1, 2], [0.576, 0.064, 0.144, 0.016, 0.008, 0.012, 0.072, 0.108]));
        graph.MultiplyOwn(0, 0, 1);
        var posterior = new double[3];
        Elimination.Run(graph, EliminationPlan.Make(graph), posterior);
        posterior[2].Should().BeApproximately(0.6, 1e-12);
    }

    // pgmpy test suite, TestBeliefPropagationWithMessagePassing: A(2) -> B(3) -> C(2), B -> D(3). Columns are the parent's states.
    private static readonly double[] A = [0.4, 0.6];
    private static readonly double[][] BGivenA = [[0.2, 0.05], [0.3, 0.15], [0.5, 0.8]];
    private static readonly double[][] CGivenB = [[0.4, 0.5, 0.1], [0.6, 0.5, 0.9]];
    private static readonly double[][] DGivenB = [[0.1, 0.1, 0.2], [0.3, 0.2, 0.1], [0.6, 0.7, 0.7]];

    private static readonly double[] None2 = [1, 1];
    private static readonly double[] None3 = [1, 1, 1];

    [Fact]
    [CheckValue("multi-state-belief-propagation")]
    public void Variables_with_several_states_give_the_published_marginals()
    {
        Expect(None2, None3, None3, b: [0.11, 0.21, 0.68], c: [0.217, 0.783], d: [0.168, 0.143, 0.689]);
        Expect([0, 1], None3, [1, 0, 0], b: [0.02777778, 0.08333333, 0.88888889], c: [0.14166667, 0.85833333], d: [1, 0, 0]);
        Expect([0.1, 0.9], None3, None3, b: [0.06034483, 0.16034483, 0.77931034], c: [0.18224138, 0.81775862],
            d: [0.17793103, 0.12810345, 0.69396552]);
        Expect([0.027, 0.972], [0.3, 0.6, 0.1], [1, 0, 0], b: [0.05938567, 0.3440273, 0.59658703], c: [0.25542662, 0.74457338], d: [1, 0, 0]);
        // Two virtual findings on one variable multiply.
        Expect([0.1 * 0.3, 0.9 * 0.7], None3, None3, b: [0.05461538, 0.15461538, 0.79076923], c: [0.17823077, 0.82176923],
            d: [0.17907692, 0.12638462, 0.69453846]);
    }

    private static void Expect(double[] likelyA, double[] likelyB, double[] likelyD, double[] b, double[] c, double[] d)
    {
        // One two-state variable per state, with a table that lets exactly one of a group be on: A 0-1, B 2-4, C 5-6, D 7-9.
        var graph = new FactorGraph();
        for (var v = 0; v < 10; v++) graph.AddVariable();
        graph.Add(Choice([0, 1], null, (a, _) => A[a] * likelyA[a]));
        graph.Add(Choice([2, 3, 4], [0, 1], (s, a) => BGivenA[s][a] * likelyB[s]));
        graph.Add(Choice([5, 6], [2, 3, 4], (s, p) => CGivenB[s][p]));
        graph.Add(Choice([7, 8, 9], [2, 3, 4], (s, p) => DGivenB[s][p] * likelyD[s]));
        var posterior = new double[10];
        Elimination.Run(graph, EliminationPlan.Make(graph), posterior);
        Compare(posterior[2..5], b);
        Compare(posterior[5..7], c);
        Compare(posterior[7..10], d);
    }

    private static FactorTable Choice(int[] own, int[]? parent, Func<int, int, double> value)
    {
        int[] variables = [.. own, .. parent ?? []];
        var cells = new double[1 << variables.Length];
        for (var s = 0; s < own.Length; s++)
        {
            if (parent is null) cells[1 << s] = value(s, 0);
            else
                for (var p = 0; p < parent.Length; p++) cells[1 << s | 1 << own.Length + p] = value(s, p);
        }

        return new FactorTable(variables, cells);
    }

    private static void Compare(double[] actual, double[] expected)
    {
        for (var i = 0; i < expected.Length; i++) actual[i].Should().BeApproximately(expected[i], 6e-9);
    }
}
