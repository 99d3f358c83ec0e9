using System.CommandLine;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>The command line: parse, call the library, print. Exit codes: 0 done, 1 problems in the input, 2 wrong use.</summary>
internal static class Commands
{
    public static int Run(string[] args)
    {
        RootCommand root = new("Reads worn and broken machine parts: from teardown observations to ranked root causes.");
        Command rules = new("rules", "Check and score the rule base.");
        Argument<string?> folder = new("FOLDER") { Arity = ArgumentArity.ZeroOrOne, Description = "A rule folder; the shipped rules when left out." };
        Command check = new("check", "Every problem of a rule base.") { folder };
        check.SetAction(p => Guard(() => CheckRules(p.GetValue(folder))));
        rules.Add(check);
        root.Add(rules);
        return root.Parse(args).Invoke();
    }

    private static int CheckRules(string? folder)
    {
        KnowledgeReading reading = folder is null ? KnowledgeReader.Build(ShippedRules.Files(), new ProblemList()) : KnowledgeReader.Read(folder);
        List<Problem> problems = [.. reading.Problems];
        if (reading.Knowledge is { } knowledge)
        {
            problems.AddRange(ExampleCheck.Run(knowledge));
            Console.WriteLine($"{knowledge.Parts.Count} parts, {knowledge.Patterns.Count} patterns, {knowledge.Findings.Count} findings, {knowledge.Causes.Count} causes, {knowledge.Work.Count} work items, {knowledge.Sources.Count} sources");
        }

        problems.ForEach(p => Console.Error.WriteLine(p));
        return problems.Exists(p => p.Severity == Severity.Error) ? 1 : 0;
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

            return 1;
        }
    }
}
