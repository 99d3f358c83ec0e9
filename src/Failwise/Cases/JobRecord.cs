using Failwise.Yaml;

namespace Failwise.Cases;

/// <summary>
/// What a report has to say besides the findings: whose machine, who asks, what is told. It is free text, printed as written; nothing is
/// reasoned from it. A list is empty, and a text null, when the case does not say.
/// </summary>
/// <param name="Number">The shop's number of the job.</param>
/// <param name="Serial">Numbers and sizes of the maker's plate, as read.</param>
/// <param name="Received">How it came in, before anything was cleaned.</param>
/// <param name="Told">What the owner or operator says happened.</param>
/// <param name="WorkBefore">Who worked on it before, when, with which parts and papers.</param>
/// <param name="Existing">Damage that was there before, or has nothing to do with this failure.</param>
/// <param name="Papers">Documents that were seen, or asked for and not given.</param>
/// <param name="Kept">Which parts are kept, where and until when.</param>
public sealed record JobRecord(
    string? Number, string? Owner, string? AskedBy, string? Purpose, string? Date, string? Place, string? LookedBy, string? Serial,
    IReadOnlyList<string> Received, IReadOnlyList<string> Told, IReadOnlyList<string> WorkBefore, IReadOnlyList<string> Existing,
    IReadOnlyList<string> Papers, IReadOnlyList<string> Kept)
{
    /// <summary>A job about which nothing was written down.</summary>
    public static JobRecord Nothing { get; } = new(null, null, null, null, null, null, null, null, [], [], [], [], [], []);

    internal static JobRecord Read(MapNode? map) => map is null ? Nothing : new JobRecord(
        map.Text("number"), map.Text("owner"), map.Text("asked-by"), map.Text("purpose"), map.Text("date"), map.Text("place"), map.Text("looked-by"), map.Text("serial"),
        map.Texts("received"), map.Texts("told"), map.Texts("work-before"), map.Texts("existing"), map.Texts("papers"), map.Texts("kept"));
}
