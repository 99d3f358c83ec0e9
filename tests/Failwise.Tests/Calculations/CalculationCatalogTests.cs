using System.Globalization;
using Failwise.Calculations;

namespace Failwise.Tests.Calculations;

public class CalculationCatalogTests
{
    /// <summary>Calculations for which no published example was found; their pages say so.</summary>
    private static readonly string[] WorkedByHandOnly = ["size-taper-out-of-round", "film-against-roughness", "bearing-design-check"];

    public static TheoryData<string> Ids => new(CalculationCatalog.All.Select(calculation => calculation.Id));

    [Fact]
    public void Names_are_unique_and_in_kebab_case()
    {
        var ids = CalculationCatalog.All.Select(calculation => calculation.Id).ToList();

        ids.Should().OnlyHaveUniqueItems().And.HaveCountGreaterThan(60);
        ids.Should().OnlyContain(id => id.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-'));
    }

    [Fact]
    public void Every_calculation_has_a_published_check_or_says_that_none_was_found()
    {
        var used = PublishedValue.All.SelectMany(value => value.Checks).Select(check => (string?)check["calculation"]).ToHashSet();

        CalculationCatalog.All.Select(calculation => calculation.Id).Where(id => !used.Contains(id)).Should().BeEquivalentTo(WorkedByHandOnly);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Without_inputs_it_says_what_is_missing_and_gives_no_number(string id)
    {
        var calculation = CalculationCatalog.Find(id)!;

        var result = calculation.Run(new Dictionary<string, string>());

        result.Worked.Should().BeFalse();
        result.Outputs.Should().BeEmpty();
        (result.Missing.Count + result.Problems.Count).Should().BePositive();
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Bad_inputs_never_throw_and_never_give_a_number_that_is_none(string id)
    {
        var calculation = CalculationCatalog.Find(id)!;
        var random = new Random(id.Length * 7919);
        string[] words = ["0", "-1", "1e300", "1e-300", "NaN", "", "5,3 mm", "furlong", "7 apples", "1 mm", "3 bar", "20 °C", "1", "50", "yes", "100; 0; 3", "; ;", "|", "1e9", "0.5", "12 N", "Fe", "90", "8", "9999999999 rpm"];
        for (var round = 0; round < 300; round++)
        {
            var inputs = calculation.Inputs.Where(_ => random.Next(8) > 0).ToDictionary(input => input.Name, input => Draw(input, words, random));

            var result = calculation.Run(inputs);

            result.Outputs.Should().NotContain(value => value.Number != null && !double.IsFinite(value.Number.Value));
            result.Outputs.Should().NotContain(value => value.Text.Contains("NaN") || value.Text.Contains("no number") || value.Text.Contains('∞'));
            (result.Worked ? result.Outputs.Count : result.Missing.Count + result.Problems.Count).Should().BePositive(because: string.Join(", ", inputs));
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_value_outside_the_range_is_refused_with_the_range(string id)
    {
        var calculation = CalculationCatalog.Find(id)!;
        foreach (var input in calculation.Inputs.Where(input => input.Kind != InputKind.Word && double.IsFinite(input.Lowest)))
        {
            var below = input.LowestExcluded ? input.Lowest : input.Lowest - Math.Max(1, Math.Abs(input.Lowest));
            var written = below.ToString("F9", CultureInfo.InvariantCulture) + (input.Unit == "-" ? "" : $" {input.Unit}");

            var result = calculation.Run(new Dictionary<string, string> { [input.Name] = written });

            result.Problems.Should().Contain(problem => problem.StartsWith(input.Name) && problem.Contains(input.Range), because: $"{input.Name} {written}");
        }
    }

    [Fact]
    public void A_misspelt_input_or_name_gets_the_nearest_word()
    {
        CalculationCatalog.Nearest("journal-baring-film").Should().Be("journal-bearing-film");
        CalculationCatalog.Nearest("zzzzzzzzzz").Should().BeNull();
        CalculationCatalog.Find("leak-down")!.Run(new Dictionary<string, string> { ["reeding"] = "60 psi" }).Problems
            .Should().ContainSingle().Which.Should().Be("unknown input 'reeding'. Did you mean 'reading'?");
    }

    [Fact]
    public void Inputs_are_read_from_one_line()
    {
        var inputs = CalculationCatalog.ParseInputs("feed-pressure=80 psi, reading=62 psi", out var problems);
        _ = CalculationCatalog.ParseInputs("reading=0,05 mm", out var comma);

        problems.Should().BeEmpty();
        inputs.Should().HaveCount(2).And.Contain("reading", "62 psi");
        comma.Should().ContainSingle().Which.Should().Contain("decimal with a point");
    }

    [Fact]
    public void A_result_shows_both_systems_and_no_idle_digits()
    {
        var result = CalculationCatalog.Find("leak-down")!.Run(new Dictionary<string, string> { ["reading"] = "62 psi", ["bore"] = "100 mm" });

        result.Inputs.Single(echo => echo.Input.Name == "reading").Text.Should().Be("62 psi (4.27 bar)");
        result.Inputs.Single(echo => echo.Input.Name == "feed-pressure").Assumed.Should().BeTrue();
        result["loss"]!.Text.Should().Be("23 %");
        result["orifice"]!.Text.Should().Be("1.0 mm (0.040 in)");
    }

    [Fact]
    public void A_large_result_shows_no_digit_it_cannot_bear()
    {
        var result = CalculationCatalog.Find("bolt-torque")!.Run(new Dictionary<string, string> { ["preload"] = "24131 N", ["thread"] = "12 mm" });

        result["preload"]!.Text.Should().Be("24130 N (5425 lbf)");
        result["torque"]!.Text.Should().Be("57.9 N·m (42.72 lbf·ft)");
    }

    [Theory]
    [InlineData("crankcase", "rings, piston or bore")]
    [InlineData("exhaust", "exhaust valve")]
    [InlineData("next-cylinder", "head gasket between the cylinders")]
    public void The_place_of_the_hiss_points_to_the_leak(string place, string leak) =>
        CalculationCatalog.Find("leak-down")!.Run(new Dictionary<string, string> { ["reading"] = "50 psi", ["heard-at"] = place })["points-to"]!.Text.Should().Be(leak);

    [Theory]
    [InlineData("900; 890; 600; 880 kPa", "900; 890; 850; 880 kPa", "3: rose, rings or bore")]
    [InlineData("900; 890; 600; 880 kPa", "900; 890; 610; 880 kPa", "3: did not rise, valves or gasket")]
    public void A_shot_of_oil_tells_rings_from_valves(string dry, string wet, string says) =>
        CalculationCatalog.Find("compression")!.Run(new Dictionary<string, string> { ["readings"] = dry, ["with-oil"] = wet })["oil-shot"]!.Text.Should().Be(says);

    [Fact]
    public void Two_low_neighbours_point_to_the_gasket()
    {
        var result = CalculationCatalog.Find("compression")!.Run(new Dictionary<string, string> { ["readings"] = "1000; 600; 590; 990 kPa" });

        result["verdict"]!.Text.Should().Be("low, two neighbours");
        result.Notes.Should().ContainSingle().Which.Should().Contain("gasket");
    }

    [Fact]
    public void The_last_reading_of_a_list_gives_the_unit_of_the_bare_ones()
    {
        var result = CalculationCatalog.Find("compression")!.Run(new Dictionary<string, string> { ["readings"] = "150; 148; 104; 149 psi" });

        result["lowest-share"]!.In("%").Should().BeApproximately(100 * 104.0 / 150, 1e-9);
    }

    private static string Draw(CalculationInput input, string[] words, Random random)
    {
        if (random.Next(3) == 0)
            return words[random.Next(words.Length)];
        if (input.Kind == InputKind.Word)
            return input.Words[random.Next(input.Words.Count)];
        var low = double.IsFinite(input.Lowest) ? input.Lowest : -100;
        var high = double.IsFinite(input.Highest) ? input.Highest : low + 1000;
        var value = low + (high - low) * Math.Pow(random.NextDouble(), 4);
        var text = value.ToString("R", CultureInfo.InvariantCulture);
        return input.Kind == InputKind.List ? $"{text}; {text}; {text}" : text;
    }
}
