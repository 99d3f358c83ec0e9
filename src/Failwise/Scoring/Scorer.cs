using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Problems;

namespace Failwise.Scoring;

/// <summary>What became of one solved case.</summary>
/// <param name="Rank">Rank of the determined root, from 1; 0 when it is not in the ranking.</param>
/// <param name="Probability">Probability given to the determined root, 0 to 1.</param>
/// <param name="Top">The first root and its probability.</param>
/// <param name="BroaderFirst">True when a related root stands first.</param>
public sealed record CaseScore(
    SolvedCase Case, int Rank, double Probability, string? Top, double TopProbability, VerdictKind Verdict, bool BroaderFirst,
    IReadOnlyDictionary<string, int> BaselineRanks)
{
    public bool Top1 => Rank == 1;

    public bool Top3 => Rank is >= 1 and <= 3;

    /// <summary>A root was named, and it is not the determined one (or none may be named).</summary>
    public bool ConfidentlyWrong => Verdict == VerdictKind.RootNamed && (Case.IsOpen || !Top1);
}

/// <summary>Counts over the cases of one class.</summary>
public sealed record ClassScore(int Cases, int Top1, int Top3, int Top5, int BroaderFirst, int NotEnoughEvidence, int Contested, int Named, int NamedRight, int ConfidentlyWrong);

/// <summary>A bin of the reliability table.</summary>
public sealed record ReliabilityBin(double From, double To, int Count, double MeanProbability, double Share);

/// <summary>The score over a folder of solved cases.</summary>
/// <param name="Brier">Mean squared difference between the first root's probability and whether it is right, over closed cases.</param>
/// <param name="LogScore">Mean of minus ln of the probability given to the determined root (floored at 0.001), over closed cases.</param>
/// <param name="Baselines">Top-1 and top-3 of each baseline by class.</param>
public sealed record Score(
    IReadOnlyDictionary<string, ClassScore> Classes, double Brier, double LogScore, IReadOnlyList<ReliabilityBin> Reliability,
    IReadOnlyDictionary<string, IReadOnlyDictionary<string, ClassScore>> Baselines, IReadOnlyList<CaseScore> Cases, IReadOnlyList<Problem> Problems);

/// <summary>Runs solved cases through the engine and compares. The expected answer is opened only after the diagnosis is made.</summary>
public static class Scorer
{
    private static readonly string[] Classes = ["usable-strong", "usable-weak", "give-away", "open"];

    /// <summary>Scores every solved case below <paramref name="folder"/>.</summary>
    /// <param name="progress">Called with (done, total).</param>
    /// <param name="set">Only cases of this set (tune or held-out); all when null.</param>
    public static Score Run(KnowledgeBase knowledge, string folder, Action<int, int>? progress = null, string? set = null)
    {
        ProblemList problems = new();
        IReadOnlyList<SolvedCase> solved = [.. SolvedCase.ReadFolder(folder, knowledge, problems).Where(c => set is null || c.Set == set)];
        IReadOnlyList<CaseScore> scores = OverCases.Run(knowledge, solved, problems, (one, _, teardown) => ScoreOne(knowledge, one, teardown), progress);
        return Sum(scores, problems.Sorted());
    }

    private static CaseScore ScoreOne(KnowledgeBase knowledge, SolvedCase solved, TeardownCase teardown)
    {
        FindingSet findings = FindingEngine.Chain(knowledge, teardown, MeasurementAssessor.Assess(knowledge, teardown));
        OpenRanking open = OpenRanking.Of(knowledge, teardown, findings);
        CauseRanking ranking = CauseRanker.Judge(knowledge, open);
        string[] order = [.. ranking.Ranked.Select(r => r.Cause.Id)];
        int at = Array.FindIndex(order, solved.Roots.Contains);
        Dictionary<string, int> baselines = new(StringComparer.Ordinal)
        {
            ["most-common"] = RankOf(solved, knowledge.Causes.Values.Where(c => c.IsRoot && CauseNetwork.Applies(c, teardown.Machine))
                .OrderByDescending(c => c.HowCommon).ThenBy(c => c.Id, StringComparer.Ordinal).Select(c => c.Id)),
            ["assembly-error"] = solved.Roots.Any(r => knowledge.Causes.TryGetValue(r, out Cause? c) && c.Group == "assembly") ? 1 : 0,
            ["matched-signs"] = RankOf(solved, MatchedSigns(open.Net)),
        };
        return new CaseScore(
            solved, at + 1, at >= 0 ? ranking.Ranked[at].Probability : 0, order.FirstOrDefault(), order.Length > 0 ? ranking.Ranked[0].Probability : 0,
            ranking.Verdict.Kind, order.Length > 0 && at != 0 && solved.Broader.Contains(order[0]), baselines);
    }

