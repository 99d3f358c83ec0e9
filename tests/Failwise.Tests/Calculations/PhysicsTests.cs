using Failwise.Calculations;

namespace Failwise.Tests.Calculations;

/// <summary>What must hold whatever the numbers: directions, scales and ways there and back.</summary>
public class PhysicsTests
{
    private readonly Random _random = new(20_240_601);

    [Fact]
    public void More_load_always_thins_the_film()
    {
        for (var round = 0; round < 200; round++)
        {
            var ratio = Between(0.25, 3);
            var rows = new[] { 0.15, 0.3, 0.5, 0.7, 0.85 }.Select(e => BearingTable.AtEccentricity(ratio, e)).ToList();
            rows.Zip(rows.Skip(1)).Should().OnlyContain(pair => pair.First.Sommerfeld > pair.Second.Sommerfeld && pair.First.FilmRatio > pair.Second.FilmRatio);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.5)]
    [InlineData(0.25)]
    public void Weighting_between_lengths_returns_the_table_at_its_own_lengths(double ratio)
    {
        foreach (var e in new[] { 0.1, 0.2, 0.4, 0.6, 0.8, 0.9 })
        {
            var (table, near) = (BearingTable.AtEccentricity(ratio, e), BearingTable.AtEccentricity(ratio * (1 + 1e-9), e));
            near.Sommerfeld.Should().BeApproximately(table.Sommerfeld, table.Sommerfeld * 1e-6);
            near.FrictionVariable.Should().BeApproximately(table.FrictionVariable, table.FrictionVariable * 1e-6);
            near.FlowVariable.Should().BeApproximately(table.FlowVariable, table.FlowVariable * 1e-6);
        }
    }

    [Fact]
    public void Film_from_load_and_load_from_film_agree()
    {
        for (var round = 0; round < 100; round++)
        {
            var (ratio, e) = (Between(0.25, 2), Between(0.11, 0.89));
            var state = BearingTable.AtEccentricity(ratio, e);
            BearingTable.AtSommerfeld(ratio, state.Sommerfeld).Eccentricity.Should().BeApproximately(e, 1e-9);
        }
    }

    [Fact]
    public void Petroff_meets_the_finite_table_when_the_journal_runs_nearly_centred()
    {
        // 2 pi² S is Petroff's friction variable; the table at eccentricity 0.1 has 26.4 where it gives 26.25.
        var state = BearingTable.AtEccentricity(1, 0.1);
        (2 * Math.PI * Math.PI * state.Sommerfeld).Should().BeApproximately(state.FrictionVariable, state.FrictionVariable * 0.01);
    }

    [Fact]
    public void Short_bearing_eccentricity_and_Sommerfeld_number_are_a_way_there_and_back()
    {
        for (var round = 0; round < 100; round++)
        {
            var (ratio, e) = (Between(0.05, 0.5), Between(0.02, 0.94));
            JournalBearing.ShortBearingEccentricity(ratio, JournalBearing.ShortBearingSommerfeld(ratio, e)).Should().BeApproximately(e, 1e-9);
        }
    }

    [Fact]
    public void A_short_bearing_film_thins_with_load_heat_and_slowness_and_never_passes_the_clearance()
    {
        for (var round = 0; round < 100; round++)
        {
            var (load, viscosity, speed) = (Between(500, 20_000), Between(3, 30), Between(500, 4000));
            var film = Film(load, viscosity, speed);
            Film(load * 1.3, viscosity, speed).Should().BeLessThanOrEqualTo(film);
            Film(load, viscosity / 1.3, speed).Should().BeLessThanOrEqualTo(film);
            Film(load, viscosity, speed / 1.3).Should().BeLessThanOrEqualTo(film);
            film.Should().BeInRange(0.05 * 0.03 * (1 - 1e-9), 0.03);
        }

        static double Film(double load, double viscosity, double speed) => CalculationCatalog.Find("short-bearing-film")!.Run(new Dictionary<string, string>
        {
            ["diameter"] = "50 mm", ["length"] = "20 mm", ["clearance"] = "0.06 mm", ["speed"] = FormattableString.Invariant($"{speed} rpm"),
            ["load"] = FormattableString.Invariant($"{load} N"), ["viscosity"] = FormattableString.Invariant($"{viscosity} mPa·s"),
        })["least-film"]!.Number!.Value;
    }

