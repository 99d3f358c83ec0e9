using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Work;

namespace Failwise.Reports;

/// <summary>The plan of corrective work in Markdown: decisions, steps, downstream, orders, scopes and the sheets to fill in.</summary>
public static class PlanReport
{
    /// <summary>Writes the plan.</summary>
    public static string Write(Diagnosis diagnosis) => new Writer(diagnosis).Write();

    private sealed class Writer(Diagnosis diagnosis)
    {
        private static readonly string[] Unsourced = ["common-practice", "from-memory", "judgement"];
        private readonly MarkdownText md = new();
        private readonly WorkPlan plan = diagnosis.Work;
        private readonly JobEstimate? estimate = diagnosis.Estimate;
        private readonly KnowledgeBase knowledge = diagnosis.Knowledge;
        private readonly SortedSet<string> cited = new(StringComparer.Ordinal);

        public string Write()
        {
            md.Heading(1, "Work plan: " + Safe(diagnosis.Case.Title));
            md.Paragraph(Lead());
            WriteScopes();
            WriteDecisions();
            WriteRemovals();
            WriteSteps();
            WriteDownstream();
            WriteOrders();
            WriteSheet("Close-up sheet", plan.Sheets.CloseUp);
            WriteSheet("First-start sheet", plan.Sheets.FirstStart);
            WriteSheet("Follow-up", plan.Sheets.FollowUp);
            WriteCautions();
            WriteSources();
            return md.ToString();
        }

        private string Lead() => (plan.Items.Count == 0
            ? "No corrective work follows from what was found. What was opened still has to be closed up with care."
            : $"{Phrases.Steps(plan.Items.Count)}, {plan.Decisions.Count} decisions about parts.")
            + " Limits and torques come from the maker's manual of this machine; figures with a source are examples. \"Check first\" marks work for what is only possible.";

        private static string Safe(string text) => MarkdownText.Safe(text);

        private void WriteScopes()
        {
            if (plan.Scopes.Count == 0)
            {
                return;
            }

            md.Heading(2, "How far to go");
            bool priced = estimate is not null;
            md.Table(["scope", "what it does", "steps", "time", .. priced ? new[] { "cost" } : [], "chance that a cause stays at work"], [.. plan.Scopes.Select(s => new[]
            {
                $"**{Safe(s.Title)}**", Safe(s.Says), s.Steps.Count.ToString(), PlanWords.Hours(s.Time),
            }.Concat(priced ? [Safe(PlanWords.Cost(estimate!, s))] : []).Append(PlanWords.Risk(s)).ToArray())]);
            foreach (ScopeOption scope in plan.Scopes.Where(s => s.Left.Count > 0))
            {
                md.Paragraph($"{Safe(scope.Title)} leaves: " + string.Join("; ", scope.Left.Select(l => $"{Safe(l.Title)} {PlanWords.Percent(l.Probability)}")) + ".");
            }

            md.Paragraph($"The chance lies between that of the likeliest cause left and that of all of them taken one by one. Something that the rule base does not list ({PlanWords.Percent(diagnosis.Causes.SomethingElse)}) is not counted.");
            if (priced)
            {
                WriteCosts();
            }
        }

        private ScopeCost Cost(ScopeOption scope) => estimate!.Scopes.First(c => c.Scope == scope.Id);

        private void WriteCosts()
        {
            string currency = Safe(estimate!.Currency);
            md.Table(["scope", "hours", "labour", "fixed prices", "parts"], [.. plan.Scopes.Select(s => (s, Cost(s))).Select(x => new[]
            {
                Safe(x.s.Title), $"{PlanWords.Number(x.Item2.Hours.Least)} to {PlanWords.Number(x.Item2.Hours.Most)}", PlanWords.Money(x.Item2.Labour, currency),
                PlanWords.Money(x.Item2.Fixed, currency), PlanWords.Money(x.Item2.Parts, currency),
            })]);
            if (PlanWords.Unpriced(estimate) is { } open)
            {
                md.Paragraph(Safe(open));
            }
        }

