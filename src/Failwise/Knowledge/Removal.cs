using System.Runtime.CompilerServices;

namespace Failwise.Knowledge;

/// <summary>
/// Which work takes a cause away. Where some work inside the unit says that it removes the cause, only such work counts there: a new shell does
/// not remove the blocked feed that starved the old one. Elsewhere the correcting work that names the cause is its removal, together with what
/// removes it outside (a new habit does not take the dirt out). Work that stands in for other work takes over
/// what that would have removed.
/// </summary>
internal static class Removal
{
    private static readonly string[] Correcting = ["adjust", "clean", "flush", "machine", "replace"];
    private static readonly string[] Proving = ["verify", "measure", "inspect", "monitor"];
    private static readonly ConditionalWeakTable<KnowledgeBase, HashSet<string>> Known = [];

    /// <summary>True when the work takes the cause away.</summary>
    public static bool Removes(KnowledgeBase knowledge, WorkRule rule, string cause) =>
        RemovesItself(knowledge, rule, cause) || rule.InsteadOf.Any(id => RemovesItself(knowledge, knowledge.Work[id], cause));

    private static bool RemovesItself(KnowledgeBase knowledge, WorkRule rule, string cause) =>
        rule.Because.Any(t => t.Cause == cause)
        && (rule.Does == "remove-cause" || (Correcting.Contains(rule.Does) && !RemovedInside(knowledge).Contains(cause)));

    /// <summary>True when the work shows whether the cause is there, or gone.</summary>
    public static bool Proves(WorkRule rule, string cause) => Proving.Contains(rule.Does) && rule.Because.Any(t => t.Cause == cause);

    private static HashSet<string> RemovedInside(KnowledgeBase knowledge) => Known.GetValue(knowledge, static k =>
        new HashSet<string>(k.Work.Values.Where(w => w.Does == "remove-cause" && !w.Outside).SelectMany(w => w.Because).Select(t => t.Cause).OfType<string>(), StringComparer.Ordinal));
}
