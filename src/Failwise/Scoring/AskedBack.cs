using Failwise.Cases;
using Failwise.Checks;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Scoring;

/// <summary>One thing that experienced people asked back, and where it stands among the questions of the planner.</summary>
/// <param name="About">What was asked, in own words.</param>
/// <param name="Place">Place of the first question that asks the same, from 1; 0 when none of the first ones does.</param>
public sealed record AskedItem(string About, int Place);

/// <summary>A published exchange: what was shown, what was asked back, and what the planner asks first.</summary>
public sealed record AskedScore(string Name, string Set, IReadOnlyList<AskedItem> Asked, IReadOnlyList<string> First);

/// <summary>Compares the first questions of the planner with what experienced people asked back.</summary>
public static class AskedBack
{
    /// <summary>How many of the first questions count.</summary>
    public const int Counted = 5;

    private static readonly Shape Form = new GroupShape("what was asked back", null,
        new("set", new ChoiceShape("tune", "held-out"), true, "Whether it was looked at while the planner was improved."),
        new("asked", new ListShape(new GroupShape("a question", null,
            new("about", new TextShape("a sentence"), true, "What was asked, in own words."),
            new("hits", new ListShape(new TextShape("a word")), true, "Parts, or ids of questions, that ask the same."))), true, "What was asked."),
        new("source", new OpenGroupShape(new TextShape("a sentence")), true, "Where it was asked."));

    /// <summary>Runs every folder below that has a case.yaml and an asked.yaml.</summary>
    /// <exception cref="ProblemsException">A file has errors; all of them are listed.</exception>
    public static IReadOnlyList<AskedScore> Run(KnowledgeBase knowledge, string folder)
    {
        ProblemList problems = new();
        List<AskedScore> scores = [];
        string[] files = Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, "asked.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal)] : [];
        foreach (string file in files)
        {
            if (YamlFile.Read(file, file.Replace('\\', '/'), problems) is MapNode map && Fits(map, problems))
            {
                string of = Path.GetDirectoryName(file)!;
                CaseReading reading = CaseReader.Read(knowledge, of);
                problems.AddRange(reading.Problems.Where(p => p.Severity == Severity.Error));
                CheckHits(knowledge, map, problems);
                if (reading.Case is { } teardown)
                {
                    scores.Add(Compare(knowledge, teardown, map, Path.GetFileName(of)));
                }
            }
        }

        if (files.Length == 0)
        {
            problems.Error("FW001", new Location(folder, 0, 0), "there is no such folder of exchanges: each is a folder with a case.yaml and an asked.yaml.");
        }

        return problems.HasErrors ? throw new ProblemsException(problems.Sorted()) : scores;
    }

    private static bool Fits(MapNode map, ProblemList problems)
    {
        ProblemList mine = new();
        Form.Check(map, mine);
        problems.AddRange(mine.All);
        return !mine.HasErrors;
    }

    private static void CheckHits(KnowledgeBase knowledge, MapNode map, ProblemList problems)
    {
        string[] known =
        [
            .. knowledge.Parts.Keys, .. knowledge.Questions.Keys.Select(q => "ask/" + q), .. knowledge.Symptoms.Keys.Select(s => "symptom/" + s),
            .. knowledge.Circumstances.Keys.Select(c => "history/" + c),
        ];
        foreach (ScalarNode hit in map.Groups("asked").SelectMany(a => a.Scalars("hits")).Where(h => !known.Contains(h.Text)))
        {
            problems.Error("FW012", hit.At, $"unknown part or question '{Shape.Short(hit.Text)}'.{Suggest.Nearest(hit.Text, known)}");
        }
    }

    private static AskedScore Compare(KnowledgeBase knowledge, TeardownCase teardown, MapNode map, string name)
    {
        PlannedCheck[] first = [.. CheckPlanner.Plan(knowledge, teardown, new PlanOptions(Counted)).Checks];
        AskedItem[] asked =
        [
            .. map.Groups("asked").Select(a => new AskedItem(a.Text("about")!, 1 + Array.FindIndex(first, c => a.Texts("hits").Any(hit => Meets(knowledge, c, hit))))),
        ];
        return new AskedScore(name, map.Text("set")!, asked, [.. first.Select(c => c.Id)]);
    }

    private static bool Meets(KnowledgeBase knowledge, PlannedCheck check, string hit) =>
        check.Id == hit || (knowledge.Parts.ContainsKey(hit) && check.Parts.Any(p => knowledge.PartIs(p, hit)));
}