        private void WriteDecisions()
        {
            md.Heading(2, "What becomes of each part");
            md.Table(["part", "decision", "limit", "rests on", "why"], [.. plan.Decisions.Select(d => new[]
            {
                Safe(PlanWords.Part(knowledge, d.Part, d.Places)), $"**{PlanWords.Say(d.Decision)}**", Safe(PlanWords.Limit(d)) + Cite(d.LimitSource),
                Safe(string.Join("; ", d.Readings.Concat(d.Reasons.Where(r => r.Kind == "observation").Take(3).Select(r => $"{r.Says} (observation {r.Id})")))), Safe(d.Why),
            })]);
        }

        private void WriteRemovals()
        {
            if (plan.Removals.Count == 0)
            {
                return;
            }

            md.Heading(2, "How each cause is removed");
            foreach (CauseRemoval r in plan.Removals)
            {
                md.Heading(3, $"{Safe(r.Cause.Title)} ({PlanWords.Percent(r.Probability)}){(r.CheckFirst ? ": check first" : "")}");
                md.Bullets(
                [
                    .. r.CheckFirst && r.Cause.Prove is { } prove ? new[] { "Prove it first: " + Safe(prove) } : [],
                    .. r.Inside.Select(id => "Inside: " + Safe(knowledge.Work[id].Title)), .. r.Outside.Select(id => "Outside: " + Safe(knowledge.Work[id].Title)),
                    .. r.Checks.Select(c => $"Gone when: {Safe(c.How)}{(c.Limit is { } l ? " Limit: " + Safe(l) : "")}{Cite(c.Source)}"),
                ]);
            }
        }

        private void WriteSteps()
        {
            if (plan.Items.Count == 0)
            {
                return;
            }

            md.Heading(2, "Steps, in order");
            int number = 1;
            Dictionary<string, int> numbers = plan.Items.ToDictionary(i => i.Rule.Id, _ => number++, StringComparer.Ordinal);
            md.Table(["", "stage", "what", "after", "why", "checked by"], [.. plan.Items.Select(i => Step(i, numbers))]);
        }

        private string[] Step(WorkItem item, Dictionary<string, int> numbers)
        {
            WorkRule rule = item.Rule;
            cited.UnionWith(rule.Sources.Select(s => s.Id));
            string what = (item.CheckFirst ? "*Check first:* " : "") + $"**{Safe(rule.Title)}.**" + (rule.How is { } how ? " " + Safe(how) : "")
                + (rule.Hold is { } hold ? $" **Hold: {Safe(hold)}**" : "");
            string verify = rule.Verify is { } v ? Safe(v.How) + (v.Limit is { } limit ? $" Limit: {Safe(limit)}" : "") + Cite(v.Source) : "";
            return
            [
                numbers[rule.Id].ToString(), PlanWords.Stage(rule.Stage), what, string.Join(", ", item.After.Select(a => numbers[a]).Order()),
                Safe(string.Join("; ", item.Reasons.Take(3).Select(r => $"{r.Says} ({r.Kind} {r.Id})"))), verify,
            ];
        }

        private void WriteDownstream()
        {
            foreach (IGrouping<string, DownstreamLine> circuit in plan.Downstream.GroupBy(d => d.Circuit))
            {
                md.Heading(2, "Downstream: " + Safe(circuit.Key));
                md.Paragraph("Because: " + Safe(string.Join("; ", circuit.SelectMany(d => d.Reasons).Select(r => r.Says).Distinct().Take(3))) + ".");
                md.Bullets(circuit.Select(d => $"[ ] **{PlanWords.Of(d.Action)}** {Safe(d.Says)}{Cite(d.Sources.Count > 0 ? d.Sources[0] : null)}"));
            }

            if (plan.Together.Count > 0)
            {
                md.Heading(2, "Renewed together");
                md.Bullets(plan.Together.Select(t => $"{Safe(knowledge.Parts[t.Part].Name)}, with \"{Safe(knowledge.Work[t.Step].Title)}\": {Safe(t.Why)}"));
            }
        }

