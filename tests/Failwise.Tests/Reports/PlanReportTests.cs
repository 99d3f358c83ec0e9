using System.Text.Json;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Reports;
using Json.Schema;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Failwise.Tests.Reports;

public class PlanReportTests
{
    private static readonly ShopRates Rates = RatesReader.Read(Repository.Knowledge, Repository.Folder("examples", "shop-rates.yaml")).Rates!;

    public static TheoryData<string> Examples => new(Directory.EnumerateDirectories(Repository.Folder("examples")).Where(d => File.Exists(Path.Combine(d, "case.yaml"))).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal));

    private static Diagnosis Example(string name) => Diagnostician.Diagnose(Repository.Knowledge, CaseReader.Read(Repository.Knowledge, Repository.Folder("examples", name)).Case!);

    [Theory]
    [MemberData(nameof(Examples))]
    public void The_json_of_a_plan_keeps_to_its_schema(string name)
    {
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Repository.Folder("docs", "schema", "plan.schema.json")), new BuildOptions { SchemaRegistry = new SchemaRegistry() });
        Diagnosis diagnosis = Example(name);

        string json = PlanJson.Write(diagnosis with { Estimate = Estimator.Price(diagnosis.Knowledge, diagnosis.Work, Rates) });

        schema.Evaluate(JsonDocument.Parse(json).RootElement).IsValid.Should().BeTrue();
    }

    [Fact]
    public void The_same_case_gives_the_same_bytes()
    {
        (Diagnosis first, Diagnosis second) = (Example("pump-engine"), Example("pump-engine"));

        PlanReport.Write(second).Should().Be(PlanReport.Write(first));
        PlanText.Write(second).Should().Be(PlanText.Write(first));
        PlanJson.Write(second).Should().Be(PlanJson.Write(first));
    }

    [Fact]
    public void Every_line_of_a_sheet_has_a_box_a_place_for_the_reading_and_for_initials()
    {
        Diagnosis diagnosis = Example("pump-engine");

        string[] rows = [.. PlanReport.Write(diagnosis).Split('\n').Where(l => l.StartsWith("| ☐", StringComparison.Ordinal))];

        rows.Should().HaveCount(diagnosis.Work.Sheets.CloseUp.Count + diagnosis.Work.Sheets.FirstStart.Count + diagnosis.Work.Sheets.FollowUp.Count);
        rows.Should().OnlyContain(r => r.EndsWith("| \\_\\_\\_ |", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("a | b | c")]
    [InlineData("# heading\r\n- point")]
    [InlineData("[link](javascript:alert(1)) **bold** `code`")]
    [InlineData("\u202Eright to left\u001B[31m")]
    public void Text_of_the_case_cannot_act_in_the_plan(string hostile)
    {
        (string markdown, string text) = Write(hostile);
        (string harmless, _) = Write("plain words");

        Shape(markdown).Should().Equal(Shape(harmless));
        text.Where(c => char.IsControl(c) && c != '\n').Should().BeEmpty();
        (markdown + text).Should().NotContain("\u202E");
    }

    private static (string Markdown, string Text) Write(string words)
    {
        Diagnosis d = Example("pump-engine");
        TeardownCase teardown = d.Case with { Title = words, Measurements = [.. d.Case.Measurements.Select(m => m with { Instrument = words, Limit = m.Limit is { } l ? l with { From = words } : null })] };
        Diagnosis hostile = Diagnostician.Diagnose(d.Knowledge, teardown);
        return (PlanReport.Write(hostile), PlanText.Write(hostile));
    }

    private static string[] Shape(string markdown) =>
        [.. Markdown.Parse(markdown, new MarkdownPipelineBuilder().UsePipeTables().Build()).Descendants().Where(n => n is Block or LinkInline or EmphasisInline or CodeInline or HtmlInline).Select(n => n.GetType().Name)];
}
