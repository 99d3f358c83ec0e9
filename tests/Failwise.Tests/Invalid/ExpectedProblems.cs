using Failwise.Problems;

namespace Failwise.Tests.Invalid;

/// <summary>
/// The problem lines that stand beside a broken file. A line that ends in "..." gives only the beginning: the rest is worded by the
/// YAML reader. "file" stands for the file as a whole.
/// </summary>
internal static class ExpectedProblems
{
    public static string CaseFolder => Repository.Folder("tests", "Failwise.Tests", "Invalid", "cases");

    public static string RuleFolder => Repository.Folder("tests", "Failwise.Tests", "Invalid", "rules");

    /// <summary>Names of the broken files or folders that have expected lines beside them.</summary>
    public static IEnumerable<string> Names(string folder) => Directory.GetFiles(folder, "*.expected").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal);

    public static IReadOnlyList<string> Read(string path)
    {
        string[] lines = [.. File.ReadAllLines(path + ".expected").Where(l => l.Length > 0)];
        lines.Should().NotBeEmpty($"{path}.expected must say what is expected");
        return lines;
    }

    /// <summary>Compares line by line and shows both lists when they differ.</summary>
    public static void ShouldBe(this IEnumerable<string> actual, IReadOnlyList<string> expected)
    {
        string[] found = [.. actual];
        string[] shown = [.. found.Select((line, i) => i < expected.Count && expected[i].EndsWith("...", StringComparison.Ordinal) && line.StartsWith(expected[i][..^3], StringComparison.Ordinal) ? expected[i] : line)];
        string.Join('\n', shown).Should().Be(string.Join('\n', expected));
    }

    /// <summary>The line without the name of the file it was read from.</summary>
    public static string WithoutFile(Problem problem, string file)
    {
        string line = problem.ToString();
        line.Should().StartWith(file, "every problem names its file as it was given");
        string rest = line[file.Length..];
        return problem.At.Line == 0 ? "file" + rest : rest[1..];
    }
}
