using Failwise.Calculations;
using Failwise.Cases;
using Failwise.Units;

namespace Failwise.Measurements;

/// <summary>A value before it is judged: what was read, or what follows from it.</summary>
/// <param name="Uncertainty">Expanded uncertainty (k = 2) in the unit of the value; 0 when not known.</param>
internal sealed record DerivedValue(
    Measurement Measurement, ReadingKind Kind, Quantity Value, Quantity Smallest, Quantity Largest, double Uncertainty, IReadOnlyList<int> From);

/// <summary>Several readings at one place: size, taper, out-of-round.</summary>
internal static class Form
{
    private const string Diameter = "diameter";

    /// <summary>The size: the value read, or the mean of several with their extremes.</summary>
    public static DerivedValue SizeOf(Measurement m)
    {
        if (m.Spots.Count == 0)
        {
            Quantity read = QuantityParser.Reread(m.Value);
            return new DerivedValue(m, ReadingKind.Written, read, read, read, UncertaintyIn(m, read.Unit), []);
        }

        Unit unit = m.Spots[0].Value.Unit;
        double[] values = [.. m.Spots.Select(s => s.Value.In(unit.Symbol))];
        double mean = m.Spots.GroupBy(s => s.Plane, StringComparer.Ordinal).Average(p => p.Average(s => s.Value.In(unit.Symbol)));
        int decimals = m.Spots.Max(s => s.Value.Decimals);
        // The mean of several readings bears one digit more than each of them.
        return new DerivedValue(
            m, ReadingKind.Size, Worked(mean, unit, decimals + (values.Length > 1 ? 1 : 0)), Worked(values.Min(), unit, decimals), Worked(values.Max(), unit, decimals),
            UncertaintyIn(m, unit), []);
    }

    /// <summary>Taper when several planes were read, out-of-round when several directions were.</summary>
    public static IEnumerable<DerivedValue> Of(Reading size)
    {
        Measurement m = size.Measurement;
        if (m.Quantity != Diameter || m.Spots.Count == 0)
        {
            yield break;
        }

        string[] names = [.. m.Spots.Select(s => s.Plane).Distinct(StringComparer.Ordinal)];
        double[][] planes = [.. names.Select(name => m.Spots.Where(s => s.Plane == name).Select(s => s.Value.In("mm")).ToArray())];
        Shape shape = Geometry.FromReadings(planes);
        if (planes.Length > 1)
        {
            yield return Difference(size, "taper", ReadingKind.Taper, shape.TaperMm);
        }

        if (Array.Exists(planes, p => p.Length > 1))
        {
            yield return Difference(size, "out-of-round", ReadingKind.OutOfRound, shape.OutOfRoundMm);
        }
    }

    /// <summary>A difference of two readings carries the uncertainty of both.</summary>
    private static DerivedValue Difference(Reading size, string quantity, ReadingKind kind, double mm)
    {
        Measurement m = size.Measurement;
        Unit unit = size.Value.Unit;
        int decimals = m.Spots.Max(s => s.Value.Decimals) + (kind == ReadingKind.Taper ? 1 : 0);
        Quantity value = Worked(UnitTable.Get("mm").Convert(mm, unit), unit, decimals);
        Measurement made = m with
        {
            Quantity = quantity, Value = value.Text, Spots = [], Limit = m.FormLimits.GetValueOrDefault(quantity), New = null, Note = null,
        };
        return new DerivedValue(made, kind, value, value, value, Math.Sqrt(2) * UncertaintyIn(m, unit), [size.Number]);
    }

    /// <summary>A quantity that was worked out, with so many decimals shown.</summary>
    public static Quantity Worked(double value, Unit unit, int decimals)
    {
        // Ten digits more than any micrometer: binary fractions must not push a value over its limit.
        double rounded = Math.Round(value, 10);
        return new Quantity($"{Digits.ToStep(rounded, -decimals)} {unit.Symbol}", rounded, unit, decimals);
    }

    /// <summary>The uncertainty in another unit: a span, so the zero point of a thermometer plays no part.</summary>
    public static double UncertaintyIn(Measurement m, Unit unit) =>
        m.Uncertainty is { } u && QuantityParser.Reread(u) is var span ? Math.Abs(span.Value) * span.Unit.Factor / unit.Factor : 0;
}

/// <summary>Shaft and bore measured at one place: their clearance.</summary>
internal static class Clearances
{
    public static IEnumerable<DerivedValue> Of(Knowledge.KnowledgeBase knowledge, IReadOnlyList<Reading> readings)
    {
        Reading[] sizes = [.. readings.Where(r => r.Measurement.Quantity == "diameter")];
        foreach (Knowledge.Fit fit in knowledge.Fits.Where(f => f.Shaft is not null && f.Clearance is not null))
        {
            foreach (Reading shaft in sizes.Where(r => knowledge.PartIs(r.Measurement.Part, fit.Shaft!)))
            {
                Reading? bore = Array.Find(sizes, r => knowledge.PartIs(r.Measurement.Part, fit.Bore) && r.Measurement.Places.SequenceEqual(shaft.Measurement.Places));
                if (bore is not null && bore.Value.In("mm") >= shaft.Value.In("mm"))
                {
                    yield return Of(fit, bore, shaft);
                }
            }
        }
    }

    private static DerivedValue Of(Knowledge.Fit fit, Reading bore, Reading shaft)
    {
        Unit unit = bore.Value.Unit;
        int decimals = Math.Max(bore.Value.Decimals, shaft.Value.Unit == unit ? shaft.Value.Decimals : 0);
        (double mean, double smallest, double largest) = Geometry.Clearance(ShapeOf(bore), ShapeOf(shaft));
        Quantity value = Of(mean);
        Measurement made = bore.Measurement with
        {
            Quantity = fit.Clearance!, Part = fit.Of ?? fit.Bore, Value = value.Text, Spots = [], Limit = null, New = null, Note = null,
        };
        double u = Math.Sqrt(Math.Pow(Form.UncertaintyIn(bore.Measurement, unit), 2) + Math.Pow(Form.UncertaintyIn(shaft.Measurement, unit), 2));
        bool bothKnown = bore.Measurement.Uncertainty is not null && shaft.Measurement.Uncertainty is not null;
        return new DerivedValue(made, ReadingKind.Clearance, value, Of(smallest), Of(largest), bothKnown ? u : 0, [bore.Number, shaft.Number]);

        Quantity Of(double mm) => Form.Worked(UnitTable.Get("mm").Convert(mm, unit), unit, decimals);
    }

    private static Shape ShapeOf(Reading r) =>
        new(r.Value.In("mm"), (r.Smallest ?? r.Value).In("mm"), (r.Largest ?? r.Value).In("mm"), 0, 0);
}
