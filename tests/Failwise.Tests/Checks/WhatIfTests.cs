using Failwise.Cases;
using Failwise.Checks;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Checks;

public sealed class WhatIfTests
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Load(Repository.Folder("rules"));
    private static readonly TeardownCase Pump = CaseReader.Read(Shipped, Repository.Folder("examples", "pump-engine")).Case!;

    private static WhatIf Ask(params string[] words) => WhatIf.Of(Shipped, Pump, Assumptions.Read(Shipped, Pump.Machine, words));

    [Fact]
    public void A_sound_relief_valve_would_clear_it()
    {
        RootMove move = Ask("relief valve sound").Moves.Single(m => m.Root.Id == "relief-valve-stuck-open");

        move.Before.Should().BeGreaterThan(0.5);
        move.After.Should().BeLessThan(0.5 * move.Before);
    }

    [Theory]
    [InlineData("crankpin 3 blued", "rod-journal", "blued", 3)]
    [InlineData("CP3 blued", "rod-journal", "blued", 3)]
    [InlineData("big end shell number 2 wiped", "rod-bearing", "wiped", 2)]
    [InlineData("relief vlave stuck", "relief-valve", "stuck", 0)]
    public void Free_words_and_short_codes_are_understood(string words, string part, string pattern, int place)
    {
        Observation seen = Assumptions.Read(Shipped, Pump.Machine, [words]).Single().Seen[0];

        seen.Part.Should().Be(part);
        seen.Pattern.Should().Be(pattern);
        seen.Places.Should().Equal(place == 0 ? [] : [place]);
    }

    [Fact]
    public void A_denied_symptom_is_taken_as_not_so()
    {
        Statement symptom = Assumptions.Read(Shipped, Pump.Machine, ["not overheating"]).Single().Symptoms.Single();

        symptom.Id.Should().Be("overheating");
        symptom.Holds.Should().BeFalse();
    }

    [Fact]
    public void What_is_assumed_twice_is_the_same_as_once()
    {
        Ask("rod journal 3 blued", "rod journal 3 blued").Moves.Should().Equal(Ask("rod journal 3 blued").Moves);
    }

    [Fact]
    public void Words_that_are_not_understood_are_all_listed()
    {
        Action read = () => Assumptions.Read(Shipped, Pump.Machine, ["journal 3", "qwzx", "not"]);

        IReadOnlyList<Problem> problems = read.Should().Throw<ProblemsException>().Which.Problems;
        problems.Select(p => p.ToString()).ShouldBe(ExpectedProblems.Read(Repository.Folder("tests", "Failwise.Tests", "Invalid", "assume")));
    }

    [Fact]
    public void The_case_stays_as_it_is()
    {
        int observations = Pump.Observations.Count;

        Ask("rod journal 3 blued").Case.Observations.Should().HaveCount(observations + 1);
        Pump.Observations.Should().HaveCount(observations);
    }
}
