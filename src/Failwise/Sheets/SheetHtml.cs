using System.Globalization;
using System.Net;
using System.Text;
using Failwise.Drawings;
using Failwise.Knowledge;
using Failwise.Securing;

namespace Failwise.Sheets;

/// <summary>Size of the paper.</summary>
public enum Paper { A4, Letter }

/// <summary>Inspection sheets as one HTML file for the printer: black on white, thick lines, boxes for a gloved hand, page numbers.</summary>
public static class SheetHtml
{
    private const int MostReadings = 8;

    /// <summary>Writes the sheets.</summary>
    public static string Write(KnowledgeBase knowledge, InspectionSheet sheet, Paper paper)
    {
        StringBuilder body = new();
        Head(body, sheet);
        Secure(body, sheet.Secure);
        SheetRules.Write(body);
        Questions(body, "What it did before it was stopped", sheet.Symptoms);
        Questions(body, "History: what was done, what was it like", sheet.History);
        Legend(body, sheet.Legend);
        SheetParts.Write(body, knowledge, sheet.Parts);
        if (sheet.Debris.Count > 0)
        {
            Debris(body, knowledge, sheet);
        }

        Readings(body, sheet.Readings);
        Lines(body);
        return SheetPage.Wrap(Encode(sheet.Title), body.ToString(), paper);
    }

    private static void Head(StringBuilder body, InspectionSheet sheet) => body.Append($"""
        <header><h1>Inspection sheets</h1><p class="job">{Encode(sheet.Title)}</p><p>{Encode(sheet.Machine)}</p>
        <table class="fill"><tr><td>Date</td><td>Looked at by</td><td>Hours or km</td></tr><tr><td>Maker's number</td><td>Oil: kind, last changed</td><td>Photos: numbers</td></tr></table></header>

        """);

    private static void Secure(StringBuilder body, IReadOnlyList<TickSection> sections)
    {
        foreach (TickSection section in sections)
        {
            body.Append("<section class=\"ask\"><h2>").Append(Encode(section.Title)).Append("</h2>\n<table class=\"ticks\"><thead><tr><th>done</th><th>what</th></tr></thead><tbody>\n");
            foreach (TickLine line in section.Lines)
            {
                body.Append("<tr><td class=\"box\"></td><td>").Append(line.Stop ? "<b>STOP</b> " : "").Append(Encode(line.Says))
                    .Append(line.Blanks is { } blanks ? " <b>" + Encode(blanks) + "</b>" : "").Append("</td></tr>\n");
            }

            body.Append("</tbody></table></section>\n");
        }
    }

    private static void Questions(StringBuilder body, string title, IReadOnlyList<SheetQuestion> questions)
    {
        if (questions.Count == 0)
        {
            return;
        }

        body.Append("<section class=\"ask\"><h2>").Append(title).Append("</h2>\n<p class=\"hint\">Tick yes or no; leave it open when nobody knows.</p><table class=\"ticks\"><thead><tr><th>yes</th><th>no</th><th>said</th><th>to type in</th></tr></thead><tbody>\n");
        foreach (SheetQuestion q in questions)
        {
            body.Append("<tr><td class=\"box\">").Append(q.Known == true ? "&#10003;" : "").Append("</td><td class=\"box\">").Append(q.Known == false ? "&#10003;" : "")
                .Append("</td><td>").Append(Encode(q.Says)).Append("</td><td class=\"word\">").Append(Encode(SheetCodes.Statement(q.Id))).Append("</td></tr>\n");
        }

        body.Append("</tbody></table></section>\n");
    }

    private static void Legend(StringBuilder body, IReadOnlyList<SheetMark> marks)
    {
        body.Append("<section><h2>What the letters mean</h2><p class=\"hint\">&#9733; is lost by cleaning. Any other mark: write its name.</p><div class=\"legend\">");
        foreach (SheetMark mark in marks)
        {
            body.Append("<div class=\"tick\">").Append(mark.Drawing ?? "<i class=\"none\"></i>").Append("<span><b class=\"code\">").Append(Encode(mark.Write)).Append("</b> ")
                .Append(mark.BeforeCleaning ? "&#9733; " : "").Append(Encode(mark.Pattern.Name)).Append("</span></div>");
        }

        body.Append("</div></section>\n");
    }

