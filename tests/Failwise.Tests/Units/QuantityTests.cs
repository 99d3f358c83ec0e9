using Failwise.Units;

namespace Failwise.Tests.Units;

public class QuantityTests
{
    [Theory]
    [InlineData("57.94 mm", 57.94, "mm")]
    [InlineData("57.94mm", 57.94, "mm")]
    [InlineData("0.0015 in", 0.0381, "mm")]
    [InlineData("0.0015\"", 0.0381, "mm")]
    [InlineData("1.5 thou", 0.0381, "mm")]
    [InlineData("2 1/4 in", 57.15, "mm")]
    [InlineData("1/2 inch", 12.7, "mm")]
    [InlineData("15 µm", 0.015, "mm")]
    [InlineData("15 um", 0.015, "mm")]
    [InlineData("2.3 bar", 230, "kPa")]
    [InlineData("34 psi", 2.3442, "bar")]
    [InlineData("45 N·m", 45, "N·m")]
    [InlineData("45 Nm", 45, "N·m")]
    [InlineData("45 nm", 45, "N·m")]
    [InlineData("33 lbf·ft", 44.742, "N·m")]
    [InlineData("33 lb-ft", 44.742, "N·m")]
    [InlineData("33 ft-lb", 44.742, "N·m")]
    [InlineData("33 ft.lb", 44.742, "N·m")]
    [InlineData("12 lbf·in", 1.35582, "N·m")]
    [InlineData("120 °C", 248, "°F")]
    [InlineData("120 C", 248, "°F")]
    [InlineData("-40 °F", -40, "°C")]
    [InlineData("14.2 cSt", 14.2, "mm²/s")]
    [InlineData("2.07 MPa", 20.7, "bar")]
    [InlineData("300 kPa", 3, "bar")]
    [InlineData("250 h", 250, "h")]
    [InlineData("12 km", 12000, "m")]
    [InlineData("1450 rpm", 1450, "rev/min")]
    [InlineData("35 ppm", 0.0035, "%")]
    [InlineData("5 %", 0.05, "-")]
    [InlineData("18 g", 0.018, "kg")]
    [InlineData("2 kg", 2000, "g")]
    [InlineData("1 oz", 28.349523125, "g")]
    [InlineData("4.5 L", 4500, "ml")]
    [InlineData("15 ml", 0.015, "L")]
    [InlineData("30 deg", 30, "°")]
    [InlineData("3 kN", 674.427, "lbf")]
    [InlineData("10 lbf", 44.4822, "N")]
    [InlineData("6.5e-06 1/degF", 1.17e-5, "1/K")]
    public void Reads_what_a_shop_writes(string text, double value, string unit)
    {
        QuantityParser.TryParse(text, out var quantity, out var reason).Should().BeTrue(because: reason);

        quantity!.In(unit).Should().BeApproximately(value, Math.Abs(value) * 1e-4);
        quantity.Text.Should().Be(text);
    }

    [Theory]
    [InlineData("0,05 mm", "'0,05 mm' has a comma: write 0.05 mm.")]
    [InlineData("57,94", "'57,94' has a comma: write 57.94.")]
    [InlineData("1,500 rpm", "'1,500 rpm' has a comma: write 1.500 rpm or 1500 rpm, whichever is meant.")]
    [InlineData("12 mmm", "'12 mmm' has an unknown unit 'mmm'. Did you mean '12 mm'?")]
    [InlineData("3 psy", "'3 psy' has an unknown unit 'psy'. Did you mean '3 psi'?")]
    [InlineData("12", "'12' has no unit: write it like '12 mm'.")]
    [InlineData("tight", "'tight' does not start with a number: write it like 57.94 mm.")]
    [InlineData("", "nothing is written here: write a number with its unit, like 57.94 mm.")]
    [InlineData("1.2.3 mm", "'1.2.3 mm' has a number I cannot read: write it like 57.94 mm.")]
    [InlineData("1/0 in", "'1/0 in' has a number I cannot read: write it like 57.94 mm.")]
    public void Says_in_shop_words_why_it_cannot_read(string text, string expected)
    {
        QuantityParser.TryParse(text, out var quantity, out var reason).Should().BeFalse();

        quantity.Should().BeNull();
        reason.Should().Be(expected);
    }

    [Fact]
    public void An_unheard_of_unit_gets_a_list_of_known_ones()
    {
        QuantityParser.TryParse("7 furlongs", out _, out var reason).Should().BeFalse();

        reason.Should().Contain("unknown unit 'furlongs'").And.Contain("N·m");
    }

    [Fact]
    public void A_pressure_is_not_taken_for_a_length()
    {
        QuantityParser.TryParse("3 bar", UnitTable.Get("mm"), out _, out var reason).Should().BeFalse();

        reason.Should().Be("'3 bar' is a pressure or stress, but a length is needed: write it in mm.");
    }

    [Theory]
    [InlineData("57.94 mm", "57.94 mm (2.2811 in)")]
    [InlineData("0.0015 in", "0.0015 in (0.038 mm)")]
    [InlineData("1.5 thou", "1.5 thou (0.038 mm)")]
    [InlineData("34 psi", "34 psi (2.34 bar)")]
    [InlineData("45 N·m", "45 N·m (33.2 lbf·ft)")]
    [InlineData("120 °C", "120 °C (248 °F)")]
    [InlineData("250 h", "250 h")]
    [InlineData("14.2 cSt", "14.2 cSt")]
    public void Echoes_as_written_and_in_the_other_system_without_new_digits(string text, string both)
    {
        QuantityParser.TryParse(text, out var quantity, out _).Should().BeTrue();

        quantity!.InBothSystems().Should().Be(both);
    }
}
