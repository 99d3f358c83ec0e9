using Failwise.Knowledge;
using Failwise.Reports;

namespace Failwise.Scoring;

/// <summary>What the rule base covers, and what it does not: handbook rows, classes of standards, part groups, sources.</summary>
public static class CoverageLedger
{
    /// <summary>Writes the ledger as Markdown.</summary>
    /// <param name="handbook">Rows by group, as scored.</param>
    public static string Write(KnowledgeBase knowledge, IReadOnlyList<(string Group, IReadOnlyList<RowScore> Rows)> handbook)
    {
        MarkdownText md = new();
        md.Heading(1, "What the rule base covers");
        md.Paragraph("Printed by `failwise rules coverage`. A row is one published statement \"this appearance means these causes\". Its appearance alone goes in; "
            + "the rank is that of its best cause among roots (or, for a mechanism, among mechanisms).");
        WriteGroups(md, knowledge, handbook);
        WriteClasses(md, knowledge);
        WriteSourcing(md, knowledge);
        WriteRows(md, handbook);
        return md.ToString();
    }

    private static void WriteGroups(MarkdownText md, KnowledgeBase knowledge, IReadOnlyList<(string Group, IReadOnlyList<RowScore> Rows)> handbook)
    {
        md.Heading(2, "Handbook rows by group");
        md.Table(["group", "rows", "used", "with causes", "first", "in three", "in five", "normal appearances", "called normal", "not used"], [.. handbook.Select(h => GroupLine(h.Group, h.Rows))]);
        RowScore[] all = [.. handbook.SelectMany(h => h.Rows)];
        md.Paragraph($"Of {all.Length} rows {all.Count(r => r.Used)} are used. Ranks are counted over rows that name causes; a row that calls its appearance normal is right when the verdict is normal wear.");
        md.Heading(2, "Parts, causes and work");
        md.Table(["group", "parts", "marks linked"], [.. knowledge.Parts.Values.GroupBy(p => p.Group).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new[]
        {
            g.Key, g.Count().ToString(),
            knowledge.Causes.Values.SelectMany(c => c.Leaves).Where(l => l.Sign is { } s && g.Any(p => p.Id == s.Part)).Select(l => l.Id).Distinct().Count().ToString(),
        })]);
        string[] bare = [.. knowledge.Parts.Values.Where(p => p.Id != "part" && !knowledge.Causes.Values.Any(c => c.Leaves.Any(l => l.Sign is { } s && knowledge.PartIs(p.Id, s.Part) && s.Part != "part"))).Select(p => p.Id).Order(StringComparer.Ordinal)];
        md.Paragraph(bare.Length == 0 ? "Every part has at least one mark that some cause leaves on it." : $"Parts on which no cause leaves a mark yet: {string.Join(", ", bare)}.");
    }

    private static string[] GroupLine(string group, IReadOnlyList<RowScore> rows)
    {
        RowScore[] faults = [.. rows.Where(r => r.NamesCauses)];
        RowScore[] normal = [.. rows.Where(r => r.Harmless)];
        int five = faults.Count(r => r.Rank is >= 1 and <= 5);
        return
        [
            group, rows.Count.ToString(), rows.Count(r => r.Used).ToString(), faults.Length.ToString(), faults.Count(r => r.Rank == 1).ToString(),
            faults.Count(r => r.Rank is >= 1 and <= 3).ToString(), $"{five} ({100.0 * five / Math.Max(1, faults.Length):0} %)",
            normal.Length.ToString(), normal.Count(r => r.Rank == 1).ToString(), rows.Count(r => !r.Used).ToString(),
        ];
    }

    private static void WriteClasses(MarkdownText md, KnowledgeBase knowledge)
    {
        md.Heading(2, "Damage classes of standards");
        md.Table(["standard", "class", "pattern"], [.. knowledge.Patterns.Values.SelectMany(p => p.Classes.Select(c => (c.Standard, c.Class, p.Id)))
            .OrderBy(x => x.Standard, StringComparer.Ordinal).ThenBy(x => x.Class, StringComparer.Ordinal).ThenBy(x => x.Id, StringComparer.Ordinal)
            .Select(x => new[] { MarkdownText.Safe(x.Standard), MarkdownText.Safe(x.Class), x.Id })]);
    }

    private static void WriteSourcing(MarkdownText md, KnowledgeBase knowledge)
    {
        md.Heading(2, "What the links rest on");
        string[] pseudo = ["judgement", "from-memory", "common-practice"];
        List<string> kinds = [];
        foreach (Cause cause in knowledge.Causes.Values)
        {
            foreach (CauseLink link in cause.Leaves.Concat(cause.LeadsTo).Concat(cause.RaisedBy))
            {
                IReadOnlyList<SourceRef> sources = link.Sources.Count > 0 ? link.Sources : cause.Sources;
                kinds.Add(sources.Any(s => !pseudo.Contains(s.Id)) ? "published source" : sources.Count > 0 ? sources[0].Id : "nothing named");
            }
        }

        md.Table(["basis", "links"], [.. kinds.GroupBy(k => k).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => new[] { g.Key, g.Count().ToString() })]);
        md.Paragraph("A published source carries the claim that the cause leaves the sign; the strength words are judgement throughout.");
    }

    private static void WriteRows(MarkdownText md, IReadOnlyList<(string Group, IReadOnlyList<RowScore> Rows)> handbook)
    {
        foreach ((string group, IReadOnlyList<RowScore> rows) in handbook)
        {
            md.Heading(2, $"Rows: {group}");
            md.Table(["row", "signs and findings", "causes", "rank"], [.. rows.OrderBy(r => r.Row, StringComparer.Ordinal).Select(r => r.Used
                ? new[] { r.Row, MarkdownText.Safe(string.Join(", ", r.Evidence)), r.Harmless ? "none: a normal appearance" : string.Join(", ", r.Causes), Rank(r) }
                : [r.Row, "not used: " + MarkdownText.Safe(r.WhyNot!), "", ""])]);
        }
    }

    private static string Rank(RowScore row) => (row.Harmless, row.Rank) switch
    {
        (true, 0) => "not called normal",
        (true, _) => "normal",
        (false, 0) => "none",
        _ => row.Rank.ToString(),
    };
}
