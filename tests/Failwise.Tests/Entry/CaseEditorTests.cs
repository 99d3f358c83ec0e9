using System.Text;
using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Entry;

/// <summary>What the tool adds to a case leaves every other character where it was.</summary>
public class CaseEditorTests
{
    private const string Head = "# the co-operative's pump\ntitle: Pump   # east field\nmachine: {kind: engine, cylinders: 4, mains: 5}\n";
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    public static TheoryData<string, string> Texts => new()
    {
        { "no list yet", Head },
        { "no line end", Head.TrimEnd('\n') },
        { "a list", Head + "observations:\n  - {part: oil-pump, see: sound}   # looked at twice\n\n# tail\n" },
        { "a list at the margin", Head + "observations:\n- part: oil-pump\n  see: sound\n  # about the pump\nnotes: Anything.\n" },
        { "a list without a line end", Head + "observations:\n  - {part: oil-pump, see: sound}" },
        { "a list in brackets", Head + "observations: [{part: oil-pump, see: sound}]\nnotes: x\n" },
        { "an empty list in brackets", Head + "observations: []\nnotes: x\n" },
        { "brackets over several lines", Head + "observations: [\n  {part: oil-pump, see: sound},   # first, and last\n  ]\n" },
        { "an empty key", Head + "observations:   # nothing yet\nnotes: x\n" },
        { "an empty key at the end", Head + "observations:" },
        { "a folded note last", Head + "observations:\n  - part: oil-pump\n    see: sound\n    note: >\n      Long and\n      folded.\n\nnotes: x\n" },
        { "a literal note at the end", Head + "observations:\n  - part: oil-pump\n    see: sound\n    note: |\n      As written.\n" },
        { "an end mark", Head + "observations:\n  - {part: oil-pump, see: sound}\n...\n" },
        { "an end mark and no list", "---\n" + Head + "...\n" },
        { "long dashes", Head + "observations:\n    -   part: oil-pump\n        see: sound\n" },
        { "brackets with a comma in a comment", Head + "observations: [\n  {part: oil-pump, see: sound}   # first, and last\n  ]\n" },
        { "brackets with a comma on a line of its own", Head + "observations: [\n  {part: oil-pump, see: sound}   # first\n  ,\n  ]\n" },
        { "another script", Head + "observations:\n  - {part: oil-pump, see: sound, note: \"\u00dcber \U0001F527 \u0645\"}\nnotes: x\n" },
        { "Windows line ends", (Head + "observations:\n  - {part: oil-pump, see: sound}\n# tail\n").Replace("\n", "\r\n", StringComparison.Ordinal) },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void An_entry_is_added_and_nothing_else_moves(string what, string text)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", text);

        CaseEdit edit = Add(file, "CP3 blued heavy \"straw: to blue\"");

        edit.Written.Should().BeTrue(what);
        string after = File.ReadAllText(file);
        IsLonger(text, after).Should().BeTrue("the old text stands in the new one, cut at one place");
        TeardownCase teardown = CaseReader.Read(Knowledge, file).Case!;
        teardown.Observations[^1].Part.Should().Be("rod-journal");
        teardown.Observations[^1].Note.Should().Be("straw: to blue");
        File.ReadAllText(file + "~").Should().Be(text, "the last state is kept");
        if (text.Contains("\r\n", StringComparison.Ordinal))
        {
            after.Replace("\r\n", "", StringComparison.Ordinal).Should().NotContain("\n");
        }
    }

    [Fact]
    public void Every_case_of_the_project_takes_an_entry_in_each_list()
    {
        string[] files = [.. Directory.EnumerateFiles(Repository.Folder("tests", "cases"), "case.yaml", SearchOption.AllDirectories).Concat(Directory.EnumerateFiles(Repository.Folder("examples"), "case.yaml", SearchOption.AllDirectories))];
        files.Should().HaveCountGreaterThan(250);
        foreach (string file in files)
        {
            string text = File.ReadAllText(file);
            ProblemList problems = new();
            CaseEntry[] entries =
            [
                new("observations", "{part: bolt, see: sound}", default), new("history", "{note: added}", default),
                new("symptoms", "{note: added}", default), new("not-looked-at", "bolt", default),
            ];

            string? after = CaseText.Add(text, file, entries, problems)?.Text;

            after.Should().NotBeNull($"{file}: {string.Join('\n', problems.All)}");
            after!.Length.Should().BeGreaterThan(text.Length);
        }
    }

