using System.Runtime.CompilerServices;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>The links of a knowledge base by what they point at. Built once a knowledge base.</summary>
internal sealed class CauseIndex
{
    private static readonly ConditionalWeakTable<KnowledgeBase, CauseIndex> Known = [];
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);

    private CauseIndex(KnowledgeBase knowledge)
    {
        Match = new SignMatch(knowledge);
        Causes = [.. knowledge.Causes.Values.OrderBy(c => c.Id, StringComparer.Ordinal)];
        for (int number = 0; number < Causes.Count; number++)
        {
            Cause cause = Causes[number];
            numbers[cause.Id] = number;
            foreach (CauseLink link in cause.Leaves)
            {
                if (link.Target == LinkTarget.Sign)
                {
                    AddTo(ByPart, link.Sign!.Part, (cause, link, number, Match.NumberOf(link.Sign.Pattern)));
                }
                else
                {
                    Add(KindOf(link.Target) + link.Id, cause, link);
                }
            }

            foreach (CauseLink link in cause.LeadsTo.Where(l => knowledge.Causes.ContainsKey(l.Id)))
            {
                Add("cause/" + link.Id, cause, link);
            }
        }
    }

    /// <summary>Causes that leave or bring about a target other than a sign, in order of id.</summary>
    public Dictionary<string, List<(Cause Cause, CauseLink Link)>> ByTarget { get; } = new(StringComparer.Ordinal);

    /// <summary>Causes that leave any sign on the part, in order of id, each with its number and that of the sign's pattern.</summary>
    public Dictionary<string, List<(Cause Cause, CauseLink Link, int Number, int Pattern)>> ByPart { get; } = new(StringComparer.Ordinal);

    /// <summary>All causes in order of id: the place of a cause is its number.</summary>
    public IReadOnlyList<Cause> Causes { get; }

    public SignMatch Match { get; }

    public static CauseIndex Of(KnowledgeBase knowledge) => Known.GetValue(knowledge, k => new CauseIndex(k));

    public int NumberOf(Cause cause) => numbers[cause.Id];

    private static string KindOf(LinkTarget target) => target switch
    {
        LinkTarget.Finding => "finding/",
        LinkTarget.Symptom => "symptom/",
        LinkTarget.Cause => "cause/",
        _ => "history/",
    };

    private void Add(string key, Cause cause, CauseLink link) => AddTo(ByTarget, key, (cause, link));

    private static void AddTo<T>(Dictionary<string, List<T>> to, string key, T entry)
    {
        if (!to.TryGetValue(key, out List<T>? list))
        {
            to[key] = list = [];
        }

        list.Add(entry);
    }
}
