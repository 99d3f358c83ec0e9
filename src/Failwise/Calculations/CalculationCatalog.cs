using Failwise.Units;

namespace Failwise.Calculations;

/// <summary>Every calculation that can be asked for by name.</summary>
public static class CalculationCatalog
{
    /// <summary>All calculations, by topic and then as listed there.</summary>
    public static IReadOnlyList<Calculation> All { get; } =
    [
        .. MeasuringEntries.All,
        .. WearEntries.All,
        .. RunningGearEntries.All,
        .. GalleryEntries.All,
        .. BearingEntries.All,
        .. FilmCheckEntries.All,
        .. OilEntries.All,
        .. OilConditionEntries.All,
        .. OilDebrisEntries.All,
        .. SpringEntries.All,
        .. ReliefValveEntries.All,
        .. EngineEntries.All,
        .. FastenerEntries.All,
        .. RollingBearingEntries.All,
        .. GearEntries.All,
    ];

    /// <summary>Finds a calculation by name.</summary>
    /// <param name="id">Name in kebab-case.</param>
    /// <returns>The calculation, or null.</returns>
    public static Calculation? Find(string id) =>
        All.FirstOrDefault(calculation => string.Equals(calculation.Id, id, StringComparison.Ordinal));

    /// <summary>The name nearest to a misspelt one.</summary>
    /// <param name="id">The name as written.</param>
    /// <returns>The nearest name, or null when none is near.</returns>
    public static string? Nearest(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var nearest = All.MinBy(calculation => EditDistance.Between(id, calculation.Id))!.Id;
        return EditDistance.Between(id, nearest) <= Math.Max(2, id.Length / 3) ? nearest : null;
    }

    /// <summary>Splits <c>a=1 mm,b=2 N</c> into inputs.</summary>
    /// <param name="text">Inputs as written on a command line.</param>
    /// <param name="problems">What could not be read, in shop words.</param>
    /// <returns>Input name to text.</returns>
    public static IReadOnlyDictionary<string, string> ParseInputs(string text, out IReadOnlyList<string> problems)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (inputs, wrong) = (new Dictionary<string, string>(StringComparer.Ordinal), new List<string>());
        foreach (var part in text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var equals = part.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0)
                wrong.Add($"'{part}' is not name=value: write a decimal with a point, and several readings between semicolons.");
            else if (!inputs.TryAdd(part[..equals].Trim(), part[(equals + 1)..].Trim()))
                wrong.Add($"'{part[..equals].Trim()}' is given twice.");
        }
        problems = wrong;
        return inputs;
    }
}
