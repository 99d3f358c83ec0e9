using System.Globalization;
using System.Text.Json.Nodes;
using Failwise.Problems;

namespace Failwise.Yaml;

/// <summary>
/// What a YAML value must look like. One declaration serves the reader's check and the editor's JSON Schema, so the two cannot drift.
/// </summary>
internal abstract record Shape
{
    /// <summary>Words for a problem message: "a number", "a list".</summary>
    public abstract string Expected { get; }

    public abstract void Check(Node node, ProblemList problems);

    public abstract JsonObject Schema();

    /// <summary>True when the node is of the right outer form, so that an alternative can be chosen before its inside is checked.</summary>
    public abstract bool Fits(Node node);

    public Shape OrList => new EitherShape([this, new ListShape(this)]);

    protected void Mismatch(Node node, ProblemList problems) =>
        problems.Error("FW007", node.At, $"{Describe(node)} stands here; expected {Expected}.");

    protected static string Describe(Node node) => node switch
    {
        ScalarNode { Text.Length: 0 } => "nothing",
        ScalarNode scalar => $"'{Short(scalar.Text)}'",
        ListNode => "a list",
        _ => "a group of keys",
    };

    internal static string Short(string text, int most = 90)
    {
        string line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= most ? line : line[..(most - 3)] + "...";
    }
}

/// <summary>Free text or a word that is looked up later.</summary>
internal sealed record TextShape(string What = "text", string? Pattern = null) : Shape
{
    public override string Expected => What;

    public override bool Fits(Node node) => node is ScalarNode;

    public override void Check(Node node, ProblemList problems)
    {
        if (node is not ScalarNode scalar)
        {
            Mismatch(node, problems);
        }
        else if (scalar.Text.Trim().Length == 0)
        {
            problems.Error("FW007", node.At, $"nothing stands here; expected {What}.");
        }
        else if (Pattern is not null && !System.Text.RegularExpressions.Regex.IsMatch(scalar.Text, Pattern))
        {
            problems.Error("FW007", node.At, $"'{Short(scalar.Text)}' is not {What}.");
        }
    }

    public override JsonObject Schema()
    {
        JsonObject schema = new() { ["type"] = new JsonArray("string", "number", "boolean"), ["description"] = What };
        if (Pattern is not null)
        {
            schema["pattern"] = Pattern;
        }

        return schema;
    }
}

/// <summary>One of a few fixed words.</summary>
internal sealed record ChoiceShape(params string[] Words) : Shape
{
    public override string Expected => "one of: " + string.Join(", ", Words);

    public override bool Fits(Node node) => node is ScalarNode;

    public override void Check(Node node, ProblemList problems)
    {
        if (node is not ScalarNode scalar)
        {
            Mismatch(node, problems);
        }
        else if (!Words.Contains(scalar.Text, StringComparer.Ordinal))
        {
            string hint = Suggest.BestMatch(scalar.Text, Words) is { } best ? $" Did you mean '{best}'?" : "";
            problems.Error("FW008", node.At, $"'{Short(scalar.Text)}' is not allowed here.{hint} Allowed: {string.Join(", ", Words)}.");
        }
    }

    // An editor reads a bare true or false as a truth value, not as a word.
    public override JsonObject Schema() => new()
    {
        ["enum"] = new JsonArray([.. Words.Select(w => JsonValue.Create(w)), .. Words.Where(w => w is "true" or "false").Select(w => JsonValue.Create(w == "true"))]),
    };
}

/// <summary>A number with its range.</summary>
internal sealed record NumberShape(double Least, double Most) : Shape
{
    public override string Expected => $"a number from {Least} to {Most}";

    public override bool Fits(Node node) => node is ScalarNode;

    public override void Check(Node node, ProblemList problems)
    {
        if (node is not ScalarNode scalar)
        {
            Mismatch(node, problems);
            return;
        }

        if (Numbers.HasCommaDecimal(scalar.Text))
        {
            problems.Error("FW011", node.At, Numbers.SayComma(scalar.Text));
        }
        else if (!Numbers.TryParse(scalar.Text, out double value))
        {
            problems.Error("FW009", node.At, $"'{Short(scalar.Text)}' is not a number; expected {Expected}.");
        }
        else if (value < Least || value > Most)
        {
            problems.Error("FW009", node.At, $"{scalar.Text} is out of range; expected {Expected}.");
        }
    }

