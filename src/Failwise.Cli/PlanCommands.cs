using System.CommandLine;
using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Problems;
using Failwise.Reports;
using Failwise.Scoring;
using Failwise.Work;

namespace Failwise.Cli;

/// <summary>The plan of corrective work, with orders, sheets and cost.</summary>
internal static class PlanCommands
{
    public static Command Plan(Option<string?> rules, Option<string?> limits, Func<string, string?, string?, Diagnosis> diagnose)
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Option<string> format = new("--format") { HelpName = "FORM", Description = "text, markdown or json.", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "markdown", "json");
        Option<string?> output = new("-o", "--output") { HelpName = "FILE", Description = "Write to a file instead of the screen." };
        Option<string?> rates = Rates();
        Option<string[]> settled = new("--settled") { HelpName = "CAUSE", Description = "Plan as if this root were proved; may be repeated." };
        Command command = new("plan", "Plan the corrective work: decisions, steps, orders, sheets, and how far to go.\n\nExample: failwise plan examples/pump-engine --rates examples/shop-rates.yaml --format markdown -o plan.md")
        {
            path, rates, settled, format, output, limits, rules,
        };
        command.SetAction(p =>
        {
            Diagnosis diagnosis = diagnose(p.GetValue(path)!, p.GetValue(rules), p.GetValue(limits));
            string[] roots = p.GetValue(settled) ?? [];
            if (roots.FirstOrDefault(r => !(diagnosis.Knowledge.Causes.TryGetValue(r, out Cause? c) && c.IsRoot)) is { } unknown)
            {
                Console.Error.WriteLine($"'{unknown}' is no root cause of the rule base.{Suggest.Nearest(unknown, [.. diagnosis.Knowledge.Causes.Values.Where(c => c.IsRoot).Select(c => c.Id)])}");
                return 2;
            }

            diagnosis = roots.Length == 0 ? diagnosis
                : diagnosis with { Work = WorkPlanner.PlanSettled(diagnosis.Knowledge, diagnosis.Case, diagnosis.Readings, diagnosis.Findings, diagnosis.Causes, roots) };
            diagnosis = Priced(diagnosis, p.GetValue(rates));
            Output.Write(p.GetValue(format) switch
            {
                "markdown" => PlanReport.Write(diagnosis),
                "json" => PlanJson.Write(diagnosis),
                _ => PlanText.Write(diagnosis),
            }, p.GetValue(output));
            return 0;
        });
        return command;
    }

    public static Option<string?> Rates() => new("--rates") { HelpName = "FILE", Description = "A shop's rate file: hours and cost of each scope." };

    public static Command WorkScore(Option<string?> rules)
    {
        Argument<string> cases = new("FOLDER") { Description = "A folder of solved cases." };
        Option<string?> set = new("--set") { HelpName = "SET", Description = "Only the cases of this set: tune or held-out." };
        Option<string?> output = new("-o", "--output") { HelpName = "FILE", Description = "Write to a file instead of the screen." };
        Command command = new("work-score", "Compare the plan of work with what the sources of solved cases demand.\n\nExample: failwise rules work-score tests/cases/published -o docs/score-work.md") { cases, set, output, rules };
        command.SetAction(p =>
        {
            WorkScore score = WorkScorer.Run(ShippedRules.Load(p.GetValue(rules)), p.GetValue(cases)!, p.GetValue(set));
            foreach (Problem problem in score.Problems)
            {
                Console.Error.WriteLine(problem);
            }

            Output.Write(WorkScorePage.Write(score), p.GetValue(output));
            return score.Problems.Any(p => p.Severity == Severity.Error) ? 1 : 0;
        });
        return command;
    }

    /// <summary>The diagnosis with what its work costs, when a rate file is given.</summary>
    public static Diagnosis Priced(Diagnosis diagnosis, string? file)
    {
        if (file is null)
        {
            return diagnosis;
        }

        RatesReading reading = RatesReader.Read(diagnosis.Knowledge, file);
        ShopRates rates = reading.Rates ?? throw new ProblemsException(reading.Problems);
        return diagnosis with { Estimate = Estimator.Price(diagnosis.Knowledge, diagnosis.Work, rates) };
    }
}
