using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>What became of an edit.</summary>
/// <param name="Problems">Errors that stopped it, and questions a careful person would ask.</param>
/// <param name="Written">True when the file was changed.</param>
/// <param name="Case">The case as it reads with the edit; null when it does not read.</param>
public sealed record CaseEdit(IReadOnlyList<Problem> Problems, bool Written, TeardownCase? Case)
{
    /// <summary>Errors that stood in the file before; they stop nothing here, but the case cannot be read to its end until they are mended.</summary>
    public IReadOnlyList<Problem> Standing { get; init; } = [];
}

/// <summary>What became of taking an edit back.</summary>
/// <param name="Done">True when the file was changed.</param>
/// <param name="Pieces">What was taken out, or could not be; empty when there was nothing to take back.</param>
/// <param name="Problem">Why it was left alone; null when it was taken out or there was nothing.</param>
public sealed record CaseUndo(bool Done, IReadOnlyList<string> Pieces, Problem? Problem);

/// <summary>Adds to a case file and takes back, keeping comments, order and formatting; nothing is ever lost or half written.</summary>
public static class CaseEditor
{
    /// <summary>The case file of a case: itself, or the case.yaml of its folder; where a link stands for it, the file behind the link.</summary>
    public static string FileOf(string casePath) => CaseStore.Target(Directory.Exists(casePath) ? Path.Combine(casePath, CaseReader.FileInFolder) : casePath);

    /// <summary>Adds entries, all or none.</summary>
    /// <param name="anyway">Adds in spite of questions, with a note of them; errors still stop it.</param>
    /// <param name="dryRun">Checks everything and writes nothing.</param>
    /// <exception cref="ProblemsException">The file is held by another process for long, or cannot be read at all.</exception>
    public static CaseEdit Add(KnowledgeBase knowledge, string casePath, IReadOnlyList<CaseEntry> entries, bool anyway = false, bool dryRun = false)
    {
        string file = Existing(casePath);
        return dryRun ? AddNow() : CaseStore.Locked(file, AddNow);

        CaseEdit AddNow() => AddTo(knowledge, file, CaseStore.Read(file, out bool hadMark), hadMark, entries, anyway, dryRun);
    }

    /// <summary>Puts the text with the entries in the place of the file; the caller holds the file.</summary>
    /// <param name="text">The text of the file, or the one before its last edit, which is then written over.</param>
    internal static CaseEdit AddTo(
        KnowledgeBase knowledge, string file, string text, bool hadMark, IReadOnlyList<CaseEntry> entries, bool anyway, bool dryRun)
    {
        ProblemList problems = new();
        if (CaseText.Add(text, Shown(file), entries, problems) is not { } longer)
        {
            return new CaseEdit(problems.Sorted(), false, null);
        }

        MapNode before = (MapNode)YamlFile.Parse(text, Shown(file), new ProblemList())!;
        Problem[] standing = [.. CaseReader.Read(knowledge, before, file, new ProblemList()).Problems];
        HashSet<(string, string)> old = [.. standing.Select(p => (p.Code, p.Message))];
        CaseReading reading = CaseReader.Read(knowledge, CaseText.With(before, entries, placed: true), file, new ProblemList());
        ILookup<Severity, Problem> fresh = reading.Problems.Where(p => !old.Contains((p.Code, p.Message))).ToLookup(p => p.Severity);
        Problem[] questions = [.. fresh[Severity.Warning], .. reading.Case is { } teardown ? EntryQuestions.Ask(knowledge, teardown, entries) : []];
        Problem[] all = [.. fresh[Severity.Error], .. questions];
        if (dryRun || fresh[Severity.Error].Any() || (questions.Length > 0 && !anyway))
        {
            return new CaseEdit(all, false, reading.Case) { Standing = Errors() };
        }

        if (questions.Length > 0 && CaseText.Add(text, Shown(file), Confirmed(entries, questions), problems) is { } noted)
        {
            longer = noted;
        }

        int over = CaseStore.Read(file, out _) == text ? 0 : 1;
        CaseStore.Replace(file, longer.Text, hadMark, [.. CaseJournal.Read(file).SkipLast(over), longer.Pieces]);
        return new CaseEdit(all, true, reading.Case) { Standing = Errors() };

        // A case that is only begun says nothing yet: that is no mistake.
        Problem[] Errors() => [.. standing.Where(p => p.Severity == Severity.Error && p.Code != "FW033")];
    }

    /// <summary>Takes back the last edit that is not taken back yet; hand edits made since stay.</summary>
    /// <exception cref="ProblemsException">The file is held by another process for long, or cannot be read at all.</exception>
    public static CaseUndo Undo(string casePath)
    {
        string file = Existing(casePath);
        return CaseStore.Locked(file, () => UndoNow(file));
    }

    private static CaseUndo UndoNow(string file)
    {
        IReadOnlyList<IReadOnlyList<InsertedPiece>> edits = CaseJournal.Read(file);
        if (edits.Count == 0)
        {
            return new CaseUndo(false, [], null);
        }

        string[] pieces = [.. edits[^1].Select(p => p.Text.ReplaceLineEndings(" ").Trim(' ', ','))];
        string text = CaseStore.Read(file, out bool hadMark);
        if (CaseText.Remove(text, Shown(file), edits[^1]) is not { } shorter)
        {
            CaseStore.KeepOnly(file, [.. edits.SkipLast(1)]);
            return new CaseUndo(false, pieces, new Problem("FW090", Severity.Error, new Location(Shown(file), 0, 0),
                $"the last entry is no longer in the file as it was added, so it is left alone; look for it by hand: {string.Join("; ", pieces)}. Another undo takes back the edit before it."));
        }

        CaseStore.Replace(file, shorter, hadMark, [.. edits.SkipLast(1)]);
        return new CaseUndo(true, pieces, null);
    }

    private static string Shown(string file) => file.Replace('\\', '/');

    /// <summary>The entries, with a note where a question was answered with "as written".</summary>
    private static CaseEntry[] Confirmed(IReadOnlyList<CaseEntry> entries, Problem[] questions) =>
        [.. entries.Select(e => questions.Any(q => q.At == e.At) ? e.WithNote("kept as written, asked: " + string.Join(", ", questions.Where(q => q.At == e.At).Select(q => q.Code).Distinct())) : e)];

    private static string Existing(string casePath)
    {
        ProblemList unread = new();
        return CaseReader.Open(casePath, unread) is null ? throw new ProblemsException(unread.Sorted()) : FileOf(casePath);
    }
}
