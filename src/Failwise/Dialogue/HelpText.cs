namespace Failwise.Dialogue;

/// <summary>The help page of the dialogue.</summary>
internal static class HelpText
{
    public static readonly IReadOnlyList<string> Lines =
    [
        "A digit takes the choice beside it. Letters search; Enter takes the first choice found.",
        "Whole entries can be typed where a part is asked for: MB3L wiped 4; MB1-2 ok; !oil pressure low",
        "Enter alone takes the choice marked >, or leaves the question open: not said is not the same as not there.",
        "Esc or < goes back one question. Ctrl-Z or undo takes back the last thing saved. q stops; all is saved.",
        "Write down the good parts too. Look before you clean.",
    ];
}
