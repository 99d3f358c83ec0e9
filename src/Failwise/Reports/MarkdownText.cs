using System.Text;

namespace Failwise.Reports;

/// <summary>Writes Markdown in which nothing that a person typed can act as Markdown or HTML.</summary>
internal sealed class MarkdownText
{
    private readonly StringBuilder text = new();

    /// <summary>Free text made harmless: one line, every character that means something to Markdown or HTML escaped.</summary>
    public static string Safe(string free)
    {
        StringBuilder safe = new(free.Length + 8);
        foreach (Rune rune in free.EnumerateRunes())
        {
            if (Rune.IsControl(rune) || IsDirectionMark(rune.Value))
            {
                safe.Append(' ');
            }
            else if (rune.IsAscii && Special((char)rune.Value, safe.Length == 0))
            {
                safe.Append('\\').Append(rune.ToString());
            }
            else
            {
                safe.Append(rune.ToString());
            }
        }

        return NoListMark(safe.ToString().Trim());
    }

    /// <summary>True for marks that reorder text, and for line ends that no keyboard writes: they could make a report read other than it was written.</summary>
    internal static bool IsDirectionMark(int value) =>
        value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0x200E or 0x200F or 0x061C or 0x2028 or 0x2029;

    /// <summary>At the start of a line a dash, or a number with a point, would begin a list.</summary>
    private static string NoListMark(string text)
    {
        int digits = 0;
        while (digits < text.Length && char.IsAsciiDigit(text[digits]))
        {
            digits++;
        }

        return text.StartsWith('-') ? "\\" + text : digits > 0 && digits < text.Length && text[digits] == '.' && (digits + 1 == text.Length || text[digits + 1] == ' ') ? text.Insert(digits, "\\") : text;
    }

    // Some marks mean something anywhere, others only where a line begins.
    private static bool Special(char c, bool first) =>
        "\\`*_[]<>|&~$".Contains(c, StringComparison.Ordinal) || (first && "#+-=>!{:.)".Contains(c, StringComparison.Ordinal));

    public void Heading(int level, string title) => Block(new string('#', level) + " " + title);

    public void Paragraph(string markdown) => Block(markdown);

    public void Bullets(IEnumerable<string> items, bool numbered = false)
    {
        int number = 1;
        bool any = false;
        foreach (string item in items)
        {
            text.Append(numbered ? $"{number++}. " : "- ").Append(item).Append('\n');
            any = true;
        }

        if (any)
        {
            text.Append('\n');
        }
    }

    public void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        text.Append("| ").AppendJoin(" | ", head).Append(" |\n|").Append(string.Concat(head.Select(_ => " --- |"))).Append('\n');
        foreach (IReadOnlyList<string> row in rows)
        {
            text.Append("| ").AppendJoin(" | ", row.Select(c => c.Length == 0 ? " " : c)).Append(" |\n");
        }

        text.Append('\n');
    }

    public override string ToString() => text.ToString().TrimEnd('\n') + "\n";

    private void Block(string markdown) => text.Append(markdown).Append("\n\n");
}
