namespace Failwise.Scoring;

/// <summary>Writes docs/score-work.md.</summary>
public static class WorkScorePage
{
    /// <summary>The figures, and every demand that was missed.</summary>
    public static string Write(WorkScore score)
    {
        StringWriter w = new() { NewLine = "\n" };
        w.WriteLine("# How well the plan of work does");
        w.WriteLine();
        w.WriteLine("Published investigations often say what was done about the failure. Each such demand that a shop can act on stands, in own words, in the");
        w.WriteLine("`expected.yaml` of its case, with the work that would meet it; the planner never sees it. \"Own ranking\" is the plan that a user would");
        w.WriteLine("get; \"root settled\" is the plan when the determined root is given, which measures the plan apart from the ranking.");
        w.WriteLine("Demands on makers (\"process corrected\", \"engine replaced under recall\") were left out. Made by `failwise rules work-score tests/cases/published -o docs/score-work.md`.");
        w.WriteLine();
        w.WriteLine("| set | cases | demands | met, own ranking | met, root settled | cases whole, own ranking | cases whole, root settled | ruled-out decisions taken |");
        w.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach ((string name, WorkScore part) in new[] { ("all", score), ("tune", Only(score, "tune")), ("held-out", Only(score, "held-out")) }.Where(x => x.Item2.Cases.Count > 0))
        {
            (int own, int settled) = part.Whole;
            w.WriteLine($"| {name} | {part.Cases.Count} | {part.Demands} | {part.Met} | {part.MetSettled} | {own} | {settled} | {part.Cases.Sum(c => c.Broken.Count)} of {part.Cases.Sum(c => c.Case.Never.Count)} |");
        }

        w.WriteLine();
        Misses(w, "Missed although the root was settled", score, c => c.MissedSettled);
        Misses(w, "Missed by our own ranking only", score, c => [.. c.Missed.Where(d => !c.MissedSettled.Contains(d))]);
        w.WriteLine("## Decisions that a source rules out");
        w.WriteLine();
        string[] broken = [.. score.Cases.SelectMany(c => c.Broken.Select(b => $"- {c.Case.Name}: {b.Says}"))];
        w.WriteLine(broken.Length == 0 ? "None." : string.Join('\n', broken));
        return w.ToString();
    }

    private static WorkScore Only(WorkScore score, string set) => score with { Cases = [.. score.Cases.Where(c => c.Case.Set == set)] };

    private static void Misses(StringWriter w, string title, WorkScore score, Func<CaseWorkScore, IReadOnlyList<WorkDemand>> which)
    {
        w.WriteLine($"## {title}");
        w.WriteLine();
        string[] lines = [.. score.Cases.SelectMany(c => which(c).Select(d => $"- {c.Case.Name} ({c.Case.Set}): {d.Says}"))];
        w.WriteLine(lines.Length == 0 ? "None." : string.Join('\n', lines));
        w.WriteLine();
    }
}
