using Failwise.Cases;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Tests;

/// <summary>
/// A rule base small enough to check by hand. Its ids are words of the trade, its figures are made up for the tests and say nothing
/// about real machines.
/// </summary>
internal sealed class TinyRules
{
    private static readonly (string Path, string Yaml)[] Base =
    [
        ("vocabulary/machines.yaml", "- {id: engine, name: engine}\n- {id: gearbox, name: gearbox}\n"),
        ("vocabulary/features.yaml",
            """
            - {id: diesel, choice: fuel, says: Burns diesel.}
            - {id: petrol, choice: fuel, says: Burns petrol.}
            - {id: turbocharged, says: Has a turbocharger.}
            """),
        ("vocabulary/places.yaml",
            """
            - {axis: half, words: [upper, lower]}
            - {axis: edge, words: [front-edge, rear-edge, both-edges, one-edge]}
            - {axis: zone, words: [oil-hole, all-round]}
            """),
        ("vocabulary/words.yaml",
            """
            strengths: {usually: 0.80}
            sureness: {sure: 60, fairly-sure: 4, doubtful: 1.5}
            extents: {trace: 0.15, light: 0.5, moderate: 1, heavy: 1, destroyed: 1}
            """),
        ("parts/base.yaml",
            """
            - {id: plain-bearing, name: plain bearing}
            - {id: main-bearing, name: main bearing, kind-of: plain-bearing, count: mains, words: [main shell]}
            - {id: rod-bearing, name: rod bearing, kind-of: plain-bearing, count: rods}
            - {id: oil-pump, name: oil pump, count: one}
            - {id: oil-filter, name: oil filter}
            - {id: oil-debris, name: debris in the oil}
            """),
        ("patterns/worn.yaml", Pattern("worn")),
        ("patterns/wiped.yaml", Pattern("wiped", "kind-of: worn\nwords: [smeared over]\n")),
        ("patterns/scored.yaml", Pattern("scored")),
        ("patterns/stuck.yaml", Pattern("stuck")),
        ("patterns/polished.yaml", Pattern("polished", "sound: true\n", "1 in 2")),
        ("sources/books.yaml", "- {id: a-book, title: A book}\n"),
        ("history/base.yaml",
            """
            - {id: oil-change-overdue, says: The oil was left in too long., how-common: 1 in 10}
            - {id: same-place-failed-before, says: The same place failed before., how-common: 1 in 50}
            - {id: early-after-overhaul, says: It failed soon after an overhaul., how-common: 1 in 6, when: {number: hours-since-overhaul, below: 100}}
            """),
        ("symptoms/base.yaml", "- {id: oil-pressure-low, says: Oil pressure was low., seen-anyway: 1 in 20}\n- {id: knocking, says: It knocked., seen-anyway: 1 in 20}\n"),
    ];

    private readonly IReadOnlyList<(string Path, string Yaml)> files;

    private TinyRules(IReadOnlyList<(string, string)> files) => this.files = files;

    public static TinyRules Words { get; } = new(Base);

    public TinyRules With(string path, string yaml) => new([.. files.Where(f => f.Path != path), (path, yaml)]);

    /// <summary>Adds a finding with this condition.</summary>
    public TinyRules WithFinding(string id, string when, string more = "") => With($"findings/tests/{id}.yaml",
        $"""
        id: {id}
        says: This is {id}.
        role: sign
        when: {when}
        look-alikes: none
        {more}
        examples:
          fires: [[{Example}]]
          silent: [[{Example}]]
        sources: [a-book]
        """);

    public TinyRules WithCause(string id, string kind, string more) => With($"causes/tests/{id}.yaml",
        $"""
        id: {id}
        title: {id.Replace('-', ' ')}
        kind: {kind}
        {(kind == "root" ? "group: other" : "")}
        says: It is {id}.
        {more}
        sources: [a-book]
        """);

    private static string Example => "{part: main-bearing, see: wiped}";

    public KnowledgeReading Read()
    {
        ProblemList problems = new();
        List<RuleFile> parsed = [];
        foreach ((string path, string yaml) in files.OrderBy(f => f.Path, StringComparer.Ordinal))
        {
            if (YamlFile.Parse(yaml, path, problems) is { } root)
            {
                parsed.Add(new RuleFile(path, root));
            }
        }

        return KnowledgeReader.Build(parsed, problems);
    }

    public KnowledgeBase Knowledge()
    {
        KnowledgeReading reading = Read();
        reading.Problems.Should().BeEmpty("a tiny rule base must itself be sound");
        return reading.Knowledge!;
    }

    private static string Pattern(string id, string more = "", string anyway = "1 in 100") =>
        $"id: {id}\nname: {id}\nsays: It looks {id}.\nseen-anyway: {anyway}\nlook-alikes: none\nsources: [a-book]\n{more}";
}

/// <summary>Cases written as a person writes them.</summary>
internal static class Bench
{
    public const string FiveMains = "{kind: engine, cylinders: 4, mains: 5}";

    public static CaseReading Read(KnowledgeBase knowledge, string yaml)
    {
        ProblemList problems = new();
        Node root = YamlFile.Parse(yaml, "case.yaml", problems)!;
        problems.All.Should().BeEmpty();
        return CaseReader.Read(knowledge, root, "case.yaml", problems);
    }

    /// <summary>A case with these observations on an engine with five main bearings.</summary>
    public static TeardownCase Case(KnowledgeBase knowledge, string observations, string more = "", string machine = FiveMains)
    {
        CaseReading reading = Read(knowledge, $"title: A case\nmachine: {machine}\n{(observations.Length > 0 ? $"observations: [{observations}]\n" : "")}{more}");
        reading.Problems.Where(p => p.Severity == Severity.Error).Should().BeEmpty();
        return reading.Case!;
    }

    public static FindingSet Chain(KnowledgeBase knowledge, TeardownCase teardown) =>
        FindingEngine.Chain(knowledge, teardown, MeasurementAssessor.Assess(knowledge, teardown));
}
