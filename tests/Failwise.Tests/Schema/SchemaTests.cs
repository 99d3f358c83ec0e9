using System.Text.Json;
using System.Text.Json.Nodes;
using Failwise.Cases;
using Failwise.Cli;
using Failwise.Problems;
using Failwise.Reports;
using Failwise.Yaml;
using Json.Schema;

namespace Failwise.Tests.Schema;

public sealed class SchemaTests
{
    private static readonly Dictionary<string, JsonSchema> Schemas = SchemaFiles.All().ToDictionary(s => s.Key, s => JsonSchema.FromText(s.Value), StringComparer.Ordinal);

    [Fact]
    public void The_committed_schemas_are_what_the_reader_checks_against()
    {
        SchemaFiles.All().Should().HaveCountGreaterThan(7);
        foreach ((string name, string text) in SchemaFiles.All())
        {
            File.ReadAllText(Repository.Folder("docs", "schema", name)).Should().Be(text, because: "run: failwise rules schema docs/schema");
        }
    }

    [Theory]
    [InlineData("patterns", "pattern.schema.json")]
    [InlineData("findings", "finding.schema.json")]
    [InlineData("causes", "cause.schema.json")]
    [InlineData("work", "work.schema.json")]
    [InlineData("decisions", "decision.schema.json")]
    [InlineData("downstream", "downstream.schema.json")]
    [InlineData("sheets", "sheet.schema.json")]
    [InlineData("parts", "part.schema.json")]
    [InlineData("history", "history.schema.json")]
    [InlineData("symptoms", "symptom.schema.json")]
    [InlineData("sources", "source.schema.json")]
    public void An_editor_accepts_every_shipped_file(string folder, string schema)
    {
        string[] files = [.. Directory.EnumerateFiles(Repository.Folder("rules", folder), "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
        files.Should().NotBeEmpty();
        files.Where(f => !Accepts(schema, f)).Select(Path.GetFileName).Should().BeEmpty();
    }

    [Fact]
    public void An_editor_accepts_every_example_and_refuses_a_case_with_a_wrong_key()
    {
        foreach (string folder in Directory.EnumerateDirectories(Repository.Folder("examples")))
        {
            Accepts("case.schema.json", Path.Combine(folder, "case.yaml")).Should().BeTrue(because: folder);
        }

        AcceptsText("case.schema.json", "title: x\nmachine: {kind: engine}\nobservatons: []\n").Should().BeFalse();
        AcceptsText("case.schema.json", "title: x\nmachine: {kind: engine}\nobservations: [{part: a, see: b, extent: hevy}]\n").Should().BeFalse();
    }

    [Fact]
    public void The_json_report_keeps_to_its_schema()
    {
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Repository.Folder("docs", "schema", "diagnosis.schema.json")));
        CaseReading reading = CaseReader.Read(Repository.Knowledge, Repository.Folder("examples", "pump-engine"));

        JsonElement report = JsonDocument.Parse(JsonReport.Write(Diagnostician.Diagnose(Repository.Knowledge, reading.Case!))).RootElement;

        schema.Evaluate(report).IsValid.Should().BeTrue();
        report.GetProperty("causes").GetArrayLength().Should().BeGreaterThan(1);
    }

    private static bool Accepts(string schema, string file) => AcceptsText(schema, File.ReadAllText(file));

    private static bool AcceptsText(string schema, string yaml)
    {
        JsonNode json = ToJson(YamlFile.Parse(yaml, "file", new ProblemList())!)!;
        return Schemas[schema].Evaluate(JsonDocument.Parse(json.ToJsonString()).RootElement).IsValid;
    }

    private static JsonNode? ToJson(Node node) => node switch
    {
        ListNode list => new JsonArray([.. list.Items.Select(ToJson)]),
        MapNode map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, ToJson(e.Value)))),
        ScalarNode { Quoted: false } scalar when Numbers.TryParse(scalar.Text, out double number) => JsonValue.Create(number),
        ScalarNode scalar => JsonValue.Create(scalar.Text),
        _ => null,
    };
}
