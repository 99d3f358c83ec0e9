using System.Text.RegularExpressions;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Reports;
using Failwise.Securing;

namespace Failwise.Tests.Securing;

public class SecureTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    [Fact]
    public void Coolant_is_no_hazard_of_an_air_cooled_engine_and_steering_none_of_an_engine()
    {
        Hazards("{kind: engine}").Should().Contain("hz-coolant").And.Contain("hz-used-oil").And.NotContain("hz-steering");
        Hazards("{kind: engine, features: [air-cooled]}").Should().NotContain("hz-coolant");
        Hazards("{kind: steering}").Should().Contain("hz-steering").And.NotContain("hz-coolant");
    }

    [Fact]
    public void A_tooth_pattern_is_taken_before_a_gearbox_is_stripped_and_end_float_before_an_engine_is()
    {
        Lines("{kind: gearbox}", "", Threat.Dismantling).Should().Contain("st-tooth-pattern").And.NotContain("st-end-float");
        Lines("{kind: engine}", "", Threat.Dismantling).Should().Contain("st-end-float").And.NotContain("st-tooth-pattern");
    }

    [Fact]
    public void A_line_for_certain_symptoms_stays_while_nothing_is_said_and_goes_when_something_else_is()
    {
        Lines("{kind: engine}", "", Threat.Dismantling).Should().Contain("st-second-gauge");
        Lines("{kind: engine}", "oil-pressure-low", Threat.Dismantling).Should().Contain("st-second-gauge");
        Lines("{kind: engine}", "white-smoke", Threat.Dismantling).Should().NotContain("st-second-gauge");
    }

    [Fact]
    public void What_was_said_chooses_what_is_looked_for_first()
    {
        SecurePlan oil = Plan("{kind: engine, features: [pressure-fed]}", "oil-pressure-low"), heat = Plan("{kind: engine}", "overheating");

        oil.Said.Should().BeTrue();
        oil.Forecast.Select(f => f.Cause.Id).Should().Contain("relief-valve-stuck-open");
        heat.Forecast.Select(f => f.Cause.Id).Should().NotContain("relief-valve-stuck-open");
        oil.Looks.Select(l => (l.Part, l.Pattern)).Should().NotEqual(heat.Looks.Select(l => (l.Part, l.Pattern)));
        oil.Steps.Should().NotBeEmpty().And.OnlyContain(s => s.Rule.Stage == "secure" && s.Because.Count > 0);
    }

    [Fact]
    public void Only_marks_that_would_be_lost_and_were_not_looked_at_are_asked_for()
    {
        SecurePlan open = Plan("{kind: engine}", "oil-pressure-low");
        FleetingLook first = open.Looks[0];

        SecurePlan looked = Plan("{kind: engine}", "oil-pressure-low", $"observations: [{{part: {first.Part}, not: {first.Pattern}}}]\n");

        open.Looks.Should().HaveCountGreaterThan(5).And.OnlyContain(l => Knowledge.Patterns[l.Pattern].Check!.LostBy.Count > 0);
        looked.Looks.Should().NotContain(l => l.Part == first.Part && l.Pattern == first.Pattern);
    }

    [Fact]
    public void The_page_has_a_blank_for_each_place_and_every_number_in_it_is_a_source()
    {
        string page = SecureReport.Write(Knowledge, Plan("{kind: engine, cylinders: 3, mains: 4}", "compression-low"));

        page.Should().Contain("No. 3 ......").And.NotContain("No. 4 ......").And.Contain("`main-shells-1` to `main-shells-4`");
        int sources = Regex.Count(page[page.IndexOf("## Sources", StringComparison.Ordinal)..], @"^\d+\. ", RegexOptions.Multiline);
        int[] named = [.. Regex.Matches(page, @" \((\d+(?:, \d+)*)\)").SelectMany(m => m.Groups[1].Value.Split(", ")).Select(int.Parse)];
        named.Should().NotBeEmpty();
        named.Max().Should().Be(sources);
    }

    [Fact]
    public void Text_of_the_case_cannot_act_as_markdown()
    {
        SecurePlan plan = Plan("{kind: engine, name: '<b>x</b> [a](b)'}", "");

        SecureReport.Write(Knowledge, plan).Should().NotContain("<b>").And.NotContain("[a](b)");
    }

    [Fact]
    public void Every_hazard_and_securing_line_of_the_shipped_rules_is_reached_by_some_machine()
    {
        string[] kinds = [.. Knowledge.Machines.Keys.Select(k => $"{{kind: {k}}}")];
        HashSet<string> reached = [.. kinds.SelectMany(k => Plan(k, "") is var p ? p.Hazards.Concat(p.Lines.Values.SelectMany(l => l)).Select(l => l.Rule.Id) : [])];

        string[] lines = [.. Knowledge.Sheets.Values.Where(s => s.Sheet is "hazards" or "before-turning" or "before-strip" or "before-cleaning").Select(s => s.Id)];

        lines.Should().HaveCountGreaterThan(50).And.OnlyContain(l => reached.Contains(l));
    }

    [Fact]
    public void Every_tenth_published_case_gets_its_page()
    {
        string[] files = [.. Directory.EnumerateFiles(Repository.Folder("tests", "cases", "published"), "case.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Where((_, i) => i % 10 == 0)];
        files.Should().HaveCountGreaterThan(20);
        foreach (string file in files)
        {
            SecurePlan plan = SecurePlanner.Plan(Knowledge, CaseReader.ReadBegun(Knowledge, file).Case!);

            SecureReport.Write(Knowledge, plan).Should().Contain("## What can hurt someone").And.Contain("## Photos", file);
        }
    }

    private static IEnumerable<string> Hazards(string machine) => Plan(machine, "").Hazards.Select(h => h.Rule.Id);

    private static IEnumerable<string> Lines(string machine, string said, Threat threat) => Plan(machine, said).Lines[threat].Select(l => l.Rule.Id);

    private static SecurePlan Plan(string machine, string said, string more = "")
    {
        string symptoms = said.Length == 0 ? "" : $"symptoms: [{said}]\n";
        CaseReading reading = CaseReader.ReadBegunText(Knowledge, $"title: A machine\nmachine: {machine}\n{symptoms}{more}", "case.yaml");
        reading.Problems.Should().BeEmpty();
        return SecurePlanner.Plan(Knowledge, reading.Case!);
    }
}
