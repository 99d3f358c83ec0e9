using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>One sign that a look may show.</summary>
internal sealed record OpenSign(EvidenceItem Item, string Part, Pattern Pattern);

/// <summary>A look at one thing on the bench, with everything it may show.</summary>
/// <param name="Part">The part, or what all its parts are kinds of.</param>
/// <param name="Presence">Chance that the machine has it, 0 to 1.</param>
/// <param name="SeenBefore">True when the part was looked at already, so that only a closer look is left.</param>
/// <param name="Marks">How many kinds of damage were seen on it.</param>
internal sealed record OpenLook(string Part, string? Cover, double Presence, bool SeenBefore, int Marks, IReadOnlyList<OpenSign> Signs);

/// <summary>Finds everything that the suspected roots would leave and nobody has looked at yet.</summary>
internal sealed class LookCatalog
{
    private const double WeakestWay = 0.06;
    private const int LongestWay = 4;
    private const int MostNarrower = 4;
    private readonly KnowledgeBase knowledge;
    private readonly TeardownCase teardown;
    private readonly PartPresence presence;
    private readonly double sure;
    private readonly HashSet<string> known;
    private readonly HashSet<string> closed;
    private readonly HashSet<string> looked;
    private readonly Sign[] damage;
    private readonly Dictionary<string, EvidenceItem> items = new(StringComparer.Ordinal);
    private readonly HashSet<Sign> broad = [];

    public LookCatalog(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<EvidenceItem> evidence)
    {
        this.knowledge = knowledge;
        this.teardown = teardown;
        presence = new PartPresence(knowledge, teardown);
        sure = knowledge.Sureness["sure"];
        known = [.. evidence.Select(e => e.Id)];
        // Found sound means looked at all over; not looked at for a reason means that it cannot be looked at.
        closed =
        [
            .. evidence.Where(e => e.Kind == EvidenceKind.SoundPart).Select(e => e.Id.Split('/')[0]),
            .. teardown.NotLookedAt.Where(n => n.Reason is not null).Select(n => n.Part),
        ];
        looked = [.. teardown.Observations.Select(o => o.Part)];
        damage = [.. teardown.Observations.Where(o => o.Look == Look.Seen && !knowledge.Patterns[o.Pattern!].Sound).Select(o => new Sign(o.Part, o.Pattern!)).Distinct()];
    }

    /// <summary>All items in order of id, for the network; complete after <see cref="Narrow"/>.</summary>
    public IReadOnlyList<EvidenceItem> Items { get; private set; } = [];

    public PartPresence Presence => presence;

    /// <summary>Adds what the root would leave, directly or through states.</summary>
    public void Add(Cause root) => Add(root, 1, 0, []);

    /// <summary>
    /// A mark that is known of a broad part, such as any plain bearing, is looked for where the damage is; else on the bearings that are
    /// looked at anyway, and on the broad part itself only where there are none. To be called once, after all roots were added.
    /// </summary>
    public void Narrow()
    {
        string[] concrete = [.. items.Values.Where(i => i.Kind == EvidenceKind.Sign).Select(i => i.Id.Split('/')[0]).Distinct().Order(StringComparer.Ordinal)];
        string[] damaged =
        [
            .. teardown.Observations.Where(o => o.Look == Look.Seen && !knowledge.Patterns[o.Pattern!].Sound && Allowed(o.Part))
                .Select(o => o.Part).Distinct().Order(StringComparer.Ordinal),
        ];
        foreach (IGrouping<string, Sign> group in broad.GroupBy(s => s.Part).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            string[] on = Kinds(damaged, group.Key) is { Length: > 0 } marked ? marked : Kinds(concrete, group.Key);
            foreach (Sign sign in group)
            {
                foreach (string part in on.Length > 0 ? on : [sign.Part])
                {
                    AddSign($"{part}/{sign.Pattern}");
                }
            }
        }

        Items = [.. items.Values.OrderBy(i => i.Id, StringComparer.Ordinal)];
    }

    private string[] Kinds(string[] parts, string broader) =>
        [.. parts.Where(p => p != broader && knowledge.PartIs(p, broader) && !IsOfAnyMachine(knowledge.Parts[p])).Take(MostNarrower)];

    /// <summary>The looks, each at one thing behind one cover, in order of id.</summary>
    public IReadOnlyList<OpenLook> Looks()
    {
        IEnumerable<OpenSign> signs = items.Values.Where(i => i.Kind == EvidenceKind.Sign)
            .Select(i => new OpenSign(i, i.Id.Split('/')[0], knowledge.Patterns[i.Id.Split('/')[1]]));
        return
        [
            .. signs.GroupBy(s => (Family: FamilyOf(knowledge, s.Part), Access: IsOfAnyMachine(knowledge.Parts[s.Part]) ? null : knowledge.Parts[s.Part].Access, Test: IsBenchTest(s.Pattern)))
                .Select(g => LookAt(g.Key.Family, g.Select(s => knowledge.Parts[s.Part].Access).FirstOrDefault(a => a is not null), [.. g.OrderBy(s => s.Item.Id, StringComparer.Ordinal)]))
                .OrderBy(l => l.Part, StringComparer.Ordinal).ThenBy(l => l.Signs[0].Item.Id, StringComparer.Ordinal),
        ];
    }

