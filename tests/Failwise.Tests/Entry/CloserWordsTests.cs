using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Entry;

public class CloserWordsTests
{
    private const string Head = "title: Pump\nmachine: {kind: engine, cylinders: 4, mains: 5}\n";
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    /// <summary>That the face of a break tells fatigue, twist and overload apart is common practice; no source is claimed for the list.</summary>
    [Fact]
    public void A_broken_crankshaft_can_be_said_closer_by_the_way_it_broke()
    {
        CloserWords.For(Knowledge, "crankshaft", "broken").Select(p => p.Id).Should().Contain(["fatigue-fracture", "torsion-fracture", "overload-fracture"]);
        CloserWords.For(Knowledge, "crankshaft", "fatigue-fracture").Should().BeEmpty("there is no closer word for it");
    }

    [Fact]
    public void A_word_that_most_rules_mean_as_it_stands_is_not_broad()
    {
        CloserWords.For(Knowledge, "oil-sump", "sludged").Should().BeEmpty("the cold soft kind is one among many, and rare");
    }

    [Theory]
    [InlineData("CK broken", 1)]
    [InlineData("CK broken; CK fatigue-fracture", 0)]
    [InlineData("CK broken; CK no fatigue-fracture", 0)]
    [InlineData("MB3L wiped", 0)]
    public void A_hint_stands_at_the_broad_word_alone(string codes, int hints)
    {
        (CaseEdit edit, IReadOnlyList<Problem> found) = HintsFor(codes.Replace("CK", "crankshaft", StringComparison.Ordinal));

        edit.Written.Should().BeTrue("a hint stops nothing");
        found.Should().HaveCount(hints);
        found.All(h => h.Severity == Severity.Hint && h.Code == "FW107" && h.At.Line == 1).Should().BeTrue();
    }

    [Theory]
    [InlineData("!knock", 1)]
    [InlineData("!knock; !piston slap", 0)]
    [InlineData("!no knock", 0)]
    [InlineData("!piston slap", 0)]
    public void A_knock_of_which_no_more_is_said_is_asked_about(string codes, int hints)
    {
        (_, IReadOnlyList<Problem> found) = HintsFor(codes);

        found.Should().HaveCount(hints);
        found.All(h => h.Message.Contains("knocking-bottom-end", StringComparison.Ordinal)).Should().BeTrue();
    }

    [Theory]
    [InlineData("journal 3 blued", "main-journal, rod-journal")]
    [InlineData("valve 2 bent", "exhaust-valve, intake-valve")]
    [InlineData("camshaft bent", null)]
    [InlineData("MJ3 blued", null)]
    public void A_word_that_leaves_open_which_part_is_meant_is_asked_about(string codes, string? parts)
    {
        (_, IReadOnlyList<Problem> found) = HintsFor(codes);

        IEnumerable<string> open = found.Select(h => h.Message).Where(m => m.Contains("leaves open", StringComparison.Ordinal));

        open.Should().HaveCount(parts is null ? 0 : 1);
        open.All(m => m.Contains(parts!, StringComparison.Ordinal)).Should().BeTrue();
    }

    [Fact]
    public void A_hint_names_the_closer_words_of_the_part()
    {
        (_, IReadOnlyList<Problem> found) = HintsFor("RG2 stuck");

        found.Select(h => h.ToString()).ShouldBe(ExpectedProblems.Read(Repository.Folder("tests", "Failwise.Tests", "Invalid", "entry", "broad")));
    }

    /// <summary>A hint that comes too often is no longer read. The published cases were encoded without knowing of these hints; a good half of them has none.</summary>
    [Fact]
    public void Hints_are_few()
    {
        TeardownCase[] cases = [.. Directory.GetDirectories(Repository.Folder("tests", "cases", "published")).Select(d => CaseReader.Read(Knowledge, d).Case).OfType<TeardownCase>()];

        cases.Length.Should().BeGreaterThan(200);
        cases.Average(c => CloserWords.Hints(Knowledge, c, _ => true).Count).Should().BeLessThan(0.7);
    }

    /// <summary>Adds the codes to an empty case and reads its hints.</summary>
    private static (CaseEdit Edit, IReadOnlyList<Problem> Hints) HintsFor(string codes)
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case.yaml", Head);
        CaseEdit edit = CaseEditor.Add(Knowledge, file, ShortCodes.Read(Knowledge, codes).Entries);
        return (edit, CloserWords.Hints(Knowledge, edit.Case!, _ => true));
    }
}
