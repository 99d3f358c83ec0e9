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
            Console.Out.WriteLine($"{s.Case.Set,-8} {s.Case.Name} planned {s.Planned} ({s.Missed} missed) source {s.InSourceOrder} random {s.AtRandom:0.0} of {s.Units}: {string.Join(" ", s.Asked)}");
        }

        foreach (IGrouping<string, LookScore> set in scores.GroupBy(s => s.Case.Set).OrderByDescending(g => g.Key, StringComparer.Ordinal))
        {
            LookSummary sum = LookSummary.Of([.. set]);
            Console.Out.WriteLine(
                $"{set.Key}: {sum.Cases} cases reach the root with all evidence, {sum.AtStart} of them from history and symptoms alone. "
                + $"Mean looks: planned {sum.MeanPlanned:0.00}, source order {sum.MeanSource:0.00}, random {sum.MeanRandom:0.00}. "
                + $"Median saving over {sum.Compared} cases: {100 * sum.SavedOverSource:0} % over the source order, {100 * sum.SavedOverRandom:0} % over random; "
                + $"answered looks only {sum.MeanAnswered:0.00} ({100 * sum.AnsweredOverSource:0} %, {100 * sum.AnsweredOverRandom:0} %); unguided {sum.MeanUnguided:0.0} ({100 * sum.SavedOverUnguided:0} %). Medians {sum.MedianPlanned} {sum.MedianSource} {sum.MedianRandom:0.0}");
        }

        return 0;
    }
}
