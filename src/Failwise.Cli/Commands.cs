using System.CommandLine;
using System.CommandLine.Parsing;
using Failwise.Cases;
using Failwise.Checks;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Reports;

namespace Failwise.Cli;

/// <summary>The command line: parse, call the library, print. Exit codes: 0 done, 1 problems in the input, 2 wrong use.</summary>
internal static class Commands
{
    private const int Done = 0, ProblemsFound = 1, WrongUse = 2;

    private static readonly Option<string?> Rules = new("--rules") { HelpName = "FOLDER", Description = "A shop's own rule folder, laid over the shipped rules." };

    private static readonly Option<string?> Limits = new("--limits") { HelpName = "FILE", Description = "The shop's own limit file, for readings whose limit the case does not give." };

    public static int Run(string[] args)
    {
        RootCommand root = new("Reads worn and broken machine parts: from teardown observations to ranked root causes and corrective work.\n\nExample: failwise diagnose examples/pump-engine");
        root.Add(Diagnose());
        root.Add(NextCommands.Next(Rules));
        root.Add(NextCommands.Forecast(Rules));
        root.Add(ReportCommand.Build((p, path) => DiagnoseCase(path, p.GetValue(Rules), p.GetValue(Limits)), [Rules, Limits]));
        root.Add(Explain());
        root.Add(Words());
        root.Add(Calculate());
        root.Add(CaseCommands.Command(Rules));
        root.Add(PlanCommands.Plan(Rules, Limits, DiagnoseCase));
        root.Add(RulesCommand());
        ParseResult parsed = root.Parse(args);
        string[] wrong = [.. parsed.Errors.Select(e => e.Message), .. UnknownOptions(parsed)];
        if (wrong.Length > 0)
        {
            return SayWrongUse(parsed, wrong);
        }

        return Guard(() => parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false }));
    }

    private static int SayWrongUse(ParseResult parsed, IEnumerable<string> wrong)
    {
        foreach (string message in wrong.Select(e => e.ReplaceLineEndings(" ").Replace("\t", " ", StringComparison.Ordinal)).Distinct())
        {
            Console.Error.WriteLine(message);
        }

        string[] known = [.. parsed.CommandResult.Command.Subcommands.Select(c => c.Name), .. parsed.CommandResult.Command.Options.Select(o => o.Name)];
        if (parsed.UnmatchedTokens.Count > 0 && Suggest.BestMatch(parsed.UnmatchedTokens[0], known) is { } best)
        {
            Console.Error.WriteLine($"Did you mean '{best}'?");
        }

        List<string> path = [];
        for (System.CommandLine.Parsing.SymbolResult? at = parsed.CommandResult; at is System.CommandLine.Parsing.CommandResult { Command: not RootCommand } c; at = c.Parent)
        {
            path.Insert(0, c.Command.Name);
        }

        Console.Error.WriteLine($"Try: failwise {string.Concat(path.Select(p => p + " "))}--help");
        return WrongUse;
    }

    /// <summary>A misspelt option would otherwise be taken for the name of a case.</summary>
    private static IEnumerable<string> UnknownOptions(ParseResult parsed)
    {
        string[] known = [.. parsed.CommandResult.Command.Options.SelectMany(o => o.Aliases.Append(o.Name)).Where(n => n.StartsWith("--", StringComparison.Ordinal))];
        return parsed.Tokens.TakeWhile(t => t.Type != TokenType.DoubleDash)
            .Where(t => t.Type == TokenType.Argument && t.Value.Length > 1 && t.Value[0] == '-')
            .Select(t => $"unknown option '{t.Value}'.{Suggest.Nearest(t.Value, known)}");
    }

    private static Command Diagnose()
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Option<string> format = new("--format") { HelpName = "FORM", Description = "text, markdown, html or json.", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "markdown", "html", "json");
        Option<string?> output = new("-o", "--output") { HelpName = "FILE", Description = "Write to a file instead of the screen." };
        Command command = new("diagnose", "Rank the root causes of a teardown, with reasons, next checks and corrective work.\n\nExample: failwise diagnose examples/pump-engine --format html -o report.html")
        {
            path, format, output, NextCommands.Assume, Rules, Limits,
        };
        command.SetAction(p =>
        {
            bool assumes = p.GetValue(NextCommands.Assume) is { Length: > 0 };
            if (assumes && (p.GetValue(format) is "html" or "json"))
            {
                Console.Error.WriteLine("--assume goes with the forms text and markdown here; 'failwise next CASE --format json' gives it as JSON.");
                return WrongUse;
            }

            Diagnosis diagnosis = DiagnoseCase(p.GetValue(path)!, p.GetValue(Rules), p.GetValue(Limits));
            WhatIf? whatIf = NextCommands.Ask(diagnosis.Knowledge, diagnosis.Case, p.GetValue(NextCommands.Assume));
            string text = p.GetValue(format) switch
            {
                "markdown" => MarkdownReport.Write(diagnosis),
                "html" => HtmlReport.Write(diagnosis),
                "json" => JsonReport.Write(diagnosis),
                _ => TextReport.Write(diagnosis),
            };
            Output.Write(whatIf is null ? text : text + NextReport.Write(whatIf, p.GetValue(format) == "markdown"), p.GetValue(output));
            return Done;
        });
        return command;
    }

    private static Command Explain()
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Argument<string> what = new("WHAT") { Description = "The id of a cause, finding, circumstance or rule." };
        Command command = new("explain", "Why a cause ranks where it does, or why a rule fired or did not.\n\nExample: failwise explain examples/pump-engine relief-valve-stuck-open") { path, what, Rules, Limits };
        command.SetAction(p =>
        {
            Diagnosis diagnosis = DiagnoseCase(p.GetValue(path)!, p.GetValue(Rules), p.GetValue(Limits));
            string id = p.GetValue(what)!;
            if (ExplainReport.Write(diagnosis, id) is { } text)
            {
                Console.Out.Write(text);
                return Done;
            }

            KnowledgeBase k = diagnosis.Knowledge;
            Console.Error.WriteLine($"'{id}' is no cause, finding, circumstance or work of the rule base.{Suggest.Nearest(id, [.. k.Causes.Keys, .. k.Findings.Keys, .. k.Circumstances.Keys, .. k.Work.Keys])}");
            return WrongUse;
        });
        return command;
    }

    private static Command Words()
    {
        Argument<string[]> text = new("TEXT") { Arity = ArgumentArity.OneOrMore, Description = "What people say, such as: blue crank." };
        Option<string?> kind = new("--kind") { HelpName = "KIND", Description = "Kind of machine that is spoken of, such as gearbox; words about others fall back." };
        Command command = new("words", "Find the part, pattern, symptom or history word for what people say.\n\nExample: failwise words \"copper showing on number three\"") { text, kind, Rules };
        command.SetAction(p => BenchCommands.Words(ShippedRules.Load(p.GetValue(Rules)), string.Join(' ', p.GetValue(text)!), p.GetValue(kind)));
        return command;
    }

    private static Command Calculate()
    {
        Argument<string?> name = new("NAME") { Arity = ArgumentArity.ZeroOrOne, Description = "The calculation; the list of all when left out." };
        Option<string?> inputs = new("--inputs") { HelpName = "A=..,B=..", Description = "Inputs with units; in a list, ';' parts readings and '|' starts the next plane." };
        Command command = new("calculate", "Work out one of the trade's formulas at the bench.\n\nExample: failwise calculate oil-clearance --inputs \"bore=54.05 mm,journal=53.99 mm\"") { name, inputs };
        command.SetAction(p => BenchCommands.Calculate(p.GetValue(name), p.GetValue(inputs)));
        return command;
    }

    private static Command RulesCommand()
    {
        Option<string?> output = new("-o", "--output") { HelpName = "FILE", Description = "Write to a file instead of the screen." };
        Command rules = new("rules", "Check and score a rule base.\n\nExample: failwise rules check rules");
        Argument<string?> folder = new("FOLDER") { Arity = ArgumentArity.ZeroOrOne, Description = "A rule folder; the shipped rules when left out." };
        Command check = new("check", "Every problem of a rule base, and its health.\n\nExample: failwise rules check rules") { folder };
        check.SetAction(p => RuleCommands.Check(p.GetValue(folder)));

        Argument<string> cases = new("FOLDER") { Description = "A folder of solved cases." };
        Option<string> format = new("--format") { HelpName = "FORM", Description = "text, markdown or json.", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "markdown", "json");
        Option<string?> set = new("--set") { HelpName = "SET", Description = "Only the cases of this set: tune or held-out." };
        Option<bool> list = new("--list") { Description = "Also one line a case." };
        Command score = new("score", "Run solved cases and compare.\n\nExample: failwise rules score tests/cases/published --format json") { cases, format, set, list, Rules };
        score.SetAction(p => RuleCommands.Score(ShippedRules.Load(p.GetValue(Rules)), p.GetValue(cases)!, p.GetValue(format)!, p.GetValue(set), p.GetValue(list)));

        Argument<string> rows = new("FILE") { Description = "A file of published rows." };
        Command handbook = new("handbook", "Check the rules against published appearance-to-cause rows.\n\nExample: failwise rules handbook tests/knowledge/handbook/bottom-end.yaml") { rows, Rules };
        handbook.SetAction(p => RuleCommands.Handbook(ShippedRules.Load(p.GetValue(Rules)), p.GetValue(rows)!));
        Command atlas = AtlasCommand.New(Rules);
        Argument<string> rowFolder = new("FOLDER") { Description = "A folder of published rows." };
        Command coverage = new("coverage", "What the rule base covers and what it does not.\n\nExample: failwise rules coverage tests/knowledge/handbook -o docs/coverage.md") { rowFolder, output, Rules };
        coverage.SetAction(p => RuleCommands.Coverage(ShippedRules.Load(p.GetValue(Rules)), p.GetValue(rowFolder)!, p.GetValue(output)));
        rules.Add(coverage);
        rules.Add(atlas);
        Argument<string> into = new("FOLDER") { Description = "Where to write the schema files." };
        Command schema = new("schema", "Write the JSON Schemas with which an editor checks and completes cases and rules.\n\nExample: failwise rules schema docs/schema") { into };
        schema.SetAction(p => RuleCommands.Schema(p.GetValue(into)!));
        rules.Add(schema);
        rules.Add(LookCommands.Looks(Rules));
        rules.Add(LookCommands.Asked(Rules));
        rules.Add(check);
        rules.Add(score);
        rules.Add(PlanCommands.WorkScore(Rules));
        rules.Add(handbook);
        return rules;
    }

    private static Diagnosis DiagnoseCase(string path, string? rules, string? limits)
    {
        KnowledgeBase knowledge = ShippedRules.Load(rules);
        Diagnostician.Begin(knowledge);
        CaseReading reading = CaseReader.Read(knowledge, path, limits);
        foreach (Problem problem in reading.Problems.Where(_ => reading.Case is not null))
        {
            Console.Error.WriteLine(problem);
        }

        TeardownCase teardown = reading.Case ?? throw new ProblemsException(reading.Problems);
        foreach (Problem hint in CloserWords.Hints(knowledge, teardown, _ => true))
        {
            Console.Error.WriteLine(hint);
        }

        return Diagnostician.Diagnose(knowledge, teardown);
    }

    private static int Guard(Func<int> action)
    {
        try
        {
            return action();
        }
        catch (ProblemsException e)
        {
            foreach (Problem problem in e.Problems)
            {
                Console.Error.WriteLine(problem);
            }

            return ProblemsFound;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"error: {e.Message}");
            return ProblemsFound;
        }
    }
}
