using System.CommandLine;
using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Sheets;

namespace Failwise.Cli;

/// <summary>Prints inspection sheets for the machine of a case.</summary>
internal static class SheetCommand
{
    public static Command Command(Option<string?> rules)
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Option<string> paper = new("--paper") { HelpName = "PAPER", Description = "a4 or letter.", DefaultValueFactory = _ => "a4" };
        paper.AcceptOnlyFromAmong("a4", "letter");
        Option<string> format = new("--format") { HelpName = "FORM", Description = "html or markdown.", DefaultValueFactory = _ => "html" };
        format.AcceptOnlyFromAmong("html", "markdown");
        Option<string[]> only = new("--only") { HelpName = "PART", Description = "Only this part; may be given several times.", Arity = ArgumentArity.OneOrMore };
        Option<string?> output = new("-o", "--output") { HelpName = "FILE", Description = "Write to a file instead of the screen." };
        Command command = new("sheet", "Inspection sheets to print for just this machine: fill in by hand, type in as short codes.\n\nExample: failwise case sheet pump-3 --paper a4 -o sheets.html") { path, paper, format, only, output, rules };
        command.SetAction(p =>
        {
            KnowledgeBase knowledge = ShippedRules.Load(p.GetValue(rules));
            CaseReading reading = CaseReader.ReadBegun(knowledge, CaseEditor.FileOf(p.GetValue(path)!));
            InspectionSheet sheet = SheetPlanner.PlanWhole(knowledge, reading.Case ?? throw new ProblemsException(reading.Problems), p.GetValue(only) ?? []);
            Output.Write(p.GetValue(format) == "markdown" ? SheetMarkdown.Write(sheet) : SheetHtml.Write(knowledge, sheet, p.GetValue(paper) == "letter" ? Paper.Letter : Paper.A4), p.GetValue(output));
            return 0;
        });
        return command;
    }
}
