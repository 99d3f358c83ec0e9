using Failwise.Knowledge;

namespace Failwise.CaseWriter;

/// <summary>Kills a writer at random moments, again and again, and looks whether the case still reads and holds every entry that was told to be safe.</summary>
public static class KillTrials
{
    private const int LongestMs = 60;
    private const int Entries = 1_000_000;
    private const int FreshAfter = 40;

    /// <param name="trials">Number of kills.</param>
    /// <param name="seed">Seed of the moments.</param>
    public static TrialResult Run(int trials, int seed)
    {
        KnowledgeBase knowledge = Writer.Rules();
        string folder = Directory.CreateTempSubdirectory("failwise-kills").FullName;
        string file = Path.Combine(folder, "case.yaml");
        Random random = new(seed);
        List<string> losses = [];
        int safe = 0, unsaid = 0, inside = 0, next = 1;
        try
        {
            for (int trial = 0; trial < trials; trial++)
            {
                if (trial % FreshAfter == 0)
                {
                    File.WriteAllText(file, Writer.Begun);
                    next = 1;
                }

                int told = KillOnce(file, next, random.Next(LongestMs * 10) / 10.0, out int killed);
                IReadOnlyList<string>? notes = Writer.Notes(knowledge, file);
                int found = notes is null ? -1 : notes.Count - 1;
                if (notes is null || !notes.SequenceEqual(["by hand", .. Enumerable.Range(1, Math.Max(found, 0)).Select(n => $"k-{n}")]) || found < told || found > told + 1)
                {
                    losses.Add($"kill {trial + 1}: told {told}, found {(notes is null ? "a case that does not read" : string.Join(", ", notes.TakeLast(3)))}");
                    File.WriteAllText(file, Writer.Begun);
                    found = 0;
                }

                if (File.Exists(file + "~") && Writer.Notes(knowledge, file + "~") is null)
                {
                    losses.Add($"kill {trial + 1}: the last state beside the case does not read");
                }

                safe += told - (next - 1);
                unsaid += found > told ? 1 : 0;
                inside += Directory.GetFiles(folder, $".*.{killed}.new").Length > 0 ? 1 : 0;
                next = found + 1;
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return new TrialResult(
            $"{trials} kills (seed {seed}): {safe} entries told safe, {losses.Count} lost; {inside} kills hit a write before the case was put in its place (a draft of the killed process lay there), {unsaid} between that and the word",
            losses);
    }

    private static int KillOnce(string file, int from, double afterMs, out int killed)
    {
        using WriterProcess writer = new(file, "k", from, Entries);
        if (!writer.WaitUntilWriting())
        {
            throw new TimeoutException("the writer did not start");
        }

        SpinWait.SpinUntil(() => false, TimeSpan.FromMilliseconds(afterMs));
        killed = writer.Id;
        writer.Kill();
        return writer.Refusal is null ? writer.Last : throw new InvalidOperationException(writer.Refusal);
    }
}
