using Failwise.Causes;
using Failwise.Checks;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Reports.Pictures;

namespace Failwise.Reports.Editions;

/// <summary>What the evidence says about causes, with both sides, and what remains open.</summary>
internal static class CauseSections
{
    private const double WorthNaming = 0.05;
    private const double RuledOutBelow = 0.05;
    private const double RulesOut = -3;
    private const int MostRuledOut = 10;

    private static string Safe(string text) => MarkdownText.Safe(text);

    private static string Sentences(IEnumerable<string> says) => string.Join("; ", says.Select(s => Safe(s.TrimEnd('.'))));

    public static void Answer(ReportPage sheet)
    {
        Verdict verdict = sheet.Causes.Verdict;
        sheet.Text.Heading(2, "The answer");
        sheet.Text.Paragraph($"**{Names.Heading(verdict.Kind)}.** {Sentence(sheet)}");
        sheet.Text.Bullets(verdict.Reasons.Select(Safe));
        if (verdict.Kind is VerdictKind.RootNamed or VerdictKind.Contested)
        {
            foreach (RankedCause cause in sheet.Causes.Ranked.Where(r => verdict.Roots.Contains(r.Cause.Id)).Take(3))
            {
                sheet.Text.Paragraph($"**{Safe(cause.Cause.Title)}.** {Safe(cause.Cause.Says)}");
            }
        }
    }

    private static string Sentence(ReportPage sheet) => sheet.Causes.Verdict.Kind switch
    {
        VerdictKind.RootNamed => "The evidence points to: " + Phrases.And([.. Titles(sheet)]) + ".",
        VerdictKind.Contested => "The evidence leaves " + string.Join(", ", Titles(sheet)) + " open; the checks below can part them.",
        VerdictKind.NormalWear => "Nothing found here calls for a cause to be corrected.",
        _ => "What was found so far does not carry a root cause. That is a result: do not order parts on a guess.",
    };

    private static IEnumerable<string> Titles(ReportPage sheet) => sheet.Causes.Verdict.Roots.Select(id => $"{Safe(sheet.Knowledge.Causes[id].Title)} ({Likely(sheet, id)})");

    private static string Likely(ReportPage sheet, string id) => Likely(sheet.Causes.Ranked.First(r => r.Cause.Id == id).Probability);

    private static string Likely(double p) => $"{CauseRanking.WordFor(p)}, {Phrases.Percent(p)}";

    /// <summary>The ranking, the pictures, each candidate in turn, what was ruled out, and what nothing explains.</summary>
    public static void Analysis(ReportPage sheet)
    {
        sheet.Text.Heading(2, "Analysis");
        Follows(sheet);
        RankedCause[] shown = [.. sheet.Causes.Ranked.Where((r, i) => r.Probability >= WorthNaming && i < 6)];
        if (shown.Length > 0)
        {
            sheet.Text.Heading(3, "Root causes in order");
            sheet.Text.Table(["", "root cause", "how likely", "kind"], [.. shown.Select((r, i) => new[]
                { (i + 1).ToString(), Safe(r.Cause.Title), Likely(r.Probability), r.Cause.Group.Replace('-', ' ') })]);
        }

        sheet.Text.Paragraph(sheet.Causes.Verdict.Kind == VerdictKind.NormalWear ? "" : $"Chance that it is none of the roots weighed here but something rarer, or something that the rule base does not know: {Phrases.Percent(sheet.Causes.SomethingElse)}.");
        sheet.Show(CauseChainPicture.Draw, "How the causes lead to the damage. The bar and figure say how likely each step is; a dot is something that was seen.");
        sheet.Show(EvidenceBars.Draw, "What speaks for and against. Longer bars move the answer more.");
        for (int i = 0; i < shown.Length && i < 4; i++)
        {
            Candidate(sheet, i + 1, shown[i], shown);
        }

        RuledOut(sheet);
        Unexplained(sheet);
        Existing(sheet);
    }

    private static void Follows(ReportPage sheet)
    {
        if (sheet.Diagnosis.Findings.Fired.Count > 0)
        {
            sheet.Text.Heading(3, "What follows from it");
            sheet.Text.Bullets(sheet.Diagnosis.Findings.Fired.Select(f => $"{Safe(f.Rule.Says)} *({Reasons(f.Answer.Reasons)})*"));
        }
    }

    private static string Reasons(IReadOnlyList<Reason> reasons) =>
        string.Join(", ", reasons.Select(r => r.Kind is "observation" or "reading" ? $"{r.Kind} {r.Id}" : r.Id.All(char.IsAsciiDigit) ? $"worked out {r.Id}" : r.Id.Replace('-', ' ')));

