using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Work;

/// <summary>Decides for each part that was looked at whether it is reused, cleaned, measured first, watched, machined or replaced.</summary>
internal static class PartDecider
{
    private static readonly string[] Grades = WorkShapes.Decisions;

    /// <summary>A rule's word on one mark or reading, and where it applies.</summary>
    private sealed record Voice(DecisionRule Rule, int Grade, WorkReason Reason, IReadOnlyList<int> Places, string? Reading, Limit? Limit);

    /// <summary>One or more decisions for every part with a look or a reading, by part, then place.</summary>
    public static IReadOnlyList<PartDecision> Decide(Job job, IReadOnlyList<WorkItem> items)
    {
        string[] parts =
        [
            .. job.Case.Observations.Select(o => o.Part).Concat(job.Readings.Select(r => r.Measurement.Part)).Distinct().Order(StringComparer.Ordinal),
        ];
        PartDecision[] each = [.. parts.SelectMany(part => DecidePart(job, part, items))];
        return [.. each.SelectMany(d => AsOnePiece(job, d, each)).Select(d => OneSize(d, each))];
    }

    /// <summary>Places that are machined and places that are renewed must end alike.</summary>
    private static PartDecision OneSize(PartDecision d, PartDecision[] all) =>
        d.Decision == Decision.Machine && Array.Exists(all, e => e.Part == d.Part && e.Decision == Decision.Replace)
            ? d with { Why = d.Why + " Others of the row are renewed and all must end at one size: settle first whether these are renewed with them." } : d;

    /// <summary>What is one piece with something that is renewed goes with it: nobody measures the crown of a piston whose skirt condemns it.</summary>
    private static IEnumerable<PartDecision> AsOnePiece(Job job, PartDecision d, PartDecision[] all)
    {
        string whole = Whole(job, d.Part);
        bool single = job.Knowledge.Parts[whole].Count == "one";
        PartDecision? gone = d.Decision == Decision.Replace ? null
            : Array.Find(all, e => e.Part != d.Part && e.Decision == Decision.Replace && Whole(job, e.Part) == whole && (single || e.Places.Any(d.Places.Contains)));
        if (gone is null)
        {
            return [d];
        }

        int[] with = single ? [.. d.Places] : [.. d.Places.Where(gone.Places.Contains)];
        PartDecision renewed = d with
        {
            Places = with, Decision = Decision.Replace, Limit = "judged by sight", LimitSource = null, LimitFrom = null, Reasons = [.. d.Reasons.Concat(gone.Reasons).Distinct()],
            Why = $"It is one piece with what is renewed: {job.Knowledge.Parts[gone.Part].Name}.", RuleId = gone.RuleId, Sources = gone.Sources,
        };
        int[] stay = [.. d.Places.Except(with)];
        return stay.Length == 0 ? [renewed] : [renewed, .. AsOnePiece(job, d with { Places = stay }, all)];
    }

    private static string Whole(Job job, string part) => job.Knowledge.Parts[part].OrderedAs is { } whole && whole != Part.Fluid ? whole : part;

    private static IEnumerable<PartDecision> DecidePart(Job job, string part, IReadOnlyList<WorkItem> items)
    {
        List<Voice> voices = [.. Looks(job, part), .. Readings(job, part)];
        int[] numbers = [.. voices.SelectMany(v => v.Places).Distinct().Order()];
        Voice? set = voices.Where(v => v.Rule.WholeSet).MaxBy(v => v.Grade);
        if (numbers.Length == 0 || (set is not null && set.Grade == voices.Max(v => v.Grade)))
        {
            int? all = numbers.Length > 0 ? job.Count(job.Knowledge.Parts[part].Count) : null;
            yield return Make(job, part, all is { } n ? [.. Enumerable.Range(1, n)] : numbers, voices, items);
            yield break;
        }

        // Places that fare alike stand in one line.
        foreach (IGrouping<string, int> alike in numbers.GroupBy(n => Strongest(At(voices, n)).Rule.Id, StringComparer.Ordinal).OrderBy(g => g.Min()))
        {
            int[] places = [.. alike];
            yield return Make(job, part, places, [.. voices.Where(v => v.Places.Count == 0 || v.Places.Any(places.Contains))], items);
        }
    }