        private void WriteOrders()
        {
            if (plan.Orders.MachineShop.Count > 0)
            {
                md.Heading(2, "Machine-shop order");
                foreach (ShopJob job in plan.Orders.MachineShop)
                {
                    md.Heading(3, (job.CheckFirst ? "Only if the check shows the need: " : "") + Safe(job.Operation));
                    md.Bullets(
                    [
                        "Part: " + Safe(PlanWords.Part(knowledge, job.Part, job.Places)), "Size now: " + Safe(string.Join("; ", job.Sizes)), "To reach: " + Safe(job.Finish),
                        .. job.DoNot.Select(d => "**" + Safe(d) + "**"), .. job.Ask.Select(a => "To settle first: " + Safe(a)),
                    ]);
                }
            }

            if (plan.Orders.Parts.Count > 0)
            {
                md.Heading(2, "Parts list");
                md.Table(["part", "how many", "size", "when to order", "why"], [.. plan.Orders.Parts.Select(p => new[]
                {
                    Safe(p.Item) + (p.CheckFirst ? " *(check first)*" : ""), Safe(p.Count is { } n ? $"{n} ({p.CountFrom})" : p.CountFrom), Safe(p.Size ?? ""), Safe(p.OrderAfter ?? "now"),
                    Safe(string.Join("; ", p.Reasons.Take(2).Select(r => r.Says))),
                })]);
            }

            if (plan.Orders.Consumables.Count > 0)
            {
                md.Heading(2, "Used up by the job");
                md.Bullets(plan.Orders.Consumables.Select(c => $"{Safe(c.Item)}: {Safe(c.Amount)}"));
            }
        }

        private void WriteSheet(string title, IReadOnlyList<SheetLine> lines)
        {
            if (lines.Count == 0)
            {
                return;
            }

            md.Heading(2, title);
            bool dated = lines.Any(l => l.When is not null);
            md.Table(["done", "what", .. dated ? new[] { "when" } : [], "reading", "limit", "initials"], [.. lines.Select(l => new[]
            {
                "☐", Safe(l.Says) + (l.Place is { } n ? $" No. {n}" : "") + (l.Stop ? " **(stop if not)**" : ""),
            }.Concat(dated ? [Safe(l.When ?? "")] : []).Concat([l.Reading is { } r ? $"{Safe(r)}: \\_\\_\\_\\_ {Safe(l.Unit ?? "")}".TrimEnd() : "", Safe(l.Limit ?? "") + Cite(l.LimitSource), "\\_\\_\\_"]).ToArray())]);
        }

        private void WriteCautions()
        {
            string[] cautions = [.. plan.Items.SelectMany(i => i.Rule.Cautions).Distinct()];
            if (cautions.Length > 0)
            {
                md.Heading(2, "Cautions");
                md.Bullets(cautions.Select(Safe));
            }

            md.Paragraph("This plan helps a person who has the parts in hand. The maker's manual, local codes and licensed practice come before it.");
        }

        private string Cite(SourceRef? source)
        {
            if (source is null || Unsourced.Contains(source.Id))
            {
                return "";
            }

            cited.Add(source.Id);
            return $" [{Safe(source.Id)}]";
        }

        private void WriteSources()
        {
            Source[] sources = [.. cited.Where(id => knowledge.Sources.ContainsKey(id) && !Unsourced.Contains(id)).Select(id => knowledge.Sources[id])];
            if (sources.Length > 0)
            {
                md.Heading(2, "Sources");
                md.Bullets(sources.Select(s => $"{s.Id}: {Safe(string.Join(", ", new[] { s.Title, s.Issuer, s.Year, s.Place }.OfType<string>()))}"));
            }
        }
    }
}
