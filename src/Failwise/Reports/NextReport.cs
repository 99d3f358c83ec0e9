using Failwise.Checks;

namespace Failwise.Reports;

/// <summary>What to look at next, what if, and what to expect before opening: as text for the screen or as Markdown.</summary>
public static class NextReport
{
    /// <summary>The plan of checks as plain text or, with <paramref name="markdown"/>, as Markdown.</summary>
    public static string Write(string title, CheckPlan plan, WhatIf? whatIf, bool markdown)
    {
        Sheet sheet = new(markdown);
        sheet.Title(title);
        if (whatIf is not null)
        {
            Write(sheet, whatIf);
        }

        Write(sheet, plan, detailed: true);
        return sheet.ToString();
    }

    /// <summary>The table of what would move, to stand after a report.</summary>
    public static string Write(WhatIf whatIf, bool markdown)
    {
        Sheet sheet = new(markdown);
        Write(sheet, whatIf);
        return sheet.ToString();
    }

    /// <summary>The forecast as plain text or Markdown.</summary>
    public static string Write(string title, Forecast forecast, bool markdown)
    {
        Sheet sheet = new(markdown);
        sheet.Title(title);
        sheet.Heading("Roots in question, from symptoms and history alone");
        foreach (RootInQuestion root in forecast.Roots)
        {
            sheet.Item($"{root.Root.Title}: {Percent(root.Probability)}   [{root.Root.Id}]");
            foreach (ExpectedSign sign in root.Expected)
            {
                sheet.Sub($"would leave  {sign.Says}, in {Percent(sign.Chance)} of such jobs ({sign.Opening ?? "nothing to open"})");
            }
        }

        if (forecast.Roots.Count == 0)
        {
            sheet.Item("None stands out: write down how it ran and what was done to it.");
        }

        sheet.Heading("Where to look first");
        foreach (OpeningStep step in forecast.Steps)
        {
            sheet.Item($"{Capital(step.Opening ?? "nothing to open")} (about {step.Minutes:0} min with the looks)");
            foreach (PlannedCheck look in step.Looks)
            {
                sheet.Sub(look.Says);
            }
        }

        sheet.Heading("What would tell one from another");
        foreach (RivalTest test in forecast.Rivals)
        {
            sheet.Item($"{test.First.Title} or {test.Second.Title}: {test.Sign.Says}. The first leaves it in {Percent(test.IfFirst)} of such jobs, the second in {Percent(test.IfSecond)}.");
            if (test.Tell is { } tell)
            {
                sheet.Sub(tell);
            }
        }

        return sheet.ToString();
    }

    internal static void Write(Sheet sheet, CheckPlan plan, bool detailed)
    {
        sheet.Heading("Look at next");
        int number = 1;
        foreach (PlannedCheck check in plan.Checks)
        {
            sheet.Item($"{number++}. {check.Says} ({Time(check)})");
            Write(sheet, check, detailed);
        }

        if (plan.Stop is { } stop)
        {
            sheet.Item(stop);
        }

        if (plan.Proofs.Count > 0)
        {
            sheet.Heading("Prove before parts are ordered");
            foreach (ProvingTest proof in plan.Proofs)
            {
                sheet.Item($"{proof.Root.Title}: {proof.How}");
            }
        }
    }

    private static void Write(Sheet sheet, PlannedCheck check, bool detailed)
    {
        if (check.Opening is { } opening)
        {
            sheet.Sub($"first   {opening} ({check.OpeningMinutes:0} min)");
        }

        if (detailed && check.Why is { } why && check.Kind is CheckKind.Gap)
        {
            sheet.Sub("why     " + why);
        }

        if (detailed && check.How is { } how)
        {
            sheet.Sub($"how     {how}{(check.Tool is { } tool ? $" With: {tool}." : "")}");
        }

        foreach (CheckOutcome outcome in check.Outcomes.Where(o => o.Movers.Count > 0))
        {
            sheet.Sub($"{outcome.Says} ({Percent(outcome.Chance)}): {string.Join(", ", outcome.Movers.Select(m => $"{m.Root.Title} {Percent(m.Now)} → {Percent(m.Then)}"))}");
        }

        if (detailed && check.Answer is { } answer)
        {
            sheet.Sub("write   " + answer);
        }
    }

    private static void Write(Sheet sheet, WhatIf whatIf)
    {
        sheet.Heading("What if: " + string.Join("; ", whatIf.Assumed));
        sheet.Table(["root", "now", "then"], [.. whatIf.Moves.Select(m => new[] { m.Root.Title, Percent(m.Before), Percent(m.After) + Arrow(m) })]);
        sheet.Item("Nothing was saved.");
    }

    private static string Arrow(RootMove m) => m.After > m.Before + 0.01 ? " (up)" : m.After < m.Before - 0.01 ? " (down)" : "";

    private static string Time(PlannedCheck check) => $"{check.Minutes:0} min"
        + (check.LostBy.Count > 0 ? $", lost by {string.Join(" and ", check.LostBy)}" : "") + (check.Destroys ? ", uses the part up" : "");

    private static string Percent(double p) => $"{100 * p:0}\u00a0%";

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
