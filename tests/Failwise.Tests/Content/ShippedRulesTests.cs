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

    [Fact]
    public void A_cause_called_sourced_names_a_published_source()
    {
        string[] unread = ["common-practice", "from-memory", "judgement"];

        Repository.Knowledge.Causes.Values.Where(c => c.Status != "draft" && c.Sources.All(s => unread.Contains(s.Id))).Select(c => c.Id).Should().BeEmpty();
    }

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
        RowScore[] used = [.. rows.Where(r => r.NamesCauses)];

        problems.Where(p => p.Severity == Severity.Error).Select(p => p.ToString()).Should().BeEmpty();
        used.Length.Should().BeGreaterThan(10);
        rows.Where(r => !r.Used && r.WhyNot!.Length <= 10).Should().BeEmpty(because: "a row that is not used says why");
        ((double)used.Count(r => r.Rank is >= 1 and <= 5) / used.Length).Should().BeGreaterThanOrEqualTo(0.90, because: "one of the row's causes stands in the first five in nine rows of ten");
    }

    [Theory]
    [MemberData(nameof(HandbookFiles))]
    public void What_a_published_row_calls_normal_is_called_normal(string file)
    {
        (IReadOnlyList<RowScore> rows, _) = HandbookScorer.Run(Repository.Knowledge, Repository.Folder("tests", "knowledge", "handbook", file));

        rows.Where(r => r.Harmless && r.Rank == 0).Select(r => $"{r.Row}: {r.Leader}").Should().BeEmpty();
    }

    [Fact]
    public void Nearly_every_published_row_is_used()
    {
        RowScore[] rows = [.. Directory.EnumerateFiles(Repository.Folder("tests", "knowledge", "handbook"), "*.yaml").SelectMany(f => HandbookScorer.Run(Repository.Knowledge, f).Rows)];

        rows.Length.Should().BeGreaterThanOrEqualTo(675);
        ((double)rows.Count(r => r.Used) / rows.Length).Should().BeGreaterThanOrEqualTo(0.95);
    }

    [Theory]
    [InlineData("{part: plain-bearing, see: normal-wear-pattern}", 1)]
    [InlineData("{part: main-bearing, see: seized, extent: heavy}", 0)]
    public void A_row_called_harmless_is_right_only_when_the_verdict_is_normal_wear(string observation, int rank)
    {
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".yaml");
        File.WriteAllText(path, $"- row: probe\n  source: {{title: invented for this test}}\n  observations: [{observation}]\n  harmless: true\n");
        try
        {
            RowScore row = HandbookScorer.Run(Repository.Knowledge, path).Rows.Single();

            row.Harmless.Should().BeTrue();
            row.NamesCauses.Should().BeFalse();
            row.Rank.Should().Be(rank);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
