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

        Replace(file, new UTF8Encoding(false).GetBytes(text));
        Console.Error.WriteLine($"Wrote {file}");
    }

    /// <summary>Written beside and moved into place, so that a failure never leaves half a report over a good one.</summary>
    public static void Replace(string file, byte[] bytes)
    {
        if (IsDevice(file))
        {
            using FileStream device = new(file, FileMode.Open, FileAccess.Write);
            device.Write(bytes);
            return;
        }

        string draft = $"{file}.{Environment.ProcessId}.new";
        try
        {
            File.WriteAllBytes(draft, bytes);
            File.Move(draft, file, overwrite: true);
        }
        finally
        {
            File.Delete(draft);
        }
    }

    // A null device or a pipe of the shell is written into; moved over, it would be gone for everybody on the machine.
    internal static bool IsDevice(string file) => !OperatingSystem.IsWindows() && Path.GetFullPath(file) is var full
        && full.StartsWith("/dev/", StringComparison.Ordinal) && !full.StartsWith("/dev/shm/", StringComparison.Ordinal);
}