    [Fact]
    public void Leakage_goes_with_the_cube_of_the_gap_and_falls_with_thicker_oil()
    {
        for (var round = 0; round < 100; round++)
        {
            var (gap, viscosity) = (Between(0.001, 0.1), Between(2, 500));
            var leak = GalleryPressure.AnnulusLeakMm3S(50, gap, 20, 0.4, viscosity);
            GalleryPressure.AnnulusLeakMm3S(50, 2 * gap, 20, 0.4, viscosity).Should().BeApproximately(8 * leak, leak * 1e-9);
            GalleryPressure.AnnulusLeakMm3S(50, gap, 20, 0.4, 2 * viscosity).Should().BeApproximately(leak / 2, leak * 1e-9);
            GalleryPressure.AnnulusLeakMm3S(50, gap, 20, 0.4, viscosity, 1).Should().BeApproximately(2.5 * leak, leak * 1e-9);
        }
    }

    [Fact]
    public void A_quarter_more_clearance_at_all_bearings_halves_the_gallery_pressure()
    {
        // By hand: 1.26 cubed is 2.000, and below relief the pump delivery is fixed.
        var fresh = GalleryPressure.AlongGallery([0.05, 0.05, 0.05, 0.05, 0.05], 60, 10, 20, 1000, 10, 12, 0);
        var worn = GalleryPressure.AlongGallery([0.063, 0.063, 0.063, 0.063, 0.063], 60, 10, 20, 1000, 10, 12, 0);

        fresh.ReliefOpen.Should().BeFalse();
        (worn.PressuresBar[0] / fresh.PressuresBar[0]).Should().BeApproximately(1 / Math.Pow(1.26, 3), 1e-9);
    }

    [Fact]
    public void Pressure_falls_along_the_gallery_and_a_worn_far_bearing_starves_itself_most()
    {
        var even = GalleryPressure.AlongGallery([0.06, 0.06, 0.06, 0.06], 60, 10, 30, 4, 8, 6, 120);
        var worn = GalleryPressure.AlongGallery([0.06, 0.06, 0.06, 0.15], 60, 10, 30, 4, 8, 6, 120);

        even.PressuresBar.Should().BeInDescendingOrder();
        (worn.PressuresBar[^1] / worn.PressuresBar[0]).Should().BeLessThan(even.PressuresBar[^1] / even.PressuresBar[0]);
        worn.LeaksLMin[^1].Should().Be(worn.LeaksLMin.Max());
        worn.LeaksLMin.Sum().Should().BeLessThanOrEqualTo(30 + 1e-9);
    }

    [Fact]
    public void One_lossless_bearing_below_relief_swallows_the_pump_delivery()
    {
        var state = GalleryPressure.AlongGallery([0.08], 60, 10, 15, 1000, 10, 12, 0);

        state.LeaksLMin[0].Should().BeApproximately(15, 1e-9);
        GalleryPressure.GroovedBearingLeakLMin(60, 0.08, 10, state.PressuresBar[0], 10).Should().BeApproximately(15, 1e-9);
    }

    [Fact]
    public void Oil_thins_when_hot_and_the_line_returns_its_own_points()
    {
        for (var round = 0; round < 100; round++)
        {
            var hot = Between(3, 30);
            var cold = hot * Between(2, 12);
            OilViscosity.AtTemperature(cold, 40, hot, 100, 40).Should().BeApproximately(cold, cold * 1e-9);
            OilViscosity.AtTemperature(cold, 40, hot, 100, 100).Should().BeApproximately(hot, hot * 1e-9);
            OilViscosity.AtTemperature(cold, 40, hot, 100, 70).Should().BeInRange(hot, cold);
        }
    }

    [Fact]
    public void Viscosity_index_has_no_step_where_its_two_procedures_and_its_bands_meet()
    {
        foreach (var at100 in new[] { 2.5, 3.8, 4.4, 5.0, 6.4, 7.0, 7.7, 9.0, 12, 15, 18, 22, 28, 40, 55, 70, 90 })
        {
            var (l, h) = OilViscosity.ReferenceViscosities(at100 - 1e-9);
            var (l2, h2) = OilViscosity.ReferenceViscosities(at100 + 1e-9);
            l2.Should().BeApproximately(l, l * 0.003, because: $"L at {at100}");
            h2.Should().BeApproximately(h, h * 0.003, because: $"H at {at100}");
            OilViscosity.Index(h, at100 - 1e-9).Should().BeApproximately(100, 1e-6);
            OilViscosity.Index(l, at100 - 1e-9).Should().BeApproximately(0, 1e-6);
        }
    }

