using Failwise.CaseWriter;

namespace Failwise.Tests.Entry;

/// <summary>The short run; tests/kill-writers.sh makes a thousand kills.</summary>
public class KillTests
{
    [Fact]
    public void A_pulled_plug_leaves_a_case_that_reads_and_holds_every_entry_that_was_told_safe()
    {
        TrialResult result = KillTrials.Run(trials: 60, seed: 20_260_101);

        result.Losses.Should().BeEmpty(result.Says);
    }

    [Fact]
    public void Several_programs_that_write_one_case_lose_no_entry()
    {
        TrialResult result = Crowd.Run(processes: 4, entries: 10);

        result.Losses.Should().BeEmpty(result.Says);
    }
}
