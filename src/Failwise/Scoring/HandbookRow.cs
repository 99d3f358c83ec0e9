using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Scoring;

/// <summary>What became of one published appearance-to-cause row.</summary>
/// <param name="Rank">Rank of the best of its causes among roots and states, from 1; 0 when none is in the ranking.</param>
/// <param name="Evidence">Signs, symptoms and findings that its appearance became.</param>
/// <param name="Harmless">The source calls this appearance normal: then the rank is 1 when the verdict is normal wear, else 0.</param>
public sealed record RowScore(
    string Row, bool Used, string? WhyNot, IReadOnlyList<string> Causes, int Rank, string? Leader, IReadOnlyList<string> Evidence, Location At,
    bool Harmless = false)
{
    /// <summary>True for a row that is used and whose source names causes.</summary>
    public bool NamesCauses => Used && !Harmless;
}

/// <summary>Checks the rule base against published appearance-to-cause rows: the appearance goes in, one of its causes must come out high.</summary>
public static class HandbookScorer
{
    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Words = new EitherShape([Word, new ListShape(Word)]);

    private static readonly GroupShape Form = new("a handbook row", null,
        new("row", Word, true, "Its id."),
        new("source", new OpenGroupShape(Word), true, "Title, issuer, year, where in it."),
        new("machine", new OpenGroupShape(new EitherShape([Word, new ListShape(Word)])), false, "Kind and features of the machine."),
        new("observations", new ListShape(CaseShapes.Observation), false, "The appearance of the row."),
        new("history", new ListShape(new EitherShape([Word, new OpenGroupShape(Word)])), false, "History that the row states."),
        new("symptoms", Words, false, "Symptoms that the row states."),
        new("causes", Words, false, "Ids that its causes became."),
        new("harmless", new ChoiceShape("true"), false, "true: the source calls this appearance normal; no cause may be named."),
        new("read-in", new OpenGroupShape(Word), false, "A second published source, where the first gives only part: title, issuer, year, where."),
        new("not-used", new TextShape("a reason"), false, "Why it is not used."),
        new("note", new TextShape("a remark"), false, "A remark."));

    /// <summary>Scores every row of a file.</summary>
    public static (IReadOnlyList<RowScore> Rows, IReadOnlyList<Problem> Problems) Run(KnowledgeBase knowledge, string path)
    {
        ProblemList problems = new();
        List<RowScore> rows = [];
        if (YamlFile.Read(path, path, problems) is not ListNode list)
        {
            return (rows, problems.Sorted());
        }

        foreach (Node item in list.Items)
        {
            ProblemList mine = new();
            Form.Check(item, mine);
            problems.AddRange(mine.All);
            if (item is MapNode map && !mine.HasErrors)
            {
                rows.Add(ScoreRow(knowledge, map, problems));
            }
        }

        return (rows, problems.Sorted());
    }

    private static RowScore ScoreRow(KnowledgeBase knowledge, MapNode map, ProblemList problems)
    {
        string id = map.Text("row")!;
        if (map.Text("not-used") is { } why)
        {
            return new RowScore(id, false, why, [], 0, null, [], map.At);
        }

        IReadOnlyList<string> causes = map.Texts("causes");
        foreach (ScalarNode cause in map.Scalars("causes").Where(c => !knowledge.Causes.ContainsKey(c.Text)))
        {
            problems.Error("FW015", cause.At, $"unknown cause '{Shape.Short(cause.Text)}'.{Suggest.Nearest(cause.Text, knowledge.Causes.Keys.ToArray())}");
        }

        if (AsCase(knowledge, map, id, problems) is not { } teardown)
        {
            return new RowScore(id, true, null, causes, 0, null, [], map.At);
        }

        FindingSet findings = FindingEngine.Chain(knowledge, teardown, MeasurementAssessor.Assess(knowledge, teardown));
        string[] evidence = [.. EvidenceGathering.Gather(knowledge, teardown, findings).Where(e => e.Present).Select(e => e.Id)];
        if (map.Flag("harmless"))
        {
            CauseRanking ranking = CauseRanker.Rank(knowledge, teardown, findings);
            int rank = ranking.Verdict.Kind == VerdictKind.NormalWear ? 1 : 0;
            return new RowScore(id, true, null, [], rank, ranking.Ranked.FirstOrDefault()?.Cause.Id, evidence, map.At, true);
        }

        (string Id, double P)[] order = CauseRanker.RankWithStates(knowledge, teardown, findings);
        string[] roots = [.. order.Where(o => knowledge.Causes[o.Id].IsRoot).Select(o => o.Id)];
        string[] states = [.. order.Where(o => !knowledge.Causes[o.Id].IsRoot).Select(o => o.Id)];

        // A root is ranked among roots and a mechanism among mechanisms: a mechanism nearer to the mark is always at least as likely.
        int best = causes.Select(c => Math.Max(Array.IndexOf(roots, c), Array.IndexOf(states, c)) + 1).Where(r => r > 0).DefaultIfEmpty(0).Min();
        return new RowScore(id, true, null, causes, best, roots.FirstOrDefault(), evidence, map.At);
    }

    private static TeardownCase? AsCase(KnowledgeBase knowledge, MapNode map, string id, ProblemList problems)
    {
        Location at = map.At;
        List<MapEntry> machine = map["machine"] is MapNode given ? [.. given.Entries] : [];
        foreach ((string key, string value) in new[] { ("kind", "engine"), ("cylinders", "4"), ("mains", "5") })
        {
            if (!machine.Exists(e => e.Key.Text == key))
            {
                machine.Add(new MapEntry(new ScalarNode(at, key, false), new ScalarNode(at, value, false)));
            }
        }

        List<MapEntry> entries =
        [
            new MapEntry(new ScalarNode(at, "title", false), new ScalarNode(at, id, false)),
            new MapEntry(new ScalarNode(at, "machine", false), new MapNode(at, machine)),
            .. map.Entries.Where(e => e.Key.Text is "observations" or "history" or "symptoms"),
        ];
        CaseReading reading = CaseReader.Read(knowledge, new MapNode(at, entries), at.File, new ProblemList());
        problems.AddRange(reading.Problems.Where(p => p.Severity == Severity.Error));
        return reading.Case;
    }
}