    public override JsonObject Schema() => new() { ["type"] = "number", ["minimum"] = Least, ["maximum"] = Most };
}

/// <summary>How often: a strength word, a count such as <c>1 in 50</c>, or a number between 0 and 1.</summary>
internal sealed record ChanceShape : Shape
{
    public override string Expected => $"how often: {string.Join(", ", Chances.Words.Keys)}, a count such as '1 in 50', or a number between 0 and 1";

    public override bool Fits(Node node) => node is ScalarNode;

    public override void Check(Node node, ProblemList problems)
    {
        if (node is not ScalarNode scalar)
        {
            Mismatch(node, problems);
        }
        else if (Numbers.HasCommaDecimal(scalar.Text))
        {
            problems.Error("FW011", node.At, Numbers.SayComma(scalar.Text));
        }
        else if (!Chances.TryParse(scalar.Text, out _))
        {
            string hint = Suggest.BestMatch(scalar.Text, Chances.Words.Keys) is { } best ? $" Did you mean '{best}'?" : "";
            problems.Error("FW010", node.At, $"'{Short(scalar.Text)}' does not say how often.{hint} Expected {Expected}.");
        }
    }

    public override JsonObject Schema() => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["enum"] = new JsonArray([.. Chances.Words.Keys.Select(w => JsonValue.Create(w))]) },
            new JsonObject { ["type"] = "string", ["pattern"] = "^[0-9]+(\\.[0-9]+)? in [0-9]+$" },
            new JsonObject { ["type"] = "number", ["minimum"] = 0, ["maximum"] = 1 }),
    };
}

/// <summary>A list.</summary>
/// <param name="MayBeBegun">True when the bare key may stand there with nothing under it yet.</param>
internal sealed record ListShape(Shape Item, bool MayBeEmpty = true, bool MayBeBegun = false) : Shape
{
    public override string Expected => "a list";

    public override bool Fits(Node node) => node is ListNode;

    public override void Check(Node node, ProblemList problems)
    {
        if (MayBeBegun && node is ScalarNode { Text.Length: 0, Quoted: false })
        {
            return;
        }

        if (node is not ListNode list)
        {
            Mismatch(node, problems);
            return;
        }

        if (!MayBeEmpty && list.Items.Count == 0)
        {
            problems.Error("FW006", node.At, "the list is empty; write at least one item.");
        }

        foreach (Node item in list.Items)
        {
            Item.Check(item, problems);
        }
    }

    public override JsonObject Schema()
    {
        JsonObject schema = new() { ["type"] = MayBeBegun ? new JsonArray("array", "null") : "array", ["items"] = Item.Schema() };
        if (!MayBeEmpty)
        {
            schema["minItems"] = 1;
        }

        return schema;
    }
}

/// <summary>One of several forms, told apart by their outer form.</summary>
internal sealed record EitherShape(IReadOnlyList<Shape> Forms) : Shape
{
    public override string Expected => string.Join(" or ", Forms.Select(f => f.Expected));

    public override bool Fits(Node node) => Forms.Any(f => f.Fits(node));

    public override void Check(Node node, ProblemList problems)
    {
        if (Forms.FirstOrDefault(f => f.Fits(node)) is { } form)
        {
            form.Check(node, problems);
        }
        else
        {
            Mismatch(node, problems);
        }
    }

    public override JsonObject Schema() => new() { ["anyOf"] = new JsonArray([.. Forms.Select(f => f.Schema())]) };
}

/// <summary>A key of a group: its form, whether it must be there, and a line of help for the editor.</summary>
internal sealed record Field(string Key, Shape Shape, bool Required, string Says);

/// <summary>A group of known keys. <paramref name="Anchor"/> is a key that tells this form from its alternatives.</summary>
internal sealed record GroupShape(string Name, string? Anchor, params Field[] Fields) : Shape
{
    public override string Expected => $"{Name} ({string.Join(", ", Fields.Where(f => f.Required).Select(f => f.Key + ":").DefaultIfEmpty("keys"))})";

    public override bool Fits(Node node) => node is MapNode map && (Anchor is null || map[Anchor] is not null);

