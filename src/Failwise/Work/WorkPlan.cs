using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Why a line of the plan is there: one fact, traced to where it comes from.</summary>
/// <param name="Kind">cause, finding, observation, reading, work (another step brings it) or machine (every such machine has it).</param>
/// <param name="Id">Id of the cause, finding, piece of work or kind of machine; number of the observation or reading in the case file.</param>
/// <param name="Says">A sentence for people.</param>
public sealed record WorkReason(string Kind, string Id, string Says);

/// <summary>How long a step takes.</summary>
/// <param name="Least">Minutes at best [min], 0 or above.</param>
/// <param name="Most">Minutes when it goes badly [min], at least <paramref name="Least"/>.</param>
/// <param name="Stated">True when the rule gives the time; false when it is the usual time of this sort of work (judgement).</param>
public sealed record WorkTime(double Least, double Most, bool Stated)
{
    /// <summary>The time of several steps, one after the other.</summary>
    public static WorkTime Sum(IEnumerable<WorkTime> times)
    {
        WorkTime[] all = [.. times];
        return new WorkTime(all.Sum(t => t.Least), all.Sum(t => t.Most), Array.TrueForAll(all, t => t.Stated));
    }
}

/// <summary>One step of the plan.</summary>
/// <param name="CheckFirst">True when its cause is only possible: check before doing the work.</param>
/// <param name="Reasons">Why it is there, most telling first; never empty.</param>
/// <param name="After">Ids of the steps of this plan that must be finished before it.</param>
public sealed record WorkItem(WorkRule Rule, bool CheckFirst, IReadOnlyList<WorkReason> Reasons, IReadOnlyList<string> After, WorkTime Time)
{
    private static readonly string[] Looking = ["inspect", "measure", "verify", "monitor", "secure"];

    /// <summary>True when it is done in any case: it is sure, or it is itself the look that decides.</summary>
    public bool Needed => !CheckFirst || Looking.Contains(Rule.Does);

    /// <summary>The reasons as sentences.</summary>
    public IReadOnlyList<string> Because => [.. Reasons.Select(r => r.Says)];
}

/// <summary>What becomes of a part.</summary>
public enum Decision { Reuse, Clean, MeasureFirst, Monitor, Machine, Replace }

/// <summary>What becomes of a part that was looked at, and on what that rests.</summary>
/// <param name="Part">Part id.</param>
/// <param name="Places">Numbers along the machine to which it applies; empty when the part has none, or for all of them.</param>
/// <param name="Limit">The limit it is judged by, in words; "maker's limit needed" when nobody has given one.</param>
/// <param name="LimitSource">Where the limit comes from, when it is a figure or rule from a source; else null.</param>
/// <param name="LimitFrom">Where the limit comes from as the case says it ("maker's manual"); else null.</param>
/// <param name="Readings">The readings it rests on, as sentences; empty when nothing was measured.</param>
/// <param name="Reasons">Observations and readings behind it.</param>
/// <param name="Why">One sentence why this and not another decision.</param>
/// <param name="RuleId">Id of the decision rule.</param>
/// <param name="Steps">Ids of the steps of the plan that work on this part.</param>
public sealed record PartDecision(
    string Part, IReadOnlyList<int> Places, Decision Decision, string Limit, SourceRef? LimitSource, string? LimitFrom, IReadOnlyList<string> Readings,
    IReadOnlyList<WorkReason> Reasons, string Why, string RuleId, IReadOnlyList<SourceRef> Sources, IReadOnlyList<string> Steps);

/// <summary>A check that shows whether a cause is gone.</summary>
/// <param name="Step">Id of the step that it belongs to.</param>
/// <param name="Limit">The limit, or null for a plain look.</param>
public sealed record CauseCheck(string Step, string How, string? Limit, SourceRef? Source);

/// <summary>How one cause is removed.</summary>
/// <param name="Probability">Probability of the cause, 0 to 0.98.</param>
/// <param name="CheckFirst">True when it is only possible: prove it before the work is done.</param>
/// <param name="Inside">Ids of the steps that remove it inside the unit.</param>
/// <param name="Outside">Ids of the steps that remove it outside the unit: habits, fuel, cooling, alignment, the driven machine.</param>
/// <param name="Checks">How to see that it is gone.</param>
public sealed record CauseRemoval(
    Cause Cause, double Probability, bool CheckFirst, IReadOnlyList<string> Inside, IReadOnlyList<string> Outside, IReadOnlyList<CauseCheck> Checks);

/// <summary>What is done to a part that lies downstream of the damage.</summary>
public enum DownstreamAction { Inspect, Flush, Renew }

/// <summary>A part to which debris, water, fuel or a blow may have travelled.</summary>
/// <param name="Circuit">What carries it there, in words: "oil of the engine".</param>
/// <param name="Step">Id of the step of the plan that does it, or null when this line is all there is.</param>
public sealed record DownstreamLine(
    string Circuit, string Part, DownstreamAction Action, string Says, IReadOnlyList<WorkReason> Reasons, IReadOnlyList<SourceRef> Sources, string? Step,
    string RuleId);

/// <summary>A part that is renewed together with another, although it may look good.</summary>
/// <param name="Step">Id of the step that renews the first of them.</param>
public sealed record RenewedTogether(string Step, string Part, string Why, IReadOnlyList<SourceRef> Sources);

/// <summary>Something that must not be done before a step is finished.</summary>
public sealed record HoldPoint(string Step, string Says);

/// <summary>The plan of corrective work: steps in order, what becomes of each part, orders, sheets, and how far to go.</summary>
/// <param name="Items">Steps in an order in which nothing comes before what it needs.</param>
/// <param name="Decisions">One for every part that was looked at, and for every part that a step renews or machines on its account.</param>
/// <param name="Removals">One for every named, contested or possible cause, likeliest first.</param>
public sealed record WorkPlan(
    IReadOnlyList<WorkItem> Items, IReadOnlyList<PartDecision> Decisions, IReadOnlyList<CauseRemoval> Removals, IReadOnlyList<DownstreamLine> Downstream,
    IReadOnlyList<RenewedTogether> Together, IReadOnlyList<HoldPoint> Holds, WorkOrders Orders, WorkSheets Sheets, IReadOnlyList<ScopeOption> Scopes)
{
    /// <summary>A plan with nothing in it.</summary>
    public static WorkPlan Nothing { get; } = new([], [], [], [], [], [], new WorkOrders([], [], []), new WorkSheets([], [], []), []);
}
