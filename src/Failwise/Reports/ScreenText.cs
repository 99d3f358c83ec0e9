using System.Text;

namespace Failwise.Reports;

/// <summary>Plain text for a screen, wrapped at words; what a person typed cannot move the cursor or turn the reading direction.</summary>
internal sealed class ScreenText
{
    private const int Width = 98;
    private readonly StringBuilder text = new();

    public void Heading(string title)
    {
        text.Append('\n').Append(Clean(title)).Append('\n');
    }

    /// <summary>One sentence; the following lines stand indented under the first.</summary>
    public void Line(string sentence, string indent)
    {
        string line = indent;
        bool empty = true;
        foreach (string word in Clean(sentence).Split(' '))
        {
            if (!empty && line.Length + 1 + word.Length > Width)
            {
                text.Append(line.TrimEnd()).Append('\n');
                line = indent + "     ";
                empty = true;
            }

            line += (empty ? "" : " ") + word;
            empty = false;
        }

        text.Append(line.TrimEnd()).Append('\n');
    }

    public override string ToString() => text.ToString();

    private static string Clean(string free) => string.Concat(free.Select(c => char.IsControl(c) || MarkdownText.IsDirectionMark(c) ? ' ' : c));
}
