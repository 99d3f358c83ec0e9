using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>
/// Chains the work forward: causes, findings, circumstances and marks bring steps in, steps and downstream lists bring further steps in, until
/// nothing new follows. A step that stands in for others makes them fall away.
/// </summary>
internal sealed class StepChain
{
    private readonly Job job;
    private readonly Dictionary<string, List<WeighedReason>> reasons = new(StringComparer.Ordinal);
    private readonly HashSet<string> displaced;
    private readonly ILookup<string, WorkRule> broughtBy;
    private readonly Queue<string> open = new();

    private StepChain(Job job, HashSet<string> displaced)
    {
        this.job = job;
        this.displaced = displaced;
        broughtBy = job.Knowledge.Work.Values
            .SelectMany(w => w.Because.Where(t => t.Work is not null).Select(t => (t.Work!, Rule: w))).ToLookup(x => x.Item1, x => x.Rule, StringComparer.Ordinal);
        ChainWork();
        ChainDownstream();
        ChainSteps();
    }

    /// <summary>What lies downstream, in the order of the flow.</summary>
    public List<DownstreamLine> Downstream { get; } = [];

    /// <summary>Steps with their reasons, by id.</summary>
    public IReadOnlyDictionary<string, (WorkRule Rule, bool Sure, IReadOnlyList<WorkReason> Reasons)> Steps => reasons.ToDictionary(
        r => r.Key,
        r => (job.Knowledge.Work[r.Key], r.Value.Exists(x => x.Sure), (IReadOnlyList<WorkReason>)
            [.. r.Value.OrderByDescending(x => x.Weight).ThenBy(x => x.Reason.Id, StringComparer.Ordinal).Select(x => x.Reason).Distinct()]), StringComparer.Ordinal);

    /// <summary>Chains until nothing new follows.</summary>
    public static StepChain Run(Job job)
    {
        HashSet<string> displaced = new(StringComparer.Ordinal);
        while (true)
        {
            StepChain chain = new(job, displaced);
            string[] more = [.. chain.Displaced().Where(id => !displaced.Contains(id))];
            if (more.Length == 0)
            {
                return chain;
            }

            displaced.UnionWith(more);
        }
    }

    private IEnumerable<string> Displaced() =>
        reasons.Where(r => r.Value.Exists(x => x.Sure)).SelectMany(r => job.Knowledge.Work[r.Key].InsteadOf).Where(reasons.ContainsKey);

    private void ChainWork()
    {
        foreach (WorkRule rule in job.Knowledge.Work.Values)
        {
            foreach (WeighedReason reason in rule.Because.SelectMany(job.Reasons))
            {
                Add(rule, reason);
            }
        }
    }

    private void ChainDownstream()
    {
        foreach (DownstreamRule rule in job.Knowledge.Downstream.Values.Where(d => job.Fits(d.Machines, [])).OrderBy(d => d.Id, StringComparer.Ordinal))
        {
            WeighedReason[] because = [.. rule.Because.SelectMany(job.Reasons)];
            WeighedReason[] byWork = [.. rule.Because.Select(t => t.Work).OfType<string>().Where(reasons.ContainsKey).Select(FromStep)];
            because = [.. because.Concat(byWork).OrderByDescending(r => r.Weight).ThenBy(r => r.Reason.Id, StringComparer.Ordinal).DistinctBy(r => r.Reason)];
            foreach (DownstreamStation station in because.Length == 0 ? [] : rule.Stations)
            {
                AddStation(rule, station, because);
            }
        }
    }

    private void AddStation(DownstreamRule rule, DownstreamStation station, WeighedReason[] because)
    {
        bool? has = job.Saw(station.Part) ? true : job.Has(station.Fitted);
        if (has == false || Downstream.Exists(d => d.Part == station.Part && d.Circuit == rule.Circuit))
        {
            return;
        }

        if (station.Work is { } work)
        {
            string name = job.Knowledge.Parts[station.Part].Name;
            foreach (WeighedReason reason in because.Take(2))
            {
                Add(job.Knowledge.Work[work], reason with { Reason = reason.Reason with { Says = $"The {name} lies downstream: {reason.Reason.Says}" }, Weight = reason.Weight / 2, Sure = reason.Sure && has == true });
            }
        }

        Downstream.Add(new DownstreamLine(
            rule.Circuit, station.Part,
            station.Do switch { "flush" => DownstreamAction.Flush, "renew" => DownstreamAction.Renew, _ => DownstreamAction.Inspect },
            (has is null ? "If fitted: " : "") + station.Says, [.. because.Select(b => b.Reason)], station.Sources.Count > 0 ? station.Sources : rule.Sources,
            station.Work is { } step && reasons.ContainsKey(step) ? step : null, rule.Id));
    }

    private void ChainSteps()
    {
        while (open.TryDequeue(out string? step))
        {
            foreach (WorkRule rule in broughtBy[step])
            {
                Add(rule, FromStep(step));
            }
        }
    }

    /// <summary>A mark that was seen calls for its work whatever the part is filed under.</summary>
    private static bool Seen(WorkReason reason) => reason.Kind == "observation";

    private WeighedReason FromStep(string step) =>
        new(new WorkReason("work", step, $"It goes with: {job.Knowledge.Work[step].Title}"), reasons[step].Exists(r => r.Sure), 0.1);

    private void Add(WorkRule rule, WeighedReason reason)
    {
        Cause? root = reason.Reason.Kind == "cause" && job.Knowledge.Causes[reason.Reason.Id] is { IsRoot: true } cause ? cause : null;
        if (displaced.Contains(rule.Id) || !job.Fits(rule.Machines, rule.Needs) || !job.Plausible([.. rule.Needs.Except(root?.Needs ?? [])])
            || (root is null && !Seen(reason.Reason) && !job.MayHave(rule.Part)))
        {
            return;
        }

        // A mechanism that is likely does not condemn a part that nobody found bad: look at it first.
        if (rule.Does is "replace" or "machine" && reason.Reason.Kind == "cause" && !job.Knowledge.Causes[reason.Reason.Id].IsRoot)
        {
            reason = reason with { Sure = false };
        }

        if (!reasons.TryGetValue(rule.Id, out List<WeighedReason>? list))
        {
            reasons[rule.Id] = list = [];
            open.Enqueue(rule.Id);
        }

        list.Add(reason);
    }
}
