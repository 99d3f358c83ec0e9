using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Work;

namespace Failwise.Reports;

/// <summary>The full report in Markdown, printed from the diagnosis alone: the same diagnosis gives the same bytes.</summary>
public static class MarkdownReport
{
    /// <summary>Writes the report.</summary>
    public static string Write(Diagnosis diagnosis) => new Writer(diagnosis).Write();

    private sealed class Writer(Diagnosis diagnosis)
    {
        private const double WorthNaming = 0.05;
        private readonly MarkdownText md = new();
        private readonly SortedSet<string> cited = new(StringComparer.Ordinal);
        private readonly TeardownCase teardown = diagnosis.Case;
        private readonly CauseRanking causes = diagnosis.Causes;
        private readonly KnowledgeBase knowledge = diagnosis.Knowledge;

        public string Write()
        {
            md.Heading(1, Safe(teardown.Title));
            WriteVerdict();
            WriteCauses();
            WriteNextChecks();
            WriteWork();
            WriteFound();
            WriteNotLookedAt();
            WriteHow();
            WriteSources();
            return md.ToString();
        }

        private static string Safe(string text) => MarkdownText.Safe(text);

        private static string Percent(double p) => p < 0.01 ? "under 1\u00a0%" : $"{100 * Math.Min(CauseRanking.Ceiling, p):0}\u00a0%";

        private static string Sentences(IEnumerable<string> says) => string.Join("; ", says.Select(s => Safe(s.TrimEnd('.'))));

        private static string Short(IReadOnlyList<EvidenceItem> items) =>
            Sentences(items.Take(4).Select(i => i.Says)) + (items.Count > 4 ? $"; and {items.Count - 4} more" : "") + ".";

        private void WriteVerdict()
        {
            md.Heading(2, "The answer");
            md.Paragraph($"**{Names.Heading(causes.Verdict.Kind)}.** {Sentence()}");
            md.Bullets(causes.Verdict.Reasons.Select(Safe));
            if (causes.Verdict.Kind is VerdictKind.RootNamed or VerdictKind.Contested)
            {
                foreach (RankedCause cause in causes.Ranked.Where(r => causes.Verdict.Roots.Contains(r.Cause.Id)).Take(3))
                {
                    md.Paragraph($"**{Safe(cause.Cause.Title)}.** {Safe(cause.Cause.Says)}");
                }
            }

            if (causes.Story.Roots.Count > 1)
            {
                md.Paragraph("The findings fit best if these came together: " + string.Join(" and ", causes.Story.Roots.Select(r =>
                    $"{Safe(r.Title)} (without it the story is {WordForNeed(causes.Story.Needed[r.Id])})")) + ".");
            }
        }

        private string Sentence() => causes.Verdict.Kind switch
        {
            VerdictKind.RootNamed => "The evidence points to " + string.Join(" together with ", Titles(causes.Verdict.Roots)) + ".",
            VerdictKind.Contested => "The evidence leaves " + string.Join(", ", Titles(causes.Verdict.Roots)) + " open; the checks below can part them.",
            VerdictKind.NormalWear => "Nothing found here calls for a cause to be corrected.",
            _ => "What was found so far does not carry a root cause. That is a result: do not order parts on a guess.",
        };

        private IEnumerable<string> Titles(IReadOnlyList<string> ids) =>
            ids.Select(id => $"{Safe(knowledge.Causes[id].Title)} ({ProbabilityOf(id)})");

        private string ProbabilityOf(string id)
        {
            double p = causes.Ranked.First(r => r.Cause.Id == id).Probability;
            return $"{CauseRanking.WordFor(p)}, {Percent(p)}";
        }

        private static string WordForNeed(double decibans) => decibans switch { < 3 => "hardly worse", < 7 => "worse", < 13 => "much worse", _ => "not tenable" };

