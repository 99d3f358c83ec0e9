using System.CommandLine;
using Failwise.Knowledge;
using Failwise.Reports;

namespace Failwise.Cli;

/// <summary>Writes the rule base as a book, in Markdown or as pages for a browser.</summary>
internal static class AtlasCommand
{
    public static Command New(Option<string?> rules)
    {
        Argument<string> target = new("FOLDER") { Description = "The folder to write; its old pages are replaced." };
        Option<string> format = new("--format") { HelpName = "FORM", Description = "markdown or html.", DefaultValueFactory = _ => "markdown" };
        format.AcceptOnlyFromAmong("markdown", "html");
        Command atlas = new("atlas", "Write the rule base as a book: one page a pattern, one page a cause.\n\nExample: failwise rules atlas docs/atlas") { target, format, rules };
        atlas.SetAction(p => Run(ShippedRules.Load(p.GetValue(rules)), p.GetValue(target)!, p.GetValue(format) == "html"));
        return atlas;
    }

    private static int Run(KnowledgeBase knowledge, string folder, bool html)
    {
        IReadOnlyList<AtlasPage> pages = html ? AtlasHtml.Write(knowledge) : Atlas.Write(knowledge);
        foreach (AtlasPage page in pages)
        {
            string path = Path.Combine(folder, page.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            if (!File.Exists(path) || File.ReadAllText(path) != page.Text)
            {
                File.WriteAllText(path, page.Text);
            }
        }

        DeleteRetired(folder, pages, html ? "*.html" : "*.md");
        Console.Out.WriteLine($"{pages.Count} pages in {folder}");
        return 0;
    }

    /// <summary>Pages of retired rules must not linger; only files of the atlas's own kinds are touched.</summary>
    private static void DeleteRetired(string folder, IReadOnlyList<AtlasPage> pages, string kind)
    {
        HashSet<string> known = [.. pages.Select(p => Path.GetFullPath(Path.Combine(folder, p.Path)))];
        IEnumerable<string> folders = new[] { "patterns", "causes" }.Select(d => Path.Combine(folder, d)).Where(Directory.Exists);
        foreach (string old in folders.SelectMany(d => Directory.GetFiles(d, kind)).Where(f => !known.Contains(Path.GetFullPath(f))))
        {
            File.Delete(old);
        }

        string marks = Path.Combine(folder, "drawings", "marks");
        foreach (string old in Directory.Exists(marks) ? Directory.GetFiles(marks, "*.svg") : [])
        {
            if (!known.Contains(Path.GetFullPath(old)) && Atlas.IsMarkDrawing(File.ReadAllText(old)))
            {
                File.Delete(old);
            }
        }
    }
}
