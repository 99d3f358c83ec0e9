using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Measurements;

/// <summary>
/// Three invented engines whose figures were worked by hand: the figures alone lead to the finding, and they move the ranking the way an
/// experienced engine builder expects.
/// </summary>
public class MeasuredEngineTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    private const string Engine =
        """
        title: An invented engine
        machine: {kind: engine, cylinders: 4, mains: 5, feed: [1, 2, 3, 4, 5], features: [diesel, four-stroke, pressure-fed, plain-bearings]}

        """;

    // By hand, bore less mean journal: 60.05 - 59.99 = 0.06; 60.05 - 59.98 = 0.07; 60.06 - 59.98 = 0.08; 60.08 - 59.97 = 0.11;
    // No. 5 has planes (59.95 + 59.93)/2 = 59.94 and (59.96 + 59.94)/2 = 59.95: mean 59.945, taper 0.01, out-of-round 0.02,
    // clearance 60.09 - 59.945 = 0.145. U of a clearance is sqrt(0.004² + 0.006²) = 0.0072: No. 4 at 0.11 and No. 5 lie beyond
    // 0.10 by more than that, No. 1 to 3 inside it by more.
    private const string WornAlongTheFeed =
        """
        readings:
          - part: main-journal
            unit: mm
            uncertainty: 0.004
            table:
              1: {a-x: 59.99, a-y: 59.99, b-x: 59.99, b-y: 59.99}
              2: 59.98
              3: 59.98
              4: 59.97
              5: {a-x: 59.95, a-y: 59.93, b-x: 59.96, b-y: 59.94}
          - {part: main-bearing, unit: mm, uncertainty: 0.006, table: {1: 60.05, 2: 60.05, 3: 60.06, 4: 60.08, 5: 60.09}}

        """;

    // By hand: rate = G d⁴/(8 D³ n) = 79300 x 1.6⁴/(8 x 11³ x 9) = 519 701/95 832 = 5.42 N/mm; force when shut 5.42 x 8.5 = 46.1 N;
    // area = pi 12²/4 = 113.1 mm²; opening 0.408 MPa = 4.08 bar, which is 77 % of 5.3 bar.
    // Gallery: SAE 30 at 100 °C (212 °F) is 0.0141 exp(1360/307) = 1.18 microreyn = 8.16 mPa·s; each bearing leaks
    // pi D h³ p/(6 mu l) = pi 0.06 (3e-5)³ 5.3e5/(6 x 0.00816 x 0.01) = 5.5e-6 m³/s = 0.33 L/min: five take 1.7 of 8 L/min.
    private const string ShortSpring =
        """
        readings:
          - {part: main-journal, unit: mm, uncertainty: 0.004, table: {1: 59.98, 2: 59.98, 3: 59.98, 4: 59.98, 5: 59.98}}
          - {part: main-bearing, unit: mm, uncertainty: 0.006, table: {1: 60.04, 2: 60.04, 3: 60.04, 4: 60.04, 5: 60.04}}
        numbers:
          - {work-out: relief-valve, part: relief-valve, given: {wire: 1.6 mm, mean-diameter: 11.0 mm, active-coils: 9, preload: 8.5 mm, seat: 12 mm, should-be: 5.3 bar}}
          - {work-out: oil-gallery, part: main-bearing, when: hot idle, given: {grade: SAE 30, oil-temperature: 100 °C, land: 10 mm, pump-delivery: 8 L/min, relief-pressure: 5.3 bar}}

        """;

    // By hand: SAE 10 at 125 °C (257 °F) is 0.0158 exp(1157.5/352) = 0.423 microreyn = 2.92 mPa·s; P = 3500/(0.05 x 0.02) = 3.5 MPa;
    // S = (25/0.03)² x 0.00292 x 10.83/3.5e6 = 0.00627, below the finite table at l/d 0.4; short bearing: S (l/d)² = 0.001004 gives
    // e = 0.9444, film 0.03 (1 - 0.9444) = 0.00167 mm; lambda = 1.67/sqrt(0.8² + 1.6²) = 0.93.
    private const string ThinHotOil =
        """
        numbers:
          - work-out: bearing-film
            part: rod-bearing
            at: 3
            when: hot idle
            given: {grade: SAE 10, oil-temperature: 125 °C, diameter: 50 mm, length: 20 mm, clearance: 0.06 mm, speed: 650 rpm, load: 3.5 kN, journal-rq: 0.8 µm, bearing-rq: 1.6 µm}

        """;

    [Fact]
    public void Clearances_that_grow_along_the_feed_point_to_the_oil_pressure()
    {
        TeardownCase teardown = Read("symptoms: [knocking-bottom-end]\nlimits: limits.yaml\n" + WornAlongTheFeed);

        Reading[] clearances = [.. MeasurementAssessor.Assess(Knowledge, teardown).Readings.Where(r => r.Kind == ReadingKind.Clearance)];
        clearances.Select(r => Math.Round(r.Value.Value, 4)).Should().Equal(0.06, 0.07, 0.08, 0.11, 0.145);
        clearances.Select(r => r.State).Should().Equal(LimitState.Within, LimitState.Within, LimitState.Within, LimitState.Above, LimitState.Above);
        Fired(teardown).Should().Contain("clearance-worse-along-feed").And.NotContain("main-clearance-beyond-on-all");
        Change(teardown, "oil-pressure-low").Should().BeGreaterThan(1);
        Change(teardown, "oil-pressure-low").Should().BeGreaterThan(Change(teardown, "cap-mixed-or-reversed"));
    }

    [Fact]
    public void A_short_relief_spring_with_good_clearances_is_named_and_the_bearings_are_let_off()
    {
        TeardownCase teardown = Read("symptoms: [oil-pressure-low-hot]\nlimits: limits.yaml\n" + ShortSpring);

        WorkedNumber valve = MeasurementAssessor.Assess(Knowledge, teardown).Calculations.Single(w => w.Result.Calculation.Id == "relief-valve-pressure");
        valve.Result["cracking-pressure"]!.In("bar").Should().BeApproximately(4.08, 0.01);
        valve.Result["against-should-be"]!.Number.Should().BeApproximately(76.9, 0.1);
        Fired(teardown).Should().Contain("relief-spring-weak-by-figures").And.NotContain("clearances-drain-the-gallery");
        Change(teardown, "relief-spring-weak").Should().BeGreaterThan(5);
        Change(teardown, "bearing-life-used-up").Should().BeLessThan(1);
        CauseRanking ranking = Diagnostician.Diagnose(Knowledge, teardown).Causes;
        ranking.Ranked[0].Cause.Id.Should().Be("relief-spring-weak");
    }

    [Fact]
    public void A_film_thinner_than_the_roughness_points_to_thin_oil_and_away_from_the_pump()
    {
        TeardownCase teardown = Read("history: [recent-oil-change]\nsymptoms: [oil-pressure-low-hot, knocking-bottom-end]\n" + ThinHotOil);

        IReadOnlyList<WorkedNumber> worked = MeasurementAssessor.Assess(Knowledge, teardown).Calculations;
        worked.Single(w => w.Result.Calculation.Id == "typical-oil-viscosity").Result["viscosity"]!.Number.Should().BeApproximately(2.92, 0.01);
        worked.Single(w => w.Result.Calculation.Id == "journal-bearing-film").Result.Problems.Should().ContainSingle().Which.Should().Contain("Expect contact");
        worked.Single(w => w.Result.Calculation.Id == "short-bearing-film").Result["least-film"]!.In("µm").Should().BeApproximately(1.67, 0.02);
        worked.Single(w => w.Result.Calculation.Id == "film-against-roughness").Result["lambda"]!.Number.Should().BeApproximately(0.93, 0.01);
        Fired(teardown).Should().Contain("film-below-roughness");
        Change(teardown, "oil-thinned").Should().BeGreaterThan(1.5);
        Change(teardown, "wrong-oil-grade").Should().BeGreaterThan(1.2);
        Change(teardown, "oil-thinned").Should().BeGreaterThan(Change(teardown, "oil-pump-worn"));
    }

    [Fact]
    public void The_same_spring_in_order_speaks_against_a_weak_spring()
    {
        TeardownCase good = Read("symptoms: [oil-pressure-low-hot]\n" + ShortSpring.Replace("preload: 8.5 mm", "preload: 11.0 mm"));

        Fired(good).Should().NotContain("relief-spring-weak-by-figures");
        Change(good, "relief-spring-weak").Should().BeLessThan(0.7);
    }

    /// <summary>How many times the figures multiply the odds of a cause.</summary>
    private static double Change(TeardownCase teardown, string cause)
    {
        double with = Probability(teardown, cause), without = Probability(teardown with { Measurements = [], Requests = [] }, cause);
        return with / (1 - with) / (without / (1 - without));
    }

    private static double Probability(TeardownCase teardown, string cause) =>
        CauseRanker.RankWithStates(Knowledge, teardown, Chain(teardown)).Single(r => r.Id == cause).Probability;

    private static string[] Fired(TeardownCase teardown) => [.. Chain(teardown).Fired.Select(f => f.Id)];

    private static FindingSet Chain(TeardownCase teardown) => FindingEngine.Chain(Knowledge, teardown, MeasurementAssessor.Assess(Knowledge, teardown));

    private static TeardownCase Read(string more)
    {
        using TemporaryFolder folder = new();
        folder.Write("limits.yaml", "title: Limits of an invented engine\nfrom: invented\nlimits:\n  - {part: main-bearing, quantity: bearing-clearance, min: 0.04 mm, max: 0.10 mm}\n");
        string path = folder.Write("case.yaml", Engine + more);
        CaseReading reading = CaseReader.Read(Knowledge, path);
        reading.Problems.Should().BeEmpty();
        return reading.Case!;
    }
}
