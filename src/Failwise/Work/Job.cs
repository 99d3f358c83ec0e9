using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Work;

/// <summary>A reason with whether it is certain enough to work on, or only to check.</summary>
internal sealed record WeighedReason(WorkReason Reason, bool Sure, double Weight);

/// <summary>The case as the planner asks about it: what holds, how likely, on what machine.</summary>
internal sealed class Job
{
    private const double PossibleStateFrom = 0.5;
    private const double LikelyFrom = 0.5;
    private const double Doubtful = 2;
    private readonly Dictionary<string, double> probability;
    private readonly HashSet<string> named;
    private readonly HashSet<string> fired;
    private readonly HashSet<string> seenParts;
    private readonly PartPresence presence;

    public Job(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings, FindingSet findings, CauseRanking ranking)
    {
        Knowledge = knowledge;
        Case = teardown;
        Readings = readings;
        Findings = findings;
        Ranking = ranking;
        probability = ranking.Ranked.ToDictionary(r => r.Cause.Id, r => r.Probability, StringComparer.Ordinal);
        foreach ((string state, double p) in ranking.States)
        {
            probability[state] = p;
        }

        named = new HashSet<string>(ranking.Verdict.Roots, StringComparer.Ordinal);
        fired = new HashSet<string>(findings.Fired.Select(f => f.Id), StringComparer.Ordinal);
        presence = new PartPresence(knowledge, teardown);
        seenParts = new HashSet<string>(
            teardown.Observations.Select(o => o.Part).Concat(readings.Select(r => r.Measurement.Part)).SelectMany(knowledge.PartLine), StringComparer.Ordinal);
    }

    /// <summary>A root is worth checking from here on.</summary>
    public const double PossibleFrom = 0.2;

    public KnowledgeBase Knowledge { get; }

    public TeardownCase Case { get; }

    public IReadOnlyList<Reading> Readings { get; }

    public FindingSet Findings { get; }

    public CauseRanking Ranking { get; }

    /// <summary>True when nothing calls for work: the wear is normal, no reading is beyond its limit and no mark is heavy.</summary>
    public bool IsNormalWear => Ranking.Verdict.Kind == VerdictKind.NormalWear
        && !Readings.Any(r => r.State is LimitState.Above or LimitState.Below)
        && !Case.Observations.Any(o => o.Look == Look.Seen && o.Extent >= Extent.Heavy && !Knowledge.Patterns[o.Pattern!].Sound);

    public bool IsNamed(string cause) => named.Contains(cause);

    /// <summary>True when the part, or a kind of it, was looked at or measured.</summary>
    public bool Saw(string part) => seenParts.Contains(part);

    /// <summary>True when this build may have what <paramref name="needs"/> lists and is one of <paramref name="machines"/>.</summary>
    public bool Fits(IReadOnlyList<string> machines, IReadOnlyList<string> needs) =>
        (machines.Count == 0 || machines.Any(Case.Machine.Kinds.Contains)) && !needs.Any(Case.Machine.Without.Contains);

    /// <summary>False when such a part belongs to another kind of machine, or to a build that this one is not.</summary>
    public bool MayHave(string? part) => part is null || Saw(part) || presence.Of(part) > 0;

    /// <summary>False when a build with these features is so rare that nobody plans for it unless the case or a part shows it.</summary>
    public bool Plausible(IReadOnlyList<string> needs) => presence.Built(needs) >= PartPresence.Rare;

    /// <summary>Whether the machine has something: true, false (also where such builds are rare), or null when nobody said.</summary>
    public bool? Has(string? feature) => feature is null || Case.Machine.Features.Contains(feature) || (Knowledge.Features.TryGetValue(feature, out Feature? known) && known.ShownBy.Any(Saw)) ? true
        : presence.Built([feature]) < PartPresence.Rare ? false : null;

