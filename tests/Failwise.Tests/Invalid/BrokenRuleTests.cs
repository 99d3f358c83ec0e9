using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Tests.Invalid;

public class BrokenRuleTests
{
    public static TheoryData<string> Folders => new(ExpectedProblems.Names(ExpectedProblems.RuleFolder));

    [Fact]
    public void Every_broken_rule_folder_has_its_expected_lines_beside_it()
    {
        string[] folders = [.. Directory.GetDirectories(ExpectedProblems.RuleFolder).Select(f => Path.GetFileName(f)!)];

        folders.Should().HaveCountGreaterThan(5);
        ExpectedProblems.Names(ExpectedProblems.RuleFolder).Should().BeEquivalentTo(folders);
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_broken_rule_folder_gives_every_problem_at_its_place(string name)
    {
        string folder = Path.Combine(ExpectedProblems.RuleFolder, name);

        KnowledgeReading reading = KnowledgeReader.Read(folder, TinyRules.Words.Read().Knowledge!.Files);
        List<Problem> problems = [.. reading.Problems];
        if (reading.Knowledge is { } knowledge)
        {
            problems = [.. problems.Concat(ExampleCheck.Run(knowledge)).Concat(RuleLint.Run(knowledge)).OrderBy(p => p.At.File, StringComparer.Ordinal).ThenBy(p => p.At.Line).ThenBy(p => p.At.Column).ThenBy(p => p.Code, StringComparer.Ordinal)];
        }

        problems.Select(p => p.ToString().Replace(folder + "/", "", StringComparison.Ordinal)).ShouldBe(ExpectedProblems.Read(folder));
    }

    [Fact]
    public void A_folder_with_errors_gives_no_knowledge_base()
    {
        Action load = () => KnowledgeBase.Load(Path.Combine(ExpectedProblems.RuleFolder, "references"));

        load.Should().Throw<ProblemsException>().Which.Problems.Should().HaveCountGreaterThan(10);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_named()
    {
        KnowledgeReading reading = KnowledgeReader.Read("no-such-rules");

        reading.Problems.Select(p => p.ToString()).Should().Contain("no-such-rules: error FW001: there is no such rule folder.");
    }

    [Fact]
    public void A_rule_base_must_say_how_much_a_plain_observation_weighs()
    {
        TinyRules rules = TinyRules.Words.With("vocabulary/words.yaml", "{strengths: {usually: 0.8}, sureness: {fairly-sure: 4}, extents: {trace: 0.15}}");

        KnowledgeReading reading = rules.Read();

        reading.Problems.Should().ContainSingle().Which.Message.Should().Contain("'sure'");
    }

    [Fact]
    public void A_file_of_the_shop_replaces_the_shipped_file_of_the_same_path()
    {
        using TemporaryFolder shop = new();
        shop.Write("patterns/scored.yaml", "id: scored\nname: scored deep\nsays: It looks scored.\nseen-anyway: 1 in 10\nlook-alikes: none\nsources: [judgement]\n");

        KnowledgeBase laid = KnowledgeBase.Load(shop.Path, TinyRules.Words.Knowledge());

        laid.Patterns["scored"].Name.Should().Be("scored deep");
        laid.Patterns.Should().ContainKey("wiped");
    }

    [Fact]
    public void Packing_the_rules_and_unpacking_them_loses_nothing()
    {
        IReadOnlyList<RuleFile> files = TinyRules.Words.WithFinding("wiped-lower", "{part: main-bearing, see: wiped, on: lower}").Knowledge().Files;
        using MemoryStream packed = new();

        RuleFiles.Pack(files, packed);
        packed.Position = 0;

        RuleFiles.Unpack(packed).Select(f => f.Path + Say(f.Root)).Should().Equal(files.Select(f => f.Path + Say(f.Root)));
    }

    private static string Say(Node node) => node switch
    {
        ScalarNode s => $"{s.At}'{s.Text}'{s.Quoted}",
        ListNode l => $"{l.At}[{string.Join(',', l.Items.Select(Say))}]",
        MapNode m => $"{m.At}{{{string.Join(',', m.Entries.Select(e => Say(e.Key) + ":" + Say(e.Value)))}}}",
        _ => "",
    };
}
