using Failwise.Cases;
using Failwise.Checks;
using Failwise.Knowledge;

namespace Failwise.Tests.Checks;

public sealed class ForecastTests
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Load(Repository.Folder("rules"));
    private static readonly TeardownCase Pump = CaseReader.Read(Shipped, Repository.Folder("examples", "pump-engine")).Case!;

    [Fact]
    public void It_looks_ahead_from_symptoms_and_history_alone()
    {
        Forecast whole = Forecaster.Make(Shipped, Pump);
        Forecast closed = Forecaster.Make(Shipped, Pump with { Observations = [], Measurements = [] });

        whole.Roots.Select(r => (r.Root.Id, r.Probability)).Should().Equal(closed.Roots.Select(r => (r.Root.Id, r.Probability)));
        whole.Roots.Should().NotBeEmpty();
    }

    [Fact]
    public void What_a_root_would_leave_is_likelier_with_it_than_without()
    {
        Forecast forecast = Forecaster.Make(Shipped, Pump);

        forecast.Roots.SelectMany(r => r.Expected).Should().NotBeEmpty().And.OnlyContain(s => s.Chance > s.Otherwise && s.Chance <= 1);
    }

    [Fact]
    public void Each_opening_is_named_once_and_rivals_differ_in_their_sign()
    {
        Forecast forecast = Forecaster.Make(Shipped, Pump);

        forecast.Steps.Select(s => s.Opening).Should().OnlyHaveUniqueItems().And.NotBeEmpty();
        forecast.Rivals.Should().OnlyContain(r => Math.Abs(r.IfFirst - r.IfSecond) >= 0.1 && r.First != r.Second);
    }
}