    private static void Candidate(ReportPage sheet, int number, RankedCause cause, RankedCause[] shown)
    {
        sheet.Text.Heading(3, $"{number}. {Safe(cause.Cause.Title)}: {CauseRanking.WordFor(cause.Probability)}");
        sheet.Text.Paragraph(Safe($"{cause.Cause.Says} {Phrases.MayComeFrom(cause)}".TrimEnd()));
        foreach (IReadOnlyList<ChainStep> chain in cause.Chains.Take(2))
        {
            string way = string.Join(" → ", chain.Where(s => s.Probability is not null).Select(s => Safe(s.Says)));
            sheet.Text.Paragraph($"How it would come about: {way} → {Sentences(chain.Where(s => s.Probability is null).Take(5).Select(s => s.Says))}.");
        }

        WeighedEvidence[] against = [.. cause.Against.Where(e => Phrases.SpeaksAgainst(cause.Cause, e))];
        if (cause.For.Any(Phrases.SpeaksFor) || against.Length > 0)
        {
            sheet.Text.Table(["speaks", "evidence", "weight", "source"],
            [
                .. cause.For.Where(Phrases.SpeaksFor).Take(8).Select(e => Row(sheet, "for", e)),
                .. against.Take(6).Select(e => Row(sheet, "against", e)),
            ]);
        }

        sheet.Text.Paragraph(against.Length > 0 ? "" : "Nothing that was looked at speaks clearly against it.");
        if (cause.Unexplained.Count > 0)
        {
            sheet.Text.Paragraph($"It does not explain: {Sentences(cause.Unexplained.Take(4).Select(i => i.Says))}{(cause.Unexplained.Count > 4 ? $"; and {cause.Unexplained.Count - 4} more" : "")}.");
        }

        foreach (LookAlike rival in cause.Cause.LooksLike.Where(l => shown.Any(s => s.Cause.Id == l.Id)))
        {
            sheet.Text.Paragraph($"Why not {Safe(sheet.Knowledge.Causes[rival.Id].Title)}? {Safe(rival.Tell)}");
        }

        if (cause.Cause.Prove is { } prove)
        {
            sheet.Text.Paragraph($"To prove or disprove it: {Safe(Phrases.Sentence(prove))}{Measured(sheet, cause.Cause)}");
        }
    }

    /// <summary>What stands written down already of the parts on which a cause leaves its marks.</summary>
    private static string Measured(ReportPage sheet, Cause cause)
    {
        string[] parts = [.. cause.Leaves.Select(l => l.Sign?.Part).OfType<string>().Distinct()];
        string[] done = [.. sheet.Diagnosis.Readings.Where(r => r.Kind == Measurements.ReadingKind.Written && parts.Contains(r.Measurement.Part)).Take(3)
            .Select(r => $"{sheet.Knowledge.Parts[r.Measurement.Part].Name}, {r.Measurement.Quantity.Replace('-', ' ')} (reading {r.Number})")
            .Concat(sheet.Diagnosis.Calculations.Where(c => c.Result.Outputs.Count > 0 && c.Request.Part is { } part && parts.Contains(part)).Select(c => $"{NumbersText.Title(sheet.Knowledge, c)} (worked out {c.Number})"))];
        return done.Length == 0 ? "" : $" Written down already: {Safe(string.Join("; ", done))}.";
    }

    private static string[] Row(ReportPage sheet, string side, WeighedEvidence e) =>
        [side, Safe(e.Item.Says), $"{e.Word} ({Phrases.Decibans(e.Decibans)})", sheet.Cite(e.Sources)];

    /// <summary>Candidates that this evidence speaks clearly against, and what it was.</summary>
    private static void RuledOut(ReportPage sheet)
    {
        // The usual suspects first: what fell furthest from how common it is.
        RankedCause[] out_ = [.. sheet.Causes.Ranked.Where(r => r.Probability < RuledOutBelow && r.Probability < r.Prior / 2 && r.Against.Any(e => e.Decibans <= RulesOut))
            .OrderByDescending(r => r.Prior - r.Probability).Take(MostRuledOut)];
        sheet.Text.Heading(3, "What was looked at and found very unlikely");
        sheet.Text.Paragraph("What was not looked at rules nothing out.");
        if (out_.Length == 0)
        {
            sheet.Text.Paragraph("Nothing that was found good or denied speaks strongly against one cause alone.");
            return;
        }

        sheet.Text.Table(["candidate", "how likely", "what speaks against it"], [.. out_.Select(r => new[]
            { Safe(r.Cause.Title), Phrases.Percent(r.Probability), Sentences(r.Against.Where(e => e.Decibans <= RulesOut).Take(3).Select(e => e.Item.Says)) })]);
    }

    private static void Unexplained(ReportPage sheet)
    {
        if (sheet.Causes.Unexplained.Count > 0)
        {
            sheet.Text.Heading(3, "What none of this explains well");
            sheet.Text.Bullets(sheet.Causes.Unexplained.Select(u => Safe(u.Says)));
        }
    }

