using Failwise.Scoring;

namespace Failwise.Tests.Scoring;

public sealed class LookSumsTests
{
    /// <summary>Worked by hand from the aims: at most 0.6 of the looks of the source and 0.7 of those at random.</summary>
    [Theory]
    [InlineData(2, 2.0, 1, true)]
    [InlineData(1, 1.0, 1, false)]
    [InlineData(2, 1.2, 1, false)]
    [InlineData(5, 5.0, 3, true)]
    [InlineData(5, 4.0, 3, false)]
    public void An_order_meets_the_aim_only_over_both_others(int source, double random, int looks, bool met) =>
        new LookCounts(9, 0, source, random, 1).MeetsAim(looks).Should().Be(met);
}
