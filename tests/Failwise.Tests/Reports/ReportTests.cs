using System.Text.RegularExpressions;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Reports;

namespace Failwise.Tests.Reports;

public sealed class ReportTests
{
    private const string Hostile = "<script>alert(1)</script> # not a heading | cell ![x](http://a.b/c) [link](javascript:1) **bold** `code` \u202Edesrever\u202C 😀 <img src=x onerror=1>";

    private static Diagnosis Example(string name = "pump-engine")
    {
        CaseReading reading = CaseReader.Read(Repository.Knowledge, Repository.Folder("examples", name));
        return Diagnostician.Diagnose(Repository.Knowledge, reading.Case ?? throw new InvalidOperationException(string.Join('\n', reading.Problems)));
    }

    private static Diagnosis WithHostileText()
    {
        Diagnosis clean = Example();
        TeardownCase teardown = clean.Case with
        {
            Title = Hostile,
            Notes = [Hostile, new string('x', 4_000)],
            Observations = [.. clean.Case.Observations.Select(o => o with { Note = Hostile })],
            NotLookedAt = [new NotLookedAt("oil-pump", Hostile, default)],
        };
        return Diagnostician.Diagnose(Repository.Knowledge, teardown);
    }

    public static TheoryData<string> Examples
    {
        get
        {
            TheoryData<string> data = [];
            foreach (string folder in Directory.EnumerateDirectories(Repository.Folder("examples")).Order(StringComparer.Ordinal))
            {
                data.Add(Path.GetFileName(folder));
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void The_same_case_gives_the_same_bytes_in_every_form(string name)
    {
        Diagnosis one = Example(name), two = Example(name);

        MarkdownReport.Write(two).Should().Be(MarkdownReport.Write(one));
        HtmlReport.Write(two).Should().Be(HtmlReport.Write(one));
        JsonReport.Write(two).Should().Be(JsonReport.Write(one));
        TextReport.Write(two).Should().Be(TextReport.Write(one));
    }

    [Fact]
    public void Tags_in_free_text_come_out_as_text()
    {
        string html = HtmlReport.Write(WithHostileText());

        html.Should().NotContain("<script").And.NotContain("<img src=x").And.NotContain("onerror=1>").And.NotContain("javascript:1\"");
        html.Should().Contain("&lt;script&gt;alert(1)&lt;/script&gt;");
    }

    [Fact]
    public void Markdown_in_free_text_makes_no_heading_cell_link_or_picture()
    {
        Diagnosis hostile = WithHostileText();
        string clean = MarkdownReport.Write(Example()), dirty = MarkdownReport.Write(hostile);
        static int Count(string text, string pattern) => Regex.Count(text, pattern, RegexOptions.Multiline);

        Count(dirty, "^#+ ").Should().Be(Count(clean, "^#+ "));
        Count(dirty, @"(?<!\\)!\[").Should().Be(Count(clean, @"(?<!\\)!\["));
        Count(dirty, @"(?<!\\)\]\(").Should().Be(Count(clean, @"(?<!\\)\]\("));
        Regex.Matches(dirty, @"^\| \d+ \|.*$", RegexOptions.Multiline).Select(row => Regex.Count(row.Value, @"(?<!\\)\|")).Distinct()
            .Should().BeSubsetOf([5, 6, 7], because: "no free text may open another cell");
    }

    [Fact]
    public void Marks_that_turn_text_around_are_taken_out() =>
        MarkdownReport.Write(WithHostileText()).Should().NotContain("\u202E").And.NotContain("\u202C");

    [Fact]
    public void The_html_is_one_file_that_asks_the_network_for_nothing()
    {
        string html = HtmlReport.Write(Example());

        Regex.Matches(html, "(?:src|href)=\"(?!#|data:)[^\"]*\"").Should().BeEmpty();
        html.Should().NotContain("@import").And.NotContain("url(").And.Contain("default-src 'none'");
        Regex.Count(html, "<h1").Should().Be(1);
        html.Should().Contain("<html lang=\"en\">").And.Contain("<title>").And.Contain("name=\"viewport\"");
    }

    [Fact]
    public void The_main_example_is_what_the_readme_promises()
    {
        Diagnosis diagnosis = Example();

        diagnosis.Case.Observations.Select(o => o.Number).Distinct().Count().Should().BeGreaterThanOrEqualTo(20);
        diagnosis.Causes.Ranked.Take(2).Select(r => r.Cause.Id).Should().BeEquivalentTo("oil-change-neglected", "relief-valve-stuck-open");
        diagnosis.Causes.Ranked.Take(2).SelectMany(r => r.Chains).Should().Contain(c => c.Count(s => s.Probability != null) >= 3, because: "the chain holds at least three causes");
        diagnosis.Work.Items.Should().NotBeEmpty();
    }

    [Fact]
    public void No_work_stands_before_what_must_come_first_and_none_stands_twice()
    {
        foreach (string folder in Directory.EnumerateDirectories(Repository.Folder("examples")))
        {
            string[] order = [.. Example(Path.GetFileName(folder)).Work.Items.Select(i => i.Rule.Id)];
            order.Should().OnlyHaveUniqueItems();
            foreach (string id in order)
            {
                foreach (string before in Repository.Knowledge.Work[id].After.Where(order.Contains))
                {
                    Array.IndexOf(order, before).Should().BeLessThan(Array.IndexOf(order, id), because: $"{before} comes before {id}");
                }
            }
        }
    }
}
