using System.ComponentModel;
using System.Diagnostics;
using System.Text;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>Prints a page to PDF with an installed Chromium.</summary>
internal static class PdfPrinter
{
    private const int MostSeconds = 120;

    private static readonly string[] Names =
        ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge", "microsoft-edge"];

    /// <summary>Writes the PDF whole or not at all.</summary>
    /// <exception cref="ProblemsException">There is no Chromium, or it failed.</exception>
    public static void Print(string html, string file)
    {
        string chromium = Find() ?? throw new ProblemsException([ReportProblems.NoChromium(file)]);
        DirectoryInfo scratch = Directory.CreateTempSubdirectory("failwise-");
        try
        {
            string page = Path.Combine(scratch.FullName, "report.html"), pdf = Path.Combine(scratch.FullName, "report.pdf");
            File.WriteAllText(page, html, new UTF8Encoding(false));
            Run(chromium, scratch.FullName, page, pdf, file);
            byte[] bytes = File.Exists(pdf) ? File.ReadAllBytes(pdf) : [];
            if (!bytes.AsSpan().StartsWith("%PDF-"u8))
            {
                throw new ProblemsException([ReportProblems.ChromiumFailed(file, "it ended without a PDF.")]);
            }

            Output.Replace(file, bytes);
            Console.Error.WriteLine($"Wrote {file}");
        }
        finally
        {
            Remove(scratch);
        }
    }

    private static void Run(string chromium, string scratch, string page, string pdf, string file)
    {
        ProcessStartInfo start = new(chromium) { RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false };
        foreach (string argument in new[]
        {
            "--headless", "--disable-gpu", "--disable-extensions", "--no-first-run", "--no-pdf-header-footer", $"--user-data-dir={Path.Combine(scratch, "profile")}",
            $"--print-to-pdf={pdf}", new Uri(page).AbsoluteUri,
        }.Concat(Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows() ? ["--no-sandbox"] : Array.Empty<string>()))
        {
            start.ArgumentList.Add(argument);
        }

        try
        {
            using Process process = Process.Start(start) ?? throw new Win32Exception();
            process.ErrorDataReceived += (_, _) => { };
            process.OutputDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            process.BeginOutputReadLine();
            if (!process.WaitForExit(TimeSpan.FromSeconds(MostSeconds)))
            {
                process.Kill(entireProcessTree: true);
                throw new ProblemsException([ReportProblems.ChromiumFailed(file, $"it did not end within {MostSeconds} seconds.")]);
            }

            if (process.ExitCode != 0)
            {
                throw new ProblemsException([ReportProblems.ChromiumFailed(file, $"it ended with code {process.ExitCode}.")]);
            }
        }
        catch (Win32Exception)
        {
            throw new ProblemsException([ReportProblems.ChromiumFailed(file, $"'{chromium}' cannot be started.")]);
        }
    }

    private static string? Find()
    {
        if (Environment.GetEnvironmentVariable("FAILWISE_CHROMIUM") is { Length: > 0 } named)
        {
            return named;
        }

        string ending = OperatingSystem.IsWindows() ? ".exe" : "";
        return (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(folder => Names.Select(name => Path.Combine(folder, name + ending))).FirstOrDefault(File.Exists);
    }

    private static void Remove(DirectoryInfo scratch)
    {
        try
        {
            scratch.Delete(recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A browser process that is still closing may hold a file; the system's own folder for passing files is swept anyway.
        }
    }
}
