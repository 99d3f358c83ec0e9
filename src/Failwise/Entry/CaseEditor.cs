using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>What became of an edit.</summary>
/// <param name="Problems">Errors that stopped it, and questions a careful person would ask.</param>
/// <param name="Written">True when the file was changed.</param>
/// <param name="Case">The case as it reads with the edit; null when it does not read.</param>
public sealed record CaseEdit(IReadOnlyList<Problem> Problems, bool Written, TeardownCase? Case);

/// <summary>Adds to a case file and takes back, keeping comments, order and formatting; nothing is ever lost or half written.</summary>
public static class CaseEditor
{
    /// <summary>The case file of a case: itself, or the case.yaml of its folder.</summary>
    public static string FileOf(string casePath) => Directory.Exists(casePath) ? Path.Combine(casePath, CaseReader.FileInFolder) : casePath;

    /// <summary>Adds entries, all or none.</summary>
    /// <param name="anyway">Adds in spite of questions; errors still stop it.</param>
    /// <param name="dryRun">Checks everything and writes nothing.</param>
    /// <exception cref="ProblemsException">The file is held by another process for long, or cannot be read at all.</exception>
    public static CaseEdit Add(KnowledgeBase knowledge, string casePath, IReadOnlyList<CaseEntry> entries, bool anyway = false, bool dryRun = false)
    {
        string file = FileOf(casePath);
        string shown = file.Replace('\\', '/');
        ProblemList unread = new();
        if (YamlFile.Read(file, shown, unread) is null)
        {
            throw new ProblemsException(unread.Sorted());
        }

        return dryRun ? AddNow() : CaseStore.Locked(file, AddNow);

        CaseEdit AddNow() => AddTo(knowledge, file, CaseStore.Read(file, out bool hadMark), hadMark, entries, anyway, dryRun);
    }

    /// <summary>Puts the text with the entries in the place of the file; the caller holds the file.</summary>
    internal static CaseEdit AddTo(
        KnowledgeBase knowledge, string file, string text, bool hadMark, IReadOnlyList<CaseEntry> entries, bool anyway, bool dryRun)
    {
        string shown = file.Replace('\\', '/');
        ProblemList problems = new();
        if (CaseText.Add(text, shown, entries, problems) is not { } longer)
        {
            return new CaseEdit(problems.Sorted(), false, null);
        }

        MapNode before = (MapNode)YamlFile.Parse(text, shown, new ProblemList())!;
        HashSet<(string, string)> old = [.. CaseReader.Read(knowledge, before, file, new ProblemList()).Problems.Select(p => (p.Code, p.Message))];
        CaseReading reading = CaseReader.Read(knowledge, CaseText.With(before, entries, placed: true), file, new ProblemList());
        List<Problem> fresh = [.. reading.Problems.Where(p => p.Severity == Severity.Error && !old.Contains((p.Code, p.Message)))];
        IReadOnlyList<Problem> questions = reading.Case is { } teardown ? EntryQuestions.Ask(knowledge, teardown, entries) : [];
        bool write = fresh.Count == 0 && (anyway || questions.Count == 0);
        if (write && !dryRun)
        {
            CaseStore.Replace(file, longer, hadMark);
        }

        return new CaseEdit([.. fresh, .. questions], write && !dryRun, reading.Case);
    }

    /// <summary>Takes back the last edit; a second call brings it back.</summary>
    /// <returns>False when there is nothing to take back.</returns>
    public static bool Undo(string casePath)
    {
        string file = FileOf(casePath);
        return CaseStore.Locked(file, () => CaseStore.SwapWithBackup(file));
    }
}
