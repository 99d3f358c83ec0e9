using System.Text;
using Failwise.Drawings;
using Failwise.Knowledge;
using static Failwise.Sheets.SheetHtml;

namespace Failwise.Sheets;

/// <summary>The tables of the parts: those that tell most with a line for every mark, the others with a line each.</summary>
internal static class SheetParts
{
    private const int MostColumns = 12;
    private const int Hints = 5;

    public static void Write(StringBuilder body, KnowledgeBase knowledge, IReadOnlyList<SheetPart> parts)
    {
        foreach (SheetPart part in parts.Where(p => p.Full))
        {
            Full(body, knowledge, part);
        }

        foreach (IGrouping<string, SheetPart> alike in parts.Where(p => !p.Full && p.Columns.Count > 0).GroupBy(p => string.Join(' ', Bare(p))))
        {
            Rows(body, [.. alike], alike.First().Open ? "Several of each, numbered by you: letters and amount, such as cr 3" : $"{Bare(alike.First()).Length} of each: write letters and amount, such as cr 3", Bare(alike.First()));
        }

        Rows(body, [.. parts.Where(p => !p.Full && p.Columns.Count == 0)], "One of each: write letters and amount, such as wo 2", []);
    }

    /// <summary>Numbers without halves: in one line a half is written beside the mark.</summary>
    private static string[] Bare(SheetPart part) => part.Open ? [.. part.Columns] : [.. part.Columns.Select(c => c.TrimEnd([.. "ABCDEFGHIJKLMNOPQRSTUVWXYZ"])).Distinct()];

    private static void Full(StringBuilder body, KnowledgeBase knowledge, SheetPart part)
    {
        body.Append("<section class=\"part\"><h3><b class=\"code\">").Append(part.Code).Append("</b> ").Append(Encode(Capital(part.Part.Name)))
            .Append(part.IfFitted ? " <small>if it has one</small>" : "").Append("</h3>\n");
        string[] columns = part.Columns.Count == 0 ? [""] : [.. part.Columns];
        for (int from = 0; from < columns.Length; from += MostColumns)
        {
            Grid(body, knowledge, part, [.. columns.Skip(from).Take(MostColumns)]);
        }

        body.Append("<p class=\"hint\">To type in: <b>").Append(Encode(SheetCodes.Example(part))).Append("</b>");
        if (part.Places.Count > 0)
        {
            body.Append(" &#160; where on it: ").Append(string.Join(", ", part.Places.Select(p => $"<b>{p.Letter}</b>&#160;{Encode(p.Word)}")));
        }

        body.Append("</p></section>\n");
    }

    private static void Grid(StringBuilder body, KnowledgeBase knowledge, SheetPart part, string[] columns)
    {
        body.Append("<table class=\"grid\"><colgroup><col style=\"width:19mm\"/><col style=\"width:13mm\"/><col style=\"width:40mm\"/></colgroup><thead><tr><th colspan=\"3\">").Append(part.Open ? "write the numbers above the boxes" : "").Append("</th><th>all</th>")
            .Append(string.Concat(columns.Select(c => $"<th>{(c.Length == 0 ? "&#160;" : Encode(c))}</th>"))).Append("</tr></thead><tbody>\n");
        Row(MarkDrawings.Sound(knowledge, part.Part.Id), SheetCodes.Sound, "normal, looked at", false);
        Row("", SheetCodes.NotLooked, "not looked at", false);
        foreach (SheetMark mark in part.Marks)
        {
            Row(mark.Drawing ?? "", mark.Write, mark.Pattern.Name, mark.BeforeCleaning);
        }

        Row("", "", "", false);
        body.Append("</tbody></table>\n");

        void Row(string drawing, string write, string name, bool first) => body.Append("<tr><td class=\"draw\">").Append(drawing).Append("</td><td class=\"")
            .Append(write.Length > 3 ? "long" : "code").Append("\">").Append(write.Length > 3 ? "" : Encode(write)).Append("</td><td class=\"name\">").Append(first ? "&#9733; " : "").Append(Encode(name))
            .Append("</td>").Append(string.Concat(Enumerable.Repeat("<td class=\"box\"></td>", columns.Length + 1))).Append("</tr>\n");
    }

    private static void Rows(StringBuilder body, IReadOnlyList<SheetPart> parts, string title, string[] columns)
    {
        if (parts.Count == 0)
        {
            return;
        }

        string[] boxes = columns.Length == 0 ? ["mark, amount, where"] : ["all", .. columns.Take(MostColumns)];
        body.Append("<section><h2>").Append(title).Append("</h2><table class=\"rows ").Append(columns.Length == 0 ? "one" : "many").Append("\"><thead><tr><th class=\"what\">part, and what it may show</th><th class=\"tickbox\">ok</th><th class=\"tickbox\">nl</th>")
            .Append(string.Concat(boxes.Select(c => $"<th>{(c.Length == 0 ? "&#160;" : Encode(c))}</th>"))).Append("</tr></thead><tbody>\n");
        foreach (SheetPart part in parts)
        {
            body.Append("<tr><td class=\"what\"><b class=\"code\">").Append(part.Code).Append("</b> ").Append(Encode(part.Part.Name)).Append(part.IfFitted ? " (if it has one)" : "")
                .Append("<br/><small>").Append(string.Join(", ", part.Marks.Take(Hints).Select(m => (m.BeforeCleaning ? "&#9733;" : "") + (m.Write == m.Pattern.Id ? Encode(m.Pattern.Name) : $"<b>{Encode(m.Write)}</b>&#160;{Encode(m.Pattern.Name)}"))))
                .Append("</small></td>").Append(string.Concat(Enumerable.Repeat("<td></td>", boxes.Length + 2))).Append("</tr>\n");
        }

        body.Append("</tbody></table></section>\n");
    }
}
