using Failwise.Knowledge;
using Failwise.Securing;

namespace Failwise.Sheets;

/// <summary>A mark that may be found on a part.</summary>
/// <param name="Write">What to write for it: its short code, or its word when it has none.</param>
/// <param name="BeforeCleaning">True when cleaning destroys it.</param>
/// <param name="Drawing">A small drawing as SVG; null when none would help.</param>
public sealed record SheetMark(Pattern Pattern, string Write, bool BeforeCleaning, string? Drawing);

/// <summary>A part of this machine, with a box for every mark and every place.</summary>
/// <param name="Code">Short code of the part.</param>
/// <param name="Columns">What follows the code for each place, such as 3L; empty for a part of which there is one.</param>
/// <param name="Open">True when the machine has several and the case does not say how many: the numbers are written by hand.</param>
/// <param name="IfFitted">True when it is not sure that this machine has it.</param>
/// <param name="Full">True for the parts that tell most: they get a line for every mark. The others get one line.</param>
/// <param name="Places">Place letters that can follow the number, with their words.</param>
public sealed record SheetPart(
    Part Part, string Code, IReadOnlyList<string> Columns, bool Open, bool IfFitted, bool Full, IReadOnlyList<(string Letter, string Word)> Places,
    IReadOnlyList<SheetMark> Marks);

/// <summary>A reading to take.</summary>
/// <param name="Quantity">What is measured, as the case writes it.</param>
public sealed record SheetReading(SheetPart Part, string Quantity);

/// <summary>Something to ask about before the machine is opened.</summary>
/// <param name="Known">True or false when the case says so already; null when it is open.</param>
public sealed record SheetQuestion(string Id, string Says, bool? Known);

/// <summary>The inspection sheets of one machine.</summary>
/// <param name="Title">Title of the case.</param>
/// <param name="Machine">The machine in a few words.</param>
/// <param name="Parts">Parts in the order in which to look at them.</param>
public sealed record InspectionSheet(
    string Title, string Machine, IReadOnlyList<SheetQuestion> Symptoms, IReadOnlyList<SheetQuestion> History, IReadOnlyList<SheetPart> Parts,
    IReadOnlyList<SheetReading> Readings, IReadOnlyList<SheetMark> Debris)
{
    /// <summary>What to tick before the machine is turned, stripped or washed; empty on sheets of single parts.</summary>
    public IReadOnlyList<TickSection> Secure { get; init; } = [];

    /// <summary>Every mark of these sheets that has a short code, each once, by code.</summary>
    public IReadOnlyList<SheetMark> Legend =>
        [.. Parts.SelectMany(p => p.Marks).Where(m => m.Write != m.Pattern.Id).DistinctBy(m => m.Write).OrderBy(m => m.Write, StringComparer.Ordinal)];
}
