using Failwise.Units;

namespace Failwise.Calculations;

/// <summary>The outputs of one run while they are being filled in.</summary>
internal sealed class Answer(IReadOnlyList<CalculationOutput> outputs)
{
    private readonly Dictionary<string, OutputValue> _values = new(StringComparer.Ordinal);

    public List<string> Notes { get; } = [];

    /// <summary>Why the answer cannot be shown, or null.</summary>
    public string? Unusable { get; private set; }

    public IReadOnlyList<OutputValue> Values =>
        [.. outputs.Where(output => _values.ContainsKey(output.Name)).Select(output => _values[output.Name])];

    public void Set(string name, double value)
    {
        var output = outputs.First(known => known.Name == name);
        if (!double.IsFinite(value))
            Unusable ??= $"these inputs give no finite {output.What}: check them for a slip.";
        var quantity = Quantity.Worked(value, UnitTable.Get(output.Unit), output.Digits);
        _values[name] = new OutputValue(output, value, quantity.InBothSystems());
    }

    public void Say(string name, string word) => _values[name] = new OutputValue(outputs.First(known => known.Name == name), null, word);

    public void Note(string text) => Notes.Add(text);
}
