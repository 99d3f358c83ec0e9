using System.CommandLine;
using Failwise.Cases;
using Failwise.Checks;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Reports;

namespace Failwise.Cli;

/// <summary>What to look at next, what if, and what to expect before opening.</summary>
internal static class NextCommands
{
    /// <summary>Given to every command that can look at what is not in the case.</summary>
    public static readonly Option<string[]> Assume = new("--assume")
    {
        HelpName = "WORDS", AllowMultipleArgumentsPerToken = false,
        Description = "Take something as seen or known, such as \"journal 3 blued\" or \"not overheating\", and show how the ranking would move; may be repeated. Nothing is saved.",
    };

    public static Command Next(Option<string?> rules)
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Option<int> top = new("--top") { HelpName = "N", Description = "How many checks, 1 to 20.", DefaultValueFactory = _ => 6 };
        top.Validators.Add(r =>
        {
            if (r.GetValueOrDefault<int>() is < 1 or > 20)
            {
                r.AddError("--top takes a number from 1 to 20.");
            }
        });
        Option<string> format = Format();
        Command command = new("next", "What to look at or ask next, and what each answer would mean.\n\nExample: failwise next examples/pump-engine --top 4") { path, top, format, Assume, rules };
        command.SetAction(p =>
        {
            KnowledgeBase knowledge = ShippedRules.Load(p.GetValue(rules));
            TeardownCase teardown = Read(knowledge, p.GetValue(path)!);
            WhatIf? whatIf = Ask(knowledge, teardown, p.GetValue(Assume));
            PlanOptions how = new(p.GetValue(top));
            CheckPlan plan = whatIf is null ? CheckPlanner.Plan(knowledge, teardown, how) : CheckPlanner.Plan(knowledge, whatIf.Case, whatIf.Ranking, how);
            string form = p.GetValue(format)!;
            Console.Out.Write(form == "json" ? NextJson.Write(teardown.Title, plan, whatIf) : NextReport.Write(teardown.Title, plan, whatIf, form == "markdown"));
            return 0;
        });
        return command;
    }

    public static Command Forecast(Option<string?> rules)
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Option<string> format = Format();
        Command command = new("forecast", "Before anything is opened: which roots are in question, what each would leave, and where to look first.\n\nExample: failwise forecast examples/pump-engine") { path, format, rules };
        command.SetAction(p =>
        {
            KnowledgeBase knowledge = ShippedRules.Load(p.GetValue(rules));
            TeardownCase teardown = Read(knowledge, p.GetValue(path)!);
            Forecast forecast = Forecaster.Make(knowledge, teardown);
            string form = p.GetValue(format)!;
            Console.Out.Write(form == "json" ? NextJson.Write(teardown.Title, forecast) : NextReport.Write(teardown.Title, forecast, form == "markdown"));
            return 0;
        });
        return command;
    }

    /// <summary>What would move if the assumptions held; null when there are none.</summary>
    /// <exception cref="ProblemsException">Words are not understood.</exception>
    public static WhatIf? Ask(KnowledgeBase knowledge, TeardownCase teardown, string[]? assumed) =>
        assumed is { Length: > 0 } ? WhatIf.Of(knowledge, teardown, Assumptions.Read(knowledge, teardown.Machine, assumed)) : null;

    private static Option<string> Format()
    {
        Option<string> format = new("--format") { HelpName = "FORM", Description = "text, markdown or json.", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "markdown", "json");
        return format;
    }

    private static TeardownCase Read(KnowledgeBase knowledge, string path)
    {
        CaseReading reading = CaseReader.Read(knowledge, path);
        foreach (Problem problem in reading.Problems.Where(_ => reading.Case is not null))
        {
            Console.Error.WriteLine(problem);
        }

        return reading.Case ?? throw new ProblemsException(reading.Problems);
    }
}
