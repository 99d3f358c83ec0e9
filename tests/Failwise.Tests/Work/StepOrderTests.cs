using Failwise.Work;

namespace Failwise.Tests.Work;

public class StepOrderTests
{
    [Fact]
    public void Each_step_stands_after_all_it_needs_and_free_steps_come_in_their_own_order()
    {
        Dictionary<string, string[]> before = new() { ["fit"] = ["wash", "measure"], ["wash"] = ["crack-test"], ["measure"] = [], ["crack-test"] = ["not-planned"] };

        StepOrder.Sort(before.Keys, id => before[id], StringComparer.Ordinal).Should().Equal("crack-test", "measure", "wash", "fit");
    }

    [Fact]
    public void Steps_that_wait_for_each_other_are_named_in_their_loop()
    {
        Dictionary<string, string[]> before = new() { ["fit"] = ["wash"], ["wash"] = ["prime"], ["prime"] = ["wash"] };

        Action sort = () => StepOrder.Sort(before.Keys, id => before[id], StringComparer.Ordinal);

        sort.Should().Throw<InvalidOperationException>().WithMessage("These steps wait for each other: wash → prime → wash.");
    }

    [Fact]
    public void Any_order_in_which_steps_are_given_sorts_alike()
    {
        string[] ids = [.. Enumerable.Range(0, 40).Select(i => $"step-{i:00}")];
        Random random = new(7);
        Func<string, IEnumerable<string>> before = id => ids.Where((other, i) => string.CompareOrdinal(other, id) < 0 && (i * 7 + int.Parse(id[5..])) % 5 == 0);
        IReadOnlyList<string> first = StepOrder.Sort(ids, before, StringComparer.Ordinal);

        for (int t = 0; t < 20; t++)
        {
            string[] shuffled = [.. ids.OrderBy(_ => random.Next())];
            StepOrder.Sort(shuffled, before, StringComparer.Ordinal).Should().Equal(first);
        }
    }
}
