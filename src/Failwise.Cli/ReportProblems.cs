using Failwise.Problems;
using Failwise.Reports;

namespace Failwise.Cli;

/// <summary>What can stop a report from being written as wished.</summary>
internal static class ReportProblems
{
    public static Problem PhotoNotShown(Location at, ReportPhoto photo) => new("FW080", Severity.Warning, at, $"the photo '{Short(photo.File)}' is not shown in the report: " + photo.State switch
    {
        PhotoState.Missing => "there is no such file, or it cannot be read.",
        PhotoState.NotAPicture => "the file is not a picture.",
        PhotoState.NotShownByBrowsers => "browsers do not open this kind of picture; save a copy as JPEG and name that.",
        PhotoState.TooLarge => $"it is larger than {ReportPhoto.LargestMegabytes} MB; the report names it. Name a smaller copy to show it.",
        _ => $"the photos together are larger than {ReportPhoto.LargestSumMegabytes} MB; the report names it. Name smaller copies to show all.",
    });

    public static Problem NoChromium(string file) => new("FW081", Severity.Error, new Location(file, 0, 0),
        "a PDF is printed by Chromium, and none was found. Install Chromium or Chrome, or name it in FAILWISE_CHROMIUM; or write .html and print that from any browser.");

    public static Problem ChromiumFailed(string file, string why) => new("FW082", Severity.Error, new Location(file, 0, 0),
        $"Chromium did not print the PDF: {why} Nothing was written; write .html and print that from any browser.");

    private static string Short(string text) => text.Length <= 90 ? text : text[..87] + "...";
}
