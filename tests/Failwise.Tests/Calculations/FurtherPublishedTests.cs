using Failwise.Calculations;

namespace Failwise.Tests.Calculations;

/// <summary>Published results outside the list of 230, for which the inputs are from memory.</summary>
public class FurtherPublishedTests
{
    [Fact]
    public void Viscosity_index_below_100_agrees_with_the_standard()
    {
        // ASTM D2270 (1993, reapproved 1998), procedure A: 73.30 and 8.86 mm²/s (inputs, L 119.94 and H 69.48 from memory) print 92.43, rounded 92.
        OilViscosity.IndexFromReference(73.30, 8.86, 119.94, 69.48).Should().BeApproximately(92.43, 0.005);
        OilViscosity.Index(73.30, 8.86).Should().BeApproximately(92, 0.5);
    }

    [Fact]
    public void Relief_valve_cracks_at_667_and_flows_fully_at_1000_psi()
    {
        // Fluid Power with Applications, 6th ed. (Pearson, 2005), example 8-1; inputs from memory: 0.75 in², 2500 lbf/in, 0.20 in preload, 0.10 in lift.
        var seatIn = Math.Sqrt(0.75 * 4 / Math.PI);
        var result = CalculationCatalog.Find("relief-valve-pressure")!.Run(new Dictionary<string, string>
        {
            ["rate"] = "2500 lbf/in",
            ["preload"] = "0.20 in",
            ["lift"] = "0.10 in",
            ["seat"] = $"{seatIn:F9} in",
        });

        result["cracking-pressure"]!.In("psi").Should().BeApproximately(667, 0.5);
        result["full-flow-pressure"]!.In("psi").Should().BeApproximately(1000, 0.5);
    }

    [Fact]
    public void A_deep_groove_ball_bearing_lives_169_million_revolutions()
    {
        // Maker's catalogue example for a 6309 bearing: 169 million revolutions, 940 h; inputs from memory: C 55.3 kN, P 10 kN, 3000 rev/min.
        var life = RollingBearingLife.L10(55_300, 10_000, roller: false);

        life.Should().BeApproximately(169, 0.5);
        RollingBearingLife.Hours(life, 3000).Should().BeApproximately(940, 1);
    }

    [Fact]
    public void The_published_oil_debris_levels_that_stand_only_in_the_text_are_known()
    {
        // Lubricant maker's handbook (2004), fleet guide Appendix B: copper 20 ppm.
        WearMetals.WarningPpm("Cu").Should().Be(20);
    }
}
