using Failwise.Cases;
using Failwise.Problems;

namespace Failwise.Tests.Measurements;

/// <summary>A slip is asked about where it stands; the case is read as written.</summary>
public class SlipWarningTests
{
    [Theory]
    [InlineData("inches for millimetres", "{part: main-journal, at: 1, quantity: diameter, value: 2.281 mm, new: {min: 57.93 mm, max: 57.96 mm}}", "were inches and millimetres mixed?")]
    [InlineData("a clearance in the wrong unit", "{quantity: bearing-clearance, part: main-bearing, value: 2 mm, limit: {min: 0.04 mm, max: 0.10 mm}}", "were inches and millimetres mixed?")]
    [InlineData("a clearance in inches called millimetres", "{quantity: bearing-clearance, part: main-bearing, value: 0.0025 mm, limit: {min: 0.04 mm, max: 0.10 mm}}", "were inches and millimetres mixed?")]
    [InlineData("one turn of a metric thimble", "{part: main-journal, unit: mm, table: {1: 57.94, 2: 57.44, 3: 57.95, 4: 57.94}}", "one turn of the thimble (0.5 mm)")]
    [InlineData("one turn of an inch thimble", "{part: main-journal, unit: in, table: {1: 2.2811, 2: 2.2562, 3: 2.2811, 4: 2.2810}}", "one turn of the thimble (0.025 in)")]
    [InlineData("one turn within one journal", "{part: main-journal, at: 1, unit: mm, readings: {a-x: 57.94, a-y: 58.44, b-x: 57.93, b-y: 57.94}}", "one turn of the thimble (0.5 mm)")]
    [InlineData("pound-inches for pound-feet", "{quantity: loosening-torque, part: rod-bolt, value: 600 lbf·in, limit: {min: 45 lbf·ft, max: 55 lbf·ft}}", null)]
    [InlineData("pound-feet meant, pound-inches written", "{quantity: loosening-torque, part: rod-bolt, value: 50 lbf·in, limit: {min: 45 lbf·ft, max: 55 lbf·ft}}", "were lbf·ft and lbf·in mixed?")]
    [InlineData("journal and bore exchanged", "{part: main-journal, at: 1, quantity: diameter, value: 58.02 mm}, {part: main-bearing, at: 1, quantity: diameter, value: 57.95 mm}", "were the two swapped?")]
    [InlineData("a journal larger than new", "{part: main-journal, at: 1, quantity: diameter, value: 58.02 mm, new: {min: 57.98 mm, max: 58.00 mm}}", "larger than a new part (58.00 mm at most)")]
    [InlineData("a bore smaller than new", "{part: cylinder-liner, at: 1, quantity: diameter, value: 99.96 mm, new: {min: 100.00 mm, max: 100.02 mm}}", "smaller than a new bore (100.00 mm at least)")]
    [InlineData("a wear limit inside the new size", "{quantity: bearing-clearance, part: rod-bearing, value: 0.05 mm, limit: {max: 0.03 mm}, new: {min: 0.010 mm, max: 0.066 mm}}", null)]
    [InlineData("honest wear", "{part: main-journal, unit: mm, new: {min: 57.98, max: 58.00}, limit: {min: 57.93}, table: {1: 57.96, 2: 57.94, 3: 57.95, 4: 57.90}}", null)]
    [InlineData("a small run-out under a plain limit", "{quantity: run-out, part: shaft, value: 0.003 mm, limit: {max: 0.05 mm}}", null)]
    [InlineData("a clearance five times its limit", "{quantity: bearing-clearance, part: main-bearing, value: 0.50 mm, limit: {min: 0.04 mm, max: 0.10 mm}}", null)]
    public void A_slip_is_asked_about_and_an_honest_reading_is_left_alone(string what, string readings, string? question)
    {
        CaseReading reading = Read(readings);

        reading.Case.Should().NotBeNull(because: what);
        Problem[] asked = [.. reading.Problems.Where(p => p.Code == "FW060")];
        if (question is null)
        {
            asked.Should().BeEmpty(because: what);
            return;
        }

        asked.Should().ContainSingle(because: what);
        asked[0].Severity.Should().Be(Severity.Warning);
        asked[0].Message.Should().Contain(question);
        asked[0].At.Line.Should().Be(3);
        reading.Case!.Warnings.Should().Contain(asked[0]);
    }

    [Fact]
    public void Only_the_odd_reading_of_a_row_is_asked_about_and_at_its_own_place()
    {
        CaseReading reading = Read("{part: main-journal, unit: mm, table: {1: {a-x: 57.94, a-y: 57.95}, 2: {a-x: 57.94, a-y: 57.45}, 3: 57.95}}");

        Problem asked = reading.Problems.Single();
        "readings: [{part: main-journal, unit: mm, table: {1: {a-x: 57.94, a-y: 57.95}, 2: {a-x: 57.94, a-y: 57.45}, 3: 57.95}}]"[(asked.At.Column - 1)..].Should().StartWith("57.45");
    }

    [Fact]
    public void A_comma_in_a_reading_is_an_error_at_its_place()
    {
        CaseReading reading = Read("{part: main-journal, unit: mm, readings: [\"57,94\", 57.95]}");

        reading.Case.Should().BeNull();
        reading.Problems.Single().Code.Should().Be("FW011");
    }

    private static CaseReading Read(string readings) =>
        Bench.Read(Repository.Knowledge, $"title: A case\nmachine: {{kind: engine, cylinders: 4, mains: 5}}\nreadings: [{readings}]\n");
}
