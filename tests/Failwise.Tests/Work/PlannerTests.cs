using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Work;

namespace Failwise.Tests.Work;

/// <summary>The planner over a rule base that can be checked by hand; its figures are made up and say nothing about real machines.</summary>
public class PlannerTests
{
    private static readonly TinyRules Rules = TinyRules.Words
        .WithCause("pump-worn", "root", "how-common: 1 in 10\nleaves: [{part: oil-pump, see: worn, strength: usually}, {symptom: oil-pressure-low, strength: usually}]")
        .With("work/tests/measure-pump.yaml", Work("measure-pump", "measure", "measure", "oil-pump", "{part: oil-pump, see: worn}", "minutes: 20-40"))
        .With("work/tests/renew-pump.yaml", Work("renew-pump", "replace", "assemble", "oil-pump", "{cause: pump-worn}, {part: oil-pump, see: scored}", "after: measure-pump\nminutes: 60\ntogether: [{part: oil-filter, why: It holds the same dirt.}]"))
        .With("work/tests/wash-filter.yaml", Work("wash-filter", "clean", "clean", "oil-filter", "{work: renew-pump}", "after: renew-shells"))
        .With("work/tests/renew-shells.yaml", Work("renew-shells", "replace", "assemble", "plain-bearing", "{part: main-bearing, see: wiped}",
            "after: measure-pump\ninstead-of: polish-shells\nmaterials: [{item: main shells, part: main-bearing, count: mains, size: by the journal, order-after: measure-pump}, {item: oil, used-up: true}]"))
        .With("work/tests/polish-shells.yaml", Work("polish-shells", "machine", "machine", "plain-bearing", "{part: main-bearing, see: worn}", "shop: {finish: smooth, do-not: [Do not scrape.], ask: [How much?]}"))
        .With("decisions/tests.yaml",
            """
            - {id: broken-down, part: plain-bearing, see: wiped, decide: replace, whole-set: true, why: A set., sources: a-book}
            - {id: worn-part, part: plain-bearing, see: worn, decide: measure-first, why: Size decides., sources: a-book}
            - {id: filter-any, part: oil-filter, see: any, decide: clean, why: Dirt., sources: a-book}
            - {id: pump-worn-much, part: oil-pump, see: worn, extent: heavy, decide: replace, why: Gone., sources: a-book}
            - {id: pump-worn-some, part: oil-pump, see: worn, decide: measure-first, limit: 0.2 mm, limit-source: a-book, why: Size decides., sources: a-book}
            - {id: bearing-sound, part: plain-bearing, see: sound, decide: measure-first, why: Size decides., sources: a-book}
            - {id: reads-well, part: plain-bearing, reading: within, decide: reuse, why: It measures well., sources: a-book}
            - {id: reads-badly, part: plain-bearing, reading: beyond-limit, decide: replace, why: It measures badly., sources: a-book}
            """)
        .With("downstream/tests.yaml",
            """
            - id: oil
              circuit: oil
              machines: engine
              because: [{part: main-bearing, see: wiped, extent: moderate}]
              stations:
                - {part: oil-filter, do: renew, says: New filter., work: wash-filter}
                - {part: oil-pump, do: inspect, says: Open the pump., fitted: turbocharged}
              sources: a-book
            """)
        .With("sheets/close-up.yaml",
            """
            - {id: turn, sheet: close-up, order: 1, says: Turned by hand, each: mains, machines: engine, touched: main-bearing, stop: true, sources: a-book}
            - {id: gap, sheet: close-up, order: 2, says: Gap, reading: {what: gap, unit: mm}, machines: gearbox, sources: a-book}
            - {id: turbo, sheet: first-start, order: 1, says: Turbo filled, fitted: turbocharged, sources: a-book}
            - {id: later, sheet: follow-up, order: 1, says: Look again, work: renew-pump, when: after 10 h, sources: a-book}
            """);

    private static readonly KnowledgeBase Knowledge = Rules.Knowledge();

    private static string Work(string id, string does, string stage, string part, string because, string more) =>
        $"id: {id}\ntitle: {id.Replace('-', ' ')}\ndoes: {does}\npart: {part}\nstage: {stage}\nbecause: [{because}]\n{more}\nverify: {{how: Look again.}}\nsources: [a-book]\n";

    private static PlannedCase Plan(string observations, string more = "", string machine = Bench.FiveMains) =>
        PlannedCases.Plan(Knowledge, "case", Bench.Case(Knowledge, observations, more, machine));

    private static string[] Steps(PlannedCase c) => [.. c.Plan.Items.Select(i => i.Rule.Id)];

    [Fact]
    public void A_step_brings_the_steps_that_go_with_it_and_those_bring_theirs()
    {
        PlannedCase c = Plan("{part: oil-pump, see: scored}");

        Steps(c).Should().Contain(["renew-pump", "wash-filter"]);
        c.Plan.Items.Single(i => i.Rule.Id == "wash-filter").Reasons.Should().Contain(r => r.Kind == "work" && r.Id == "renew-pump");
    }

