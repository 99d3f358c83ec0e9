using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Scoring;

/// <summary>What a solved case was determined to be. The engine never reads it; only the scorer compares with it.</summary>
/// <param name="Class">usable-strong, usable-weak, give-away, undetermined, not-diagnosable or sound.</param>
/// <param name="Roots">Ids under which the determined root may stand; empty when the rule base has no such root.</param>
/// <param name="Broader">Roots of the same kind that are not the determined one; counted apart, never as a hit.</param>
/// <param name="Set">tune when rules were improved with sight of the case, held-out when not.</param>
public sealed record SolvedCase(string Name, string CasePath, string Class, IReadOnlyList<string> Roots, IReadOnlyList<string> Broader, string Set)
{
    /// <summary>What the source asks to be done, where it says so.</summary>
    public IReadOnlyList<WorkDemand> Demands { get; init; } = [];

    /// <summary>Decisions about parts that the source rules out.</summary>
    public IReadOnlyList<RuledOut> Never { get; init; } = [];

    /// <summary>True when no root may be named with confidence.</summary>
    public bool IsOpen => Class is "undetermined" or "not-diagnosable" or "sound";

    /// <summary>The class under which it is scored.</summary>
    public string ScoredAs => IsOpen ? "open" : Class;

    private static readonly Shape Word = new TextShape("a word");

    private static readonly GroupShape Form = new("an expected answer", null,
        new("class", new ChoiceShape("usable-strong", "usable-weak", "give-away", "undetermined", "not-diagnosable", "sound"), true, "How much the findings carry."),
        new("roots", new EitherShape([Word, new ListShape(Word)]), false, "Ids of the determined root."),
        new("broader", new EitherShape([Word, new ListShape(Word)]), false, "Related roots, counted apart."),
        new("determined", new TextShape("a sentence"), false, "What the source determined, in own words."),
        new("set", new ChoiceShape("tune", "held-out"), false, "Whether rules were improved with sight of this case."),
        new("source", new OpenGroupShape(Word), true, "Title, issuer, year, reference."),
        new("left-out", new EitherShape([Word, new ListShape(Word)]), false, "What was left out because it states the cause."),
        new("work", WorkDemands.DemandForm, false, "What the source asks to be done."),
        new("never", WorkDemands.NeverForm, false, "Decisions about parts that the source rules out."),
        new("group", Word, false, "Part of the machine, for scores taken alone."),
        new("note", Word, false, "A remark."));

    /// <summary>Finds every folder below with a case.yaml and an expected.yaml.</summary>
    internal static IReadOnlyList<SolvedCase> ReadFolder(string folder, KnowledgeBase knowledge, ProblemList problems)
    {
        List<SolvedCase> cases = [];
        if (!Directory.Exists(folder))
        {
            problems.Error("FW001", new Location(folder, 0, 0), "there is no such folder of solved cases.");
            return cases;
        }

        foreach (string expected in Directory.EnumerateFiles(folder, "expected.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string shown = expected.Replace('\\', '/');
            if (YamlFile.Read(expected, shown, problems) is not { } root)
            {
                continue;
            }

            ProblemList mine = new();
            Form.Check(root, mine);
            problems.AddRange(mine.All);
            if (mine.HasErrors || root is not MapNode map)
            {
                continue;
            }

            foreach (ScalarNode id in map.Scalars("roots").Concat(map.Scalars("broader")).Where(s => !knowledge.Causes.ContainsKey(s.Text)))
            {
                problems.Warning("FW015", id.At, $"unknown cause '{Shape.Short(id.Text)}': this case can only be missed.{Suggest.Nearest(id.Text, knowledge.Causes.Keys.ToArray())}");
            }

            string dir = Path.GetDirectoryName(expected)!;
            cases.Add(new SolvedCase(
                Path.GetRelativePath(folder, dir).Replace('\\', '/'), Path.Combine(dir, "case.yaml"), map.Text("class")!, map.Texts("roots"), map.Texts("broader"),
                map.Text("set") ?? "held-out") { Demands = WorkDemands.Read(map, knowledge, problems), Never = WorkDemands.ReadNever(map, knowledge, problems) });
        }

        if (cases.Count == 0 && !problems.HasErrors)
        {
            problems.Error("FW033", new Location(folder, 0, 0), "no solved case here: each is a folder with a case.yaml and an expected.yaml.");
        }

        return cases;
    }
}
