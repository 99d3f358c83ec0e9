using Failwise.Cases;
using Failwise.Pricing;
using Failwise.Reports;

namespace Failwise.Tests.Reports;

/// <summary>
/// Reports kept as files, so that a change of layout or wording is seen and read before it goes out. They pin what is printed, not what is true.
/// FAILWISE_UPDATE_GOLDEN=1 dotnet test tests/Failwise.Tests --filter GoldenReportTests rewrites them.
/// </summary>
public sealed class GoldenReportTests
{
    private static readonly string Golden = Repository.Folder("tests", "golden");

    private static readonly string[] Examples = [.. Directory.EnumerateDirectories(Repository.Folder("examples"))
        .Where(f => File.Exists(Path.Combine(f, CaseReader.FileInFolder))).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Names => new(Examples);

    [Theory]
    [MemberData(nameof(Names))]
    public void The_reports_of_an_example_are_those_that_were_read_over(string name)
    {
        Diagnosis diagnosis = Diagnostician.Diagnose(Repository.Knowledge, CaseReader.Read(Repository.Knowledge, Repository.Folder("examples", name)).Case!);
        ShopRates rates = RatesReader.Read(Repository.Knowledge, Repository.Folder("examples", "shop-rates.yaml")).Rates!;
        diagnosis = diagnosis with { Estimate = Estimator.Price(diagnosis.Knowledge, diagnosis.Work, rates) };
        SortedDictionary<string, string> now = new(StringComparer.Ordinal);
        foreach (ReportEdition edition in Enum.GetValues<ReportEdition>())
        {
            Report report = ReportWriter.Write(diagnosis, edition, "pictures");
            now[EditionNames.WordFor(edition) + ".md"] = report.Markdown;
            foreach (Picture picture in report.Pictures)
            {
                now[$"pictures/{picture.Name}.svg"] = picture.Svg;
            }
        }

        if (Environment.GetEnvironmentVariable("FAILWISE_UPDATE_GOLDEN") == "1")
        {
            Rewrite(name, now);
        }

        now.Keys.Should().BeEquivalentTo(Kept(name));
        foreach ((string file, string text) in now)
        {
            File.ReadAllText(Path.Combine(Golden, name, file)).ReplaceLineEndings("\n").Should().Be(text, $"{name}/{file} was read over; after a change that you can explain, rewrite it with FAILWISE_UPDATE_GOLDEN=1 and read it again");
        }
    }

    [Fact]
    public void No_golden_report_is_left_of_an_example_that_has_gone() =>
        Directory.EnumerateDirectories(Golden).Select(f => Path.GetFileName(f)!).Should().BeEquivalentTo(Examples);

    private static string[] Kept(string name) => Directory.Exists(Path.Combine(Golden, name))
        ? [.. Directory.EnumerateFiles(Path.Combine(Golden, name), "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Path.Combine(Golden, name), f).Replace('\\', '/')).Where(f => f.EndsWith(".md", StringComparison.Ordinal) || f.EndsWith(".svg", StringComparison.Ordinal))]
        : [];

    private static void Rewrite(string name, SortedDictionary<string, string> now)
    {
        foreach (string old in Kept(name).Except(now.Keys))
        {
            File.Delete(Path.Combine(Golden, name, old));
        }

        foreach ((string file, string text) in now)
        {
            string path = Path.Combine(Golden, name, file);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }
    }
}
