using System.Globalization;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Cases;

/// <summary>What reading a case gave: the case when there were no errors, and every problem.</summary>
public sealed record CaseReading(TeardownCase? Case, IReadOnlyList<Problem> Problems);

/// <summary>Reads a case file, or the case.yaml of a case folder.</summary>
public static class CaseReader
{
    /// <summary>The file that holds the case in a case folder.</summary>
    public const string FileInFolder = "case.yaml";

    // Enough for a shop's folder of cases; the hint is not worth a walk through a larger one.
    private const int MostBeside = 1000;

    /// <summary>Reads a case.</summary>
    /// <param name="knowledge">The words that the case may use.</param>
    /// <param name="path">A case file, or a folder with a case.yaml.</param>
    /// <param name="limitsFile">The shop's own limit file, used where the case itself names no limit; null for none.</param>
    public static CaseReading Read(KnowledgeBase knowledge, string path, string? limitsFile = null)
    {
        ProblemList problems = new();
        return Open(path, problems) is not var (root, file) ? new CaseReading(null, problems.Sorted()) : Read(knowledge, root, file, problems, limitsFile);
    }

    /// <summary>Reads a case that was only begun: the machine alone is enough.</summary>
    /// <param name="knowledge">The words that the case may use.</param>
    /// <param name="path">A case file, or a folder with a case.yaml.</param>
    public static CaseReading ReadBegun(KnowledgeBase knowledge, string path)
    {
        ProblemList problems = new();
        return Open(path, problems) is not var (root, file) ? new CaseReading(null, problems.Sorted()) : Read(knowledge, root, file, problems, begun: true);
    }

    /// <summary>The file of a case, parsed; null with the reason among the problems.</summary>
    internal static (Node Root, string File)? Open(string path, ProblemList problems)
    {
        string file = Directory.Exists(path) ? Path.Combine(path, FileInFolder) : path;
        if (!File.Exists(file) && !Directory.Exists(file))
        {
            string near = !Directory.Exists(path) && Suggest.BestMatch(Path.GetFileName(path.TrimEnd('/', '\\')), Beside(path)) is { } best ? $" Did you mean '{best}'?" : "";
            problems.Error("FW001", new Location(file.Replace('\\', '/'), 0, 0), $"there is no case here.{near} 'failwise case new' begins one.");
            return null;
        }

        return YamlFile.Read(file, file.Replace('\\', '/'), problems) is { } root ? (root, file) : null;
    }

