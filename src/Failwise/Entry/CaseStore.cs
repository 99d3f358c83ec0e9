using System.Text;
using Failwise.Problems;

namespace Failwise.Entry;

/// <summary>
/// Reads and replaces a case file so that nothing is ever lost: one writer at a time, the new text whole or not at all, the last state
/// kept beside it as <c>case.yaml~</c>. A process that dies at any moment leaves the old file or the new one, never a part of either.
/// </summary>
internal static class CaseStore
{
    private const int LockTries = 200;
    private const int LockPauseMs = 50;
    private static readonly UTF8Encoding Utf8 = new(false, throwOnInvalidBytes: true);

    public static string BackupOf(string file) => file + "~";

    /// <summary>Runs an edit while no other process of this program can edit the same file.</summary>
    /// <exception cref="ProblemsException">Another process holds the file for longer than ten seconds.</exception>
    /// <param name="tries">How often to try, 50 ms apart.</param>
    public static T Locked<T>(string file, Func<T> edit, int tries = LockTries)
    {
        using FileStream held = Hold(file, tries);
        RemoveDrafts(file);
        return edit();
    }

    /// <summary>Takes the lock. The system frees it when the process ends, however it ends; the empty lock file stays, since removing it would open a gap.</summary>
    private static FileStream Hold(string file, int mostTries)
    {
        string lockFile = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(file))!, "." + Path.GetFileName(file) + ".lock");
        for (int tries = 0; ; tries++)
        {
            try
            {
                return new FileStream(lockFile, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException e) when (e is not (FileNotFoundException or DirectoryNotFoundException or PathTooLongException))
            {
                if (tries == mostTries)
                {
                    throw new ProblemsException([new Problem("FW095", Severity.Error, new Location(file, 0, 0), "another program is writing this case; try again when it is done.")]);
                }

                Thread.Sleep(LockPauseMs);
            }
        }
    }

    /// <summary>Removes what a writer that was ended in the middle left behind; nobody else writes while the lock is held.</summary>
    private static void RemoveDrafts(string file)
    {
        foreach (string draft in Directory.EnumerateFiles(Path.GetDirectoryName(Path.GetFullPath(file))!, $".{Path.GetFileName(file)}*.new"))
        {
            File.Delete(draft);
        }
    }

    /// <summary>The file itself, where a link stands for it: a link must not be replaced by a file.</summary>
    public static string Target(string file) => File.Exists(file) && new FileInfo(file).ResolveLinkTarget(returnFinalTarget: true) is { } target ? target.FullName : file;

    /// <summary>The text, without a byte order mark.</summary>
    public static string Read(string file, out bool hadMark)
    {
        byte[] bytes = File.ReadAllBytes(file);
        hadMark = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble);
        return Utf8.GetString(bytes, hadMark ? 3 : 0, bytes.Length - (hadMark ? 3 : 0));
    }

    /// <summary>Puts the text in the place of the file and keeps the last state beside it.</summary>
    /// <param name="edits">What undo may take back from the new text.</param>
    public static void Replace(string file, string text, bool withMark, IReadOnlyList<IReadOnlyList<InsertedPiece>> edits)
    {
        PutInPlace(BackupOf(file), File.ReadAllBytes(file));
        PutInPlace(CaseJournal.FileOf(file), CaseJournal.Bytes(edits));
        byte[] bytes = Utf8.GetBytes(text);
        PutInPlace(file, withMark ? [.. Encoding.UTF8.Preamble, .. bytes] : bytes);
    }

    /// <summary>Forgets edits that can no longer be taken back.</summary>
    public static void KeepOnly(string file, IReadOnlyList<IReadOnlyList<InsertedPiece>> edits) => PutInPlace(CaseJournal.FileOf(file), CaseJournal.Bytes(edits));

    /// <summary>Writes a new file; an existing one is never touched.</summary>
    /// <exception cref="IOException">The file exists.</exception>
    public static void Create(string file, string text)
    {
        string draft = Draft(file);
        try
        {
            WriteThrough(draft, Utf8.GetBytes(text));
            File.Move(draft, file, overwrite: false);
        }
        finally
        {
            File.Delete(draft);
        }
    }

    private static void PutInPlace(string file, byte[] bytes)
    {
        string draft = Draft(file);
        try
        {
            WriteThrough(draft, bytes);
            if (!OperatingSystem.IsWindows() && File.Exists(file))
            {
                File.SetUnixFileMode(draft, File.GetUnixFileMode(file));
            }

            File.Move(draft, file, overwrite: true);
        }
        finally
        {
            File.Delete(draft);
        }
    }

    private static string Draft(string file) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(file))!, $".{Path.GetFileName(file)}.{Environment.ProcessId}.new");

    private static void WriteThrough(string file, byte[] bytes)
    {
        using FileStream stream = new(file, FileMode.Create, FileAccess.Write, FileShare.None);
        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }
}
