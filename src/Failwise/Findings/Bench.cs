using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Findings;

/// <summary>
/// The case laid out by part: answers one atomic condition at a time. Grouping the sightings of a part first keeps the
/// engine's joins small.
/// </summary>
internal sealed class Bench
{
    private static readonly IReadOnlyList<Observation> Nothing = [];
    private readonly KnowledgeBase knowledge;
    private readonly TeardownCase teardown;
    private readonly IReadOnlyList<Reading> readings;
    private readonly IReadOnlyList<WorkedNumber> calculations;
    private readonly Dictionary<string, List<Observation>> byPart = new(StringComparer.Ordinal);
    private readonly Dictionary<string, bool> stated;

    public Bench(KnowledgeBase knowledge, TeardownCase teardown, Measured measured)
    {
        this.knowledge = knowledge;
        this.teardown = teardown;
        readings = measured.Readings;
        calculations = measured.Calculations;
        foreach (Observation observation in teardown.Observations)
        {
            foreach (string part in knowledge.PartLine(observation.Part))
            {
                if (!byPart.TryGetValue(part, out List<Observation>? list))
                {
                    byPart[part] = list = [];
                }

                list.Add(observation);
            }
        }

        stated = teardown.History.ToDictionary(s => s.Id, s => s.Holds, StringComparer.Ordinal);
    }

    public bool Knows(string part) => byPart.ContainsKey(part) || readings.Any(r => knowledge.PartIs(r.Measurement.Part, part));

    /// <summary>True when the case gives figures for this calculation.</summary>
    public bool HasWorked(string calculation) => calculations.Any(w => w.Result.Calculation.Id == calculation);

    /// <summary>Answers a condition that asks about the case itself; conditions about findings are answered by the engine.</summary>
    public Answer Ask(Condition atom) => atom switch
    {
        SightingCondition c => new SightingJudge(knowledge, teardown, byPart.GetValueOrDefault(c.Part) ?? Nothing, c, stated).Judge(),
        ReadingCondition c => ReadingJudge.Judge(knowledge, teardown, readings, c, stated),
        ResultCondition c => ReadingJudge.Judge(knowledge, calculations, c),
        NumberCondition c => Ask(c),
        StatedCondition c => Ask(c),
        _ => throw new ArgumentException("Not an atomic condition.", nameof(atom)),
    };

    private Answer Ask(StatedCondition c)
    {
        (bool known, bool holds) = c.Kind switch
        {
            StatedKind.History => (stated.TryGetValue(c.Id, out bool h), h),
            StatedKind.Symptom when teardown.Symptoms.Any(s => s.Holds && knowledge.SymptomIs(s.Id, c.Id)) => (true, true),
            StatedKind.Symptom => (teardown.Symptoms.Any(s => s.Id == c.Id), false),
            StatedKind.Feature => teardown.Machine.Features.Contains(c.Id) ? (true, true) : (teardown.Machine.Without.Contains(c.Id), false),
            _ => (false, false),
        };
        string kind = c.Kind.ToString().ToLowerInvariant();
        return known
            ? new Answer(holds ? Truth.Holds : Truth.Contradicted, [new Reason(kind, c.Id)], [], 1000)
            : new Answer(Truth.Unknown, [], [$"{kind} {c.Id} is not stated"], 1000);
    }

    private Answer Ask(NumberCondition c)
    {
        if (!teardown.Numbers.TryGetValue(c.Number, out double value))
        {
            return new Answer(Truth.Unknown, [], [$"{c.Number} is not given"], 1000);
        }

        bool holds = (c.Below is null || value < c.Below) && (c.Above is null || value > c.Above);
        return new Answer(holds ? Truth.Holds : Truth.Contradicted, [new Reason("number", c.Number)], [], 1000);
    }
}
