using System.Text.RegularExpressions;
using System.Xml.Linq;
using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Reports;
using Failwise.Securing;
using Failwise.Sheets;
using Paper = Failwise.Sheets.Paper;

namespace Failwise.Tests.Sheets;

public partial class SheetTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    public static TheoryData<string> Examples => new(Directory.GetDirectories(Repository.Folder("examples")).Where(f => File.Exists(Path.Combine(f, "case.yaml"))).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_code_printed_on_a_sheet_can_be_typed_in(string example)
    {
        InspectionSheet sheet = SheetOf(example);
        List<(string Code, string Part)> written = [];
        foreach (SheetPart part in sheet.Parts)
        {
            foreach (string column in part.Open ? ["", "2"] : part.Columns.Append(""))
            {
                written.AddRange(part.Marks.Select((m, i) => (SheetCodes.Entry(part, column, m.Write, i % 6), part.Part.Id)));
                written.Add((SheetCodes.Entry(part, column, SheetCodes.Sound, 0), part.Part.Id));
            }

            written.Add((SheetCodes.Entry(part, "*", part.Marks[0].Write, 3) + "?", part.Part.Id));
            written.Add((SheetCodes.Entry(part, "", SheetCodes.NotLooked, 0), part.Part.Id));
            written.Add((SheetCodes.Example(part), part.Part.Id));
            written.AddRange(part.Places.Select(p => (SheetCodes.Entry(part, (part.Part.Count == "one" ? "" : "2") + p.Letter, part.Marks[0].Write, 2), part.Part.Id)));
        }

        written.Count.Should().BeGreaterThan(200);
        CodeReading reading = ShortCodes.Read(Knowledge, string.Join(";\n", written.Select(w => w.Code)));

        reading.Problems.Should().BeEmpty();
        reading.Entries.Should().HaveCount(written.Count);
        reading.Entries.Zip(written).Where(x => !x.First.Yaml.Contains(x.Second.Part, StringComparison.Ordinal)).Should().BeEmpty("a code stands for the part above it");
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_question_and_reading_of_a_sheet_can_be_typed_in(string example)
    {
        InspectionSheet sheet = SheetOf(example);
        string[] lines =
        [
            .. sheet.Symptoms.Concat(sheet.History).SelectMany(q => new[] { SheetCodes.Statement(q.Id), "!no " + q.Id }),
            .. sheet.Readings.Select(r => SheetCodes.Reading(r.Part, r.Part.Open ? "2" : "", r.Quantity, "0.05 mm")), SheetCodes.ReadingExample(sheet.Readings),
            .. sheet.Debris.Select(m => $"DB {m.Write} 2"),
        ];

        CodeReading reading = ShortCodes.Read(Knowledge, string.Join(";\n", lines));

        lines.Length.Should().BeGreaterThan(40);
        reading.Problems.Should().BeEmpty();
        reading.Entries.Should().HaveCount(lines.Length);
    }

    [Fact]
    public void A_filled_sheet_goes_into_the_case_that_it_was_printed_for()
    {
        InspectionSheet sheet = SheetOf("pump-engine");
        TeardownCase before = CaseReader.Read(Knowledge, Repository.Folder("examples", "pump-engine")).Case!;
        SheetPart[] fresh = [.. sheet.Parts.Where(p => !before.Observations.Any(o => o.Part == p.Part.Id))];
        string codes = string.Join("; ", fresh.Select(p => SheetCodes.Entry(p, p.Open ? "1" : p.Columns.LastOrDefault() ?? "", p.Marks[0].Write, 3)));

        CaseEdit edit = CaseEditor.Add(Knowledge, Repository.Folder("examples", "pump-engine"), ShortCodes.Read(Knowledge, codes).Entries, anyway: true, dryRun: true);

        edit.Problems.Where(p => p.Severity == Severity.Error).Should().BeEmpty();
        fresh.Length.Should().BeGreaterThan(20);
        edit.Case!.Observations.Count.Should().Be(before.Observations.Count + fresh.Length);
    }

    [Fact]
    public void A_sheet_has_the_numbers_of_the_machine()
    {
        InspectionSheet sheet = SheetOf("pump-engine");

        Part("main-bearing").Columns.Should().Equal("1U", "1L", "2U", "2L", "3U", "3L", "4U", "4L", "5U", "5L");
        Part("rod-journal").Columns.Should().Equal("1", "2", "3", "4");
        Part("cam-lobe").Open.Should().BeTrue("the case does not say how many lobes there are");
        Part("oil-pump").Columns.Should().BeEmpty();
        sheet.Parts.Select(p => p.Part.Id).Should().NotContain(["gear-oil", "synchro-ring", "clutch-brake"], "this engine has no gearbox in the case");

        SheetPart Part(string id) => sheet.Parts.Single(p => p.Part.Id == id);
    }

    [Fact]
    public void A_sheet_starts_with_what_to_secure_on_this_machine()
    {
        TeardownCase pump = CaseReader.Read(Knowledge, Repository.Folder("examples", "pump-engine")).Case!;
        InspectionSheet sheet = SheetPlanner.PlanWhole(Knowledge, pump, []);
        TickLine[] lines = [.. sheet.Secure.SelectMany(s => s.Lines)];
        string secure = SecureReport.Write(Knowledge, SecurePlanner.Plan(Knowledge, pump));
        string html = SheetHtml.Write(Knowledge, sheet, Paper.A4), markdown = SheetMarkdown.Write(sheet);

        sheet.Secure.Select(s => s.Title).Should().Equal("What can hurt someone", "Before it is turned over or run again", "Before it is stripped", "Before anything is washed, wiped or blown");
        lines.Length.Should().BeGreaterThan(15);
        sheet.Secure[0].Lines.Should().OnlyContain(l => secure.Contains("[ ] " + (l.Stop ? "**STOP** " : "") + l.Says, StringComparison.Ordinal), "both print the same lines");
        foreach (TickLine line in lines)
        {
            markdown.Should().Contain($"[ ] {(line.Stop ? "**STOP** " : "")}{line.Says}");
        }

        html.IndexOf("Before it is stripped", StringComparison.Ordinal).Should().BeLessThan(html.IndexOf("How to fill in", StringComparison.Ordinal));
        FluentActions.Invoking(() => XDocument.Parse(html[html.IndexOf("<body>", StringComparison.Ordinal)..html.IndexOf("</html>", StringComparison.Ordinal)].Trim())).Should().NotThrow();
        SheetPlanner.PlanWhole(Knowledge, pump, ["MB"]).Secure.Should().BeEmpty();
    }

    [Fact]
    public void The_sheets_of_a_boat_ask_nothing_about_wheels_and_axles()
    {
        string[] words = [.. Knowledge.AskedOf.Values.Where(a => a.NotWith.Contains("marine")).SelectMany(a => a.Words)];
        string[] parts = [.. Knowledge.AskedOf.Values.Where(a => a.NotWith.Contains("marine")).SelectMany(a => a.Parts)];
        InspectionSheet boat = SheetOf("workboat-gearbox");

        words.Should().NotBeEmpty();
        parts.Should().NotBeEmpty();
        boat.Symptoms.Concat(boat.History).Select(q => q.Id).Should().NotIntersectWith(words);
        boat.Parts.Select(p => p.Part.Id).Should().NotIntersectWith(parts);
    }

    [Fact]
    public void What_the_case_says_already_is_ticked()
    {
        InspectionSheet sheet = SheetOf("pump-engine");

        sheet.Symptoms.Single(s => s.Id == "oil-pressure-low-hot").Known.Should().BeTrue();
        sheet.Symptoms.Single(s => s.Id == "oil-leak").Known.Should().BeFalse();
        sheet.Symptoms.Should().Contain(s => s.Known == null);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void A_sheet_is_one_file_of_sound_markup_that_fetches_nothing(string example)
    {
        string html = SheetHtml.Write(Knowledge, SheetOf(example), Paper.A4);
        string body = html[html.IndexOf("<body>", StringComparison.Ordinal)..html.IndexOf("</html>", StringComparison.Ordinal)].Trim();

        FluentActions.Invoking(() => XDocument.Parse(body)).Should().NotThrow();
        Address().Matches(html).Select(m => m.Value).Distinct().Should().Equal(["http://www.w3.org/2000/svg"]);
        html.Should().Contain("size: A4");
        SheetHtml.Write(Knowledge, SheetOf(example), Paper.Letter).Should().Contain("size: letter");
        SheetHtml.Write(Knowledge, SheetOf(example), Paper.A4).Should().Be(html, "the same case gives the same sheet");
    }

    [Fact]
    public void Text_of_a_case_cannot_break_out_of_a_sheet()
    {
        TeardownCase teardown = CaseReader.Read(Knowledge, Repository.Folder("examples", "pump-engine")).Case! with { Title = "<script>alert(1)</script>\u202E" };
        InspectionSheet sheet = SheetPlanner.Plan(Knowledge, teardown, []);

        SheetHtml.Write(Knowledge, sheet, Paper.A4).Should().NotContain("<script>").And.NotContain("\u202E").And.Contain("&lt;script&gt;");
        SheetMarkdown.Write(sheet).Should().NotContain("<script>");
    }

    [Fact]
    public void Only_the_parts_asked_for_are_printed_and_wrong_ones_are_all_named()
    {
        TeardownCase teardown = CaseReader.Read(Knowledge, Repository.Folder("examples", "pump-engine")).Case!;

        SheetPlanner.Plan(Knowledge, teardown, ["MB", "crankpin"]).Parts.Select(p => p.Code).Should().Equal("MB", "CP");
        ProblemsException refused = FluentActions.Invoking(() => SheetPlanner.Plan(Knowledge, teardown, ["MX", "cylnder-bore"])).Should().Throw<ProblemsException>().Which;
        string[] expected = File.ReadAllLines(Repository.Folder("tests", "Failwise.Tests", "Invalid", "dialogue", "sheet-only.expected"));
        refused.Problems.Select(p => p.ToString()).Should().HaveCount(2);
        refused.Problems[1].ToString().Should().Be(expected[1]);
        refused.Problems[0].ToString().Should().StartWith(expected[0]);
    }

    private static InspectionSheet SheetOf(string example) =>
        SheetPlanner.Plan(Knowledge, CaseReader.Read(Knowledge, Repository.Folder("examples", example)).Case!, []);

    [GeneratedRegex("https?:[^\"' <)]*")]
    private static partial Regex Address();
}
