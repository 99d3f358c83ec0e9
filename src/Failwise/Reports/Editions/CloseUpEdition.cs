using Failwise.Work;

namespace Failwise.Reports.Editions;

/// <summary>What is checked before the machine is closed, at the first start, and in the hours after.</summary>
internal sealed class CloseUpEdition(ReportPage sheet)
{
    private const string ToFill = "\u2026\u2026\u2026\u2026";

    private static string Safe(string text) => MarkdownText.Safe(text);

    public void Write()
    {
        WorkSheets sheets = sheet.Diagnosis.Work.Sheets;
        JobHead.Write(sheet, "Close-up and first start");
        sheet.Text.Paragraph("Tick when done, write the reading where one is asked for, and put your initials. **Stop** means: work does not go on before this line is ticked. "
            + "Limits come from the maker's manual of this machine; a figure with a named source is an example.");
        WorkSections.Cautions(sheet, 2, ofWhat: " of the work order");
        Lines("Before closing up", sheets.CloseUp);
        Lines("First start", sheets.FirstStart);
        Lines("In the hours after", sheets.FollowUp);
        if (sheets.CloseUp.Count + sheets.FirstStart.Count + sheets.FollowUp.Count == 0)
        {
            sheet.Text.Paragraph("No work was planned that needs a sheet of its own. Close the machine as its maker says.");
        }

        JobHead.Sign(sheet, "All lines ticked, readings within their limits");
        EndSections.Sources(sheet);
    }

    private void Lines(string title, IReadOnlyList<SheetLine> lines)
    {
        if (lines.Count == 0)
        {
            return;
        }

        sheet.Text.Heading(2, title);
        SheetLine[][] rows = [.. Together(lines)];
        bool timed = lines.Any(l => l.When is not null);
        sheet.Text.Table(timed ? ["done", "when", "what", "reading", "limit", "initials"] : ["done", "what", "reading", "limit", "initials"], [.. rows.Select(r => Row(r, timed))]);
    }

    /// <summary>Lines that differ only in their number stand in one row with a box for each.</summary>
    private static IEnumerable<SheetLine[]> Together(IReadOnlyList<SheetLine> lines)
    {
        for (int from = 0, to; from < lines.Count; from = to)
        {
            to = from + 1;
            while (to < lines.Count && lines[to].Place is not null && lines[to].RuleId == lines[from].RuleId && lines[to].Says == lines[from].Says)
            {
                to++;
            }

            yield return [.. lines.Skip(from).Take(to - from)];
        }
    }

    private string[] Row(SheetLine[] lines, bool timed)
    {
        SheetLine line = lines[0];
        string what = (line.Stop ? "**Stop:** " : "") + Safe(line.Says);
        string unit = line.Unit is { } u ? " " + Safe(u) : "";
        string reading = line.Reading is not { } r ? "" : (r == "reading" ? "" : Safe(r) + ": ") + string.Join(", ", lines.Select(l => (l.Place is { } n ? $"No. {n} " : "") + ToFill + unit));
        string limit = line.Limit is { } most ? Safe(most) + (line.LimitSource is { } source ? $" ({sheet.Cite([source])})" : "") : "";
        string boxes = string.Join(" ", lines.Select(l => WorkSections.TickBox + (l.Place is { } n ? $"\u00a0{n}" : "")));
        return timed ? [boxes, Safe(line.When ?? ""), what, reading, limit, ToFill] : [boxes, what, reading, limit, ToFill];
    }
}
