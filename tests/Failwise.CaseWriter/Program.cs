using System.Globalization;
using Failwise.CaseWriter;

// write CASE NAME FROM COUNT   adds entries NAME-FROM, NAME-(FROM+1) ... and says each number after it is on the disk
// kills TRIALS SEED            kills such a process at random moments and looks at what is left
// crowd PROCESSES ENTRIES      lets several such processes add to one case at once and counts
int Number(int at) => int.Parse(args[at], CultureInfo.InvariantCulture);
return args switch
{
    ["write", _, _, _, _] => Writer.Write(args[1], args[2], Number(3), Number(4)),
    ["kills", _, _] => Print(KillTrials.Run(Number(1), Number(2))),
    ["crowd", _, _] => Print(Crowd.Run(Number(1), Number(2))),
    _ => throw new ArgumentException("use: write CASE NAME FROM COUNT | kills TRIALS SEED | crowd PROCESSES ENTRIES"),
};

static int Print(TrialResult result)
{
    Console.WriteLine(result.Says);
    foreach (string loss in result.Losses)
    {
        Console.WriteLine("LOST: " + loss);
    }

    return result.Losses.Count == 0 ? 0 : 1;
}
