namespace Failwise.Checks;

/// <summary>A check that might be made, and in which direction it would move each suspect.</summary>
/// <param name="Check">The check, with its opening not yet counted.</param>
/// <param name="Cover">Cover behind which it lies; null when nothing has to be opened.</param>
/// <param name="Direction">For each suspect, how much a finding would raise it; empty when not known.</param>
internal sealed record Candidate(PlannedCheck Check, string? Cover, IReadOnlyList<double> Direction)
{
    /// <summary>What it and the best look after it tell together for their time [bit/min]; 0 when that was not worked out.</summary>
    public double Ahead { get; init; }
}

/// <summary>Puts checks into the order in which to make them.</summary>
internal static class CheckSequence
{
    private const double LostSoon = 1.3;
    private const double Twin = 0.7;
    private const int MostGaps = 4;

    // Two questions that tell the same differ in the last place only, and that by the order of a sum; then their ids decide.
    private const int SameWorth = 10;
    private const double Crowding = 0.3;

    /// <summary>
    /// The best few: each is chosen for what it tells for the time it still costs, so that covers that come off for one check serve the
    /// next, and a check that would only say the same again falls back.
    /// </summary>
    public static IReadOnlyList<PlannedCheck> Choose(IReadOnlyList<Candidate> candidates, Opening opening, int most)
    {
        List<Candidate> left = [.. candidates.Where(c => c.Check.Gain >= CheckPlanner.LeastGain)];
        List<(Candidate Candidate, PlannedCheck Check)> chosen = [];
        while (chosen.Count < most && left.Count > 0)
        {
            (Candidate best, double worth) = Best(left, opening, chosen);
            if (worth < CheckPlanner.LeastWorth)
            {
                break;
            }

            left.Remove(best);
            double minutes = opening.MinutesTo(best.Cover);
            chosen.Add((best, best.Check with { OpeningMinutes = minutes, Opening = opening.SayWayTo(best.Cover), Worth = worth }));
            opening.Open(best.Cover);
        }

        return Order([.. chosen.Select(c => c.Check)]);
    }

    private static (Candidate Best, double Worth) Best(List<Candidate> left, Opening opening, List<(Candidate Candidate, PlannedCheck Check)> chosen)
    {
        (Candidate Candidate, double Worth)[] order =
        [
            .. left.Select(c => (c, Worth: Worth(c, opening) * Fresh(c, chosen))).OrderByDescending(x => Math.Round(x.Worth, SameWorth)).ThenBy(x => x.c.Check.Id, StringComparer.Ordinal),
        ];
        // Looking ahead only settles which of the best looks opens the series.
        return chosen.Count == 0 && order[0].Candidate.Ahead > 0
            ? order.Where(x => x.Candidate.Ahead > 0).OrderByDescending(x => x.Candidate.Ahead * (IsLostSoon(x.Candidate) ? LostSoon : 1)).ThenBy(x => x.Candidate.Check.Id, StringComparer.Ordinal).First()
            : order[0];
    }

    private static bool IsLostSoon(Candidate c) => c.Check.LostBy.Contains("cleaning") || c.Check.LostBy.Contains("dismantling");

    /// <summary>What opening destroys is looked at before anything is opened; what uses a part up comes last.</summary>
    private static IReadOnlyList<PlannedCheck> Order(List<PlannedCheck> checks)
    {
        List<PlannedCheck> order = [];
        foreach (PlannedCheck check in checks.Where(c => !c.Destroys).Concat(checks.Where(c => c.Destroys)))
        {
            int before = check.LostBy.Contains("dismantling") && check.OpeningMinutes == 0 ? order.FindIndex(c => c.OpeningMinutes > 0) : -1;
            order.Insert(before < 0 ? order.Count : before, check);
        }

        return order;
    }

    private static double Worth(Candidate c, Opening opening)
    {
        double minutes = c.Check.Minutes + opening.MinutesTo(c.Cover) + CheckPlanner.FetchMinutes;
        return (IsLostSoon(c) ? LostSoon : 1) * c.Check.Gain / minutes;
    }

    /// <summary>1 for a check that tells something new, down to 0.3 for one that moves the roots as a chosen one does.</summary>
    private static double Fresh(Candidate c, List<(Candidate Candidate, PlannedCheck Check)> chosen)
    {
        // Questions of the general kind are quick and blunt: past the fourth they only crowd out the looks that decide.
        if (IsGeneral(c.Check) && chosen.Count(o => IsGeneral(o.Check)) >= MostGaps)
        {
            return Crowding;
        }

        double alike = chosen.Select(o => Alike(c.Direction, o.Candidate.Direction)).DefaultIfEmpty(0).Max();
        return 1 - Twin * Math.Max(0, 2 * alike - 1);
    }

    private static bool IsGeneral(PlannedCheck check) => check.Kind == CheckKind.Gap && check.Parts.Count == 0;

    private static double Alike(IReadOnlyList<double> a, IReadOnlyList<double> b)
    {
        if (a.Count == 0 || a.Count != b.Count)
        {
            return 0;
        }

        double dot = 0, aa = 0, bb = 0;
        for (int i = 0; i < a.Count; i++)
        {
            dot += a[i] * b[i];
            aa += a[i] * a[i];
            bb += b[i] * b[i];
        }

        return aa * bb <= 0 ? 0 : dot / Math.Sqrt(aa * bb);
    }
}