    private static void Debris(StringBuilder body, KnowledgeBase knowledge, InspectionSheet sheet)
    {
        Part part = knowledge.Parts["oil-debris"];
        string code = knowledge.Codes.FirstOrDefault(c => c.Kind == "part" && c.Id == part.Id)?.Code ?? part.Id;
        body.Append("<section class=\"part\"><h2>Debris: cut the filter open, strain the sump, wipe the magnet</h2><h3><b class=\"code\">").Append(code).Append("</b> ").Append(Encode(Capital(part.Name))).Append("</h3>\n<div class=\"single\">");
        foreach (SheetMark mark in sheet.Debris)
        {
            body.Append("<div class=\"tick\"><span class=\"box\"></span>").Append(mark.Drawing).Append("<span><b class=\"").Append(mark.Write.Length > 3 ? "long" : "code").Append("\">").Append(Encode(mark.Write)).Append("</b> ").Append(Encode(mark.Pattern.Name)).Append("</span></div>");
        }

        body.Append("</div></section>\n");
    }

    private static void Readings(StringBuilder body, IReadOnlyList<SheetReading> readings)
    {
        body.Append("<section class=\"readings\"><h2>Readings</h2><p class=\"hint\">Clean, at room temperature, instrument checked on a standard. Write the unit once. Two readings a quarter turn apart show ovality.</p>\n");
        foreach (IGrouping<string, SheetReading> alike in readings.GroupBy(r => string.Join(' ', Numbers(r.Part))))
        {
            string[] columns = [.. Numbers(alike.First().Part).Take(MostReadings)];
            body.Append("<table class=\"measure\"><thead><tr><th class=\"what\">what</th><th>unit</th><th>limit</th>").Append(string.Concat(columns.Select(c => $"<th>{(c.Length == 0 ? "&#160;" : Encode(c))}</th>"))).Append("</tr></thead><tbody>\n");
            foreach (SheetReading reading in alike)
            {
                body.Append("<tr><td class=\"what\"><b class=\"code\">").Append(reading.Part.Code).Append("</b> ").Append(Encode(reading.Quantity.Replace('-', ' ')))
                    .Append("</td>").Append(string.Concat(Enumerable.Repeat("<td></td>", columns.Length + 2))).Append("</tr>\n");
            }

            body.Append("</tbody></table>\n");
        }

        body.Append("<p class=\"hint\">To type in: <b>").Append(Encode(SheetCodes.ReadingExample(readings))).Append("</b></p></section>\n");
    }

    private static IReadOnlyList<string> Numbers(SheetPart part) => part.Columns.Count == 0 ? [""] : part.Open ? ["", "", "", ""]
        : [.. part.Columns.Select(c => c.TrimEnd([.. "ABCDEFGHIJKLMNOPQRSTUVWXYZ"])).Distinct()];

    private static void Lines(StringBuilder body)
    {
        body.Append("<section class=\"part\"><h2>Anything else</h2><p class=\"hint\">Other parts, notes, what was cleaned before it was looked at, what is missing.</p><table class=\"lines\">");
        for (int i = 0; i < 10; i++)
        {
            body.Append("<tr><td></td></tr>");
        }

        body.Append("</table></section>\n");
    }

    internal static string Encode(string text) =>
        WebUtility.HtmlEncode(string.Concat(text.Select(c => char.IsControl(c) || Reports.MarkdownText.IsDirectionMark(c) ? ' ' : c)));

    internal static string Capital(string text) => text.Length == 0 ? text : string.Create(CultureInfo.InvariantCulture, $"{char.ToUpperInvariant(text[0])}{text[1..]}");
}
