using System.CommandLine;
using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>Commands that start a case, add to it and take back.</summary>
internal static class CaseCommands
{
    public static Command Command(Option<string?> rules)
    {
        Command command = new("case", "Start a case, add to it and take back what was added.\n\nExample: failwise case add pump-3 \"MB3L wiped heavy; MB1-2 ok\"");
        command.Add(CaseStartCommands.New(rules));
        command.Add(CaseStartCommands.Secure(rules));
        command.Add(Add(rules));
        command.Add(Undo());
        command.Add(Codes(rules));
        command.Add(SheetCommand.Command(rules));
        command.Add(EnterCommand.Command(rules));
        return command;
    }

    private static Argument<string> CaseArgument() => new("CASE") { Description = "A case file, or a folder with a case.yaml." };

    private static Command Add(Option<string?> rules)
    {
        Argument<string> path = CaseArgument();
        Argument<string[]> codes = new("CODES") { Description = "What was seen, in short codes; entries end with a semicolon. '-' reads lines from standard input.", Arity = ArgumentArity.OneOrMore };
        Option<bool> anyway = new("--anyway") { Description = "Add in spite of questions." };
        Option<bool> dry = new("--dry-run") { Description = "Check everything, write nothing." };
        Command command = new("add", "Add what was seen, in short codes, straight from a filled sheet.\n\nExample: failwise case add pump-3 \"MB3L wiped heavy; MB1-2 ok; !oil pressure low\"") { path, codes, anyway, dry, rules };
        command.SetAction(p =>
        {
            KnowledgeBase knowledge = ShippedRules.Load(p.GetValue(rules));
            string[] words = p.GetValue(codes)!;
            string text = words is ["-"] ? Console.In.ReadToEnd() : string.Join(' ', words);
            CodeReading reading = ShortCodes.Read(knowledge, text, CaseReader.ReadBegun(knowledge, CaseEditor.FileOf(p.GetValue(path)!)).Case?.Machine);
            if (reading.Problems.Count > 0)
            {
                // What could be read is checked against the machine all the same, so that everything wrong is said at once.
                IReadOnlyList<Problem> more = reading.Entries.Count == 0 ? [] : CaseEditor.Add(knowledge, p.GetValue(path)!, reading.Entries, dryRun: true).Problems;
                return Refuse(text, [.. reading.Problems.Concat(more).OrderBy(x => x.At.Line).ThenBy(x => x.At.Column)]);
            }

            CaseEdit edit = CaseEditor.Add(knowledge, p.GetValue(path)!, reading.Entries, p.GetValue(anyway), p.GetValue(dry));
            if (!edit.Written && !(p.GetValue(dry) && edit.Problems.Count == 0))
            {
                return Refuse(text, edit.Problems);
            }

            foreach (Problem standing in edit.Standing)
            {
                Console.Error.WriteLine(standing);
            }

            if (edit.Standing.Count > 0)
            {
                Console.Error.WriteLine($"{(edit.Standing.Count == 1 ? "This mistake" : "These mistakes")} stood in the case before: until {(edit.Standing.Count == 1 ? "it is" : "they are")} mended, nothing can be diagnosed.");
            }

            foreach (CaseEntry entry in reading.Entries)
            {
                Console.Out.WriteLine($"{(edit.Written ? "added" : "would add")} to {entry.Section}: {entry.Yaml}");
            }

            foreach (Problem hint in edit.Case is { } now ? CloserWords.Hints(knowledge, now, at => at.File == ShortCodes.Source) : [])
            {
                Console.Error.WriteLine(hint);
            }

            return 0;
        });
        return command;
    }

    private static int Refuse(string text, IReadOnlyList<Problem> problems)
    {
        foreach (Problem problem in problems)
        {
            Console.Error.WriteLine(problem);
            if (problem.At.File == "codes" && text.Split('\n').ElementAtOrDefault(problem.At.Line - 1) is { Length: > 0 and < 200 } line)
            {
                Console.Error.WriteLine("  " + line.TrimEnd());
                Console.Error.WriteLine("  " + new string(' ', problem.At.Column - 1) + "^");
            }
        }

        Console.Error.WriteLine("Nothing was added.");
        return 1;
    }

    private static Command Undo()
    {
        Argument<string> path = CaseArgument();
        Command command = new("undo", "Take back the last edit of a case; again for the one before it. What was edited by hand stays.\n\nExample: failwise case undo pump-3") { path };
        command.SetAction(p =>
        {
            CaseUndo undo = CaseEditor.Undo(p.GetValue(path)!);
            if (!undo.Done)
            {
                Console.Error.WriteLine(undo.Problem?.ToString() ?? $"{CaseEditor.FileOf(p.GetValue(path)!)}: there is nothing to take back.");
                return 1;
            }

            foreach (string piece in undo.Pieces)
            {
                Console.Out.WriteLine($"took back: {piece}");
            }

            return 0;
        });
        return command;
    }

    private static Command Codes(Option<string?> rules)
    {
        Argument<string?> path = new("CASE") { Description = "Only the parts that this machine can have.", Arity = ArgumentArity.ZeroOrOne };
        Command command = new("codes", "List the short codes, and how to write with them.\n\nExample: failwise case codes") { path, rules };
        command.SetAction(p =>
        {
            KnowledgeBase knowledge = ShippedRules.Load(p.GetValue(rules));
            Machine? machine = p.GetValue(path) is { } file ? ReadMachine(knowledge, file) : null;
            Console.Out.WriteLine("PART NUMBERS PLACES  what was seen  amount 1-5  (? fairly sure, ?? doubtful)  \"note\"  @photo; next entry");
            Console.Out.WriteLine("MB3L wiped heavy; MB1-5U ok; CP* no blued; big end 2 worn 3 ?; TW nl; !oil pressure low; MJ2 diameter = 57.94 mm max 58 mm");
            foreach (IGrouping<string, ShortCode> kind in knowledge.Codes.GroupBy(c => c.Kind))
            {
                Console.Out.WriteLine();
                Console.Out.WriteLine(kind.Key switch { "part" => "Parts", "place" => "Places, after the number", _ => "Patterns (any word or name of a pattern will do)" });
                foreach (ShortCode code in kind.Where(c => c.Kind != "part" || machine is null || Fits(knowledge.Parts[c.Id], machine)))
                {
                    string name = code.Kind switch { "part" => knowledge.Parts[code.Id].Name, "pattern" => knowledge.Patterns[code.Id].Name, _ => code.Id.Replace('-', ' ') };
                    Console.Out.WriteLine($"  {code.Code,-3} {name}");
                }
            }

            Console.Out.WriteLine();
            Console.Out.WriteLine("Amounts");
            Console.Out.WriteLine("  1 trace  2 light  3 moderate  4 heavy  5 destroyed");
            return 0;
        });
        return command;
    }

    private static bool Fits(Part part, Machine machine) => part.Machines.Count == 0 || part.Machines.Any(machine.Kinds.Contains);

    private static Machine ReadMachine(KnowledgeBase knowledge, string path)
    {
        CaseReading reading = CaseReader.Read(knowledge, path);
        return (reading.Case ?? throw new ProblemsException(reading.Problems)).Machine;
    }
}
