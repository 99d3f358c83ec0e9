using Failwise.Cases;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>
/// The part of the network that this case's evidence touches: circumstances → roots → states → evidence. Causes that this build
/// cannot have are left out altogether.
/// </summary>
internal sealed class CauseNetwork
{
    private readonly KnowledgeBase knowledge;
    private readonly TeardownCase teardown;
    private readonly CauseIndex index;
    private readonly BuildFit build;
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<NetworkNode> nodes = [];
    private readonly Dictionary<string, bool> circumstances;
    private readonly HashSet<string> heard = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Dictionary<string, CauseLink>> linksInto = new(StringComparer.Ordinal);

    public CauseNetwork(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<EvidenceItem> items, IReadOnlyList<EvidenceItem>? possible = null)
    {
        this.knowledge = knowledge;
        this.teardown = teardown;
        index = CauseIndex.Of(knowledge);
        build = new BuildFit(knowledge, teardown);
        circumstances = items.Where(i => i.Kind == EvidenceKind.Circumstance).ToDictionary(i => i.Id, i => i.Present, StringComparer.Ordinal);
        List<EvidenceItem> known = [];
        foreach (EvidenceItem item in items.Where(i => i.Kind != EvidenceKind.Circumstance))
        {
            if (AddEvidenceNode(item) >= 0)
            {
                known.Add(item);
            }
        }

        foreach (EvidenceItem item in possible ?? [])
        {
            AddEvidenceNode(item);
        }

        known.AddRange(items.Where(i => i.Kind == EvidenceKind.Circumstance && heard.Contains(i.Id)));
        Known = known;
        Network = new NoisyOrNetwork(nodes);
        Roots = [.. numbers.Where(n => n.Key.StartsWith("cause/", StringComparison.Ordinal)).Select(n => knowledge.Causes[n.Key[6..]]).Where(c => c.IsRoot).OrderBy(c => c.Id, StringComparer.Ordinal)];
        States = [.. numbers.Where(n => n.Key.StartsWith("cause/", StringComparison.Ordinal)).Select(n => knowledge.Causes[n.Key[6..]]).Where(c => !c.IsRoot).OrderBy(c => c.Id, StringComparer.Ordinal)];
    }

    public NoisyOrNetwork Network { get; }

    /// <summary>Evidence that some cause can speak to.</summary>
    public IReadOnlyList<EvidenceItem> Known { get; }

    public IReadOnlyList<Cause> Roots { get; }

    public IReadOnlyList<Cause> States { get; }

    public int NumberOf(Cause cause) => numbers["cause/" + cause.Id];

    public int NumberOf(EvidenceItem item) => numbers[Key(item)];

    public bool Has(EvidenceItem item) => numbers.ContainsKey(Key(item));

    public bool Has(Cause cause) => numbers.ContainsKey("cause/" + cause.Id);

    /// <summary>
    /// The evidence as the engine takes it. How sure the observer is stands in the node itself (see <see cref="AddEvidenceNode"/>),
    /// so that every report is a plain yes or no; only then do negatives cost nothing.
    /// </summary>
    public Evidence EvidenceOf(EvidenceItem item) => item.Present ? Evidence.Present(NumberOf(item)) : Evidence.Absent(NumberOf(item));

    /// <summary>The links into a node, by the id of the cause they come from.</summary>
    public IReadOnlyDictionary<string, CauseLink> LinksInto(string key) =>
        linksInto.TryGetValue(key, out Dictionary<string, CauseLink>? links) ? links : new Dictionary<string, CauseLink>();

    public static string Key(EvidenceItem item) => item.Kind switch
    {
        EvidenceKind.Sign or EvidenceKind.NotFound => "sign/" + item.Id,
        EvidenceKind.SoundPart => "sound/" + item.Id,
        _ => item.Id,
    };

    /// <summary>A cause that this machine cannot have is not a candidate.</summary>
    public static bool Applies(Cause cause, Machine machine) =>
        (cause.Machines.Count == 0 || cause.Machines.Any(machine.Kinds.Contains)) && !cause.Needs.Any(machine.Without.Contains);

    private int AddEvidenceNode(EvidenceItem item)
    {
        string key = Key(item);
        if (numbers.TryGetValue(key, out int known))
        {
            return known;
        }

        Dictionary<string, CauseLink> links = [];
        foreach ((Cause cause, CauseLink link) in LinksTo(item).Where(l => build.Allows(l.Cause)))
        {
            if (!links.TryGetValue(cause.Id, out CauseLink? best) || link.Strength > best.Strength)
            {
                links[cause.Id] = link;
            }
        }

        if (links.Count == 0)
        {
            return -1;
        }

        // A report, not the thing itself: "present" may be a false alarm with chance 1/ratio, which only raises the leak (exactly the
        // likelihood pair ratio:1); "absent" may be an oversight with chance 1/ratio, which weakens every link alike.
        double slip = double.IsPositiveInfinity(item.Ratio) ? 0 : 1 / item.Ratio;
        double leak = LeakOf(item);
        return item.Present ? AddNode(key, leak + slip - leak * slip, links) : AddNode(key, leak, links, 1 - slip);
    }

