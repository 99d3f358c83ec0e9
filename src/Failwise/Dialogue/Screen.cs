namespace Failwise.Dialogue;

/// <summary>Something to choose with one key.</summary>
/// <param name="Key">The key: 1 to 9 or 0.</param>
/// <param name="Detail">How to know it, in a sentence; null when plain.</param>
/// <param name="Take">What the choice leads to.</param>
/// <param name="IsDefault">True when Enter alone takes it.</param>
internal sealed record Choice(char Key, string Says, string? Detail, Func<Turn> Take, bool IsDefault = false);

/// <summary>What the person sees: no colours, no sizes, no terminal.</summary>
/// <param name="Title">The case.</param>
/// <param name="Status">How far it is.</param>
/// <param name="Messages">What just happened.</param>
/// <param name="Path">What is being entered, such as: main bearing shell 3, lower.</param>
/// <param name="Question">What is asked now.</param>
/// <param name="Told">What is known that bears on the question.</param>
/// <param name="Keys">What keys do besides the choices.</param>
internal sealed record Screen(
    string Title, string Status, IReadOnlyList<string> Messages, string Path, string Question, IReadOnlyList<string> Told, IReadOnlyList<Choice> Choices,
    string Typed, string Keys);
