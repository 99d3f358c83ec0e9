using System.Diagnostics;
using System.Text.Json;
using Failwise.Cli;

namespace Failwise.Tests.Invalid;

/// <summary>Tests that watch the console cannot run beside each other.</summary>
[CollectionDefinition("console", DisableParallelization = true)]
public sealed class ConsoleTests;

[Collection("console")]
public class CommandLineTests
{
    [Theory]
    [InlineData("/dev/null", true)]
    [InlineData("/etc/../dev/stdout", true)]
    [InlineData("/dev/shm/report.html", false)]
    [InlineData("dev/report.html", false)]
    public void A_device_is_written_into_and_never_moved_over(string file, bool device) =>
        Failwise.Cli.Output.IsDevice(file).Should().Be(device && !OperatingSystem.IsWindows());

    private static readonly string Example = Repository.Folder("examples", "pump-engine");

    public static TheoryData<string> BrokenCases => BrokenCaseTests.Cases;

    [Theory]
    [MemberData(nameof(BrokenCases))]
    public void A_broken_case_ends_with_one_and_prints_only_problem_lines(string name)
    {
        Result result = Run("diagnose", Path.Combine(ExpectedProblems.CaseFolder, name));

        result.Code.Should().Be(1);
        result.Out.Should().BeEmpty();
        result.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Should().NotBeEmpty()
            .And.OnlyContain(line => line.Contains(": error FW", StringComparison.Ordinal) || line.Contains(": warning FW", StringComparison.Ordinal));
    }

    [Fact]
    public void A_good_case_ends_with_zero()
    {
        Result result = Run("diagnose", Example);

        result.Code.Should().Be(0);
        result.Out.Should().Contain("VERDICT").And.Contain("LIKELY ROOT CAUSES");
        result.Error.Should().BeEmpty();
    }

    [Fact]
    public void The_json_of_a_good_case_can_be_read()
    {
        Result result = Run("diagnose", Example, "--format", "json");

        using JsonDocument json = JsonDocument.Parse(result.Out);
        json.RootElement.GetProperty("verdict").GetProperty("kind").GetString().Should().NotBeNullOrEmpty();
    }

    [Theory]
    [InlineData("diagnose", "--formt", "json")]
    [InlineData("diagnose")]
    [InlineData("diagnos", "x")]
    [InlineData("rules")]
    [InlineData("rules", "score")]
    [InlineData("explain", "x")]
    [InlineData("plan")]
    [InlineData("plan", "x", "--rate", "y")]
    [InlineData("report")]
    [InlineData("report", "x", "-o", "report.docx")]
    [InlineData("report", "x", "--format", "pdf")]
    [InlineData("report", "x", "--edition", "ownr")]
    [InlineData("diagnose", "--no-such-flag")]
    [InlineData("rules", "check", "-x")]
    public void Wrong_use_ends_with_two_and_says_where_help_is(params string[] arguments)
    {
        Result result = Run(arguments);

        result.Code.Should().Be(2);
        result.Error.Should().MatchRegex("Try: failwise [a-z ]*--help");
    }

    [Fact]
    public void A_format_that_is_not_there_is_wrong_use()
    {
        Result result = Run("diagnose", Example, "--format", "pdf");

        result.Code.Should().Be(2);
        result.Error.Should().Contain("pdf").And.Contain("json");
    }

    [Fact]
    public void An_unknown_id_to_explain_is_wrong_use_and_the_nearest_id_is_named()
    {
        Result result = Run("explain", Example, "relief-valve-stuck-opne");

        result.Code.Should().Be(2);
        result.Error.Should().Contain("'relief-valve-stuck-opne' is no cause").And.Contain("Did you mean 'relief-valve-stuck-open'?");
    }

    [Fact]
    public void A_known_id_is_explained()
    {
        Result result = Run("explain", Example, "relief-valve-stuck-open");

        result.Code.Should().Be(0);
        result.Out.Should().Contain("root");
    }

    [Fact]
    public void A_bad_case_leaves_the_old_report_as_it_was()
    {
        using TemporaryFolder folder = new();
        string report = folder.Write("report.html", "the old report");

        Result result = Run("diagnose", Path.Combine(ExpectedProblems.CaseFolder, "unknown-words.yaml"), "-o", report);

        result.Code.Should().Be(1);
        File.ReadAllText(report).Should().Be("the old report");
        Directory.GetFiles(folder.Path).Should().ContainSingle();
    }