    [Fact]
    public void Grades_follow_each_other_without_gaps_from_thin_to_thick()
    {
        OilGrades.Gear.Where(grade => !grade.Name.Contains('W')).Zip(OilGrades.Gear.Where(grade => !grade.Name.Contains('W')).Skip(1))
            .Should().OnlyContain(pair => pair.First.HighestCSt == pair.Second.LowestCSt);
        for (var nu = 4.0; nu < 26; nu += 0.05)
            OilGrades.EngineGrades(nu).Should().NotBeEmpty(because: $"{nu:F2}");
    }

    [Fact]
    public void Diluting_and_reading_the_dilution_back_agree()
    {
        for (var round = 0; round < 100; round++)
        {
            var (oil, fuel, part) = (Between(40, 300), Between(1, 5), Between(0.5, 15));
            var (thinnest, _) = FuelDilution.Diluted(oil, fuel, part);
            FuelDilution.Band(oil, thinnest, fuel).LowPercent.Should().BeApproximately(part, 1e-6);
        }
    }

    [Fact]
    public void A_stiffer_thicker_or_shorter_spring_opens_later()
    {
        for (var round = 0; round < 100; round++)
        {
            var (wire, index, coils) = (Between(1, 6), Between(4, 12), Between(4, 15));
            var rate = CoilSpring.RateNMm(wire, wire * index, coils, 80_000);
            CoilSpring.RateNMm(wire * 1.05, wire * index, coils, 80_000).Should().BeApproximately(rate * Math.Pow(1.05, 4), rate * 1e-9);
            CoilSpring.RateNMm(wire, wire * index, coils * 2, 80_000).Should().BeApproximately(rate / 2, rate * 1e-9);
            CoilSpring.ActiveCoils(wire, wire * index, rate, 80_000).Should().BeApproximately(coils, 1e-9);
            ReliefValve.OpeningBar(rate, 11, 15).Should().BeGreaterThan(ReliefValve.OpeningBar(rate, 10, 15));
        }
    }

    [Fact]
    public void A_valve_stuck_wider_open_leaves_less_pressure()
    {
        // Inverse: the flow through the opening at that pressure is the pump delivery.
        for (var round = 0; round < 100; round++)
        {
            var (pump, area) = (Between(5, 200), Between(5, 300));
            var left = ReliefValve.StuckOpenBar(pump, area, 0.85, 0.7);
            ReliefValve.OrificeLMin(area, left, 0.85, 0.7).Should().BeApproximately(pump, pump * 1e-9);
            ReliefValve.StuckOpenBar(pump, area * 2, 0.85, 0.7).Should().BeApproximately(left / 4, left * 1e-9);
        }
    }

    [Fact]
    public void Inertia_grows_with_the_square_of_speed_and_the_series_agrees_with_exact_geometry()
    {
        for (var round = 0; round < 100; round++)
        {
            var (r, n) = (Between(20, 80), Between(500, 6000));
            var l = r * Between(3, 5);
            var force = Reciprocating.TopDeadCentreN(1, r, l, n);
            Reciprocating.TopDeadCentreN(1, r, l, 2 * n).Should().BeApproximately(4 * force, force * 1e-9);
            var angle = Between(0, 90);
            Reciprocating.PistonVelocity(r, l, n, angle).Should().BeApproximately(ExactVelocity(r, l, n, angle), 0.012 * Reciprocating.MeanPistonSpeed(2 * r, n) * Math.PI / 2);
        }
    }

    [Fact]
    public void Torque_and_preload_are_a_way_there_and_back()
    {
        for (var round = 0; round < 100; round++)
        {
            var (preload, thread, k) = (Between(1e3, 2e5), Between(5, 40), Between(0.1, 0.3));
            Fasteners.PreloadN(Fasteners.TorqueNm(preload, thread, k), thread, k).Should().BeApproximately(preload, preload * 1e-9);
        }
    }

    [Fact]
    public void Twice_the_load_takes_seven_eighths_of_ball_bearing_life()
    {
        RollingBearingLife.L10(10_000, 2000, roller: false).Should().BeApproximately(RollingBearingLife.L10(10_000, 1000, roller: false) / 8, 1e-9);
        RollingBearingLife.CapacityN(1500, RollingBearingLife.L10(10_000, 1500, roller: true), roller: true).Should().BeApproximately(10_000, 1e-6);
    }

