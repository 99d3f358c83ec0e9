using Failwise.Problems;

namespace Failwise.Yaml;

/// <summary>Short ways to take values out of nodes whose shape has been checked.</summary>
internal static class NodeReading
{
    public static string? Text(this MapNode map, string key) => map[key] is ScalarNode scalar ? scalar.Text.Trim() : null;

    public static bool Flag(this MapNode map, string key) => map.Text(key) is "true";

    /// <summary>The scalars under a key, whether one is written or a list.</summary>
    public static IReadOnlyList<ScalarNode> Scalars(this MapNode map, string key) => map[key] switch
    {
        ScalarNode one => [one],
        ListNode list => [.. list.Items.OfType<ScalarNode>()],
        _ => [],
    };

    public static IReadOnlyList<string> Texts(this MapNode map, string key) => [.. map.Scalars(key).Select(s => s.Text.Trim())];

    /// <summary>The groups under a key, whether one is written or a list.</summary>
    public static IReadOnlyList<MapNode> Groups(this MapNode map, string key) => map[key].AsGroups();

    public static IReadOnlyList<MapNode> AsGroups(this Node? node) => node switch
    {
        MapNode one => [one],
        ListNode list => [.. list.Items.OfType<MapNode>()],
        _ => [],
    };

    /// <summary>The values under a key, whether one is written or a list.</summary>
    public static IReadOnlyList<Node> Items(this MapNode map, string key) => map[key] switch
    {
        null or ScalarNode { Text.Length: 0, Quoted: false } => [],
        ListNode list => list.Items,
        Node one => [one],
    };

    public static double? Number(this MapNode map, string key) =>
        map.Text(key) is { } text && Numbers.TryParse(text, out double value) ? value : null;

    public static double? Chance(this MapNode map, string key) =>
        map.Text(key) is { } text && Chances.TryParse(text, out double value) ? value : null;

    public static Location PlaceOf(this MapNode map, string key) => map[key]?.At ?? map.At;
}
