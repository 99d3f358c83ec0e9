using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;

namespace Failwise.Reports;

/// <summary>Why a cause ranks where it does; why a rule fired, or what is missing, or what contradicts it.</summary>
public static class ExplainReport
{
    /// <summary>The explanation as text, or null when the id is unknown.</summary>
    public static string? Write(Diagnosis diagnosis, string id)
    {
        StringWriter w = new() { NewLine = "\n" };
        bool any = false;
        if (diagnosis.Knowledge.Causes.TryGetValue(id, out Cause? cause))
        {
            WriteCause(w, diagnosis, cause);
            any = true;
        }

        if (diagnosis.Knowledge.Findings.TryGetValue(id, out FindingRule? rule))
        {
            WriteFinding(w, diagnosis, rule);
            any = true;
        }

        if (diagnosis.Knowledge.Circumstances.TryGetValue(id, out Circumstance? circumstance))
        {
            w.WriteLine(circumstance.Says);
            w.WriteLine(diagnosis.Findings.Circumstances.TryGetValue(id, out bool holds) ? holds ? "It holds in this case." : "It does not hold in this case." : "The case does not say.");
            any = true;
        }

        if (diagnosis.Knowledge.Work.TryGetValue(id, out WorkRule? work))
        {
            w.WriteLine(work.Title);
            Work.WorkItem? planned = diagnosis.Work.Items.FirstOrDefault(i => i.Rule.Id == id);
            w.WriteLine(planned is null ? "It is not in the plan of this case." : "In the plan because:");
            foreach (string because in planned?.Because ?? [])
            {
                w.WriteLine("  - " + because);
            }

            any = true;
        }

        return any ? w.ToString() : null;
    }

    private static void WriteCause(StringWriter w, Diagnosis diagnosis, Cause cause)
    {
        w.WriteLine($"{cause.Title} ({(cause.IsRoot ? "root, " + cause.Group : "state")})");
        w.WriteLine(cause.Says);
        if (!CauseNetwork.Applies(cause, diagnosis.Case.Machine))
        {
            w.WriteLine("This build cannot have it: " + string.Join(", ", [.. cause.Needs.Where(diagnosis.Case.Machine.Without.Contains), .. cause.Machines.Count > 0 ? new[] { "applies to " + string.Join(", ", cause.Machines) } : []]));
            return;
        }

        if (diagnosis.Causes.States.TryGetValue(cause.Id, out double state))
        {
            w.WriteLine($"Probability {100 * Math.Min(CauseRanking.Ceiling, state):0} %.");
        }

        int rank = diagnosis.Causes.Ranked.ToList().FindIndex(r => r.Cause.Id == cause.Id);
        if (rank < 0)
        {
            if (cause.IsRoot)
            {
                w.WriteLine("Nothing in this case bears on it.");
            }
        }
        else
        {
            RankedCause ranked = diagnosis.Causes.Ranked[rank];
            w.WriteLine($"Rank {rank + 1} of {diagnosis.Causes.Ranked.Count}: {100 * ranked.Probability:0.#} % (before the evidence {100 * ranked.Prior:0.##} %).");
            foreach ((string title, IReadOnlyList<WeighedEvidence> list) in new[] { ("For", ranked.For), ("Against", ranked.Against) })
            {
                foreach (WeighedEvidence e in list)
                {
                    w.WriteLine($"  {title,-7} {e.Decibans,6:+0.0;-0.0} deciban  {e.Item.Says}{(e.Sources.Count > 0 ? "  [" + string.Join(", ", e.Sources.Select(s => s.Id)) + "]" : "")}");
                }
            }

            if (ranked.After is not null)
            {
                w.WriteLine("  " + Phrases.MayComeFrom(ranked));
            }

            foreach (IReadOnlyList<ChainStep> chain in ranked.Chains)
            {
                w.WriteLine("  Way     " + string.Join(" → ", chain.Where(s => s.Probability is not null).Select(s => $"{s.Says} ({100 * s.Probability:0} %)")));
                w.WriteLine("          seen in: " + string.Join("; ", chain.Where(s => s.Probability is null).Select(s => s.Says.TrimEnd('.'))));
            }

            foreach (EvidenceItem item in ranked.Unexplained)
            {
                w.WriteLine("  Does not explain: " + item.Says);
            }
        }

        foreach (LookAlike other in cause.LooksLike)
        {
            w.WriteLine($"  Not to be confused with {diagnosis.Knowledge.Causes[other.Id].Title}: {other.Tell}");
        }

        if (cause.Prove is { } prove)
        {
            w.WriteLine("  To prove it: " + prove);
        }
    }

    private static void WriteFinding(StringWriter w, Diagnosis diagnosis, FindingRule rule)
    {
        Finding finding = FindingEngine.Explain(diagnosis.Knowledge, diagnosis.Case, diagnosis.Measured, diagnosis.Findings, rule.Id);
        w.WriteLine(rule.Says);
        w.WriteLine(finding.Answer.Truth switch
        {
            Truth.Holds => "It fired.",
            Truth.Contradicted => "It did not fire: something that was looked at contradicts it.",
            _ => "It did not fire: something is still missing.",
        });
        foreach ((Condition atom, Answer answer) in FindingEngine.ExplainParts(diagnosis.Knowledge, diagnosis.Case, diagnosis.Measured, diagnosis.Findings, rule.Id))
        {
            string state = answer.Truth switch { Truth.Holds => "holds", Truth.Contradicted => "contradicted", _ => "missing" };
            string by = answer.Truth == Truth.Unknown ? string.Join("; ", answer.Missing) : string.Join(", ", answer.Reasons.Select(r => $"{r.Kind} {r.Id}"));
            w.WriteLine($"  {state,-12} {ConditionText.Say(diagnosis.Knowledge, atom)}{(by.Length > 0 ? "  (" + by + ")" : "")}");
        }

        if (rule.Why is { } why)
        {
            w.WriteLine("  Why it matters: " + why);
        }
    }
}
