using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Work;

namespace Failwise.Reports.Editions;

/// <summary>The owner's page: what will be done, and what can happen when it is not.</summary>
internal sealed class OwnerWork(ReportPage sheet)
{
    private const double WorthWarning = 0.3;
    private const int MostSteps = 8;

    private static string Safe(string text) => MarkdownText.Safe(text);

    private WorkPlan Plan => sheet.Diagnosis.Work;

    public void Write()
    {
        sheet.Text.Heading(2, "What we will do");
        if (Plan.Items.Count == 0)
        {
            sheet.Text.Paragraph(sheet.Causes.Verdict.Kind == VerdictKind.NormalWear ? "No cause needs correcting. What follows belongs to putting it together again." : "There is no work to plan before more has been looked at.");
            PutRight();
            return;
        }

        TakeAway();
        PutRight();
        Checks();
        IfNot();
        WorkSections.Scopes(sheet, 2, box: true);
    }

    /// <summary>The last thing on the page: what was read before is what is signed.</summary>
    public void Sign()
    {
        if (Plan.Items.Count > 0)
        {
            JobHead.Sign(sheet, Plan.Scopes.Count > 1 ? "I have read this page and choose what is ticked above" : "I have read this page and agree to the work");
        }
    }

    /// <summary>The steps that remove the causes, inside the machine and outside it.</summary>
    private void TakeAway()
    {
        Dictionary<string, WorkItem> byId = Plan.Items.ToDictionary(i => i.Rule.Id, StringComparer.Ordinal);
        (string Step, string Cause)[] steps =
        [
            .. Plan.Removals.Where(r => !r.CheckFirst).SelectMany(r => r.Inside.Concat(r.Outside).Where(byId.ContainsKey).Where(id => !byId[id].CheckFirst)
                .OrderByDescending(id => byId[id].Reasons.Any(why => why.Kind is "observation" or "finding")).Select(id => (id, r.Cause.Title))),
        ];
        if (steps.Length > 0)
        {
            sheet.Text.Paragraph("So that it does not happen again:");
            sheet.Text.Bullets(steps.GroupBy(s => s.Step).Take(MostSteps).Select(g =>
                $"{Safe(byId[g.Key].Rule.Title.TrimEnd('.'))} *(against: {Safe(string.Join("; ", g.Select(s => s.Cause).Distinct()))})*."));
        }

        string[] possible = [.. Plan.Removals.Where(r => r.CheckFirst).Select(r => Safe(r.Cause.Title))];
        if (possible.Length > 0)
        {
            sheet.Text.Paragraph($"We check first, and do the work only if the check shows the need: {string.Join("; ", possible)}.");
        }
    }

    /// <summary>What becomes of the parts, told in one line for each decision.</summary>
    private void PutRight()
    {
        string[] lines =
        [
            .. new[]
            {
                (Decision.Replace, "To be renewed"), (Decision.Machine, "To be machined"), (Decision.Clean, "To be cleaned and used again"), (Decision.MeasureFirst, "To be measured before we decide"),
                (Decision.Monitor, "Stays in and is watched"), (Decision.Reuse, "Stays in"),
            }.Select(d => (d.Item2, Parts: Named([.. Plan.Decisions.Where(p => p.Decision == d.Item1 && p.Part != CaseSections.DebrisPart)])))
                .Where(d => d.Parts.Length > 0).Select(d => $"**{d.Item1}:** {Safe(d.Parts)}."),
        ];
        if (lines.Length > 0)
        {
            sheet.Text.Paragraph("What becomes of the parts that we looked at:");
            sheet.Text.Bullets(lines);
            sheet.Text.Paragraph(Plan.Items.Count > 0 && Plan.Decisions.Any(d => d.Decision == Decision.MeasureFirst) ? "How far the repair has to go is settled only when the parts to be measured have been measured." : "");
        }
    }

    /// <summary>Parts by name and number; what is one piece, such as the places of a crankshaft, is told as that piece.</summary>
    private string Named(PartDecision[] alike) => string.Join(", ", alike.GroupBy(p => WorkSections.Whole(sheet, p.Part) ?? "", StringComparer.Ordinal).SelectMany(g =>
    {
        string[] names = [.. g.GroupBy(p => p.Part, StringComparer.Ordinal).Select(p => WorkSections.Place(g.Key, sheet.Knowledge.Parts[p.Key].Name) + WorkSections.Numbers([.. p.SelectMany(d => d.Places).Distinct().Order()]))];
        return g.Key.Length == 0 ? names : [$"{char.ToLowerInvariant(g.Key[0])}{g.Key[1..]} ({string.Join(", ", names)})"];
    }));

    private void Checks()
    {
        int checks = Plan.Items.Count(i => i.Rule.Does is "inspect" or "measure" or "verify" or "monitor" or "secure");
        sheet.Text.Paragraph($"In all the work order holds {Phrases.Steps(Plan.Items.Count)}, {checks} of them checks before, during and after the work."
            + (Plan.Scopes.Count > 0 ? $" Time in our shop, without machine shop and waiting for parts: {PlanWords.Hours(Plan.Scopes[^1].Time)}." : ""));
    }

    private void IfNot()
    {
        Cause[] roots = [.. sheet.Causes.Verdict.Roots.Select(id => sheet.Knowledge.Causes[id])];
        if (roots.Length == 0)
        {
            return;
        }

        sheet.Text.Heading(2, "What could happen if we do not");
        foreach (Cause root in roots)
        {
            string[] brings =
            [
                .. Ahead(root, 1, 0).GroupBy(a => a.Title).Select(g => (Title: g.Key, Chance: g.Max(a => a.Chance)))
                    .OrderByDescending(a => a.Chance).ThenBy(a => a.Title, StringComparer.Ordinal).Take(4).Select(a => Safe(a.Title)),
            ];
            sheet.Text.Paragraph($"**{Safe(root.Title)}.** If this is left as it is, new parts will go the way of the old ones." + (brings.Length > 0 ? $" What it commonly leads to: {string.Join("; ", brings.Select(b => char.ToLowerInvariant(b[0]) + b[1..]))}." : ""));
        }

        if (Plan.Scopes.Count > 1 && Plan.Scopes[0].Left.Count > 0 && sheet.Causes.Verdict.Kind != VerdictKind.NotEnoughEvidence)
        {
            sheet.Text.Paragraph($"If only the damage is put right, the chance that a cause stays at work is {WorkSections.Range(Plan.Scopes[0])}.");
            sheet.Text.Paragraph(Plan.Scopes[^1].Left.Count == 0 ? "With all the work done, no cause stays that we think 5 % likely or more." : $"With all the work done, that chance is {WorkSections.Range(Plan.Scopes[^1])}.");
        }
    }

    /// <summary>What a cause usually brings about, step by step, while the chance of the whole way stays worth a warning.</summary>
    private IEnumerable<(string Title, double Chance)> Ahead(Cause cause, double chance, int depth)
    {
        foreach (CauseLink link in cause.LeadsTo.Where(l => depth < 4 && chance * l.Strength >= WorthWarning && CauseNetwork.Applies(sheet.Knowledge.Causes[l.Id], sheet.Case.Machine)))
        {
            Cause next = sheet.Knowledge.Causes[link.Id];
            yield return (next.Title, chance * link.Strength);
            foreach ((string, double) further in Ahead(next, chance * link.Strength, depth + 1))
            {
                yield return further;
            }
        }
    }
}