    private IEnumerable<(Cause Cause, CauseLink Link)> LinksTo(EvidenceItem item)
    {
        switch (item.Kind)
        {
            case EvidenceKind.Sign:
            case EvidenceKind.NotFound:
                string[] ids = item.Id.Split('/');
                return index.Match.Parts(ids[0]).SelectMany(p => On(p.Part).Select(l => (l.Cause, Weaker(l.Link, p.Weight * index.Match.Pattern(l.Link.Sign!.Pattern, ids[1])))))
                    .Where(l => l.Item2.Strength > 0);
            case EvidenceKind.SoundPart:
                return knowledge.PartLine(item.Id.Split('/')[0])
                    .Where(part => !IsMarked(part))
                    .Where(part => part != "part").SelectMany(On)
                    .Where(l => !knowledge.Patterns[l.Link.Sign!.Pattern].Sound);
            default:
                return To(item.Id);
        }

        IEnumerable<(Cause Cause, CauseLink Link)> On(string part) => index.ByPart.GetValueOrDefault(part) ?? [];

        static CauseLink Weaker(CauseLink link, double weight) => weight == 1 ? link : link with { Strength = link.Strength * weight };

        IEnumerable<(Cause, CauseLink)> To(string key) => index.ByTarget.GetValueOrDefault(key) ?? [];
    }

    private bool IsMarked(string broaderPart) => teardown.Observations.Any(o =>
        o.Look == Look.Seen && knowledge.PartIs(o.Part, broaderPart) && !knowledge.Patterns[o.Pattern!].Sound);

    private double LeakOf(EvidenceItem item) => item.Kind switch
    {
        EvidenceKind.Sign or EvidenceKind.NotFound => knowledge.Patterns[item.Id.Split('/')[1]].SeenAnyway,
        EvidenceKind.Symptom => knowledge.Symptoms[item.Id["symptom/".Length..]].SeenAnyway,
        EvidenceKind.Finding => knowledge.Findings[item.Id["finding/".Length..]].SeenAnyway,
        _ => 0.1,
    };

    private int AddNode(string key, double leak, Dictionary<string, CauseLink> links, double noticed = 1)
    {
        List<NetworkLink> parents = [.. links.OrderBy(l => l.Key, StringComparer.Ordinal).Select(l => new NetworkLink(AddCause(knowledge.Causes[l.Key]), l.Value.Strength * noticed))];
        linksInto[key] = links;
        numbers[key] = nodes.Count;
        nodes.Add(new NetworkNode(key, leak, parents));
        return nodes.Count - 1;
    }

    private int AddCause(Cause cause)
    {
        string key = "cause/" + cause.Id;
        if (numbers.TryGetValue(key, out int known))
        {
            return known;
        }

        Dictionary<string, CauseLink> links = [];
        foreach ((Cause from, CauseLink link) in (index.ByTarget.GetValueOrDefault(key) ?? []).Where(l => build.Allows(l.Cause)))
        {
            if (!links.TryGetValue(from.Id, out CauseLink? best) || link.Strength > best.Strength)
            {
                links[from.Id] = link;
            }
        }

        List<NetworkLink> parents = [.. links.OrderBy(l => l.Key, StringComparer.Ordinal).Select(l => new NetworkLink(AddCause(knowledge.Causes[l.Key]), l.Value.Strength))];
        foreach (CauseLink raised in cause.RaisedBy.Where(r => circumstances.ContainsKey(KeyOf(r))))
        {
            heard.Add(KeyOf(raised));
            links[KeyOf(raised)] = raised;
        }

        linksInto[key] = links;
        numbers[key] = nodes.Count;
        nodes.Add(new NetworkNode(key, PriorOf(cause, null), parents));
        return nodes.Count - 1;
    }

    /// <summary>The network as it would be if one circumstance had not been mentioned.</summary>
    public NoisyOrNetwork WithoutCircumstance(string id) => Network.WithNumbers(
        [.. nodes.Select(n => n.Id.StartsWith("cause/", StringComparison.Ordinal) && linksInto[n.Id].ContainsKey(id)
            ? n with { Leak = PriorOf(knowledge.Causes[n.Id[6..]], id) } : n)]);

    /// <summary>
    /// How often the cause comes by itself, given what is known beforehand. "How common" is over all jobs: a circumstance that holds adds
    /// its own chance, one that is denied takes away the share it accounts for (nine tenths at most), one that is not mentioned changes nothing.
    /// </summary>
    private double PriorOf(Cause cause, string? ignoring)
    {
        double share = 1, silent = 1;
        foreach (CauseLink raised in cause.RaisedBy)
        {
            string key = KeyOf(raised);
            if (key == ignoring || !circumstances.TryGetValue(key, out bool holds))
            {
                continue;
            }

            if (holds)
            {
                silent *= 1 - raised.Strength;
            }
            else if (raised.Target == LinkTarget.History && cause.HowCommon > 0)
            {
                share *= 1 - Math.Min(0.9, raised.Strength * knowledge.Circumstances[raised.Id].HowCommon / cause.HowCommon);
            }
        }

        return 1 - (1 - BuildFit.Commonness(knowledge, cause) * build.Chance(cause) * Math.Max(0.1, share)) * silent;
    }

    private static string KeyOf(CauseLink raised) => (raised.Target == LinkTarget.Finding ? "finding/" : "history/") + raised.Id;
}
