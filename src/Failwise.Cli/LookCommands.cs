using System.CommandLine;
using Failwise.Knowledge;
using Failwise.Scoring;

namespace Failwise.Cli;

/// <summary>Measures the planner on solved cases.</summary>
internal static class LookCommands
{
    public static Command Looks(Option<string?> rulesOption)
    {
        Argument<string> folder = new("FOLDER") { Description = "A folder of solved cases." };
        Option<string?> set = new("--set") { HelpName = "SET", Description = "Only the cases of this set: tune or held-out." };
        Option<bool> list = new("--list") { Description = "Also one line a case." };
        Command command = new("looks", "How many looks bring the determined root to the first place, as planned and in other orders.\n\nExample: failwise rules looks tests/cases/published") { folder, set, list, rulesOption };
        command.SetAction(p => Print(LookTrial.Run(ShippedRules.Load(p.GetValue(rulesOption)), p.GetValue(folder)!, p.GetValue(set)), p.GetValue(list)));
        return command;
    }

    public static Command Asked(Option<string?> rulesOption)
    {
        Argument<string> folder = new("FOLDER") { Description = "A folder of published exchanges." };
        Command command = new("asked", "How much of what experienced people asked back stands among the first questions.\n\nExample: failwise rules asked tests/cases/questions") { folder, rulesOption };
        command.SetAction(p =>
        {
            IReadOnlyList<AskedScore> scores = AskedBack.Run(ShippedRules.Load(p.GetValue(rulesOption)), p.GetValue(folder)!);
            foreach (AskedScore s in scores)
            {
                Console.Out.WriteLine($"{s.Set,-8} {s.Name}: {string.Join(", ", s.First)}");
                foreach (AskedItem a in s.Asked)
                {
                    Console.Out.WriteLine($"         {(a.Place > 0 ? a.Place.ToString() : "-")} {a.About}");
                }
            }

            foreach (IGrouping<string, AskedScore> set in scores.GroupBy(s => s.Set).OrderByDescending(g => g.Key, StringComparer.Ordinal))
            {
                AskedItem[] all = [.. set.SelectMany(s => s.Asked)];
                int met = all.Count(a => a.Place > 0);
                Console.Out.WriteLine($"{set.Key}: {met} of {all.Length} asked back stand among the first {AskedBack.Counted} ({100.0 * met / all.Length:0} %), over {set.Count()} exchanges");
            }

            return 0;
        });
        return command;
    }

    private static int Print(IReadOnlyList<LookScore> scores, bool list)
    {
        foreach (LookScore s in list ? scores : [])
        {
            Console.Out.WriteLine($"{s.Case.Set,-8} {s.Case.Name} {Say(s.First)}; to stay {Say(s.Staying)}; of {s.Units}: {string.Join(" ", s.Asked)}");
        }

        foreach (IGrouping<string, LookScore> set in scores.GroupBy(s => s.Case.Set).OrderByDescending(g => g.Key, StringComparer.Ordinal))
        {
            LookSummary sum = LookSummary.Of([.. set]);
            Say($"{set.Key}, until the root stands first", sum.First);
            Console.Out.WriteLine($"  unguided, misses counted: {sum.Unguided:0.0} looks; planned saves {100 * sum.SavedOverUnguided:0} % in the middle case");
            Say($"{set.Key}, until the root stands first and stays there", sum.Staying);
        }

        return 0;
    }

    private static string Say(LookCounts c) => $"planned {c.Planned} ({c.Missed} missed) source {c.InSourceOrder} random {c.AtRandom:0.0} fewest {c.Fewest}";

    private static void Say(string which, LookSums sum)
    {
        string looks = string.Join(", ", sum.SourceLooks.Select((n, i) => $"{n} need {i + 1}"));
        Console.Out.WriteLine($"{which}: {sum.Cases} cases, {sum.AtStart} of them from history and symptoms alone. Of the others, in the order of the source: {looks}.");
        Console.Out.WriteLine($"  the best order there is would save {100 * sum.BestOverSource:0} % over source, {100 * sum.BestOverRandom:0} % over random in the middle case");
        Say("all others", sum.All);
        Say("where the order matters", sum.Choice);
        Say("three looks or more in the order of the source", sum.Lengthy);
        Say("where 40 % over source and 30 % over random can be saved at all", sum.Possible);
    }

    private static void Say(string which, LookMeans m)
    {
        Console.Out.WriteLine($"  {which} ({m.Cases}): mean looks source {m.Source:0.00}, random {m.Random:0.00}, fewest possible {m.Fewest:0.00}");
        Console.Out.WriteLine($"    planned, recorded looks only: {m.Answered:0.00}; fewer in {m.Better} cases, more in {m.Worse}; aim met in {m.Met}; median saving {100 * m.AnsweredOverSource:0} % over source, {100 * m.AnsweredOverRandom:0} % over random");
        Console.Out.WriteLine($"    planned, misses counted: {m.Planned:0.00}; median saving {100 * m.PlannedOverSource:0} % over source, {100 * m.PlannedOverRandom:0} % over random");
    }
}
