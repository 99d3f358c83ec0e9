using System.Net;
using System.Text.RegularExpressions;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Reports;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Failwise.Tests.Reports;

/// <summary>Text that a person typed, or pasted from anywhere, must come out as text.</summary>
public partial class HostileTextTests
{
    private static readonly KnowledgeBase Knowledge = Causes.TinyEngine.Rules.Knowledge();
    private static readonly MarkdownPipeline Pipes = new MarkdownPipelineBuilder().UsePipeTables().UseEmphasisExtras(Markdig.Extensions.EmphasisExtras.EmphasisExtraOptions.Strikethrough).Build();

    public static TheoryData<string> Texts => new(
        "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "a | b | c", "# a heading", "- a point", "1. a point", "12) a point", "---", "===", "***", "> a quote", "```code", "    code",
        "~~~", "[link](javascript:alert(1))", "![image](http://example.org/x.png)", "<http://example.org>", "[x]: http://example.org", "**bold** _slanted_ ~~gone~~ `code`",
        "&lt;b&gt; &amp; &#60;b&#62;", "</td></table><h1>x", "a\\", "\\<b>", "+ plus", "* star", "| --- |", "\"><svg onload=alert(1)>", "{{template}} ${x} $(x)", "tab\there", "\t# heading behind a tab", "\u202E- point behind a mark", "line\r\n# next", "vertical\u000Btab", "bell\u0007 escape\u001B[31m red",
        "right \u202Eto left\u202C and \u2066isolated\u2069", "line\u2028separator\u2029end", "emoji \U0001F527 \U0001F6A2", "é combining e\u0301", new string('w', 5000), "http://example.org/plain");

