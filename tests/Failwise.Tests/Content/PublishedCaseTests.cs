using System.Text.Json;
using System.Text.Json.Serialization;
using Failwise.Problems;
using Failwise.Scoring;

namespace Failwise.Tests.Content;

/// <summary>
/// The true figures over the published cases stand in tests/cases/published/score.json; none may get worse.
/// Set FAILWISE_UPDATE_SCORE=1 to rewrite the file after a change that is understood.
/// </summary>
public partial class PublishedCaseTests
{
    private static readonly string Folder = Repository.Folder("tests", "cases", "published");
    private static readonly string ScoreFile = Path.Combine(Folder, "score.json");
    private static readonly JsonSerializerOptions Form = new() { WriteIndented = true, NewLine = "\n", PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    [Fact]
    public void No_figure_over_the_published_cases_is_worse_than_the_committed_one()
    {
        Score score = Scorer.Run(Repository.Knowledge, Folder);
        SortedDictionary<string, Figures> now = new(score.Classes.ToDictionary(c => c.Key, c => new Figures(c.Value.Cases, c.Value.Top1, c.Value.Top3, c.Value.ConfidentlyWrong)), StringComparer.Ordinal);
        if (Environment.GetEnvironmentVariable("FAILWISE_UPDATE_SCORE") == "1")
        {
            File.WriteAllText(ScoreFile, JsonSerializer.Serialize(now, Form) + "\n");
        }

        Dictionary<string, Figures> committed = JsonSerializer.Deserialize<Dictionary<string, Figures>>(File.ReadAllText(ScoreFile), Form)!;

        score.Problems.Where(p => p.Severity == Severity.Error).Should().BeEmpty();
        committed.Keys.Should().BeEquivalentTo(now.Keys);
        foreach ((string name, Figures was) in committed)
        {
            now[name].Cases.Should().Be(was.Cases, $"{name}: cases were added or taken away; set FAILWISE_UPDATE_SCORE=1 and look at the difference");
            now[name].Top1.Should().BeGreaterThanOrEqualTo(was.Top1, $"{name} top-1");
            now[name].Top3.Should().BeGreaterThanOrEqualTo(was.Top3, $"{name} top-3");
            now[name].ConfidentlyWrong.Should().BeLessThanOrEqualTo(was.ConfidentlyWrong, $"{name} confidently wrong");
        }
    }

    [Fact]
    public void No_case_file_names_its_own_answer()
    {
        string[] answers = Directory.GetFiles(Folder, "expected.yaml", SearchOption.AllDirectories);
        answers.Should().HaveCountGreaterThan(50);

        foreach (SolvedCase solved in SolvedCase.ReadFolder(Folder, Repository.Knowledge, new ProblemList()))
        {
            string text = File.ReadAllText(solved.CasePath);
            solved.Roots.Where(r => text.Contains(r, StringComparison.Ordinal) && !Repository.Knowledge.Circumstances.ContainsKey(r)).Should().BeEmpty(solved.Name);
        }
    }

    [Fact]
    public void Only_the_scorer_opens_an_expected_answer()
    {
        string[] readers = [.. Repository.SourceFiles("src").Where(f => File.ReadAllText(f).Contains("expected.yaml", StringComparison.Ordinal)).Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))];

        readers.Should().NotBeEmpty().And.OnlyContain(f => f.StartsWith("src/Failwise/Scoring/", StringComparison.Ordinal));
    }

    [Fact]
    public void No_source_or_rule_file_names_a_case()
    {
        string[] names = [.. Directory.GetDirectories(Folder).Select(f => Path.GetFileName(f)!)];
        names.Should().NotBeEmpty();
        string[] texts = [.. Repository.SourceFiles("src").Concat(Directory.EnumerateFiles(Repository.Folder("rules"), "*.yaml", SearchOption.AllDirectories)).Select(File.ReadAllText)];

        texts.Should().HaveCountGreaterThan(500);
        names.Where(n => texts.Any(t => t.Contains("published/" + n, StringComparison.Ordinal) || t.Contains("case " + n, StringComparison.Ordinal))).Should().BeEmpty();
    }

    private sealed record Figures(int Cases, int Top1, int Top3, int ConfidentlyWrong);
}
