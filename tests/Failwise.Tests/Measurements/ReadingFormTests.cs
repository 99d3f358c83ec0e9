using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Problems;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Measurements;

public class ReadingFormTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    [Fact]
    public void Readings_in_planes_and_directions_become_size_taper_and_out_of_round()
    {
        // By hand: planes (57.94 + 57.92)/2 = 57.93 and (57.90 + 57.90)/2 = 57.90; mean 57.915, taper 0.03, out-of-round 0.02.
        Reading[] readings = Assess("{part: main-journal, at: 3, unit: mm, readings: {a-x: 57.94, a-y: 57.92, b-x: 57.90, b-y: 57.90}}");

        readings.Select(r => (r.Measurement.Quantity, Math.Round(r.Value.Value, 6))).Should().Equal(("diameter", 57.915), ("taper", 0.03), ("out-of-round", 0.02));
        readings[0].Smallest!.Value.Should().Be(57.90);
        readings[0].Largest!.Value.Should().Be(57.94);
        readings[1].From.Should().Equal(1);
        readings[0].Measurement.Value.Should().Be("57.94 mm, 57.92 mm | 57.90 mm, 57.90 mm", because: "what was read is kept as written");
        readings[0].InBothSystems.Should().Be("57.915 mm (2.28012 in)", because: "57.915 / 25.4 is 2.28012");
    }

    [Fact]
    public void A_list_of_lists_says_the_same_as_names()
    {
        Reading[] named = Assess("{part: main-journal, at: 3, unit: mm, readings: {a-x: 57.94, a-y: 57.92, b-x: 57.90, b-y: 57.90}}");
        Reading[] listed = Assess("{part: main-journal, at: 3, unit: mm, readings: [[57.94, 57.92], [57.90, 57.90]]}");

        listed.Select(Say).Should().Equal(named.Select(Say));
    }

    [Fact]
    public void One_plane_gives_no_taper_and_one_direction_no_out_of_round()
    {
        Assess("{part: main-journal, at: 3, unit: mm, readings: [57.94, 57.92]}").Select(r => r.Kind).Should().Equal(ReadingKind.Size, ReadingKind.OutOfRound);
        Assess("{part: main-journal, at: 3, unit: mm, readings: [[57.94], [57.92]]}").Select(r => r.Kind).Should().Equal(ReadingKind.Size, ReadingKind.Taper);
    }

    [Fact]
    public void Inches_and_millimetres_give_the_same_judgement()
    {
        // 2.2811 in is 57.94 mm to the hundredth; the limit of 0.0030 in is 0.0762 mm and the clearance 2.2846 - 2.2811 = 0.0035 in.
        Reading[] readings = Assess(
            "{part: main-journal, at: 3, unit: in, readings: [2.2811, 2.2811], limit: {min: 57.93 mm}}, {part: main-bearing, at: 3, value: 58.029 mm, quantity: diameter}");

        readings[0].State.Should().Be(LimitState.Within);
        readings.Single(r => r.Kind == ReadingKind.Clearance).Value.In("in").Should().BeApproximately(0.0035, 0.0001);
    }

    [Fact]
    public void A_pair_becomes_a_clearance_with_the_uncertainty_of_both()
    {
        // By hand: 58.05 - 57.96 = 0.09; U = sqrt(0.006² + 0.008²) = 0.010; the limit 0.095 lies within 0.010 of it.
        Reading[] readings = Assess(
            "{part: rod-journal, at: 2, quantity: diameter, value: 57.96 mm, uncertainty: 0.006 mm}, {part: rod-bearing, at: 2, quantity: diameter, value: 58.05 mm, uncertainty: 0.008 mm}",
            "  - {part: rod-bearing, quantity: bearing-clearance, max: 0.095 mm}\n");

        Reading clearance = readings.Single(r => r.Kind == ReadingKind.Clearance);
        clearance.Measurement.Part.Should().Be("rod-bearing");
        clearance.Value.Text.Should().Be("0.09 mm");
        clearance.From.Should().Equal(2, 1);
        clearance.State.Should().Be(LimitState.TooClose);
        clearance.ProbabilityWithin.Should().BeApproximately(0.841, 0.001, because: "(0.095 - 0.090) / 0.005 is one standard deviation");
    }

    [Fact]
    public void Places_that_were_not_both_measured_give_no_clearance() =>
        Assess("{part: main-journal, unit: mm, table: {1: 57.98, 2: 57.97}}, {part: main-bearing, unit: mm, table: {2: 58.04, 3: 58.04}}")
            .Where(r => r.Kind == ReadingKind.Clearance).Select(r => r.Measurement.Places.Single()).Should().Equal(2);

    [Fact]
    public void Of_several_readings_the_smallest_stands_against_the_lower_limit()
    {
        // The mean 57.935 lies inside; the smallest reading does not.
        Reading size = Assess("{part: main-journal, at: 1, unit: mm, readings: [57.95, 57.92], limit: {min: 57.93}}")[0];

        size.State.Should().Be(LimitState.Below);
    }

    [Fact]
    public void A_reading_exactly_on_its_limit_is_within() =>
        // 60.10 - 60.00 is 0.1000000000000014 in binary: a rounding error is no wear.
        Assess("{part: main-journal, at: 1, quantity: diameter, value: 60.00 mm}, {part: main-bearing, at: 1, quantity: diameter, value: 60.10 mm}", "  - {part: main-bearing, quantity: bearing-clearance, max: 0.10 mm}\n")
            .Single(r => r.Kind == ReadingKind.Clearance).State.Should().Be(LimitState.Within);

    [Fact]
    public void More_wear_never_brings_a_part_back_within_its_limit()
    {
        Random random = new(20_260);
        for (int round = 0; round < 100; round++)
        {
            double size = 57.8 + 0.2 * random.NextDouble(), less = size - 0.1 * random.NextDouble(), spread = 0.02 * random.NextDouble();
            Reading[] worn = Assess(At(less)), before = Assess(At(size));
            (worn[0].State == LimitState.Below || before[0].State != LimitState.Below).Should().BeTrue();
            (worn[0].ProbabilityWithin <= before[0].ProbabilityWithin + 1e-12).Should().BeTrue();

            string At(double mm) => FormattableString.Invariant($"{{part: main-journal, at: 1, unit: mm, uncertainty: {spread + 0.001:F4}, readings: [{mm:F3}], limit: {{min: 57.93}}}}");
        }
    }

    private static string Say(Reading r) => $"{r.Number} {r.Measurement.Quantity} {r.Value.Text} {r.Smallest} {r.Largest} {r.State}";

    private static Reading[] Assess(string readings, string limits = "")
    {
        using TemporaryFolder folder = new();
        if (limits.Length > 0)
        {
            folder.Write("limits.yaml", "title: Invented limits\nfrom: invented\nlimits:\n" + limits);
        }

        CaseReading reading = CaseReader.Read(Knowledge, folder.Write("case.yaml", $"title: A case\nmachine: {{kind: engine, cylinders: 4, mains: 5}}\nreadings: [{readings}]\n"));
        reading.Problems.Where(p => p.Severity == Severity.Error).Should().BeEmpty();
        return [.. MeasurementAssessor.Assess(Knowledge, reading.Case!).Readings];
    }
}
