using System.Text;

namespace Failwise.Dialogue;

/// <summary>How a line stands out, by brightness only; words carry the meaning.</summary>
internal enum Weight { Plain, Strong, Faint }

/// <summary>A line of the terminal.</summary>
internal readonly record struct ScreenLine(string Text, Weight Weight);

/// <summary>Lays a screen out for a terminal of some size.</summary>
internal static class ScreenText
{
    private const int Narrowest = 20;

    /// <summary>Lines that fit the width; what explains the choices is shortened first when the height is short.</summary>
    /// <param name="width">Columns of the terminal.</param>
    /// <param name="height">Rows of the terminal; 0 when it scrolls.</param>
    /// <param name="ascii">True when the terminal shows nothing beyond ASCII.</param>
    public static IReadOnlyList<ScreenLine> Lay(Screen screen, int width, int height, bool ascii)
    {
        width = Math.Max(Narrowest, width);
        List<ScreenLine> lines = [];
        foreach (Room room in new[] { Room.Ample, Room.OneLine, Room.None })
        {
            lines = Lines(screen, width, ascii, room);
            if (height == 0 || lines.Count <= height)
            {
                break;
            }
        }

        if (height > 0 && lines.Count > height)
        {
            // The question and what is typed stand at the end and must be seen.
            lines = [.. lines.Skip(lines.Count - height)];
        }

        return lines;
    }

    /// <summary>How much room there is for what explains the choices.</summary>
    private enum Room { Ample, OneLine, None }

    private static List<ScreenLine> Lines(Screen screen, int width, bool ascii, Room room)
    {
        List<ScreenLine> lines = [];
        Add(screen.Title, Weight.Strong, cut: true);
        Add(screen.Status, Weight.Faint, cut: true);
        lines.Add(new(new string(ascii ? '-' : '─', width), Weight.Faint));
        foreach (string message in screen.Messages)
        {
            Add(message, Weight.Plain);
        }

        if (screen.Path.Length > 0)
        {
            Add(screen.Path, Weight.Strong);
        }

        foreach (string told in screen.Told)
        {
            Add(told, Weight.Plain);
        }

        foreach (Choice choice in screen.Choices)
        {
            string head = $"{(choice.IsDefault ? ">" : " ")}{choice.Key}  {choice.Says}";
            bool beside = room == Room.OneLine && choice.Detail is not null;
            Add(beside ? $"{head}: {choice.Detail}" : head, Weight.Strong, "    ", cut: beside);
            if (room == Room.Ample && choice.Detail is { } detail)
            {
                Add("    " + detail, Weight.Plain, "    ");
            }
        }

        Add(screen.Keys, Weight.Faint);
        Add(screen.Question, Weight.Strong);
        // What is being typed stays in sight at its end.
        string typed = Fit(screen.Typed, ascii);
        lines.Add(new("> " + (typed.Length > width - 3 ? typed[^(width - 3)..] : typed), Weight.Plain));
        return lines;

        void Add(string text, Weight weight, string indent = "", bool cut = false)
        {
            string fit = Fit(text, ascii);
            if (cut)
            {
                lines.Add(new(fit.Length > width ? fit[..width] : fit, weight));
                return;
            }

            lines.AddRange(Wrap(fit, width, indent).Select(l => new ScreenLine(l, weight)));
        }
    }

    /// <summary>Text that cannot move the cursor, ring the bell or reorder itself, whatever a case file holds.</summary>
    private static string Fit(string text, bool ascii)
    {
        StringBuilder fit = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            fit.Append(Rune.IsControl(rune) || Reports.MarkdownText.IsDirectionMark(rune.Value) ? " " : ascii && !rune.IsAscii ? Plain(rune) : rune.ToString());
        }

        return fit.ToString();
    }

    private static string Plain(Rune rune) => rune.Value switch
    {
        'µ' or 'μ' => "u", '°' => " deg", '×' => "x", '–' or '—' or '−' => "-", '’' or '‘' => "'", '“' or '”' => "\"", '…' => "...", _ => "?",
    };

    private static IEnumerable<string> Wrap(string text, int width, string indent)
    {
        string line = text;
        while (line.Length > width)
        {
            int cut = line.LastIndexOf(' ', width);
            cut = cut <= indent.Length + 4 ? width : cut;
            yield return line[..cut].TrimEnd();
            line = indent + line[cut..].TrimStart();
        }

        yield return line;
    }
}