    private OpenLook LookAt(string family, string? cover, OpenSign[] signs)
    {
        string[] parts = [.. signs.Select(s => s.Part).Distinct()];
        bool Here(string part) => parts.Any(p => Same(part, p));
        return new OpenLook(
            parts.Length == 1 ? parts[0] : family, cover, parts.Max(presence.Of),
            looked.Any(Here), damage.Where(d => Here(d.Part)).Select(d => d.Pattern).Distinct().Count(), signs);
    }

    private bool Same(string a, string b) => knowledge.PartIs(a, b) || knowledge.PartIs(b, a);

    /// <summary>The whole of which a part is a place: a piston skirt is looked at with the piston.</summary>
    public static string FamilyOf(KnowledgeBase knowledge, string part)
    {
        string at = part;
        while (knowledge.Parts[at].KindOf.FirstOrDefault() is { } broader && knowledge.Parts.TryGetValue(broader, out Part? b)
            && (b.Access is not null || (IsOfAnyMachine(knowledge.Parts[at]) && b.Id != "part")))
        {
            at = broader;
        }

        return at;
    }

    /// <summary>Bolts, gears and bearings that any machine may have: one looks at the bolts, not first at bolts and then at studs.</summary>
    private static bool IsOfAnyMachine(Part part) => part.Machines.Count == 0 && part.KindOf.Count > 0;

    private static bool IsBenchTest(Pattern pattern) => pattern.Check is { Minutes: > 12 } or { Destroys: true };

    private void Add(Cause cause, double way, int depth, HashSet<string> seen)
    {
        if (!seen.Add(cause.Id))
        {
            return;
        }

        foreach (CauseLink link in cause.Leaves.Where(l => way * l.Strength >= WeakestWay))
        {
            AddItem(link);
        }

        if (depth < LongestWay)
        {
            foreach (CauseLink next in cause.LeadsTo)
            {
                if (way * next.Strength >= 2 * WeakestWay && knowledge.Causes.TryGetValue(next.Id, out Cause? state) && CauseNetwork.Applies(state, teardown.Machine))
                {
                    Add(state, way * next.Strength, depth + 1, seen);
                }
            }
        }
    }

    private void AddItem(CauseLink link)
    {
        switch (link.Target)
        {
            case LinkTarget.Sign when CanBeLookedAt(link.Sign!):
                if (IsBroad(knowledge, link.Sign!.Part))
                {
                    broad.Add(link.Sign);
                }
                else
                {
                    AddSign(link.Id);
                }

                break;
            case LinkTarget.Symptom:
                Add(new EvidenceItem("symptom/" + link.Id, EvidenceKind.Symptom, "", true, sure, [], false));
                break;
            case LinkTarget.Finding when knowledge.Findings[link.Id] is { Role: FindingRole.Sign, Refines.Count: 0 } rule && PartsOf(rule.When).All(Allowed):
                Add(new EvidenceItem("finding/" + link.Id, EvidenceKind.Finding, "", true, sure, [], false));
                break;
        }
    }

    private void AddSign(string id) => Add(new EvidenceItem(id, EvidenceKind.Sign, "", true, sure, [], false));

    private void Add(EvidenceItem item)
    {
        if (!known.Contains(item.Id))
        {
            items.TryAdd(item.Id, item);
        }
    }

    /// <summary>A part that only stands for others, and behind no cover of its own.</summary>
    internal static bool IsBroad(KnowledgeBase knowledge, string part) => knowledge.Parts[part].Access is null && knowledge.Parts[part].Group is "base" or "lubrication";

    private bool CanBeLookedAt(Sign sign) => sign.Part != "part" && !knowledge.Patterns[sign.Pattern].Sound && Allowed(sign.Part);

    private bool Allowed(string part) => presence.Of(part) >= PartPresence.Hardly && !knowledge.PartLine(part).Any(closed.Contains);

    /// <summary>Parts that a finding speaks of.</summary>
    public static IEnumerable<string> PartsOf(Condition condition) => condition switch
    {
        AllOf c => c.Parts.SelectMany(PartsOf),
        AnyOf c => c.Parts.SelectMany(PartsOf),
        NoneOf c => c.Parts.SelectMany(PartsOf),
        SightingCondition c => [c.Part],
        ReadingCondition c => [c.Part],
        _ => [],
    };
}