    [Theory]
    [MemberData(nameof(Texts))]
    public void Markdown_keeps_its_structure_whatever_the_text(string text)
    {
        MarkdownDocument harmless = Markdown.Parse(MarkdownReport.Write(Diagnose("plain words")), Pipes);
        MarkdownDocument hostile = Markdown.Parse(MarkdownReport.Write(Diagnose(text)), Pipes);

        Structure(hostile).Should().Equal(Structure(harmless));
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void Html_has_the_same_tags_whatever_the_text(string text)
    {
        string[] harmless = Tags(HtmlReport.Write(Diagnose("plain words")));
        string[] hostile = Tags(HtmlReport.Write(Diagnose(text)));

        hostile.Should().Equal(harmless);
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void No_edition_changes_its_shape_whatever_the_text(string text)
    {
        Diagnosis plain = Diagnose("plain words"), hostile = Diagnose(text);
        foreach (ReportEdition edition in Enum.GetValues<ReportEdition>())
        {
            Report harmless = ReportWriter.Write(plain, edition, "pictures"), report = ReportWriter.Write(hostile, edition, "pictures");

            Structure(Markdown.Parse(report.Markdown, Pipes)).Should().Equal(Structure(Markdown.Parse(harmless.Markdown, Pipes)), $"{edition}");
            Tags(HtmlReport.Write(hostile, edition)).Should().Equal(Tags(HtmlReport.Write(plain, edition)), $"{edition}");
            report.Markdown.Should().NotContainAny("\u202E", "\u202C", "\u2066", "\u2069", "\u2028", "\u2029", "\u001B");
            foreach (Picture picture in report.Pictures)
            {
                System.Xml.Linq.XDocument.Parse(picture.Svg).Root!.Name.LocalName.Should().Be("svg");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_shops_own_words_cannot_break_out_of_a_drawing(string text)
    {
        KnowledgeBase rules = Hostile(text);
        Diagnosis diagnosis = Diagnostician.Diagnose(rules, Bench.Case(rules, "{part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy}, {part: other-pump, see: sound}", "", "{kind: engine, cylinders: 4, mains: 5, number-one: x}") with { Title = text });
        Report report = ReportWriter.Write(diagnosis, ReportEdition.Owner, "pictures");

        report.Pictures.Should().NotBeEmpty();
        foreach (Picture picture in report.Pictures)
        {
            System.Xml.Linq.XDocument svg = System.Xml.Linq.XDocument.Parse(picture.Svg);
            svg.Descendants().Select(e => e.Name.LocalName).Distinct().Should().BeSubsetOf(["svg", "title", "style", "rect", "circle", "line", "path", "text"]);
            svg.Descendants().SelectMany(e => e.Attributes()).Select(a => a.Name.LocalName).Should().NotContain(a => a.StartsWith("on", StringComparison.OrdinalIgnoreCase));
            picture.Svg.Where(c => (char.IsControl(c) && c != '\n') || MarkdownText.IsDirectionMark(c)).Should().BeEmpty();
        }

        HtmlReport.Write(diagnosis, ReportEdition.Owner).Should().NotContain("<script").And.NotContain("<img src=x").And.NotContain("<svg onload");
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void The_text_itself_can_still_be_read_in_the_html(string text)
    {
        string body = WebUtility.HtmlDecode(Tag().Replace(HtmlReport.Write(Diagnose(text)), ""));

        Squeeze(body).Should().Contain(Squeeze(text));
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void No_control_character_and_no_direction_mark_reaches_a_report(string text)
    {
        Diagnosis diagnosis = Diagnose(text);

        foreach (string report in new[] { TextReport.Write(diagnosis), MarkdownReport.Write(diagnosis), HtmlReport.Write(diagnosis) })
        {
            report.Where(c => (char.IsControl(c) && c != '\n') || c is '\u202E' or '\u202C' or '\u2066' or '\u2069' or '\u2028' or '\u2029').Should().BeEmpty();
        }
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void The_screen_report_has_the_same_lines_whatever_the_title(string text)
    {
        string[] hostile = TextReport.Write(Diagnose(text)).Split('\n'), harmless = TextReport.Write(Diagnose("plain words")).Split('\n');

        hostile.SkipWhile(l => !l.StartsWith("VERDICT", StringComparison.Ordinal)).Should().Equal(harmless.SkipWhile(l => !l.StartsWith("VERDICT", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_same_case_gives_the_same_bytes()
    {
        Func<Diagnosis, string>[] reports = [TextReport.Write, MarkdownReport.Write, HtmlReport.Write, JsonReport.Write];

        foreach (Func<Diagnosis, string> report in reports)
        {
            report(Example()).Should().Be(report(Example()));
        }
    }

    [Fact]
    public void The_html_asks_the_network_for_nothing()
    {
        string html = HtmlReport.Write(Example());

        Resource().Matches(html).Select(m => m.Groups[1].Value).Where(a => !a.StartsWith('#') && !a.StartsWith("data:", StringComparison.Ordinal)).Should().BeEmpty();
        html.Should().Contain("default-src 'none'").And.NotContain("<script").And.NotContain("@import").And.NotContain("url(");
    }

    [Fact]
    public void The_html_can_be_found_in_and_read_aloud()
    {
        string html = HtmlReport.Write(Diagnose("plain words"));

        html.Should().StartWith("<!doctype html>").And.Contain("<html lang=\"en\">").And.Contain("<title>plain words</title>");
        Regex.Count(html, "<h1[ >]").Should().Be(1);
        Regex.Matches(html, "<svg [^>]*role=\"img\" aria-label=\"[^\"]+\"").Should().HaveCountGreaterThanOrEqualTo(2);
        html.Should().Contain("there is no such file any more", because: "the photo of this case has gone");
    }

    private static Diagnosis Example() => Diagnostician.Diagnose(Repository.Knowledge, CaseReader.Read(Repository.Knowledge, Repository.Folder("examples", "pump-engine")).Case!);

    /// <summary>A case with the text in every place that takes free words.</summary>
    private static Diagnosis Diagnose(string text)
    {
        TeardownCase plain = Bench.Case(Knowledge, "{part: main-bearing, see: wiped, note: x}, {part: oil-pump, see: sound}", "notes: x\nnot-looked-at: [{part: oil-filter, reason: x}]\nreadings: [{quantity: bearing-clearance, part: main-bearing, value: 0.1 mm, limit: {max: 0.2 mm, from: x}, note: x}]\n");
        TeardownCase hostile = plain with
        {
            Title = text,
            Machine = plain.Machine with { Name = text, NumberOne = text },
            Notes = [text],
            Observations = [.. plain.Observations.Select(o => o with { Note = text, Written = text })],
            NotLookedAt = [.. plain.NotLookedAt.Select(n => n with { Reason = text })],
            Measurements = [.. plain.Measurements.Select(m => m with { Quantity = text, Limit = m.Limit! with { From = text }, Note = text })],
            Photos = [new Photo("shell.jpg", text, null, default)],
            Job = new JobRecord(text, text, text, text, text, text, text, text, [text], [text], [text], [text], [text], [text]),
        };
        return Diagnostician.Diagnose(Knowledge, hostile);
    }

    /// <summary>The small rule base with every word that a drawing prints replaced.</summary>
    private static KnowledgeBase Hostile(string text)
    {
        string quoted = System.Text.Json.JsonSerializer.Serialize(text);
        return Causes.TinyEngine.Rules
            .With("causes/tests/pump-worn.yaml", $"id: pump-worn\ntitle: {quoted}\nkind: root\ngroup: other\nsays: {quoted}\nhow-common: 1 in 3\nleaves: [{{part: oil-pump, see: scored, strength: usually}}]\nleads-to: [{{cause: oil-film-lost, strength: often}}]\nsources: [a-book]\n")
            .With("patterns/wiped.yaml", $"id: wiped\nname: {quoted}\nsays: {quoted}\nseen-anyway: 1 in 100\nlook-alikes: none\nsources: [a-book]\nkind-of: worn\n")
            .With("parts/pump.yaml", $"- {{id: other-pump, name: {quoted}, kind-of: oil-pump}}\n")
            .Knowledge();
    }

    private static IEnumerable<string> Structure(MarkdownDocument document) =>
        document.Descendants().Where(d => d is not LiteralInline and not LineBreakInline and not HtmlEntityInline).Select(d => d.GetType().Name);

    // A drawing breaks long words into more lines; what may stand in it is looked at by itself.
    private static string[] Tags(string html) => [.. Tag().Matches(Regex.Replace(html, "<svg .*?</svg>", "<svg></svg>", RegexOptions.Singleline)).Select(m => m.Value).Select(t => Regex.Replace(t, "(alt|id|href)=\"[^\"]*\"", "$1"))];

    private static string Squeeze(string text) => new([.. text.Where(c => char.IsLetterOrDigit(c) || char.IsPunctuation(c) || char.IsSymbol(c) || char.IsSurrogate(c))]);

    [GeneratedRegex("<[!/a-zA-Z][^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("(?:src|href|action|poster|data)=\"([^\"]*)\"")]
    private static partial Regex Resource();
}
