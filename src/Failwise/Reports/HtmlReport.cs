using System.Text;
using Markdig;
using Markdig.Renderers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Failwise.Reports;

/// <summary>The report as one self-contained HTML file: no network, prints well, photos inside.</summary>
public static class HtmlReport
{
    private const long LargestPhoto = 12 * 1024 * 1024;

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables().UseAutoIdentifiers(Markdig.Extensions.AutoIdentifiers.AutoIdentifierOptions.GitHub).DisableHtml().Build();

    /// <summary>Writes the report.</summary>
    public static string Write(Diagnosis diagnosis)
    {
        MarkdownDocument document = Markdown.Parse(MarkdownReport.Write(diagnosis), Pipeline);
        string folder = Path.GetDirectoryName(Path.GetFullPath(diagnosis.Case.File)) ?? ".";
        foreach (LinkInline link in document.Descendants<LinkInline>().Where(l => l.IsImage))
        {
            link.Url = Embed(folder, Uri.UnescapeDataString(link.Url ?? ""));
        }

        StringWriter body = new() { NewLine = "\n" };
        HtmlRenderer renderer = new(body);
        Pipeline.Setup(renderer);
        renderer.Render(document);
        return Page(Encode(diagnosis.Case.Title), Contents(document), Wrap(body.ToString()));
    }

    /// <summary>A photo as a data address; an empty picture when it is not a picture or too large, never an error.</summary>
    private static string Embed(string folder, string file)
    {
        try
        {
            FileInfo info = new(Path.Combine(folder, file));
            if (!info.Exists || info.Length > LargestPhoto)
            {
                return "data:,";
            }

            byte[] bytes = File.ReadAllBytes(info.FullName);
            string? kind = bytes switch
            {
                [0xFF, 0xD8, 0xFF, ..] => "jpeg",
                [0x89, 0x50, 0x4E, 0x47, ..] => "png",
                [0x47, 0x49, 0x46, 0x38, ..] => "gif",
                [0x52, 0x49, 0x46, 0x46, _, _, _, _, 0x57, 0x45, 0x42, 0x50, ..] => "webp",
                _ => null,
            };
            return kind is null ? "data:," : $"data:image/{kind};base64,{Convert.ToBase64String(bytes)}";
        }
        catch (IOException)
        {
            return "data:,";
        }
    }

    private static string Contents(MarkdownDocument document)
    {
        StringBuilder list = new("<nav aria-label=\"Contents\"><ul>");
        foreach (HeadingBlock heading in document.Descendants<HeadingBlock>().Where(h => h.Level == 2))
        {
            string id = Markdig.Renderers.Html.HtmlAttributesExtensions.GetAttributes(heading).Id ?? "";
            string title = string.Concat(heading.Inline!.Descendants<LiteralInline>().Select(l => l.Content.ToString()));
            list.Append("<li><a href=\"#").Append(id).Append("\">").Append(Encode(title)).Append("</a></li>");
        }

        return list.Append("</ul></nav>").ToString();
    }

    /// <summary>Wide tables scroll in their own frame on a small screen.</summary>
    private static string Wrap(string html) => html
        .Replace("<table>", "<div class=\"table\" tabindex=\"0\" role=\"region\" aria-label=\"Table\"><table>", StringComparison.Ordinal)
        .Replace("</table>", "</table></div>", StringComparison.Ordinal)
        .Replace("<th></th>", "<th><span class=\"hidden\">No.</span></th>", StringComparison.Ordinal);

    private static string Encode(string text) => System.Net.WebUtility.HtmlEncode(string.Concat(text.Select(c => char.IsControl(c) || MarkdownText.IsDirectionMark(c) ? ' ' : c)));

    private static string Page(string title, string contents, string body) => $$"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
        <title>{{title}}</title>
        <style>
        :root { color-scheme: light dark; --ink: #1d1b17; --paper: #fdfcf9; --soft: #6a6459; --line: #d8d2c4; --tint: #f3efe4; --mark: #7a3b12; }
        @media (prefers-color-scheme: dark) { :root { --ink: #ece7db; --paper: #1b1916; --soft: #b0a896; --line: #474135; --tint: #26231d; --mark: #e8a06a; } }
        * { box-sizing: border-box; }
        body { margin: 0 auto; max-width: 62rem; padding: 1.5rem clamp(1rem, 4vw, 3rem) 4rem; background: var(--paper); color: var(--ink);
          font: 1.0625rem/1.55 Georgia, "Noto Serif", "Liberation Serif", serif; overflow-wrap: anywhere; }
        h1, h2, h3, th, nav { font-family: "Gill Sans", "Noto Sans", "Liberation Sans", Arial, sans-serif; line-height: 1.25; }
        h1 { font-size: 1.9rem; margin: .5rem 0 1rem; }
        h2 { font-size: 1.35rem; margin: 2.5rem 0 .75rem; padding-top: .6rem; border-top: 3px double var(--line); }
        h3 { font-size: 1.08rem; margin: 1.75rem 0 .5rem; color: var(--mark); }
        h2:first-of-type + p { font-size: 1.2rem; padding: .9rem 1.1rem; background: var(--tint); border-left: .4rem solid var(--mark); }
        p { margin: .6rem 0; max-width: 46rem; }
        li { margin: .35rem 0; max-width: 46rem; }
        nav ul { list-style: none; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: .3rem 1.1rem; font-size: .92rem; }
        a { color: var(--mark); }
        a:focus-visible, .table:focus-visible { outline: 3px solid var(--mark); outline-offset: 2px; }
        .table { overflow-x: auto; margin: .8rem 0 1.2rem; }
        table { border-collapse: collapse; width: 100%; font-size: .93rem; line-height: 1.4; }
        th { text-align: left; white-space: nowrap; color: var(--soft); font-weight: 600; border-bottom: 2px solid var(--line); padding: .35rem .6rem .35rem 0; }
        td { vertical-align: top; border-bottom: 1px solid var(--line); padding: .45rem .6rem .45rem 0; overflow-wrap: break-word; }
        td:first-child { white-space: nowrap; }
        img { max-width: 100%; max-height: 28rem; height: auto; border: 1px solid var(--line); }
        .hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
        @media (max-width: 40rem) { .table table { min-width: 30rem; } h1 { font-size: 1.5rem; } }
        @media print {
          @page { margin: 18mm 16mm 20mm; @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; } }
          :root { --ink: #000; --paper: #fff; --soft: #444; --line: #bbb; --tint: #f4f4f4; --mark: #000; }
          body { max-width: none; padding: 0; font-size: 10.5pt; } nav { display: none; }
          .table { overflow: visible; } .table table { min-width: 0; } thead { display: table-header-group; }
          tr, h2, h3 { break-inside: avoid; } h2, h3 { break-after: avoid; } a { color: inherit; text-decoration: none; }
        }
        </style>
        </head>
        <body>
        {{contents}}
        <main>
        {{body}}</main>
        </body>
        </html>

        """;
}
