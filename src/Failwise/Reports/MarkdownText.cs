using System.Text;

namespace Failwise.Reports;

/// <summary>Writes Markdown in which nothing that a person typed can act as Markdown or HTML.</summary>
internal sealed class MarkdownText
{
    private readonly StringBuilder text = new();

    /// <summary>Free text made harmless: one line, every character that means something to Markdown or HTML escaped.</summary>
    public static string Safe(string free)
    {
        // Trimmed before anything else: what stands first decides whether it would begin a heading or a list.
        string line = OneLine(free);
        StringBuilder safe = new(line.Length + 8);
        int number = NumberLength(line);
        for (int i = 0; i < line.Length; i++)
        {
            safe.Append(Special(line[i], i == 0) || (number > 0 && i == number) ? "\\" : "").Append(line[i]);
        }

        return safe.ToString();
    }

    /// <summary>The text on one line, without control characters, half letters and marks that reorder text.</summary>
    internal static string OneLine(string free) =>
        string.Concat(free.EnumerateRunes().Select(r => Rune.IsControl(r) || IsDirectionMark(r.Value) ? " " : r.ToString())).Trim();

    /// <summary>True for marks that reorder text, and for line ends that no keyboard writes: they could make a report read other than it was written.</summary>
    internal static bool IsDirectionMark(int value) =>
        value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0x200E or 0x200F or 0x061C or 0x2028 or 0x2029;

    /// <summary>Digits at the start whose point or bracket would begin a numbered list; 0 when there is no such thing.</summary>
    private static int NumberLength(string line)
    {
        int digits = 0;
        while (digits < line.Length && char.IsAsciiDigit(line[digits]))
        {
            digits++;
        }

        bool begins = digits > 0 && digits < line.Length && line[digits] is '.' or ')' && (digits + 1 == line.Length || line[digits + 1] == ' ');
        return begins ? digits : 0;
    }

    // Some marks mean something anywhere, others only where a line begins.
    private static bool Special(char c, bool first) =>
        "\\`*_[]<>|&~$".Contains(c, StringComparison.Ordinal) || (first && "#+-=>!{:.)".Contains(c, StringComparison.Ordinal));

    public void Heading(int level, string title) => Block(new string('#', level) + " " + title);

    public void Paragraph(string markdown)
    {
        if (markdown.Length > 0)
        {
            Block(markdown);
        }
    }

    /// <summary>A picture with its caption; the alternative text is free text.</summary>
    public void Figure(string alt, string address, string caption) => Block($"![{Safe(alt)}](<{address}>)\\\n*{caption}*");

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
