using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Work;

/// <summary>Writes the list of parts to order: what was decided to be replaced, what steps renew, and what goes with it.</summary>
internal sealed class PartsList
{
    private readonly Job job;
    private readonly IReadOnlyList<WorkItem> items;
    private readonly List<PartsLine> lines = [];

    private PartsList(Job job, IReadOnlyList<WorkItem> items)
    {
        this.job = job;
        this.items = items;
    }

    public static IReadOnlyList<PartsLine> Write(Job job, IReadOnlyList<WorkItem> items, IReadOnlyList<PartDecision> decisions)
    {
        PartsList list = new(job, items);
        foreach (WorkItem item in items)
        {
            list.AddMaterials(item);
        }

        foreach (PartDecision d in decisions.Where(d => d.Decision == Decision.Replace))
        {
            list.AddDecided(d);
        }

        foreach (WorkItem item in items.Where(i => i.Rule.Does == "replace" && i.Rule.Materials.All(m => m.UsedUp)))
        {
            list.AddRenewed(item);
        }

        foreach (WorkItem item in items)
        {
            list.AddTogether(item);
        }

        // A part that goes back in is not ordered before a check has shown the need.
        ILookup<string, Decision> decided = decisions.ToLookup(d => d.Part, d => d.Decision, StringComparer.Ordinal);
        bool Stays(PartsLine l) => l.Part is { } part && decided[part].Any() && decided[part].All(d => d is Decision.Reuse or Decision.Monitor or Decision.Clean);
        return [.. list.lines.Select(l => Stays(l) ? l with { CheckFirst = true } : l).OrderBy(l => l.CheckFirst).ThenBy(l => l.OrderAfter is not null).ThenBy(l => l.Item, StringComparer.Ordinal)];
    }

    private void AddMaterials(WorkItem item)
    {
        foreach (Material m in item.Rule.Materials.Where(m => !m.UsedUp && job.MayHave(m.Part)).SelectMany(m => Narrowed(item, m)))
        {
            int[] seen = m.Part is null ? [] : SeenPlaces(item, m.Part);
            (int? count, string from) = m.Count is null ? Counted(m.Part, seen)
                : m.Count == "as-seen" ? (seen.Length > 0 ? (seen.Length, SaySeen(seen)) : (null, "as many as are found bad"))
                : int.TryParse(m.Count, out int fixedCount) ? (fixedCount, "one job") : Counted(m.Count);
            WorkItem? after = m.OrderAfter is { } step ? items.FirstOrDefault(i => i.Rule.Id == step) : null;
            // A size is measured before it is ordered, also where the measuring is no step of this plan.
            string? when = m.OrderAfter is { } measuring && (after is not null || m.Size is not null) ? $"order after: {job.Knowledge.Work[measuring].Title}" : null;
            Add(new PartsLine(m.Part, m.Item, count, from, m.Size, when, after?.Rule.Id, false, item.CheckFirst, item.Reasons, [item.Rule.Id]));
        }
    }

    /// <summary>A rule speaks of rolling bearings; what is ordered are the very ones that were seen.</summary>
    private IEnumerable<Material> Narrowed(WorkItem item, Material m)
    {
        string[] seen = m.Part is { } part ? [.. ObservedOf(item).Where(p => p != part && job.Knowledge.PartIs(p, part)).Select(Ordered).OfType<string>().Where(p => p != part).Distinct()] : [];
        return seen.Length == 0 ? [m] : seen.Select(p => m with { Part = p, Item = job.Knowledge.Parts[p].Name });
    }

    private void AddDecided(PartDecision d)
    {
        if (Ordered(d.Part) is { } part)
        {
            int[] places = part == d.Part || job.Knowledge.Parts[part].Count == job.Knowledge.Parts[d.Part].Count ? [.. d.Places] : [];
            (int? count, string from) = Counted(part, places);
            WorkItem? after = Settling(d.Part);
            Add(new PartsLine(
                part, job.Knowledge.Parts[part].Name, count, from, null, after is null ? null : $"order after: {after.Rule.Title}", after?.Rule.Id, false, false, d.Reasons, d.Steps));
        }
    }

    /// <summary>The last step that measures or tests this part, when it might yet be machined instead of being replaced.</summary>
    private WorkItem? Settling(string part) => items.Any(i => i.Rule.Does == "machine" && WorksOn(i, part)) ? items.LastOrDefault(i => i.Rule.Does is "measure" or "inspect" && WorksOn(i, part)) : null;

    private bool WorksOn(WorkItem item, string part) => item.Rule.Part is { } own && job.Knowledge.PartIs(part, own);