    [Fact]
    public void Cleaner_and_thicker_oil_never_shortens_bearing_life_and_the_curve_does_not_jump()
    {
        foreach (var roller in new[] { false, true })
            for (var kappa = 0.1; kappa < 4; kappa *= 1.02)
            {
                var here = RollingBearingLife.LifeFactor(kappa, 0.4, 0.3, roller);
                RollingBearingLife.LifeFactor(kappa * 1.02, 0.4, 0.3, roller).Should().BeInRange(here * 0.9995, here * 1.25, because: $"kappa {kappa:F3}");
                RollingBearingLife.LifeFactor(kappa, 0.6, 0.3, roller).Should().BeGreaterThanOrEqualTo(here);
            }
    }

    [Fact]
    public void Outer_and_inner_ring_tones_add_up_to_balls_times_speed()
    {
        for (var round = 0; round < 100; round++)
        {
            var (balls, rpm) = (_random.Next(5, 30), Between(100, 6000));
            var tones = DefectFrequencies.Of(balls, Between(5, 15), Between(40, 80), Between(0, 40), rpm);
            (tones.OuterHz + tones.InnerHz).Should().BeApproximately(balls * rpm / 60, 1e-6);
            tones.OuterHz.Should().BeApproximately(balls * tones.CageHz, 1e-6);
        }
    }

    [Fact]
    public void Peak_pressure_over_the_stripe_carries_the_force()
    {
        // The pressure over the stripe is half an ellipse, so pi/2 times peak times half width is the force.
        for (var round = 0; round < 50; round++)
        {
            var force = Between(10, 2000);
            var (peak, half) = GearContact.LineContact(force, Between(5, 50), Between(5, 50), 206_000, 0.3);
            (Math.PI / 2 * peak * half).Should().BeApproximately(force, force * 1e-9);
        }
    }

    [Fact]
    public void Each_count_falls_into_one_scale_number_and_doubling_it_never_cleans_the_oil()
    {
        for (var round = 0; round < 300; round++)
        {
            var count = Math.Pow(10, Between(-1.9, 6));
            var number = CleanlinessCode.ScaleNumber(count);
            var (more, upTo) = CleanlinessCode.Range(number);
            (count > more && count <= upTo).Should().BeTrue();
            CleanlinessCode.ScaleNumber(2 * count).Should().BeOneOf(number + 1, number + 2, number);
        }
    }

    [Fact]
    public void Conformance_is_even_odds_on_a_limit_and_the_verdicts_do_not_overlap()
    {
        Conformance.Probability(10, 0.1, double.NegativeInfinity, 10).Should().BeApproximately(0.5, 1e-12);
        Conformance.NormalBelow(1.959964).Should().BeApproximately(0.975, 1e-6, because: "1.96 standard deviations leave 2.5 % above");
        Conformance.NormalBelow(-1.644854).Should().BeApproximately(0.05, 1e-6);
        for (var round = 0; round < 200; round++)
        {
            var (reading, u) = (Between(9.5, 10.5), Between(0.001, 0.1));
            var probability = Conformance.Probability(reading, u, double.NegativeInfinity, 10);
            var verdict = Conformance.Decide(reading, 2 * u, double.NegativeInfinity, 10);
            (verdict == Verdict.Within).Should().Be(probability >= Conformance.NormalBelow(2) - 1e-12);
            (verdict == Verdict.Beyond).Should().Be(probability < Conformance.NormalBelow(-2) - 1e-15);
        }
    }

    [Fact]
    public void Taper_and_out_of_round_do_not_change_when_the_part_is_larger()
    {
        double[][] planes = [[50.01, 50.03], [50.00, 50.02], [49.98, 50.00]];
        var (small, large) = (Geometry.FromReadings(planes), Geometry.FromReadings([.. planes.Select(plane => plane.Select(d => d + 20).ToArray())]));

        large.TaperMm.Should().BeApproximately(small.TaperMm, 1e-9);
        large.OutOfRoundMm.Should().BeApproximately(small.OutOfRoundMm, 1e-9);
        small.TaperMm.Should().BeApproximately(0.03, 1e-9, because: "plane means are 50.02, 50.01 and 49.99");
    }

    private double Between(double low, double high) => low + (high - low) * _random.NextDouble();

    private static double ExactVelocity(double r, double l, double rpm, double angleDeg)
    {
        var t = angleDeg * Math.PI / 180;
        var s = Math.Sin(t);
        return rpm * 2 * Math.PI / 60 * r / 1000 * (s + r * s * Math.Cos(t) / Math.Sqrt(l * l - r * r * s * s));
    }
}
