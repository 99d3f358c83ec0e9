using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Measurements;

public class LimitTableTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    private const string OneReading = "readings: [{quantity: bearing-clearance, part: main-bearing, at: 2, value: 0.12 mm}]\n";

    [Fact]
    public void The_limit_nearest_to_the_reading_wins()
    {
        using TemporaryFolder folder = new();
        string shop = folder.Write("shop/limits-of-the-shop.yaml", File("0.05 mm", "shop"));
        folder.Write("case/limits.yaml", File("0.10 mm", "beside the case"));
        folder.Write("case/named.yaml", File("0.11 mm", "named"));

        From(folder, OneReading, shop).Should().Be((LimitState.Above, "beside the case"));
        From(folder, "limits: named.yaml\n" + OneReading, shop).Should().Be((LimitState.Above, "named"));
        From(folder, "limits: named.yaml\nreadings: [{quantity: bearing-clearance, part: main-bearing, at: 2, value: 0.12 mm, limit: {max: 0.20 mm, from: plate on the engine}}]\n", shop)
            .Should().Be((LimitState.Within, "plate on the engine"));
        System.IO.File.Delete(Path.Combine(folder.Path, "case", "limits.yaml"));
        From(folder, OneReading, shop).Should().Be((LimitState.Above, "shop"));
        From(folder, OneReading, null).Should().Be((LimitState.NoLimit, null));
    }

    [Fact]
    public void A_published_example_is_used_only_where_it_is_named_and_says_that_it_is_one()
    {
        Knowledge.Limits.Should().NotBeEmpty();
        Knowledge.Limits.Values.SelectMany(l => l.Rows).Should().OnlyContain(r => r.Example);
        Knowledge.Limits.Values.Should().OnlyContain(l => l.Sources.Count > 0 && l.Id.StartsWith("example-"));
        using TemporaryFolder folder = new();

        Read(folder, OneReading, null).State.Should().Be(LimitState.NoLimit);
        Reading named = Read(folder, "limits: example-earthmover-diesel-mains\n" + OneReading, null);
        named.State.Should().Be(LimitState.Above, because: "TM 5-3805-281-24-2 allows 0.107 mm");
        named.Measurement.Limit!.Example.Should().BeTrue();
    }

    [Fact]
    public void The_narrowest_part_of_a_table_wins()
    {
        using TemporaryFolder folder = new();
        folder.Write("case/limits.yaml",
            "title: Limits\nfrom: book\nlimits:\n  - {part: plain-bearing, quantity: bearing-clearance, max: 0.05 mm}\n  - {part: main shell, quantity: Bearing Clearance, max: 0.15 mm}\n");

        Read(folder, OneReading, null).State.Should().Be(LimitState.Within, because: "words of the shop and capitals do not matter, and a main shell is narrower than a shell");
    }

    [Fact]
    public void A_broken_limit_file_shows_every_problem_in_its_own_file()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("case/limits.yaml",
            "title: Limits\nlimits:\n  - {part: main-baring, quantity: diameter, min: 5 mm}\n  - {part: main-bearing, quantity: bearing-clearance, max: 0,05 mm}\n  - {part: main-bearing, quantity: bearing-clearance, min: 2 mm, max: 3 bar}\n  - {part: main-bearing, quantity: bearing-clearance, max: 0.03 mm, new: {max: 0.06 mm}}\n".Replace("0,05 mm", "\"0,05 mm\""));
        folder.Write("case/case.yaml", "title: A case\nmachine: {kind: engine, mains: 5}\n" + OneReading);

        CaseReading reading = CaseReader.Read(Knowledge, Path.Combine(folder.Path, "case"));

        reading.Case.Should().BeNull();
        string shown = file.Replace('\\', '/');
        reading.Problems.Select(p => p.ToString()[shown.Length..]).Should().SatisfyRespectively(
            p => p.Should().StartWith(":1:1: error FW006: a limit file needs the key 'from'"),
            p => p.Should().StartWith(":3:12: error FW012: unknown part 'main-baring'. Did you mean 'main-bearing'?"),
            p => p.Should().StartWith(":4:60: error FW011:"),
            p => p.Should().StartWith(":5:71: error FW030:"),
            p => p.Should().StartWith(":6:60: warning FW060: the wear limit 0.03 mm is tighter than the 0.06 mm allowed for a new part"));
    }

    private static string File(string max, string from) =>
        $"title: Limits\nfrom: {from}\nlimits:\n  - {{part: main-bearing, quantity: bearing-clearance, max: {max}}}\n";

    private static (LimitState, string?) From(TemporaryFolder folder, string yaml, string? shop)
    {
        Reading reading = Read(folder, yaml, shop);
        return (reading.State, reading.Measurement.Limit?.From);
    }

    private static Reading Read(TemporaryFolder folder, string yaml, string? shop)
    {
        folder.Write("case/case.yaml", "title: A case\nmachine: {kind: engine, mains: 5}\n" + yaml);
        CaseReading reading = CaseReader.Read(Knowledge, Path.Combine(folder.Path, "case"), shop);
        reading.Problems.Should().BeEmpty();
        return MeasurementAssessor.Assess(Knowledge, reading.Case!).Readings.Single();
    }
}
