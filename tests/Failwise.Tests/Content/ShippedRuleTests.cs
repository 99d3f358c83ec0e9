using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Scoring;

namespace Failwise.Tests.Content;

public class ShippedRuleTests
{
    public static TheoryData<string> Handbooks => new(Directory.GetFiles(Repository.Folder("tests", "knowledge", "handbook"), "*.yaml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));

    public static TheoryData<string> Kinds => new(Repository.Knowledge.Machines.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void The_shipped_rules_have_no_error()
    {
        Repository.Rules.Problems.Where(p => p.Severity == Severity.Error).Should().BeEmpty();
        Repository.Knowledge.Causes.Should().HaveCountGreaterThan(100);
    }

    [Fact]
    public void Every_example_of_every_finding_comes_true()
    {
        Repository.Knowledge.Findings.Values.Should().HaveCountGreaterThan(50).And.OnlyContain(f => f.Examples.Any(e => e.Fires) && f.Examples.Any(e => !e.Fires));
        ExampleCheck.Run(Repository.Knowledge).Should().BeEmpty();
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_roots_of_a_machine_add_up_to_about_one_a_job(string kind) =>
        RuleHealth.SumOfRoots(Repository.Knowledge, kind).Should().BeInRange(0.4, 2.2);

    [Theory]
    [MemberData(nameof(Handbooks))]
    public void Nine_in_ten_published_rows_have_one_of_their_causes_in_the_first_five(string file)
    {
        (IReadOnlyList<RowScore> rows, IReadOnlyList<Problem> problems) = HandbookScorer.Run(Repository.Knowledge, Repository.Folder("tests", "knowledge", "handbook", file));

        RowScore[] used = [.. rows.Where(r => r.Used)];
        problems.Where(p => p.Severity == Severity.Error).Should().BeEmpty();
        used.Should().NotBeEmpty();
        double share = (double)used.Count(r => r.Rank is >= 1 and <= 5) / used.Length;
        share.Should().BeGreaterThanOrEqualTo(0.9, string.Join(", ", used.Where(r => r.Rank is 0 or > 5).Select(r => r.Row)));
    }

    [Fact]
    public void Every_row_that_is_not_used_says_why()
    {
        RowScore[] left = [.. Directory.GetFiles(Repository.Folder("tests", "knowledge", "handbook"), "*.yaml").SelectMany(f => File.ReadAllText(f).Contains("not-used:", StringComparison.Ordinal) ? HandbookScorer.Run(Repository.Knowledge, f).Rows : []).Where(r => !r.Used)];

        left.Should().NotBeEmpty().And.OnlyContain(r => r.WhyNot!.Length > 10);
    }
}
