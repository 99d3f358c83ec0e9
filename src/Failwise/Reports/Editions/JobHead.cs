namespace Failwise.Reports.Editions;

/// <summary>Head and foot of the sheets that are filled in by hand.</summary>
internal static class JobHead
{
    private const string Blank = "\u2026\u2026\u2026\u2026\u2026\u2026\u2026\u2026";

    private static string Safe(string text) => MarkdownText.Safe(text);

    public static void Write(ReportPage sheet, string title)
    {
        Cases.JobRecord job = sheet.Case.Job;
        sheet.Text.Heading(1, $"{title}: {Safe(sheet.Case.Title)}");
        sheet.Text.Table(["what", "as written down"],
        [
            ["job number", Safe(job.Number ?? Blank)], ["owner", Safe(job.Owner ?? Blank)], ["maker's plate", Safe(job.Serial ?? Blank)],
            .. CaseSections.Machine(sheet).Where(r => r.Name is "machine" or "layout").Select(r => new[] { r.Name, Safe(r.Value) }),
        ]);
    }

    /// <summary>Lines to sign on.</summary>
    public static void Sign(ReportPage sheet, string says)
    {
        sheet.Text.Heading(2, "Signed");
        sheet.Text.Table(["what", "name", "date", "signature"], [[says, Blank, Blank, Blank]]);
    }
}
