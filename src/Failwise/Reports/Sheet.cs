using System.Text;

namespace Failwise.Reports;

/// <summary>A short sheet of headings, items and their details, for the screen or as Markdown.</summary>
internal sealed class Sheet(bool markdown)
{
    private const int Width = 98;
    private readonly StringBuilder text = new();

    public void Title(string title) => Line(markdown ? "# " + Safe(title) : Safe(title));

    public void Heading(string heading)
    {
        Line("");
        if (markdown)
        {
            Line($"## {Safe(heading)}\n");
        }
        else
        {
            Wrap(heading.ToUpperInvariant(), "", "  ");
        }
    }

    public void Item(string item)
    {
        if (markdown)
        {
            Line("- " + Safe(item));
        }
        else
        {
            Wrap(item, "  ", "     ");
        }
    }

    public void Sub(string detail)
    {
        if (markdown)
        {
            Line("  - " + Safe(detail));
        }
        else
        {
            Wrap(detail, "     ", "             ");
        }
    }

    public void Table(string[] heads, IReadOnlyList<string[]> rows)
    {
        if (markdown)
        {
            Line($"| {string.Join(" | ", heads)} |\n|{string.Concat(heads.Select(_ => " --- |"))}");
            foreach (string[] row in rows)
            {
                Line($"| {string.Join(" | ", row.Select(Safe))} |");
            }

            Line("");
            return;
        }

        foreach (string[] row in rows.Prepend(heads))
        {
            Line($"  {row[0],-58} {row[1],6}  {row[2]}".TrimEnd());
        }
    }

    public override string ToString() => text.ToString();

    private void Line(string line) => text.Append(line).Append('\n');

    private string Safe(string free)
    {
        string clean = string.Concat(free.Select(c => char.IsControl(c) || MarkdownText.IsDirectionMark(c) ? ' ' : c));
        return markdown ? MarkdownText.Safe(free) : clean;
    }

    private void Wrap(string said, string first, string further)
    {
        string line = first;
        bool empty = true;
        foreach (string word in Safe(said).Split(' '))
        {
            if (!empty && line.Length + 1 + word.Length > Width)
            {
                Line(line.TrimEnd());
                line = further;
                empty = true;
            }

            line += (empty ? "" : " ") + word;
            empty = false;
        }

        Line(line.TrimEnd());
    }
}
