using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Pricing;
using Failwise.Yaml;

namespace Failwise.Cli;

/// <summary>Prints the JSON Schemas for editors from the same shapes that the reader checks against.</summary>
internal static class SchemaFiles
{
    private static readonly JsonWriterOptions Form = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Schema files by name, such as case.schema.json.</summary>
    public static IReadOnlyDictionary<string, string> All() => new SortedDictionary<string, string>(StringComparer.Ordinal)
    {
        ["case.schema.json"] = Print("A Failwise case", CaseShapes.Case),
        ["cause.schema.json"] = Print("A Failwise cause, or an extension of one", RuleShapes.Cause),
        ["finding.schema.json"] = Print("A Failwise finding", RuleShapes.Finding),
        ["pattern.schema.json"] = Print("A Failwise wear pattern", RuleShapes.Pattern),
        ["work.schema.json"] = Print("A Failwise piece of work", WorkShapes.Work),
        ["decision.schema.json"] = Print("A list of Failwise decisions about parts", new ListShape(WorkShapes.Decision)),
        ["downstream.schema.json"] = Print("A list of what lies downstream of a damage", new ListShape(WorkShapes.Downstream)),
        ["sheet.schema.json"] = Print("A list of lines of the close-up, first-start and follow-up sheets", new ListShape(WorkShapes.Sheet)),
        ["limits.schema.json"] = Print("A shop's own limits", LimitShapes.File),
        ["part.schema.json"] = Print("A list of Failwise parts", new ListShape(RuleShapes.Part)),
        ["history.schema.json"] = Print("A list of Failwise circumstances", new ListShape(RuleShapes.Circumstance)),
        ["symptom.schema.json"] = Print("A list of Failwise symptoms", new ListShape(RuleShapes.Symptom)),
        ["codes.schema.json"] = Print("A list of Failwise short codes", new ListShape(RuleShapes.ShortCode)),
        ["rates.schema.json"] = Print("A Failwise rate file", RatesReader.Form),
        ["question.schema.json"] = Print("A list of Failwise intake questions", new ListShape(CheckShapes.Question)),
        ["asked-of.schema.json"] = Print("A list of what Failwise asks of which machine", new ListShape(CheckShapes.AskedOf)),
        ["cover.schema.json"] = Print("A list of Failwise covers", new ListShape(CheckShapes.Cover)),
        ["source.schema.json"] = Print("A list of Failwise sources", new ListShape(RuleShapes.Source)),
    };

    private static string Print(string title, Shape shape)
    {
        JsonObject schema = new() { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = title };
        JsonObject body = shape.Schema();
        foreach ((string key, JsonNode? value) in body.ToArray())
        {
            body.Remove(key);
            schema[key] = value;
        }

        if (Refers(schema))
        {
            schema["$defs"] = new JsonObject { ["condition"] = RuleShapes.ConditionForms.Schema() };
        }

        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream, Form))
        {
            schema.WriteTo(writer);
        }

        return System.Text.Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static bool Refers(JsonNode? node) => node switch
    {
        JsonObject o => o.Any(p => p.Key == "$ref" || Refers(p.Value)),
        JsonArray a => a.Any(Refers),
        _ => false,
    };
}
