using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Knowledge;
using Failwise.Tests.Causes;

namespace Failwise.Tests.Checks;

public sealed class CheckPlannerTests
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Load(Repository.Folder("rules"));

    public static TheoryData<string> Cases => new(Directory.GetDirectories(Repository.Folder("examples")).Where(d => File.Exists(Path.Combine(d, "case.yaml"))).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal));

    private static TeardownCase Example(string name) => CaseReader.Read(Shipped, Repository.Folder("examples", name)).Case!;

    private static IReadOnlyList<PlannedCheck> Plan(TeardownCase teardown, int most = 20) => CheckPlanner.Plan(Shipped, teardown, new PlanOptions(most)).Checks;

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_check_tells_something_and_its_outcomes_add_up(string name)
    {
        foreach (PlannedCheck check in Plan(Example(name)))
        {
            check.Gain.Should().BeGreaterThanOrEqualTo(CheckPlanner.LeastGain, because: check.Id);
            check.Minutes.Should().BePositive();
            if (check.Outcomes.Count > 0)
            {
                check.Outcomes.Sum(o => o.Chance).Should().BeApproximately(1, 1e-9, because: check.Id);
                check.Outcomes.SelectMany(o => o.Movers).Where(m => m.Then is < 0 or > CauseRanking.Ceiling).Should().BeEmpty();
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_is_known_is_never_asked(string name)
    {
        TeardownCase teardown = Example(name);
        string[] sound = [.. teardown.Observations.Where(o => o.Look == Look.Sound).Select(o => o.Part).Except(teardown.Observations.Where(o => o.Look == Look.Seen).Select(o => o.Part))];
        string[] seen = [.. teardown.Observations.Where(o => o.Pattern is not null).Select(o => $"{o.Part}/{o.Pattern}")];

        foreach (PlannedCheck check in Plan(teardown))
        {
            teardown.Symptoms.Select(s => "symptom/" + s.Id).Concat(teardown.History.Select(h => "history/" + h.Id)).Should().NotContain(check.Id);
            check.Outcomes.Select(o => o.Id).Should().NotIntersectWith(seen);
            if (check.Kind == CheckKind.Look)
            {
                check.Outcomes.SkipLast(1).Select(o => o.Id.Split('/')[0]).Should().NotIntersectWith(sound);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_order_does_not_depend_on_the_order_of_the_case(string name)
    {
        TeardownCase teardown = Example(name);
        TeardownCase turned = teardown with { Observations = [.. teardown.Observations.Reverse()], Symptoms = [.. teardown.Symptoms.Reverse()], History = [.. teardown.History.Reverse()] };

        Plan(turned).Select(c => c.Id).Should().Equal(Plan(teardown).Select(c => c.Id));
    }

    [Theory]
    [InlineData("{kind: engine, features: [diesel, pressure-fed, plain-bearings]}", new[] { "turbocharger", "compressor-wheel", "rolling-bearing", "spark-plug", "carburettor", "splash-dipper" })]
    [InlineData("{kind: engine, features: [petrol, two-stroke, splash-fed]}", new[] { "camshaft", "oil-pump", "timing-chain", "injector-sleeve", "valve" })]
    [InlineData("{kind: engine, features: [petrol, four-stroke, air-cooled]}", new[] { "coolant", "radiator", "water-pump", "raw-water-pump" })]
    public void Nobody_is_sent_to_a_part_that_the_machine_hardly_has(string machine, string[] lacking)
    {
        TeardownCase teardown = Bench.Case(Shipped, "{part: piston, see: scuffed}, {part: rod-journal, see: scored}", "symptoms: [loss-of-power, knocking-bottom-end, overheating]", machine);

        PlannedCheck[] plan = [.. Plan(teardown, 20)];

        plan.Where(c => c.Kind == CheckKind.Look).Should().NotBeEmpty();
        plan.Where(c => c.Kind == CheckKind.Look).SelectMany(c => c.Parts).Where(p => lacking.Any(l => Shipped.PartIs(p, l))).Should().BeEmpty();
    }

    [Fact]
    public void Nothing_is_asked_when_every_answer_is_in()
    {
        KnowledgeBase tiny = TinyEngine.Rules.Knowledge();
        TeardownCase teardown = Bench.Case(tiny, "{part: main-bearing, see: sound}, {part: rod-bearing, see: sound}, {part: plain-bearing, see: sound}, {part: oil-pump, see: sound}, {part: oil-filter, see: sound}",
            "symptoms: [{not: oil-pressure-low}, {not: knocking}]");

        CheckPlan plan = CheckPlanner.Plan(tiny, teardown);

        plan.Checks.Should().BeEmpty();
        plan.Stop.Should().NotBeNullOrEmpty();
    }

    [Fact]
    public void A_part_that_cannot_be_looked_at_is_not_proposed()
    {
        KnowledgeBase tiny = TinyEngine.Rules.Knowledge();
        TeardownCase open = Bench.Case(tiny, "{part: main-bearing, see: wiped}");
        TeardownCase away = Bench.Case(tiny, "{part: main-bearing, see: wiped}", "not-looked-at: [{part: oil-pump, reason: sent away}]");

        CheckPlanner.Plan(tiny, open).Checks.Select(c => c.Id).Should().Contain("look/oil-pump");
        CheckPlanner.Plan(tiny, away).Checks.Select(c => c.Id).Should().NotContain("look/oil-pump");
    }

    [Fact]
    public void Beside_a_damaged_part_its_mate_is_asked_for_until_it_was_looked_at()
    {
        const string Machine = "{kind: engine, cylinders: 4, features: [petrol, four-stroke, pressure-fed, plain-bearings]}";
        TeardownCase shell = Bench.Case(Shipped, "{part: rod-bearing, at: 2, see: wiped}", "history: [repaired-lately]", Machine);
        TeardownCase both = Bench.Case(Shipped, "{part: rod-bearing, at: 2, see: wiped}, {part: rod-journal, at: 2, see: scored}", "history: [repaired-lately]", Machine);

        Plan(shell).Should().ContainSingle(c => c.Id == "ask/journal-of-rod-shell").Which.Parts.Should().Equal("rod-journal");
        Plan(both).Select(c => c.Id).Should().NotContain("ask/journal-of-rod-shell");
    }

    [Theory]
    [InlineData("splash-fed", true)]
    [InlineData("pressure-fed", false)]
    public void A_mate_is_asked_for_only_where_the_machine_has_it(string feed, bool asked)
    {
        TeardownCase rod = Bench.Case(Shipped, "{part: connecting-rod, see: scored}", "", $"{{kind: engine, cylinders: 1, features: [petrol, four-stroke, {feed}]}}");

        Plan(rod).Any(c => c.Id == "ask/dipper").Should().Be(asked);
    }

    [Fact]
    public void The_mate_is_the_one_of_the_damaged_part_and_not_one_that_is_sound()
    {
        TeardownCase broken = Bench.Case(Shipped, "{part: rod-journal, at: 6, see: broken}", "", "{kind: engine, cylinders: 6}");
        TeardownCase pump = Bench.Case(Shipped, "{part: main-bearing, see: wiped}, {part: oil-pump, see: sound}, {part: relief-valve, see: sound}", "symptoms: [oil-pressure-low]", "{kind: engine, cylinders: 6, features: [pressure-fed]}");

        Plan(broken).Should().ContainSingle(c => c.Id == "ask/break-at-fillet").Which.Parts.Should().Equal("rod-journal");
        Plan(pump).SelectMany(c => c.Parts).Should().NotContain("oil-pump").And.NotContain("relief-valve");
    }

    [Fact]
    public void The_owner_of_a_boat_is_not_asked_about_axles_wheels_and_pedals()
    {
        string[] ofVehicles = [.. Shipped.AskedOf.Values.Where(a => a.NotWith.Contains("marine")).SelectMany(a => a.Words)];
        const string Seen = "{part: gearbox-bearing, see: spalled}, {part: gear, see: worn}";
        TeardownCase boat = Bench.Case(Shipped, Seen, "symptoms: [gear-noise]", "{kind: gearbox, features: [marine]}");
        TeardownCase tractor = Bench.Case(Shipped, Seen, "symptoms: [gear-noise]", "{kind: [gearbox, axle]}");

        ofVehicles.Length.Should().BeGreaterThan(15);
        Asked(boat).Should().NotIntersectWith(ofVehicles);
        Asked(tractor).Should().IntersectWith(ofVehicles, because: "else the test could not fail");
        new PartPresence(Shipped, boat).Of("differential").Should().Be(0);
        new PartPresence(Shipped, tractor).Of("differential").Should().BeGreaterThan(0);

        string[] Asked(TeardownCase teardown) => [.. Suspicion.Of(Shipped, teardown, WhatIf.RankPlainly(Shipped, teardown)).Candidates(new PlanOptions(20))
            .Where(c => c.Check.Kind is CheckKind.History or CheckKind.Symptom).Select(c => c.Check.Id.Split('/')[1])];
    }

    [Fact]
    public void What_cleaning_takes_away_is_looked_at_first_and_what_cuts_the_part_up_last()
    {
        TeardownCase closed = Bench.Case(Shipped, "", "symptoms: [loss-of-power]", "{kind: engine}");
        Candidate[] alike = [Check("plain", null, 0.5), Check("washes-off", null, 0.5, lostBy: "cleaning"), Check("cut", null, 0.9, destroys: true)];

        CheckSequence.Choose(alike, new Opening(Shipped, closed, false), 3).Select(c => c.Id).Should().Equal("look/washes-off", "look/plain", "look/cut");
    }

    [Fact]
    public void A_check_that_cuts_or_washes_the_part_says_so()
    {
        string[] cutting = ["Section", "section through", "Hardness run", "Cut the part", "polished section"];
        Pattern[] cut = [.. Shipped.Patterns.Values.Where(p => p.Check is { } check && cutting.Any(w => check.How.StartsWith(w, StringComparison.Ordinal) || check.How.Contains(" " + w, StringComparison.Ordinal)) && !check.How.Contains("or dye-test", StringComparison.Ordinal))];

        cut.Length.Should().BeGreaterThan(10);
        cut.Where(p => p.Check!.Destroys != true).Select(p => p.Id).Should().BeEmpty();
        Shipped.Patterns["bearing-dirty-only"].Check!.Destroys.Should().BeTrue(because: "washing it to see whether it runs clean takes grease and dirt away");
        Shipped.Patterns.Values.Count(p => p.Check?.LostBy.Contains("cleaning") == true).Should().BeGreaterThan(100);
    }

    [Fact]
    public void As_long_as_nothing_was_seen_everything_is_looked_over_first()
    {
        const string Machine = "{kind: engine, cylinders: 4}";
        TeardownCase begun = Bench.Case(Shipped, "", "symptoms: [sudden-stop]", Machine);
        TeardownCase seen = Bench.Case(Shipped, "{part: connecting-rod, see: broken}", "symptoms: [sudden-stop]", Machine);
        TeardownCase vain = begun with { Notes = [Shipped.Questions["look-over"].Asks + " nothing"] };

        Plan(begun)[0].Id.Should().Be("ask/look-over");
        CheckPlanner.Plan(Shipped, begun, new PlanOptions(1, OnlyLooks: true)).Checks.Should().ContainSingle().Which.Id.Should().Be("ask/look-over");
        Plan(seen).Concat(Plan(vain)).Select(c => c.Id).Should().NotContain("ask/look-over");
    }

    [Fact]
    public void A_part_of_which_one_mark_is_known_is_looked_at_more_closely_than_one_that_was_told_of()
    {
        const string Machine = "{kind: engine, cylinders: 4, features: [pressure-fed, plain-bearings]}";
        TeardownCase one = Bench.Case(Shipped, "{part: rod-journal, see: broken}", "", Machine);
        TeardownCase told = Bench.Case(Shipped, "{part: rod-journal, see: [broken, scored, worn]}", "", Machine);

        Of(one).Marks.Should().Be(1);
        Of(told).Marks.Should().Be(3);

        OpenLook Of(TeardownCase teardown)
        {
            CauseRanking ranking = WhatIf.RankPlainly(Shipped, teardown);
            LookCatalog catalog = new(Shipped, teardown, ranking.Evidence);
            foreach (RankedCause root in ranking.Ranked)
            {
                catalog.Add(root.Cause);
            }

            return catalog.Looks().First(l => Shipped.PartIs("rod-journal", l.Part) && l.SeenBefore);
        }
    }

    [Fact]
    public void A_cover_is_taken_off_once_and_what_dismantling_destroys_is_looked_at_before()
    {
        TeardownCase closed = Bench.Case(Shipped, "", "symptoms: [loss-of-power]", "{kind: engine}");
        Candidate[] candidates =
        [
            Check("a", "sump-off", 0.9), Check("b", "sump-off", 0.5), Check("c", null, 0.01, lostBy: "dismantling"), Check("d", null, 0.02, destroys: true),
            Check("e", "crank-out", 0.6),
        ];

        IReadOnlyList<PlannedCheck> order = CheckSequence.Choose([.. candidates.Select(c => c with { Check = c.Check with { Gain = Math.Max(0.05, c.Check.Gain) } })], new Opening(Shipped, closed, false), 5);

        order.Select(c => c.OpeningMinutes).Where(m => m > 0).Should().BeEquivalentTo([Shipped.Covers["sump-off"].Minutes, Shipped.Covers["crank-out"].Minutes]);
        order.Select(c => c.Id).ToList().IndexOf("look/c").Should().BeLessThan(order.ToList().FindIndex(c => c.OpeningMinutes > 0));
        order[^1].Id.Should().Be("look/d");
    }

    private static Candidate Check(string id, string? cover, double gain, string? lostBy = null, bool destroys = false) => new(
        new PlannedCheck("look/" + id, CheckKind.Look, [], id, null, null, null, gain, 5, 0, null, 0, [], lostBy is null ? [] : [lostBy], destroys, null), cover, []);
}
