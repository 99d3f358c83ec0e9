namespace Failwise.Work;

/// <summary>One job for the machine shop.</summary>
/// <param name="Places">Numbers along the machine; empty when the part has none or all are meant.</param>
/// <param name="Operation">What is wanted, in one line.</param>
/// <param name="Sizes">Sizes as measured, as sentences; says so when nothing was measured.</param>
/// <param name="Finish">Surface finish and size to reach, or "maker's limit needed".</param>
/// <param name="DoNot">What the shop must not do.</param>
/// <param name="Ask">Questions to settle before the part leaves the bench.</param>
/// <param name="Step">Id of the step of the plan; null when no step but only the decision about the part asks for it.</param>
/// <param name="CheckFirst">True when it is ordered only if a check shows the need.</param>
public sealed record ShopJob(
    string Part, IReadOnlyList<int> Places, string Operation, IReadOnlyList<string> Sizes, string Finish, IReadOnlyList<string> DoNot, IReadOnlyList<string> Ask,
    IReadOnlyList<WorkReason> Reasons, string? Step, bool CheckFirst);

/// <summary>A part to be ordered.</summary>
/// <param name="Part">Part id, or null for an item that the rule base has no part for.</param>
/// <param name="Item">What to order, in words.</param>
/// <param name="Count">How many; null when the case does not say how many the machine has.</param>
/// <param name="CountFrom">Where the count comes from: "5 main bearings", "as seen: No. 2 and 3", "count them on the machine".</param>
/// <param name="Size">By which size it is ordered, or null when there is only one.</param>
/// <param name="OrderAfter">What must be known first, as a sentence; null when it can be ordered now.</param>
/// <param name="OrderAfterStep">Id of the step of the plan after which it is ordered, or null.</param>
/// <param name="Together">True when it is renewed only because it belongs to another part.</param>
public sealed record PartsLine(
    string? Part, string Item, int? Count, string CountFrom, string? Size, string? OrderAfter, string? OrderAfterStep, bool Together, bool CheckFirst,
    IReadOnlyList<WorkReason> Reasons, IReadOnlyList<string> Steps);

/// <summary>Something that is used up.</summary>
/// <param name="Amount">How much, in words; never a made-up figure.</param>
public sealed record ConsumableLine(string Item, string Amount, IReadOnlyList<string> Steps);

/// <summary>What to order, and from whom.</summary>
public sealed record WorkOrders(IReadOnlyList<ShopJob> MachineShop, IReadOnlyList<PartsLine> Parts, IReadOnlyList<ConsumableLine> Consumables);

/// <summary>A line of a sheet: a box to tick, a place for a reading and for initials.</summary>
/// <param name="Place">Which one, when the line stands once for each (3 for main bearing 3); else null.</param>
/// <param name="Reading">What to write down, or null when a tick is enough.</param>
/// <param name="Unit">Unit of the reading, or null.</param>
/// <param name="Limit">The limit, or "maker's limit", or what must be seen; null when nothing more is to be said.</param>
/// <param name="When">For follow-up lines: after how many hours or at what interval; else null.</param>
/// <param name="Stop">True when work stops if this line cannot be ticked.</param>
/// <param name="RuleId">Id of the sheet rule or piece of work.</param>
public sealed record SheetLine(
    string Says, int? Place, string? Reading, string? Unit, string? Limit, Knowledge.SourceRef? LimitSource, string? When, bool Stop,
    IReadOnlyList<WorkReason> Reasons, string RuleId);

/// <summary>Sheets to be filled in by hand, in the order in which they are worked through.</summary>
public sealed record WorkSheets(IReadOnlyList<SheetLine> CloseUp, IReadOnlyList<SheetLine> FirstStart, IReadOnlyList<SheetLine> FollowUp);

/// <summary>A root cause that a scope leaves at work.</summary>
public sealed record CauseLeft(string Cause, string Title, double Probability);

/// <summary>How far to go: which steps are done, and what risk remains.</summary>
/// <param name="Id">damage-only, causes-named or complete.</param>
/// <param name="Steps">Ids of the steps, in the order of the plan.</param>
/// <param name="Left">Root causes of 5 % or more that stay: nothing in this scope removes them, or only the steps outside the machine that it leaves out would, likeliest first.</param>
/// <param name="RiskLeast">Least chance that at least one of them is at work, 0 to 0.98: the likeliest one alone.</param>
/// <param name="RiskMost">Most chance that at least one of them is at work, 0 to 0.98: as if they never came together.</param>
public sealed record ScopeOption(
    string Id, string Title, string Says, IReadOnlyList<string> Steps, IReadOnlyList<CauseLeft> Left, double RiskLeast, double RiskMost, WorkTime Time);
