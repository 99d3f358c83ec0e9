namespace Failwise.Problems;

/// <summary>How bad a problem is: an error stops the file from being used as meant, a warning asks for a second look, a hint is only worth knowing.</summary>
public enum Severity { Hint, Warning, Error }

/// <summary>A place in a file. Line and column count from 1; 0 means the file as a whole.</summary>
public readonly record struct Location(string File, int Line, int Column)
{
    public override string ToString() => Line == 0 ? File : $"{File}:{Line}:{Column}";
}

/// <summary>Something wrong in a file that a person wrote: where, what, and what to do next.</summary>
/// <param name="Code">Permanent code such as <c>FW012</c>; docs/problems.md has an entry for each.</param>
/// <param name="Severity">Error, warning or hint.</param>
/// <param name="At">The value that is wrong, not merely the file.</param>
/// <param name="Message">One or two sentences in words of the shop.</param>
public sealed record Problem(string Code, Severity Severity, Location At, string Message)
{
    public override string ToString() => $"{At}: {Severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "hint" }} {Code}: {Message}";
}

/// <summary>Raised when a file has errors and the caller asked for its content; carries every problem found.</summary>
public sealed class ProblemsException(IReadOnlyList<Problem> problems)
    : Exception(string.Join(Environment.NewLine, problems))
{
    /// <summary>All problems of the input, in the order of the files.</summary>
    public IReadOnlyList<Problem> Problems { get; } = problems;
}

/// <summary>Collects problems while files are read, so that a person sees all of them at once.</summary>
internal sealed class ProblemList
{
    private readonly List<Problem> problems = [];

    public IReadOnlyList<Problem> All => problems;

    public bool HasErrors => problems.Exists(p => p.Severity == Severity.Error);

    public void Error(string code, Location at, string message) => problems.Add(new Problem(code, Severity.Error, at, message));

    public void Warning(string code, Location at, string message) => problems.Add(new Problem(code, Severity.Warning, at, message));

    public void AddRange(IEnumerable<Problem> more) => problems.AddRange(more);

    /// <summary>Problems by file, line, column, then code: the same input gives the same list.</summary>
    public IReadOnlyList<Problem> Sorted() =>
    [
        .. problems.Distinct()
            .OrderBy(p => p.At.File, StringComparer.Ordinal).ThenBy(p => p.At.Line).ThenBy(p => p.At.Column)
            .ThenBy(p => p.Code, StringComparer.Ordinal).ThenBy(p => p.Message, StringComparer.Ordinal),
    ];
}
