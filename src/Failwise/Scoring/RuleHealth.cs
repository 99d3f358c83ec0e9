using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Scoring;

/// <summary>Figures about a rule base: how much it holds, and what a job of each kind looks like before any evidence.</summary>
public static class RuleHealth
{
    /// <summary>Writes the figures as text.</summary>
    public static string Write(KnowledgeBase knowledge)
    {
        StringWriter w = new() { NewLine = "\n" };
        int roots = knowledge.Causes.Values.Count(c => c.IsRoot);
        int links = knowledge.Causes.Values.Sum(c => c.Leaves.Count + c.LeadsTo.Count + c.RaisedBy.Count);
        w.WriteLine($"{knowledge.Parts.Count} parts, {knowledge.Patterns.Count} patterns, {knowledge.Symptoms.Count} symptoms, {knowledge.Circumstances.Count} circumstances, {knowledge.Findings.Count} findings");
        w.WriteLine($"{roots} roots, {knowledge.Causes.Count - roots} states, {links} links, {knowledge.Work.Count} pieces of work, {knowledge.Sources.Count} sources");
        foreach (MachineKind kind in knowledge.Machines.Values)
        {
            double[] common = [.. Roots(knowledge, kind.Id)];
            w.WriteLine($"{kind.Name}: the roots add up to {common.Sum():0.00} a job; chance of none of them (something else) {common.Aggregate(1.0, (none, p) => none * (1 - Math.Min(0.999, p))):0.00}");
        }

        return w.ToString();
    }

    /// <summary>Expected number of roots in a job of this kind, before any evidence and with no circumstance known.</summary>
    public static double SumOfRoots(KnowledgeBase knowledge, string kind) => Roots(knowledge, kind).Sum();

    /// <summary>How common each root is in a machine of this kind of which nothing else is known.</summary>
    private static IEnumerable<double> Roots(KnowledgeBase knowledge, string kind) => knowledge.Causes.Values
        .Where(c => c.IsRoot && (c.Machines.Count == 0 || c.Machines.Contains(kind)))
        .Select(c => BuildFit.Commonness(knowledge, c) * c.Needs.Aggregate(1.0, (share, need) => share * BuildFit.ShareOf(knowledge.Features[need], [kind])));
}