    [Fact]
    public void A_byte_order_mark_stays()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", "");
        File.WriteAllBytes(file, [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Head)]);

        Add(file, "OP ok").Written.Should().BeTrue();

        File.ReadAllBytes(file).AsSpan().StartsWith(Encoding.UTF8.Preamble).Should().BeTrue();
    }

    [Theory]
    [InlineData("{title: Pump, machine: {kind: engine}}\n")]
    [InlineData("title: Pump\nmachine: {kind: engine}\nobservations: {part: oil-pump, see: sound}\n")]
    public void A_file_that_cannot_take_an_entry_is_left_alone(string text)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", text);

        CaseEdit edit = Add(file, "OP ok");

        edit.Written.Should().BeFalse();
        edit.Problems.Should().Contain(p => p.Code == "FW090" || p.Code == "FW007");
        File.ReadAllText(file).Should().Be(text);
        File.Exists(file + "~").Should().BeFalse();
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void Undo_takes_back_one_edit_after_the_other_to_the_last_byte(string what, string text)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", text);
        CaseEditor.Undo(file).Done.Should().BeFalse("nothing was done yet");
        Add(file, "CP3 blued heavy; BE2 ok");
        string once = File.ReadAllText(file);
        Add(file, "OC nl; hours-total 3900");

        CaseEditor.Undo(file).Done.Should().BeTrue(what);
        File.ReadAllText(file).Should().Be(once, what);
        CaseEditor.Undo(file).Done.Should().BeTrue(what);
        File.ReadAllText(file).Should().Be(text, what);
        CaseEditor.Undo(file).Done.Should().BeFalse();
        File.ReadAllText(file + "~").Should().Be(once, "the state before the last change is kept");
    }

    [Fact]
    public void Undo_leaves_what_was_edited_by_hand_since()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head + "observations:\n  - {part: oil-pump, see: sound}\n");
        Add(file, "CP3 blued heavy");
        File.WriteAllText(file, "# seen by two of us\n" + File.ReadAllText(file) + "  - {part: oil-filter, see: sound}\n");

        CaseEditor.Undo(file).Done.Should().BeTrue();

        File.ReadAllText(file).Should().Be("# seen by two of us\n" + Head + "observations:\n  - {part: oil-pump, see: sound}\n  - {part: oil-filter, see: sound}\n");
    }

    [Fact]
    public void An_entry_that_was_changed_by_hand_is_not_taken_back()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head);
        Add(file, "OP ok");
        Add(file, "CP3 blued heavy");
        string changed = File.ReadAllText(file).Replace("heavy", "light", StringComparison.Ordinal);
        File.WriteAllText(file, changed);

        CaseUndo undo = CaseEditor.Undo(file);

        undo.Done.Should().BeFalse();
        undo.Problem!.Code.Should().Be("FW090");
        File.ReadAllText(file).Should().Be(changed);
    }

    [Fact]
    public void Questions_stop_an_entry_until_the_person_insists()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head + "observations:\n  - {part: rod-journal, at: 3, see: blued, extent: light}\n");

        Add(file, "CP3 blued heavy").Problems.Should().ContainSingle().Which.Code.Should().Be("FW091");
        CaseReader.Read(Knowledge, file).Case!.Observations.Should().HaveCount(1);

        CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, "CP3 blued heavy").Entries, anyway: true).Written.Should().BeTrue();
        CaseReader.Read(Knowledge, file).Case!.Observations.Should().HaveCount(2);
    }

    [Fact]
    public void A_dry_run_writes_nothing()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head);

        CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, "OP ok").Entries, dryRun: true).Case!.Observations.Should().HaveCount(1);

        File.ReadAllText(file).Should().Be(Head);
        Directory.GetFiles(Path.GetDirectoryName(file)!).Should().HaveCount(1);
    }

    private static CaseEdit Add(string file, string codes)
    {
        CodeReading reading = ShortCodes.Read(Knowledge, codes);
        reading.Problems.Should().BeEmpty();
        return CaseEditor.Add(Knowledge, file, reading.Entries);
    }

    /// <summary>True when the longer text is the shorter one with one piece put in.</summary>
    private static bool IsLonger(string shorter, string longer)
    {
        int head = 0;
        while (head < shorter.Length && shorter[head] == longer[head])
        {
            head++;
        }

        int tail = 0;
        while (tail < shorter.Length - head && shorter[^(tail + 1)] == longer[^(tail + 1)])
        {
            tail++;
        }

        return head + tail == shorter.Length && longer.Length > shorter.Length;
    }

    [Fact]
    public void Mistakes_that_stood_in_the_case_before_are_told_and_stop_nothing()
    {
        using TemporaryFolder folder = new();
        string wrong = folder.Write("wrong.yaml", "title: Pump\nmachine: {kind: engine, features: [dissel]}\n");
        string begun = folder.Write("begun.yaml", "title: Pump\nmachine: {kind: engine, features: [diesel]}\n");

        CaseEdit edit = CaseEditor.Add(Knowledge, wrong, ShortCodes.Read(Knowledge, "OP ok").Entries);

        edit.Written.Should().BeTrue();
        edit.Standing.Should().ContainSingle().Which.ToString().Should().Contain("wrong.yaml:2:").And.Contain("error FW019").And.Contain("Did you mean 'diesel'?");
        CaseEditor.Add(Knowledge, begun, ShortCodes.Read(Knowledge, "OP ok").Entries).Standing.Should().BeEmpty();
    }
}
