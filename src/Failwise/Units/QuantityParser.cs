using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Failwise.Units;

/// <summary>Reads a quantity the way a shop writes it, or says in shop words why it cannot.</summary>
public static class QuantityParser
{
    /// <summary>Reads a number with its unit, for instance <c>57.94 mm</c>, <c>1.5 thou</c>, <c>2 1/4 in</c> or <c>33 ft-lb</c>.</summary>
    /// <param name="text">The text as written.</param>
    /// <param name="quantity">The quantity when the text could be read.</param>
    /// <param name="reason">Why it could not be read and what to write instead.</param>
    /// <param name="assumed">Unit of a number written without one; null refuses such a number.</param>
    /// <returns>True when the text could be read.</returns>
    public static bool TryParse(
        string? text, [NotNullWhen(true)] out Quantity? quantity, [NotNullWhen(false)] out string? reason, Unit? assumed = null)
    {
        quantity = null;
        var written = (text ?? "").Trim();
        var end = NumberEnd(written);
        var number = written[..end].Trim();
        var unitText = written[end..].Trim();
        reason = Refusal(written, number, unitText);
        if (reason is not null)
            return false;
        if (!TryNumber(number, out var value))
        {
            reason = $"'{written}' has a number I cannot read: write it like 57.94 mm.";
            return false;
        }
        var unit = unitText.Length == 0 ? assumed : UnitTable.Find(unitText);
        if (unit is null)
        {
            reason = unitText.Length == 0
                ? $"'{written}' has no unit: write it like '{number} mm'."
                : UnknownUnit(written, number, unitText);
            return false;
        }
        quantity = new Quantity(
            unitText.Length == 0 && unit.Symbol != "-" ? $"{written} {unit.Symbol}" : written, value, unit, Decimals(number));
        return true;
    }

    /// <summary>Reads a quantity that must be of one dimension.</summary>
    /// <param name="text">The text as written.</param>
    /// <param name="wanted">A unit of the dimension wanted; also the unit of a number written without one.</param>
    /// <param name="quantity">The quantity when the text could be read.</param>
    /// <param name="reason">Why it could not be read and what to write instead.</param>
    /// <returns>True when the text could be read and measures the right thing.</returns>
    public static bool TryParse(
        string? text, Unit wanted, [NotNullWhen(true)] out Quantity? quantity, [NotNullWhen(false)] out string? reason)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        if (!TryParse(text, out quantity, out reason, wanted))
            return false;
        if (quantity.Unit.Dimension == wanted.Dimension)
            return true;
        reason = $"'{quantity.Text}' is {Words.Of(quantity.Unit.Dimension)}, but {Words.Of(wanted.Dimension)} is needed: write " +
            $"it in {wanted.Symbol}.";
        quantity = null;
        return false;
    }

    /// <summary>Reads back a text that was read before; a bare number is a pure number.</summary>
    /// <exception cref="InvalidOperationException">The text was never read.</exception>
    internal static Quantity Reread(string text) =>
        TryParse(text, out var quantity, out var reason, UnitTable.Get("-")) ? quantity : throw new InvalidOperationException(reason);

    private static string? Refusal(string written, string number, string unitText)
    {
        if (written.Length == 0)
            return "nothing is written here: write a number with its unit, like 57.94 mm.";
        if (written.Contains(',', StringComparison.Ordinal))
            return Comma(written, unitText);
        return number.Length == 0 ? $"'{written}' does not start with a number: write it like 57.94 mm." : null;
    }

    private static string Comma(string written, string unitText)
    {
        var number = written[..(written.Length - unitText.Length)].Trim();
        var parts = number.Split(',');
        var withPoint = $"{number.Replace(',', '.')} {unitText}".Trim();
        var thousands = parts is [{ Length: > 0 and < 4 } whole, { Length: 3 }] && whole.Trim('0').Length > 0;
        if (parts.Length > 2)
            return $"'{written}' has several commas: write the number with one point and no comma.";
        return thousands
            ? $"'{written}' has a comma: write {withPoint} or {number.Replace(",", "", StringComparison.Ordinal)} " +
                $"{unitText}".TrimEnd() + ", whichever is meant."
            : $"'{written}' has a comma: write {withPoint}.";
    }

    private static string UnknownUnit(string written, string number, string unitText) =>
        UnitTable.Nearest(unitText) is { } nearest
            ? $"'{written}' has an unknown unit '{unitText}'. Did you mean '{number} {nearest}'?"
            : $"'{written}' has an unknown unit '{unitText}': write a unit such as mm, in, thou, bar, psi, N·m, lbf·ft, °C or cSt.";

    private static int NumberEnd(string written)
    {
        var end = 0;
        while (end < written.Length && IsNumberLetter(written, end))
            end++;
        return end;
    }

    private static bool IsNumberLetter(string written, int at)
    {
        var letter = written[at];
        if (char.IsAsciiDigit(letter) || letter is '.' or ',' or '+')
            return true;
        if (letter is '-' or '−')
            return at == 0 || written[at - 1] is 'e' or 'E';
        var digitBefore = at > 0 && (char.IsAsciiDigit(written[at - 1]) || written[at - 1] == ' ');
        var digitAfter = at + 1 < written.Length && (
            char.IsAsciiDigit(written[at + 1]) || (letter is 'e' or 'E' && written[at + 1] is '-' or '+'));
        return (letter is 'e' or 'E' or '/' ? digitBefore && digitAfter : letter == ' ' && digitBefore && StartsFraction(written, at + 1));
    }

    private static bool StartsFraction(string written, int at)
    {
        var slash = at;
        while (slash < written.Length && char.IsAsciiDigit(written[slash]))
            slash++;
        return slash > at && slash + 1 < written.Length && written[slash] == '/' && char.IsAsciiDigit(written[slash + 1]);
    }

    private static bool TryNumber(string number, out double value)
    {
        number = number.Replace('−', '-');
        var slash = number.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0)
            return Plain(number, out value);
        var space = number.IndexOf(' ', StringComparison.Ordinal);
        value = 0;
        if (!Plain(number[(space + 1)..slash], out var top) || !Plain(number[(slash + 1)..], out var bottom) || bottom == 0)
            return false;
        var whole = 0.0;
        if (space >= 0 && !Plain(number[..space], out whole))
            return false;
        value = whole < 0 ? whole - top / bottom : whole + top / bottom;
        return true;
    }

    private static bool Plain(string number, out double value) =>
        double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static int Decimals(string number)
    {
        if (number.Contains('/', StringComparison.Ordinal))
            return 3;
        var mantissa = number.Split('e', 'E');
        var point = mantissa[0].IndexOf('.', StringComparison.Ordinal);
        var places = point < 0 ? 0 : mantissa[0].Length - point - 1;
        return mantissa.Length == 2 && int.TryParse(mantissa[1], out var power) ? Math.Max(0, places - power) : places;
    }
}