    /// <summary>Damage that was there before, and marks that look alarming but are normal.</summary>
    private static void Existing(ReportPage sheet)
    {
        string[] normal = [.. sheet.Case.Observations.Where(o => o.Look == Cases.Look.Seen && sheet.Knowledge.Patterns[o.Pattern!].Sound)
            .Select(o => $"{sheet.PartName(o.Part)}: {sheet.Knowledge.Patterns[o.Pattern!].Name}").Distinct()];
        sheet.Text.Heading(3, "Older damage, and marks that are normal");
        sheet.Text.Bullets(sheet.Case.Job.Existing.Select(Safe));
        if (sheet.Case.Job.Existing.Count == 0)
        {
            sheet.Text.Paragraph("No damage was written down as older than this failure or apart from it.");
        }

        if (normal.Length > 0)
        {
            sheet.Text.Paragraph($"Marks that are usual on a sound part and were not counted as damage: {Safe(string.Join("; ", normal))}.");
        }
    }

    /// <summary>The opinion, in defined words.</summary>
    public static void Conclusion(ReportPage sheet)
    {
        Verdict verdict = sheet.Causes.Verdict;
        sheet.Text.Heading(2, "Conclusion");
        sheet.Text.Paragraph(sheet.Case.Job.Purpose is { } asked ? $"The question put was: {Safe(asked.TrimEnd('.', '?'))}. What bears on the cause follows here; what becomes of the parts, and what must be measured before that is settled, stands under the corrective work." : "");
        foreach (string sentence in Opinion(sheet, verdict))
        {
            sheet.Text.Paragraph(sentence);
        }

        if (sheet.Causes.Story.Roots.Count > 1 && verdict.Kind is VerdictKind.RootNamed or VerdictKind.Contested)
        {
            sheet.Text.Paragraph("The findings fit best if these came together: " + Phrases.And([.. sheet.Causes.Story.Roots.Select(r =>
                $"{Safe(r.Title)} (without it the story is {WordForNeed(sheet.Causes.Story.Needed[r.Id])})")]) + ".");
        }

        sheet.Text.Table(["word of certainty", "means"], [.. Phrases.CertaintyWords.Select(w => new[] { w.Word, w.Means })]);
    }

    private static IEnumerable<string> Opinion(ReportPage sheet, Verdict verdict) => verdict.Kind switch
    {
        VerdictKind.RootNamed => verdict.Roots.Select(id => $"In our opinion it is **{Likely(sheet, id)}** that this was at work: {Safe(sheet.Knowledge.Causes[id].Title)}."),
        VerdictKind.Contested => [$"Undetermined between {verdict.Roots.Count}: " + string.Join("; ", verdict.Roots.Select(id => $"{Safe(sheet.Knowledge.Causes[id].Title)} (**{Likely(sheet, id)}**)")) + "."],
        VerdictKind.NormalWear => ["No damage was found that needs a cause. What was seen is the wear of such a machine in use."],
        _ => ["**Undetermined.** The evidence that was available does not carry a cause.", .. verdict.Reasons.Select(Safe)],
    };

    private static string WordForNeed(double decibans) => decibans switch { < 3 => "hardly worse", < 7 => "worse", < 13 => "much worse", _ => "not tenable" };

    public static void NextChecks(ReportPage sheet)
    {
        sheet.Text.Heading(2, "What to look at next");
        sheet.Text.Paragraph(sheet.Diagnosis.Next.Stop is { } stop
            ? Safe(stop)
            : "In the order in which they are worth their time. Evidence that dismantling would destroy comes first, what uses a part up last.");
        // A sound machine asks for no search; only a look that could still change the answer is worth telling.
        sheet.Text.Bullets(sheet.Diagnosis.Checks.Where(c => sheet.Causes.Verdict.Kind != VerdictKind.NormalWear || c.Outcomes.Any(o => o.Movers.Count > 0)).Select(Say), numbered: true);
        if (sheet.Diagnosis.Next.Proofs.Count > 0)
        {
            sheet.Text.Paragraph("Prove these before parts are ordered, where it was not done yet:");
            sheet.Text.Bullets(sheet.Diagnosis.Next.Proofs.Select(p => $"**{Safe(p.Root.Title)}**: {Safe(Phrases.Sentence(p.How))}{Measured(sheet, p.Root)}"));
        }
    }

    private static string Say(PlannedCheck c) =>
        $"**{Safe(c.Says)}** About {c.Minutes:0} min.{(c.Opening is { } opening ? $" First: {Safe(opening)} ({c.OpeningMinutes:0} min)." : "")}"
        + (c.How is { } how ? " " + Safe(how) : "") + (c.Tool is { } tool ? $" With: {Safe(tool)}." : "")
        + (c.LostBy.Count > 0 ? $" Lost by {string.Join(" and ", c.LostBy)}." : "")
        + string.Concat(c.Outcomes.Where(o => o.Movers.Count > 0).Select(Say));

    private static string Say(CheckOutcome o) =>
        $" *{Safe(o.Says)}* ({Phrases.Percent(o.Chance)}): {string.Join(", ", o.Movers.Select(m => $"{Safe(m.Root.Title)} {Phrases.Percent(m.Now)} → {Phrases.Percent(m.Then)}"))}.";
}
