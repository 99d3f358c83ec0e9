using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Securing;

/// <summary>Tells what is lost by turning, stripping and washing this machine, and what may hurt someone, from the rules and from what was said.</summary>
public static class SecurePlanner
{
    private const int ForecastRoots = 12;
    private const double LeastChance = 0.02;
    private const double LeastState = 0.10;

    /// <summary>Plans the securing of a case that may still hold nothing but the machine.</summary>
    public static SecurePlan Plan(KnowledgeBase knowledge, TeardownCase teardown)
    {
        HashSet<string> stated = [.. teardown.Symptoms.Concat(teardown.History).Where(s => s.Holds).Select(s => s.Id)];
        bool said = stated.Count > 0 || teardown.Observations.Count > 0;
        Dictionary<string, double> chances = Chances(knowledge, teardown, said);
        ForecastRoot[] forecast =
        [
            .. chances.Where(c => knowledge.Causes[c.Key].IsRoot && c.Value >= (said ? LeastChance : 0))
                .OrderByDescending(c => c.Value).ThenBy(c => c.Key, StringComparer.Ordinal).Take(ForecastRoots)
                .Select(c => new ForecastRoot(knowledge.Causes[c.Key], Math.Min(CauseRanking.Ceiling, c.Value))),
        ];
        return new SecurePlan(
            teardown, said, Sheet("hazards"),
            new Dictionary<Threat, IReadOnlyList<SecureLine>>
            {
                [Threat.Turning] = Sheet("before-turning"), [Threat.Dismantling] = Sheet("before-strip"), [Threat.Cleaning] = Sheet("before-cleaning"),
            },
            Steps(knowledge, teardown, stated, forecast, chances), FleetingLooks.Of(knowledge, teardown, forecast), forecast);

        IReadOnlyList<SecureLine> Sheet(string sheet) =>
        [
            .. knowledge.Sheets.Values.Where(r => r.Sheet == sheet && Applies(r, teardown.Machine, stated))
                .OrderBy(r => r.Order).ThenBy(r => r.Id, StringComparer.Ordinal)
                .Select(r => new SecureLine(r, r.Fitted is { } f && !teardown.Machine.Features.Contains(f), Times(r.Each, teardown.Machine))),
        ];
    }

    /// <summary>A line for certain symptoms stays when nobody has said anything yet: what was not asked is not ruled out.</summary>
    private static bool Applies(SheetRule rule, Machine machine, HashSet<string> stated) =>
        (rule.Machines.Count == 0 || rule.Machines.Any(machine.Kinds.Contains))
        && !rule.Needs.Any(machine.Without.Contains) && (rule.Fitted is null || !machine.Without.Contains(rule.Fitted))
        && (rule.Said.Count == 0 || stated.Count == 0 || rule.Said.Any(stated.Contains));

    private static int? Times(string? each, Machine machine) => each switch
    {
        "mains" => machine.Mains ?? 0,
        "cylinders" or "rods" => machine.Cylinders ?? 0,
        _ => null,
    };

    /// <summary>Chance of roots and states: from what was said, or as common as they are in such a build.</summary>
    private static Dictionary<string, double> Chances(KnowledgeBase knowledge, TeardownCase teardown, bool said)
    {
        if (said)
        {
            FindingSet findings = FindingEngine.Chain(knowledge, teardown, MeasurementAssessor.Assess(knowledge, teardown));
            return CauseRanker.RankWithStates(knowledge, teardown, findings).ToDictionary(c => c.Id, c => c.Probability, StringComparer.Ordinal);
        }

        BuildFit build = new(knowledge, teardown);
        return knowledge.Causes.Values.Where(c => c.IsRoot && build.Allows(c)).ToDictionary(c => c.Id, c => c.HowCommon * build.Chance(c), StringComparer.Ordinal);
    }

    private static List<SecureStep> Steps(
        KnowledgeBase knowledge, TeardownCase teardown, HashSet<string> stated, ForecastRoot[] forecast, Dictionary<string, double> chances)
    {
        Dictionary<string, double> likely = forecast.ToDictionary(f => f.Cause.Id, f => f.Probability, StringComparer.Ordinal);
        foreach ((string id, double p) in chances.Where(c => !knowledge.Causes[c.Key].IsRoot && c.Value >= LeastState))
        {
            likely[id] = p;
        }

        List<(SecureStep Step, double Chance)> steps = [];
        foreach (WorkRule rule in knowledge.Work.Values.Where(w => w.Stage == "secure" && Fits(w, teardown.Machine)))
        {
            (string Why, double Chance)[] reasons = [.. rule.Because.SelectMany(t => Reasons(knowledge, teardown, stated, likely, t)).OrderByDescending(r => r.Chance).DistinctBy(r => r.Why)];
            if (reasons.Length > 0)
            {
                steps.Add((new SecureStep(rule, [.. reasons.Take(3).Select(r => r.Why)]), reasons[0].Chance));
            }
        }

        return [.. steps.OrderByDescending(s => s.Chance).ThenBy(s => s.Step.Rule.Id, StringComparer.Ordinal).Select(s => s.Step)];
    }

    private static bool Fits(WorkRule rule, Machine machine) =>
        (rule.Machines.Count == 0 || rule.Machines.Any(machine.Kinds.Contains)) && !rule.Needs.Any(machine.Without.Contains);

    private static IEnumerable<(string Why, double Chance)> Reasons(
        KnowledgeBase knowledge, TeardownCase teardown, HashSet<string> stated, Dictionary<string, double> likely, WorkTrigger trigger)
    {
        if (trigger.Cause is { } cause && likely.TryGetValue(cause, out double p))
        {
            yield return (knowledge.Causes[cause].Title, p);
        }

        if (trigger.History is { } history && stated.Contains(history))
        {
            yield return (knowledge.Circumstances[history].Says, 1);
        }

        if (trigger.Part is { } part && teardown.Observations.FirstOrDefault(o => o.Look == Look.Seen && knowledge.PartIs(o.Part, part)
            && (trigger.See.Count == 0 || trigger.See.Any(see => knowledge.PatternIs(o.Pattern!, see)))) is { } seen)
        {
            yield return ($"{knowledge.Parts[seen.Part].Name}: {knowledge.Patterns[seen.Pattern!].Name}", 1);
        }
    }
}
