using System.Text.Json;
using System.Text.Json.Nodes;
using Failwise.Problems;
using Failwise.Tests.Invalid;
using Failwise.Yaml;
using Json.Schema;

namespace Failwise.Tests.Schema;

/// <summary>What the reader accepts an editor accepts, and what it refuses for its form the editor refuses too.</summary>
public sealed class BrokenFileSchemaTests
{
    [Fact]
    public void Every_example_and_published_case_fits_the_case_schema()
    {
        JsonSchema form = Load("case");
        string[] files = [.. Directory.GetFiles(Repository.Folder("examples"), "case.yaml", SearchOption.AllDirectories), .. Directory.GetFiles(Repository.Folder("tests", "cases"), "case.yaml", SearchOption.AllDirectories)];

        files.Should().HaveCountGreaterThan(10);
        files.Where(f => !Fits(form, f)).Should().BeEmpty();
    }

    [Theory]
    [InlineData("several-at-once.yaml")]
    [InlineData("numbers.yaml")]
    [InlineData("a-list.yaml")]
    public void A_case_of_the_wrong_form_does_not_fit(string name) =>
        Fits(Load("case"), Path.Combine(ExpectedProblems.CaseFolder, name)).Should().BeFalse();

    [Theory]
    [InlineData("cause", "strengths/causes/tests/pump-worn.yaml")]
    [InlineData("finding", "conditions/findings/tests/spread.yaml")]
    [InlineData("part", "twins/parts/more.yaml")]
    [InlineData("symptom", "twins/symptoms/more.yaml")]
    [InlineData("work", "work-forms/work/tests/renew-pump.yaml")]
    [InlineData("decision", "work-forms/decisions/pump.yaml")]
    public void A_rule_of_the_wrong_form_does_not_fit(string schema, string name) =>
        Fits(Load(schema), Path.Combine(ExpectedProblems.RuleFolder, name)).Should().BeFalse();

    private static JsonSchema Load(string name) => JsonSchema.FromText(File.ReadAllText(Repository.Folder("docs", "schema", name + ".schema.json")), new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    private static bool Fits(JsonSchema schema, string path)
    {
        ProblemList problems = new();
        Node root = YamlFile.Read(path, path, problems)!;
        using JsonDocument json = JsonDocument.Parse(AsJson(root)!.ToJsonString());
        return schema.Evaluate(json.RootElement).IsValid;
    }

    /// <summary>The node as an editor's YAML reader sees it: bare numbers and truth values are no text.</summary>
    private static JsonNode? AsJson(Node node) => node switch
    {
        ListNode list => new JsonArray([.. list.Items.Select(AsJson)]),
        MapNode map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, AsJson(e.Value)))),
        ScalarNode { Quoted: false, Text: "true" or "false" } flag => JsonValue.Create(flag.Text == "true"),
        ScalarNode { Quoted: false } bare when Numbers.TryParse(bare.Text, out double number) => JsonValue.Create(number),
        ScalarNode text => JsonValue.Create(text.Text),
        _ => null,
    };
}
