using Failwise.Problems;

namespace Failwise.Entry;

/// <summary>A word of a line of short codes, and where it stands.</summary>
/// <param name="Column">From 1.</param>
/// <param name="Quoted">True for a note in quotes.</param>
internal readonly record struct CodeWord(string Text, int Line, int Column, bool Quoted)
{
    public Location At => new(ShortCodes.Source, Line, Column);
}

/// <summary>Cuts short codes into entries of words: entries end at a semicolon or at the end of the line, words at a space or a comma.</summary>
internal static class CodeWords
{
    /// <summary>A comma between words, as in "scored, blued" or "T,N"; between numbers it makes a list, or a slip that is told as such.</summary>
    private static bool IsPause(string text, int at) =>
        text[at] == ',' && !(at > 0 && IsNumber(text[at - 1]) && at + 1 < text.Length && IsNumber(text[at + 1]));

    private static bool IsNumber(char c) => char.IsAsciiDigit(c) || c == '*';

    public static IReadOnlyList<IReadOnlyList<CodeWord>> Split(string text, ProblemList problems)
    {
        List<IReadOnlyList<CodeWord>> entries = [];
        List<CodeWord> words = [];
        int line = 1, lineStart = 0;
        for (int i = 0; i < text.Length;)
        {
            char c = text[i];
            int column = i - lineStart + 1;
            if (c is ';' or '\n')
            {
                Finish();
                i++;
                (line, lineStart) = c == '\n' ? (line + 1, i) : (line, lineStart);
            }
            else if (char.IsWhiteSpace(c) || IsPause(text, i))
            {
                i++;
            }
            else if (c is '=' or '!')
            {
                words.Add(new CodeWord(c.ToString(), line, column, false));
                i++;
            }
            else if (c == '"')
            {
                int lineEnd = text.IndexOf('\n', i) is >= 0 and var n ? n : text.Length;
                int end = text.IndexOf('"', i + 1);
                if (end < 0 || end > lineEnd)
                {
                    problems.Error("FW097", new Location(ShortCodes.Source, line, column), "this note has no closing quotation mark.");
                    end = lineEnd;
                }

                words.Add(new CodeWord(text[(i + 1)..end], line, column, true));
                i = end < text.Length && text[end] == '"' ? end + 1 : end;
            }
            else
            {
                int end = i;
                while (end < text.Length && !char.IsWhiteSpace(text[end]) && text[end] is not (';' or '=' or '"') && !IsPause(text, end))
                {
                    end++;
                }

                words.Add(new CodeWord(text[i..end], line, column, false));
                i = end;
            }
        }

        Finish();
        return entries;

        void Finish()
        {
            if (words.Count > 0)
            {
                entries.Add(words);
                words = [];
            }
        }
    }
}