        private void WriteCauses()
        {
            RankedCause[] shown = [.. causes.Ranked.Where((r, i) => r.Probability >= WorthNaming && i < 6)];
            if (shown.Length == 0)
            {
                return;
            }

            md.Heading(2, "Root causes in order");
            md.Table(["", "root cause", "how likely", "kind"], [.. shown.Select((r, i) => new[]
                { (i + 1).ToString(), Safe(r.Cause.Title), $"{CauseRanking.WordFor(r.Probability)}, {Percent(r.Probability)}", r.Cause.Group.Replace('-', ' ') })]);
            md.Paragraph($"Chance that it is none of these but something rarer, or something that the rule base does not know: {Percent(causes.SomethingElse)}.");
            for (int i = 0; i < shown.Length && i < 4; i++)
            {
                WriteCause(i + 1, shown[i], shown);
            }

            if (causes.Unexplained.Count > 0)
            {
                md.Heading(3, "What none of this explains well");
                md.Bullets(causes.Unexplained.Select(u => Safe(u.Says)));
            }
        }

        private void WriteCause(int number, RankedCause cause, RankedCause[] shown)
        {
            md.Heading(3, $"{number}. {Safe(cause.Cause.Title)}: {CauseRanking.WordFor(cause.Probability)}");
            md.Paragraph(Safe(cause.Cause.Says));
            foreach (IReadOnlyList<ChainStep> chain in cause.Chains.Take(2))
            {
                string way = string.Join(" → ", chain.Where(s => s.Probability is not null).Select(s => Safe(s.Says)));
                md.Paragraph($"How it would come about: {way} → {Sentences(chain.Where(s => s.Probability is null).Take(5).Select(s => s.Says))}.");
            }

            if (cause.For.Any(Tells) || cause.Against.Any(Tells))
            {
                md.Table(["speaks", "evidence", "weight", "source"],
                [
                    .. cause.For.Where(Tells).Take(8).Select(e => Row("for", e)),
                    .. cause.Against.Where(Tells).Take(6).Select(e => Row("against", e)),
                ]);
            }

            if (cause.Unexplained.Count > 0)
            {
                md.Paragraph("It does not explain: " + Short(cause.Unexplained));
            }

            foreach (LookAlike rival in cause.Cause.LooksLike.Where(l => shown.Any(s => s.Cause.Id == l.Id)))
            {
                md.Paragraph($"Why not {Safe(knowledge.Causes[rival.Id].Title)}? {Safe(rival.Tell)}");
            }

            if (cause.Cause.Prove is { } prove)
            {
                md.Paragraph($"To prove or disprove it: {Safe(prove)}");
            }
        }

        private static bool Tells(WeighedEvidence e) => Math.Abs(e.Decibans) >= 1;

        private string[] Row(string side, WeighedEvidence e)
        {
            cited.UnionWith(e.Sources.Select(s => s.Id));
            return [side, Safe(e.Item.Says), $"{e.Word} ({e.Decibans:+0;-0}\u00a0dB)", string.Join(", ", e.Sources.Select(s => s.Id).Distinct())];
        }

        private void WriteNextChecks()
        {
            md.Heading(2, "What to look at next");
            if (diagnosis.Next.Stop is { } stop)
            {
                md.Paragraph(Safe(stop));
            }
            else
            {
                md.Paragraph("In the order in which they are worth their time. Evidence that dismantling would destroy comes first, what uses a part up last.");
            }

            md.Bullets(diagnosis.Checks.Select(Say), numbered: true);
            if (diagnosis.Next.Proofs.Count > 0)
            {
                md.Paragraph("Prove these before parts are ordered:");
                md.Bullets(diagnosis.Next.Proofs.Select(p => $"**{Safe(p.Root.Title)}**: {Safe(p.How)}"));
            }
        }

        private static string Say(PlannedCheck c) =>
            $"**{Safe(c.Says)}** About {c.Minutes:0} min.{(c.Opening is { } opening ? $" First: {Safe(opening)} ({c.OpeningMinutes:0} min)." : "")}"
            + (c.How is { } how ? " " + Safe(how) : "") + (c.Tool is { } tool ? $" With: {Safe(tool)}." : "")
            + (c.LostBy.Count > 0 ? $" Lost by {string.Join(" and ", c.LostBy)}." : "")
            + string.Concat(c.Outcomes.Where(o => o.Movers.Count > 0).Select(Say));

