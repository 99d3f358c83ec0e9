using System.Text;

namespace Failwise.Cli;

/// <summary>Writes results: whole or not at all.</summary>
internal static class Output
{
    public static void Write(string text, string? file)
    {
        if (file is null)
        {
            Console.Out.Write(text);
            return;
        }

        // Written beside and moved into place, so that a failure never leaves half a report over a good one.
        string draft = $"{file}.{Environment.ProcessId}.new";
        try
        {
            File.WriteAllText(draft, text, new UTF8Encoding(false));
            File.Move(draft, file, overwrite: true);
        }
        finally
        {
            File.Delete(draft);
        }

        Console.Error.WriteLine($"Wrote {file}");
    }
}
