using Failwise.Cases;
using Failwise.Causes;
using Failwise.Entry;
using Failwise.Knowledge;

namespace Failwise.Tests.Dialogue;

/// <summary>The same looks, written by hand, typed as codes from a sheet, and entered in the dialogue, are one case.</summary>
public class ThreeWaysTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    public static TheoryData<string> Sets => new(Directory.GetDirectories(Repository.Folder("tests", "Failwise.Tests", "Dialogue", "three-ways")).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Sets))]
    public void Three_ways_of_entering_give_one_diagnosis(string set)
    {
        string head = Text(set, "head.yaml");
        using Sitting byHand = new(head + Text(set, "by-hand.yaml")), codes = new(head), dialogue = new(head);

        CodeReading reading = ShortCodes.Read(Knowledge, Text(set, "codes.txt"));
        CaseEdit edit = CaseEditor.Add(Knowledge, codes.File, reading.Entries);
        dialogue.Press(string.Concat(Text(set, "keys.txt").Split('\n')).Replace("\\n", "\n", StringComparison.Ordinal).Replace("\\e", "\e", StringComparison.Ordinal));

        reading.Problems.Should().BeEmpty();
        edit.Problems.Should().BeEmpty();
        string expected = Say(byHand.Read());
        Say(codes.Read()).Should().Be(expected);
        Say(dialogue.Read()).Should().Be(expected);
        Diagnosis one = Diagnostician.Diagnose(Knowledge, byHand.Read()), two = Diagnostician.Diagnose(Knowledge, codes.Read()), three = Diagnostician.Diagnose(Knowledge, dialogue.Read());
        one.Causes.Ranked.Should().NotBeEmpty();
        Ranks(two).Should().Equal(Ranks(one));
        Ranks(three).Should().Equal(Ranks(one));
    }

    private static string Text(string set, string file) => File.ReadAllText(Repository.Folder("tests", "Failwise.Tests", "Dialogue", "three-ways", set, file)).ReplaceLineEndings("\n");

    private static IEnumerable<string> Ranks(Diagnosis d) => d.Causes.Ranked.Select(r => $"{r.Cause.Id} {r.Probability:0.000000}");

    /// <summary>What was seen and said, without where it stands in the file.</summary>
    private static string Say(TeardownCase c) => string.Join('\n',
    [
        .. c.Observations.Select(o => $"{o.Part} {string.Join('+', o.Places)} {o.Spread} {string.Join('+', o.On)} {o.Look} {o.Pattern} {o.Extent} {o.Sure}").Order(StringComparer.Ordinal),
        .. c.Symptoms.Concat(c.History).Select(s => $"{s.Id} {s.Holds}"), .. c.NotLookedAt.Select(n => "not looked at " + n.Part),
        .. c.Measurements.Select(m => $"{m.Part} {string.Join('+', m.Places)} {m.Quantity} {m.Value} {m.Limit?.Max}"),
    ]);
}
