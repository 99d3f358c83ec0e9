using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Reports.Pictures;
using Failwise.Work;

namespace Failwise.Reports.Editions;

/// <summary>What broke first, why we think so, how sure we are, what it means, what is done about it: for a reader without the trade.</summary>
internal sealed class OwnerEdition(ReportPage sheet)
{
    private const double WorthTelling = 0.2;
    private const double Settled = 0.9;

    // What is slight only [deciban] fills a page for somebody who wants to know what happened.
    private const double LeastAgainst = -3;
    private const int MostReasons = 6;

    private static string Safe(string text) => MarkdownText.Safe(text);

    private VerdictKind Kind => sheet.Causes.Verdict.Kind;

    private IReadOnlyList<RankedCause> Roots => [.. sheet.Causes.Ranked.Where(r => sheet.Causes.Verdict.Roots.Contains(r.Cause.Id)).Take(4)];

    public void Write()
    {
        sheet.Text.Heading(1, Safe(sheet.Case.Title));
        sheet.Text.Paragraph(string.Join(" ", Lead()));
        First();
        Why();
        HowSure();
        Means();
        OwnerWork work = new(sheet);
        work.Write();
        Gaps();
        CaseSections.Photos(sheet);
        Glossary.Write(sheet);
        sheet.Text.Heading(2, "What this page is");
        sheet.Text.Paragraph("An opinion on the technical cause, from what was seen and told. It blames nobody and does not say who has to pay. The technical report of the same job holds every reason, limit and source.");
        work.Sign();
    }

    private IEnumerable<string> Lead()
    {
        Cases.JobRecord job = sheet.Case.Job;
        if (job.Owner is { } owner)
        {
            yield return $"For {Safe(owner)}.";
        }

        yield return sheet.Case.Machine.Name is { } name ? $"Machine: {Safe(name)}." : $"Machine: {string.Join(" with ", sheet.Case.Machine.Kinds.Select(k => sheet.Knowledge.Machines[k].Name))}.";
        if (job.Date is not null || job.Place is not null)
        {
            yield return $"Looked at: {Safe(string.Join(", ", new[] { job.Date, job.Place }.OfType<string>()))}.";
        }

        if (job.Purpose is { } asked)
        {
            yield return $"The question was: {Safe(asked.TrimEnd('.', '?'))}.";
        }
    }

    private void First()
    {
        sheet.Text.Heading(2, Kind == VerdictKind.NormalWear ? "What we found" : "What went wrong first");
        switch (Kind)
        {
            case VerdictKind.NormalWear:
                sheet.Text.Paragraph("**We found no damage.** What we looked at shows the wear of a machine in use and nothing that needs a cause. What we did not look at, we cannot speak for.");
                return;
            case VerdictKind.NotEnoughEvidence:
                sheet.Text.Paragraph("**We cannot tell yet.** What could be seen does not show one cause. That is an honest result: a guess would cost you parts.");
                sheet.Text.Bullets(Guess().Select(Safe));
                return;
            case VerdictKind.Contested:
                sheet.Text.Paragraph(Roots.Count > 1
                    ? $"**It is not settled.** {Roots.Count} explanations fit what we found, and one more look can part them."
                    : "**It is not settled.** One explanation leads, but something speaks for caution.");
                break;
        }

        foreach (RankedCause root in Roots)
        {
            sheet.Text.Paragraph($"**{Safe(root.Cause.Title)}.** {Safe($"{root.Cause.Says} {Phrases.MayComeFrom(root)}".TrimEnd())}");
        }

        sheet.Show(CauseChainPicture.Draw, "From the first cause down to the damage. The bar says how likely each step is; a dot is something we saw.");
    }

    /// <summary>How far a guess would carry, in numbers that need no trade.</summary>
    private IEnumerable<string> Guess()
    {
        if (sheet.Causes.Ranked.FirstOrDefault() is { Probability: >= 0.01 } best)
        {
            yield return $"The best guess, '{best.Cause.Title}', would be right in about {Phrases.OutOfHundred(best.Probability)} machines that looked like this.";
            yield return $"In about {Phrases.OutOfHundred(sheet.Causes.SomethingElse)} it would be something rarer than what we weighed, or something that we do not know.";
        }
    }

