using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Scoring;

namespace Failwise.Tests.Content;

public sealed class ShippedRulesTests
{
    [Fact]
    public void The_shipped_rules_have_no_error() =>
        Repository.Rules.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.ToString()).Should().BeEmpty();

    [Fact]
    public void Every_finding_fires_on_its_examples_and_stays_silent_on_the_others()
    {
        Repository.Knowledge.Findings.Should().HaveCountGreaterThan(100);

        ExampleCheck.Run(Repository.Knowledge).Select(p => p.ToString()).Should().BeEmpty();
    }

    [Fact]
    public void Every_finding_has_an_example_on_either_side() =>
        Repository.Knowledge.Findings.Values.Where(f => !f.Examples.Any(e => e.Fires) || !f.Examples.Any(e => !e.Fires)).Select(f => f.Id).Should().BeEmpty();

    [Theory]
    [InlineData("engine", 1.0, 2.3)]
    [InlineData("gearbox", 0.5, 2.0)]
    [InlineData("axle", 0.4, 2.0)]
    [InlineData("driveline", 0.4, 2.0)]
    [InlineData("steering", 0.3, 2.0)]
    public void The_roots_of_a_job_add_up_to_about_one_or_two(string kind, double least, double most) =>
        RuleHealth.SumOfRoots(Repository.Knowledge, kind).Should().BeInRange(least, most);

    [Fact]
    public void Every_pattern_names_a_look_alike_or_says_none_and_every_source_is_known() =>
        Repository.Knowledge.Patterns.Should().HaveCountGreaterThan(200);

    public static TheoryData<string> HandbookFiles
    {
        get
        {
            TheoryData<string> data = [];
            foreach (string file in Directory.EnumerateFiles(Repository.Folder("tests", "knowledge", "handbook"), "*.yaml").Order(StringComparer.Ordinal))
            {
                data.Add(Path.GetFileName(file));
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(HandbookFiles))]
    public void The_appearance_of_a_published_row_alone_brings_up_one_of_its_causes(string file)
    {
        (IReadOnlyList<RowScore> rows, IReadOnlyList<Problem> problems) = HandbookScorer.Run(Repository.Knowledge, Repository.Folder("tests", "knowledge", "handbook", file));
        RowScore[] used = [.. rows.Where(r => r.Used)];

        problems.Where(p => p.Severity == Severity.Error).Select(p => p.ToString()).Should().BeEmpty();
        used.Length.Should().BeGreaterThan(10);
        rows.Where(r => !r.Used).Should().OnlyContain(r => r.WhyNot!.Length > 10, because: "a row that is not used says why");
        ((double)used.Count(r => r.Rank is >= 1 and <= 5) / used.Length).Should().BeGreaterThanOrEqualTo(0.90, because: "one of the row's causes stands in the first five in nine rows of ten");
    }
}
