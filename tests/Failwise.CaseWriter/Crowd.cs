using Failwise.Knowledge;

namespace Failwise.CaseWriter;

/// <summary>Lets several processes add to one case at once; every entry of each must be there once, in its own order.</summary>
public static class Crowd
{
    /// <param name="processes">Processes at once.</param>
    /// <param name="entries">Entries that each of them adds.</param>
    public static TrialResult Run(int processes, int entries)
    {
        KnowledgeBase knowledge = Writer.Rules();
        string folder = Directory.CreateTempSubdirectory("failwise-crowd").FullName;
        string file = Path.Combine(folder, "case.yaml");
        File.WriteAllText(file, Writer.Begun);
        List<WriterProcess> writers = [];
        try
        {
            writers.AddRange(Enumerable.Range(0, processes).Select(p => new WriterProcess(file, "w" + p, 1, entries)));
            int failed = writers.Count(w => w.WaitForEnd() != 0);
            IReadOnlyList<string> notes = Writer.Notes(knowledge, file) ?? [];
            List<string> losses = failed == 0 ? [] : [$"{failed} writers gave up: {string.Join(' ', writers.Select(w => w.Refusal).OfType<string>())}"];
            for (int p = 0; p < processes; p++)
            {
                string[] own = [.. notes.Where(n => n.StartsWith($"w{p}-", StringComparison.Ordinal))];
                if (!own.SequenceEqual(Enumerable.Range(1, entries).Select(n => $"w{p}-{n}")))
                {
                    losses.Add($"writer {p}: {own.Length} of {entries} entries, or not in order");
                }
            }

            int turns = notes.Skip(1).Zip(notes.Skip(2)).Count(x => x.First[..2] != x.Second[..2]);
            return new TrialResult($"{processes} processes, {entries} entries each: {notes.Count - 1} of {processes * entries} there, the writer changed {turns} times", losses);
        }
        finally
        {
            writers.ForEach(w => w.Dispose());
            Directory.Delete(folder, recursive: true);
        }
    }
}
