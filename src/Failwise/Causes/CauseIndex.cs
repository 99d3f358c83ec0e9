using System.Runtime.CompilerServices;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>The links of a knowledge base by what they point at. Built once a knowledge base.</summary>
internal sealed class CauseIndex
{
    private static readonly ConditionalWeakTable<KnowledgeBase, CauseIndex> Known = [];

    private CauseIndex(KnowledgeBase knowledge)
    {
        Match = new SignMatch(knowledge);
        foreach (Cause cause in knowledge.Causes.Values.OrderBy(c => c.Id, StringComparer.Ordinal))
        {
            foreach (CauseLink link in cause.Leaves)
            {
                Add(link.Target switch
                {
                    LinkTarget.Sign => "sign/" + link.Id,
                    LinkTarget.Finding => "finding/" + link.Id,
                    LinkTarget.Symptom => "symptom/" + link.Id,
                    LinkTarget.Cause => "cause/" + link.Id,
                    _ => "history/" + link.Id,
                }, cause, link);
                if (link.Target == LinkTarget.Sign)
                {
                    AddTo(ByPart, link.Sign!.Part, cause, link);
                }
            }

            foreach (CauseLink link in cause.LeadsTo.Where(l => knowledge.Causes.ContainsKey(l.Id)))
            {
                Add("cause/" + link.Id, cause, link);
            }
        }
    }

    /// <summary>Causes that leave or bring about the target, in order of id.</summary>
    public Dictionary<string, List<(Cause Cause, CauseLink Link)>> ByTarget { get; } = new(StringComparer.Ordinal);

    /// <summary>Causes that leave any sign on the part.</summary>
    public Dictionary<string, List<(Cause Cause, CauseLink Link)>> ByPart { get; } = new(StringComparer.Ordinal);

    public SignMatch Match { get; }

    public static CauseIndex Of(KnowledgeBase knowledge) => Known.GetValue(knowledge, k => new CauseIndex(k));

    private void Add(string key, Cause cause, CauseLink link) => AddTo(ByTarget, key, cause, link);

    private static void AddTo(Dictionary<string, List<(Cause, CauseLink)>> to, string key, Cause cause, CauseLink link)
    {
        if (!to.TryGetValue(key, out List<(Cause, CauseLink)>? list))
        {
            to[key] = list = [];
        }

        list.Add((cause, link));
    }
}
