using System.Globalization;
using Failwise.Calculations;
using Failwise.Units;

namespace Failwise.Tests.Calculations;

public class MethodPageTests
{
    public static TheoryData<string> Ids => new(CalculationCatalog.All.Select(calculation => calculation.Id));

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_worked_example_of_the_page_comes_out(string id)
    {
        var calculation = CalculationCatalog.Find(id)!;
        var block = ExampleOf(PageOf(calculation));
        var gives = block.IndexOf("gives");

        var result = calculation.Run(block.Take(gives).Select(line => line.Split('=', 2)).ToDictionary(pair => pair[0].Trim(), pair => pair[1].Trim()));

        result.Problems.Should().BeEmpty();
        result.Missing.Should().BeEmpty();
        block.Skip(gives + 1).Should().NotBeEmpty();
        foreach (var line in block.Skip(gives + 1))
            Verify(result, line);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_page_says_what_the_calculation_says(string id)
    {
        var calculation = CalculationCatalog.Find(id)!;
        var page = PageOf(calculation);

        page.Should().StartWith($"# {calculation.Title}\n");
        foreach (var heading in new[] { "What it tells you", "What you need", "Formula", "Where it holds", "Worked example", "What it does not tell you", "Source" })
            page.Should().Contain($"\n## {heading}\n");
        page.Should().Contain(calculation.Tells).And.Contain(calculation.DoesNotTell).And.Contain(calculation.Formula).And.Contain(calculation.Validity).And.Contain(calculation.Source);
        foreach (var input in calculation.Inputs)
            page.Should().Contain($"| `{input.Name}` |").And.Contain($"| {input.Range} |");
        foreach (var output in calculation.Outputs)
            page.Should().Contain($"- `{output.Name}`: {output.What}");
    }

    [Fact]
    public void Every_page_belongs_to_a_calculation_and_stands_in_the_list()
    {
        var pages = Directory.GetFiles(CalculationFiles.MethodPages, "*.md").Select(path => Path.GetFileName(path)!).Where(name => name != "README.md").ToList();
        var list = File.ReadAllText(Path.Combine(CalculationFiles.MethodPages, "README.md"));

        pages.Should().BeEquivalentTo(CalculationCatalog.All.Select(calculation => calculation.MethodPage));
        pages.Should().OnlyContain(page => list.Contains($"({page})"));
    }

    private static string PageOf(Calculation calculation) =>
        File.ReadAllText(Path.Combine(CalculationFiles.MethodPages, calculation.MethodPage)).ReplaceLineEndings("\n");

    private static List<string> ExampleOf(string page)
    {
        var parts = page.Split("```");
        parts.Should().HaveCount(3, because: "a page holds one example block");
        parts[1].Should().StartWith("example\n");
        return [.. parts[1].Split('\n').Skip(1).Select(line => line.Trim()).Where(line => line.Length > 0)];
    }

    private static void Verify(CalculationResult result, string line)
    {
        var words = line.Split(' ', 3);
        var value = result[words[0]];
        value.Should().NotBeNull(because: line);
        if (words[1] == ":")
        {
            value!.Text.Should().Be(words[2], because: line);
            return;
        }
        var within = words[2].Split(" within ");
        QuantityParser.TryParse(within[0], UnitTable.Get(value!.Output.Unit), out var target, out var reason).Should().BeTrue(because: $"{line}: {reason}");
        var got = UnitTable.Get(value.Output.Unit).Convert(value.Number!.Value, target!.Unit);
        if (words[1] == "<=")
            got.Should().BeLessThanOrEqualTo(target.Value, because: line);
        else if (words[1] == ">=")
            got.Should().BeGreaterThanOrEqualTo(target.Value, because: line);
        else
            got.Should().BeApproximately(target.Value, double.Parse(within[1], CultureInfo.InvariantCulture) * 1.0001, because: line);
    }
}
