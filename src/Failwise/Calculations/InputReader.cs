using Failwise.Units;

namespace Failwise.Calculations;

/// <summary>Reads the inputs of a calculation from shop text and collects every problem before giving up.</summary>
internal static class InputReader
{
    public static Given Read(Calculation calculation, IReadOnlyDictionary<string, string> inputs)
    {
        var given = new Given();
        foreach (var name in inputs.Keys.Where(name => calculation.Inputs.All(input => input.Name != name)).Order(StringComparer.Ordinal))
            given.Problems.Add(UnknownInput(calculation, name));
        foreach (var input in calculation.Inputs)
            ReadOne(given, input, inputs.GetValueOrDefault(input.Name));
        return given;
    }

    /// <summary>What is wrong with one input as written, each as a sentence; nothing when it can be used.</summary>
    public static IReadOnlyList<string> ProblemsOf(CalculationInput input, string written)
    {
        var given = new Given();
        ReadOne(given, input, written);
        var lead = input.Name + ": ";
        return [.. given.Problems.Select(problem => problem.StartsWith(lead, StringComparison.Ordinal) ? problem[lead.Length..] : problem)];
    }

    private static void ReadOne(Given given, CalculationInput input, string? written)
    {
        var text = string.IsNullOrWhiteSpace(written) ? input.Default : written.Trim();
        var assumed = string.IsNullOrWhiteSpace(written);
        if (text is null)
        {
            if (!input.Optional)
                given.Missing.Add(input);
        }
        else if (input.Kind == InputKind.Word)
            ReadWord(given, input, text, assumed);
        else
            ReadNumbers(given, input, text, assumed);
    }

    private static void ReadWord(Given given, CalculationInput input, string text, bool assumed)
    {
        // People write SAE 30 where the table says 30.
        var plain = text.StartsWith("SAE ", StringComparison.OrdinalIgnoreCase) ? text[4..].Trim() : text;
        var word = input.Words.FirstOrDefault(known => string.Equals(known, text, StringComparison.OrdinalIgnoreCase))
            ?? input.Words.FirstOrDefault(known => string.Equals(known, plain, StringComparison.OrdinalIgnoreCase));
        if (word is null)
        {
            given.Problems.Add($"{input.Name}: '{text}' is not one of {string.Join(", ", input.Words)}.");
            return;
        }
        given.Set(input.Name, word);
        given.Echo.Add(new InputEcho(input, word, assumed));
    }

    private static void ReadNumbers(Given given, CalculationInput input, string text, bool assumed)
    {
        var parts = input.Kind == InputKind.List ? text.Split('|') : [text];
        var planes = parts.Select(
            plane => input.Kind == InputKind.List ? plane.Split(';', StringSplitOptions.RemoveEmptyEntries) : [plane]).ToArray();
        var bare = UnitTable.Get(input.Unit);
        if (input.Kind == InputKind.List && planes[^1].Length > 0 && QuantityParser.TryParse(planes[^1][^1], out var last, out _))
            bare = last.Unit;
        var echoes = new List<string>();
        var numbers = new double[planes.Length][];
        for (var i = 0; i < planes.Length; i++)
        {
            numbers[i] = new double[planes[i].Length];
            for (var j = 0; j < planes[i].Length; j++)
                numbers[i][j] = ReadNumber(given, input, planes[i][j], bare, echoes);
        }
        if (numbers.Any(plane => plane.Length == 0))
            given.Problems.Add($"{input.Name}: '{text}' has an empty place: write the readings between semicolons.");
        given.Set(input.Name, numbers);
        given.Echo.Add(new InputEcho(input, string.Join("; ", echoes), assumed));
    }

    private static double ReadNumber(Given given, CalculationInput input, string text, Unit bare, List<string> echoes)
    {
        var wanted = UnitTable.Get(input.Unit);
        if (!QuantityParser.TryParse(text, out var quantity, out var reason, bare))
        {
            given.Problems.Add($"{input.Name}: {reason}");
            return double.NaN;
        }
        if (quantity.Unit.Dimension != wanted.Dimension)
        {
            given.Problems.Add(
                $"{input.Name}: '{quantity.Text}' is {Words.Of(quantity.Unit.Dimension)}, but {Words.Of(wanted.Dimension)} is " +
                    $"needed: write it in {(wanted.Symbol == "-" ? "plain figures" : wanted.Symbol)}.");
            return double.NaN;
        }
        var value = quantity.Unit.Convert(quantity.Value, wanted);
        if (!input.Holds(value))
            given.Problems.Add($"{input.Name}: {quantity.Text} is outside the valid range, {input.Range}.");
        echoes.Add(quantity.InBothSystems());
        return value;
    }

    private static string UnknownInput(Calculation calculation, string name)
    {
        var nearest = calculation.Inputs.MinBy(input => EditDistance.Between(name, input.Name));
        return nearest is not null && EditDistance.Between(name, nearest.Name) <= Math.Max(2, name.Length / 3)
            ? $"unknown input '{name}'. Did you mean '{nearest.Name}'?"
            : $"unknown input '{name}': {calculation.Id} takes {string.Join(", ", calculation.Inputs.Select(input => input.Name))}.";
    }
}