    [Fact]
    public void A_report_that_cannot_be_written_ends_with_one_and_leaves_nothing_behind()
    {
        using TemporaryFolder folder = new();
        string notAFolder = folder.Write("file", "x");

        Result missing = Run("diagnose", Example, "-o", Path.Combine(folder.Path, "missing", "report.md"));
        Result underFile = Run("diagnose", Example, "-o", Path.Combine(notAFolder, "report.md"));

        new[] { missing, underFile }.Should().OnlyContain(r => r.Code == 1 && r.Error.StartsWith("error: ") && r.Out.Length == 0);
        Directory.GetFileSystemEntries(folder.Path).Should().ContainSingle();
    }

    [Fact]
    public void A_folder_in_the_place_of_the_report_is_refused_and_no_draft_is_left()
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "report.md"));

        Result result = Run("diagnose", Example, "-o", Path.Combine(folder.Path, "report.md"));

        result.Code.Should().Be(1);
        Directory.GetFileSystemEntries(folder.Path).Should().ContainSingle();
    }

    [Fact]
    public void A_report_is_written_whole()
    {
        using TemporaryFolder folder = new();
        string report = Path.Combine(folder.Path, "report.html");

        Result result = Run("diagnose", Example, "--format", "html", "-o", report);

        result.Code.Should().Be(0);
        result.Out.Should().BeEmpty();
        File.ReadAllText(report).TrimEnd().Should().StartWith("<!doctype html>").And.EndWith("</html>");
        Directory.GetFiles(folder.Path).Should().ContainSingle();
    }

    [Fact]
    public void Broken_rules_end_with_one()
    {
        Result check = Run("rules", "check", Path.Combine(ExpectedProblems.RuleFolder, "loops"));
        Result overlay = Run("diagnose", Example, "--rules", Path.Combine(ExpectedProblems.RuleFolder, "strengths"));
        Result missing = Run("rules", "score", "no-such-folder");

        new[] { check, overlay, missing }.Should().OnlyContain(r => r.Code == 1 && r.Error.Contains(" error FW", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData]
    [InlineData("diagnose")]
    [InlineData("explain")]
    [InlineData("report")]
    [InlineData("rules", "check")]
    [InlineData("rules", "score")]
    [InlineData("rules", "handbook")]
    [InlineData("rules", "schema")]
    public void Help_shows_a_complete_example(params string[] command)
    {
        Result result = Run([.. command, "--help"]);

        result.Code.Should().Be(0);
        result.Out.Should().Contain("Example: failwise " + string.Join(' ', command).Trim());
    }

    [Theory]
    [InlineData(0, "diagnose", "EXAMPLE")]
    [InlineData(1, "diagnose", "CASES/unknown-words.yaml")]
    [InlineData(1, "diagnose", "CASES/bomb.yaml")]
    [InlineData(1, "diagnose", "CASES/binary.yaml")]
    [InlineData(2, "diagnose", "--no-such-flag")]
    public void The_program_itself_ends_with_the_same_codes_and_never_prints_a_stack_trace(int code, params string[] arguments)
    {
        string[] real = [.. arguments.Select(a => a.Replace("EXAMPLE", Example).Replace("CASES", ExpectedProblems.CaseFolder))];

        Result result = RunProcess(real);

        result.Code.Should().Be(code, result.Error);
        result.Error.Should().NotContain("   at ").And.NotContain("Exception");
        result.Out.Should().Match(o => code == 0 ? o.Contains("VERDICT", StringComparison.Ordinal) : o.Length == 0);
    }

    internal sealed record Result(int Code, string Out, string Error);

    internal static Result Run(params string[] arguments)
    {
        (TextWriter oldOut, TextWriter oldError) = (Console.Out, Console.Error);
        StringWriter output = new() { NewLine = "\n" }, error = new() { NewLine = "\n" };
        Console.SetOut(output);
        Console.SetError(error);
        try
        {
            return new Result(Commands.Run(arguments), output.ToString(), error.ToString());
        }
        finally
        {
            Console.SetOut(oldOut);
            Console.SetError(oldError);
        }
    }

    private static Result RunProcess(string[] arguments)
    {
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in arguments.Prepend(Path.Combine(AppContext.BaseDirectory, "failwise.dll")))
        {
            start.ArgumentList.Add(argument);
        }

        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        process.WaitForExit(60_000).Should().BeTrue();
        return new Result(process.ExitCode, output.Result, error.Result);
    }
}
