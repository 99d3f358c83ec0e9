using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Problems;
using Failwise.Tests.Invalid;
using Failwise.Tests.Work;
using Failwise.Yaml;

namespace Failwise.Tests.Pricing;

public class EstimateTests
{
    private static readonly KnowledgeBase Knowledge = TinyRules.Words
        .WithCause("pump-worn", "root", "how-common: 1 in 10\nleaves: [{part: oil-pump, see: worn, strength: usually}]")
        .With("work/tests/renew-pump.yaml",
            """
            id: renew-pump
            title: Renew the pump
            does: replace
            part: oil-pump
            stage: assemble
            because: [{part: oil-pump, see: scored}]
            minutes: 60-90
            materials: [{item: oil pump, part: oil-pump, count: 1}, {item: clean oil, used-up: true}]
            sources: [a-book]
            """)
        .With("work/tests/grind-shells.yaml",
            """
            id: grind-shells
            title: Grind
            does: machine
            part: main-bearing
            stage: machine
            because: [{part: oil-pump, see: scored}]
            minutes: 100-200
            sources: [a-book]
            """).Knowledge();

    public static TheoryData<string> Broken => new(ExpectedProblems.Names(Folder));

    private static string Folder => Repository.Folder("tests", "Failwise.Tests", "Invalid", "rates");

    private static ShopRates Rates(string yaml)
    {
        ProblemList problems = new();
        RatesReading reading = RatesReader.Read(Knowledge, YamlFile.Parse(yaml, "rates.yaml", problems)!, problems);
        reading.Problems.Should().BeEmpty();
        return reading.Rates!;
    }

    private static ScopeCost Price(string rates)
    {
        PlannedCase c = PlannedCases.Plan(Knowledge, "case", Bench.Case(Knowledge, "{part: oil-pump, see: scored}"));
        return Estimator.Price(Knowledge, c.Plan, Rates(rates)).Scopes[^1];
    }

    [Fact]
    public void Hours_and_money_agree_with_the_hand_calculation()
    {
        ScopeCost cost = Price("{currency: EUR, labour: 30-40, labour-for: {machine: 60}, hours: 1.5, parts: {oil pump: 80-100}, used-up: {clean oil: 10}}");

        // Renewing: 60 to 90 min, grinding 100 to 200 min, a shop half as slow again: 240 to 435 min are 4 to 7.25 h.
        (cost.Hours.Least, cost.Hours.Most).Should().Be((4, 7.25));
        // 1.5 h at 30 and 2.5 h at 60 are 195; 2.25 h at 40 and 5 h at 60 are 390.
        (cost.Labour.Least, cost.Labour.Most).Should().Be((195, 390));
        (cost.Parts.Least, cost.Parts.Most).Should().Be((90, 110));
        (cost.Total.Least, cost.Total.Most).Should().Be((285, 500));
        cost.Unpriced.Should().BeEmpty();
    }

    [Fact]
    public void A_fixed_price_takes_the_place_of_the_hours()
    {
        ScopeCost cost = Price("{currency: EUR, labour: 30, work: {grind-shells: 200-250}}");

        (cost.Hours.Least, cost.Hours.Most).Should().Be((1, 1.5));
        (cost.Fixed.Least, cost.Fixed.Most).Should().Be((200, 250));
    }

    [Fact]
    public void What_has_no_price_is_named_and_not_guessed() =>
        Price("{currency: EUR, labour: 30}").Unpriced.Should().Equal("oil pump", "clean oil");

    [Fact]
    public void Every_broken_rate_file_has_its_expected_lines_beside_it() =>
        Directory.GetFiles(Folder, "*.yaml").Select(f => Path.GetFileName(f)).Should().BeEquivalentTo(ExpectedProblems.Names(Folder)).And.HaveCountGreaterThan(1);

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_broken_rate_file_gives_every_problem_at_its_place(string name)
    {
        string path = Path.Combine(Folder, name);

        RatesReading reading = RatesReader.Read(Knowledge, path);

        reading.Rates.Should().BeNull();
        reading.Problems.Select(p => ExpectedProblems.WithoutFile(p, path)).ShouldBe(ExpectedProblems.Read(path));
    }

    [Fact]
    public void The_rate_file_of_the_examples_can_be_read_and_prices_most_of_a_job()
    {
        RatesReading reading = RatesReader.Read(Repository.Knowledge, Repository.Folder("examples", "shop-rates.yaml"));
        JobEstimate estimate = Estimator.Price(Repository.Knowledge, PlannedCases.Example("pump-engine").Plan, reading.Rates!);

        reading.Problems.Should().BeEmpty();
        estimate.Scopes.Should().HaveCountGreaterThan(1);
        estimate.Scopes.Should().OnlyContain(s => s.Total.Least > 0 && s.Total.Most >= s.Total.Least);
        estimate.Scopes.Zip(estimate.Scopes.Skip(1)).Should().OnlyContain(p => p.Second.Total.Most >= p.First.Total.Most);
    }
}
