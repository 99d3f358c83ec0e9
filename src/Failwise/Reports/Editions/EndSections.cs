using Failwise.Knowledge;

namespace Failwise.Reports.Editions;

/// <summary>How to read the report, how far it goes, and where its facts come from.</summary>
internal static class EndSections
{
    private static string Safe(string text) => MarkdownText.Safe(text);

    public static void Limits(ReportPage sheet)
    {
        sheet.Text.Heading(2, "Limits of this report");
        sheet.Text.Paragraph("This report gives an opinion on the technical cause, from what was seen, measured and told as it stands here. It lays no blame on anyone, "
            + "does not say who has to pay, and is no judgement on a person's work. What was not looked at, or was changed before anyone looked, may alter the opinion. "
            + "It does not replace the maker's manual, measurement, local codes or licensed practice; figures with a named source are examples unless the maker of this machine gave them.");
        if (sheet.Case.Job.Kept.Count > 0)
        {
            sheet.Text.Paragraph("Parts kept: " + Safe(string.Join(" ", sheet.Case.Job.Kept.Select(Phrases.Sentence))));
        }
        else
        {
            sheet.Text.Paragraph("Not written down: which parts are kept, where and until when.");
        }
    }

    public static void HowToRead(ReportPage sheet)
    {
        sheet.Text.Heading(2, "How to read this");
        sheet.Text.Paragraph("Probabilities are degrees of belief from the rules and this evidence, never above 98 %. A weight in dB (deciban) says how much one piece of "
            + "evidence moves the odds when all the rest stays: 3 dB doubles them, 10 dB makes them ten times as large. Pieces that say the same cover for "
            + "each other, so each of them alone can look slight. The strengths of the rules are judgement unless a source is named.");
        if (sheet.Causes.Note is { } note)
        {
            sheet.Text.Paragraph(Safe(note));
        }
    }

    public static void Sources(ReportPage sheet)
    {
        Source[] sources = [.. sheet.Cited.Where(sheet.Knowledge.Sources.ContainsKey).Select(id => sheet.Knowledge.Sources[id])];
        if (sources.Length > 0)
        {
            sheet.Text.Heading(2, "Sources");
            sheet.Text.Bullets(sources.Select(s => $"{s.Id}: {Safe(string.Join(", ", new[] { s.Title, s.Issuer, s.Year, s.Place }.OfType<string>()))}"));
        }
    }
}
