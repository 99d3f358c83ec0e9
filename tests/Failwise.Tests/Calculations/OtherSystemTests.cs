using System.Globalization;
using Failwise.Calculations;
using Failwise.Units;

namespace Failwise.Tests.Calculations;

/// <summary>Nature knows no inch: the worked example of every page gives the same when each input is written in the other system.</summary>
public class OtherSystemTests
{
    public static TheoryData<string> Ids => new(CalculationCatalog.All.Select(c => c.Id));

    [Fact]
    public void Most_calculations_have_an_input_with_another_system() =>
        CalculationCatalog.All.Count(c => c.Inputs.Any(i => i.Unit.Length > 0 && UnitTable.Get(i.Unit).Counterpart.Length > 0)).Should().BeGreaterThan(40);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Inputs_in_the_other_system_give_the_same_results(string id)
    {
        Calculation calculation = CalculationCatalog.Find(id)!;
        Dictionary<string, string> given = ExampleOf(calculation);

        CalculationResult one = calculation.Run(given), other = calculation.Run(given.ToDictionary(g => g.Key, g => Swap(calculation, g.Key, g.Value)));

        other.Problems.Should().Equal(one.Problems);
        foreach (OutputValue value in one.Outputs)
        {
            OutputValue same = other[value.Output.Name]!;
            if (value.Number is { } number)
            {
                same.Number!.Value.Should().BeApproximately(number, Math.Max(1e-9, Math.Abs(number) * 1e-6), because: $"{value.Output.Name} of {id}");
            }
            else
            {
                same.Text.Should().Be(value.Text, because: $"{value.Output.Name} of {id}");
            }
        }
    }

    private static string Swap(Calculation calculation, string name, string text)
    {
        CalculationInput input = calculation.Inputs.Single(i => i.Name == name);
        if (input.Kind == InputKind.Word)
        {
            return text;
        }

        Unit bare = UnitTable.Get(input.Unit);
        if (input.Kind == InputKind.List && QuantityParser.TryParse(text.Split(';', '|')[^1], out Quantity? last, out _, bare))
        {
            bare = last.Unit;
        }

        return string.Join("|", text.Split('|').Select(plane => string.Join("; ", plane.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(t => SwapOne(t, bare)))));
    }

    private static string SwapOne(string text, Unit bare)
    {
        QuantityParser.TryParse(text, out Quantity? quantity, out string? reason, bare).Should().BeTrue(because: reason);
        if (quantity!.Unit.Counterpart.Length == 0)
        {
            return text;
        }

        Unit target = UnitTable.Get(quantity.Unit.Counterpart);
        return $"{quantity.Unit.Convert(quantity.Value, target).ToString("R", CultureInfo.InvariantCulture)} {target.Symbol}";
    }

    private static Dictionary<string, string> ExampleOf(Calculation calculation)
    {
        string page = File.ReadAllText(Repository.Folder("docs", "methods", calculation.MethodPage)).ReplaceLineEndings("\n");
        string[] block = [.. page.Split("```")[1].Split('\n').Skip(1).Select(l => l.Trim()).Where(l => l.Length > 0)];
        return block.TakeWhile(l => l != "gives").Select(l => l.Split('=', 2)).ToDictionary(p => p[0].Trim(), p => p[1].Trim(), StringComparer.Ordinal);
    }
}
