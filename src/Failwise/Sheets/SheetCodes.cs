namespace Failwise.Sheets;

/// <summary>What a filled sheet is typed in as: the short codes of docs/short-codes.md.</summary>
internal static class SheetCodes
{
    public const string Sound = "ok";
    public const string NotLooked = "nl";

    public static string Statement(string id) => "!" + id;

    /// <summary>The entry for a mark of some extent at a place; the extent is left out when 0.</summary>
    public static string Entry(SheetPart part, string column, string mark, int extent) => $"{part.Code}{column} {mark}{(extent > 0 ? " " + Digit(extent) : "")}";

    public static string Example(SheetPart part)
    {
        string column = part.Open ? "2" : part.Columns.Count == 0 ? "" : part.Columns[Math.Min(part.Columns.Count - 1, 2)];
        return Entry(part, column, part.Marks[0].Write, 3);
    }

    public static string Reading(SheetPart part, string column, string quantity, string value) => $"{part.Code}{column} {quantity} = {value}";

    public static string ReadingExample(IReadOnlyList<SheetReading> readings) =>
        readings.FirstOrDefault(r => r.Quantity == "diameter") is { } first ? Reading(first.Part, first.Part.Columns.Count > 0 ? "2" : "", first.Quantity, "57.94 mm")
        : readings.Count > 0 ? Reading(readings[0].Part, "", readings[0].Quantity, "0.05 mm") : "MJ2 diameter = 57.94 mm";

    private static string Digit(int extent) => extent.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
