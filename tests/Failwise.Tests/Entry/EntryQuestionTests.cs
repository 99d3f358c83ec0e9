using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Entry;

public class EntryQuestionTests
{
    private const string Head = "title: Pump\nmachine: {kind: engine, cylinders: 4, mains: 5}\n";
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    [Fact]
    public void What_is_kept_in_spite_of_a_question_says_so_in_its_note()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head + "observations:\n  - {part: rod-journal, at: 3, see: blued, extent: light}\n");

        CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, "CP3 blued heavy \"by lamp light\"; CP1 ok").Entries, anyway: true).Written.Should().BeTrue();

        TeardownCase teardown = CaseReader.Read(Knowledge, file).Case!;
        teardown.Observations[1].Note.Should().Be("by lamp light (kept as written, asked: FW091)");
        teardown.Observations[1].Extent.Should().Be(Extent.Heavy);
        teardown.Observations[2].Note.Should().BeNull("nothing was asked about it");
    }

    [Theory]
    [InlineData("readings:\n  - {quantity: diameter, part: main-journal, at: 2, value: 57.94 mm}\n", "MJ2 diameter = 57.49 mm", "FW091")]
    [InlineData("readings:\n  - {quantity: diameter, part: main-journal, at: 2, value: 57.94 mm}\n", "MJ2 diameter = 57.94 mm", "FW092")]
    [InlineData("observations:\n  - {part: oil-cooler, see: sound}\n", "OC nl", "FW091")]
    [InlineData("not-looked-at: [oil-cooler]\nobservations: []\n", "OC nl", "FW092")]
    [InlineData("", "MB3D polished", "FW099")]
    [InlineData("history: [parts-cleaned-before-looking]\n", "OS sludged", "FW094")]
    public void What_a_careful_person_would_ask_is_asked_once_and_nothing_is_written(string written, string codes, string question)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head + "symptoms: [oil-pressure-low]\n" + written);
        string before = File.ReadAllText(file);

        CaseEdit edit = CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, codes).Entries);

        edit.Problems.Select(p => p.Code).Should().Equal(question);
        edit.Written.Should().BeFalse();
        File.ReadAllText(file).Should().Be(before);
    }

    [Theory]
    [InlineData("MJ3 diameter = 57.94 mm")]
    [InlineData("MJ2 diameter = 57.94 mm; MJ2 taper = 0.01 mm")]
    [InlineData("OC ok; MB3L wiped; MB3U ok; OS sludged")]
    public void Plain_entries_are_not_asked_about(string codes)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head);

        CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, codes).Entries).Problems.Should().BeEmpty();
    }

    /// <summary>A question that comes too often is no longer read. The published cases were encoded without knowing of these questions.</summary>
    [Fact]
    public void Few_observations_of_the_published_cases_would_be_asked_about()
    {
        int all = 0;
        List<string> asked = [];
        foreach (string file in Directory.EnumerateFiles(Repository.Folder("tests", "cases", "published"), "case.yaml", SearchOption.AllDirectories))
        {
            TeardownCase teardown = CaseReader.Read(Knowledge, file).Case!;
            CaseEntry[] entries = [.. teardown.Observations.Select(o => o.Location).Distinct().Select(at => new CaseEntry("observations", "", at))];
            all += entries.Length;
            asked.AddRange(EntryQuestions.Ask(Knowledge, teardown, entries).Select(q => q.ToString()));
        }

        all.Should().BeGreaterThan(700);
        asked.Count.Should().BeLessThan(all / 10, string.Join('\n', asked));
    }
}
