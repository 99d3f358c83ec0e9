using Failwise.Units;

namespace Failwise.Tests.Units;

public class UnitTableTests
{
    public static TheoryData<string> Symbols => new(UnitTable.All.Select(unit => unit.Symbol));

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Each_unit_converts_there_and_back(string symbol)
    {
        var unit = UnitTable.Get(symbol);
        foreach (var other in UnitTable.All.Where(other => other.Dimension == unit.Dimension))
            foreach (var value in new[] { -3.5, 0, 1e-6, 1, 57.94, 12_345.678 })
                other.Convert(unit.Convert(value, other), unit).Should().BeApproximately(value, 1e-9 * Math.Max(1, Math.Abs(value)));
    }

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Each_spelling_finds_its_unit_and_can_be_read_behind_a_number(string symbol)
    {
        var unit = UnitTable.Get(symbol);
        foreach (var spelling in unit.Spellings.Append(symbol))
        {
            UnitTable.Find(spelling).Should().BeSameAs(unit, because: spelling);
            if (spelling is "-" or "1")
                continue;
            QuantityParser.TryParse($"1.25 {spelling}", out var quantity, out var reason).Should().BeTrue(because: reason);
            quantity!.Unit.Should().BeSameAs(unit, because: spelling);
        }
    }

    [Fact]
    public void Each_counterpart_is_of_the_other_system_and_measures_the_same()
    {
        foreach (var unit in UnitTable.All.Where(unit => unit.Counterpart.Length > 0))
        {
            var other = UnitTable.Get(unit.Counterpart);
            other.Dimension.Should().Be(unit.Dimension, because: unit.Symbol);
            other.System.Should().NotBe(unit.System == UnitSystem.Both ? UnitSystem.Inch : unit.System, because: unit.Symbol);
        }
    }

    [Theory]
    [InlineData("in", "mm", 25.4)] // by definition, 1959 agreement
    [InlineData("lb", "kg", 0.45359237)] // by definition, 1959 agreement
    [InlineData("lbf", "N", 4.4482216152605)] // 0.45359237 x 9.80665
    [InlineData("psi", "kPa", 6.894757293168)] // pound-force on a square inch
    [InlineData("lbf·ft", "N·m", 1.3558179483314)] // 0.3048 x 4.4482216152605
    [InlineData("US gal", "L", 3.785411784)] // 231 cubic inches
    [InlineData("hp", "W", 745.69987158227)] // 550 ft·lbf a second
    [InlineData("lbf·ft", "lbf·in", 12)]
    [InlineData("bar", "kPa", 100)]
    [InlineData("mi", "km", 1.609344)]
    public void Factors_are_exact(string from, string to, double factor) =>
        UnitTable.Get(from).Convert(1, UnitTable.Get(to)).Should().BeApproximately(factor, factor * 1e-12);

    [Fact]
    public void Units_of_different_kinds_do_not_convert()
    {
        var convert = () => UnitTable.Get("mm").Convert(1, UnitTable.Get("bar"));

        convert.Should().Throw<ArgumentException>().WithMessage("mm measures a length, bar measures a pressure or stress.*");
    }
}