    /// <summary>What is ordered when this part is replaced: a whole crank for a journal, nothing by the piece for a fluid.</summary>
    private string? Ordered(string part) => job.Knowledge.Parts[part].OrderedAs switch
    {
        null => part,
        Part.Fluid => null,
        { } whole => whole,
    };

    private void AddRenewed(WorkItem item)
    {
        if (item.Rule.Part is not { } own || !job.MayHave(own))
        {
            return;
        }

        string[] observed = [.. ObservedOf(item).Where(p => job.Knowledge.PartIs(p, own)).Distinct()];
        foreach (string part in (observed.Length > 0 ? observed : [own]).Select(Ordered).OfType<string>().Distinct())
        {
            (int? count, string from) = Counted(part, SeenPlaces(item, part));
            Add(new PartsLine(part, job.Knowledge.Parts[part].Name, count, from, null, null, null, false, item.CheckFirst, item.Reasons, [item.Rule.Id]));
        }
    }

    private void AddTogether(WorkItem item)
    {
        foreach (TogetherPart together in item.Rule.Together.Where(t => Ordered(t.Part) is not null && job.MayHave(t.Part)))
        {
            (int? count, string from) = Counted(together.Part, []);
            Add(new PartsLine(
                together.Part, job.Knowledge.Parts[together.Part].Name, count, from, null, null, null, true, item.CheckFirst,
                [new WorkReason("work", item.Rule.Id, together.Why ?? $"It goes with: {item.Rule.Title}")], [item.Rule.Id]));
        }
    }

    /// <summary>A part that stands on the list already, itself or as the very one of its kind, is not listed again; the line that is sure, or came first, stays.</summary>
    private void Add(PartsLine line)
    {
        int at = lines.FindIndex(l => line.Part is null ? l.Item == line.Item : l.Part is not null && (job.Knowledge.PartIs(l.Part, line.Part) || Covers(l, line)));
        if (at < 0)
        {
            lines.Add(line);
            return;
        }

        PartsLine before = lines[at];
        lines[at] = before with
        {
            CheckFirst = before.CheckFirst && line.CheckFirst, Count = before.Part == line.Part ? Most(before.Count, line.Count) : before.Count,
            CountFrom = before.Part == line.Part && line.Count is { } n && n > (before.Count ?? 0) ? line.CountFrom : before.CountFrom,
            Together = before.Together && line.Together, Steps = [.. before.Steps.Concat(line.Steps).Distinct()],
            Reasons = [.. before.Reasons.Concat(line.Reasons).Distinct()],
        };
    }

    /// <summary>True when enough of the general kind stand on the list already: ring sets for all pistons hold every top ring.</summary>
    private bool Covers(PartsLine before, PartsLine line) =>
        !before.CheckFirst && before.Count >= line.Count && job.Knowledge.PartIs(line.Part!, before.Part!) && job.Knowledge.Parts[line.Part!].Count == job.Knowledge.Parts[before.Part!].Count;

    private static int? Most(int? a, int? b) => a is null ? b : b is null ? a : Math.Max(a.Value, b.Value);

    private (int? Count, string From) Counted(string? part, int[] seen)
    {
        if (part is null || job.Knowledge.Parts[part].Each == 1)
        {
            return seen.Length > 0 ? (seen.Length, SaySeen(seen)) : Counted(part is null ? null : job.Knowledge.Parts[part].Count);
        }

        (int? places, string from) = seen.Length > 0 ? (seen.Length, SaySeen(seen)) : Counted(job.Knowledge.Parts[part].Count);
        return job.Knowledge.Parts[part].Each is { } each && places is { } n ? (each * n, $"{from}, {each} each") : Counted(null);
    }

    private (int? Count, string From) Counted(string? word) => (job.Count(word), word) switch
    {
        ({ } n, "mains") => (n, $"{n} main bearings"),
        ({ } n, "cylinders" or "rods") => (n, $"{n} cylinders"),
        ({ } n, _) => (n, "one on the machine"),
        _ => (null, "count them on the machine"),
    };

    private static string SaySeen(IReadOnlyList<int> places) => "No. " + string.Join(", ", places);

    private IEnumerable<string> ObservedOf(WorkItem item) => Marks(item).Select(o => o.Part);

    private int[] SeenPlaces(WorkItem item, string part) =>
        [.. Marks(item).Where(o => job.Knowledge.PartIs(o.Part, part)).SelectMany(o => o.Places).Distinct().Order()];

    private IEnumerable<Observation> Marks(WorkItem item)
    {
        HashSet<string> numbers = [.. item.Reasons.Where(r => r.Kind == "observation").SelectMany(r => r.Id.Split(", "))];
        return job.Case.Observations.Where(o => o.Look == Look.Seen && numbers.Contains(o.Number.ToString()));
    }
}
