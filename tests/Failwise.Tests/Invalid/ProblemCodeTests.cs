using System.Text.RegularExpressions;

namespace Failwise.Tests.Invalid;

public partial class ProblemCodeTests
{
    private static readonly string[] CodesInSource =
        [.. Repository.SourceFiles("src").SelectMany(f => Code().Matches(File.ReadAllText(f)).Select(m => m.Value)).Distinct().Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_problem_code_occurs_in_some_expected_file()
    {
        string expected = string.Join('\n', Directory.EnumerateFiles(Repository.Folder("tests", "Failwise.Tests", "Invalid"), "*.expected", SearchOption.AllDirectories).Select(File.ReadAllText));

        CodesInSource.Should().HaveCountGreaterThan(30);
        CodesInSource.Where(c => !expected.Contains($" {c}: ", StringComparison.Ordinal)).Should().BeEmpty("each code is shown at work by a broken file");
    }

    [Fact]
    public void Every_problem_code_has_an_entry_with_a_wrong_and_a_right_example()
    {
        string page = File.ReadAllText(Repository.Folder("docs", "problems.md")).ReplaceLineEndings("\n");
        Dictionary<string, string> entries = page.Split("\n## ").Skip(1).ToDictionary(e => e[..5], StringComparer.Ordinal);

        CodesInSource.Should().HaveCountGreaterThan(30);
        entries.Keys.Should().Equal(CodesInSource);
        entries.Values.Should().OnlyContain(e => e.Contains("\nWrong: ", StringComparison.Ordinal) && e.Contains("\nRight: ", StringComparison.Ordinal));
    }

    [GeneratedRegex("FW[0-9]{3}")]
    private static partial Regex Code();
}
