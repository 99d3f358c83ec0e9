namespace Failwise.Calculations;

/// <summary>The inputs of one run, converted to the unit each formula works in.</summary>
internal sealed class Given
{
    private readonly Dictionary<string, double[][]> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _words = new(StringComparer.Ordinal);

    public List<InputEcho> Echo { get; } = [];

    public List<CalculationInput> Missing { get; } = [];

    public List<string> Problems { get; } = [];

    public double this[string name] => _numbers[name][0][0];

    public bool Has(string name) => _numbers.ContainsKey(name) || _words.ContainsKey(name);

    public IReadOnlyList<double> List(string name) => [.. _numbers[name].SelectMany(plane => plane)];

    public IReadOnlyList<IReadOnlyList<double>> Planes(string name) => _numbers[name];

    public string Word(string name) => _words[name];

    public bool Yes(string name) => _words[name] == "yes";

    public void Set(string name, double[][] numbers) => _numbers[name] = numbers;

    public void Set(string name, string word) => _words[name] = word;
}
