using System.Text.Json.Nodes;
using Failwise.Calculations;
using Failwise.Units;

namespace Failwise.Tests.Calculations;

public class PublishedValueTests
{
    public static TheoryData<string> Ids => new(PublishedValue.All.Select(value => value.Id));

    [Theory]
    [MemberData(nameof(Ids))]
    public void Agrees_with_the_published_value(string id)
    {
        var value = PublishedValue.All.Single(entry => entry.Id == id);
        foreach (var check in value.Checks)
            Verify(id, check);
    }

    [Fact]
    public void Every_published_id_is_accounted_for_just_once()
    {
        var ids = File.ReadAllLines(CalculationFiles.PublishedIds).Where(line => line.Length > 0).ToList();

        ids.Should().HaveCount(230).And.OnlyHaveUniqueItems();
        PublishedValue.All.Select(value => value.Id).Should().BeEquivalentTo(ids);
    }

    [Fact]
    public void Every_published_value_is_tested_or_listed_with_a_reason()
    {
        foreach (var value in PublishedValue.All)
        {
            value.Status.Should().BeOneOf(["tested", "negative", "listed"], because: value.Id);
            (value.Status == "listed" ? value.Reason.Length > 0 : value.Checks.Count > 0).Should().BeTrue(because: value.Id);
            ((string?)value.Source["title"]).Should().NotBeNullOrWhiteSpace(because: value.Id);
        }
    }

    [Fact]
    public void Every_negative_value_refuses_or_contradicts_something()
    {
        foreach (var value in PublishedValue.All.Where(value => value.Status == "negative"))
            value.Checks.Should().Contain(check => check["not"] != null || check["refuses"] != null || check["slip"] != null || check["basis"] != null, because: value.Id);
    }

    private static void Verify(string id, JsonObject check)
    {
        if (check["convert"] is { } text)
            VerifyConversion(id, (string)text!, check);
        else if (check["slip"] is not null)
            SlipDetector.LimitInsideNew(Read((string)check["first"]!), Read((string)check["second"]!)).Should().NotBeNull(because: id);
        else
            VerifyRun(id, check);
    }

    private static void VerifyConversion(string id, string text, JsonObject check) =>
        Read(text).In((string)check["to"]!).Should().BeApproximately((double)check["expected"]!["value"]!, (double)check["expected"]!["tolerance"]!, because: id);

    private static void VerifyRun(string id, JsonObject check)
    {
        var name = (string)check["calculation"]!;
        var calculation = CalculationCatalog.Find(name);
        calculation.Should().NotBeNull(because: $"{id} names '{name}'");
        var inputs = check["inputs"]!.AsObject().ToDictionary(pair => pair.Key, pair => (string)pair.Value!);
        var result = calculation!.Run(inputs);
        if (check["refuses"] is { } words)
        {
            result.Worked.Should().BeFalse(because: id);
            string.Join(' ', result.Problems).Should().Contain((string)words!, because: id);
            return;
        }
        result.Problems.Should().BeEmpty(because: id);
        result.Missing.Should().BeEmpty(because: id);
        foreach (var (output, expected) in check["expected"]?.AsObject() ?? [])
            VerifyNumber(id, result, output, expected!.AsObject(), wanted: true);
        foreach (var (output, wrong) in check["not"]?.AsObject() ?? [])
            VerifyNumber(id, result, output, wrong!.AsObject(), wanted: false);
        foreach (var (output, word) in check["words"]?.AsObject() ?? [])
            VerifyWord(id, result, output, (string)word!);
    }

    private static void VerifyNumber(string id, CalculationResult result, string output, JsonObject expected, bool wanted)
    {
        var value = result[output];
        value.Should().NotBeNull(because: $"{id}: {output}");
        var got = value!.In((string?)expected["unit"] ?? value.Output.Unit);
        var because = $"{id}: {output} (got {got:G8})";
        if (expected["atMost"] is { } most)
            got.Should().BeLessThanOrEqualTo((double)most, because);
        if (expected["atLeast"] is { } least)
            got.Should().BeGreaterThanOrEqualTo((double)least, because);
        if (expected["value"] is not { } figure)
            return;
        var target = (double)figure;
        var tolerance = (double?)expected["tolerance"] ?? Math.Abs(target) * (double)expected["relative"]!;
        (Math.Abs(got - target) <= tolerance).Should().Be(wanted, because: $"{because}, print {target:G8} within {tolerance:G3}");
    }

    private static void VerifyWord(string id, CalculationResult result, string output, string expected)
    {
        var text = result[output]?.Text;
        text.Should().NotBeNull(because: $"{id}: {output}");
        var list = text!.Split("; ").Select(part => part.Split(' ')[0]).ToList();
        if (expected[0] == '~')
            list.Should().Contain(expected[1..], because: id);
        else if (expected[0] == '!')
            list.Should().NotContain(expected[1..], because: id);
        else
            text.Should().Be(expected, because: id);
    }

    private static Quantity Read(string text) =>
        QuantityParser.TryParse(text, out var quantity, out var reason) ? quantity : throw new InvalidOperationException(reason);
}