        private static string Say(CheckOutcome o) =>
            $" *{Safe(o.Says)}* ({Percent(o.Chance)}): {string.Join(", ", o.Movers.Select(m => $"{Safe(m.Root.Title)} {Percent(m.Now)} → {Percent(m.Then)}"))}.";

        private void WriteWork()
        {
            if (diagnosis.Work.Items.Count == 0)
            {
                return;
            }

            md.Heading(2, "Corrective work, in order");
            md.Paragraph("Limits and torques come from the maker's manual of this machine; figures here are examples with their source. "
                + "\"Check first\" marks work for a cause that is only possible: look before you spend.");
            int number = 1;
            foreach (IGrouping<string, WorkItem> stage in diagnosis.Work.Items.GroupBy(i => i.Rule.Stage))
            {
                md.Heading(3, StageTitle(stage.Key));
                md.Table(["", "what", "why", "checked by"], [.. stage.Select(i => WorkRow(number++, i))]);
            }

            string[] cautions = [.. diagnosis.Work.Items.SelectMany(i => i.Rule.Cautions).Distinct()];
            if (cautions.Length > 0)
            {
                md.Heading(3, "Cautions");
                md.Bullets(cautions.Select(Safe));
            }
        }

        private string[] WorkRow(int number, WorkItem item)
        {
            cited.UnionWith(item.Rule.Sources.Select(s => s.Id));
            WorkRule rule = item.Rule;
            string what = (item.CheckFirst ? "*Check first:* " : "") + $"**{Safe(rule.Title)}.**" + (rule.How is { } how ? " " + Safe(how) : "")
                + (rule.Hold is { } hold ? $" **Hold: {Safe(hold)}**" : "");
            string verify = rule.Verify is { } v ? Safe(v.How) + (v.Limit is { } limit ? $" Limit: {Safe(limit)}" : "") : "";
            return [number.ToString(), what, Safe(string.Join("; ", item.Because.Take(3))), verify];
        }

        private static string StageTitle(string stage) => stage switch
        {
            "secure" => "Secure the evidence",
            "inspect" => "Inspect",
            "measure" => "Measure",
            "machine" => "Machine shop",
            "clean" => "Clean",
            "assemble" => "Renew and assemble",
            "close-up" => "Before closing up",
            "first-start" => "First start",
            _ => "Afterwards",
        };

        private void WriteFound()
        {
            md.Heading(2, "What was found");
            Machine m = teardown.Machine;
            List<string> facts = [];
            if (m.Name is { } name)
            {
                facts.Add(Safe(name));
            }

            facts.Add(string.Join(" with ", m.Kinds.Select(k => knowledge.Machines[k].Name)));
            facts.AddRange(new[] { m.Cylinders is { } c ? $"{c} cylinders" : null, m.Mains is { } n ? $"{n} main bearings" : null, m.NumberOne is { } one ? "No. 1 at the " + Safe(one) : null }.OfType<string>());
            if (m.Features.Count > 0)
            {
                facts.Add(string.Join(", ", m.Features));
            }

            if (m.Without.Count > 0)
            {
                facts.Add("without " + string.Join(", ", m.Without));
            }

            md.Paragraph(string.Join("; ", facts) + ".");
            string[] history =
            [
                .. teardown.Numbers.OrderBy(x => x.Key, StringComparer.Ordinal).Select(x => $"{x.Key.Replace('-', ' ')}: {x.Value}"),
                .. teardown.History.Select(h => (h.Holds ? "" : "Not so: ") + Safe(knowledge.Circumstances[h.Id].Says)),
                .. teardown.Symptoms.Select(s => (s.Holds ? "" : "Not so: ") + Safe(knowledge.Symptoms[s.Id].Says)),
                .. teardown.Notes.Select(Safe),
            ];
            if (history.Length > 0)
            {
                md.Heading(3, "Before it was opened");
                md.Bullets(history);
            }

            if (teardown.Observations.Count > 0)
            {
                md.Heading(3, "Part by part");
                md.Table(["", "part", "seen", "where and how much", "note"], [.. teardown.Observations.Select(ObservationRow)]);
            }

            if (diagnosis.Readings.Count > 0)
            {
                md.Heading(3, "Readings");
                md.Table(["", "part", "quantity", "value", "limit", "stands"], [.. diagnosis.Readings.Select(NumbersText.Row)]);
            }

            if (diagnosis.Calculations.Count > 0)
            {
                md.Heading(3, "Worked out from the figures");
                NumbersText.Write(md, diagnosis.Knowledge, diagnosis.Calculations);
            }

            if (diagnosis.Findings.Fired.Count > 0)
            {
                md.Heading(3, "What follows from it");
                md.Bullets(diagnosis.Findings.Fired.Select(f => $"{Safe(f.Rule.Says)} *({Reasons(f.Answer.Reasons)})*"));
            }

            foreach (Photo photo in teardown.Photos)
            {
                md.Paragraph($"![{Safe(photo.Shows ?? photo.File)}](<{Uri.EscapeDataString(photo.File).Replace("%2F", "/", StringComparison.Ordinal)}>)");
                md.Paragraph($"*{Safe(photo.Shows ?? photo.File)}*");
            }
        }

