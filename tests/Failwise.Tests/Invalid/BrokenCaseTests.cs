using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Tests.Invalid;

public class BrokenCaseTests
{
    private static readonly KnowledgeBase Knowledge = TinyRules.Words.Knowledge();

    public static TheoryData<string> Cases => new(ExpectedProblems.Names(ExpectedProblems.CaseFolder));

    [Fact]
    public void Every_broken_case_has_its_expected_lines_beside_it()
    {
        string[] files = [.. Directory.GetFiles(ExpectedProblems.CaseFolder, "*.yaml").Concat(Directory.GetDirectories(ExpectedProblems.CaseFolder)).Select(f => Path.GetFileName(f)!)];

        files.Should().HaveCountGreaterThan(15);
        ExpectedProblems.Names(ExpectedProblems.CaseFolder).Should().BeEquivalentTo(files);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_broken_case_gives_every_problem_at_its_place(string name)
    {
        string path = Path.Combine(ExpectedProblems.CaseFolder, name);
        string shown = (Directory.Exists(path) ? Path.Combine(path, CaseReader.FileInFolder) : path).Replace('\\', '/');

        CaseReading reading = CaseReader.Read(Knowledge, path);

        reading.Case.Should().BeNull("a case with errors must not be diagnosed");
        reading.Problems.Select(p => ExpectedProblems.WithoutFile(p, shown)).ShouldBe(ExpectedProblems.Read(path));
    }

    [Fact]
    public void A_file_that_is_not_there_is_named()
    {
        CaseReading reading = CaseReader.Read(Knowledge, "no-such-case.yaml");

        reading.Problems.Select(p => p.ToString()).Should().Equal("no-such-case.yaml: error FW001: there is no case here. 'failwise case new' begins one.");
    }

    [Fact]
    public void A_misspelt_folder_is_named_with_the_case_that_lies_beside()
    {
        using TemporaryFolder folder = new();
        folder.Write("pump-3/case.yaml", "title: a pump\n");

        CaseReading reading = CaseReader.Read(Knowledge, Path.Combine(folder.Path, "pmup-3"));

        reading.Problems.Should().ContainSingle().Which.Message.Should().Contain("Did you mean 'pump-3'?");
    }

    [Fact]
    public void A_file_of_more_than_four_megabytes_is_not_read()
    {
        using TemporaryFolder folder = new();
        string path = folder.Write("large.yaml", "title: large\n# " + new string('x', 5 * 1024 * 1024));

        CaseReading reading = CaseReader.Read(Knowledge, path);

        reading.Problems.Should().ContainSingle().Which.ToString().Should().EndWith("large.yaml: error FW001: the file has 5 MB; a text file of at most 4 MB is expected here.");
    }

    [Fact]
    public void A_flood_of_values_is_refused_before_it_fills_the_memory()
    {
        using TemporaryFolder folder = new();
        string path = folder.Write("flood.yaml", "notes: [" + string.Concat(Enumerable.Repeat("a,", 210_000)) + "a]\n");

        CaseReading reading = CaseReader.Read(Knowledge, path);

        reading.Problems.Should().ContainSingle().Which.Code.Should().Be("FW003");
    }

    [Fact]
    public void Ten_thousand_brackets_do_not_overflow_the_stack()
    {
        using TemporaryFolder folder = new();
        string path = folder.Write("brackets.yaml", "notes: " + new string('[', 10_000) + "\n");

        CaseReading reading = CaseReader.Read(Knowledge, path);

        reading.Problems.Should().ContainSingle().Which.Code.Should().Be("FW003");
    }

    [Fact]
    public void A_photo_that_is_a_link_out_of_the_case_folder_is_refused()
    {
        using TemporaryFolder folder = new();
        string secret = folder.Write("secret.txt", "not for the report");
        folder.Write("case/case.yaml", "title: A link\nmachine: {kind: engine}\nsymptoms: [knocking]\nphotos: [{file: shell.jpg}]\n");
        File.CreateSymbolicLink(Path.Combine(folder.Path, "case", "shell.jpg"), secret);

        CaseReading reading = CaseReader.Read(Knowledge, Path.Combine(folder.Path, "case"));

        reading.Problems.Should().ContainSingle().Which.ToString().Should().Contain(":4:17: error FW029:").And.Contain("is a link to a file outside the case folder");
    }

    [Fact]
    public void A_photo_in_the_case_folder_is_accepted()
    {
        using TemporaryFolder folder = new();
        folder.Write("case/case.yaml", "title: A photo\nmachine: {kind: engine}\nsymptoms: [knocking]\nphotos: [{file: shell.jpg}]\n");
        folder.Write("case/shell.jpg", "x");

        CaseReading reading = CaseReader.Read(Knowledge, Path.Combine(folder.Path, "case"));

        reading.Problems.Should().BeEmpty();
        reading.Case!.Photos.Should().ContainSingle();
    }

    [Fact]
    public void Three_thousand_damaged_copies_of_the_example_give_problems_or_a_case_and_never_a_crash()
    {
        string example = File.ReadAllText(Repository.Folder("examples", "pump-engine", "case.yaml"));
        Random random = new(11);
        string[] pieces = ["{", "}", "[", "]", ":", "-", "\"", "'", "\t", "\n", "#", "&a ", "*a", "!", "|", ">", "%", "@", "? ", ", ", "---\n", "\u0000", "\uFEFF", "0"];
        int bad = 0;

        for (int i = 0; i < 3000; i++)
        {
            System.Text.StringBuilder damaged = new(example);
            for (int k = random.Next(1, 4); k > 0; k--)
            {
                int at = random.Next(damaged.Length);
                if (random.Next(2) == 0)
                {
                    damaged.Remove(at, Math.Min(random.Next(1, 12), damaged.Length - at));
                }

                damaged.Insert(Math.Min(at, damaged.Length), pieces[random.Next(pieces.Length)]);
            }

            Failwise.Problems.ProblemList problems = new();
            CaseReading? reading = Failwise.Yaml.YamlFile.Parse(damaged.ToString(), "damaged.yaml", problems) is { } root
                ? CaseReader.Read(Repository.Knowledge, root, "damaged.yaml", problems) : null;
            bad += reading?.Case is null ? 1 : 0;
            (reading?.Case is not null || problems.HasErrors).Should().BeTrue();
        }

        bad.Should().BeInRange(1000, 2999, "most damage is noticed");
    }

    [Fact]
    public void A_problem_line_carries_no_control_characters_of_the_file()
    {
        using TemporaryFolder folder = new();
        string path = folder.Write("escape.yaml", "\"ti\\e[31mtle\": x\n\"ti\\e[31mtle\": y\nmachine: {kind: \"en\\e[2Jgine\", mains: \"1,5 \\e[2J\"}\n");

        CaseReading reading = CaseReader.Read(Knowledge, path);

        reading.Problems.Should().HaveCountGreaterThan(3);
        reading.Problems.Should().OnlyContain(p => !p.Message.Any(char.IsControl));
    }
}

/// <summary>A folder for one test, gone afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("failwise-test-").FullName;

    public string Write(string name, string text)
    {
        string path = System.IO.Path.Combine(Path, name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
