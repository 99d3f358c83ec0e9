namespace Failwise.Calculations;

/// <summary>One calculation a mechanic can ask for by name.</summary>
public sealed record Calculation
{
    /// <summary>Name on the command line and of its method page, in kebab-case.</summary>
    public required string Id { get; init; }

    /// <summary>Short title in shop words.</summary>
    public required string Title { get; init; }

    /// <summary>What the result tells.</summary>
    public required string Tells { get; init; }

    /// <summary>What it does not tell, though it is often taken to.</summary>
    public required string DoesNotTell { get; init; }

    /// <summary>The formula as text.</summary>
    public required string Formula { get; init; }

    /// <summary>Where it holds.</summary>
    public required string Validity { get; init; }

    /// <summary>Where it comes from.</summary>
    public required string Source { get; init; }

    /// <summary>What must or may be given.</summary>
    public required IReadOnlyList<CalculationInput> Inputs { get; init; }

    /// <summary>What comes out.</summary>
    public required IReadOnlyList<CalculationOutput> Outputs { get; init; }

    /// <summary>File name of the method page under docs/methods.</summary>
    public string MethodPage => $"{Id}.md";

    /// <summary>Fills the answer from the inputs; may refuse with an out-of-range exception.</summary>
    internal Action<Given, Answer> Work { get; init; } = static (_, _) =>
        throw new InvalidOperationException("this calculation has no work.");

    /// <summary>Works the calculation from inputs as a shop writes them.</summary>
    /// <param name="inputs">Input name to text, for instance <c>load</c> to <c>3000 N</c>; a bare number is taken in the unit listed for
    /// the input.</param>
    /// <returns>The outputs, or what is missing and what is wrong. Never NaN, and no exception for bad input.</returns>
    public CalculationResult Run(IReadOnlyDictionary<string, string> inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var given = InputReader.Read(this, inputs);
        if (given.Missing.Count > 0 || given.Problems.Count > 0)
            return new CalculationResult(this, given.Echo, [], [], given.Missing, given.Problems);
        var answer = new Answer(Outputs);
        try
        {
            Work(given, answer);
        }
        catch (ArgumentOutOfRangeException refusal)
        {
            return new CalculationResult(this, given.Echo, [], [], [], [refusal.Message]);
        }
        return answer.Unusable is { } reason
            ? new CalculationResult(this, given.Echo, [], [], [], [reason])
            : new CalculationResult(this, given.Echo, answer.Values, answer.Notes, [], []);
    }

    /// <summary>Name of the calculation.</summary>
    public override string ToString() => Id;
}
