namespace Failwise.Sheets;

/// <summary>The page round the sheets: print styles, nothing fetched from anywhere.</summary>
internal static class SheetPage
{
    public static string Wrap(string title, string body, Paper paper) => $$"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
        <title>{{title}}: inspection sheets</title>
        <style>
        @page { size: {{(paper == Paper.A4 ? "A4" : "letter")}}; margin: 11mm 11mm 14mm; @bottom-left { content: "Date ..................  Name .............................."; font: 10pt sans-serif; } @bottom-right { content: "Sheet " counter(page) " of " counter(pages); font: bold 12pt sans-serif; } }
        * { box-sizing: border-box; }
        body { margin: 0 auto; padding: 4mm; max-width: 196mm; color: #000; background: #fff; font: 12pt/1.3 "Liberation Sans", "Noto Sans", Arial, sans-serif; overflow-wrap: break-word; }
        h1 { font-size: 22pt; margin: 0; } h2 { font-size: 16pt; margin: 5mm 0 2mm; padding: 1mm 2mm; background: #000; color: #fff; break-after: avoid; print-color-adjust: exact; }
        h3 { font-size: 14pt; margin: 2mm 0 1mm; break-after: avoid; } h3 small { font-weight: normal; font-size: 11pt; }
        p { margin: 1mm 0; } .job { font-size: 15pt; font-weight: bold; } .hint { font-size: 10.5pt; } ul { margin: 1mm 0; padding-left: 6mm; } li { margin: 1mm 0; }
        table { border-collapse: collapse; width: 100%; break-inside: avoid; } .ask table { break-inside: auto; } tr { break-inside: avoid; } thead { display: table-header-group; }
        td, th { border: 1.5pt solid #000; padding: 0 1.2mm; font-weight: normal; } th { font-weight: bold; text-align: center; }
        .fill td { height: 14mm; width: 33.3%; vertical-align: top; font-size: 10.5pt; }
        .rules { border: 2.5pt solid #000; padding: 0 3mm 2mm; margin: 4mm 0; break-inside: avoid; } .rules h2 { margin: 2mm 0; }
        .ticks td { height: 8.5mm; font-size: 11pt; line-height: 1.1; } .ticks .box { width: 12mm; text-align: center; font-size: 16pt; } .ticks .word { width: 62mm; font-size: 10pt; font-family: "Liberation Mono", monospace; }
        .part { break-inside: avoid; margin-bottom: 2mm; }
        .code { font-family: "Liberation Mono", monospace; font-weight: bold; } h3 .code { border: 2.5pt solid #000; padding: 0 1.5mm; }
        .grid { table-layout: fixed; border: 2.5pt solid #000; } .grid th { font-size: 13pt; height: 8mm; padding: 0; } .grid th:first-child { font-size: 10pt; } .grid td { height: 10mm; } .grid .draw { padding: 0; text-align: center; }
        .grid .code { font-size: 15pt; text-align: center; padding: 0; } .grid .name { font-size: 10.5pt; line-height: 1.05; } .grid td:nth-child(4), .grid th:nth-child(2) { border-right-width: 3pt; }
        svg { width: 16mm; height: 9.6mm; vertical-align: middle; flex: none; }
        .single, .legend { display: grid; grid-template-columns: repeat(3, 1fr); border: 2pt solid #000; } .legend { border: none; gap: 0 2mm; } .tick { display: flex; align-items: center; gap: 1.5mm; border: .75pt solid #000; padding: 1mm 1.5mm; min-height: 12mm; font-size: 11pt; line-height: 1.1; min-width: 0; break-inside: avoid; }
        .legend .tick { border: none; min-height: 0; padding: .5mm 0; } .legend .none { width: 16mm; flex: none; } .tick span { min-width: 0; overflow-wrap: anywhere; } .tick .box { flex: none; width: 9.5mm; height: 9.5mm; border: 2.5pt solid #000; } .tick .code { font-size: 14pt; } .tick .long { font-size: 9pt; }
        .rows { break-inside: auto; table-layout: fixed; border: 2.5pt solid #000; } .rows td { height: 12.5mm; } .rows .what { width: 66mm; font-size: 11pt; line-height: 1.15; text-align: left; } .rows.one .what { width: 92mm; } .rows small { font-size: 9pt; } .rows .code { font-size: 13pt; } .rows .tickbox { width: 10mm; }
        .measure { margin-bottom: 3mm; break-inside: auto; table-layout: fixed; } .measure .what { width: 52mm; text-align: left; font-size: 11pt; } .measure .code { font-size: 13pt; } .measure td { height: 11mm; } .lines td { height: 11mm; }
        @media screen { body { box-shadow: 0 0 0 1px #999; } }
        </style>
        </head>
        <body>
        {{body}}</body>
        </html>

        """;
}
