using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>A sign that a root would leave.</summary>
/// <param name="Says">Part and pattern.</param>
/// <param name="Opening">What has to come off to see it; null when nothing has to.</param>
/// <param name="Chance">Chance of finding it if the root is at work, 0 to 1.</param>
/// <param name="Otherwise">Chance of finding it as things stand, 0 to 1.</param>
public sealed record ExpectedSign(string Id, string Says, string? Opening, double Chance, double Otherwise);

/// <summary>A root in question and what it would have left behind, the most telling first.</summary>
public sealed record RootInQuestion(Cause Root, double Probability, IReadOnlyList<ExpectedSign> Expected);

/// <summary>Looks behind one opening, the most telling first.</summary>
/// <param name="Opening">What has to come off; null for what is seen from outside.</param>
/// <param name="Minutes">Time to open it and to make all these looks [min].</param>
public sealed record OpeningStep(string? Opening, double Minutes, IReadOnlyList<PlannedCheck> Looks);

/// <summary>What would tell two rivals apart.</summary>
/// <param name="Sign">A sign that one would leave and the other hardly.</param>
/// <param name="IfFirst">Chance of it with the first at work, 0 to 1.</param>
/// <param name="IfSecond">Chance of it with the second at work, 0 to 1.</param>
/// <param name="Tell">What the rules say about telling them apart; null when they say nothing.</param>
public sealed record RivalTest(Cause First, Cause Second, ExpectedSign Sign, double IfFirst, double IfSecond, string? Tell);

/// <summary>What to expect before anything is opened, from symptoms and history alone.</summary>
public sealed record Forecast(IReadOnlyList<RootInQuestion> Roots, IReadOnlyList<OpeningStep> Steps, IReadOnlyList<RivalTest> Rivals);

/// <summary>Says before the machine is opened which roots are in question, what each would leave, and where to look first.</summary>
public static class Forecaster
{
    private const int MostRoots = 6;
    private const double LeastProbability = 0.02;
    private const int MostExpected = 5;
    private const double LeastChance = 0.1;
    private const int MostRivals = 4;
    private const int MostLooks = 12;

    /// <summary>Leaves aside what was seen and measured, and looks ahead from the rest.</summary>
    public static Forecast Make(KnowledgeBase knowledge, TeardownCase teardown)
    {
        TeardownCase closed = teardown with { Observations = [], Measurements = [], NotLookedAt = [.. teardown.NotLookedAt.Where(n => n.Reason is not null)] };
        CauseRanking ranking = WhatIf.RankPlainly(knowledge, closed);
        Suspicion suspicion = Suspicion.Of(knowledge, closed, ranking);
        Opening opening = new(knowledge, closed, false);
        IReadOnlyList<(Cause Root, double P)> roots = [.. suspicion.Suspects.Where(s => s.P >= LeastProbability).Take(MostRoots)];
        RootInQuestion[] inQuestion = [.. roots.Select(r => new RootInQuestion(r.Root, r.P, Expected(suspicion, r.Root, opening)))];
        return new Forecast(inQuestion, Steps(suspicion, opening), Rivals(suspicion, [.. roots.Select(r => r.Root)], opening));
    }

    private static IReadOnlyList<ExpectedSign> Expected(Suspicion suspicion, Cause root, Opening opening) =>
    [
        .. suspicion.SignsOf(root).Where(s => s.Given >= LeastChance && s.Given > 1.5 * s.Usual)
            .OrderByDescending(s => s.Given * Math.Log(s.Given / s.Usual)).ThenBy(s => s.Sign.Item.Id, StringComparer.Ordinal).Take(MostExpected)
            .Select(s => Of(suspicion, s.Sign, s.Given, s.Usual, opening)),
    ];

    private static ExpectedSign Of(Suspicion suspicion, OpenSign sign, double given, double usual, Opening opening)
    {
        Part part = suspicion.Knowledge.Parts[sign.Part];
        return new ExpectedSign(sign.Item.Id, $"{EvidenceGathering.Capital(part.Name)}: {sign.Pattern.Name}", opening.SayWayTo(part.Access), given, usual);
    }

    private static IReadOnlyList<OpeningStep> Steps(Suspicion suspicion, Opening opening)
    {
        Candidate[] looks =
        [
            .. suspicion.Candidates(new PlanOptions(MostLooks, OnlyLooks: true)).Where(c => c.Check.Gain >= CheckPlanner.LeastGain)
                .OrderByDescending(c => c.Check.Gain).ThenBy(c => c.Check.Id, StringComparer.Ordinal).Take(MostLooks),
        ];
        return
        [
            .. looks.GroupBy(c => opening.SayWayTo(c.Cover), (way, group) => (Way: way, Looks: group.ToArray()))
                .Select(g => (g.Looks, Step: new OpeningStep(
                    g.Way, opening.MinutesTo(g.Looks[0].Cover) + g.Looks.Sum(l => l.Check.Minutes), [.. g.Looks.Select(l => l.Check)])))
                .OrderByDescending(g => g.Looks.Sum(l => l.Check.Gain) / (g.Step.Minutes + CheckPlanner.FetchMinutes)).ThenBy(g => g.Step.Opening, StringComparer.Ordinal)
                .Select(g => g.Step),
        ];
    }

    private static IReadOnlyList<RivalTest> Rivals(Suspicion suspicion, Cause[] roots, Opening opening)
    {
        List<RivalTest> tests = [];
        for (int a = 0; a < roots.Length && a < 3; a++)
        {
            for (int b = a + 1; b < roots.Length && b < 4; b++)
            {
                Dictionary<string, double> other = suspicion.SignsOf(roots[b]).ToDictionary(s => s.Sign.Item.Id, s => s.Given, StringComparer.Ordinal);
                (OpenSign Sign, double Given, double Usual) best = suspicion.SignsOf(roots[a])
                    .OrderByDescending(s => Math.Abs(s.Given - other[s.Sign.Item.Id])).ThenBy(s => s.Sign.Item.Id, StringComparer.Ordinal).FirstOrDefault();
                if (best.Sign is not null && Math.Abs(best.Given - other[best.Sign.Item.Id]) >= LeastChance)
                {
                    tests.Add(new RivalTest(roots[a], roots[b], Of(suspicion, best.Sign, best.Given, best.Usual, opening), best.Given, other[best.Sign.Item.Id], Tell(roots[a], roots[b])));
                }
            }
        }

        return [.. tests.Take(MostRivals)];
    }

    private static string? Tell(Cause a, Cause b) =>
        a.LooksLike.FirstOrDefault(l => l.Id == b.Id)?.Tell ?? b.LooksLike.FirstOrDefault(l => l.Id == a.Id)?.Tell;
}
