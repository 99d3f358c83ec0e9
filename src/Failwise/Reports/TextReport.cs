using Failwise.Causes;
using Failwise.Checks;
using Failwise.Measurements;
using Failwise.Work;

namespace Failwise.Reports;

/// <summary>The short answer for the screen: verdict, ranked causes with their strongest reasons, what to look at, first work steps.</summary>
public static class TextReport
{
    private const int Width = 98, MostOnTheWay = 5, MostReadings = 8;

    /// <summary>Writes the short answer as plain text.</summary>
    public static string Write(Diagnosis diagnosis)
    {
        StringWriter w = new() { NewLine = "\n" };
        CauseRanking causes = diagnosis.Causes;
        Line(w, diagnosis.Case.Title, "");
        w.WriteLine();
        Line(w, $"VERDICT  {Names.Heading(causes.Verdict.Kind)}", "");
        foreach (string reason in causes.Verdict.Reasons)
        {
            Line(w, reason, "  ");
        }

        if (causes.Story.Roots.Count > 1)
        {
            Line(w, "Best story: " + Phrases.Story(causes), "  ");
        }

        w.WriteLine();
        w.WriteLine("LIKELY ROOT CAUSES");
        int shown = 0;
        foreach (RankedCause cause in causes.Ranked.Where(r => r.Probability >= 0.03).Take(5))
        {
            shown++;
            Line(w, $"{shown}. {cause.Cause.Title}: {100 * cause.Probability:0} %, {CauseRanking.WordFor(cause.Probability)}   [{cause.Cause.Id}]", "  ");
            if (cause.Chains.Count > 0)
            {
                WriteWay(w, cause.Chains);
            }

            if (cause.After is not null)
            {
                Line(w, "from     " + Phrases.MayComeFrom(cause), "     ");
            }

            foreach (WeighedEvidence e in cause.For.Where(Phrases.SpeaksFor).Take(3))
            {
                Line(w, $"for      {e.Item.Says} ({e.Word})", "     ");
            }

            foreach (WeighedEvidence e in cause.Against.Where(e => Phrases.SpeaksAgainst(cause.Cause, e)).Take(2))
            {
                Line(w, $"against  {e.Item.Says} ({e.Word})", "     ");
            }
        }

        if (shown == 0)
        {
            w.WriteLine("  None stands out.");
        }

        Line(w, $"Something that this rule base does not list: {100 * causes.SomethingElse:0}\u00a0%", "  ");
        foreach (EvidenceItem item in causes.Unexplained)
        {
            Line(w, "Not explained: " + item.Says, "  ");
        }

        WriteMeasured(w, diagnosis);
        WriteChecks(w, diagnosis.Next);
        WriteWork(w, diagnosis.Work);
        return w.ToString();
    }

    /// <summary>
    /// The states on the way, each leading to the next, apart from the marks that show the way. Where the most telling way goes on to further
    /// damage, it is told as far as it goes on.
    /// </summary>
    private static void WriteWay(StringWriter w, IReadOnlyList<IReadOnlyList<ChainStep>> chains)
    {
        string[] first = States(chains[0]);
        IReadOnlyList<ChainStep>? further = chains.Skip(1).FirstOrDefault(c => States(c) is var s && s.Length > first.Length && s.Take(first.Length).SequenceEqual(first));
        string[] states = further is null ? first : States(further);
        string[] marks = further is null ? [.. Marks(chains[0]).Take(MostOnTheWay)] : [.. Marks(chains[0]).Take(MostOnTheWay / 2), .. Marks(further).Take(MostOnTheWay - MostOnTheWay / 2)];
        if (states.Length > 1)
        {
            Line(w, "way      " + string.Join(" → ", states.Take(MostOnTheWay)), "     ");
        }

        if (marks.Length > 0)
        {
            Line(w, "seen in  " + string.Join("; ", marks), "     ");
        }
    }

    private static string[] States(IReadOnlyList<ChainStep> chain) => [.. chain.Where(s => s.Probability is not null).Select(s => s.Says)];

