using System.CommandLine;
using System.Text;
using Failwise.Problems;
using Failwise.Reports;

namespace Failwise.Cli;

/// <summary>Writes a report that can be handed on: an edition, in a form, to a file with its pictures.</summary>
internal static class ReportCommand
{
    private const int Done = 0, WrongUse = 2;

    /// <summary>The command; what a case is diagnosed with (rules, limits) is shared with the other commands.</summary>
    public static Command Build(Func<ParseResult, string, Diagnosis> diagnose, IEnumerable<Option<string?>> shared)
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Option<string> edition = new("--edition") { HelpName = "EDITION", Description = "owner (plain words), technical (everything), work-order or close-up.", DefaultValueFactory = _ => "technical" };
        edition.AcceptOnlyFromAmong([.. EditionNames.ByWord.Keys]);
        Option<string?> format = new("--format") { HelpName = "FORM", Description = "markdown, html or pdf; by the ending of the file when left out." };
        format.AcceptOnlyFromAmong("markdown", "html", "pdf");
        Option<string?> paper = new("--paper") { HelpName = "PAPER", Description = "a4 or letter; html leaves the choice to the printer, pdf takes a4." };
        paper.AcceptOnlyFromAmong("a4", "letter");
        Option<string?> rates = PlanCommands.Rates();
        Option<string?> output = new("-o", "--output") { HelpName = "FILE", Description = "Where to write; the screen when left out." };
        Command command = new("report", "Write the report that the owner signs or the shop works from.\n\nExample: failwise report examples/pump-engine --edition owner --rates examples/shop-rates.yaml -o owner.html")
        {
            path, edition, rates, format, paper, output,
        };
        foreach (Option<string?> option in shared)
        {
            command.Add(option);
        }

        command.SetAction(p =>
        {
            string? file = p.GetValue(output);
            if (FormOf(p.GetValue(format), file) is not { } form)
            {
                return SayWrong($"'{file}' has no ending that tells the form: write .md, .html or .pdf, or give --format.");
            }

            if (form == "pdf" && file is null)
            {
                return SayWrong("A PDF needs a file: add -o FILE.");
            }

            ReportEdition which = EditionNames.ByWord[p.GetValue(edition)!];
            Paper? size = p.GetValue(paper) switch { "letter" => Paper.Letter, "a4" => Paper.A4, _ => null };
            Write(PlanCommands.Priced(diagnose(p, p.GetValue(path)!), p.GetValue(rates)), which, form, size, file);
            return Done;
        });
        return command;
    }

    private static int SayWrong(string message)
    {
        Console.Error.WriteLine(message);
        Console.Error.WriteLine("Try: failwise report --help");
        return WrongUse;
    }

    private static string? FormOf(string? format, string? file) => format ?? Path.GetExtension(file ?? ".md").ToLowerInvariant() switch
    {
        ".md" or ".markdown" => "markdown",
        ".html" or ".htm" => "html",
        ".pdf" => "pdf",
        _ => null,
    };

    private static void Write(Diagnosis diagnosis, ReportEdition edition, string form, Paper? paper, string? file)
    {
        if (form == "markdown")
        {
            MarkdownWithPictures(diagnosis, edition, file);
        }
        else if (form == "html")
        {
            Warn(diagnosis, ReportWriter.Write(diagnosis, edition, null));
            Output.Write(HtmlReport.Write(diagnosis, edition, file is null ? null : WayBetween(file, diagnosis.Case.File), paper), file);
        }
        else
        {
            Warn(diagnosis, ReportWriter.Write(diagnosis, edition, null));
            PdfPrinter.Print(HtmlReport.Write(diagnosis, edition, null, paper ?? Paper.A4), file!);
        }
    }

    /// <summary>Pictures first and the text last, so that a text that stands there has its pictures.</summary>
    private static void MarkdownWithPictures(Diagnosis diagnosis, ReportEdition edition, string? file)
    {
        string? folder = file is null ? null : Path.GetFileNameWithoutExtension(file) + "-pictures";
        Report report = ReportWriter.Write(diagnosis, edition, folder);
        Warn(diagnosis, report);
        if (folder is not null && report.Pictures.Count + report.Photos.Count(p => p.State == PhotoState.Shown) > 0)
        {
            string beside = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(file!))!, folder);
            string caseFolder = Path.GetDirectoryName(Path.GetFullPath(diagnosis.Case.File))!;
            Directory.CreateDirectory(beside);
            foreach (Picture picture in report.Pictures)
            {
                Output.Replace(Path.Combine(beside, picture.Name + ".svg"), Encoding.UTF8.GetBytes(picture.Svg));
            }

            foreach (ReportPhoto photo in report.Photos.Where(p => p.State == PhotoState.Shown))
            {
                string copy = Path.Combine(beside, photo.File);
                Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
                Output.Replace(copy, File.ReadAllBytes(Path.Combine(caseFolder, photo.File)));
            }
        }

        Output.Write(report.Markdown, file);
    }

    private static void Warn(Diagnosis diagnosis, Report report)
    {
        foreach (ReportPhoto photo in report.Photos.Where(p => p.State != PhotoState.Shown))
        {
            Location at = diagnosis.Case.Photos.Where(p => p.File.Replace('\\', '/') == photo.File).Select(p => p.At)
                .Concat(diagnosis.Case.Observations.Where(o => o.Photo?.Replace('\\', '/') == photo.File).Select(o => o.Location)).First();
            Console.Error.WriteLine(ReportProblems.PhotoNotShown(at, photo));
        }
    }

    /// <summary>The way from the folder of the report to the folder of the case, with forward slashes.</summary>
    private static string WayBetween(string report, string teardown)
    {
        string way = Path.GetRelativePath(Path.GetDirectoryName(Path.GetFullPath(report))!, Path.GetDirectoryName(Path.GetFullPath(teardown))!).Replace('\\', '/');
        return way == "." ? "" : way;
    }
}
