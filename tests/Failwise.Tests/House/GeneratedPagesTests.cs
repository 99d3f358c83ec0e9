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
    public void Every_link_of_the_atlas_in_html_leads_to_a_page_and_nothing_is_asked_of_a_network()
    {
        IReadOnlyList<AtlasPage> pages = AtlasHtml.Write(Repository.Knowledge);
        Dictionary<string, string> texts = pages.ToDictionary(p => p.Path, p => p.Text, StringComparer.Ordinal);
        List<string> dead = [];
        int links = 0;
        foreach (AtlasPage page in pages)
        {
            foreach (System.Text.RegularExpressions.Match link in System.Text.RegularExpressions.Regex.Matches(page.Text, "(?:href|src)=\"([^\"]*)\""))
            {
                links++;
                string target = link.Groups[1].Value;
                if (!target.StartsWith("data:image/svg+xml,", StringComparison.Ordinal) && !Leads(page, target, texts))
                {
                    dead.Add($"{page.Path} -> {target}");
                }
            }
        }

        texts.Should().ContainKey("index.html").And.ContainKey("by-part.html");
        links.Should().BeGreaterThan(10_000);
        dead.Should().BeEmpty();
    }

    private static bool Leads(AtlasPage page, string target, Dictionary<string, string> texts)
    {
        if (target.StartsWith('#'))
        {
            return page.Text.Contains($"id=\"{target[1..]}\"", StringComparison.Ordinal);
        }

        string folder = Path.GetDirectoryName(page.Path)!;
        return texts.ContainsKey(Path.GetRelativePath(Repository.Root, Path.GetFullPath(Path.Combine(Repository.Root, folder, target))).Replace('\\', '/'));
    }

    [Fact]
    public void A_pattern_that_is_only_one_of_many_alternatives_is_not_told_by_its_position()
    {
        string page = Atlas.Write(Repository.Knowledge).Single(p => p.Path == "patterns/blued.md").Text;

        page.Should().Contain("Of the journals that were looked at, one alone is blued").And.NotContain("The laboratory found a fault");
    }

    [Fact]
    public void A_source_that_stands_behind_a_cause_is_named_at_the_foot_of_the_page()
    {
        AtlasPage[] pages = [.. Atlas.Write(Repository.Knowledge).Where(p => p.Path.StartsWith("patterns/", StringComparison.Ordinal))];
        List<string> missing = [];
        int rows = 0;
        foreach (AtlasPage page in pages)
        {
            string table = page.Text.Split("| on | cause | how often | source |").Skip(1).FirstOrDefault("").Split("\n\n")[0];
            foreach (string row in table.Split('\n').Skip(2).Where(r => r.EndsWith(" |", StringComparison.Ordinal)))
            {
                rows++;
                string[] ids = row[..^2].Split(" | ")[^1].Split(", ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
                missing.AddRange(ids.Where(id => !page.Text.Contains($"\n- {id}: ", StringComparison.Ordinal)).Select(id => $"{page.Path}: {id}"));
            }
        }

        rows.Should().BeGreaterThan(1_000);
        missing.Should().BeEmpty();
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
