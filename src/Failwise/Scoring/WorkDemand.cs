using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Work;
using Failwise.Yaml;

namespace Failwise.Scoring;

/// <summary>Work done to a part, as an expected answer names it.</summary>
/// <param name="Does">Sorts of work of which one is enough.</param>
public sealed record PartDeed(string Part, IReadOnlyList<string> Does);

/// <summary>Something that the source of a solved case asks to be done.</summary>
/// <param name="Says">The demand in own words.</param>
/// <param name="Steps">Ids of work that meet it.</param>
/// <param name="Deeds">Work on parts that meets it.</param>
public sealed record WorkDemand(string Says, IReadOnlyList<string> Steps, IReadOnlyList<PartDeed> Deeds);

/// <summary>A decision that the source of a solved case rules out.</summary>
public sealed record RuledOut(string Says, string Part, IReadOnlyList<string> Decisions);

/// <summary>Reads what a solved case demands, and compares a plan with it.</summary>
internal static class WorkDemands
{
    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Words = new EitherShape([Word, new ListShape(Word)]);

    public static readonly Shape DemandForm = new ListShape(new GroupShape("a demand", null,
        new("demands", new TextShape("a sentence"), true, "What the source asks for, in own words."),
        new("met-by", new ListShape(new EitherShape([Word, new GroupShape("work on a part", null,
            new("part", Word, true, "The part."), new("does", new EitherShape([new ChoiceShape(WorkShapes.Deeds), new ListShape(new ChoiceShape(WorkShapes.Deeds))]), true, "Sorts of work of which one is enough."))]), false), true, "Work of which one is enough.")));

    public static readonly Shape NeverForm = new ListShape(new GroupShape("a decision that is ruled out", null,
        new("says", new TextShape("a sentence"), true, "What the source rules out, in own words."),
        new("part", Word, true, "The part."), new("decide", new EitherShape([new ChoiceShape(WorkShapes.Decisions), new ListShape(new ChoiceShape(WorkShapes.Decisions))]), true, "Decisions that must not be taken.")));

    public static IReadOnlyList<WorkDemand> Read(MapNode map, KnowledgeBase knowledge, ProblemList problems)
    {
        List<WorkDemand> demands = [];
        foreach (MapNode d in map.Groups("work"))
        {
            ScalarNode[] steps = [.. d.Items("met-by").OfType<ScalarNode>()];
            MapNode[] deeds = [.. d.Items("met-by").OfType<MapNode>()];
            Unknown(steps, knowledge.Work.Keys, "FW021", "work", problems);
            Unknown(deeds.Select(m => (ScalarNode)m["part"]!), knowledge.Parts.Keys, "FW012", "part", problems);
            demands.Add(new WorkDemand(
                d.Text("demands")!, [.. steps.Select(s => s.Text)],
                [.. deeds.Where(m => knowledge.Parts.ContainsKey(m.Text("part")!)).Select(m => new PartDeed(m.Text("part")!, m.Texts("does")))]));
        }

        return demands;
    }

    public static IReadOnlyList<RuledOut> ReadNever(MapNode map, KnowledgeBase knowledge, ProblemList problems)
    {
        Unknown(map.Groups("never").Select(m => (ScalarNode)m["part"]!), knowledge.Parts.Keys, "FW012", "part", problems);
        return [.. map.Groups("never").Where(m => knowledge.Parts.ContainsKey(m.Text("part")!)).Select(m => new RuledOut(m.Text("says")!, m.Text("part")!, m.Texts("decide")))];
    }

    private static void Unknown(IEnumerable<ScalarNode> words, IEnumerable<string> known, string code, string what, ProblemList problems)
    {
        string[] all = [.. known];
        foreach (ScalarNode word in words.Where(w => !all.Contains(w.Text)))
        {
            problems.Warning(code, word.At, $"unknown {what} '{Shape.Short(word.Text)}': this demand can only be missed.{Suggest.Nearest(word.Text, all)}");
        }
    }

    /// <summary>True when some step, decision, downstream line or order of the plan meets the demand.</summary>
    public static bool IsMet(KnowledgeBase knowledge, WorkPlan plan, WorkDemand demand) =>
        plan.Items.Any(i => demand.Steps.Contains(i.Rule.Id)) || demand.Deeds.Any(d => IsDone(knowledge, plan, d));

    private static bool IsDone(KnowledgeBase knowledge, WorkPlan plan, PartDeed deed) =>
        plan.Items.Any(i => i.Rule.Part is { } part && Kin(knowledge, part, deed.Part) && deed.Does.Contains(i.Rule.Does))
        || plan.Decisions.Any(d => Kin(knowledge, d.Part, deed.Part) && deed.Does.Contains(Deed(d.Decision)))
        || plan.Downstream.Any(d => Kin(knowledge, d.Part, deed.Part) && deed.Does.Contains(Deed(d.Action)))
        || (deed.Does.Contains("replace") && plan.Orders.Parts.Any(p => p.Part is { } part && Kin(knowledge, part, deed.Part)));

    /// <summary>True when the plan takes a decision that the source rules out.</summary>
    public static bool IsBroken(KnowledgeBase knowledge, WorkPlan plan, RuledOut never) =>
        plan.Decisions.Any(d => knowledge.PartIs(d.Part, never.Part) && never.Decisions.Contains(WorkShapes.Decisions[(int)d.Decision]));

    private static bool Kin(KnowledgeBase knowledge, string a, string b) => knowledge.PartIs(a, b) || (knowledge.PartIs(b, a) && a != "part");

    private static string Deed(Decision decision) => decision == Decision.MeasureFirst ? "measure" : WorkShapes.Decisions[(int)decision];

    private static string Deed(DownstreamAction action) => action switch { DownstreamAction.Flush => "flush", DownstreamAction.Renew => "replace", _ => "inspect" };
}
