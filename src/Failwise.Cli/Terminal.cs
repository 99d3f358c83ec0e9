using Failwise.Dialogue;

namespace Failwise.Cli;

/// <summary>The terminal as it is: its size, its letters, and whether it can be painted or only written to.</summary>
internal sealed class Terminal
{
    private const string Home = "\e[H", ClearRight = "\e[K", ClearBelow = "\e[J", Strong = "\e[1m", Faint = "\e[2m", Plain = "\e[0m";
    private const int UsualWidth = 80, UsualHeight = 24;
    private readonly bool bright;
    private string shown = "";

    public Terminal(bool ascii)
    {
        string term = Environment.GetEnvironmentVariable("TERM") ?? "";
        CanPaint = OperatingSystem.IsWindows() || term is not ("" or "dumb");
        bright = CanPaint && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        Ascii = ascii || !SpeaksUtf8();
    }

    /// <summary>False for a terminal that knows no cursor: it is written to line by line.</summary>
    public bool CanPaint { get; }

    public bool Ascii { get; }

    public static bool IsThere => !Console.IsInputRedirected && !Console.IsOutputRedirected;

    public static (int Width, int Height) Size()
    {
        try
        {
            return (Console.WindowWidth > 0 ? Console.WindowWidth : UsualWidth, Console.WindowHeight > 0 ? Console.WindowHeight : UsualHeight);
        }
        catch (IOException)
        {
            return (UsualWidth, UsualHeight);
        }
    }

    public void Clear()
    {
        if (CanPaint)
        {
            Console.Out.Write("\e[2J" + Home);
        }
    }

    /// <summary>Shows the screen; nothing is sent when nothing changed.</summary>
    public void Show(Screen screen)
    {
        (int width, int height) = Size();
        if (!CanPaint)
        {
            Console.Out.WriteLine();
            foreach (ScreenLine line in ScreenText.Lay(screen, Math.Min(width, UsualWidth) - 1, 0, Ascii).SkipLast(1))
            {
                Console.Out.WriteLine(line.Text);
            }

            Console.Out.Write("> ");
            Console.Out.Flush();
            return;
        }

        IReadOnlyList<ScreenLine> lines = ScreenText.Lay(screen, width, height - 1, Ascii);
        // The cursor stays behind what was typed, at the end of the last line.
        string text = Home + string.Join("\r\n", lines.Select((l, i) => Painted(l) + (l.Text.Length < width ? ClearRight : ""))) + ClearBelow;
        if (text != shown)
        {
            shown = text;
            Console.Out.Write(text);
            Console.Out.Flush();
        }
    }

    public void Forget() => shown = "";

    private string Painted(ScreenLine line) => !bright || line.Weight == Weight.Plain ? line.Text : (line.Weight == Weight.Strong ? Strong : Faint) + line.Text + Plain;

    private static bool SpeaksUtf8()
    {
        if (OperatingSystem.IsWindows())
        {
            return Console.OutputEncoding.CodePage == 65001;
        }

        string locale = new[] { "LC_ALL", "LC_CTYPE", "LANG" }.Select(Environment.GetEnvironmentVariable).FirstOrDefault(v => !string.IsNullOrEmpty(v)) ?? "";
        return locale.Contains("UTF-8", StringComparison.OrdinalIgnoreCase) || locale.Contains("utf8", StringComparison.OrdinalIgnoreCase);
    }
}
