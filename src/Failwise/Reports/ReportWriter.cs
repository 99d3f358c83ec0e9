using Failwise.Reports.Editions;

namespace Failwise.Reports;

/// <summary>Writes a report from the diagnosis alone: the same diagnosis gives the same bytes.</summary>
public static class ReportWriter
{
    /// <summary>Writes an edition in Markdown, with its pictures.</summary>
    /// <param name="pictureFolder">
    /// The folder in which the pictures will lie, as the Markdown's links shall name it; null for a report without drawings, whose photo links
    /// name the files as the case does.
    /// </param>
    public static Report Write(Diagnosis diagnosis, ReportEdition edition, string? pictureFolder)
    {
        ReportPage sheet = new(diagnosis, pictureFolder);
        switch (edition)
        {
            case ReportEdition.Owner:
                new OwnerEdition(sheet).Write();
                break;
            case ReportEdition.WorkOrder:
                new WorkOrderEdition(sheet).Write();
                break;
            case ReportEdition.CloseUp:
                new CloseUpEdition(sheet).Write();
                break;
            default:
                Technical(sheet);
                break;
        }

        return sheet.Finish(edition);
    }

    private static void Technical(ReportPage sheet)
    {
        sheet.Text.Heading(1, MarkdownText.Safe(sheet.Case.Title));
        CauseSections.Answer(sheet);
        CaseSections.Job(sheet);
        CaseSections.Reported(sheet);
        CaseSections.Received(sheet);
        CaseSections.Looked(sheet);
        CaseSections.Observed(sheet);
        CauseSections.Analysis(sheet);
        CauseSections.Conclusion(sheet);
        CauseSections.NextChecks(sheet);
        WorkSections.Write(sheet);
        EndSections.Limits(sheet);
        EndSections.HowToRead(sheet);
        CaseSections.Photos(sheet);
        EndSections.Sources(sheet);
    }
}
