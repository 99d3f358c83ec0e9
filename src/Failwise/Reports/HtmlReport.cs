using System.Text;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Failwise.Reports;

/// <summary>The report as one self-contained HTML file: no network, no scripts, drawings and photos inside, made to be printed too.</summary>
public static class HtmlReport
{
    /// <summary>The folder name by which drawings and photos are found again in the Markdown; no file of that name is written.</summary>
    private const string Inside = "inside";

    internal static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables().UseAutoIdentifiers(Markdig.Extensions.AutoIdentifiers.AutoIdentifierOptions.GitHub).DisableHtml().Build();

    /// <summary>Writes the technical edition.</summary>
    public static string Write(Diagnosis diagnosis) => Write(diagnosis, ReportEdition.Technical);

    /// <summary>Writes an edition.</summary>
    /// <param name="photoFolder">
    /// How the page reaches the case folder, with forward slashes, for photos too large to be put in; null when it cannot.
    /// </param>
    /// <param name="paper">Paper for printing; null leaves the choice to the printer.</param>
    public static string Write(Diagnosis diagnosis, ReportEdition edition, string? photoFolder = null, Paper? paper = null)
    {
        Report report = ReportWriter.Write(diagnosis, edition, Inside);
        MarkdownDocument document = Markdown.Parse(report.Markdown, Pipeline);
        foreach (Table table in document.Descendants<Table>())
        {
            NameCells(table);
        }

        StringWriter body = new() { NewLine = "\n" };
        HtmlRenderer renderer = new(body);
        Pipeline.Setup(renderer);
        renderer.ObjectRenderers.RemoveAll(r => r is ParagraphRenderer);
        renderer.ObjectRenderers.Add(new FigureRenderer(Figures(diagnosis, report)));
        renderer.Render(document);
        string note = photoFolder is null ? "" : LargePhotos(report, photoFolder);
        return HtmlPage.Write(report, Contents(document), body + note, paper);
    }

    /// <summary>What stands for each address of the Markdown: a drawing as it is, a photo as its bytes.</summary>
    private static Dictionary<string, string> Figures(Diagnosis diagnosis, Report report)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(diagnosis.Case.File)) ?? ".";
        Dictionary<string, string> figures = report.Pictures.ToDictionary(p => $"{Inside}/{p.Name}.svg", p => p.Inline, StringComparer.Ordinal);
        foreach (ReportPhoto photo in report.Photos.Where(p => p.State == PhotoState.Shown))
        {
            figures[photo.Link] = PhotoFile.Embed(folder, photo.File) is { } data
                ? $"<img src=\"{data}\" alt=\"{HtmlPage.Encode(photo.Caption)}\">"
                : $"<p>{HtmlPage.Encode(photo.Caption)} (the file has gone)</p>";
        }

        return figures;
    }

    private static string LargePhotos(Report report, string photoFolder)
    {
        ReportPhoto[] large = [.. report.Photos.Where(p => p.State is PhotoState.TooLarge or PhotoState.OnePhotoTooMany or PhotoState.NotShownByBrowsers)];
        if (large.Length == 0)
        {
            return "";
        }

        IEnumerable<string> links = large.Select(p => $"<li><a href=\"{HtmlPage.Encode(Address(photoFolder, p.File))}\">{HtmlPage.Encode(p.Caption)}</a></li>\n");
        return $"<p>Photos that are not put in, beside this page:</p>\n<ul>\n{string.Concat(links)}</ul>\n";
    }

    private static string Address(string folder, string file) => string.Join('/', (folder is "" ? file : folder + "/" + file).Split('/').Select(Uri.EscapeDataString));

    /// <summary>Each cell carries the heading of its column, so that a narrow screen can show a row as a list.</summary>
    internal static void NameCells(Table table)
    {
        string[] names = [.. table.OfType<TableRow>().First().OfType<TableCell>().Select(c => string.Concat(c.Descendants<LiteralInline>().Select(l => l.Content.ToString())))];
        if (names.Length == 2)
        {
            // Two columns fit on any screen.
            table.GetAttributes().AddClass("pair");
            return;
        }

        foreach (TableRow row in table.OfType<TableRow>().Where(r => !r.IsHeader))
        {
            for (int i = 0; i < row.Count && i < names.Length; i++)
            {
                row[i].GetAttributes().AddPropertyIfNotExist("data-label", names[i]);
            }
        }
    }

    internal static string Contents(MarkdownDocument document)
    {
        StringBuilder list = new();
        foreach (HeadingBlock heading in document.Descendants<HeadingBlock>().Where(h => h.Level == 2))
        {
            string title = string.Concat(heading.Inline!.Descendants<LiteralInline>().Select(l => l.Content.ToString()));
            list.Append("<li><a href=\"#").Append(heading.GetAttributes().Id ?? "").Append("\">").Append(HtmlPage.Encode(title)).Append("</a></li>\n");
        }

        return list.ToString();
    }

    /// <summary>A paragraph that begins with a picture becomes a figure; the rest of it is the caption.</summary>
    private sealed class FigureRenderer(IReadOnlyDictionary<string, string> figures) : HtmlObjectRenderer<ParagraphBlock>
    {
        private readonly ParagraphRenderer plain = new();

        protected override void Write(HtmlRenderer renderer, ParagraphBlock paragraph)
        {
            if (paragraph.Inline?.FirstChild is not LinkInline { IsImage: true } image || !figures.TryGetValue(image.Url ?? "", out string? figure))
            {
                plain.Write(renderer, paragraph);
                return;
            }

            renderer.Write("<figure>\n").Write(figure).Write("\n<figcaption>");
            image.Remove();
            (paragraph.Inline.FirstChild as LineBreakInline)?.Remove();
            renderer.WriteLeafInline(paragraph);
            renderer.Write("</figcaption>\n</figure>\n");
        }
    }
}
