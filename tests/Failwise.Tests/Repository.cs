using Failwise.Knowledge;

namespace Failwise.Tests;

/// <summary>Where the repository lies, and its rules, read once for all tests.</summary>
internal static class Repository
{
    private static readonly Lazy<KnowledgeReading> Reading = new(() => KnowledgeReader.Read(Folder("rules")));

    public static string Root { get; } = FindRoot();

    /// <summary>The shipped rules as a person reads them: every check on.</summary>
    public static KnowledgeReading Rules => Reading.Value;

    public static KnowledgeBase Knowledge => Rules.Knowledge ?? throw new InvalidOperationException(string.Join('\n', Rules.Problems));

    public static string Folder(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>Source files of the project below a folder, without what the build wrote.</summary>
    public static IReadOnlyList<string> SourceFiles(string folder) =>
    [
        .. Directory.EnumerateFiles(Folder(folder), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Replace('\\', '/').Contains("/obj/", StringComparison.Ordinal) && !f.Replace('\\', '/').Contains("/bin/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Failwise.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("Failwise.sln was not found above the tests.");
    }
}
