using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>Something taken as seen or known for a moment: a look at a part, a symptom or a history word.</summary>
/// <param name="Says">How it was understood.</param>
public sealed record Assumption(string Says, Observation? Seen, Statement? Symptom, Statement? History)
{
    internal TeardownCase AddTo(TeardownCase teardown) => teardown with
    {
        Observations = Seen is null ? teardown.Observations : [.. teardown.Observations.Where(o => !Overrules(o)), Seen with { Number = teardown.Observations.Select(o => o.Number).DefaultIfEmpty(0).Max() + 1 }],
        Symptoms = Symptom is null ? teardown.Symptoms : [.. teardown.Symptoms.Where(s => s.Id != Symptom.Id), Symptom],
        History = History is null ? teardown.History : [.. teardown.History.Where(s => s.Id != History.Id), History],
    };

    /// <summary>What is assumed stands in place of what the case says against it, so that both are not held at once.</summary>
    private bool Overrules(Observation o) => Seen is not null && o.Part == Seen.Part && Meets(o)
        && (Seen.Look == Look.Seen ? o.Look == Look.Sound || (o.Look == Look.NotFound && o.Pattern == Seen.Pattern) : o.Look == Look.Seen && (Seen.Look == Look.Sound || o.Pattern == Seen.Pattern));

    private bool Meets(Observation o) => Seen!.Places.Count == 0 || o.Places.Count == 0 || o.Places.Any(Seen.Places.Contains);
}
