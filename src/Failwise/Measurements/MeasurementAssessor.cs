using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Measurements;

/// <summary>
/// Judges measurements against their limits: several readings become size, taper and out-of-round, pairs become clearances, and the
/// figures of the case are worked out.
/// </summary>
public static class MeasurementAssessor
{
    /// <summary>What was measured in a case, in its order.</summary>
    public static Measured Assess(KnowledgeBase knowledge, TeardownCase teardown)
    {
        if (teardown.Measurements.Count == 0 && teardown.Requests.Count == 0)
        {
            return Measured.Nothing;
        }

        List<Reading> readings = [.. teardown.Measurements.Select((m, i) => SizeOf(knowledge, teardown, m, i + 1))];
        foreach (Reading size in readings.ToArray())
        {
            foreach (DerivedValue form in Form.Of(size))
            {
                readings.Add(Derived(knowledge, teardown, form, readings.Count + 1));
            }
        }

        foreach (DerivedValue clearance in Clearances.Of(knowledge, readings).ToArray())
        {
            readings.Add(Derived(knowledge, teardown, clearance, readings.Count + 1));
        }

        return new Measured(readings, NumberWorker.Work(knowledge, teardown, readings));
    }

    private static Reading SizeOf(KnowledgeBase knowledge, TeardownCase teardown, Measurement m, int number)
    {
        DerivedValue value = Form.SizeOf(m);
        Limit? limit = m.Limit ?? LimitOf(knowledge, teardown, m.Part, m.Quantity);
        return LimitJudge.Judge(number, value with { Measurement = m with { Limit = limit } });
    }

    private static Reading Derived(KnowledgeBase knowledge, TeardownCase teardown, DerivedValue value, int number)
    {
        Limit? limit = value.Measurement.Limit ?? LimitOf(knowledge, teardown, value.Measurement.Part, value.Measurement.Quantity);
        return LimitJudge.Judge(number, value with { Measurement = value.Measurement with { Limit = limit } });
    }

    private static Limit? LimitOf(KnowledgeBase knowledge, TeardownCase teardown, string part, string quantity) =>
        LimitLookup.Find(knowledge, teardown.Limits, part, quantity) is { } row && (row.Min ?? row.Max) is not null
            ? new Limit(row.Min, row.Max, row.From, row.Example) : null;
}