    private static IEnumerable<string> Marks(IReadOnlyList<ChainStep> chain) => chain.Where(s => s.Probability is null).Select(s => s.Says.TrimEnd('.'));

    private static void WriteMeasured(StringWriter w, Diagnosis diagnosis)
    {
        if (diagnosis.Readings.Count + diagnosis.Calculations.Count == 0)
        {
            return;
        }

        w.WriteLine();
        w.WriteLine("MEASURED");
        Reading[] telling = [.. diagnosis.Readings.Where(r => r.State is LimitState.Above or LimitState.Below or LimitState.TooClose)];
        foreach (Reading r in telling.Take(MostReadings))
        {
            Line(w, $"- {NumbersText.Of(diagnosis.Knowledge, r)}: {NumbersText.ValueOf(r)}, {NumbersText.StateOf(r.State)} ({NumbersText.LimitOf(r.Measurement.Limit)})", "  ");
        }

        int within = diagnosis.Readings.Count(r => r.State == LimitState.Within), bare = diagnosis.Readings.Count - within - telling.Length;
        string[] rest =
        [
            .. telling.Length > MostReadings ? new[] { $"{telling.Length - MostReadings} more out of limit or too close to call" } : [],
            .. within > 0 ? new[] { $"{within} within the limit" } : [], .. bare > 0 ? new[] { $"{bare} without a limit to compare" } : [],
        ];
        if (rest.Length > 0)
        {
            Line(w, $"- {string.Join(", ", rest)}", "  ");
        }

        foreach (WorkedNumber n in diagnosis.Calculations)
        {
            Line(w, $"- {NumbersText.Title(diagnosis.Knowledge, n)}: {NumbersText.Result(n)}", "  ");
        }
    }

    private static void WriteChecks(StringWriter w, CheckPlan plan)
    {
        w.WriteLine();
        w.WriteLine("LOOK AT NEXT");
        foreach (PlannedCheck check in plan.Checks.Take(4))
        {
            string lost = check.LostBy.Count > 0 ? ", lost by " + string.Join(" and ", check.LostBy) : "";
            string first = check.Opening is { } opening ? $", first {opening}: {check.OpeningMinutes:0} min" : "";
            Line(w, $"- {check.Says} ({check.Minutes:0} min{first}{lost})", "  ");
            foreach (CheckOutcome outcome in check.Outcomes.Where(o => o.Movers.Count > 0).Take(3))
            {
                Line(w, $"{outcome.Says}: {string.Join(", ", outcome.Movers.Take(2).Select(m => $"{m.Root.Title} {100 * m.Then:0}\u00a0%"))}", "    ");
            }
        }

        if (plan.Stop is { } stop)
        {
            Line(w, stop, "  ");
        }

        foreach (ProvingTest proof in plan.Proofs.Take(2))
        {
            Line(w, $"Before parts are ordered, prove '{proof.Root.Title}': {proof.How}", "  ");
        }
    }

    private static void WriteWork(StringWriter w, WorkPlan plan)
    {
        if (plan.Items.Count == 0)
        {
            return;
        }

        w.WriteLine();
        w.WriteLine($"FIRST WORK STEPS ({plan.Items.Count} in all; --format markdown shows every one)");
        foreach (WorkItem item in plan.Items.Take(6))
        {
            Line(w, $"- {(item.CheckFirst ? "(check first) " : "")}{item.Rule.Title}", "  ");
        }
    }

    /// <summary>Wraps at words, with the following lines indented under the first.</summary>
    private static void Line(StringWriter w, string text, string indent)
    {
        string further = indent + (indent.Length > 4 ? "         " : "   ");
        string line = indent;
        bool empty = true;
        foreach (string word in string.Concat(text.Select(c => char.IsControl(c) || MarkdownText.IsDirectionMark(c) ? ' ' : c)).Split(' '))
        {
            if (!empty && line.Length + 1 + word.Length > Width)
            {
                w.WriteLine(line.TrimEnd());
                line = further;
                empty = true;
            }

            line += (empty ? "" : " ") + word;
            empty = false;
        }

        w.WriteLine(line.TrimEnd());
    }
}
