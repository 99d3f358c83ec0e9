using Failwise.Reports.Pictures;

namespace Failwise.Reports;

/// <summary>Paper to print on.</summary>
public enum Paper { A4, Letter }

/// <summary>What a page calls itself.</summary>
/// <param name="Kind">The words above the title and at the foot of the paper.</param>
/// <param name="Word">The class of the body, by which the style knows the kind.</param>
/// <param name="Skip">The words of the link that passes by the head.</param>
internal sealed record HtmlHead(string Title, string Kind, string Word, string Skip);

/// <summary>The page around a report: its head, its style for screen and paper, and the table of contents.</summary>
internal static class HtmlPage
{
    // Written as a scheme of its own for drawings: they follow the page into the dark, their fills stay as on paper.
    private const string DarkDrawings =
        "svg.fw text{fill:#ece7db}svg.fw .q{fill:#bdb4a2}svg.fw .paper,svg.fw .box{fill:#211f1a}svg.fw .box,svg.fw .o,svg.fw .for{stroke:#ece7db}svg.fw .ink{fill:#ece7db}"
        + "svg.fw .edge,svg.fw .meter{stroke:#ece7db}svg.fw .k9{fill:#211f1a}svg.fw .for{fill:#5fae86}svg.fw .against{fill:#211f1a;stroke:#e88a78}svg.fw .thin{stroke:#6d6553}";

    public static string Encode(string text) => System.Net.WebUtility.HtmlEncode(MarkdownText.OneLine(text));

    /// <summary>The contents stand behind the title: a reader learns first what this is about.</summary>
    private static string WithContents(string body, string contents)
    {
        if (contents.Length == 0)
        {
            return body;
        }

        int behind = body.IndexOf("</h1>", StringComparison.Ordinal) + "</h1>\n".Length;
        return $"{body[..behind]}<nav aria-label=\"Contents\"><p>Contents</p><ol>\n{contents}</ol></nav>\n{body[behind..]}";
    }

    public static string Write(Report report, string contents, string body, Paper? paper) => Write(
        new HtmlHead(report.Title, EditionNames.Name(report.Edition), EditionNames.WordFor(report.Edition), "Skip to the report"), contents, body, paper);

