namespace Failwise.Reports;

/// <summary>The technical report in Markdown without drawings, for the screen and for a pipe.</summary>
public static class MarkdownReport
{
    /// <summary>Writes the report.</summary>
    public static string Write(Diagnosis diagnosis) => ReportWriter.Write(diagnosis, ReportEdition.Technical, null).Markdown;
}
