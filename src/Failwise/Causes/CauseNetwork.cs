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
    private readonly Dictionary<string, int> numbers;
    private readonly List<NetworkNode> nodes;
    private readonly Dictionary<string, bool> circumstances;
    private readonly HashSet<string> heard;
    private readonly Dictionary<string, LinkInto[]> linksInto;
    private readonly Dictionary<string, int> causes;
    private readonly StrongestLinks collector;
    private readonly bool?[] allowed;

    public CauseNetwork(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<EvidenceItem> items)
    {
        this.knowledge = knowledge;
        this.teardown = teardown;
        index = CauseIndex.Of(knowledge);
        collector = new StrongestLinks(index.Causes.Count);
        allowed = new bool?[index.Causes.Count];
        build = new BuildFit(knowledge, teardown);
        numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        nodes = [];
        heard = new HashSet<string>(StringComparer.Ordinal);
        linksInto = new Dictionary<string, LinkInto[]>(StringComparer.Ordinal);
        causes = new Dictionary<string, int>(StringComparer.Ordinal);
        circumstances = items.Where(i => i.Kind == EvidenceKind.Circumstance).ToDictionary(i => i.Id, i => i.Present, StringComparer.Ordinal);
        EvidenceItem[] known = [.. items.Where(i => i.Kind != EvidenceKind.Circumstance && AddEvidenceNode(i) >= 0)];
        Known = [.. known, .. items.Where(i => i.Kind == EvidenceKind.Circumstance && heard.Contains(i.Id))];
        Network = NoisyOrNetwork.Trusted([.. nodes]);
        (Roots, States) = Parted();
    }

    private CauseNetwork(CauseNetwork before, IReadOnlyList<EvidenceItem> possible)
    {
        (knowledge, teardown, index, circumstances) = (before.knowledge, before.teardown, before.index, before.circumstances);
        collector = new StrongestLinks(index.Causes.Count);
        allowed = [.. before.allowed];
        build = new BuildFit(knowledge, teardown);
        numbers = new Dictionary<string, int>(before.numbers, StringComparer.Ordinal);
        nodes = [.. before.nodes];
        heard = new HashSet<string>(before.heard, StringComparer.Ordinal);
        linksInto = new Dictionary<string, LinkInto[]>(before.linksInto, StringComparer.Ordinal);
        causes = new Dictionary<string, int>(before.causes, StringComparer.Ordinal);
        foreach (EvidenceItem item in possible)
        {
            AddEvidenceNode(item);
        }

        Known = before.Known;
        Network = NoisyOrNetwork.Trusted([.. nodes]);
        (Roots, States) = Parted();
    }

    /// <summary>The same network with what might be seen as further leaves, about which nothing is known yet; this one stays as it is.</summary>
    public CauseNetwork With(IReadOnlyList<EvidenceItem> possible) => new(this, possible);

    public NoisyOrNetwork Network { get; }

    /// <summary>Evidence that some cause can speak to.</summary>
    public IReadOnlyList<EvidenceItem> Known { get; }

    public IReadOnlyList<Cause> Roots { get; }

    public IReadOnlyList<Cause> States { get; }

    public int NumberOf(Cause cause) => causes[cause.Id];

    public int NumberOf(EvidenceItem item) => numbers[Key(item)];

    public bool Has(EvidenceItem item) => numbers.ContainsKey(Key(item));

    public bool Has(Cause cause) => causes.ContainsKey(cause.Id);

    /// <summary>
    /// The evidence as the engine takes it. How sure the observer is stands in the node itself (see <see cref="AddEvidenceNode"/>),
    /// so that every report is a plain yes or no; only then do negatives cost nothing.
    /// </summary>
    public Evidence EvidenceOf(EvidenceItem item) => item.Present ? Evidence.Present(NumberOf(item)) : Evidence.Absent(NumberOf(item));

    /// <summary>The links into the node of a piece of evidence, in order of the cause's id.</summary>
    public IReadOnlyList<LinkInto> LinksInto(EvidenceItem item) => LinksInto(Key(item));

    internal IReadOnlyList<LinkInto> LinksInto(string key) => linksInto.TryGetValue(key, out LinkInto[]? links) ? links : [];

    /// <summary>For each node the strongest product of strengths on a way from it to the evidence, 0 where there is none.</summary>
    public double[] WaysTo(EvidenceItem item)
    {
        double[] ways = new double[nodes.Count];
        ways[NumberOf(item)] = 1;
        ReadOnlySpan<int> order = Network.ParentsFirst;
        for (int i = order.Length - 1; i >= 0; i--)
        {
            if (ways[order[i]] == 0)
            {
                continue;
            }

            foreach (NetworkLink link in nodes[order[i]].Links)
            {
                ways[link.Parent] = Math.Max(ways[link.Parent], link.Strength * ways[order[i]]);
            }
        }

        return ways;
    }

    private static string Key(EvidenceItem item) => item.Kind switch
    {
        EvidenceKind.Sign or EvidenceKind.NotFound => "sign/" + item.Id,
        EvidenceKind.SoundPart => "sound/" + item.Id,
        _ => item.Id,
    };

    /// <summary>A cause that this machine cannot have is not a candidate.</summary>
    public static bool Applies(Cause cause, Machine machine) =>
        (cause.Machines.Count == 0 || cause.Machines.Any(machine.Kinds.Contains)) && !cause.Needs.Any(machine.Without.Contains);

    private (Cause[] Roots, Cause[] States) Parted()
    {
        Cause[] all = [.. causes.Keys.Order(StringComparer.Ordinal).Select(id => knowledge.Causes[id])];
        return ([.. all.Where(c => c.IsRoot)], [.. all.Where(c => !c.IsRoot)]);
    }

    private int AddEvidenceNode(EvidenceItem item)
    {
        string key = Key(item);
        if (numbers.TryGetValue(key, out int known))
        {
            return known;
        }

        LinkInto[] links = LinksTo(item);
        if (links.Length == 0)
        {
            return -1;
        }

        // A report, not the thing itself: "present" may be a false alarm with chance 1/ratio, which only raises the leak (exactly the
        // likelihood pair ratio:1); "absent" may be an oversight with chance 1/ratio, which weakens every link alike.
        double slip = double.IsPositiveInfinity(item.Ratio) ? 0 : 1 / item.Ratio;
        double leak = LeakOf(item);
        return item.Present ? AddNode(key, leak + slip - leak * slip, links) : AddNode(key, leak, links, 1 - slip);
    }

    private LinkInto[] LinksTo(EvidenceItem item)
    {
        switch (item.Kind)
        {
            case EvidenceKind.Sign or EvidenceKind.NotFound:
                string[] ids = item.Id.Split('/');
                CollectSign(ids[0], ids[1]);
                break;
            case EvidenceKind.SoundPart:
                CollectSound(item.Id.Split('/')[0]);
                break;
            case EvidenceKind.Symptom:
                CollectSymptom(item.Id["symptom/".Length..], item.Present);
                break;
            default:
                CollectTarget(item.Id);
                break;
        }

        return collector.Take();
    }

    private void CollectSign(string part, string pattern)
    {
        ReadOnlySpan<double> weights = index.Match.Patterns(pattern);
        foreach ((string at, double weight) in index.Match.Parts(part))
        {
            foreach ((Cause cause, CauseLink link, int number, int said) in On(at))
            {
                double strength = weights[said] == 0 ? 0 : link.Strength * (weight * weights[said]);
                if (strength > 0 && Allows(cause, number))
                {
                    collector.Add(number, cause, link, strength);
                }
            }
        }
    }

    private void CollectSound(string part)
    {
        foreach (string at in knowledge.PartLine(part).Where(p => p != "part" && !IsMarked(p)))
        {
            foreach ((Cause cause, CauseLink link, int number, _) in On(at))
            {
                if (!knowledge.Patterns[link.Sign!.Pattern].Sound && Allows(cause, number))
                {
                    collector.Add(number, cause, link, link.Strength);
                }
            }
        }
    }

    /// <summary>A link to a broader symptom speaks to this one too, one to a closer symptom less surely; what was not noticed at all was not noticed in any closer way.</summary>
    private void CollectSymptom(string symptom, bool noticed)
    {
        CollectTarget("symptom/" + symptom);
        foreach (string akin in knowledge.Symptoms.Keys.Where(s => s != symptom))
        {
            if (knowledge.SymptomIs(akin, symptom))
            {
                CollectTarget("symptom/" + akin, noticed ? SignMatch.Narrower : 1);
            }
            else if (noticed && knowledge.SymptomIs(symptom, akin))
            {
                CollectTarget("symptom/" + akin, SignMatch.Broader);
            }
        }
    }

    private void CollectTarget(string key, double weight = 1)
    {
        if (!index.ByTarget.TryGetValue(key, out List<(Cause Cause, CauseLink Link)>? all))
        {
            return;
        }

        foreach ((Cause cause, CauseLink link) in all)
        {
            int number = index.NumberOf(cause);
            if (Allows(cause, number))
            {
                collector.Add(number, cause, link, weight * link.Strength);
            }
        }
    }

    private bool Allows(Cause cause, int number) => (allowed[number] ??= build.Allows(cause)) == true;

    private List<(Cause Cause, CauseLink Link, int Number, int Pattern)> On(string part) =>
        index.ByPart.TryGetValue(part, out List<(Cause Cause, CauseLink Link, int Number, int Pattern)>? links) ? links : [];

    private bool IsMarked(string broaderPart) => teardown.Observations.Any(o =>
        o.Look == Look.Seen && knowledge.PartIs(o.Part, broaderPart) && !knowledge.Patterns[o.Pattern!].Sound);

    private double LeakOf(EvidenceItem item) => item.Kind switch
    {
        EvidenceKind.Sign or EvidenceKind.NotFound => knowledge.Patterns[item.Id.Split('/')[1]].SeenAnyway,
        EvidenceKind.Symptom => knowledge.Symptoms[item.Id["symptom/".Length..]].SeenAnyway,
        EvidenceKind.Finding => knowledge.Findings[item.Id["finding/".Length..]].SeenAnyway,
        _ => 0.1,
    };

    private int AddNode(string key, double leak, LinkInto[] links, double noticed = 1)
    {
        NetworkLink[] parents = Array.ConvertAll(links, l => new NetworkLink(AddCause(l.Cause), l.Strength * noticed));
        linksInto[key] = links;
        numbers[key] = nodes.Count;
        nodes.Add(new NetworkNode(key, leak, parents));
        return nodes.Count - 1;
    }

    private int AddCause(Cause cause)
    {
        if (causes.TryGetValue(cause.Id, out int known))
        {
            return known;
        }

        string key = "cause/" + cause.Id;
        CollectTarget(key);
        NetworkLink[] parents = Array.ConvertAll(collector.Take(), l => new NetworkLink(AddCause(l.Cause), l.Strength));
        foreach (CauseLink raised in cause.RaisedBy)
        {
            if (circumstances.Count > 0 && KeyOf(raised) is var circumstance && circumstances.ContainsKey(circumstance))
            {
                heard.Add(circumstance);
            }
        }

        causes[cause.Id] = nodes.Count;
        nodes.Add(new NetworkNode(key, PriorOf(cause, null), parents));
        return nodes.Count - 1;
    }

    /// <summary>The network as it would be if one circumstance had not been mentioned.</summary>
    public NoisyOrNetwork WithoutCircumstance(string id) => Network.WithNumbers(
        [.. nodes.Select(n => n.Id.StartsWith("cause/", StringComparison.Ordinal) && knowledge.Causes[n.Id[6..]] is var cause && cause.RaisedBy.Any(r => KeyOf(r) == id)
            ? n with { Leak = PriorOf(cause, id) } : n)]);

    /// <summary>
    /// How often the cause comes by itself, given what is known beforehand. "How common" is over all jobs: a circumstance that holds adds
    /// its own chance, one that is denied takes away the share it accounts for (nine tenths at most), one that is not mentioned changes nothing.
    /// </summary>
    private double PriorOf(Cause cause, string? ignoring)
    {
        double share = 1, silent = 1;
        foreach (CauseLink raised in circumstances.Count > 0 ? cause.RaisedBy : [])
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
