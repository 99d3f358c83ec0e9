using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Dialogue;

/// <summary>One sitting at a case file: every entry is written at once, may be written over, and can be taken back one after the other.</summary>
internal sealed class CaseSession(KnowledgeBase knowledge, string casePath)
{
    private readonly string file = CaseEditor.FileOf(casePath);

    // The text before and after each entry: taking back is only safe while the file still reads as it was left.
    private readonly Stack<(string Before, string After)> written = new();

    /// <summary>Writes what the dialogue wants written.</summary>
    /// <exception cref="ProblemsException">The file is held by another process for long, or cannot be read.</exception>
    public CaseEdit Write(Save save) => CaseStore.Locked(file, () =>
    {
        string text = CaseStore.Read(file, out bool hadMark);
        bool over = save.Replaces && written.TryPeek(out (string Before, string After) last) && last.After == text;
        if (save.Replaces && !over)
        {
            return new CaseEdit([Changed()], false, null);
        }

        string before = over ? written.Peek().Before : text;
        CaseEdit edit = CaseEditor.AddTo(knowledge, file, before, hadMark, save.Entries, save.Anyway, dryRun: false);
        if (!edit.Written)
        {
            return edit;
        }

        if (over)
        {
            written.Pop();
        }

        written.Push((before, CaseStore.Read(file, out _)));
        return edit with { Case = CaseReader.ReadBegun(knowledge, file).Case };
    });

    /// <summary>Takes back the entry written last in this sitting.</summary>
    /// <param name="says">What came of it.</param>
    /// <returns>The case as it reads then; null when nothing was taken back.</returns>
    public TeardownCase? TakeBack(out string says)
    {
        (TeardownCase? now, says) = CaseStore.Locked(file, Restore);
        return now;
    }

    private (TeardownCase?, string) Restore()
    {
        if (!written.TryPeek(out (string Before, string After) last))
        {
            return (null, "Nothing of this sitting is left to take back.");
        }

        if (CaseStore.Read(file, out bool hadMark) != last.After)
        {
            return (null, Changed().Message);
        }

        CaseStore.Replace(file, last.Before, hadMark, [.. CaseJournal.Read(file).SkipLast(1)]);
        written.Pop();
        return (CaseReader.ReadBegun(knowledge, file).Case, "Took back the last entry.");
    }

    private Problem Changed() => new("FW106", Severity.Error, new Location(file, 0, 0), "the case file was changed by somebody else since the last answer; nothing of theirs is touched. Start again with what is new, or mend the entry by hand.");
}
