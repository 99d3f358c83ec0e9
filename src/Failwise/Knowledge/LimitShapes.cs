using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>The form of a limit file: a shop's own, and the shipped tables under rules/limits.</summary>
internal static class LimitShapes
{
    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Sentence = new TextShape("a sentence");
    private static readonly Shape Value = new TextShape("a value with its unit, such as 57.94 mm");

    /// <summary>The size of a new part: one value, or the span it may lie in.</summary>
    public static readonly Shape New = new EitherShape(
    [
        Value,
        new GroupShape("the size of a new part", null, new("min", Value, false, "Least value of a new part."), new("max", Value, false, "Most value of a new part.")),
    ]);

    private static readonly GroupShape Row = new("a limit", null,
        new("part", Word, true, "The part."),
        new("quantity", Word, true, "What is limited: diameter, taper, out-of-round, bearing-clearance ..."),
        new("min", Value, false, "Least value a part in use may have."),
        new("max", Value, false, "Most value a part in use may have."),
        new("new", New, false, "The size of a new part."),
        new("from", Sentence, false, "Where this row comes from, when not from the source of the whole file."));

    private static readonly Field[] Common =
    [
        new("title", Sentence, true, "Which machine the limits belong to."),
        new("from", Sentence, true, "Where they come from: the maker's manual and its edition."),
        new("limits", new ListShape(Row, false), true, "The limits, one line each."),
    ];

    /// <summary>A shop's own limit file.</summary>
    public static readonly GroupShape File = new("a limit file", null, Common);

    /// <summary>A shipped table: an example with its published source.</summary>
    public static readonly GroupShape Shipped = new("a table of example limits", null,
    [
        new("id", new TextShape("an id in kebab-case", "^[a-z0-9]+(-[a-z0-9]+)*$"), true, "Its id, the same as the file name."),
        .. Common,
        new("sources", RuleShapes.SourceRefs, true, "Where this comes from."),
    ]);
}
