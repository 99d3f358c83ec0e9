using System.Diagnostics;
using System.Globalization;

namespace Failwise.CaseWriter;

/// <summary>A writer in a process of its own, and the last entry that it said was safe.</summary>
internal sealed class WriterProcess : IDisposable
{
    private readonly Process process;
    private readonly ManualResetEventSlim ready = new(false);
    private volatile int last;

    public WriterProcess(string file, string name, int from, int count)
    {
        last = from - 1;
        // The program lies beside this one, whether a test or the script started it.
        string program = Path.Combine(AppContext.BaseDirectory, "Failwise.CaseWriter.dll");
        string[] arguments = [program, "write", file, name, from.ToString(CultureInfo.InvariantCulture), count.ToString(CultureInfo.InvariantCulture)];
        process = new Process { StartInfo = new ProcessStartInfo("dotnet", arguments) { RedirectStandardOutput = true, UseShellExecute = false } };
        process.OutputDataReceived += (_, e) => Hear(e.Data);
        process.Start();
        process.BeginOutputReadLine();
    }

    /// <summary>The last entry that was told to be on the disk.</summary>
    public int Last => last;

    public int Id => process.Id;

    public string? Refusal { get; private set; }

    /// <summary>Waits for the first entry: until then it is busy starting, and a kill would hit no write.</summary>
    public bool WaitUntilWriting() => ready.Wait(TimeSpan.FromSeconds(60));

    /// <summary>Ends it as a pulled plug would: no handler of its own runs.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    public int WaitForEnd()
    {
        process.WaitForExit();
        return process.ExitCode;
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            Kill();
        }

        process.Dispose();
        ready.Dispose();
    }

    private void Hear(string? line)
    {
        if (int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out int n))
        {
            last = n;
            ready.Set();
        }
        else if (line is not null and not "ready")
        {
            Refusal = line;
            ready.Set();
        }
    }
}
