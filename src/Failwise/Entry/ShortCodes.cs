using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Entry;

/// <summary>What short codes mean: the entries that could be read, and every problem with the others.</summary>
public sealed record CodeReading(IReadOnlyList<CaseEntry> Entries, IReadOnlyList<Problem> Problems);

/// <summary>
/// Reads what a person writes on a sheet at the bench: <c>MB3L wiped heavy; MB1-5U ok; !oil pressure low</c>. docs/short-codes.md has
/// the grammar. A word is a code, an id or a synonym; a wrong one is pointed at.
/// </summary>
public static class ShortCodes
{
    internal const string Source = "codes";

    /// <summary>Reads codes; nothing is written anywhere.</summary>
    /// <param name="text">Entries, each ended by a semicolon or a line break.</param>
    /// <param name="machine">The machine they are about: where people call two things the same, what is about such a machine is meant.</param>
    public static CodeReading Read(KnowledgeBase knowledge, string text, Machine? machine = null)
    {
        ProblemList problems = new();
        List<CaseEntry> entries = [];
        foreach (IReadOnlyList<CodeWord> words in CodeWords.Split(text, problems))
        {
            if (new CodeEntry(knowledge, words, problems, machine).Read() is { } entry)
            {
                entries.Add(entry);
            }
        }

        if (entries.Count == 0 && !problems.HasErrors)
        {
            problems.Error("FW097", new Location(Source, 1, 1), "nothing to add: write something like 'MB3L wiped heavy'.");
        }

        return new CodeReading(entries, problems.Sorted());
    }
}
