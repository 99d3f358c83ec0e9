using System.Text.Encodings.Web;
using System.Text.Json;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Scoring;

namespace Failwise.Cli;

/// <summary>Commands for people who write rules.</summary>
internal static class RuleCommands
{
    public static int Check(string? folder)
    {
        KnowledgeReading reading = folder is null ? KnowledgeReader.Build(ShippedRules.Files(), new ProblemList()) : KnowledgeReader.Read(folder);
        List<Problem> problems = [.. reading.Problems];
        if (reading.Knowledge is { } knowledge)
        {
            problems.AddRange(ExampleCheck.Run(knowledge));
            problems.AddRange(RuleLint.Run(knowledge));
            Console.Out.Write(RuleHealth.Write(knowledge));
        }

        problems.ForEach(p => Console.Error.WriteLine(p));
        int errors = problems.Count(p => p.Severity == Severity.Error);
        Console.Out.WriteLine($"{errors} errors, {problems.Count - errors} warnings");
        return errors > 0 ? 1 : 0;
    }

    public static int Schema(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach ((string name, string text) in SchemaFiles.All())
        {
            Output.Write(text, Path.Combine(folder, name));
        }

        return 0;
    }

    public static int Handbook(KnowledgeBase knowledge, string path)
    {
        (IReadOnlyList<RowScore> rows, IReadOnlyList<Problem> problems) = HandbookScorer.Run(knowledge, path);
        foreach (Problem problem in problems)
        {
            Console.Error.WriteLine(problem);
        }

        foreach (RowScore row in rows.Where(r => r.NamesCauses && (r.Rank is 0 or > 5)))
        {
            Console.Out.WriteLine($"{row.Row}: rank {(row.Rank == 0 ? "none" : row.Rank)}; expected {string.Join(", ", row.Causes)}; first was {row.Leader ?? "nothing"}");
        }

        foreach (RowScore row in rows.Where(r => r.Harmless && r.Rank == 0))
        {
            Console.Out.WriteLine($"{row.Row}: a normal appearance that was not called normal; first was {row.Leader ?? "nothing"}");
        }

        RowScore[] faults = [.. rows.Where(r => r.NamesCauses)];
        int five = faults.Count(r => r.Rank is >= 1 and <= 5);
        Console.Out.WriteLine($"{rows.Count} rows, {rows.Count(r => r.Used)} used; of {faults.Length} with causes: first {faults.Count(r => r.Rank == 1)}, in three {faults.Count(r => r.Rank is >= 1 and <= 3)}, in five {five} ({100.0 * five / Math.Max(1, faults.Length):0.0} %); "
            + $"of {rows.Count(r => r.Harmless)} normal appearances {rows.Count(r => r.Harmless && r.Rank == 1)} called normal");
        return problems.Any(p => p.Severity == Severity.Error) ? 1 : 0;
    }

    public static int Coverage(KnowledgeBase knowledge, string folder, string? output)
    {
        if (!Directory.Exists(folder))
        {
            Console.Error.WriteLine($"{folder}: error FW001: there is no such folder.");
            return 1;
        }

        List<(string, IReadOnlyList<RowScore>)> groups = [];
        foreach (string file in Directory.EnumerateFiles(folder, "*.yaml").Order(StringComparer.Ordinal))
        {
            (IReadOnlyList<RowScore> rows, IReadOnlyList<Problem> problems) = HandbookScorer.Run(knowledge, file);
            foreach (Problem problem in problems)
            {
                Console.Error.WriteLine(problem);
            }

            groups.Add((Path.GetFileNameWithoutExtension(file), rows));
        }

        Output.Write(CoverageLedger.Write(knowledge, groups), output);
        return 0;
    }

    public static int Score(KnowledgeBase knowledge, string folder, string format, string? set, bool list)
    {
        bool show = !Console.IsErrorRedirected;
        Score score = Scorer.Run(knowledge, folder, show ? (done, total) => Console.Error.Write($"\r{done} of {total} cases") : null, set);
        if (show)
        {
            Console.Error.WriteLine();
        }

        foreach (Problem problem in score.Problems)
        {
            Console.Error.WriteLine(problem);
        }

        Console.Out.Write(format switch { "json" => ScoreJson(score), "markdown" => ScoreMarkdown(score), _ => ScoreText(score, list) });
        return score.Problems.Any(p => p.Severity == Severity.Error) ? 1 : 0;
    }

    private static string ScoreText(Score score, bool list)
    {
        StringWriter w = new() { NewLine = "\n" };
        if (list)
        {
            foreach (CaseScore c in score.Cases)
            {
                w.WriteLine($"{c.Case.Name,-14} {c.Case.Class,-16} {c.Case.Set,-9} rank {c.Rank,3}  p {c.Probability:0.00}  {c.Verdict,-18} first {c.Top} {c.TopProbability:0.00}{(c.Rank == 1 || c.Case.IsOpen ? "" : "  wanted " + string.Join("|", c.Case.Roots))}");
            }

            w.WriteLine();
        }

        w.WriteLine($"{"class",-14} {"cases",5} {"top-1",11} {"top-3",11} {"top-5",11} {"broader",7} {"named",6} {"right",6} {"contested",9} {"too little",10} {"wrong",6}");
        foreach ((string name, ClassScore c) in score.Classes)
        {
            w.WriteLine($"{name,-14} {c.Cases,5} {Share(c.Top1, c.Cases),11} {Share(c.Top3, c.Cases),11} {Share(c.Top5, c.Cases),11} {c.BroaderFirst,7} {c.Named,6} {c.NamedRight,6} {c.Contested,9} {c.NotEnoughEvidence,10} {c.ConfidentlyWrong,6}");
        }

        w.WriteLine();
        w.WriteLine($"Brier {score.Brier:0.000}, log score {score.LogScore:0.000}");
        foreach (ReliabilityBin bin in score.Reliability)
        {
            w.WriteLine($"said {bin.From:0.0}-{bin.To:0.0}: {bin.Count,3} cases, mean {bin.MeanProbability:0.00}, right {bin.Share:0.00}");
        }

        foreach ((string name, IReadOnlyDictionary<string, ClassScore> by) in score.Baselines)
        {
            w.WriteLine($"baseline {name}: " + string.Join(", ", by.Where(b => b.Key != "open").Select(b => $"{b.Key} top-1 {Share(b.Value.Top1, b.Value.Cases)} top-3 {Share(b.Value.Top3, b.Value.Cases)}")));
        }

        return w.ToString();
    }

