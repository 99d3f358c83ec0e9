using System.Diagnostics;
using Failwise.Cases;
using Failwise.Causes;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Benchmarks;

/// <summary>Grows the finding rules from 1,000 to 10,000 and times reading, chaining and ranking of one case with 40 observations.</summary>
internal static class ScaleBenchmark
{
    public static void Run(TextWriter output)
    {
        string rules = FindRules();
        ProblemList problems = new();
        IReadOnlyList<RuleFile> shipped = RuleFiles.ReadFolder(rules, "rules", problems);
        KnowledgeBase basis = KnowledgeReader.Build(shipped, new ProblemList()).Knowledge!;
        string[] parts = [.. basis.Parts.Keys.Where(p => p != "part").Order(StringComparer.Ordinal).Take(120)];
        string[] patterns = [.. basis.Patterns.Values.Where(p => !p.Sound).Select(p => p.Id).Order(StringComparer.Ordinal).Take(60)];
        output.WriteLine("finding rules | build ms | chain ms | rank ms | chain per 1,000 rules");
        foreach (int count in new[] { 1_000, 2_000, 5_000, 10_000 })
        {
            List<RuleFile> files = [.. shipped.Where(f => f.Path.Split('/')[0] is "vocabulary" or "parts" or "patterns" or "sources" or "symptoms" or "history")];
            Random random = new(7);
            for (int i = 0; i < count; i++)
            {
                files.Add(Finding(i, parts, patterns, random));
            }

            double build = Best(3, () => KnowledgeReader.Build(files, new ProblemList()));
            KnowledgeReading reading = KnowledgeReader.Build(files, new ProblemList());
            KnowledgeBase knowledge = reading.Knowledge ?? throw new ProblemsException(reading.Problems);
            TeardownCase teardown = Case(parts, patterns);
            FindingSet found = FindingEngine.Chain(knowledge, teardown, MeasurementAssessor.Assess(knowledge, teardown));
            double chain = Best(5, () => FindingEngine.Chain(knowledge, teardown, MeasurementAssessor.Assess(knowledge, teardown)));
            double rank = Best(3, () => CauseRanker.Rank(knowledge, teardown, found));
            output.WriteLine($"{count,13} | {build,8:0.0} | {chain,8:0.0} | {rank,7:0.0} | {1000 * chain / count,6:0.00}   ({found.Fired.Count} fired)");
        }
    }

    private static RuleFile Finding(int i, string[] parts, string[] patterns, Random random)
    {
        string Sighting() => $"{{part: {parts[random.Next(parts.Length)]}, see: {patterns[random.Next(patterns.Length)]}}}";
        string chained = i >= 100 && i % 10 == 0 ? $", {{finding: f{i - 100}}}" : "";
        string yaml = $"id: f{i}\nsays: Synthetic {i}.\nrole: sign\nwhen: {{any: [{Sighting()}, {{all: [{Sighting()}, {Sighting()}{chained}]}}]}}\nlook-alikes: none\nexamples: {{fires: [[{Sighting()}]], silent: [[{Sighting()}]]}}\nsources: judgement\n";
        return new RuleFile($"findings/synthetic/f{i}.yaml", YamlFile.Parse(yaml, $"f{i}", new ProblemList())!);
    }

    private static TeardownCase Case(string[] parts, string[] patterns) => new(
        "synthetic", new Machine(null, ["engine"], 4, 5, null, false, null, [], []), [], new Dictionary<string, double>(), [],
        [.. Enumerable.Range(0, 40).Select(i => new Observation(i + 1, parts[3 * i % parts.Length], Look.Seen, patterns[7 * i % patterns.Length], At.Unsaid, [], [], Extent.Moderate, 60, null, null, null, null, default))],
        [], [], [], [], "synthetic");

    private static double Best(int times, Action action)
    {
        double best = double.PositiveInfinity;
        for (int i = 0; i < times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            action();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }

    internal static string FindRules()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Failwise.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder!.FullName, "rules");
    }
}