    /// <summary>Names of the cases that lie where the path should lead.</summary>
    private static string[] Beside(string path)
    {
        string? above = Path.GetDirectoryName(Path.GetFullPath(path.TrimEnd('/', '\\')));
        try
        {
            return above is null ? [] : [.. Directory.EnumerateDirectories(above).Where(d => File.Exists(Path.Combine(d, FileInFolder))).Take(MostBeside).Select(d => Path.GetFileName(d))];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>Reads the text of a case that was only begun, as if it stood in a file.</summary>
    internal static CaseReading ReadBegunText(KnowledgeBase knowledge, string text, string file)
    {
        ProblemList problems = new();
        Node? root = YamlFile.Parse(text, file.Replace('\\', '/'), problems);
        return root is null ? new CaseReading(null, problems.Sorted()) : Read(knowledge, root, file, problems, begun: true);
    }

    internal static CaseReading Read(KnowledgeBase knowledge, Node root, string file, ProblemList problems, string? limitsFile = null, bool begun = false)
    {
        ProblemList shape = new();
        CaseShapes.Case.Check(root, shape);
        problems.AddRange(shape.All);
        if (root is not MapNode map)
        {
            return new CaseReading(null, problems.Sorted());
        }

        TeardownCase? teardown = new CaseBuilder(knowledge, problems, file).Build(map, quiet: begun || shape.HasErrors, limitsFile);
        return new CaseReading(problems.HasErrors ? null : teardown! with { Warnings = problems.Sorted() }, problems.Sorted());
    }

    /// <summary>Reads a bare list of facts, as in a rule's example, over a machine with the given numbers of cylinders and mains.</summary>
    internal static CaseReading ReadFacts(KnowledgeBase knowledge, ListNode facts, string title, IReadOnlyList<string>? kinds = null)
    {
        Location at = facts.At;
        List<Node> observations = [], history = [], symptoms = [], readings = [], numbers = [];
        List<Node> features = [];
        foreach (MapNode fact in facts.Items.OfType<MapNode>())
        {
            if (fact["quantity"] is not null || fact["table"] is not null || fact["readings"] is not null)
            {
                readings.Add(fact);
            }
            else if (fact["work-out"] is not null)
            {
                numbers.Add(fact);
            }
            else if (fact["part"] is not null)
            {
                observations.Add(fact);
            }
            else if (fact["symptom"] is { } symptom)
            {
                symptoms.Add(symptom);
            }
            else if (fact["feature"] is { } feature)
            {
                features.Add(feature);
            }
            else if (fact["history"] is { } word)
            {
                history.Add(word);
            }
            else
            {
                history.Add(fact);
            }
        }

        MapNode machine = Map(at, ("kind", new ListNode(at, [.. (kinds ?? [.. knowledge.Machines.Keys]).Select(k => Text(at, k))])),
            ("cylinders", Text(at, "4")), ("mains", Text(at, "5")), ("features", new ListNode(at, features)));
        MapNode root = Map(at, ("title", Text(at, title)), ("machine", machine), ("history", new ListNode(at, history)),
            ("symptoms", new ListNode(at, symptoms)), ("observations", new ListNode(at, observations)), ("readings", new ListNode(at, readings)),
            ("numbers", new ListNode(at, numbers)));
        return Read(knowledge, root, at.File, new ProblemList());
    }

    private static ScalarNode Text(Location at, string text) => new(at, text, false);

    private static MapNode Map(Location at, params (string Key, Node Value)[] entries) =>
        new(at, [.. entries.Select(e => new MapEntry(Text(at, e.Key), e.Value))]);
}

/// <summary>Builds one case; every word that does not resolve becomes a problem.</summary>
internal sealed class CaseBuilder(KnowledgeBase knowledge, ProblemList problems, string file)
{
    // A lone case file may lie in a large folder; the hint for a misspelt photo is not worth a walk through all of it.
    private const int MostNearFiles = 1000;
    private static readonly EnumerationOptions NearFiles = new() { RecurseSubdirectories = true, MaxRecursionDepth = 2, IgnoreInaccessible = true };
    private Machine machine = null!;
    private int count;

    public TeardownCase Build(MapNode map, bool quiet, string? limitsFile)
    {
        machine = ReadMachine(map["machine"] as MapNode ?? map);
        (List<Statement> history, Dictionary<string, double> numbers, List<string> historyNotes) = ReadStatements(map, "history", knowledge.HistoryWords, "FW017", "history word");
        (List<Statement> symptoms, _, List<string> symptomNotes) = ReadStatements(map, "symptoms", knowledge.SymptomWords, "FW018", "symptom");
        List<Observation> observations = [];
        foreach (MapNode node in map.Groups("observations"))
        {
            observations.AddRange(ReadObservation(node, null));
        }

        foreach (MapNode node in map.Groups("debris"))
        {
            observations.AddRange(ReadObservation(node, "oil-debris"));
        }

        ReadingReader reader = new(knowledge, problems, this);
        List<Measurement> readings = [.. map.Groups("readings").SelectMany(reader.Read)];
        LimitTables tables = new(knowledge, problems, file);
        IReadOnlyList<IReadOnlyList<LimitRow>> limits = tables.Read(map, limitsFile);
        tables.Check(readings, limits);
        SlipCheck.Run(knowledge, readings, limits, problems);
        IReadOnlyList<NumberRequest> requests = new NumbersReader(problems, this).Read(map);
        if (!quiet && new[] { "observations", "debris", "symptoms", "readings", "numbers", "history" }.All(key => map.Items(key).Count == 0))
        {
            problems.Error("FW033", map.At, "this case holds no observation, no symptom and no history: there is nothing to reason from.");
        }

        CheckContradictions(observations);
        return new TeardownCase(
            map.Text("title") ?? "", machine, history, numbers, symptoms, observations, ReadNotLookedAt(map), readings, ReadPhotos(map),
            [.. historyNotes, .. symptomNotes, .. map.Texts("notes")], file)
        {
            Limits = limits,
            Requests = requests,
            Job = JobRecord.Read(map["job"] as MapNode),
        };
    }

    /// <summary>The part an entry names, or null after reporting that there is none such.</summary>
    internal string? Part(MapNode map) => map["part"] is ScalarNode written ? Resolve(written, knowledge.PartWords, "FW012", "part") : null;

    /// <summary>The numbered places of an entry.</summary>
    internal List<int> Places(MapNode map, string part) => ReadAt(map, knowledge.Parts[part]).Places;

    internal List<string> On(MapNode map) => Resolve(map, "on", knowledge.PlaceWords, "FW014", "place");

    private Machine ReadMachine(MapNode map)
    {
        List<string> kinds = Resolve(map, "kind", knowledge.MachineWords, "FW022", "kind of machine");
        int? cylinders = (int?)map.Number("cylinders");
        int? mains = (int?)map.Number("mains");
        List<int>? feed = null;
        if (map["feed"] is ListNode list)
        {
            feed = [.. list.Items.OfType<ScalarNode>().Select(s => Numbers.TryParse(s.Text, out double n) ? (int)n : 0)];
            if (mains is { } m && (feed.Count != m || feed.Distinct().Count() != m || feed.Exists(n => n < 1 || n > m)))
            {
                problems.Error("FW026", list.At, $"the feed names every main bearing once: numbers 1 to {m}.");
            }
        }

        List<string> features = Resolve(map, "features", knowledge.FeatureWords, "FW019", "feature");
        HashSet<string> without = [.. Resolve(map, "without", knowledge.FeatureWords, "FW019", "feature")];
        foreach (string id in features)
        {
            if (without.Contains(id))
            {
                problems.Error("FW035", map.PlaceOf("without"), $"'{id}' stands under features and under without; keep one.");
            }

            if (knowledge.Features[id].Choice is { } choice)
            {
                string[] rivals = [.. features.Where(f => f != id && knowledge.Features[f].Choice == choice)];
                if (rivals.Length > 0 && string.CompareOrdinal(id, rivals[0]) < 0)
                {
                    problems.Warning("FW035", map.PlaceOf("features"), $"'{id}' and '{rivals[0]}' usually exclude each other; causes of both are kept.");
                }

                without.UnionWith(knowledge.Features.Values.Where(f => f.Choice == choice && !features.Contains(f.Id)).Select(f => f.Id));
            }
        }

        return new Machine(map.Text("name"), kinds, cylinders, mains, feed, map.Text("drive-end") == "first", map.Text("number-one"),
            features, [.. without.Order(StringComparer.Ordinal)]);
    }

    private List<string> Resolve(MapNode map, string key, WordIndex words, string code, string what)
    {
        List<string> ids = [];
        foreach (ScalarNode scalar in map.Scalars(key))
        {
            if (Resolve(scalar, words, code, what) is { } id && !ids.Contains(id))
            {
                ids.Add(id);
            }
        }

        return ids;
    }

    /// <summary>Where people call two things the same, what is about such a machine is meant.</summary>
    private string? ResolveStated(ScalarNode scalar, WordIndex words, string code, string what) =>
        words.Find(scalar.Text, id => knowledge.FitOf(id, machine.Kinds, machine.Features)) ?? Resolve(scalar, words, code, what);

    /// <summary>Where two marks are called the same, the one that something leaves on this part is meant.</summary>
    private string? ResolveMark(ScalarNode scalar, string part) => knowledge.PatternOn(part, scalar.Text) ?? Resolve(scalar, knowledge.PatternWords, "FW013", "pattern");

    private string? Resolve(ScalarNode scalar, WordIndex words, string code, string what)
    {
        string? id = words.Find(scalar.Text);
        if (id is null && scalar.Text.Trim().Length > 0)
        {
            problems.Error(code, scalar.At, $"unknown {what} '{Shape.Short(scalar.Text)}'.{Suggest.Nearest(scalar.Text, words.Words)}");
        }

        return id;
    }

    private (List<Statement> Stated, Dictionary<string, double> Numbers, List<string> Notes) ReadStatements(
        MapNode map, string key, WordIndex words, string code, string what)
    {
        List<Statement> stated = [];
        Dictionary<string, double> numbers = new(StringComparer.Ordinal);
        List<string> notes = [];
        foreach (Node item in map.Items(key))
        {
            switch (item)
            {
                case ScalarNode scalar when ResolveStated(scalar, words, code, what) is { } id:
                    AddStatement(new Statement(id, true, scalar.At));
                    break;
                case MapNode group when group["not"] is not null:
                    foreach (ScalarNode scalar in group.Scalars("not"))
                    {
                        if (ResolveStated(scalar, words, code, what) is { } denied)
                        {
                            AddStatement(new Statement(denied, false, scalar.At));
                        }
                    }

                    break;
                case MapNode group when group.Text("note") is { } note:
                    notes.Add(note);
                    break;
                case MapNode group:
                    foreach (MapEntry entry in group.Entries)
                    {
                        if (entry.Value is ScalarNode s && Numbers.TryParse(s.Text, out double value) && !numbers.TryAdd(entry.Key.Text, value))
                        {
                            problems.Error("FW004", entry.Key.At, $"'{entry.Key.Text}' is given twice; keep one.");
                        }
                    }

                    break;
            }
        }

        return (stated, numbers, notes);

        void AddStatement(Statement s)
        {
            if (stated.Find(o => o.Id == s.Id) is not { } other)
            {
                stated.Add(s);
            }
            else if (other.Holds != s.Holds)
            {
                problems.Error("FW028", s.At, $"'{s.Id}' is stated and denied; keep one.");
            }
        }
    }

    private IEnumerable<Observation> ReadObservation(MapNode map, string? partWhenLeftOut)
    {
        count++;
        string? part = map["part"] is ScalarNode written ? Resolve(written, knowledge.PartWords, "FW012", "part") : partWhenLeftOut;
        if (part is null || !knowledge.Parts.ContainsKey(part))
        {
            // The other words of the line are still checked, so that everything wrong is said at once.
            Resolve(map, "on", knowledge.PlaceWords, "FW014", "place");
            foreach (ScalarNode see in map.Scalars("see").Concat(map.Scalars("not")).Where(s => !KnowledgeReader.IsSoundWord(Suggest.Fold(s.Text))))
            {
                Resolve(see, knowledge.PatternWords, "FW013", "pattern");
            }

            return [];
        }

        if (map["see"] is null && map["not"] is null)
        {
            problems.Error("FW006", map.At, "an observation needs the key 'see' (the pattern, or sound) or 'not' (a pattern that was looked for).");
            return [];
        }

        (At at, List<int> places) = ReadAt(map, knowledge.Parts[part]);
        List<string> on = Resolve(map, "on", knowledge.PlaceWords, "FW014", "place");
        string? sureWord = map.Text("sure");
        double sure = knowledge.Sureness.GetValueOrDefault(sureWord ?? "sure", 60);
        List<Observation> result = [];
        foreach (ScalarNode see in map.Scalars("see"))
        {
            bool sound = KnowledgeReader.IsSoundWord(Suggest.Fold(see.Text));
            string? pattern = sound ? null : ResolveMark(see, part);
            if (sound || pattern is not null)
            {
                result.Add(Make(sound ? Look.Sound : Look.Seen, pattern, at, places, on, see));
            }
        }

        foreach (ScalarNode not in map.Scalars("not"))
        {
            if (ResolveMark(not, part) is { } pattern)
            {
                result.Add(Make(Look.NotFound, pattern, at, places, on, not));
            }
        }

        if (map.Text("rest") is { } rest && rest != "not-looked-at")
        {
            result.AddRange(Rest(part, at, places, on, map));
        }

        return result;

        Observation Make(Look look, string? pattern, At spread, List<int> numbers, List<string> words, ScalarNode see) => new(
            count, part, look, pattern, spread, numbers, words, look == Look.Seen ? KnowledgeReader.ExtentOf(map.Text("extent")) : Extent.Unstated,
            sure, sureWord, map.Text("note"), ReadPhotoPath(map), Differs(map.Text("part"), part) is { } p ? p : Differs(see.Text, pattern), map.At);
    }

    private static string? Differs(string? written, string? id) => written is null || id is null || written == id ? null : written;

    /// <summary>"rest: sound" says that the other numbers are sound, and the other half of the same numbers too.</summary>
    private IEnumerable<Observation> Rest(string part, At at, List<int> places, List<string> on, MapNode map)
    {
        Observation sound = new(count, part, Look.Sound, null, At.Unsaid, [], [], Extent.Unstated, knowledge.Sureness.GetValueOrDefault("sure", 60), null, null, null, null, map.At);
        int total = Total(knowledge.Parts[part]) ?? 0;
        List<int> others = at == At.Numbers ? [.. Enumerable.Range(1, total).Except(places)] : [];
        if (others.Count > 0)
        {
            yield return sound with { Spread = At.Numbers, Places = others };
        }
        else if (at is At.One or At.Some or At.Most or At.Neighbours or At.FirstOnFeed or At.LastOnFeed || (at == At.Numbers && total == 0))
        {
            yield return sound with { Spread = At.Some };
        }

        string? half = on.Find(w => w is "upper" or "lower");
        if (half is not null)
        {
            yield return sound with { Spread = at, Places = places, On = [half == "upper" ? "lower" : "upper"] };
        }
        else if (at is At.Unsaid or At.All)
        {
            yield return sound with { Spread = At.Some };
        }
    }

    private int? Total(Part part) => part.Count switch
    {
        "mains" => machine.Mains,
        "cylinders" or "rods" => machine.Cylinders,
        "one" => 1,
        _ => null,
    };

    private (At At, List<int> Places) ReadAt(MapNode map, Part part)
    {
        if (map["at"] is null)
        {
            return (At.Unsaid, []);
        }

        List<int> numbers = [];
        At at = At.Numbers;
        foreach (ScalarNode scalar in map.Scalars("at"))
        {
            string text = Suggest.Fold(scalar.Text);
            At? word = text switch
            {
                "all" => At.All,
                "one" => At.One,
                "some" or "several" => At.Some,
                "most" => At.Most,
                "neighbours" or "neighbors" => At.Neighbours,
                "first-on-feed" => At.FirstOnFeed,
                "last-on-feed" => At.LastOnFeed,
                _ => null,
            };
            if (word is { } w)
            {
                at = w;
                continue;
            }

            string[] ends = text.Split('-');
            if (ends.Length is 1 or 2 && Array.TrueForAll(ends, e => int.TryParse(e, NumberStyles.None, CultureInfo.InvariantCulture, out _)))
            {
                int from = int.Parse(ends[0]), to = int.Parse(ends[^1]);
                int most = Total(part) ?? 64;
                if (from < 1 || to < from || to > most)
                {
                    problems.Error("FW026", scalar.At, Total(part) is { } total
                        ? $"'{scalar.Text}': this machine has {part.Name} 1 to {total}."
                        : $"'{scalar.Text}' is not a position; write numbers from 1, such as 3 or 2-4.");
                    continue;
                }

                numbers.AddRange(Enumerable.Range(from, to - from + 1));
            }
            else
            {
                problems.Error("FW026", scalar.At, $"'{Shape.Short(scalar.Text)}' is not a position; write a number, a range such as 2-4, or all, one, some, most, neighbours, first-on-feed, last-on-feed.");
            }
        }

        numbers = [.. numbers.Distinct().Order()];
        int? all = Total(part);
        if (at == At.All && all is { } n && part.Count != "one")
        {
            return (At.Numbers, [.. Enumerable.Range(1, n)]);
        }

        if (at is At.FirstOnFeed or At.LastOnFeed && part.Count == "mains" && machine.Feed is { Count: > 0 } feed)
        {
            return (At.Numbers, [at == At.FirstOnFeed ? feed[0] : feed[^1]]);
        }

        return (at, numbers);
    }

    private List<NotLookedAt> ReadNotLookedAt(MapNode map)
    {
        List<NotLookedAt> result = [];
        foreach (Node item in map.Items("not-looked-at"))
        {
            ScalarNode? word = item as ScalarNode ?? (item as MapNode)?["part"] as ScalarNode;
            if (word is not null && Resolve(word, knowledge.PartWords, "FW012", "part") is { } part)
            {
                result.Add(new NotLookedAt(part, (item as MapNode)?.Text("reason"), item.At));
            }
        }

        return result;
    }

    private List<Photo> ReadPhotos(MapNode map)
    {
        List<Photo> photos = [];
        foreach (MapNode photo in map.Groups("photos"))
        {
            if (photo["file"] is ScalarNode name && CheckPhoto(name))
            {
                string? part = photo["part"] is ScalarNode word ? Resolve(word, knowledge.PartWords, "FW012", "part") : null;
                photos.Add(new Photo(name.Text, photo.Text("shows"), part, photo.At));
            }
        }

        return photos;
    }

    private string? ReadPhotoPath(MapNode map) => map["photo"] is ScalarNode name && CheckPhoto(name) ? name.Text : null;

    private bool CheckPhoto(ScalarNode name)
    {
        string folder = Path.GetFullPath(Path.GetDirectoryName(Path.GetFullPath(file))!);
        string full;
        try
        {
            full = Path.GetFullPath(Path.Combine(folder, name.Text));
        }
        catch (ArgumentException)
        {
            problems.Error("FW029", name.At, "this is not a file name.");
            return false;
        }

        if (!full.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            problems.Error("FW029", name.At, $"the photo '{Shape.Short(name.Text)}' lies outside the case folder; copy it into the folder.");
            return false;
        }

        if (!File.Exists(full))
        {
            string[] near = Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, "*", NearFiles).Take(MostNearFiles).Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/'))] : [];
            string hint = Suggest.BestMatch(name.Text, near) is { } best ? $" Did you mean '{best}'?" : "";
            problems.Error("FW029", name.At, $"there is no photo '{Shape.Short(name.Text)}' in the case folder.{hint}");
            return false;
        }

        if (new FileInfo(full).ResolveLinkTarget(returnFinalTarget: true) is { } target && !target.FullName.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            problems.Error("FW029", name.At, $"the photo '{Shape.Short(name.Text)}' is a link to a file outside the case folder; copy the file itself into the folder.");
            return false;
        }

        return true;
    }

    /// <summary>The same place cannot be sound and damaged.</summary>
    private void CheckContradictions(List<Observation> observations)
    {
        foreach (Observation sound in observations.Where(o => o.Look == Look.Sound && o.Spread is At.Numbers or At.Unsaid && o.Look == Look.Sound))
        {
            Observation? damaged = observations.Find(o =>
                o.Look == Look.Seen && o.Part == sound.Part && o.Number != sound.Number && !knowledge.Patterns[o.Pattern!].Sound
                && o.Spread == sound.Spread && o.On.Order(StringComparer.Ordinal).SequenceEqual(sound.On.Order(StringComparer.Ordinal))
                && o.Extent is not Extent.Trace
                && (sound.Spread == At.Unsaid || o.Places.Intersect(sound.Places).Any()));
            if (damaged is not null)
            {
                string where = sound.Spread == At.Numbers ? " " + string.Join(", ", damaged.Places.Intersect(sound.Places)) : "";
                problems.Error("FW028", sound.Location, $"{knowledge.Parts[sound.Part].Name}{where} is called sound here and {knowledge.Patterns[damaged.Pattern!].Name} at line {damaged.Location.Line}; which is right?");
            }
        }
    }
}