    private static string ScoreMarkdown(Score score)
    {
        StringWriter w = new() { NewLine = "\n" };
        foreach ((string title, Func<CaseScore, bool> chosen) in new (string, Func<CaseScore, bool>)[]
            { ("All cases", _ => true), ("Tune cases (looked at while rules were improved)", c => c.Case.Set == "tune"), ("Held-out cases (nobody who writes rules has opened them)", c => c.Case.Set == "held-out") })
        {
            Score part = Scorer.Sum([.. score.Cases.Where(chosen)], []);
            w.WriteLine($"### {title}\n\n| class | cases | first | in three | in five | related root first | named | named and right | contested | too little | confidently wrong |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
            foreach ((string name, ClassScore c) in part.Classes)
            {
                w.WriteLine($"| {name} | {c.Cases} | {Share(c.Top1, c.Cases)} | {Share(c.Top3, c.Cases)} | {Share(c.Top5, c.Cases)} | {c.BroaderFirst} | {c.Named} | {c.NamedRight} | {c.Contested} | {c.NotEnoughEvidence} | {c.ConfidentlyWrong} |");
            }

            w.WriteLine($"\nBrier score {part.Brier:0.000}, log score {part.LogScore:0.000}.\n\n| said | cases | mean said | share right |\n| --- | --- | --- | --- |");
            foreach (ReliabilityBin bin in part.Reliability)
            {
                w.WriteLine($"| {bin.From:0.0} to {bin.To:0.0} | {bin.Count} | {bin.MeanProbability:0.00} | {bin.Share:0.00} |");
            }

            w.WriteLine("\n| baseline | strong first | strong in three | weak first | weak in three | give-away first |\n| --- | --- | --- | --- | --- | --- |");
            foreach ((string name, IReadOnlyDictionary<string, ClassScore> by) in part.Baselines)
            {
                w.WriteLine($"| {name.Replace('-', ' ')} | {by["usable-strong"].Top1} | {by["usable-strong"].Top3} | {by["usable-weak"].Top1} | {by["usable-weak"].Top3} | {by["give-away"].Top1} |");
            }

            w.WriteLine();
        }

        return w.ToString();
    }

    private static string Share(int n, int of) => of == 0 ? "-" : $"{n} ({100.0 * n / of:0} %)";

    private static string ScoreJson(Score score)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteStartObject("classes");
            WriteClasses(json, score.Classes);
            json.WriteEndObject();
            json.WriteNumber("brier", Math.Round(score.Brier, 4));
            json.WriteNumber("logScore", Math.Round(score.LogScore, 4));
            json.WriteStartArray("reliability");
            foreach (ReliabilityBin bin in score.Reliability)
            {
                json.WriteStartObject();
                json.WriteNumber("from", Math.Round(bin.From, 1));
                json.WriteNumber("to", Math.Round(bin.To, 1));
                json.WriteNumber("cases", bin.Count);
                json.WriteNumber("meanProbability", Math.Round(bin.MeanProbability, 4));
                json.WriteNumber("shareRight", Math.Round(bin.Share, 4));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartObject("baselines");
            foreach ((string name, IReadOnlyDictionary<string, ClassScore> by) in score.Baselines)
            {
                json.WriteStartObject(name);
                WriteClasses(json, by, only: true);
                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteStartArray("cases");
            foreach (CaseScore c in score.Cases)
            {
                json.WriteStartObject();
                json.WriteString("case", c.Case.Name);
                json.WriteString("class", c.Case.Class);
                json.WriteString("set", c.Case.Set);
                json.WriteNumber("rank", c.Rank);
                json.WriteNumber("probability", Math.Round(c.Probability, 4));
                json.WriteString("verdict", Reports.Names.Of(c.Verdict));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void WriteClasses(Utf8JsonWriter json, IReadOnlyDictionary<string, ClassScore> classes, bool only = false)
    {
        foreach ((string name, ClassScore c) in classes)
        {
            json.WriteStartObject(name);
            json.WriteNumber("cases", c.Cases);
            json.WriteNumber("top1", c.Top1);
            json.WriteNumber("top3", c.Top3);
            if (!only)
            {
                json.WriteNumber("top5", c.Top5);
                json.WriteNumber("broaderFirst", c.BroaderFirst);
                json.WriteNumber("notEnoughEvidence", c.NotEnoughEvidence);
                json.WriteNumber("contested", c.Contested);
                json.WriteNumber("named", c.Named);
                json.WriteNumber("namedRight", c.NamedRight);
                json.WriteNumber("confidentlyWrong", c.ConfidentlyWrong);
            }

            json.WriteEndObject();
        }
    }
}
