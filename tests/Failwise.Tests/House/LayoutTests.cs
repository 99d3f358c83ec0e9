using System.Text.RegularExpressions;

namespace Failwise.Tests.House;

public sealed class LayoutTests
{
    /// <summary>What each folder of the library may use. A new need is a decision, and stands here.</summary>
    internal static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Problems"] = [],
        ["Units"] = [],
        ["Inference"] = [],
        ["Calculations"] = ["Units"],
        ["Yaml"] = ["Problems"],
        ["Knowledge"] = ["Problems", "Units", "Calculations", "Yaml"],
        ["Cases"] = ["Problems", "Units", "Calculations", "Yaml", "Knowledge"],
        ["Drawings"] = ["Knowledge"],
        ["Entry"] = ["Problems", "Yaml", "Knowledge", "Cases"],
        ["Measurements"] = ["Units", "Calculations", "Knowledge", "Cases"],
        ["Findings"] = ["Problems", "Calculations", "Knowledge", "Cases", "Measurements"],
        ["Causes"] = ["Knowledge", "Cases", "Findings", "Inference"],
        ["Checks"] = ["Problems", "Knowledge", "Cases", "Entry", "Measurements", "Findings", "Causes", "Inference"],
        ["Work"] = ["Knowledge", "Cases", "Measurements", "Findings", "Causes"],
        ["Pricing"] = ["Problems", "Yaml", "Knowledge", "Work"],
        ["Scoring"] = ["Problems", "Yaml", "Knowledge", "Cases", "Measurements", "Findings", "Causes", "Checks", "Work", "Reports"],
        ["Reports"] = ["Calculations", "Knowledge", "Cases", "Measurements", "Findings", "Causes", "Checks", "Work", "Pricing", "Drawings", "Securing"],
        ["Sheets"] = ["Problems", "Knowledge", "Cases", "Causes", "Checks", "Drawings", "Securing", "Reports"],
        ["Dialogue"] = ["Problems", "Yaml", "Knowledge", "Cases", "Entry", "Checks", "Sheets", "Reports"],
        ["Securing"] = ["Knowledge", "Cases", "Measurements", "Findings", "Causes"],
    };

    private static readonly Dictionary<string, string> OwnerOf = new(StringComparer.Ordinal)
    {
        ["YamlDotNet"] = "Yaml",
        ["NRules"] = "Findings",
        ["Markdig"] = "Reports",
    };

    private static IEnumerable<(string Folder, string File, string Text)> Library() =>
        Repository.SourceFiles(Path.Combine("src", "Failwise"))
            .Select(f => (Path.GetRelativePath(Repository.Folder("src", "Failwise"), f).Replace('\\', '/').Split('/'), f))
            .Where(x => x.Item1.Length > 1)
            .Select(x => (x.Item1[0], x.f, File.ReadAllText(x.f)));

    [Fact]
    public void Each_folder_uses_only_the_folders_it_may_use()
    {
        (string Folder, string File, string Text)[] files = [.. Library()];
        files.Length.Should().BeGreaterThan(50);
        List<string> wrong = [];
        foreach ((string folder, string file, string text) in files)
        {
            MayUse.Should().ContainKey(folder);
            foreach (Match use in Regex.Matches(text, @"^using (?:\w+ = )?Failwise\.(\w+)", RegexOptions.Multiline))
            {
                string used = use.Groups[1].Value;
                if (used != folder && !MayUse[folder].Contains(used))
                {
                    wrong.Add($"{Path.GetFileName(file)} in {folder} uses {used}");
                }
            }
        }

        wrong.Should().BeEmpty();
    }

    [Fact]
    public void Each_package_stays_in_its_folder()
    {
        foreach ((string package, string owner) in OwnerOf)
        {
            string[] folders = [.. Library().Where(f => Regex.IsMatch(f.Text, $@"^using {package}[.;]", RegexOptions.Multiline)).Select(f => f.Folder).Distinct()];
            folders.Should().Equal([owner], because: package);
        }
    }

    [Fact]
    public void The_library_reads_no_clock_no_console_and_no_unseeded_random()
    {
        string[] wrong = [.. Library().Where(f => Regex.IsMatch(f.Text, @"DateTime(Offset)?\.(Now|UtcNow)|Console\.|new Random\(\)|Random\.Shared|Environment\.GetEnvironmentVariable")).Select(f => f.File)];
        wrong.Should().BeEmpty();
    }

    [Fact]
    public void Only_the_scorer_knows_expected_answers()
    {
        string[] readers = [.. Library().Where(f => f.Text.Contains("expected.yaml", StringComparison.Ordinal)).Select(f => f.Folder).Distinct()];
        readers.Should().Equal("Scoring");
    }

    [Fact]
    public void No_rule_names_a_solved_case()
    {
        string[] files = [.. Directory.EnumerateFiles(Repository.Folder("rules"), "*.yaml", SearchOption.AllDirectories)];
        files.Length.Should().BeGreaterThan(500);
        files.Where(f => Regex.IsMatch(File.ReadAllText(f), @"\b[a-ds]-[0-9]{3}\b")).Should().BeEmpty();
    }
}
