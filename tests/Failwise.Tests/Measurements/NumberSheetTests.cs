using Failwise.Calculations;
using Failwise.Cases;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Tests.Measurements;

public class NumberSheetTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    [Fact]
    public void A_begun_calculation_says_what_is_missing_and_the_rest_is_worked()
    {
        IReadOnlyList<WorkedNumber> worked = Work("{work-out: bearing-film, part: rod-bearing, given: {grade: SAE 30, oil-temperature: 100 °C, diameter: 50 mm, speed: 700 rpm, journal-rq: 0.4 µm}}");

        worked.Select(w => w.Result.Calculation.Id).Should().Equal("typical-oil-viscosity", "journal-bearing-film", "film-against-roughness");
        worked[0].Result.Worked.Should().BeTrue();
        worked[1].Result.Missing.Select(m => m.Name).Should().Equal("length", "clearance", "load");
        worked[2].Result.Missing.Select(m => m.Name).Should().Equal("least-film", "bearing-rq");
        worked.SelectMany(w => w.Result.Outputs).Should().OnlyContain(o => o.Number == null || double.IsFinite(o.Number.Value));
    }

    [Fact]
    public void What_nobody_began_is_not_mentioned() =>
        Work("{work-out: relief-valve, given: {rate: 5 N/mm, preload: 10 mm, seat: 12 mm}}").Select(w => w.Result.Calculation.Id).Should().Equal("relief-valve-pressure");

    [Fact]
    public void Oil_from_two_viscosities_is_taken_before_a_typical_one()
    {
        IReadOnlyList<WorkedNumber> worked = Work("{work-out: bearing-film, given: {viscosity-40: 105 cSt, viscosity-100: 14 cSt, grade: SAE 30, oil-temperature: 100 °C, density: 0.85 kg/L, diameter: 50 mm, length: 25 mm, clearance: 0.05 mm, speed: 1500 rpm, load: 1 kN}}");

        WorkedNumber film = worked.Single(w => w.Result.Calculation.Id == "journal-bearing-film");
        film.Origins["viscosity"].Should().Be("worked out by viscosity-at-temperature");
        film.Result.Inputs.Single(i => i.Input.Name == "viscosity").Text.Should().StartWith("11.9 mPa·s", because: "14 mm²/s times 0.85 is 11.9 mPa·s");
    }

    [Fact]
    public void Measured_clearances_and_diameters_feed_the_calculation_in_the_order_of_the_oil()
    {
        IReadOnlyList<WorkedNumber> worked = Work(
            "{work-out: oil-gallery, part: main-bearing, given: {viscosity: 8 mPa·s, land: 10 mm, pump-delivery: 20 L/min, relief-pressure: 4 bar}}",
            "readings: [{part: main-journal, unit: mm, table: {1: 60.00, 2: 59.99, 3: 59.98}}, {part: main-bearing, unit: mm, table: {1: 60.06, 2: 60.06, 3: 60.06}}]\n");

        WorkedNumber gallery = worked.Single();
        gallery.Result.Inputs.Single(i => i.Input.Name == "clearances").Text.Should().StartWith("0.08 mm").And.Contain("; 0.06 mm").And.EndWith("0.07 mm (0.0028 in)", because: "the oil reaches No. 3, then 1, then 2");
        gallery.Origins["clearances"].Should().StartWith("readings ");
        gallery.Result.Worked.Should().BeTrue();
    }

    [Fact]
    public void A_figure_that_is_given_wins_over_a_reading()
    {
        WorkedNumber gallery = Work(
            "{work-out: oil-gallery, part: main-bearing, given: {clearances: [0.05 mm, 0.05 mm], diameter: 50 mm, viscosity: 8 mPa·s, land: 10 mm, pump-delivery: 20 L/min, relief-pressure: 4 bar}}",
            "readings: [{part: main-journal, unit: mm, table: {1: 60.00, 2: 59.99}}, {part: main-bearing, unit: mm, table: {1: 60.06, 2: 60.06}}]\n").Single();

        gallery.Origins.Should().BeEmpty();
    }

    [Fact]
    public void A_formula_that_refuses_says_why_and_stops_nothing_else()
    {
        IReadOnlyList<WorkedNumber> worked = Work(
            "{work-out: stuck-relief-valve, given: {pump-delivery: 20 L/min, seat: 12 mm, stuck-lift: 6 mm}}, {work-out: leak-down, given: {reading: 62 psi}}");

        worked[0].Result.Problems.Should().ContainSingle().Which.Should().Contain("a quarter of the seat");
        worked[0].Result.Outputs.Should().BeEmpty();
        worked[1].Result.Worked.Should().BeTrue();
    }

    [Theory]
    [InlineData("below: 1", "0.5", true)]
    [InlineData("below: 1", "5", false)]
    [InlineData("above: 1, below: 3", "5", false)]
    [InlineData("above: 1, below: 3", "2", true)]
    public void A_rule_may_ask_about_a_result(string bounds, string lambda, bool fires)
    {
        // Film and one roughness of 1 µm beside a vanishing one: lambda is the film in µm.
        KnowledgeBase tiny = TinyRules.Words.WithFinding("asked", $"{{result: film-against-roughness, output: lambda, {bounds}}}").Knowledge();
        TeardownCase teardown = Bench.Case(tiny, "", $"numbers: [{{work-out: film-against-roughness, given: {{least-film: {lambda} µm, journal-rq: 1 µm, bearing-rq: 0.001 µm}}}}]\n");

        FindingSet found = Bench.Chain(tiny, teardown);

        found.Fired.Any(f => f.Id == "asked").Should().Be(fires);
        found.Contradicted.Any(f => f.Id == "asked").Should().Be(!fires);
        if (fires)
        {
            found.Fired.Single().Answer.Reasons.Should().Equal(new Reason("calculation", "1"));
        }
    }

    [Fact]
    public void A_rule_about_a_result_stays_open_when_nothing_was_worked()
    {
        KnowledgeBase tiny = TinyRules.Words.WithFinding("asked", "{result: film-against-roughness, output: lambda, below: 1}").Knowledge();
        FindingSet found = Bench.Chain(tiny, Bench.Case(tiny, "", "numbers: [{work-out: film-against-roughness, given: {least-film: 1 µm}}]\n"));

        found.Fired.Concat(found.Contradicted).Should().BeEmpty();
    }

    [Fact]
    public void Every_sheet_names_calculations_and_inputs_that_exist()
    {
        SheetCatalog.All.Should().NotBeEmpty();
        foreach (SheetStep step in SheetCatalog.All.SelectMany(s => s.Steps))
        {
            step.Entry.Should().NotBeNull();
            step.Feeds.Keys.Should().BeSubsetOf(step.Entry.Inputs.Select(i => i.Name));
            foreach (Feed feed in step.Feeds.Values.SelectMany(f => f).Where(f => f.Kind == FeedKind.Result))
            {
                CalculationCatalog.Find(feed.Name)!.Outputs.Select(o => o.Name).Should().Contain(feed.Output!);
            }
        }
    }

    [Fact]
    public void What_is_handed_on_measures_what_is_asked_for()
    {
        foreach (Sheet sheet in SheetCatalog.All)
        {
            foreach (SheetStep step in sheet.Steps)
            {
                foreach ((string input, IReadOnlyList<Feed> feeds) in step.Feeds)
                {
                    foreach (Feed feed in feeds.Where(f => f.Kind == FeedKind.Result))
                    {
                        string from = CalculationCatalog.Find(feed.Name)!.Outputs.Single(o => o.Name == feed.Output).Unit;
                        string to = step.Entry.Inputs.Single(i => i.Name == input).Unit;
                        Failwise.Units.UnitTable.Get(from).Dimension.Should().Be(Failwise.Units.UnitTable.Get(to).Dimension, because: $"{feed.Name} feeds {input}");
                    }
                }
            }
        }
    }

    private static IReadOnlyList<WorkedNumber> Work(string numbers, string more = "") =>
        MeasurementAssessor.Assess(Knowledge, Bench.Case(Knowledge, "", $"{more}numbers: [{numbers}]\n", "{kind: engine, cylinders: 2, mains: 3, feed: [3, 1, 2]}")).Calculations;
}
