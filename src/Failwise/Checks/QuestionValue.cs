using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>
/// What an answer about history would be worth. A circumstance only changes how common its roots are beforehand, and the odds of a root
/// change by the same factor as its prior odds.
/// </summary>
internal sealed class QuestionValue(KnowledgeBase knowledge, IReadOnlyList<Cause> suspects, IReadOnlyList<double> now)
{
    private const double LeastChance = 0.02;

    /// <summary>Circumstances that a person can be asked about and that would move a suspect, in order of id.</summary>
    public IEnumerable<(Circumstance Asked, double Chance, double[] IfSo, double[] IfNot)> Open(TeardownCase teardown, IReadOnlyList<EvidenceItem> evidence)
    {
        HashSet<string> known = [.. evidence.Where(e => e.Kind == EvidenceKind.Circumstance).Select(e => e.Id), .. teardown.History.Select(h => "history/" + h.Id)];
        string[] ids = [.. suspects.SelectMany(s => s.RaisedBy).Where(r => r.Target == LinkTarget.History).Select(r => r.Id).Distinct().Order(StringComparer.Ordinal)];
        foreach (string id in ids)
        {
            if (known.Contains("history/" + id) || !knowledge.Circumstances.TryGetValue(id, out Circumstance? c) || c.Ask is null || c.HowCommon is <= 0 or >= 1
                || knowledge.FitOf(id, teardown.Machine.Kinds, teardown.Machine.Features) == 0)
            {
                continue;
            }

            yield return Judge(c);
        }
    }

    private (Circumstance, double, double[], double[]) Judge(Circumstance c)
    {
        double[] ifSo = [.. now], ifNot = [.. now];
        for (int i = 0; i < suspects.Count; i++)
        {
            Cause root = suspects[i];
            if (root.RaisedBy.FirstOrDefault(r => r.Target == LinkTarget.History && r.Id == c.Id) is not { } link || root.HowCommon <= 0)
            {
                continue;
            }

            double common = BuildFit.Commonness(knowledge, root);
            double raised = 1 - (1 - common) * (1 - link.Strength);
            double lowered = common * Math.Max(0.1, 1 - link.Strength * c.HowCommon / common);
            ifSo[i] = Scaled(now[i], Odds(raised) / Odds(common));
            ifNot[i] = Scaled(now[i], Odds(lowered) / Odds(common));
        }

        return (c, ChanceOfYes(ifSo, ifNot), ifSo, ifNot);
    }

    /// <summary>
    /// What is held now lies between what either answer would make of it, and how far along tells how likely "yes" is: the least-squares share
    /// over the suspects, which is exact where "how common" of root and circumstance agree with each other.
    /// </summary>
    private double ChanceOfYes(double[] ifSo, double[] ifNot)
    {
        double along = 0, apart = 0;
        for (int i = 0; i < ifSo.Length; i++)
        {
            along += (now[i] - ifNot[i]) * (ifSo[i] - ifNot[i]);
            apart += (ifSo[i] - ifNot[i]) * (ifSo[i] - ifNot[i]);
        }

        return apart > 0 ? Math.Clamp(along / apart, LeastChance, 1 - LeastChance) : 0.5;
    }

    private static double Odds(double p) => p / (1 - Math.Min(p, 1 - 1e-9));

    private static double Scaled(double p, double factor)
    {
        double odds = Odds(Math.Min(p, 1 - 1e-9)) * factor;
        return odds / (1 + odds);
    }
}
