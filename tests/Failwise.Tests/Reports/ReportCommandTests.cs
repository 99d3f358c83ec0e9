using System.Text.RegularExpressions;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Reports;

/// <summary>The report command at work: files, pictures beside them, photos of all sorts, and a PDF or a clear word why not.</summary>
[Collection("console")]
public sealed class ReportCommandTests
{
    private static readonly byte[] Pixel = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");
    private static readonly string Example = Repository.Folder("examples", "pump-engine");

    [Theory]
    [InlineData("owner", "What went wrong first")]
    [InlineData("technical", "What was looked at, and what was not")]
    [InlineData("work-order", "Steps, in order")]
    [InlineData("close-up", "Before closing up")]
    public void Each_edition_is_written_in_the_form_that_the_ending_names(string edition, string heading)
    {
        using TemporaryFolder folder = new();

        CommandLineTests.Run("report", Example, "--edition", edition, "-o", Path.Combine(folder.Path, "r.html")).Code.Should().Be(0);
        CommandLineTests.Run("report", Example, "--edition", edition, "-o", Path.Combine(folder.Path, "r.md")).Code.Should().Be(0);

        File.ReadAllText(Path.Combine(folder.Path, "r.html")).Should().StartWith("<!doctype html>").And.Contain($">{heading}</h2>");
        File.ReadAllText(Path.Combine(folder.Path, "r.md")).Should().Contain($"\n## {heading}\n");
    }

    [Fact]
    public void Every_picture_that_the_markdown_names_lies_beside_it()
    {
        using TemporaryFolder folder = new();

        CommandLineTests.Run("report", CaseWithPhotos(folder), "-o", Path.Combine(folder.Path, "my report.md")).Code.Should().Be(0);

        string[] named = [.. Regex.Matches(File.ReadAllText(Path.Combine(folder.Path, "my report.md")), @"(?<!\\)\]\(<([^>]+)>\)").Select(m => Uri.UnescapeDataString(m.Groups[1].Value))];
        named.Should().HaveCountGreaterThanOrEqualTo(2).And.Contain("my report-pictures/as found #1.png");
        named.Should().OnlyContain(n => File.Exists(Path.Combine(folder.Path, n)));
        File.ReadAllBytes(Path.Combine(folder.Path, "my report-pictures", "as found #1.png")).Should().Equal(Pixel, because: "originals are copied as they are");
    }

    [Fact]
    public void Photos_that_cannot_be_shown_are_named_with_the_reason_and_the_report_is_written_all_the_same()
    {
        using TemporaryFolder folder = new();
        string file = CaseWithPhotos(folder), output = Path.Combine(folder.Path, "r.html");

        CommandLineTests.Result result = CommandLineTests.Run("report", file, "-o", output);

        result.Code.Should().Be(0);
        string[] warnings = [.. result.Error.Split('\n').Where(l => l.Contains("FW080", StringComparison.Ordinal)).Select(l => l.Replace(folder.Path.Replace('\\', '/') + "/", "", StringComparison.Ordinal))];
        warnings.Should().Equal(File.ReadAllLines(Repository.Folder("tests", "Failwise.Tests", "Invalid", "reports", "photos.expected")));
        string html = File.ReadAllText(output);
        html.Should().Contain("the file is not a picture").And.Contain("larger than 12 MB").And.Contain("<a href=\"huge.jpg\">");
        Regex.Count(html, "<img src=\"data:image/png;base64,").Should().Be(1);
    }

    [Fact]
    public void Without_a_browser_the_pdf_is_refused_with_a_way_out_and_nothing_is_written()
    {
        using TemporaryFolder folder = new();
        string pdf = Path.Combine(folder.Path, "report.pdf");
        string? path = Environment.GetEnvironmentVariable("PATH"), named = Environment.GetEnvironmentVariable("FAILWISE_CHROMIUM");
        try
        {
            Environment.SetEnvironmentVariable("FAILWISE_CHROMIUM", null);
            Environment.SetEnvironmentVariable("PATH", folder.Path);
            CommandLineTests.Result none = CommandLineTests.Run("report", Example, "-o", pdf);
            Environment.SetEnvironmentVariable("FAILWISE_CHROMIUM", "no-such-program");
            CommandLineTests.Result wrong = CommandLineTests.Run("report", Example, "-o", pdf);

            new[] { none.Code, wrong.Code }.Should().Equal(1, 1);
            (none.Error + wrong.Error).Replace(folder.Path + Path.DirectorySeparatorChar, "", StringComparison.Ordinal)
                .Should().Be(File.ReadAllText(Repository.Folder("tests", "Failwise.Tests", "Invalid", "reports", "pdf.expected")));
        }
        finally
        {
            Environment.SetEnvironmentVariable("PATH", path);
            Environment.SetEnvironmentVariable("FAILWISE_CHROMIUM", named);
        }

        Directory.GetFiles(folder.Path).Should().BeEmpty();
    }

    private static string CaseWithPhotos(TemporaryFolder folder)
    {
        File.WriteAllBytes(Path.Combine(folder.Path, "as found #1.png"), Pixel);
        folder.Write("notes.jpg", "not a picture");
        folder.Write("telephone.heic", "\0\0\0\u0018ftypheic\0\0\0\0");
        using (FileStream huge = File.Create(Path.Combine(folder.Path, "huge.jpg")))
        {
            huge.Write([0xFF, 0xD8, 0xFF, 0xE0]);
            huge.SetLength(13L * 1024 * 1024);
        }

        return folder.Write("case.yaml", "title: Photos\nmachine: {kind: engine, cylinders: 4, mains: 5}\nphotos:\n  - {file: 'as found #1.png', shows: As found}\n"
            + "  - {file: notes.jpg}\n  - {file: huge.jpg}\n  - {file: telephone.heic}\nobservations: [{part: main-bearing, at: 3, on: lower, see: wiped, photo: 'as found #1.png'}]\n");
    }
}
