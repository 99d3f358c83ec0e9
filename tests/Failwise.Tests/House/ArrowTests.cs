using System.Text.RegularExpressions;

namespace Failwise.Tests.House;

/// <summary>Stricter than the list of usings: names written out in full count too, and an arrow that nobody needs is taken out.</summary>
public sealed partial class ArrowTests
{
    private static readonly Dictionary<string, string> PackageOf = new(StringComparer.Ordinal)
    {
        ["YamlDotNet"] = "src/Failwise/Yaml/",
        ["NRules"] = "src/Failwise/Findings/",
        ["Markdig"] = "src/Failwise/Reports/",
        ["System.CommandLine"] = "src/Failwise.Cli/",
    };

    private static readonly (string Path, string Text)[] Sources =
        [.. Repository.SourceFiles("src").Select(f => (Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'), File.ReadAllText(f)))];

    public static TheoryData<string> Folders => new(Directory.GetDirectories(Repository.Folder("src", "Failwise")).Select(f => Path.GetFileName(f)!).Where(f => f is not ("bin" or "obj")).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_folder_uses_only_what_stands_behind_its_arrow(string folder)
    {
        (string Path, string Text)[] files = [.. Sources.Where(s => s.Path.StartsWith($"src/Failwise/{folder}/", StringComparison.Ordinal))];
        string[] used =
        [
            .. files.SelectMany(f => Using().Matches(f.Text).Select(m => m.Groups[1].Value)
                .Concat(LayoutTests.MayUse.Keys.Where(other => WritesOut(other, f.Text)))).Distinct().Where(u => u != folder).Order(StringComparer.Ordinal),
        ];

        files.Should().NotBeEmpty();
        LayoutTests.MayUse.Should().ContainKey(folder, "every folder has its arrows");
        used.Should().BeSubsetOf(LayoutTests.MayUse[folder]);
    }

    [Fact]
    public void Every_arrow_is_used()
    {
        string[] unused = [.. LayoutTests.MayUse.SelectMany(m => m.Value.Select(to => (From: m.Key, To: to)))
            .Where(a => !Sources.Any(s => s.Path.StartsWith($"src/Failwise/{a.From}/", StringComparison.Ordinal) && (s.Text.Contains($"using Failwise.{a.To};", StringComparison.Ordinal) || WritesOut(a.To, s.Text))))
            .Select(a => $"{a.From} <- {a.To}")];

        unused.Should().BeEmpty("an arrow that nobody needs is taken out");
    }

    [Theory]
    [InlineData("YamlDotNet")]
    [InlineData("NRules")]
    [InlineData("Markdig")]
    [InlineData("System.CommandLine")]
    public void A_package_is_used_in_one_folder_only(string package)
    {
        string[] users = [.. Sources.Where(s => Regex.IsMatch(Code(s.Text), $@"\b{Regex.Escape(package)}\b")).Select(s => s.Path)];

        users.Should().NotBeEmpty().And.OnlyContain(u => u.StartsWith(PackageOf[package], StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(@"\bDateTime(Offset)?\.(Now|UtcNow|Today)\b", "the clock")]
    [InlineData(@"\bnew Random\(\)|\bRandom\.Shared\b|\bGuid\.NewGuid\b", "an unseeded random source")]
    [InlineData(@"\bConsole\.", "the console")]
    [InlineData(@"\bEnvironment\.(GetEnvironmentVariable|TickCount|MachineName|UserName)", "the surroundings")]
    [InlineData(@"\bCultureInfo\.CurrentCulture\b|\bActivator\.CreateInstance\b|\bAssembly\.Load", "culture or reflection")]
    public void The_library_never_reads(string pattern, string what)
    {
        (string Path, string Text)[] library = [.. Sources.Where(s => s.Path.StartsWith("src/Failwise/", StringComparison.Ordinal))];

        library.Should().HaveCountGreaterThan(50);
        library.Where(s => Regex.IsMatch(Code(s.Text), pattern)).Select(s => s.Path).Should().BeEmpty($"the library reads no {what}");
    }

    [Fact]
    public void Only_the_readers_and_the_photo_embedding_touch_files()
    {
        string[] users = [.. Sources.Where(s => s.Path.StartsWith("src/Failwise/", StringComparison.Ordinal) && Regex.IsMatch(Code(s.Text), @"\b(File|Directory|FileInfo|DirectoryInfo)\b[.(]|new (FileInfo|DirectoryInfo)\b")).Select(s => s.Path.Split('/')[2]).Distinct()];

        users.Should().NotBeEmpty().And.BeSubsetOf(["Yaml", "Knowledge", "Cases", "Scoring", "Reports", "Entry"]);
    }

    [Fact]
    public void No_file_that_is_shipped_names_a_machine_path()
    {
        string[] texts = [.. new[] { "src", "rules", "docs", "examples", "tests" }.SelectMany(f => Directory.EnumerateFiles(Repository.Folder(f), "*", SearchOption.AllDirectories))
            .Where(f => Path.GetExtension(f) is ".cs" or ".yaml" or ".md" or ".csproj" or ".json" && !f.Contains("/bin/", StringComparison.Ordinal) && !f.Contains("/obj/", StringComparison.Ordinal))];

        texts.Should().HaveCountGreaterThan(500);
        texts.Where(f => Regex.IsMatch(File.ReadAllText(f), @"(?<![\w.])(/ho" + "me/|/tm" + "p/|/wo" + "rk/)")).Should().BeEmpty();
    }

    /// <summary>The text without comments and strings on comment lines.</summary>
    private static string Code(string text) => string.Join('\n', text.Split('\n').Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal)));

    /// <summary>True when a type of that folder is named with its namespace, as in Knowledge.Cause.</summary>
    private static bool WritesOut(string folder, string text) =>
        Regex.Matches(Code(text), $@"(?<![\w.])(?:Failwise\.)?{folder}\.(\w+)").Any(m => TypesOf(folder).Contains(m.Groups[1].Value));

    private static HashSet<string> TypesOf(string folder) =>
    [
        .. Sources.Where(s => s.Path.StartsWith($"src/Failwise/{folder}/", StringComparison.Ordinal))
            .SelectMany(s => Regex.Matches(s.Text, @"\b(?:class|record|struct|enum|interface) (?:struct )?(\w+)").Select(m => m.Groups[1].Value)),
    ];

    [GeneratedRegex(@"using (?:static )?Failwise\.(\w+)")]
    private static partial Regex Using();
}