        private string[] ObservationRow(Observation o)
        {
            string seen = o.Look switch
            {
                Look.Sound => "sound",
                Look.NotFound => "no " + Safe(knowledge.Patterns[o.Pattern!].Name),
                _ => Safe(knowledge.Patterns[o.Pattern!].Name),
            };
            string unsure = o.SureWord is null or "sure" ? "" : $" ({o.SureWord.Replace('-', ' ')})";
            string written = o.Written is { } w ? $" *(written: {Safe(w)})*" : "";
            return [o.Number.ToString(), Safe(knowledge.Parts[o.Part].Name), seen + unsure + written, EvidenceGathering.SayPlace(o), Safe(o.Note ?? "")];
        }

        private static string Reasons(IReadOnlyList<Reason> reasons) =>
            string.Join(", ", reasons.Select(r => r.Kind is "observation" or "reading" or "calculation" ? $"{r.Kind} {r.Id}" : r.Id.Replace('-', ' ')));

        private void WriteNotLookedAt()
        {
            md.Heading(2, "What was not looked at");
            if (teardown.NotLookedAt.Count == 0)
            {
                md.Paragraph("The case does not list anything. What is not named in this report was not looked at; it is neither good nor bad.");
                return;
            }

            md.Bullets(teardown.NotLookedAt.Select(n => Safe(knowledge.Parts[n.Part].Name) + (n.Reason is { } r ? ": " + Safe(r) : "")));
            md.Paragraph("Not looked at is neither good nor bad: it speaks neither for nor against any cause.");
        }

        private void WriteHow()
        {
            md.Heading(2, "How to read this");
            md.Paragraph("Probabilities are degrees of belief from the rules and this evidence, never above 98 %. A weight in dB (deciban) says how much one piece of "
                + "evidence moves the odds when all the rest stays: 3 dB doubles them, 10 dB makes them ten times as large. Pieces that say the same cover for "
                + "each other, so each of them alone can look slight. "
                + "The strengths of the rules are judgement unless a source is named. This report helps a person who has the parts in hand; it does not replace the maker's manual, "
                + "measurement, local codes or licensed practice.");
            if (causes.Note is { } note)
            {
                md.Paragraph(Safe(note));
            }
        }

        private void WriteSources()
        {
            Source[] sources = [.. cited.Where(knowledge.Sources.ContainsKey).Select(id => knowledge.Sources[id])];
            if (sources.Length == 0)
            {
                return;
            }

            md.Heading(2, "Sources");
            md.Bullets(sources.Select(s => $"{s.Id}: {Safe(string.Join(", ", new[] { s.Title, s.Issuer, s.Year, s.Place }.OfType<string>()))}"));
        }
    }
}
