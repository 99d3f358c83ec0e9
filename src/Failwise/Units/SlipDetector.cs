namespace Failwise.Units;

/// <summary>Looks for slips in readings. Every method returns a question, or null when nothing looks wrong.</summary>
/// <remarks>Which slips to look for is common practice, no source; the factors follow from the units and from the 0.5 mm and 0.025 in pitch
/// of micrometer screws.</remarks>
public static class SlipDetector
{
    private const double NearFactor = 0.03;
    private const double MetricTurnMm = 0.5;
    private const double InchTurnMm = 0.025 * 25.4;

    /// <summary>Is a length 25.4 times too large or too small?</summary>
    /// <param name="reading">The reading, a length.</param>
    /// <param name="expected">The size it should be near, a length.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? InchForMillimetre(Quantity reading, Quantity expected)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(expected);
        var ratio = reading.In("mm") / expected.In("mm");
        return Near(ratio, 25.4) || Near(ratio, 1 / 25.4)
            ? new Slip(
                SlipKind.InchForMillimetre,
                $"{reading.Text} is {(ratio > 1 ? "25.4 times" : "1/25.4 of")} the expected {expected.Text}: were inches and " +
                    $"millimetres mixed?")
            : null;
    }

    /// <summary>Does a length lie far outside a span, and inside it once inches are taken for millimetres or the other way round?</summary>
    /// <param name="reading">The reading, a length.</param>
    /// <param name="lowest">Least value to be expected, a length; null when not known.</param>
    /// <param name="highest">Most value to be expected, a length; null when not known.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? InchForMillimetre(Quantity reading, Quantity? lowest, Quantity? highest) =>
        Mixed(reading, lowest, highest, "mm", 25.4) is { } much
            ? new Slip(
                SlipKind.InchForMillimetre,
                $"{reading.Text} is {(much ? "about 25 times" : "about 1/25 of")} what is expected here " +
                    $"({SpanText(lowest, highest)}): were inches and millimetres mixed?")
            : null;

    /// <summary>Does a torque lie far outside a span, and inside it once lbf·ft is taken for lbf·in or the other way round?</summary>
    /// <param name="torque">The torque written.</param>
    /// <param name="lowest">Least value to be expected, a torque; null when not known.</param>
    /// <param name="highest">Most value to be expected, a torque; null when not known.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? FootForInchPounds(Quantity torque, Quantity? lowest, Quantity? highest) =>
        Mixed(torque, lowest, highest, "N·m", 12) is { } much
            ? new Slip(
                SlipKind.FootForInchPounds,
                $"{torque.Text} is {(much ? "about 12 times" : "about 1/12 of")} what is expected here " +
                    $"({SpanText(lowest, highest)}): were lbf·ft and lbf·in mixed?")
            : null;

    // Wear moves a reading outside its span by itself, so the converted value may lie a little outside too, but the reading must be far
    // off. Where only a most is given, a reading near 0 is honest and is not asked about.
    private static bool? Mixed(Quantity reading, Quantity? lowest, Quantity? highest, string unit, double factor)
    {
        var (value, far) = (reading.In(unit), Math.Sqrt(factor));
        double? low = lowest?.In(unit), high = highest?.In(unit);
        var (least, most) = ((low ?? high / 2) / 1.5, (high ?? low * 2) * 1.5);
        if (high > 0 && value > high * far && value / factor >= least && value / factor <= most)
            return true;
        return low > 0 && value > 0 && value < low / far && value * factor >= least && value * factor <= most ? false : null;
    }

    private static string SpanText(Quantity? low, Quantity? high) =>
        low is null || high is null || low.Text == high.Text ? (low ?? high)!.Text : $"{low.Text} to {high.Text}";

    /// <summary>Does a reading miss its neighbour by just one turn of the thimble?</summary>
    /// <param name="reading">The reading, a length.</param>
    /// <param name="expected">The size it should be near, for instance another reading of the same part.</param>
    /// <param name="spread">How far apart honest readings lie, a length; a step inside the spread proves nothing.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? ThimbleTurn(Quantity reading, Quantity expected, Quantity spread)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(expected);
        ArgumentNullException.ThrowIfNull(spread);
        var turnMm = reading.Unit.System == UnitSystem.Inch ? InchTurnMm : MetricTurnMm;
        var gapMm = Math.Abs(reading.In("mm") - expected.In("mm"));
        var spreadMm = Math.Min(spread.In("mm"), turnMm / 4);
        return Math.Abs(gapMm - turnMm) <= spreadMm
            ? new Slip(
                SlipKind.ThimbleTurn,
                $"{reading.Text} and {expected.Text} differ by one turn of the thimble " +
                    $"({(turnMm == MetricTurnMm ? "0.5 mm" : "0.025 in")}): please read again, or was this one ground undersize?")
            : null;
    }

    /// <summary>Is a torque 12 times too large or too small?</summary>
    /// <param name="torque">The torque written.</param>
    /// <param name="expected">The torque it should be near.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? FootForInchPounds(Quantity torque, Quantity expected)
    {
        ArgumentNullException.ThrowIfNull(torque);
        ArgumentNullException.ThrowIfNull(expected);
        var ratio = torque.In("N·m") / expected.In("N·m");
        return Near(ratio, 12) || Near(ratio, 1.0 / 12)
            ? new Slip(
                SlipKind.FootForInchPounds,
                $"{torque.Text} is {(ratio > 1 ? "12 times" : "1/12 of")} the expected {expected.Text}: were lbf·ft and lbf·in mixed?")
            : null;
    }

    /// <summary>Is the journal larger than the bore it runs in?</summary>
    /// <param name="journal">Journal diameter.</param>
    /// <param name="bore">Bore diameter with the shells fitted.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? Swapped(Quantity journal, Quantity bore)
    {
        ArgumentNullException.ThrowIfNull(journal);
        ArgumentNullException.ThrowIfNull(bore);
        return journal.In("mm") > bore.In("mm")
            ? new Slip(SlipKind.Swapped, $"journal {journal.Text} is larger than its bore {bore.Text}: were the two swapped?")
            : null;
    }

    /// <summary>Is a worn shaft or rod larger than the largest new one?</summary>
    /// <param name="worn">The reading.</param>
    /// <param name="newLargest">The largest size a new part may have.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? ShaftLargerThanNew(Quantity worn, Quantity newLargest)
    {
        ArgumentNullException.ThrowIfNull(worn);
        ArgumentNullException.ThrowIfNull(newLargest);
        return worn.In("mm") > newLargest.In("mm")
            ? new Slip(
                SlipKind.LessWornThanNew,
                $"{worn.Text} is larger than a new part ({newLargest.Text} at most): is it the right part and the right reading?")
            : null;
    }

    /// <summary>Is a worn bore smaller than the smallest new one?</summary>
    /// <param name="worn">The reading.</param>
    /// <param name="newSmallest">The smallest size a new bore may have.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? BoreSmallerThanNew(Quantity worn, Quantity newSmallest)
    {
        ArgumentNullException.ThrowIfNull(worn);
        ArgumentNullException.ThrowIfNull(newSmallest);
        return worn.In("mm") < newSmallest.In("mm")
            ? new Slip(
                SlipKind.LessWornThanNew,
                $"{worn.Text} is smaller than a new bore ({newSmallest.Text} at least): is it the right bore and the right reading?")
            : null;
    }

    /// <summary>Does a wear limit forbid what the same table allows for new parts?</summary>
    /// <param name="limit">The wear limit as printed.</param>
    /// <param name="newLargest">The largest value of a new part in the same table.</param>
    /// <returns>A question, or null.</returns>
    public static Slip? LimitInsideNew(Quantity limit, Quantity newLargest)
    {
        ArgumentNullException.ThrowIfNull(limit);
        ArgumentNullException.ThrowIfNull(newLargest);
        return limit.Unit.Convert(limit.Value, newLargest.Unit) < newLargest.Value
            ? new Slip(
                SlipKind.LimitInsideNew,
                $"the wear limit {limit.Text} is tighter than the {newLargest.Text} allowed for a new part: is one of them a misprint?")
            : null;
    }

    private static bool Near(double ratio, double factor) => double.IsFinite(ratio) && Math.Abs(ratio / factor - 1) <= NearFactor;
}