    private void Why()
    {
        if (Roots.Count == 0)
        {
            return;
        }

        sheet.Text.Heading(2, "Why we think so");
        foreach (RankedCause root in Roots)
        {
            string[] says =
            [
                .. root.For.Where(e => Phrases.SpeaksFor(e) && e.Item.Present).Select(e => e.Item.Says)
                    .Concat(root.Chains.SelectMany(c => c.Where(s => s.Probability is null)).Select(s => s.Says)).Distinct().Take(MostReasons)
                    .Select(s => Safe(Phrases.Sentence(Phrases.Plain(s)))),
            ];
            sheet.Text.Paragraph($"**{Safe(root.Cause.Title)}.** {(says.Length == 0 ? "It goes with the rest; nothing by itself points to it." : "This points to it:")}");
            sheet.Text.Bullets(says);
            string[] against = [.. root.Against.Where(e => Phrases.SpeaksAgainst(root.Cause, e) && e.Decibans <= LeastAgainst).Take(3).Select(e => Safe(Phrases.Plain(e.Item.Says).TrimEnd('.')))];
            sheet.Text.Paragraph(against.Length > 0 ? $"This speaks against it: {string.Join("; ", against)}." : "Nothing that we looked at speaks clearly against it.");
        }

        if (sheet.Causes.Unexplained.Count > 0)
        {
            sheet.Text.Paragraph($"None of this explains: {string.Join("; ", sheet.Causes.Unexplained.Take(4).Select(u => Safe(u.Says.TrimEnd('.'))))}.");
        }
    }

    private void HowSure()
    {
        if (Kind == VerdictKind.NormalWear)
        {
            return;
        }

        sheet.Text.Heading(2, "How sure we are");
        foreach (RankedCause root in sheet.Causes.Ranked.Where(r => sheet.Causes.Verdict.Roots.Contains(r.Cause.Id) || r.Probability >= WorthTelling).Take(5))
        {
            sheet.Text.Paragraph($"**{EvidenceGathering.Capital(CauseRanking.WordFor(root.Probability))}**: {Safe(root.Cause.Title)}. Of 100 machines that looked like this, we would expect it in about {Phrases.OutOfHundred(root.Probability).Split(' ')[0]}.");
        }

        // Where nothing is in doubt any more, more looks would tell the owner nothing.
        if (sheet.Diagnosis.Checks.Count > 0 && (Roots.Count == 0 || sheet.Causes.Ranked.Any(r => r.Probability is >= WorthTelling and < Settled)))
        {
            sheet.Text.Paragraph("These looks would tell more:");
            sheet.Text.Bullets(sheet.Diagnosis.Checks.Take(3).Select(c => $"{Safe(c.Says)} About {Phrases.Minutes(c.Minutes)}."));
        }
    }

    private void Means()
    {
        sheet.Text.Heading(2, "What it means for the machine");
        string[] damaged = [.. Parts(s => s >= Severity.Moderate)], slight = [.. Parts(s => s is Severity.Trace or Severity.Light)], sound = [.. Parts(s => s == Severity.Sound)];
        string[] debris = [.. sheet.Case.Observations.Where(o => o is { Part: CaseSections.DebrisPart, Pattern: not null, Look: Cases.Look.Seen }).Select(o => sheet.Knowledge.Patterns[o.Pattern!].Name).Distinct()];
        sheet.Text.Bullets(new[]
        {
            damaged.Length > 0 ? $"Damaged, worn or dirty: {Safe(string.Join(", ", damaged))}." : null, slight.Length > 0 ? $"Slightly marked: {Safe(string.Join(", ", slight))}." : null,
            debris.Length > 0 ? $"Found in the oil or filter: {Safe(string.Join(", ", debris))}." : null,
            sound.Length > 0 ? $"Looked at and good: {Safe(string.Join(", ", sound))}." : null,
        }.OfType<string>());
        sheet.Show(DamageMap.Draw, "Where the damage lies. A tick is good; more bars are worse.");
    }

    private IEnumerable<string> Parts(Func<Severity, bool> wanted) => sheet.Case.Observations.Where(o => o.Part != CaseSections.DebrisPart).GroupBy(o => o.Part)
        .Where(g => wanted(g.Max(o => SeveritySign.Of(sheet.Knowledge, o)))).Select(g => sheet.Knowledge.Parts[g.Key].Name);

    private void Gaps()
    {
        if (sheet.Case.NotLookedAt.Count > 0)
        {
            sheet.Text.Heading(2, "What nobody could look at");
            sheet.Text.Bullets(sheet.Case.NotLookedAt.Select(n => Safe(sheet.PartName(n.Part)) + (n.Reason is { } r ? ": " + Safe(r) : "")));
        }
    }
}
