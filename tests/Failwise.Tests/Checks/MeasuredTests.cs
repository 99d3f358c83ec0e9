using Failwise.Knowledge;
using Failwise.Scoring;

namespace Failwise.Tests.Checks;

/// <summary>The measured figures that docs/looks.md and docs/questions.md report must not get worse.</summary>
public sealed class MeasuredTests
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Load(Repository.Folder("rules"));

    [Fact]
    public void The_first_questions_hold_what_experienced_people_asked_back()
    {
        IReadOnlyList<AskedScore> scores = AskedBack.Run(Shipped, Repository.Folder("tests", "cases", "questions"));

        scores.Count.Should().BeGreaterThan(45);
        Share(scores.Where(s => s.Set == "tune")).Should().BeGreaterThanOrEqualTo(0.75);
        Share(scores.Where(s => s.Set == "held-out")).Should().BeGreaterThanOrEqualTo(0.6);
    }

    [Fact]
    public void Planned_looks_find_the_root_far_sooner_than_unguided_ones()
    {
        LookSummary sum = LookSummary.Of(LookTrial.Run(Shipped, Repository.Folder("tests", "cases", "published"), null));

        sum.First.All.Cases.Should().BeGreaterThan(10);
        sum.SavedOverUnguided.Should().BeGreaterThanOrEqualTo(0.85);
        sum.First.Lengthy.Cases.Should().BeGreaterThanOrEqualTo(5);
        sum.First.Lengthy.AnsweredOverSource.Should().BeGreaterThanOrEqualTo(0.4);
        sum.First.Lengthy.AnsweredOverRandom.Should().BeGreaterThanOrEqualTo(0.25);
        sum.First.All.Answered.Should().BeLessThanOrEqualTo(2);
    }

    private static double Share(IEnumerable<AskedScore> scores)
    {
        AskedItem[] asked = [.. scores.SelectMany(s => s.Asked)];
        return (double)asked.Count(a => a.Place > 0) / asked.Length;
    }
}
