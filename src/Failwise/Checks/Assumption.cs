using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>Something taken as seen or known for a moment.</summary>
/// <param name="Says">How it was understood.</param>
public sealed record Assumption(
    string Says, IReadOnlyList<Observation> Seen, IReadOnlyList<Statement> Symptoms, IReadOnlyList<Statement> History, IReadOnlyList<Measurement> Readings)
{
    internal TeardownCase AddTo(TeardownCase teardown)
    {
        int number = teardown.Observations.Select(o => o.Number).DefaultIfEmpty(0).Max();
        return teardown with
        {
            Observations = [.. teardown.Observations.Where(o => !Seen.Any(s => Overrules(s, o))), .. Seen.Select(s => s with { Number = number + 1 })],
            Symptoms = [.. teardown.Symptoms.Where(o => Symptoms.All(s => s.Id != o.Id)), .. Symptoms],
            History = [.. teardown.History.Where(o => History.All(s => s.Id != o.Id)), .. History],
            Measurements = [.. teardown.Measurements, .. Readings],
        };
    }

    /// <summary>What is assumed stands in place of what the case says against it, so that both are not held at once.</summary>
    private static bool Overrules(Observation assumed, Observation o)
    {
        if (o.Part != assumed.Part || (assumed.Places.Count > 0 && o.Places.Count > 0 && !o.Places.Any(assumed.Places.Contains)))
        {
            return false;
        }

        return assumed.Look switch
        {
            Look.Seen => o.Look == Look.Sound || (o.Look == Look.NotFound && o.Pattern == assumed.Pattern),
            Look.NotFound => o.Look == Look.Seen && o.Pattern == assumed.Pattern,
            _ => o.Look == Look.Seen,
        };
    }
}