    private static int RankOf(SolvedCase solved, IEnumerable<string> order) => Array.FindIndex([.. order], solved.Roots.Contains) + 1;

    /// <summary>Roots by the number of present signs they reach, directly or through states; ties by how common they are.</summary>
    private static IEnumerable<string> MatchedSigns(CauseNetwork net)
    {
        double[][] ways = [.. net.Known.Where(e => e.Present && e.Kind != EvidenceKind.Circumstance).Select(net.WaysTo)];
        return net.Roots
            .Select(r => (r, count: ways.Count(w => w[net.NumberOf(r)] >= ChainFinder.WeakestChain)))
            .OrderByDescending(x => x.count).ThenByDescending(x => x.r.HowCommon).ThenBy(x => x.r.Id, StringComparer.Ordinal).Select(x => x.r.Id);
    }

    /// <summary>Sums up some of the cases.</summary>
    public static Score Sum(IReadOnlyList<CaseScore> cases, IReadOnlyList<Problem> problems)
    {
        Dictionary<string, ClassScore> classes = Classes.ToDictionary(c => c, c => Count([.. cases.Where(s => s.Case.ScoredAs == c)], s => s.Rank), StringComparer.Ordinal);
        CaseScore[] closed = [.. cases.Where(c => !c.Case.IsOpen)];
        Dictionary<string, IReadOnlyDictionary<string, ClassScore>> baselines = new(StringComparer.Ordinal);
        foreach (string name in new[] { "most-common", "assembly-error", "matched-signs" })
        {
            baselines[name] = Classes.ToDictionary(c => c, c => Count([.. cases.Where(s => s.Case.ScoredAs == c)], s => s.BaselineRanks[name]), StringComparer.Ordinal);
        }

        return new Score(
            classes,
            closed.Length == 0 ? 0 : closed.Average(c => Math.Pow(c.TopProbability - (c.Top1 ? 1 : 0), 2)),
            closed.Length == 0 ? 0 : closed.Average(c => -Math.Log(Math.Max(0.001, c.Probability))),
            Bins(closed), baselines, cases, problems);
    }

    private static ClassScore Count(CaseScore[] cases, Func<CaseScore, int> rank) => new(
        cases.Length, cases.Count(c => rank(c) == 1), cases.Count(c => rank(c) is >= 1 and <= 3), cases.Count(c => rank(c) is >= 1 and <= 5),
        cases.Count(c => c.BroaderFirst), cases.Count(c => c.Verdict is VerdictKind.NotEnoughEvidence or VerdictKind.NormalWear),
        cases.Count(c => c.Verdict == VerdictKind.Contested), cases.Count(c => c.Verdict == VerdictKind.RootNamed),
        cases.Count(c => c.Verdict == VerdictKind.RootNamed && c.Top1), cases.Count(c => c.ConfidentlyWrong));

    private static List<ReliabilityBin> Bins(CaseScore[] closed)
    {
        List<ReliabilityBin> bins = [];
        for (int i = 0; i < 5; i++)
        {
            double from = i * 0.2, to = from + 0.2;
            CaseScore[] inside = [.. closed.Where(c => c.Top is not null && c.TopProbability >= from && (c.TopProbability < to || i == 4))];
            bins.Add(new ReliabilityBin(from, to, inside.Length, inside.Length == 0 ? 0 : inside.Average(c => c.TopProbability), inside.Length == 0 ? 0 : (double)inside.Count(c => c.Top1) / inside.Length));
        }

        return bins;
    }
}
