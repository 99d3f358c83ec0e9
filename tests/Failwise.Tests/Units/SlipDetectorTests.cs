using Failwise.Units;

namespace Failwise.Tests.Units;

public class SlipDetectorTests
{
    [Fact]
    public void Inches_for_millimetres_are_asked_about() =>
        SlipDetector.InchForMillimetre(Q("2.281 mm"), Q("57.94 mm"))!.Question.Should().Contain("1/25.4 of the expected 57.94 mm");

    [Fact]
    public void A_good_reading_is_left_alone()
    {
        SlipDetector.InchForMillimetre(Q("57.92 mm"), Q("57.94 mm")).Should().BeNull();
        SlipDetector.ThimbleTurn(Q("57.92 mm"), Q("57.94 mm"), Q("0.03 mm")).Should().BeNull();
        SlipDetector.FootForInchPounds(Q("33 lbf·ft"), Q("45 N·m")).Should().BeNull();
        SlipDetector.Swapped(Q("57.94 mm"), Q("58.00 mm")).Should().BeNull();
        SlipDetector.ShaftLargerThanNew(Q("57.94 mm"), Q("57.96 mm")).Should().BeNull();
        SlipDetector.BoreSmallerThanNew(Q("58.01 mm"), Q("58.00 mm")).Should().BeNull();
        SlipDetector.LimitInsideNew(Q("0.15 mm"), Q("0.10 mm")).Should().BeNull();
    }

    [Theory]
    [InlineData("57.44 mm", "57.94 mm", "0.02 mm", true)]
    [InlineData("2.2561 in", "2.2811 in", "0.0005 in", true)]
    [InlineData("57.60 mm", "57.94 mm", "0.02 mm", false)]
    [InlineData("57.44 mm", "57.94 mm", "0.60 mm", true)]
    [InlineData("57.74 mm", "57.94 mm", "0.60 mm", false)]
    public void One_turn_of_the_thimble_is_asked_about(string reading, string expected, string spread, bool slip) =>
        (SlipDetector.ThimbleTurn(Q(reading), Q(expected), Q(spread)) != null).Should().Be(slip);

    [Theory]
    [InlineData("33 lbf·in", "33 lbf·ft")]
    [InlineData("45 lbf·ft", "45 lbf·in")]
    [InlineData("3.75 N·m", "45 N·m")]
    public void Pound_inches_for_pound_feet_are_asked_about(string torque, string expected) =>
        SlipDetector.FootForInchPounds(Q(torque), Q(expected))!.Kind.Should().Be(SlipKind.FootForInchPounds);

    [Fact]
    public void A_journal_larger_than_its_bore_was_swapped() =>
        SlipDetector.Swapped(Q("55.02 mm"), Q("54.98 mm"))!.Question.Should().Be("journal 55.02 mm is larger than its bore 54.98 mm: were the two swapped?");

    [Fact]
    public void A_worn_part_does_not_grow()
    {
        SlipDetector.ShaftLargerThanNew(Q("57.99 mm"), Q("57.96 mm"))!.Kind.Should().Be(SlipKind.LessWornThanNew);
        SlipDetector.BoreSmallerThanNew(Q("2.280 in"), Q("58.00 mm"))!.Kind.Should().Be(SlipKind.LessWornThanNew);
    }

    [Fact]
    public void A_limit_tighter_than_new_is_a_misprint() =>
        SlipDetector.LimitInsideNew(Q("0.03 mm"), Q("0.066 mm"))!.Question.Should().Contain("misprint");

    private static Quantity Q(string text) =>
        QuantityParser.TryParse(text, out var quantity, out var reason) ? quantity : throw new InvalidOperationException(reason);
}
