using System.CommandLine;
using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Reports;
using Failwise.Securing;

namespace Failwise.Cli;

/// <summary>Commands for the first minutes of a job: begin a case, and say what to secure before it is cleaned.</summary>
internal static class CaseStartCommands
{
    private const int Done = 0, ProblemsFound = 1, WrongUse = 2;

    public static Command New(Option<string?> rules)
    {
        Argument<string> folder = new("FOLDER") { Description = "The folder of the new case." };
        Option<string?> title = Text("--title", "TEXT", "What the case is about, in one line.");
        Option<string?> kind = Text("--kind", "KIND", "engine, gearbox, axle, driveline, steering, pump; several with commas.");
        Option<string?> name = Text("--name", "TEXT", "What the shop calls the machine.");
        Option<string?> cylinders = Text("--cylinders", "N", "Number of cylinders.");
        Option<string?> mains = Text("--mains", "N", "Number of main bearings.");
        Option<string?> feed = Text("--feed", "1,2,..", "Main bearings in the order in which the oil reaches them.");
        Option<string?> driveEnd = Text("--drive-end", "END", "first or last: where the drive end is.");
        Option<string?> numberOne = Text("--number-one", "TEXT", "Which end is No. 1.");
        Option<string?> features = Text("--features", "WORDS", "What the build has: diesel,turbocharged,wet-liners ...");
        Option<string?> without = Text("--without", "WORDS", "What the build does not have.");
        Option<string?> hours = Text("--hours", "N", "Hours run in all.");
        Option<string?> said = Text("--said", "WORDS", "What was noticed or known before, with commas: \"oil light on,knock under load,no oil leak\".");
        Command command = new("new", "Begin a case: a folder with a case file, and what to secure before anything is cleaned or stripped.\n\nExample: failwise case new pump-3 --title \"North pump, knock\" --kind engine --cylinders 4 --mains 5 --features diesel --said \"oil light on\"")
        {
            folder, title, kind, name, cylinders, mains, feed, driveEnd, numberOne, features, without, hours, said, rules,
        };
        command.SetAction(p => Begin(ShippedRules.Load(p.GetValue(rules)), p.GetValue(folder)!, k => new NewCaseAnswers(k)
        {
            Title = p.GetValue(title), Kind = p.GetValue(kind), Name = p.GetValue(name), Cylinders = p.GetValue(cylinders), Mains = p.GetValue(mains),
            Feed = p.GetValue(feed), DriveEnd = p.GetValue(driveEnd), NumberOne = p.GetValue(numberOne), Features = p.GetValue(features),
            Without = p.GetValue(without), Hours = p.GetValue(hours), Said = p.GetValue(said),
        }));
        return command;
    }

    public static Command Secure(Option<string?> rules)
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml; it may be only begun." };
        Option<string?> output = new("-o", "--output") { HelpName = "FILE", Description = "Write to a file instead of the screen." };
        Command command = new("secure", "What to secure before this machine is turned, stripped or washed, and what can hurt someone.\n\nExample: failwise case secure examples/pump-engine") { path, output, rules };
        command.SetAction(p =>
        {
            KnowledgeBase knowledge = ShippedRules.Load(p.GetValue(rules));
            CaseReading reading = CaseReader.ReadBegun(knowledge, p.GetValue(path)!);
            TeardownCase teardown = reading.Case ?? throw new ProblemsException(reading.Problems);
            Output.Write(SecureReport.Write(knowledge, SecurePlanner.Plan(knowledge, teardown)), p.GetValue(output));
            return Done;
        });
        return command;
    }

    private static Option<string?> Text(string name, string help, string description) => new(name) { HelpName = help, Description = description };

    private static int Begin(KnowledgeBase knowledge, string folder, Func<KnowledgeBase, NewCaseAnswers> given)
    {
        CaseStart.RefuseExisting(folder);
        NewCaseAnswers answers = given(knowledge);
        if (string.IsNullOrWhiteSpace(answers.Title) || string.IsNullOrWhiteSpace(answers.Kind))
        {
            if (Console.IsInputRedirected || !NewCaseInterview.Ask(knowledge, answers, Console.In, Console.Out))
            {
                Console.Error.WriteLine("A new case needs at least --title and --kind. Nothing was written.");
                return WrongUse;
            }
        }

        List<Problem> problems = [];
        if (answers.Draft(problems) is not { } draft)
        {
            problems.ForEach(Console.Error.WriteLine);
            Console.Error.WriteLine("Nothing was written, and no case is begun: mend the words and give the command again.");
            return ProblemsFound;
        }

        CaseReading reading = CaseReader.ReadBegunText(knowledge, CaseStart.Text(knowledge, draft), Path.Combine(folder, CaseReader.FileInFolder));
        TeardownCase teardown = reading.Case ?? throw new ProblemsException(reading.Problems);
        string page = SecureReport.Write(knowledge, SecurePlanner.Plan(knowledge, teardown));
        IReadOnlyList<string> written = CaseStart.Create(knowledge, folder, draft, new Dictionary<string, string>
        {
            [SecureReport.FileInFolder] = page, ["case.schema.json"] = SchemaFiles.All()["case.schema.json"],
        });
        foreach (Problem hint in CloserWords.Hints(knowledge, teardown, _ => true))
        {
            Console.Error.WriteLine(hint);
        }

        Console.Out.WriteLine($"wrote {string.Join(", ", written)} and the folder {CaseStart.PhotoFolder} in {folder}");
        Console.Out.WriteLine();
        Console.Out.Write(page);
        return Done;
    }
}
