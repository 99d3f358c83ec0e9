using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Scoring;

/// <summary>Works over many solved cases on all cores; what comes out stands in the order of the cases.</summary>
internal static class OverCases
{
    /// <summary>Reads each case and works on it; a case that cannot be read leaves its errors in <paramref name="problems"/> and no result.</summary>
    /// <param name="work">Given the case, its place, and what was read; null when nothing comes of it.</param>
    /// <param name="progress">Called with (done, total), never twice at once.</param>
    public static IReadOnlyList<T> Run<T>(
        KnowledgeBase knowledge, IReadOnlyList<SolvedCase> solved, ProblemList problems, Func<SolvedCase, int, TeardownCase, T?> work, Action<int, int>? progress = null)
        where T : class
    {
        T?[] results = new T?[solved.Count];
        int done = 0;
        object gate = new();
        Parallel.For(0, solved.Count, i =>
        {
            CaseReading reading = CaseReader.Read(knowledge, solved[i].CasePath);
            results[i] = reading.Case is { } teardown ? work(solved[i], i, teardown) : null;
            lock (gate)
            {
                problems.AddRange(reading.Problems.Where(p => p.Severity == Severity.Error));
                progress?.Invoke(++done, solved.Count);
            }
        });
        return [.. results.OfType<T>()];
    }
}
