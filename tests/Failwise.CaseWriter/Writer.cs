using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.CaseWriter;

/// <summary>What a trial found.</summary>
/// <param name="Says">One line of figures.</param>
/// <param name="Losses">What was lost or damaged; empty when all is well.</param>
public sealed record TrialResult(string Says, IReadOnlyList<string> Losses);

/// <summary>Adds entries one by one and tells after each that it is safe.</summary>
internal static class Writer
{
    /// <summary>A case that every trial begins with.</summary>
    public const string Begun = "# begun by hand\ntitle: Trial\nmachine: {kind: engine}\nhistory:\n  - {note: by hand}   # first\n";

    public static int Write(string file, string name, int from, int count)
    {
        KnowledgeBase knowledge = Rules();
        Console.WriteLine("ready");
        for (int n = from; n < from + count; n++)
        {
            CaseEdit edit = CaseEditor.Add(knowledge, file, [new CaseEntry("history", $"{{note: {name}-{n}}}", new Location("trial", n, 1))]);
            if (!edit.Written)
            {
                Console.WriteLine("refused " + string.Join(' ', edit.Problems));
                return 1;
            }

            Console.WriteLine(n);
        }

        return 0;
    }

    /// <summary>The notes of the case in their order; null when it does not read.</summary>
    public static IReadOnlyList<string>? Notes(KnowledgeBase knowledge, string file) =>
        CaseReader.Read(knowledge, file).Case?.Notes;

    /// <summary>The few words that the trial needs; reading all rules would take longer than the writing that is tried.</summary>
    public static KnowledgeBase Rules()
    {
        string folder = Directory.CreateTempSubdirectory("failwise-trial-rules").FullName;
        foreach ((string path, string text) in new[]
        {
            ("vocabulary/machines.yaml", "- {id: engine, name: engine}\n"), ("vocabulary/places.yaml", "- {axis: half, words: [upper, lower]}\n"),
            ("vocabulary/words.yaml", "strengths: {usually: 0.8}\nsureness: {sure: 60, fairly-sure: 4, doubtful: 1.5}\nextents: {trace: 0.15, light: 0.5, moderate: 1, heavy: 1, destroyed: 1}\n"),
            ("parts/base.yaml", "- {id: oil-pump, name: oil pump}\n- {id: oil-debris, name: debris in the oil}\n"),
        })
        {
            string file = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }

        try
        {
            return KnowledgeBase.Load(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
