using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Entry;

public class ShortCodeTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;
    private static readonly string Folder = Repository.Folder("tests", "Failwise.Tests", "Invalid", "entry");

    [Theory]
    [InlineData("MB3L wiped heavy", "observations", "{part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy}")]
    [InlineData("mb3l WIPED Heavy", "observations", "{part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy}")]
    [InlineData("MB1-5U ok", "observations", "{part: main-bearing, at: 1-5, on: upper, see: sound}")]
    [InlineData("MB1,3L wi 3 ?", "observations", "{part: main-bearing, at: [1, 3], on: lower, see: wiped, extent: moderate, sure: fairly-sure}")]
    [InlineData("PS1 scored T,N", "observations", "{part: piston-skirt, at: 1, on: [thrust-side, anti-thrust-side], see: scored}")]
    [InlineData("OP scored, worn, heavy", "observations", "{part: oil-pump, see: [scored, worn], extent: heavy}")]
    [InlineData("rings 2 stuck", "observations", "{part: piston-ring, at: 2, see: ring-stuck}")]
    [InlineData("relief valve is stuck", "observations", "{part: relief-valve, see: stuck}")]
    [InlineData("turbo-feed-line coked up", "observations", "{part: turbo-feed-line, see: coked}")]
    [InlineData("piston crown 1 coked up", "observations", "{part: piston-crown, at: 1, see: carboned}")]
    [InlineData("bent pushrod 3", "observations", "{part: pushrod, at: 3, see: bent}")]
    [InlineData("heavy carbon build-up on the piston crown 2", "observations", "{part: piston-crown, at: 2, see: carboned, extent: heavy}")]
    [InlineData("number 2 rod bearing wiped", "observations", "{part: rod-bearing, at: 2, see: wiped}")]
    [InlineData("selector fork worn on one side", "observations", "{part: selector-fork, on: one-side, see: fork-worn}")]
    [InlineData("second gear synchro ring worn", "observations", "{part: synchro-ring, at: 2, see: worn}")]
    [InlineData("the oil cooler not looked at", "not-looked-at", "oil-cooler")]
    [InlineData("CP* no blued", "observations", "{part: rod-journal, at: all, not: blued}")]
    [InlineData("CP4 blued??", "observations", "{part: rod-journal, at: 4, see: blued, sure: doubtful}")]
    [InlineData("big end 2 upper wiped rest ok", "observations", "{part: rod-bearing, at: 2, on: upper, see: wiped, rest: ok}")]
    [InlineData("OP ok \"end clearance: fine\"", "observations", "{part: oil-pump, see: sound, note: \"end clearance: fine\"}")]
    [InlineData("OP ok @pump.jpg", "observations", "{part: oil-pump, see: sound, photo: \"pump.jpg\"}")]
    [InlineData("OC nl", "not-looked-at", "oil-cooler")]
    [InlineData("OC nl \"sent away\"", "not-looked-at", "{part: oil-cooler, reason: sent away}")]
    [InlineData("hours-total 3900", "history", "{hours-total: 3900}")]
    [InlineData("main bearing 1L wiped", "observations", "{part: main-bearing, at: 1, on: lower, see: wiped}")]
    [InlineData("big end 1,3U ok", "observations", "{part: rod-bearing, at: [1, 3], on: upper, see: sound}")]
    [InlineData("!no compression one", "symptoms", "no-compression-one")]
    [InlineData("!no no compression one", "symptoms", "{not: no-compression-one}")]
    [InlineData("!no oil leak", "symptoms", "{not: oil-leak}")]
    [InlineData("MJ2 diameter = 57.94 mm max 58.00 mm with micrometer", "readings", "{quantity: diameter, part: main-journal, at: 2, value: 57.94 mm, limit: {max: 58.00 mm}, with: micrometer}")]
    public void Codes_mean_what_the_table_says(string codes, string section, string yaml)
    {
        CodeReading reading = ShortCodes.Read(Knowledge, codes);

        reading.Problems.Should().BeEmpty();
        CaseEntry entry = reading.Entries.Should().ContainSingle().Subject;
        entry.Section.Should().Be(section);
        entry.Yaml.Replace("\"pump.jpg\"", "pump.jpg", StringComparison.Ordinal).Should().Be(yaml.Replace("\"pump.jpg\"", "pump.jpg", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("sprocket teeth hooked")]
    [InlineData("brown rusty coolant")]
    public void A_word_that_begins_like_a_code_is_no_code(string words)
    {
        foreach (CaseEntry entry in ShortCodes.Read(Knowledge, words).Entries)
        {
            entry.Yaml.Should().NotContain("part: spline").And.NotContain("part: breather");
        }
    }

    [Fact]
    public void Symptoms_are_found_by_what_people_say_and_can_be_denied()
    {
        CodeReading reading = ShortCodes.Read(Knowledge, "!knock; !no parts already washed");

        reading.Problems.Should().BeEmpty();
        reading.Entries.Select(e => e.Section).Should().Equal("symptoms", "history");
        reading.Entries[1].Yaml.Should().Be("{not: parts-cleaned-before-looking}");
    }

    [Theory]
    [InlineData("gearbox", "turns-rough-by-hand")]
    [InlineData("steering", "steering-stiff")]
    public void What_people_call_the_same_is_what_such_a_machine_can_do(string kind, string symptom)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", $"title: Unit\nmachine: {{kind: {kind}}}\nsymptoms: [hard to turn]\n");
        Machine machine = CaseReader.Read(Knowledge, file).Case!.Machine;

        ShortCodes.Read(Knowledge, "!hard to turn", machine).Entries.Should().ContainSingle().Which.Yaml.Should().Be(symptom);
        CaseReader.Read(Knowledge, file).Case!.Symptoms.Should().ContainSingle().Which.Id.Should().Be(symptom);
        WordSearch.Find(Knowledge, "hard to turn", 4, [kind]).First(m => m.Kind == "symptom").Id.Should().Be(symptom);
    }

    [Fact]
    public void A_telling_word_counts_more_than_one_that_stands_everywhere()
    {
        WordRarity rarity = Knowledge.Rarity;

        rarity.Of("crankshaft").Should().BeLessThan(rarity.Of("circlip")).And.BeGreaterThan(rarity.Of("the"));
        rarity.Of("number").Should().Be(rarity.Of("on"), because: "words that join others say nothing, however rare they are");
        WordSearch.Find(Knowledge, "on the number of").Should().BeEmpty();
        WordSearch.Find(Knowledge, "the copper is showing on number three").First(m => m.Kind == "pattern").Id.Should().Be("copper-showing");
        WordSearch.Find(Knowledge, "will not turn", 9).Should().NotContain(m => m.Id == "burnt", because: "turn is not burn");
    }

    [Fact]
    public void Every_code_of_the_vocabulary_can_be_written()
    {
        string[] parts = [.. Knowledge.Codes.Where(c => c.Kind == "part").Select(c => c.Code)];
        string[] patterns = [.. Knowledge.Codes.Where(c => c.Kind == "pattern").Select(c => c.Code)];
        parts.Should().HaveCountGreaterThan(80);
        patterns.Should().HaveCountGreaterThan(30);

        CodeReading reading = ShortCodes.Read(Knowledge, string.Join("; ", parts.Select(p => p + " ok").Concat(patterns.Select(p => $"BT {p} 2"))));

        reading.Problems.Should().BeEmpty();
        reading.Entries.Should().HaveCount(parts.Length + patterns.Length);
        foreach (ShortCode code in Knowledge.Codes.Where(c => c.Kind == "part"))
        {
            ShortCodes.Read(Knowledge, code.Code + " ok").Entries.Single().Yaml.Should().Be($"{{part: {code.Id}, see: sound}}");
        }
    }

    public static TheoryData<string> Broken => new(ExpectedProblems.Names(Folder).Where(n => n.EndsWith(".codes", StringComparison.Ordinal)));

    [Theory]
    [MemberData(nameof(Broken))]
    public void Wrong_codes_give_every_problem_at_its_word(string name)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", "title: Pump\nmachine: {kind: engine, cylinders: 4, mains: 5}\nhistory: [parts-cleaned-before-looking]\n");
        string path = Path.Combine(Folder, name);

        CodeReading reading = ShortCodes.Read(Knowledge, File.ReadAllText(path));
        IReadOnlyList<Problem> more = reading.Entries.Count == 0 ? [] : CaseEditor.Add(Knowledge, file, reading.Entries, dryRun: true).Problems;

        reading.Problems.Concat(more).OrderBy(p => p.At.Line).ThenBy(p => p.At.Column).Select(p => p.ToString()).ShouldBe(ExpectedProblems.Read(path));
    }

    [Fact]
    public void Files_that_cannot_be_edited_say_so()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", "{title: Pump, machine: {kind: engine}}\n");
        List<string> lines = [.. CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, "OP ok").Entries).Problems.Select(p => ExpectedProblems.WithoutFile(p, file.Replace('\\', '/')))];
        using (FileStream held = new(Path.Combine(Path.GetDirectoryName(file)!, ".case.yaml.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None))
        {
            Action write = () => CaseStore.Locked(file, () => 0, tries: 2);
            lines.AddRange(write.Should().Throw<ProblemsException>().Which.Problems.Select(p => ExpectedProblems.WithoutFile(p, file)));
        }

        Action begin = () => CaseStart.RefuseExisting(Path.GetDirectoryName(file)!);
        lines.AddRange(begin.Should().Throw<ProblemsException>().Which.Problems.Select(p => ExpectedProblems.WithoutFile(p, file.Replace('\\', '/'))));
        File.WriteAllText(file, "title: Pump\nmachine: {kind: engine}\n");
        CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, "OP ok").Entries).Written.Should().BeTrue();
        File.WriteAllText(file, "title: Pump\nmachine: {kind: engine}\n");
        lines.Add(ExpectedProblems.WithoutFile(CaseEditor.Undo(file).Problem!, file.Replace('\\', '/')));

        lines.ShouldBe(ExpectedProblems.Read(Path.Combine(Folder, "files")));
    }
}
