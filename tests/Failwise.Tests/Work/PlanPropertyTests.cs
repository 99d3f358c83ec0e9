using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Work;

namespace Failwise.Tests.Work;

/// <summary>What must hold for the plan of every case, published or invented.</summary>
public class PlanPropertyTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    [Fact]
    public void There_are_enough_cases_and_most_of_them_call_for_work()
    {
        PlannedCases.All.Count.Should().BeGreaterThan(240);
        PlannedCases.All.Count(c => c.Plan.Items.Count > 0).Should().BeGreaterThan(200);
    }

    [Fact]
    public void No_step_comes_before_what_it_needs()
    {
        List<string> wrong = [];
        foreach (PlannedCase c in PlannedCases.All)
        {
            Dictionary<string, int> at = c.Plan.Items.Select((item, i) => (item.Rule.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
            wrong.AddRange(at.Keys.SelectMany(step => Before(step).Where(b => at.TryGetValue(b, out int place) && place > at[step]).Select(b => $"{c.Name}: {step} stands before {b}")));
        }

        wrong.Should().BeEmpty();
    }

    /// <summary>Everything that the rules put before a step, however many steps lie between.</summary>
    private static HashSet<string> Before(string step)
    {
        HashSet<string> all = [];
        Stack<string> open = new([step]);
        while (open.TryPop(out string? next))
        {
            foreach (string before in Knowledge.Work[next].After.Where(all.Add))
            {
                open.Push(before);
            }
        }

        return all;
    }

    [Fact]
    public void A_place_goes_with_the_piece_that_another_place_condemns()
    {
        List<string> wrong = [];
        int met = 0;
        foreach (PlannedCase c in PlannedCases.All)
        {
            foreach (PartDecision gone in c.Plan.Decisions.Where(d => d.Decision == Decision.Replace && Whole(d.Part) != d.Part))
            {
                bool single = Knowledge.Parts[Whole(gone.Part)].Count == "one";
                PartDecision[] same = [.. c.Plan.Decisions.Where(d => d.Part != gone.Part && Whole(d.Part) == Whole(gone.Part) && (single || d.Places.Any(gone.Places.Contains)))];
                met += same.Length;
                wrong.AddRange(same.Where(d => d.Decision != Decision.Replace).Select(d => $"{c.Name}: {d.Part} is {d.Decision} while {gone.Part} is renewed"));
            }
        }

        met.Should().BePositive("otherwise nothing was looked at");
        wrong.Should().BeEmpty();
    }

    private static string Whole(string part) => Knowledge.Parts[part].OrderedAs is { } whole && whole != Part.Fluid ? whole : part;

    [Fact]
    public void A_part_that_goes_back_in_is_not_ordered_before_a_check()
    {
        PartsLine[] stays = [.. PlannedCases.All.SelectMany(c => c.Plan.Orders.Parts.Where(l => l.Part is not null
            && c.Plan.Decisions.Any(d => d.Part == l.Part) && c.Plan.Decisions.Where(d => d.Part == l.Part).All(d => d.Decision is Decision.Reuse or Decision.Monitor or Decision.Clean)))];

        stays.Should().NotBeEmpty().And.OnlyContain(l => l.CheckFirst);
    }

    [Fact]
    public void Steps_never_go_back_to_an_earlier_stage()
    {
        string[] wrong = [.. PlannedCases.All.Where(c => c.Plan.Items.Zip(c.Plan.Items.Skip(1)).Any(p => Stage(p.Second) < Stage(p.First))).Select(c => c.Name)];

        wrong.Should().BeEmpty();
    }

    private static int Stage(WorkItem item) => Array.IndexOf(WorkShapes.Stages, item.Rule.Stage);

    [Theory]
    [InlineData("crack-test-crankshaft", "regrind-or-renew-crank")]
    [InlineData("measure-journals", "replace-shells-as-set")]
    [InlineData("clean-oil-galleries", "replace-shells-as-set")]
    [InlineData("prime-before-first-start", "first-start-after-bearing-work")]
    [InlineData("prime-before-first-start", "first-start-piston")]
    [InlineData("measure-bores", "renew-piston-set")]
    [InlineData("sample-oil-and-keep-filter", "cut-open-oil-filter")]
    [InlineData("record-gearbox-play-before-strip", "renew-gearbox-bearings")]
    public void What_a_mechanic_would_do_first_comes_first(string first, string then)
    {
        PlannedCase[] both = [.. PlannedCases.All.Where(c => c.Plan.Items.Any(i => i.Rule.Id == first) && c.Plan.Items.Any(i => i.Rule.Id == then))];

        both.Should().NotBeEmpty();
        both.Where(c => c.Plan.Items.First(i => i.Rule.Id == first || i.Rule.Id == then).Rule.Id == then).Select(c => c.Name).Should().BeEmpty();
    }

    [Fact]
    public void Shells_are_not_ordered_before_the_size_of_the_journals_is_known()
    {
        PartsLine[] shells = [.. PlannedCases.All.Where(c => c.Plan.Items.Any(i => i.Rule.Id == "measure-journals"))
            .SelectMany(c => c.Plan.Orders.Parts).Where(p => p.Part is "main-bearing" or "rod-bearing" && p.Steps.Contains("replace-shells-as-set"))];

        shells.Should().NotBeEmpty();
        shells.Should().OnlyContain(p => p.OrderAfterStep == "measure-journals");
    }

    /// <summary>A floating pin is held by a clip at each end, a rod cap commonly by two bolts; how many heads an engine has, its cylinders do not tell (common practice, no source).</summary>
    [Fact]
    public void What_stands_twice_at_a_cylinder_is_counted_twice_and_what_the_cylinders_do_not_tell_is_not_counted()
    {
        (PartsLine Line, int Cylinders)[] lines = [.. PlannedCases.All.Where(c => c.Teardown.Machine.Cylinders is not null).SelectMany(c => c.Plan.Orders.Parts, (c, l) => (l, c.Teardown.Machine.Cylinders!.Value))];

        (PartsLine Line, int Cylinders)[] clips = [.. lines.Where(l => l.Line is { Part: "circlip", Together: true })];
        clips.Should().NotBeEmpty();
        clips.Should().OnlyContain(l => l.Line.Count == 2 * l.Cylinders);
        lines.Where(l => l.Line is { Part: "cylinder-head" }).Should().NotBeEmpty().And.OnlyContain(l => l.Line.Count == null);
    }

    [Fact]
    public void Nothing_is_listed_twice()
    {
        List<string> wrong = [];
        foreach (PlannedCase c in PlannedCases.All)
        {
            WorkPlan p = c.Plan;
            wrong.AddRange(Twice(p.Items.Select(i => i.Rule.Id)).Select(x => $"{c.Name}: step {x}"));
            wrong.AddRange(Twice(p.Decisions.SelectMany(d => d.Places.Count == 0 ? [d.Part] : d.Places.Select(n => d.Part + " " + n))).Select(x => $"{c.Name}: decision {x}"));
            wrong.AddRange(Twice(p.Orders.Parts.Select(l => l.Part ?? l.Item)).Select(x => $"{c.Name}: part {x}"));
            wrong.AddRange(Twice(p.Orders.Consumables.Select(l => l.Item)).Select(x => $"{c.Name}: used up {x}"));
            wrong.AddRange(Twice(p.Together.Select(t => t.Part)).Select(x => $"{c.Name}: together {x}"));
            wrong.AddRange(Twice(p.Downstream.Select(d => d.Circuit + " " + d.Part)).Select(x => $"{c.Name}: downstream {x}"));
            wrong.AddRange(Twice(new[] { p.Sheets.CloseUp, p.Sheets.FirstStart, p.Sheets.FollowUp }.SelectMany((s, n) => s.Select(l => $"{n} {l.RuleId} {l.Place}"))).Select(x => $"{c.Name}: sheet {x}"));
        }

        wrong.Should().BeEmpty();
    }

    private static IEnumerable<string> Twice(IEnumerable<string> ids) => ids.GroupBy(i => i, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key);

    [Fact]
    public void Every_leading_cause_has_a_step_that_removes_it_and_a_check_that_it_is_gone()
    {
        List<string> wrong = [];
        int leading = 0;
        foreach (PlannedCase c in PlannedCases.All)
        {
            foreach (string cause in c.Ranking.Verdict.Roots)
            {
                leading++;
                CauseRemoval? removal = c.Plan.Removals.FirstOrDefault(r => r.Cause.Id == cause);
                string? lacks = removal is null ? "no removal" : removal.Inside.Count + removal.Outside.Count == 0 ? "no removing step" : removal.Checks.Count == 0 ? "no check" : null;
                wrong.AddRange(lacks is null ? [] : [$"{c.Name}: {cause} has {lacks}"]);
            }
        }

        leading.Should().BeGreaterThan(150);
        wrong.Should().BeEmpty();
    }

    [Fact]
    public void Every_root_of_the_rule_base_would_be_removed_and_proved_gone_if_it_were_settled()
    {
        PlannedCase any = PlannedCases.Example("pump-engine");
        List<string> wrong = [];
        foreach (Cause root in Knowledge.Causes.Values.Where(c => c.IsRoot))
        {
            string[] kinds = root.Machines.Count > 0 ? [.. root.Machines] : ["engine"];
            TeardownCase bare = any.Teardown with { Machine = new Machine(null, kinds, 4, 5, null, false, null, [], []), Observations = [], Measurements = [] };
            WorkPlan plan = WorkPlanner.PlanSettled(Knowledge, bare, [], new Failwise.Findings.FindingSet([], [], new Dictionary<string, bool>()), any.Ranking with { States = new Dictionary<string, double>() }, [root.Id]);
            CauseRemoval removal = plan.Removals.Single(r => r.Cause.Id == root.Id);
            wrong.AddRange(removal.Inside.Count + removal.Outside.Count == 0 ? [$"{root.Id}: no removing step"] : removal.Checks.Count == 0 ? [$"{root.Id}: no check"] : []);
        }

        wrong.Should().BeEmpty();
    }

    [Fact]
    public void Every_part_that_was_looked_at_or_measured_has_a_decision()
    {
        List<string> wrong = [];
        foreach (PlannedCase c in PlannedCases.All)
        {
            HashSet<string> decided = [.. c.Plan.Decisions.Select(d => d.Part)];
            wrong.AddRange(c.Teardown.Observations.Select(o => o.Part).Concat(c.Teardown.Measurements.Select(m => m.Part)).Where(p => !decided.Contains(p)).Distinct().Select(p => $"{c.Name}: {p}"));
        }

        wrong.Should().BeEmpty();
    }

    [Fact]
    public void Every_damaged_place_has_a_decision_and_no_broken_part_is_put_back()
    {
        string[] beyond = ["broken", "cracked", "seized", "burnt-through", "holed", "fatigue-fracture", "overload-fracture"];
        List<string> wrong = [];
        int looked = 0;
        foreach (PlannedCase c in PlannedCases.All)
        {
            foreach (Observation o in c.Teardown.Observations.Where(o => o.Look == Look.Seen && !Knowledge.Patterns[o.Pattern!].Sound))
            {
                foreach (int place in o.Places.DefaultIfEmpty(0))
                {
                    PartDecision? d = c.Plan.Decisions.FirstOrDefault(d => d.Part == o.Part && (place == 0 || d.Places.Count == 0 || d.Places.Contains(place)));
                    wrong.AddRange(d is null ? [$"{c.Name}: {o.Part} {place} has no decision"] : []);
                    if (d is not null && beyond.Any(b => Knowledge.PatternIs(o.Pattern!, b)))
                    {
                        looked++;
                        wrong.AddRange(d.Decision is Decision.Reuse or Decision.Monitor ? [$"{c.Name}: {o.Part} {place} is {o.Pattern} and would be put back"] : []);
                    }
                }
            }
        }

        looked.Should().BeGreaterThan(100);
        wrong.Should().BeEmpty();
    }

    [Fact]
    public void Every_line_says_why_and_its_reasons_lead_back_to_the_case()
    {
        List<string> wrong = [];
        foreach (PlannedCase c in PlannedCases.All)
        {
            var lines = c.Plan.Items.Select(i => (i.Rule.Id, i.Reasons)).Concat(c.Plan.Decisions.Select(d => (d.RuleId, d.Reasons)))
                .Concat(c.Plan.Downstream.Select(d => (d.RuleId, d.Reasons))).Concat(c.Plan.Orders.Parts.Select(p => (p.Item, p.Reasons)))
                .Concat(new[] { c.Plan.Sheets.CloseUp, c.Plan.Sheets.FirstStart, c.Plan.Sheets.FollowUp }.SelectMany(s => s).Select(l => (l.RuleId, l.Reasons)));
            foreach ((string id, IReadOnlyList<WorkReason> reasons) in lines)
            {
                wrong.AddRange(reasons.Count == 0 ? [$"{c.Name}: {id} does not say why"] : reasons.Where(r => !LeadsBack(c, r)).Select(r => $"{c.Name}: {id} rests on {r.Kind} {r.Id}"));
            }
        }

        wrong.Should().BeEmpty();
    }

    private static bool LeadsBack(PlannedCase c, WorkReason reason) => reason.Says.Length > 0 && reason.Kind switch
    {
        "cause" => Knowledge.Causes.ContainsKey(reason.Id),
        "finding" => c.Findings.Fired.Any(f => f.Id == reason.Id),
        "history" => c.Findings.Circumstances.GetValueOrDefault(reason.Id),
        "observation" => reason.Id.Length == 0 || reason.Id.Split(", ").All(n => c.Teardown.Observations.Any(o => o.Number.ToString() == n)),
        "reading" => c.Readings.Any(r => r.Number.ToString() == reason.Id),
        "work" => Knowledge.Work.ContainsKey(reason.Id),
        _ => Knowledge.Machines.ContainsKey(reason.Id),
    };

    [Fact]
    public void A_wider_scope_never_leaves_a_greater_risk_and_the_least_is_never_above_the_most()
    {
        List<string> wrong = [];
        foreach (PlannedCase c in PlannedCases.All.Where(c => c.Plan.Scopes.Count > 0))
        {
            IReadOnlyList<ScopeOption> scopes = c.Plan.Scopes;
            wrong.AddRange(scopes.Where(s => s.RiskLeast > s.RiskMost || s.RiskLeast < 0 || s.RiskMost > CauseRanking.Ceiling || s.Time.Least > s.Time.Most).Select(s => $"{c.Name}: {s.Id}"));
            wrong.AddRange(scopes.Zip(scopes.Skip(1)).Where(p => p.Second.RiskLeast > p.First.RiskLeast || p.Second.RiskMost > p.First.RiskMost || p.First.Steps.Except(p.Second.Steps).Any()).Select(p => $"{c.Name}: {p.Second.Id} after {p.First.Id}"));
            wrong.AddRange(scopes[^1].Steps.Count == c.Plan.Items.Count ? [] : [$"{c.Name}: the widest scope leaves steps out"]);
        }

        wrong.Should().BeEmpty();
    }

    [Fact]
    public void A_sound_machine_gets_no_step_but_is_closed_up_with_care()
    {
        PlannedCase[] sound = [.. PlannedCases.All.Where(c => c.Ranking.Verdict.Kind == VerdictKind.NormalWear && c.Name.StartsWith("tests/cases/sound/", StringComparison.Ordinal))];

        sound.Should().HaveCountGreaterThan(10);
        sound.Where(c => c.Plan.Items.Count > 0).Select(c => c.Name).Should().BeEmpty();
        sound.Where(c => c.Plan.Orders.MachineShop.Any(j => !c.Teardown.Observations.Any(o => o.Extent is Extent.Unstated or >= Extent.Moderate))).Select(c => c.Name).Should().BeEmpty(because: "light marks are measured before anything is cut");
        sound.Where(c => c.Plan.Sheets.CloseUp.Count == 0).Select(c => c.Name).Should().BeEmpty();
    }

    [Fact]
    public void Lines_of_a_sheet_fit_the_machine()
    {
        string[] oilPressure = ["fs-prime", "fs-gauge", "fs-pressure-hot", "cu-relief-valve"];
        string[] gears = ["cu-gear-backlash", "cu-shift-on-bench", "fs-gear-turn"];
        PlannedCase[] gearboxes = [.. PlannedCases.All.Where(c => c.Teardown.Machine.Kinds.SequenceEqual(["gearbox"]))];
        PlannedCase[] engines = [.. PlannedCases.All.Where(c => c.Teardown.Machine.Kinds.SequenceEqual(["engine"]))];

        gearboxes.Should().HaveCountGreaterThan(10);
        engines.Should().HaveCountGreaterThan(50);
        gearboxes.SelectMany(Lines).Select(l => l.RuleId).Should().NotContain(oilPressure).And.Contain(gears);
        engines.SelectMany(Lines).Select(l => l.RuleId).Should().NotContain(gears).And.Contain(oilPressure);
        engines.Where(c => c.Teardown.Machine.Without.Contains("turbocharged")).SelectMany(Lines).Select(l => l.RuleId).Should().NotContain("cu-turbo-line");
    }

    private static IEnumerable<SheetLine> Lines(PlannedCase c) => c.Plan.Sheets.CloseUp.Concat(c.Plan.Sheets.FirstStart).Concat(c.Plan.Sheets.FollowUp);
}