    public static string Write(HtmlHead head, string contents, string body, Paper? paper) => $$"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
        <title>{{Encode(head.Title)}}</title>
        <style>
        :root { color-scheme: light dark; --ink: #1d1b17; --paper: #fdfcf9; --soft: #5d574c; --line: #d8d2c4; --tint: #f3efe4; --mark: #7a3b12; }
        @media (prefers-color-scheme: dark) { :root { --ink: #ece7db; --paper: #1b1916; --soft: #b9b1a0; --line: #474135; --tint: #26231d; --mark: #eba873; } }
        * { box-sizing: border-box; }
        html { scroll-behavior: smooth; }
        @media (prefers-reduced-motion: reduce) { html { scroll-behavior: auto; } }
        body { margin: 0 auto; max-width: 58rem; padding: 1.25rem clamp(1rem, 4vw, 3rem) 4rem; background: var(--paper); color: var(--ink);
          font: 1.0625rem/1.55 Georgia, "Noto Serif", "Liberation Serif", serif; overflow-wrap: anywhere; }
        h1, h2, h3, th, nav, .kind, figcaption, td::before { font-family: "Gill Sans", "Noto Sans", "Liberation Sans", Arial, sans-serif; }
        h1, h2, h3 { line-height: 1.25; unicode-bidi: plaintext; text-wrap: balance; }
        h1 { font-size: 1.9rem; margin: .25rem 0 1rem; }
        h2 { font-size: 1.35rem; margin: 2.5rem 0 .75rem; padding-top: .6rem; border-top: 3px double var(--line); }
        h3 { font-size: 1.08rem; margin: 1.75rem 0 .5rem; color: var(--mark); }
        .kind { margin: 0; color: var(--soft); font-size: .95rem; letter-spacing: .04em; text-transform: uppercase; }
        .technical h2:first-of-type + p, .owner h2:first-of-type + p { font-size: 1.2rem; padding: .9rem 1.1rem; background: var(--tint); border-left: .4rem solid var(--mark); }
        p { margin: .6rem 0; max-width: 46rem; unicode-bidi: plaintext; }
        ul, ol { padding-left: 1.4rem; }
        li { margin: .35rem 0; max-width: 46rem; unicode-bidi: plaintext; }
        nav { margin: 0 0 1.5rem; padding: .75rem 1.1rem; background: var(--tint); font-size: .95rem; }
        nav ol { margin: .25rem 0 0; columns: 15rem; column-gap: 2rem; }
        nav li { break-inside: avoid; margin: 0; padding: .18rem 0; }
        nav p { margin: 0; font-weight: 600; }
        a { color: var(--mark); }
        a:focus-visible { outline: 3px solid var(--mark); outline-offset: 2px; }
        .skip { position: absolute; left: -999rem; }
        .skip:focus { position: static; }
        table { border-collapse: collapse; width: 100%; margin: .8rem 0 1.2rem; font-size: .93rem; line-height: 1.4; }
        th { text-align: left; color: var(--soft); font-weight: 600; border-bottom: 2px solid var(--line); padding: .35rem .6rem .35rem 0; vertical-align: bottom; overflow-wrap: normal; }
        td { vertical-align: top; border-bottom: 1px solid var(--line); padding: .45rem .6rem .45rem 0; unicode-bidi: plaintext; }
        figure { margin: 1.2rem 0; max-width: 31rem; }
        figure svg, figure img { display: block; width: 100%; height: auto; border: 1px solid var(--line); }
        figure img { width: auto; max-width: 100%; max-height: 30rem; image-orientation: from-image; }
        figcaption { font-size: .9rem; color: var(--soft); margin-top: .4rem; unicode-bidi: plaintext; }
        figcaption em { font-style: normal; }
        .hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
        .atlas p > img, .atlas td > img { max-width: 100%; height: auto; background: #fff; border: 1px solid var(--line); vertical-align: top; }
        .work-order table, .close-up table { border: 2px solid var(--ink); }
        .work-order td, .close-up td, .work-order th, .close-up th { border: 1px solid var(--soft); padding: .45rem .5rem; }
        .work-order table, .close-up table { font-family: "Noto Sans", "Liberation Sans", Arial, sans-serif; }
        @media screen and (max-width: 46rem) {
          h1 { font-size: 1.5rem; }
          table:not(.pair) thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
          table:not(.pair), table:not(.pair) tbody, table:not(.pair) tr, table:not(.pair) td { display: block; width: auto; }
          table:not(.pair) tr { border-bottom: 2px solid var(--line); padding: .5rem 0; }
          table:not(.pair) td { border: 0; padding: .1rem 0; }
          table:not(.pair) td:empty { display: none; }
          td[data-label]:not([data-label=""])::before { content: attr(data-label) ": "; color: var(--soft); font-size: .88rem; }
          .work-order table:not(.pair) tr, .close-up table:not(.pair) tr { padding: .6rem; }
        }
        {{SvgCanvas.Style}}
        @media screen and (prefers-color-scheme: dark) { {{DarkDrawings}} }
        @page { {{(paper is { } size ? $"size: {size.ToString().ToLowerInvariant()}; " : "")}}margin: 18mm 16mm 20mm; @bottom-right { content: "page " counter(page) " of " counter(pages); font: 9pt sans-serif; } @bottom-left { content: "{{head.Kind}}"; font: 9pt sans-serif; } }
        @media print {
          :root { color-scheme: light; --ink: #000; --paper: #fff; --soft: #333; --line: #999; --tint: #f4f4f4; --mark: #000; }
          body { max-width: none; padding: 0; font-size: 10.5pt; }
          nav, .skip { display: none; }
          h2 { margin-top: 1.5rem; }
          thead { display: table-header-group; }
          tr, figure, li { break-inside: avoid; }
          h1, h2, h3 { break-after: avoid; break-inside: avoid; }
          p { orphans: 3; widows: 3; }
          figure svg { width: auto; max-width: 100%; max-height: 225mm; }
          figure img { max-height: 110mm; }
          a { color: inherit; text-decoration: none; }
        }
        </style>
        </head>
        <body class="{{head.Word}}">
        <a class="skip" href="#report">{{head.Skip}}</a>
        <header><p class="kind">{{head.Kind}}</p></header>
        <main id="report">
        {{WithContents(body, contents).Replace("<th></th>", "<th><span class=\"hidden\">No.</span></th>", StringComparison.Ordinal)}}</main>
        </body>
        </html>

        """;
}
