namespace Failwise.Reports;

public static class HtmlReport
{
    public static string Write(Diagnosis diagnosis) => TextReport.Write(diagnosis);
}
