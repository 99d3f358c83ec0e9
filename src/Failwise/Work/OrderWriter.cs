using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Work;

/// <summary>Writes the machine-shop order, the parts list and the list of consumables.</summary>
internal static class OrderWriter
{
    public static WorkOrders Write(Job job, IReadOnlyList<WorkItem> items, IReadOnlyList<PartDecision> decisions) =>
        new(MachineShop(job, items, decisions), PartsList.Write(job, items, decisions), Consumables(job, items, decisions));

    private static List<ShopJob> MachineShop(Job job, IReadOnlyList<WorkItem> items, IReadOnlyList<PartDecision> decisions)
    {
        List<ShopJob> jobs = [];
        foreach (WorkItem item in items.Where(i => i.Rule.Does == "machine"))
        {
            string part = item.Rule.Part ?? "part";
            PartDecision[] about = [.. decisions.Where(d => (d.Decision is Decision.Machine or Decision.MeasureFirst || job.Knowledge.Parts[d.Part].OrderedAs == part) && Related(job, d.Part, part))];

            // Numbers mean something only while they count one sort of part: main journals and crankpins are numbered apart.
            bool one = about.Select(d => d.Part).Distinct().Count() == 1;
            jobs.Add(new ShopJob(
                one ? about[0].Part : part, one ? Places(job, item, about) : [], item.Rule.Title, Sizes(job, part), item.Rule.Shop?.Finish ?? "maker's limit needed",
                item.Rule.Shop?.DoNot ?? [], item.Rule.Shop?.Ask ?? [], item.Reasons, item.Rule.Id, item.CheckFirst));
        }

        foreach (PartDecision d in decisions.Where(d => d.Decision == Decision.Machine && !jobs.Exists(j => Related(job, d.Part, j.Part))))
        {
            jobs.Add(new ShopJob(
                d.Part, d.Places, $"Machine the {job.Knowledge.Parts[d.Part].Name}", Sizes(job, d.Part), "maker's limit needed", [], [], d.Reasons, null, false));
        }

        return jobs;
    }

    /// <summary>The places that are to be machined; where only others were found bad, the work is on those: a counterbore under a liner that is renewed.</summary>
    private static int[] Places(Job job, WorkItem item, PartDecision[] about)
    {
        int[] open = [.. about.SelectMany(d => d.Places).Distinct().Order()];
        HashSet<string> numbers = [.. item.Reasons.Where(r => r.Kind == "observation").SelectMany(r => r.Id.Split(", "))];
        int[] seen = [.. job.Case.Observations.Where(o => numbers.Contains(o.Number.ToString()) && Related(job, o.Part, about[0].Part)).SelectMany(o => o.Places).Distinct().Order()];
        return seen.Length > 0 && !seen.Intersect(open).Any() ? seen : open;
    }

    private static bool Related(Job job, string a, string b) => job.Knowledge.PartIs(a, b) || job.Knowledge.PartIs(b, a);

    private static List<string> Sizes(Job job, string part)
    {
        List<string> sizes = [];
        foreach (Reading r in job.Readings.Where(r => Related(job, r.Measurement.Part, part)))
        {
            Measurement m = r.Measurement;
            string where = job.Knowledge.Parts[m.Part].Name + (m.Places.Count > 0 ? " " + string.Join(", ", m.Places) : "");
            sizes.Add($"{where}: {m.Quantity.Replace('-', ' ')} {r.InBothSystems}{(m.Instrument is { } with ? $" ({with})" : "")}");
        }

        return sizes.Count > 0 ? sizes : ["not measured yet: measure before the order goes out"];
    }

    private static List<ConsumableLine> Consumables(Job job, IReadOnlyList<WorkItem> items, IReadOnlyList<PartDecision> decisions)
    {
        List<ConsumableLine> lines =
        [
            .. items.SelectMany(i => i.Rule.Materials.Where(m => m.UsedUp).Select(m => (i, m)))
                .GroupBy(x => x.m.Item, StringComparer.Ordinal)
                .Select(g => new ConsumableLine(
                    g.Key, g.Select(x => x.m.Size).OfType<string>().FirstOrDefault() ?? "as the job needs", [.. g.Select(x => x.i.Rule.Id).Distinct()])),
        ];
        foreach (PartDecision d in decisions.Where(d => d.Decision == Decision.Replace && job.Knowledge.Parts[d.Part].OrderedAs == Part.Fluid))
        {
            string name = job.Knowledge.Parts[d.Part].Name;
            if (!lines.Exists(l => l.Item == name))
            {
                lines.Add(new ConsumableLine(name, "the listed kind; quantity by the maker", d.Steps));
            }
        }

        return [.. lines.OrderBy(l => l.Item, StringComparer.Ordinal)];
    }
}
