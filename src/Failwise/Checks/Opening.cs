using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>What still has to come off: covers of parts that were looked at or measured are off already.</summary>
internal sealed class Opening
{
    private readonly KnowledgeBase knowledge;
    private readonly HashSet<string> open = new(StringComparer.Ordinal);
    private readonly bool all;

    public Opening(KnowledgeBase knowledge, TeardownCase teardown, bool allOpen)
    {
        this.knowledge = knowledge;
        all = allOpen;
        foreach (string part in teardown.Observations.Select(o => o.Part).Concat(teardown.Measurements.Select(m => m.Part)))
        {
            Open(knowledge.Parts.TryGetValue(part, out Part? p) ? p.Access : null);
        }
    }

    /// <summary>Takes a cover off, with everything before it.</summary>
    public void Open(string? cover)
    {
        foreach (Cover c in WayTo(cover))
        {
            open.Add(c.Id);
        }
    }

    /// <summary>Time to get behind the cover [min].</summary>
    public double MinutesTo(string? cover) => all ? 0 : WayTo(cover).Where(c => !open.Contains(c.Id)).Sum(c => c.Minutes);

    /// <summary>What has to come off, outermost first; null when nothing has to.</summary>
    public string? SayWayTo(string? cover)
    {
        string[] still = all ? [] : [.. WayTo(cover).Where(c => !open.Contains(c.Id) && c.Minutes > 0).Select(c => c.Says)];
        return still.Length == 0 ? null : string.Join(", ", still);
    }

    /// <summary>Every cover on the way, those that come off first standing first.</summary>
    private List<Cover> WayTo(string? cover)
    {
        List<Cover> way = [];
        Add(cover);
        return way;

        void Add(string? id)
        {
            if (id is not null && knowledge.Covers.TryGetValue(id, out Cover? c) && !way.Contains(c))
            {
                foreach (string before in c.Behind)
                {
                    Add(before);
                }

                way.Add(c);
            }
        }
    }
}
