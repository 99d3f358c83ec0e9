using Failwise.Knowledge;
using Failwise.Reports;
using Failwise.Securing;

namespace Failwise.Sheets;

/// <summary>Inspection sheets as Markdown tables, for a printer without a browser or for writing into.</summary>
public static class SheetMarkdown
{
    private const string Empty = "   ";

    /// <summary>Writes the sheets.</summary>
    public static string Write(InspectionSheet sheet)
    {
        MarkdownText md = new();
        md.Heading(1, "Inspection sheets: " + Safe(sheet.Title));
        md.Paragraph(Safe(sheet.Machine));
        md.Table(["date", "looked at by", "hours or km"], [[Empty, Empty, Empty]]);
        md.Paragraph("Look before you clean: cleaning destroys what is marked \\*. Write into the box: 1 trace, 2 light, 3 moderate, 4 heavy, 5 destroyed; ? not quite sure, ?? doubtful. "
            + "`ok` looked at and normal, `nl` not looked at; an empty box says nothing. A letter beside the number says where on the part.");
        foreach (TickSection section in sheet.Secure)
        {
            md.Heading(2, section.Title);
            md.Bullets(section.Lines.Select(l => $"[ ] {(l.Stop ? "**STOP** " : "")}{l.Says}{(l.Blanks is null ? "" : " " + l.Blanks)}"));
        }

        Questions(md, "What it did before it was stopped", sheet.Symptoms);
        Questions(md, "History", sheet.History);
        foreach (SheetPart part in sheet.Parts)
        {
            md.Heading(2, $"{part.Code} {Safe(SheetHtml.Capital(part.Part.Name))}{(part.IfFitted ? " (if it has one)" : "")}");
            string[] columns = part.Columns.Count == 0 ? [""] : ["all", .. part.Columns];
            md.Table(["write", "mark", .. columns],
            [
                Row(SheetCodes.Sound, "normal, looked at"), Row(SheetCodes.NotLooked, "not looked at"),
                .. part.Marks.Select(m => Row(m.Write, (m.BeforeCleaning ? "\\* " : "") + Safe(m.Pattern.Name))),
            ]);
            md.Paragraph($"To type in: `{SheetCodes.Example(part)}`"
                + (part.Places.Count == 0 ? "" : ". Place letters: " + string.Join(", ", part.Places.Select(p => $"{p.Letter} {Safe(p.Word)}"))));

            string[] Row(string write, string name) => ["`" + write + "`", name, .. Enumerable.Repeat(Empty, columns.Length)];
        }

        if (sheet.Debris.Count > 0)
        {
            md.Heading(2, "Debris");
            md.Table(["write", "found", "how much"], [.. sheet.Debris.Select(m => new[] { "`" + m.Write + "`", Safe(m.Pattern.Name), Empty })]);
        }

        md.Heading(2, "Readings");
        md.Table(["what", "which", "value and unit", "limit"], [.. sheet.Readings.Select(r => new[] { $"`{r.Part.Code}` {Safe(r.Quantity)}", Empty, Empty, Empty })]);
        md.Paragraph($"To type in: `{SheetCodes.ReadingExample(sheet.Readings)}`");
        return md.ToString();
    }

    private static void Questions(MarkdownText md, string title, IReadOnlyList<SheetQuestion> questions)
    {
        if (questions.Count > 0)
        {
            md.Heading(2, title);
            md.Table(["yes", "no", "said", "to type in"], [.. questions.Select(q => new[] { q.Known == true ? "x" : Empty, q.Known == false ? "x" : Empty, Safe(q.Says), "`" + SheetCodes.Statement(q.Id) + "`" })]);
        }
    }

    private static string Safe(string text) => MarkdownText.Safe(text);
}