    public override void Check(Node node, ProblemList problems)
    {
        if (node is not MapNode map)
        {
            Mismatch(node, problems);
            return;
        }

        string[] known = [.. Fields.Select(f => f.Key)];
        foreach (MapEntry entry in map.Entries)
        {
            if (Array.Find(Fields, f => f.Key == entry.Key.Text) is { } field)
            {
                field.Shape.Check(entry.Value, problems);
            }
            else
            {
                string hint = Suggest.BestMatch(entry.Key.Text, known) is { } best ? $" Did you mean '{best}'?" : $" Known here: {string.Join(", ", known)}.";
                problems.Error("FW005", entry.Key.At, $"unknown key '{Short(entry.Key.Text)}' in {Name}.{hint}");
            }
        }

        foreach (Field field in Fields.Where(f => f.Required && map[f.Key] is null))
        {
            problems.Error("FW006", map.At, $"{Name} needs the key '{field.Key}': {field.Says}");
        }
    }

    public override JsonObject Schema()
    {
        JsonObject properties = [];
        foreach (Field field in Fields)
        {
            JsonObject schema = field.Shape.Schema();
            schema["description"] = field.Says;
            properties[field.Key] = schema;
        }

        JsonObject result = new() { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = properties };
        if (Fields.Any(f => f.Required))
        {
            result["required"] = new JsonArray([.. Fields.Where(f => f.Required).Select(f => JsonValue.Create(f.Key))]);
        }

        return result;
    }
}

/// <summary>A group whose keys the author chooses, all with values of one form.</summary>
internal sealed record OpenGroupShape(Shape Value) : Shape
{
    public override string Expected => "keys with " + Value.Expected;

    public override bool Fits(Node node) => node is MapNode;

    public override void Check(Node node, ProblemList problems)
    {
        if (node is not MapNode map)
        {
            Mismatch(node, problems);
            return;
        }

        foreach (MapEntry entry in map.Entries)
        {
            Value.Check(entry.Value, problems);
        }
    }

    public override JsonObject Schema() => new() { ["type"] = "object", ["additionalProperties"] = Value.Schema() };
}

/// <summary>A form that contains itself, such as a condition made of conditions.</summary>
internal sealed record LazyShape(string Name, Func<Shape> Inner) : Shape
{
    public override string Expected => Name;

    public override bool Fits(Node node) => Inner().Fits(node);

    public override void Check(Node node, ProblemList problems) => Inner().Check(node, problems);

    public override JsonObject Schema() => new() { ["$ref"] = "#/$defs/" + Name };
}

internal static class Numbers
{
    public static bool TryParse(string text, out double value) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value)
        && double.IsFinite(value);

    /// <summary>The message for a comma. Three figures after it may have been meant as thousands, so both ways to write it are named.</summary>
    public static string SayComma(string text)
    {
        string number = text.Split(' ')[0], decimals = number[(number.IndexOf(',', StringComparison.Ordinal) + 1)..];
        string thousands = decimals.Length == 3 ? $", or {number.Replace(",", "", StringComparison.Ordinal)} if thousands were meant" : "";
        return $"'{Shape.Short(text)}' has a comma: write {number.Replace(',', '.')}{thousands}.";
    }

    public static bool HasCommaDecimal(string text)
    {
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        return comma > 0 && comma == text.LastIndexOf(',') && TryParse(text.Replace(',', '.').Split(' ')[0], out _);
    }
}

internal static class Chances
{
    /// <summary>Strength words with their numbers. Source: judgement, spaced by about equal steps of log odds.</summary>
    public static readonly IReadOnlyDictionary<string, double> Words = new Dictionary<string, double>(StringComparer.Ordinal)
    {
        ["always"] = 0.98, ["nearly-always"] = 0.92, ["usually"] = 0.80, ["often"] = 0.65,
        ["half-the-time"] = 0.50, ["sometimes"] = 0.25, ["seldom"] = 0.10, ["rarely"] = 0.03,
    };

    public static bool TryParse(string text, out double chance)
    {
        if (Words.TryGetValue(text, out chance))
        {
            return true;
        }

        string[] parts = text.Split(" in ");
        if (parts.Length == 2 && Numbers.TryParse(parts[0], out double n) && Numbers.TryParse(parts[1], out double m) && n >= 0 && m >= 1 && n <= m)
        {
            chance = n / m;
            return true;
        }

        return Numbers.TryParse(text, out chance) && chance is >= 0 and <= 1;
    }
}
