using System.Text.RegularExpressions;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Reports.Editions;

/// <summary>Explains the words of the trade that a page uses, from the vocabulary: only those that stand on it.</summary>
internal static class Glossary
{
    private const int MostEntries = 40;

    public static void Write(ReportPage sheet)
    {
        string page = sheet.Text.ToString();
        List<(string Word, string Says)> entries = [];
        entries.AddRange(sheet.Case.Observations.Select(o => o.Pattern).OfType<string>().Distinct().Select(p => sheet.Knowledge.Patterns[p]).Select(p => (p.Name, p.Says)));
        entries.AddRange(sheet.Case.Observations.Select(o => o.Part).Distinct().Select(p => sheet.Knowledge.Parts[p]).Select(p => (p.Name, Explain(sheet.Knowledge, p))));
        (string Word, string Says)[] used =
        [
            .. entries.Where(e => e.Says.Length > 0 && Stands(page, e.Word)).DistinctBy(e => e.Word.ToLowerInvariant())
                .OrderBy(e => e.Word, StringComparer.OrdinalIgnoreCase).Take(MostEntries),
        ];
        if (used.Length > 0)
        {
            sheet.Text.Heading(2, "Words of the trade");
            sheet.Text.Bullets(used.Select(e => $"**{MarkdownText.Safe(EvidenceGathering.Capital(e.Word))}**: {MarkdownText.Safe(Phrases.Sentence(e.Says))}"));
        }
    }

    private static string Explain(KnowledgeBase knowledge, Part part)
    {
        if (part.Says is { } says)
        {
            return says;
        }

        string[] kinds = [.. part.KindOf.Where(k => k != "part").Select(k => knowledge.Parts[k].Name)];
        string also = part.Words.Count > 0 ? "also called " + string.Join(", ", part.Words.Take(3)) : "";
        return string.Join("; ", new[] { kinds.Length > 0 ? "a kind of " + string.Join(" and ", kinds) : "", also }.Where(t => t.Length > 0));
    }

    private static bool Stands(string page, string word) =>
        Regex.IsMatch(page, $@"(?<![\p{{L}}-]){Regex.Escape(MarkdownText.Safe(word))}(?![\p{{L}}-])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
}
