using Failwise.Calculations;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>Small commands for someone who stands at the bench.</summary>
internal static class BenchCommands
{
    public static int Words(KnowledgeBase knowledge, string text, string? kind)
    {
        List<Problem> problems = [];
        IReadOnlyList<string> kinds = new NewCaseAnswers(knowledge).Words("--kind", kind, problems);
        if (problems.Count > 0)
        {
            throw new ProblemsException(problems);
        }

        IReadOnlyList<WordMatch> matches = WordSearch.Find(knowledge, text, kinds: kinds.Count == 0 ? null : kinds);
        if (matches.Count == 0)
        {
            Console.Error.WriteLine($"Nothing in the vocabulary is near '{text}'.");
            return 1;
        }

        foreach (IGrouping<string, WordMatch> sort in matches.GroupBy(m => m.Kind).OrderByDescending(g => g.Max(m => m.Score)))
        {
            Console.Out.WriteLine(sort.Key);
            foreach (WordMatch m in sort)
            {
                Console.Out.WriteLine($"  {m.Id,-32} {(m.Says == m.Name ? m.Name : m.Name == m.Id ? m.Says : $"{m.Name}: {m.Says}")}");
            }
        }

        return 0;
    }

    public static int Calculate(string? name, string? inputs)
    {
        if (name is null)
        {
            foreach (Calculation c in CalculationCatalog.All.OrderBy(c => c.Id, StringComparer.Ordinal))
            {
                Console.Out.WriteLine($"{c.Id,-36} {c.Title}");
            }

            return 0;
        }

        if (CalculationCatalog.Find(name) is not { } calculation)
        {
            Console.Error.WriteLine($"There is no calculation '{name}'.{(CalculationCatalog.Nearest(name) is { } near ? $" Did you mean '{near}'?" : "")} Run 'failwise calculate' for the list.");
            return 2;
        }

        if (inputs is null)
        {
            Describe(calculation);
            return 0;
        }

        IReadOnlyDictionary<string, string> given = CalculationCatalog.ParseInputs(inputs, out IReadOnlyList<string> slips);
        CalculationResult result = calculation.Run(given);
        string[] problems = [.. slips, .. result.Problems, .. result.Missing.Select(m => $"missing: {m.Name} ({m.What}), {m.Range}")];
        if (problems.Length > 0)
        {
            foreach (string problem in problems)
            {
                Console.Error.WriteLine(problem);
            }

            return 1;
        }

        Console.Out.WriteLine(calculation.Title);
        foreach (InputEcho echo in result.Inputs)
        {
            Console.Out.WriteLine($"  given   {echo.Input.Name} = {echo.Text}{(echo.Assumed ? " (assumed)" : "")}");
        }

        foreach (OutputValue value in result.Outputs)
        {
            Console.Out.WriteLine($"  result  {value.Output.Name} = {value.Text}   {value.Output.What}");
        }

        foreach (string note in result.Notes)
        {
            Console.Out.WriteLine("  note    " + note);
        }

        Console.Out.WriteLine($"  formula {calculation.Formula}");
        Console.Out.WriteLine($"  valid   {calculation.Validity}");
        Console.Out.WriteLine($"  source  {calculation.Source}");
        return 0;
    }

    private static void Describe(Calculation calculation)
    {
        Console.Out.WriteLine($"{calculation.Title}\n{calculation.Tells}\nIt does not tell: {calculation.DoesNotTell}\nNeeds:");
        foreach (CalculationInput input in calculation.Inputs)
        {
            Console.Out.WriteLine($"  {input.Name,-22} {input.What}; {input.Range}{(input.Default is { } d ? $"; {d} when left out" : input.Optional ? "; may be left out" : "")}");
        }

        Console.Out.WriteLine($"Formula: {calculation.Formula}\nMethod page: docs/methods/{calculation.MethodPage}");
    }
}