    private static List<Voice> At(List<Voice> voices, int place) => [.. voices.Where(v => v.Places.Count == 0 || v.Places.Contains(place))];

    /// <summary>The gravest voice; but what was only to be measured first and then measured good stands as the reading says.</summary>
    private static Voice Strongest(List<Voice> voices)
    {
        Voice gravest = voices.OrderByDescending(v => v.Grade).ThenBy(v => v.Rule.Id, StringComparer.Ordinal).First();
        Voice? within = voices.Find(v => v.Rule.Reading == "within");
        return gravest.Rule.Decide == "measure-first" && gravest.Rule.Reading is null && within is not null ? within : gravest;
    }

    private static PartDecision Make(Job job, string part, IReadOnlyList<int> places, List<Voice> voices, IReadOnlyList<WorkItem> items)
    {
        Voice strongest = Strongest(voices);
        Limit? limit = voices.Select(v => v.Limit).FirstOrDefault(l => l is not null);
        string? stated = limit is null ? null : LimitText.Of(limit);
        Decision decision = (Decision)strongest.Grade;
        return new PartDecision(
            part, places, decision, stated ?? strongest.Rule.Limit ?? (decision is Decision.Replace or Decision.Clean or Decision.Reuse ? "judged by sight" : "maker's limit needed"),
            stated is null ? strongest.Rule.LimitSource : null, limit?.From, [.. voices.Select(v => v.Reading).OfType<string>().Distinct()],
            [.. voices.OrderByDescending(v => v.Rule == strongest.Rule).ThenByDescending(v => v.Grade).Select(v => v.Reason).Distinct()], strongest.Rule.Why, strongest.Rule.Id,
            strongest.Rule.Sources, [.. items.Where(i => WorksOn(job, i, part, voices)).Select(i => i.Rule.Id)]);
    }

    private static bool WorksOn(Job job, WorkItem item, string part, List<Voice> voices) =>
        item.Rule.Part is { } own && (job.Knowledge.PartIs(part, own) || job.Knowledge.PartIs(own, part))
        && (own == part || item.Reasons.Any(r => r.Kind == "observation" && voices.Exists(v => v.Reason.Id == r.Id)));

    private static IEnumerable<Voice> Looks(Job job, string part)
    {
        foreach (Observation o in job.Case.Observations.Where(o => o.Part == part))
        {
            bool marked = o.Look == Look.Seen && !job.Knowledge.Patterns[o.Pattern!].Sound;
            DecisionRule rule = DecisionIndex.For(job.Knowledge, o, marked);
            yield return new Voice(rule, Array.IndexOf(Grades, rule.Decide), job.Of([o]), o.Places, null, null);
        }
    }

    private static bool Together(Reading a, Reading b) =>
        a.Measurement.Places.Count == 0 || b.Measurement.Places.Count == 0 || b.Measurement.Places.All(a.Measurement.Places.Contains);

    private static IEnumerable<Voice> Readings(Job job, string part)
    {
        Reading[] all = [.. job.Readings.Where(r => r.Measurement.Part == part)];
        foreach (Reading r in all)
        {
            // A bare size says nothing where another reading of the part stands against a limit, such as the clearance made from it.
            if (r.State is LimitState.NoLimit && Array.Exists(all, o => o.State != LimitState.NoLimit && Together(o, r)))
            {
                continue;
            }

            Measurement m = r.Measurement;
            string says = $"{m.Quantity.Replace('-', ' ')} {r.InBothSystems}" + r.State switch
            {
                LimitState.Above => ", above the limit",
                LimitState.Below => ", below the limit",
                LimitState.Within => ", within the limit",
                LimitState.TooClose => ", too close to the limit to call",
                _ => ", no limit given",
            };
            DecisionRule rule = DecisionIndex.ForReading(job.Knowledge, part, r.State switch
            {
                LimitState.Above or LimitState.Below => "beyond-limit",
                LimitState.Within => "within",
                _ => "too-close",
            });
            yield return new Voice(rule, Array.IndexOf(Grades, rule.Decide), new WorkReason("reading", r.Number.ToString(), says), m.Places, says, m.Limit);
        }
    }
}
