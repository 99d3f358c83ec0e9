using System.Text.Json;
using System.Text.Json.Nodes;

namespace Failwise.Tests.Calculations;

/// <summary>One published check value: where it comes from and the runs that must agree with it.</summary>
internal sealed record PublishedValue(string Id, string Title, string Status, JsonObject Source, IReadOnlyList<JsonObject> Checks, string Reason)
{
    private static readonly Lazy<IReadOnlyList<PublishedValue>> Loaded = new(Load);

    public static IReadOnlyList<PublishedValue> All => Loaded.Value;

    private static List<PublishedValue> Load()
    {
        using var file = File.OpenRead(CalculationFiles.PublishedValues);
        return [.. JsonNode.Parse(file)!.AsArray().Select(node => FromJson(node!.AsObject()))];
    }

    private static PublishedValue FromJson(JsonObject node) => new(
        (string)node["id"]!,
        (string)node["title"]!,
        (string)node["status"]!,
        node["source"]!.AsObject(),
        [.. (node["checks"]?.AsArray() ?? []).Select(check => check!.AsObject())],
        (string?)node["reason"] ?? "");
}
