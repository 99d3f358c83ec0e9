using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>Turns checked nodes into the rules that say what is done about a failure.</summary>
internal static class WorkReading
{
    public static WorkRule Work(MapNode m, ProblemList problems) => new(
        m.Text("id")!, m.Text("title")!, m.Text("does")!, m.Text("part"), m.Text("stage")!, Triggers(m), m.Texts("after"), m.Texts("instead-of"), m.Text("how"),
        m["verify"] is MapNode v ? new Verification(v.Text("how")!, v.Text("limit"), Source(v, "source"), v.Text("when")) : null,
        m.Text("hold"), m.Texts("cautions"), m.Texts("needs"), m.Texts("machines"), m.Flag("outside"), Span(m, problems),
        [.. m.Items("together").Select(t => t is MapNode g ? new TogetherPart(g.Text("part")!, g.Text("why")) : new TogetherPart(((ScalarNode)t).Text.Trim(), null))],
        m["shop"] is MapNode s ? new ShopNote(s.Text("finish"), s.Texts("do-not"), s.Texts("ask")) : null,
        [.. m.Groups("materials").Select(x => new Material(x.Text("item")!, x.Text("part"), x.Text("count"), x.Text("size"), x.Text("order-after"), x.Flag("used-up")))],
        KnowledgeReader.ReadSources(m), m.At);

    public static DecisionRule Decision(MapNode m, ProblemList problems)
    {
        IReadOnlyList<string> see = m.Texts("see");
        if (see.Count == 0 == (m["reading"] is null))
        {
            problems.Error("FW070", m.At, "a decision speaks either of what is seen ('see') or of a reading ('reading'); write one of the two.");
        }

        bool sound = see.Any(KnowledgeReader.IsSoundWord);
        return new DecisionRule(
            m.Text("id")!, m.Texts("part"), sound ? [] : see, sound, m.Text("reading"), KnowledgeReader.ExtentOf(m.Text("extent")), m.Text("decide")!,
            m.Flag("whole-set"), m.Text("limit"), Source(m, "limit-source"), m.Text("why")!, KnowledgeReader.ReadSources(m), m.At);
    }

    public static DownstreamRule Downstream(MapNode m) => new(
        m.Text("id")!, m.Text("circuit")!, m.Texts("machines"), Triggers(m),
        [.. m.Groups("stations").Select(s => new DownstreamStation(s.Text("part")!, s.Text("do")!, s.Text("says")!, s.Text("fitted"), s.Text("work"), KnowledgeReader.ReadSources(s)))],
        KnowledgeReader.ReadSources(m), m.At);

    public static SheetRule Sheet(MapNode m) => new(
        m.Text("id")!, m.Text("sheet")!, (int)m.Number("order")!.Value, m.Text("says")!, m.Text("each"),
        m["reading"] is MapNode r ? new SheetReading(r.Text("what")!, r.Text("unit"), r.Text("limit"), Source(r, "source"), r.Text("part"), r.Text("quantity")) : null,
        m.Texts("machines"), m.Texts("needs"), m.Text("fitted"), m.Texts("touched"), m.Texts("work"), m.Texts("said"), m.Text("photo"), m.Text("when"),
        m.Flag("stop"), KnowledgeReader.ReadSources(m), m.At);

    private static IReadOnlyList<WorkTrigger> Triggers(MapNode m) =>
    [
        .. m.Groups("because").Select(t => new WorkTrigger(
            t.Text("cause"), t.Text("finding"), t.Text("history"), t.Text("work"), t.Text("part"), t.Texts("see"), KnowledgeReader.ExtentOf(t.Text("extent")), t.At)),
    ];

    private static SourceRef? Source(MapNode m, string key) => m.Text(key) is { } id ? new SourceRef(id, null) : null;

    private static MinuteSpan? Span(MapNode m, ProblemList problems)
    {
        if (m.Text("minutes") is not { } text)
        {
            return null;
        }

        string[] ends = text.Split('-');
        MinuteSpan span = new(int.Parse(ends[0]), int.Parse(ends[^1]));
        if (span.Most < span.Least)
        {
            problems.Error("FW071", m.PlaceOf("minutes"), $"the span {text} runs backwards; write the smaller figure first: {ends[^1]}-{ends[0]}.");
        }

        return span;
    }
}
