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
    /// <summary>Circumstances that a person can be asked about and that would move a suspect, in order of id.</summary>
    public IEnumerable<(Circumstance Asked, double Chance, double[] IfSo, double[] IfNot)> Open(TeardownCase teardown, IReadOnlyList<EvidenceItem> evidence)
    {
        HashSet<string> known = [.. evidence.Where(e => e.Kind == EvidenceKind.Circumstance).Select(e => e.Id), .. teardown.History.Select(h => "history/" + h.Id)];
        string[] ids = [.. suspects.SelectMany(s => s.RaisedBy).Where(r => r.Target == LinkTarget.History).Select(r => r.Id).Distinct().Order(StringComparer.Ordinal)];
        foreach (string id in ids)
        {
            if (known.Contains("history/" + id) || !knowledge.Circumstances.TryGetValue(id, out Circumstance? c) || c.Ask is null || c.HowCommon is <= 0 or >= 1)
            {
                continue;
            }

            yield return Judge(c);
        }
    }

    private (Circumstance, double, double[], double[]) Judge(Circumstance c)
    {
        double[] ifSo = [.. now], ifNot = [.. now];
        double with = 1, without = 1;
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
            with += now[i] * (raised / common - 1);
            without += now[i] * (lowered / common - 1);
        }

        double chance = c.HowCommon * with / (c.HowCommon * with + (1 - c.HowCommon) * Math.Max(0.05, without));
        for (int i = 0; i < suspects.Count; i++)
        {
            // What is expected after the answer is what is held now; the rarer answer gives way where the two do not meet.
            ifSo[i] = Math.Min(ifSo[i], Math.Min(1, now[i] / chance));
            ifNot[i] = Math.Clamp((now[i] - chance * ifSo[i]) / (1 - chance), 0, 1);
        }

        return (c, chance, ifSo, ifNot);
    }

    private static double Odds(double p) => p / (1 - Math.Min(p, 1 - 1e-9));

    private static double Scaled(double p, double factor)
    {
        double odds = Odds(Math.Min(p, 1 - 1e-9)) * factor;
        return odds / (1 + odds);
    }
}
