using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>Which machines some symptoms, history words and parts can be about at all, so that nobody asks the owner of a boat about its wheels.</summary>
/// <param name="Words">Symptoms and history words.</param>
/// <param name="Parts">Parts that other machines have not.</param>
/// <param name="Machines">Kinds of machine, any of which is enough; empty for all.</param>
/// <param name="NotWith">Features of a build with which they make no sense.</param>
public sealed record AskedOf(string Id, IReadOnlyList<string> Words, IReadOnlyList<string> Parts, IReadOnlyList<string> Machines, IReadOnlyList<string> NotWith, IReadOnlyList<SourceRef> Sources, Location At)
{
    /// <summary>True for a machine of these kinds with these features.</summary>
    internal bool Suits(IReadOnlyList<string> kinds, IReadOnlyCollection<string> features) =>
        (Machines.Count == 0 || Machines.Any(kinds.Contains)) && !NotWith.Any(features.Contains);
}

/// <summary>Judges whether a symptom or history word can be about a machine: by what is written, and by the causes that know the word.</summary>
internal sealed class StatementScope
{
    private readonly ILookup<string, AskedOf> written;
    private readonly Dictionary<string, HashSet<string>> kinds = new(StringComparer.Ordinal);
    private readonly HashSet<string> any = new(StringComparer.Ordinal);

    public StatementScope(IEnumerable<AskedOf> rules, IEnumerable<Cause> causes)
    {
        written = rules.SelectMany(r => r.Words.Select(w => (w, r))).ToLookup(x => x.w, x => x.r, StringComparer.Ordinal);
        foreach (Cause cause in causes)
        {
            foreach (CauseLink link in cause.Leaves.Concat(cause.RaisedBy).Where(l => l.Target is LinkTarget.Symptom or LinkTarget.History))
            {
                if (cause.Machines.Count == 0)
                {
                    any.Add(link.Id);
                }

                (kinds.TryGetValue(link.Id, out HashSet<string>? known) ? known : kinds[link.Id] = []).UnionWith(cause.Machines);
            }
        }
    }

    /// <summary>0 when the word is about other machines, 1 when it may be about any, 2 when it is about such machines in particular.</summary>
    public int Fit(string id, IReadOnlyList<string> machineKinds, IReadOnlyCollection<string> features)
    {
        AskedOf[] rules = [.. written[id]];
        if (rules.Any(r => !r.Suits(machineKinds, features)))
        {
            return 0;
        }

        return rules.Any(r => r.Machines.Count > 0) ? 2
            : any.Contains(id) || !kinds.TryGetValue(id, out HashSet<string>? known) ? 1
            : machineKinds.Any(known.Contains) ? 2 : 0;
    }
}