    [Fact]
    public void Order_holds_through_a_step_that_is_not_in_the_plan()
    {
        // wash-filter comes after renew-shells, which comes after measure-pump; no shell has to be renewed here.
        PlannedCase c = Plan("{part: oil-pump, see: [worn, scored]}");

        Steps(c).Should().NotContain("renew-shells");
        Array.IndexOf(Steps(c), "measure-pump").Should().BeLessThan(Array.IndexOf(Steps(c), "wash-filter"));
        c.Plan.Items.Single(i => i.Rule.Id == "wash-filter").After.Should().Equal("measure-pump");
    }

    [Fact]
    public void What_is_renewed_is_not_polished_as_well()
    {
        Steps(Plan("{part: main-bearing, at: 2, see: worn}")).Should().Contain("polish-shells");
        Steps(Plan("{part: main-bearing, at: 2, see: worn}, {part: main-bearing, at: 3, see: wiped}")).Should().Contain("renew-shells").And.NotContain("polish-shells");
    }

    [Fact]
    public void One_bad_shell_decides_for_the_whole_set()
    {
        PartDecision d = Plan("{part: main-bearing, at: 2, see: wiped, rest: sound}").Plan.Decisions.Single(d => d.Part == "main-bearing");

        d.Decision.Should().Be(Decision.Replace);
        d.Places.Should().Equal(1, 2, 3, 4, 5);
    }

    [Fact]
    public void Places_that_fare_differently_get_decisions_of_their_own()
    {
        PartDecision[] d = [.. Plan("{part: rod-bearing, at: 2, see: worn}, {part: rod-bearing, at: [1, 3, 4], see: sound}").Plan.Decisions.Where(d => d.Part == "rod-bearing")];

        d.Select(x => (x.RuleId, string.Join(' ', x.Places))).Should().Equal(("bearing-sound", "1 3 4"), ("worn-part", "2"));
    }

    [Fact]
    public void A_good_reading_settles_what_was_to_be_measured_and_a_bad_one_condemns()
    {
        PartDecision[] d =
        [
            .. Plan("{part: main-bearing, at: [1, 2], see: sound}",
                "readings: [{quantity: bearing-clearance, part: main-bearing, at: 1, value: 0.05 mm, limit: {max: 0.10 mm, from: the book}}, {quantity: bearing-clearance, part: main-bearing, at: 2, value: 0.15 mm, limit: {max: 0.10 mm, from: the book}}]")
                .Plan.Decisions.Where(d => d.Part == "main-bearing").OrderBy(d => d.Places[0]),
        ];

        d.Select(x => x.Decision).Should().Equal(Decision.Reuse, Decision.Replace);
        d[0].Limit.Should().Be("at most 0.10 mm");
        d[0].LimitFrom.Should().Be("the book");
        d[0].Readings.Should().ContainSingle().Which.Should().Contain("0.05 mm").And.Contain("within");
    }

    [Fact]
    public void How_much_there_is_of_a_mark_decides_and_the_limit_names_its_source()
    {
        PartDecision light = Plan("{part: oil-pump, see: worn, extent: light}").Plan.Decisions.Single();
        PartDecision heavy = Plan("{part: oil-pump, see: worn, extent: heavy}").Plan.Decisions.Single();

        (light.Decision, light.Limit, light.LimitSource!.Id).Should().Be((Decision.MeasureFirst, "0.2 mm", "a-book"));
        heavy.Decision.Should().Be(Decision.Replace);
    }

    [Fact]
    public void A_part_without_a_rule_is_measured_first()
    {
        PartDecision d = Plan("{part: oil-pump, see: stuck}").Plan.Decisions.Single();

        (d.Decision, d.RuleId, d.Limit).Should().Be((Decision.MeasureFirst, "no-rule", "maker's limit needed"));
    }

    [Fact]
    public void Shells_are_counted_from_the_machine_and_ordered_when_their_size_is_known()
    {
        PlannedCase c = Plan("{part: main-bearing, at: 2, see: wiped}, {part: oil-pump, see: worn}");

        PartsLine shells = c.Plan.Orders.Parts.Single(p => p.Part == "main-bearing");
        (shells.Item, shells.Count, shells.CountFrom, shells.Size, shells.OrderAfterStep).Should().Be(("main shells", 5, "5 main bearings", "by the journal", "measure-pump"));
        c.Plan.Orders.Consumables.Should().ContainSingle().Which.Item.Should().Be("oil");
    }

    [Fact]
    public void What_goes_together_is_ordered_together()
    {
        PlannedCase c = Plan("{part: oil-pump, see: scored}");

        c.Plan.Together.Should().ContainSingle().Which.Why.Should().Be("It holds the same dirt.");
        c.Plan.Orders.Parts.Single(p => p.Part == "oil-filter").Together.Should().BeTrue();
    }

    [Fact]
    public void The_machine_shop_is_told_the_sizes_and_what_not_to_do()
    {
        ShopJob job = Plan("{part: main-bearing, at: 2, see: worn}", "readings: [{quantity: wall-thickness, part: main-bearing, at: 2, value: 1.98 mm, with: ball micrometer}]").Plan.Orders.MachineShop.Single();

        job.Places.Should().Equal(2);
        job.Sizes.Should().ContainSingle().Which.Should().Be("main bearing 2: wall thickness 1.98 mm (0.0780 in) (ball micrometer)");
        (job.Finish, job.DoNot[0], job.Ask[0]).Should().Be(("smooth", "Do not scrape.", "How much?"));
    }

