using Failwise.Knowledge;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Failwise.Reports;

/// <summary>
/// The atlas as linked pages for a browser: each is one file with style and drawings inside, without scripts, and opens from a folder
/// without a network. It starts at <c>index.html</c>.
/// </summary>
public static class AtlasHtml
{
    /// <summary>Every page, in order of path.</summary>
    public static IReadOnlyList<AtlasPage> Write(KnowledgeBase knowledge)
    {
        IReadOnlyList<AtlasPage> pages = Atlas.Write(knowledge);
        Dictionary<string, string> drawings = pages.Where(p => p.Path.EndsWith(".svg", StringComparison.Ordinal))
            .ToDictionary(p => p.Path, p => "data:image/svg+xml," + Uri.EscapeDataString(p.Text.Trim()), StringComparer.Ordinal);
        return [.. pages.Where(p => p.Path.EndsWith(".md", StringComparison.Ordinal)).Select(p => new AtlasPage(HtmlPath(p.Path), Page(p, drawings)))
            .OrderBy(p => p.Path, StringComparer.Ordinal)];
    }

    private static string Page(AtlasPage page, Dictionary<string, string> drawings)
    {
        MarkdownDocument document = Markdown.Parse(page.Text, HtmlReport.Pipeline);
        foreach (LinkInline link in document.Descendants<LinkInline>())
        {
            // Every drawing of the atlas lies in one folder, however many steps up the page that shows it has to go.
            string target = (link.Url ?? "").Replace("../", "", StringComparison.Ordinal);
            link.Url = link.IsImage ? drawings[target] : HtmlPath(link.Url ?? "");
        }

        foreach (Table table in document.Descendants<Table>())
        {
            HtmlReport.NameCells(table);
        }

        string title = string.Concat(document.Descendants<HeadingBlock>().First().Inline!.Descendants<LiteralInline>().Select(l => l.Content.ToString()));
        return HtmlPage.Write(new HtmlHead(title, "Atlas", "atlas", "Skip to the page"), HtmlReport.Contents(document), document.ToHtml(HtmlReport.Pipeline), null);
    }

    private static string HtmlPath(string path) => path.EndsWith("README.md", StringComparison.Ordinal) ? path[..^"README.md".Length] + "index.html"
        : path.EndsWith(".md", StringComparison.Ordinal) ? path[..^3] + ".html" : path;
}
