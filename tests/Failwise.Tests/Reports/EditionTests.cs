using System.Text.RegularExpressions;
using System.Xml.Linq;
using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Reports;

namespace Failwise.Tests.Reports;

/// <summary>What each edition owes its reader, on every example.</summary>
public sealed class EditionTests
{
    private static readonly Dictionary<string, Diagnosis> Diagnoses = Directory.EnumerateDirectories(Repository.Folder("examples"))
        .Where(f => File.Exists(Path.Combine(f, CaseReader.FileInFolder))).Order(StringComparer.Ordinal)
        .ToDictionary(f => Path.GetFileName(f)!, f => Diagnostician.Diagnose(Repository.Knowledge, CaseReader.Read(Repository.Knowledge, f).Case!));

    public static TheoryData<string, ReportEdition> All
    {
        get
        {
            TheoryData<string, ReportEdition> data = [];
            foreach (string name in Diagnoses.Keys)
            {
                foreach (ReportEdition edition in Enum.GetValues<ReportEdition>())
                {
                    data.Add(name, edition);
                }
            }

            return data;
        }
    }

    public static TheoryData<string> Names => new(Diagnoses.Keys);

    [Theory]
    [MemberData(nameof(All))]
    public void The_same_case_gives_the_same_bytes(string name, ReportEdition edition)
    {
        Diagnosis again = Diagnostician.Diagnose(Repository.Knowledge, CaseReader.Read(Repository.Knowledge, Repository.Folder("examples", name)).Case!);

        Report one = ReportWriter.Write(Diagnoses[name], edition, "pictures"), two = ReportWriter.Write(again, edition, "pictures");

        two.Markdown.Should().Be(one.Markdown);
        two.Pictures.Should().Equal(one.Pictures);
        HtmlReport.Write(again, edition).Should().Be(HtmlReport.Write(Diagnoses[name], edition));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_html_holds_everything_and_asks_for_nothing(string name, ReportEdition edition)
    {
        string html = HtmlReport.Write(Diagnoses[name], edition);

        Regex.Matches(html, "(?:src|href)=\"(?!#|data:)[^\"]*\"").Should().BeEmpty();
        html.Should().NotContain("<script").And.NotContain("@import").And.NotContain("url(").And.Contain("default-src 'none'");
        Regex.Count(html, "<h1[ >]").Should().Be(1);
        Regex.Matches(html, "<svg [^>]*>").Where(m => !m.Value.Contains("role=\"img\"", StringComparison.Ordinal) || !Regex.IsMatch(m.Value, "aria-label=\"[^\"]{20,}\"")).Should().BeEmpty();
        Regex.Matches(html, "<img [^>]*>").Where(m => !Regex.IsMatch(m.Value, "alt=\"[^\"]+\"")).Should().BeEmpty();
        Regex.Count(html, "<svg ").Should().Be(edition is ReportEdition.Owner or ReportEdition.Technical ? ReportWriter.Write(Diagnoses[name], edition, "x").Pictures.Count : 0);
        Ids(html).Should().OnlyHaveUniqueItems();
        Regex.Matches(html, "href=\"#([^\"]+)\"").Select(m => m.Groups[1].Value).Should().NotBeEmpty().And.BeSubsetOf(Ids(html));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_drawing_is_sound_xml_and_says_the_same_in_words(string name)
    {
        foreach (Picture picture in ReportWriter.Write(Diagnoses[name], ReportEdition.Technical, "pictures").Pictures)
        {
            XElement svg = XDocument.Parse(picture.Svg).Root!;

            svg.Name.LocalName.Should().Be("svg");
            svg.Descendants().Select(e => e.Name.LocalName).Should().NotContain(["script", "image", "use", "foreignObject", "a"]);
            svg.Attribute("aria-label")!.Value.Should().Be(picture.Alt).And.NotBeEmpty();
            svg.Descendants().Should().NotBeEmpty();
            double[] right = [.. svg.Descendants().Where(e => e.Name.LocalName == "rect").Select(e => double.Parse(e.Attribute("x")?.Value ?? "0") + double.Parse(e.Attribute("width")!.Value))];
            right.Should().OnlyContain(x => x <= 400, "nothing stands outside the drawing");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_map_shows_every_part_that_was_looked_at(string name)
    {
        Diagnosis diagnosis = Diagnoses[name];
        string map = ReportWriter.Write(diagnosis, ReportEdition.Owner, "pictures").Pictures.Single(p => p.Name == "damage-map").Svg;
        string words = string.Join(' ', XDocument.Parse(map).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)).ToLowerInvariant();

        diagnosis.Case.Observations.Select(o => diagnosis.Knowledge.Parts[o.Part].Name.ToLowerInvariant()).Distinct()
            .Should().OnlyContain(part => words.Contains(part, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_owner_learns_what_broke_how_sure_we_are_and_what_is_done(string name)
    {
        Diagnosis diagnosis = Diagnoses[name];
        string page = ReportWriter.Write(diagnosis, ReportEdition.Owner, null).Markdown;

        page.Should().Contain("## What it means for the machine").And.Contain("## What we will do").And.NotContain(" dB").And.NotContain("deciban");
        foreach (string root in diagnosis.Causes.Verdict.Kind is VerdictKind.RootNamed or VerdictKind.Contested ? diagnosis.Causes.Verdict.Roots : [])
        {
            page.Should().Contain(MarkdownOf(diagnosis.Knowledge.Causes[root].Title)).And.Contain("## How sure we are").And.Contain("## What could happen if we do not");
        }

        page.Contains("We cannot tell yet", StringComparison.Ordinal).Should().Be(diagnosis.Causes.Verdict.Kind == VerdictKind.NotEnoughEvidence);
        page.Contains("We found no damage", StringComparison.Ordinal).Should().Be(diagnosis.Causes.Verdict.Kind == VerdictKind.NormalWear);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_trade_word_of_the_owners_page_that_the_vocabulary_explains_is_explained(string name)
    {
        Diagnosis diagnosis = Diagnoses[name];
        string page = ReportWriter.Write(diagnosis, ReportEdition.Owner, null).Markdown;
        string text = page.Split("\n## Words of the trade\n")[0], glossary = page.Split("\n## Words of the trade\n")[^1];

        foreach (Pattern pattern in diagnosis.Case.Observations.Select(o => o.Pattern).OfType<string>().Distinct().Select(p => diagnosis.Knowledge.Patterns[p]))
        {
            if (Regex.IsMatch(text, $@"(?<![\w-]){Regex.Escape(MarkdownOf(pattern.Name))}(?![\w-])", RegexOptions.IgnoreCase))
            {
                glossary.Should().Contain(MarkdownOf(pattern.Says.TrimEnd('.')));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_technical_report_keeps_what_was_told_apart_and_leaves_gaps_in_sight(string name)
    {
        Diagnosis diagnosis = Diagnoses[name];
        string page = ReportWriter.Write(diagnosis with { Case = diagnosis.Case with { Job = JobRecord.Nothing } }, ReportEdition.Technical, null).Markdown;

        string[] order = ["The answer", "The job and the machine", "What was reported", "Condition as received", "What was looked at, and what was not", "What was seen, part by part", "Analysis", "Conclusion", "Limits of this report"];
        order.Select(h => page.IndexOf($"\n## {h}\n", StringComparison.Ordinal)).Should().BeInAscendingOrder().And.OnlyContain(at => at > 0);
        page.Should().Contain("Not written down: job number, owner, asked by, purpose").And.Contain("Not written down: how it came in").And.Contain("Not written down: which parts are kept");
        foreach (NotLookedAt part in diagnosis.Case.NotLookedAt)
        {
            page.Should().Contain("- " + MarkdownOf(Capital(diagnosis.Knowledge.Parts[part.Part].Name)));
        }
    }

    [Fact]
    public void What_the_job_says_stands_in_the_report_as_written()
    {
        Diagnosis diagnosis = Diagnoses["pump-engine"];
        JobRecord job = new("2026-031", "the growers", "the committee", "to settle the cause", "in May", "shed 2", "two of us", "plate 4711", ["came on a trailer"], ["it knocked"], ["pistons in 2019"], ["crack from the frost"], ["no invoice"], ["shells, to the end of the year"]);

        string page = ReportWriter.Write(diagnosis with { Case = diagnosis.Case with { Job = job } }, ReportEdition.Technical, null).Markdown;

        string reported = page.Split("\n## What was reported\n")[1].Split("\n## ")[0], received = page.Split("\n## Condition as received\n")[1].Split("\n## ")[0];
        new[] { job.Number, job.Owner, job.AskedBy, job.Purpose, job.Date, job.Place, job.LookedBy, job.Serial, job.Existing[0], job.Papers[0] }.Should().OnlyContain(w => page.Contains(w!, StringComparison.Ordinal));
        reported.Should().Contain("it knocked").And.Contain("pistons in 2019");
        received.Should().Contain("came on a trailer").And.NotContain("it knocked");
        page.Should().NotContain("Not written down: job number");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_work_order_has_every_step_of_the_plan_once_and_in_its_order(string name)
    {
        Diagnosis diagnosis = Diagnoses[name];
        string page = ReportWriter.Write(diagnosis, ReportEdition.WorkOrder, null).Markdown;

        string[] steps = [.. Regex.Matches(page, @"^\| ☐ \| \d+ \| (?:\*(?:If it has one, check first|Check first|If not done yet|If it can still be done \([^|]*?\)):\* )?\*\*(.+?)\*\*", RegexOptions.Multiline).Select(m => m.Groups[1].Value)];
        steps.Should().Equal(diagnosis.Work.Items.Select(i => MarkdownOf(i.Rule.Title.TrimEnd('.') + ".")));
    }

    [Fact]
    public void A_step_whose_evidence_is_gone_says_so_and_a_part_that_may_not_be_fitted_is_not_taken_for_granted()
    {
        string page = ReportWriter.Write(Diagnoses["orchard-tractor-unclear"], ReportEdition.WorkOrder, null).Markdown;

        page.Should().MatchRegex(@"\*If it can still be done \(engine oil: drained and poured away\):\* \*\*Take oil samples", "the case says that the oil was poured away");
        page.Should().MatchRegex(@"\*If it has one, check first:\* \*\*Renew oil cooler", "the case does not say whether it has an oil cooler");
    }

    [Fact]
    public void Heavy_marks_without_a_photo_are_named_and_those_with_one_are_not()
    {
        Diagnosis pump = Diagnoses["pump-engine"];
        Diagnosis shown = pump with { Case = pump.Case with { Observations = [.. pump.Case.Observations.Select(o => o.Part == "relief-valve" ? o with { Photo = "valve.jpg" } : o)] } };

        NoPhoto(pump).Should().Contain("oil pressure relief valve (observation 5)");
        NoPhoto(shown).Should().NotContain("relief valve").And.Contain("oil filter");

        static string NoPhoto(Diagnosis diagnosis) => ReportWriter.Write(diagnosis, ReportEdition.Technical, null).Markdown.Split('\n').Single(l => l.StartsWith("No photo was put in of:", StringComparison.Ordinal));
    }

    [Fact]
    public void The_owner_chooses_how_far_to_go_with_time_cost_and_risk_before_signing()
    {
        Diagnosis bare = Diagnoses["pump-engine"];
        ShopRates rates = RatesReader.Read(Repository.Knowledge, Repository.Folder("examples", "shop-rates.yaml")).Rates!;
        Diagnosis priced = bare with { Estimate = Estimator.Price(bare.Knowledge, bare.Work, rates) };

        string without = Choice(ReportWriter.Write(bare, ReportEdition.Owner, null).Markdown), with = Choice(ReportWriter.Write(priced, ReportEdition.Owner, null).Markdown);

        with.Split('☐').Length.Should().Be(bare.Work.Scopes.Count + 1);
        with.Should().Contain("EUR").And.Contain("no offer");
        ReportWriter.Write(priced, ReportEdition.Owner, null).Markdown.Split("## What this page is")[1].Should().Contain("signature", "what was read before is what is signed");
        without.Should().NotContain("EUR").And.NotContain("cost");
        bare.Work.Scopes.Should().AllSatisfy(s => with.Should().Contain(MarkdownOf(s.Title)));
    }

    private static string Choice(string page) => page[page.IndexOf("## How far to go", StringComparison.Ordinal)..page.IndexOf("## What nobody could look at", StringComparison.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_close_up_sheet_has_a_box_for_every_line(string name)
    {
        Diagnosis diagnosis = Diagnoses[name];
        string page = ReportWriter.Write(diagnosis, ReportEdition.CloseUp, null).Markdown;

        page.Count(c => c == '☐').Should().Be(diagnosis.Work.Sheets.CloseUp.Count + diagnosis.Work.Sheets.FirstStart.Count + diagnosis.Work.Sheets.FollowUp.Count);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_edition_blames(string name, ReportEdition edition) =>
        Regex.Matches(ReportWriter.Write(Diagnoses[name], edition, null).Markdown, @"\b(fault of|to blame|negligen\w+|careless\w*|guilty|incompetent)\b", RegexOptions.IgnoreCase).Should().BeEmpty();

    private static string[] Ids(string html) => [.. Regex.Matches(html, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value)];

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string MarkdownOf(string text) => MarkdownText.Safe(text);
}