    [Fact]
    public void Downstream_lines_bring_their_work_and_say_when_a_part_may_not_be_fitted()
    {
        PlannedCase c = Plan("{part: main-bearing, at: 2, see: wiped}");
        PlannedCase without = Plan("{part: main-bearing, at: 2, see: wiped}", machine: "{kind: engine, mains: 5, without: [turbocharged]}");

        c.Plan.Downstream.Select(d => (d.Part, d.Action, d.Says, d.Step)).Should().Equal(
            ("oil-filter", DownstreamAction.Renew, "New filter.", "wash-filter"), ("oil-pump", DownstreamAction.Inspect, "If fitted: Open the pump.", null));
        without.Plan.Downstream.Select(d => d.Part).Should().Equal("oil-filter");
    }

    [Fact]
    public void A_sheet_has_a_line_for_each_main_bearing_and_none_for_another_machine()
    {
        PlannedCase c = Plan("{part: main-bearing, at: 2, see: wiped}", machine: "{kind: engine, mains: 3, without: [turbocharged]}");

        c.Plan.Sheets.CloseUp.Where(l => l.RuleId == "turn").Select(l => l.Place).Should().Equal(1, 2, 3);
        c.Plan.Sheets.CloseUp.Should().NotContain(l => l.RuleId == "gap");
        c.Plan.Sheets.FirstStart.Should().BeEmpty();
        c.Plan.Sheets.FollowUp.Should().BeEmpty(because: "the pump stays");
    }

    [Fact]
    public void A_settled_cause_is_worked_on_without_a_check_first()
    {
        TeardownCase teardown = Bench.Case(Knowledge, "{part: oil-filter, see: sound}", "symptoms: [oil-pressure-low]");
        PlannedCase open = PlannedCases.Plan(Knowledge, "case", teardown);

        WorkPlan settled = WorkPlanner.PlanSettled(Knowledge, teardown, [], open.Findings, open.Ranking, ["pump-worn"]);

        // By hand: prior 0.1, strength 0.8, leak 0.05 and one false report in 60: 0.1 x (1 - 0.2 x 0.934) / (0.0813 + 0.9 x 0.0658).
        open.Ranking.Ranked.Single().Probability.Should().BeApproximately(0.579, 0.002);
        settled.Items.Single(i => i.Rule.Id == "renew-pump").CheckFirst.Should().BeFalse();
        settled.Removals.Single().Inside.Should().Equal("renew-pump");
        settled.Removals.Single().Checks.Should().Contain(c => c.Step == "renew-pump");
    }

    [Fact]
    public void A_scope_that_leaves_a_cause_says_how_likely_it_is_to_stay()
    {
        PlannedCase c = Plan("{part: oil-pump, see: worn}, {part: main-bearing, at: 2, see: wiped}", "symptoms: [oil-pressure-low]");
        double p = c.Ranking.Ranked.Single().Probability;

        ScopeOption widest = c.Plan.Scopes[^1];

        c.Plan.Items.Select(i => i.Rule.Id).Should().Contain("renew-pump");
        (widest.Left.Count, widest.RiskLeast, widest.RiskMost).Should().Be((0, 0, 0));
        p.Should().BeGreaterThan(0.5);
    }

    [Fact]
    public void A_cause_outside_the_machine_outlives_the_new_part()
    {
        const string Marks = "{part: oil-pump, see: [worn, scored]}";
        KnowledgeBase withHabit = Rules.With("work/tests/keep-oil-clean.yaml", Work("keep-oil-clean", "remove-cause", "follow-up", "oil-pump", "{cause: pump-worn}", "outside: true")).Knowledge();

        ScopeOption part = Plan(Marks).Plan.Scopes[0], habit = PlannedCases.Plan(withHabit, "case", Bench.Case(withHabit, Marks, "", Bench.FiveMains)).Plan.Scopes[0];

        (part.Steps.Contains("renew-pump"), habit.Steps.Contains("renew-pump"), habit.Steps.Contains("keep-oil-clean")).Should().Be((true, true, false));
        part.Left.Should().BeEmpty();
        habit.Left.Select(l => l.Cause).Should().Equal("pump-worn");
    }

    [Fact]
    public void Minutes_of_a_step_are_those_of_its_rule()
    {
        PlannedCase c = Plan("{part: oil-pump, see: [worn, scored]}");

        WorkTime span = c.Plan.Items.Single(i => i.Rule.Id == "measure-pump").Time, single = c.Plan.Items.Single(i => i.Rule.Id == "renew-pump").Time;

        (span.Least, span.Most, span.Stated).Should().Be((20, 40, true));
        (single.Least, single.Most, single.Stated).Should().Be((45, 90, true), because: "a single figure of 60 counts from three quarters to one and a half");
    }
}
