using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>How a piece of work is checked.</summary>
public sealed record Verification(string How, string? Limit, SourceRef? Source, string? When);

/// <summary>
/// What brings a piece of work into the plan: a cause, a finding, a circumstance, another piece of work, or a sign of at least some extent.
/// </summary>
public sealed record WorkTrigger(
    string? Cause, string? Finding, string? History, string? Work, string? Part, IReadOnlyList<string> See, Extent AtLeast, Location At);

/// <summary>A span of minutes [min]; both 0 or above, <paramref name="Most"/> not below <paramref name="Least"/>.</summary>
public sealed record MinuteSpan(double Least, double Most);

/// <summary>A part renewed along with the work, although it may look good.</summary>
public sealed record TogetherPart(string Part, string? Why);

/// <summary>What the machine shop must be told.</summary>
/// <param name="Finish">Size and surface to reach.</param>
/// <param name="DoNot">What it must not do.</param>
/// <param name="Ask">Questions to settle first.</param>
public sealed record ShopNote(string? Finish, IReadOnlyList<string> DoNot, IReadOnlyList<string> Ask);

/// <summary>Something to order for a piece of work.</summary>
/// <param name="Item">What it is called when it is ordered.</param>
/// <param name="Part">The part that it is; null for what no part stands for.</param>
/// <param name="Count">mains, cylinders, rods, a number, or as-seen; null when it varies.</param>
/// <param name="Size">By which size it is ordered.</param>
/// <param name="OrderAfter">Work after which its size is known.</param>
/// <param name="UsedUp">True for consumables: oil, sealant, cleaning stuff.</param>
public sealed record Material(string Item, string? Part, string? Count, string? Size, string? OrderAfter, bool UsedUp);

/// <summary>One piece of corrective work.</summary>
/// <param name="InsteadOf">Work that falls away when this is in the plan.</param>
/// <param name="Outside">True when it is done outside the unit: habits, fuel, cooling, alignment, the driven machine.</param>
/// <param name="Machines">Kinds of machine to which it applies; empty for any.</param>
/// <param name="Minutes">Time it takes; null when the rule does not say.</param>
public sealed record WorkRule(
    string Id, string Title, string Does, string? Part, string Stage, IReadOnlyList<WorkTrigger> Because, IReadOnlyList<string> After,
    IReadOnlyList<string> InsteadOf, string? How, Verification? Verify, string? Hold, IReadOnlyList<string> Cautions, IReadOnlyList<string> Needs,
    IReadOnlyList<string> Machines, bool Outside, MinuteSpan? Minutes, IReadOnlyList<TogetherPart> Together, ShopNote? Shop,
    IReadOnlyList<Material> Materials, IReadOnlyList<SourceRef> Sources, Location At);

/// <summary>What becomes of a part on which something was seen or measured.</summary>
/// <param name="See">Patterns, or any; empty when the rule speaks of a sound part or of a reading.</param>
/// <param name="Sound">True when it speaks of a part found sound.</param>
/// <param name="Reading">beyond-limit, within or too-close when it speaks of a reading; else null.</param>
/// <param name="Decide">reuse, clean, measure-first, monitor, machine or replace.</param>
/// <param name="WholeSet">True when one bad place decides for all places.</param>
/// <param name="Limit">The limit it is judged by; null when only the maker knows it.</param>
public sealed record DecisionRule(
    string Id, IReadOnlyList<string> Parts, IReadOnlyList<string> See, bool Sound, string? Reading, Extent AtLeast, string Decide, bool WholeSet,
    string? Limit, SourceRef? LimitSource, string Why, IReadOnlyList<SourceRef> Sources, Location At)
{
    /// <summary>Stands under see for any mark of damage.</summary>
    public const string AnyMark = "any";
}

/// <summary>One part to which what came loose may have travelled.</summary>
/// <param name="Do">inspect, flush or renew.</param>
/// <param name="Fitted">Feature without which the machine does not have the part; null when every such machine has it.</param>
/// <param name="Work">Work that does it; null when the line says all there is.</param>
public sealed record DownstreamStation(string Part, string Do, string Says, string? Fitted, string? Work, IReadOnlyList<SourceRef> Sources);

/// <summary>What lies downstream of a kind of damage.</summary>
/// <param name="Circuit">What carries debris there.</param>
public sealed record DownstreamRule(
    string Id, string Circuit, IReadOnlyList<string> Machines, IReadOnlyList<WorkTrigger> Because, IReadOnlyList<DownstreamStation> Stations,
    IReadOnlyList<SourceRef> Sources, Location At);

/// <summary>A reading asked for on a sheet.</summary>
/// <param name="Part">The part whose reading it is; null when no reading of a case bears on it.</param>
/// <param name="Quantity">The quantity of that part whose limit the case may give.</param>
public sealed record SheetReading(string What, string? Unit, string? Limit, SourceRef? Source, string? Part, string? Quantity);

/// <summary>A line of a sheet: before the strip and the wash, at close-up, first start or follow-up.</summary>
/// <param name="Sheet">hazards, before-turning, before-strip, before-cleaning, close-up, first-start or follow-up.</param>
/// <param name="Order">Place on the sheet, small first.</param>
/// <param name="Each">mains, cylinders or rods when the line stands once for each; else null.</param>
/// <param name="Fitted">Feature without which the line does not apply; null for none.</param>
/// <param name="Touched">Parts of which one must have been opened or worked on; empty for any job.</param>
/// <param name="Work">Pieces of work of which one must be in the plan; empty for any job.</param>
/// <param name="When">After how long or how often, for follow-up lines.</param>
/// <param name="Said">Symptoms or circumstances of which one must have been stated; empty for any job.</param>
/// <param name="Photo">Name of the photo to take; null for none.</param>
/// <param name="Stop">True when work stops if it cannot be ticked.</param>
public sealed record SheetRule(
    string Id, string Sheet, int Order, string Says, string? Each, SheetReading? Reading, IReadOnlyList<string> Machines, IReadOnlyList<string> Needs,
    string? Fitted, IReadOnlyList<string> Touched, IReadOnlyList<string> Work, IReadOnlyList<string> Said, string? Photo, string? When, bool Stop,
    IReadOnlyList<SourceRef> Sources, Location At);
