using Failwise.Calculations;

namespace Failwise.Tests.Calculations;

public class RefusalTests
{
    public static TheoryData<string, Action> Refused => new()
    {
        { "journal diameter must be above 0 mm", () => JournalBearing.PetroffTorque(10, 1000, 0, 20, 0.05) },
        { "0.25 or more", () => BearingTable.AtEccentricity(0.2, 0.5) },
        { "nearly centred", () => BearingTable.AtSommerfeld(1, 5) },
        { "Expect contact", () => BearingTable.AtSommerfeld(1, 0.001) },
        { "a tenth of the diameter", () => GalleryPressure.AnnulusLeakMm3S(10, 2, 10, 1, 10) },
        { "between 1 and 40", () => GalleryPressure.AlongGallery([], 60, 10, 20, 4, 10, 12, 0) },
        { "thinner when hot", () => OilViscosity.WaltherConstants(5, 40, 30, 100) },
        { "2 mm²/s or more", () => OilViscosity.WaltherConstants(30, 40, 1, 100) },
        { "between 2 and 2000", () => OilViscosity.ReferenceViscosities(1.5) },
        { "must lie between the fuel", () => FuelDilution.Band(100, 120, 3) },
        { "between 3 and 20", () => CoilSpring.RateNMm(5, 10, 5, 80_000) },
        { "between 63.5 and 114.3 mm", () => RingGap.SmallestMm(200) },
        { "links were counted wrongly", () => ChainElongation.Percent(900, 700) },
        { "half the capacity", () => RollingBearingLife.L10(1000, 900, false) },
        { "the joint separates", () => Fasteners.BoltLoadN(1000, 5000, 0.2) },
        { "25 and 400 ppm", () => WearMetals.WaterLife(1000) },
        { "more large particles", () => CleanlinessCode.Code(10, 20, 5) },
        { "were the two swapped", () => Geometry.Clearance(Geometry.FromReadings([[50.0]]), Geometry.FromReadings([[50.1]])) },
        { "must be below the upper limit", () => Conformance.Decide(1, 0.1, 5, 4) },
        { "number of cylinders", () => Compression.LowestPercent([10]) },
        { "between 0 and 5 bar", () => LeakDown.LossPercent(5, 6) },
        { "rod length must be", () => Reciprocating.PistonVelocity(50, 100, 1000, 10) },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void A_formula_refuses_outside_its_range_and_says_why(string words, Action run) =>
        run.Should().Throw<ArgumentOutOfRangeException>().Which.Message.Should().Contain(words);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1)]
    public void No_formula_takes_a_number_that_is_none(double bad)
    {
        Action[] runs =
        [
            () => JournalBearing.Sommerfeld(bad, 1000, 50, 30, 0.05, 1000),
            () => GalleryPressure.SlotLeakMm3S(bad, 10, 10, 1, 10),
            () => OilViscosity.TypicalMPas(30, bad),
            () => CoilSpring.StressMPa(bad, 5, 30),
            () => Fasteners.TorqueNm(bad, 10, 0.2),
            () => Compression.OilPressureFolkloreBar(bad),
            () => WearMetals.Level("Fe", bad),
            () => CleanlinessCode.ScaleNumber(bad),
        ];
        foreach (var run in runs)
            run.Should().Throw<ArgumentOutOfRangeException>();
    }
}
