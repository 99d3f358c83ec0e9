namespace Failwise.Reports;

/// <summary>For whom a report is written.</summary>
public enum ReportEdition
{
    /// <summary>Plain words for whoever owns the machine.</summary>
    Owner,

    /// <summary>Everything, with reasons, limits and sources.</summary>
    Technical,

    /// <summary>What the shop works from, in order, to tick off.</summary>
    WorkOrder,

    /// <summary>What is checked before the machine is closed, at the first start and after.</summary>
    CloseUp,
}

/// <summary>A photo of the case as the report shows it.</summary>
/// <param name="File">The file, relative to the case folder, with forward slashes.</param>
/// <param name="Link">The address that stands for it in the Markdown.</param>
/// <param name="Caption">What it shows, in the words of the case.</param>
/// <param name="State">Whether it can be shown, and if not why.</param>
public sealed record ReportPhoto(string File, string Link, string Caption, PhotoState State)
{
    /// <summary>A single photo above this is linked to, not put in [MB of 1024 x 1024 bytes].</summary>
    public const int LargestMegabytes = 12;

    /// <summary>All photos together: a page that holds more opens too slowly to be read [MB of 1024 x 1024 bytes].</summary>
    public const int LargestSumMegabytes = 48;
}

/// <summary>A report in Markdown with the pictures that belong to it.</summary>
/// <param name="PictureFolder">The folder that the Markdown's picture links name; null when the report was written without pictures.</param>
public sealed record Report(
    ReportEdition Edition, string Title, string Markdown, string? PictureFolder, IReadOnlyList<Picture> Pictures, IReadOnlyList<ReportPhoto> Photos);

/// <summary>Stable words for editions: as typed, and as printed.</summary>
public static class EditionNames
{
    /// <summary>Every edition by the word for it on the command line.</summary>
    public static IReadOnlyDictionary<string, ReportEdition> ByWord { get; } = new Dictionary<string, ReportEdition>(StringComparer.Ordinal)
    {
        ["owner"] = ReportEdition.Owner, ["technical"] = ReportEdition.Technical, ["work-order"] = ReportEdition.WorkOrder, ["close-up"] = ReportEdition.CloseUp,
    };

    /// <summary>The word for an edition on the command line.</summary>
    public static string WordFor(ReportEdition edition) => ByWord.First(e => e.Value == edition).Key;

    internal static string Name(ReportEdition edition) => edition switch
    {
        ReportEdition.Owner => "Report for the owner",
        ReportEdition.Technical => "Technical report",
        ReportEdition.WorkOrder => "Work order",
        _ => "Close-up and first-start sheet",
    };
}