    /// <summary>How many of a part the machine has, where the case says so.</summary>
    public int? Count(string? word) => word switch
    {
        "mains" => Case.Machine.Mains,
        "cylinders" or "rods" => Case.Machine.Cylinders,
        "one" => 1,
        _ => null,
    };

    /// <summary>The reasons why a trigger holds; none when it does not.</summary>
    public IEnumerable<WeighedReason> Reasons(WorkTrigger trigger)
    {
        if (trigger.Cause is { } cause && Likely(cause) is { } p)
        {
            yield return new WeighedReason(
                new WorkReason("cause", cause, $"{Knowledge.Causes[cause].Title} ({CauseRanking.WordFor(p)}, {100 * Math.Min(CauseRanking.Ceiling, p):0} %)"),
                p >= LikelyFrom, p);
        }

        if (trigger.Finding is { } finding && fired.Contains(finding))
        {
            yield return new WeighedReason(new WorkReason("finding", finding, Knowledge.Findings[finding].Says), true, 1);
        }

        if (trigger.History is { } history && Findings.Circumstances.GetValueOrDefault(history))
        {
            yield return new WeighedReason(new WorkReason("history", history, Knowledge.Circumstances[history].Says), true, 0.5);
        }

        if (trigger.Part is { } part)
        {
            foreach (IGrouping<(string, string), Observation> group in Case.Observations.Where(o => Meets(o, part, trigger)).GroupBy(o => (o.Part, o.Pattern!)))
            {
                yield return new WeighedReason(Of(group), group.Any(o => o.Sure > Doubtful), 0.9);
            }
        }
    }

    /// <summary>One reason for observations of the same mark on the same part.</summary>
    public WorkReason Of(IEnumerable<Observation> marks)
    {
        Observation[] all = [.. marks];
        string numbers = string.Join(", ", all.Select(o => o.Number).Distinct().Order());
        string says = all[0].Look == Look.Seen
            ? EvidenceGathering.SaySign(Knowledge, all.GroupBy(o => (o.Part, o.Pattern!)).First())
            : $"{EvidenceGathering.Capital(Knowledge.Parts[all[0].Part].Name)}: found sound";
        return new WorkReason("observation", numbers, says);
    }

    /// <summary>The probability of a cause when it is high enough to act on; null otherwise.</summary>
    private double? Likely(string cause) =>
        probability.TryGetValue(cause, out double p)
        && (Knowledge.Causes[cause].IsRoot ? p >= PossibleFrom || named.Contains(cause) : p >= PossibleStateFrom && Shows(cause)) ? p : null;

    /// <summary>A state on the way calls for work only when something that it leaves was met; what is merely likely to follow does not.</summary>
    private bool Shows(string state) => Knowledge.Causes[state].Leaves.Any(l => l.Target switch
    {
        LinkTarget.Sign => Case.Observations.Any(o => o.Look == Look.Seen && Knowledge.PartIs(o.Part, l.Sign!.Part) && Knowledge.PatternIs(o.Pattern!, l.Sign.Pattern)),
        LinkTarget.Finding => fired.Contains(l.Id),
        LinkTarget.Symptom => Ranking.Evidence.Any(e => e.Present && e.Kind == EvidenceKind.Symptom && e.Id == "symptom/" + l.Id),
        _ => false,
    });

    private bool Meets(Observation o, string part, WorkTrigger trigger) =>
        o.Look == Look.Seen && Knowledge.PartIs(o.Part, part)
        && (trigger.See.Count == 0 ? !Knowledge.Patterns[o.Pattern!].Sound : trigger.See.Any(see => Knowledge.PatternIs(o.Pattern!, see)))
        && (trigger.AtLeast == Extent.Unstated || Stated(o.Extent) >= trigger.AtLeast);

    /// <summary>A mark of which nobody said how much there is counts as moderate.</summary>
    public static Extent Stated(Extent extent) => extent == Extent.Unstated ? Extent.Moderate : extent;
}
