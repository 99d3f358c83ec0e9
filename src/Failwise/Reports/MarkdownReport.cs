namespace Failwise.Reports;

public static class MarkdownReport
{
    public static string Write(Diagnosis diagnosis) => TextReport.Write(diagnosis);
}
