using Failwise.Reports;

namespace Failwise.Tests.House;

/// <summary>Pages that are printed from the rules must not be staler than the rules.</summary>
public sealed class GeneratedPagesTests
{
    [Fact]
    public void The_atlas_is_what_the_rules_say_now()
    {
        IReadOnlyList<AtlasPage> pages = Atlas.Write(Repository.Knowledge);
        pages.Count.Should().BeGreaterThan(1_000);

        string[] stale = [.. pages.Where(p => !File.Exists(Repository.Folder("docs", "atlas", p.Path)) || File.ReadAllText(Repository.Folder("docs", "atlas", p.Path)) != p.Text).Select(p => p.Path)];

        stale.Should().BeEmpty(because: "run: failwise rules atlas docs/atlas");
    }

    [Fact]
    public void Every_link_in_the_atlas_leads_to_a_page()
    {
        IReadOnlyList<AtlasPage> pages = Atlas.Write(Repository.Knowledge);
        HashSet<string> known = [.. pages.Select(p => p.Path)];
        List<string> dead = [];
        foreach (AtlasPage page in pages)
        {
            string folder = Path.GetDirectoryName(page.Path)!.Replace('\\', '/');
            foreach (System.Text.RegularExpressions.Match link in System.Text.RegularExpressions.Regex.Matches(page.Text, @"(?<!\\)\]\(([^)]+)\)"))
            {
                string target = link.Groups[1].Value;
                string full = Path.GetRelativePath(Repository.Root, Path.GetFullPath(Path.Combine(Repository.Root, folder, target))).Replace('\\', '/');
                if (!known.Contains(full))
                {
                    dead.Add($"{page.Path} -> {target}");
                }
            }
        }

        dead.Should().BeEmpty();
    }

    [Fact]
    public void The_readme_shows_what_the_main_example_prints()
    {
        string readme = File.ReadAllText(Repository.Folder("README.md"));
        Failwise.Cases.CaseReading reading = Failwise.Cases.CaseReader.Read(Repository.Knowledge, Repository.Folder("examples", "pump-engine"));

        string printed = TextReport.Write(Diagnostician.Diagnose(Repository.Knowledge, reading.Case!)).Replace('\u00a0', ' ').TrimEnd('\n');

        readme.Should().Contain(printed);
    }
}
