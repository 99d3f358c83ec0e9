using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>What reading a rule folder gave: the knowledge base when there were no errors, and every problem.</summary>
public sealed record KnowledgeReading(KnowledgeBase? Knowledge, IReadOnlyList<Problem> Problems);

/// <summary>Turns rule files into a knowledge base: forms first, then words, then references.</summary>
public static class KnowledgeReader
{
    /// <summary>Reads a rule folder; files that are wrong are left out, so that their problems do not hide others.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="under">Files of the rule base over which this folder is laid, if any.</param>
    internal static KnowledgeReading Read(string folder, IReadOnlyList<RuleFile>? under = null)
    {
        ProblemList problems = new();
        IReadOnlyList<RuleFile> files = RuleFiles.ReadFolder(folder, folder, problems);
        return Build(under is null ? files : Overlay(under, files), problems);
    }

    /// <summary>Builds from files that were read before.</summary>
    internal static KnowledgeReading Build(IReadOnlyList<RuleFile> files, ProblemList problems)
    {
        KnowledgeParts parts = new();
        Builder builder = new(parts, problems);
        builder.ReadAll(files);
        KnowledgeBase knowledge = new(parts, () => files);
        new ReferenceCheck(knowledge, problems).Run();
        return new KnowledgeReading(problems.HasErrors ? null : knowledge, problems.Sorted());
    }

    /// <summary>A file of the shop replaces the shipped file of the same path; every other file is added.</summary>
    private static IReadOnlyList<RuleFile> Overlay(IReadOnlyList<RuleFile> under, IReadOnlyList<RuleFile> over)
    {
        HashSet<string> replaced = new(over.Select(f => f.Path), StringComparer.Ordinal);
        return [.. under.Where(f => !replaced.Contains(f.Path)), .. over];
    }

    private sealed class Builder(KnowledgeParts parts, ProblemList problems)
    {
        private readonly Dictionary<string, Location> seen = new(StringComparer.Ordinal);
        private readonly List<(MapNode Map, string Path)> extensions = [];

        public void ReadAll(IReadOnlyList<RuleFile> files)
        {
            foreach ((string id, string title) in new[]
                { ("common-practice", "Common practice, no source"), ("from-memory", "From memory, not read again"), ("judgement", "Judgement of the authors") })
            {
                parts.Sources[id] = new Source(id, title, null, null, null, null, null, new Location("", 0, 0));
            }

            foreach (RuleFile file in files)
            {
                ReadFile(file);
            }

            foreach ((MapNode map, string path) in extensions)
            {
                Extend(map, path);
            }
        }

        private void ReadFile(RuleFile file)
        {
            string name = Path.GetFileNameWithoutExtension(file.Path);
            string kind = file.Path.Split('/')[0];
            switch (kind)
            {
                case "vocabulary":
                    ReadVocabulary(name, file.Root);
                    break;
                case "limits":
                    One(file, LimitShapes.Shipped, map => Add(parts.Limits, "limit table", map, ReadLimits(map), name));
                    break;
                case "parts":
                    EachOf(file.Root, RuleShapes.Part, map => Add(parts.Parts, "part", map, ReadPart(map, name)));
                    break;
                case "history":
                    EachOf(file.Root, RuleShapes.Circumstance, map => Add(parts.Circumstances, "circumstance", map, ReadCircumstance(map)));
                    break;
                case "symptoms":
                    EachOf(file.Root, RuleShapes.Symptom, map => Add(parts.Symptoms, "symptom", map, ReadSymptom(map)));
                    break;
                case "questions":
                    EachOf(file.Root, CheckShapes.Question, map => Add(parts.Questions, "question", map, IntakeQuestionReader.Read(map)));
                    break;
                case "sources":
                    EachOf(file.Root, RuleShapes.Source, map => Add(parts.Sources, "source", map, ReadSource(map)));
                    break;
                case "patterns":
                    One(file, RuleShapes.Pattern, map => Add(parts.Patterns, "pattern", map, ReadPattern(map), name));
                    break;
                case "findings":
                    One(file, RuleShapes.Finding, map => ReadFinding(map, name));
                    break;
                case "causes":
                    One(file, RuleShapes.Cause, map => ReadCause(map, name, file.Path));
                    break;
                case "work":
                    One(file, WorkShapes.Work, map => Add(parts.Work, "work", map, WorkReading.Work(map, problems), name));
                    break;
                case "decisions":
                    EachOf(file.Root, WorkShapes.Decision, map => Add(parts.Decisions, "decision", map, WorkReading.Decision(map, problems)));
                    break;
                case "downstream":
                    EachOf(file.Root, WorkShapes.Downstream, map => Add(parts.Downstream, "downstream list", map, WorkReading.Downstream(map)));
                    break;
                case "sheets":
                    EachOf(file.Root, WorkShapes.Sheet, map => Add(parts.Sheets, "sheet line", map, WorkReading.Sheet(map)));
                    break;
                default:
                    problems.Error("FW034", file.Root.At with { Line = 0, Column = 0 }, $"files are expected in one of the folders vocabulary, limits, parts, history, symptoms, questions, sources, patterns, findings, causes, work, decisions, downstream, sheets; '{kind}' is none of them.");
                    break;
            }
        }

        private bool Checked(Node node, Shape shape)
        {
            ProblemList mine = new();
            shape.Check(node, mine);
            problems.AddRange(mine.All);
            return !mine.HasErrors;
        }

        private void One(RuleFile file, Shape shape, Action<MapNode> read)
        {
            if (Checked(file.Root, shape))
            {
                read((MapNode)file.Root);
            }
        }

        private void EachOf(Node root, Shape shape, Action<MapNode> read)
        {
            if (root is not ListNode list)
            {
                problems.Error("FW007", root.At, $"a list is expected in this file, each item {shape.Expected}.");
                return;
            }

            foreach (Node item in list.Items)
            {
                if (Checked(item, shape))
                {
                    read((MapNode)item);
                }
            }
        }

        private bool Add<T>(Dictionary<string, T> into, string what, MapNode map, T value, string? fileName = null)
        {
            string id = map.Text("id")!;
            Location at = map.PlaceOf("id");
            if (fileName is not null && fileName != id)
            {
                problems.Error("FW024", at, $"the id '{id}' differs from the file name '{fileName}.yaml'; make them the same.");
            }

            if (seen.TryGetValue(what + "/" + id, out Location first))
            {
                problems.Error("FW023", at, $"the {what} '{id}' stands already at {first}; ids are unique.");
                return false;
            }

            seen[what + "/" + id] = at;
            into[id] = value;
            return true;
        }

        private void ReadVocabulary(string name, Node root)
        {
            switch (name)
            {
                case "machines":
                    EachOf(root, RuleShapes.Machine, m => Add(parts.Machines, "machine kind", m, new MachineKind(m.Text("id")!, m.Text("name")!, m.Texts("words"))));
                    break;
                case "features":
                    EachOf(root, RuleShapes.Feature, m => Add(parts.Features, "feature", m, ReadFeature(m)));
                    break;
                case "covers":
                    EachOf(root, CheckShapes.Cover, m => Add(parts.Covers, "cover", m, new Cover(m.Text("id")!, m.Text("says")!, m.Number("minutes") ?? 0, m.Texts("behind"), m.At)));
                    break;
                case "asked-of":
                    EachOf(root, CheckShapes.AskedOf, m => Add(parts.AskedOf, "group of words", m, new AskedOf(m.Text("id")!, m.Texts("words"), m.Texts("parts"), m.Texts("machines"), m.Texts("not-with"), ReadSources(m), m.At)));
                    break;
                case "places":
                    EachOf(root, RuleShapes.Axis, m => parts.Axes.Add(new PlaceAxis(m.Text("axis")!, m.Texts("words"),
                        m["also"] is MapNode also ? also.Entries.ToDictionary(e => e.Key.Text, e => ((ScalarNode)e.Value).Text, StringComparer.Ordinal) : new Dictionary<string, string>())));
                    break;
                case "fits":
                    EachOf(root, RuleShapes.Fit, m => parts.Fits.Add(new Fit(m.Text("bore")!, m.Text("shaft"), m.Text("clearance"), m.Text("of"), m.At)));
                    break;
                case "words":
                    if (Checked(root, RuleShapes.WordList))
                    {
                        MapNode map = (MapNode)root;
                        foreach (MapEntry entry in ((MapNode)map["sureness"]!).Entries)
                        {
                            parts.Sureness[entry.Key.Text] = double.Parse(((ScalarNode)entry.Value).Text);
                        }

                        foreach (MapEntry entry in (map["counts"] as MapNode)?.Entries ?? [])
                        {
                            parts.Counts[entry.Key.Text] = double.Parse(((ScalarNode)entry.Value).Text);
                        }

                        foreach (MapEntry entry in ((MapNode)map["extents"]!).Entries)
                        {
                            parts.ExtentWeights[ExtentOf(entry.Key.Text)] = double.Parse(((ScalarNode)entry.Value).Text);
                        }
                    }

                    break;
                case "codes" or ['c', 'o', 'd', 'e', 's', '-', ..]:
                    EachOf(root, RuleShapes.ShortCode, ReadCode);
                    break;
                default:
                    problems.Error("FW034", root.At with { Line = 0, Column = 0 }, $"the vocabulary has the files machines, features, covers, places, fits, words and codes; '{name}' is none of them.");
                    break;
            }
        }

        private static Feature ReadFeature(MapNode m)
        {
            MapNode? share = m["share"] as MapNode;
            return new Feature(m.Text("id")!, m.Text("choice"), m.Text("says")!, m.Texts("words"),
                share?.Entries.ToDictionary(e => e.Key.Text, e => share.Chance(e.Key.Text)!.Value, StringComparer.Ordinal) ?? new Dictionary<string, double>(),
                m.Texts("shown-by"));
        }

        private LimitSet ReadLimits(MapNode m) => new(
            m.Text("id")!, m.Text("title")!, LimitReader.Rows(m, example: true, problems, part => part.Text.Trim()), ReadSources(m), m.At);

        private void ReadCode(MapNode m)
        {
            string[] kinds = [.. new[] { "part", "place", "pattern" }.Where(k => m[k] is not null)];
            if (kinds.Length != 1)
            {
                problems.Error("FW006", m.At, "a short code stands for one thing: a part, a place or a pattern.");
                return;
            }

            parts.Codes.Add(new ShortCode(m.Text("code")!, kinds[0], m.Text(kinds[0])!, m.At));
        }

        private static Part ReadPart(MapNode m, string group) => new(
            m.Text("id")!, m.Text("name")!, m.Texts("kind-of"), m.Texts("words"), m.Text("count"), m.Texts("machines"), m.Texts("needs"), m.Texts("places"),
            m.Text("access"), m.Number("minutes") ?? 5, group, m.At) { OrderedAs = m.Text("ordered-as"), Says = m.Text("says"), Each = m.Text("each") is { } each ? (int?)m.Number("each") : 1 };

        private static Circumstance ReadCircumstance(MapNode m) => new(
            m.Text("id")!, m.Text("says")!, m.Text("ask"), m.Texts("words"), m.Chance("how-common")!.Value,
            m["when"] is { } when ? ReadCondition(when) : null, ReadSources(m), m.At);

        private static Symptom ReadSymptom(MapNode m) => new(
            m.Text("id")!, m.Text("says")!, m.Text("ask"), m.Texts("words"), m.Texts("kind-of"), m.Chance("seen-anyway")!.Value, ReadSources(m), m.At);

        private static Source ReadSource(MapNode m) => new(
            m.Text("id")!, m.Text("title")!, m.Text("issuer"), m.Text("year"), m.Text("place"), m.Text("grade"), m.Text("read"), m.At);

        private static Pattern ReadPattern(MapNode m) => new(
            m.Text("id")!, m.Text("name")!, m.Text("says")!, m.Texts("words"), m.Texts("kind-of"), m.Chance("seen-anyway")!.Value, m.Flag("sound"),
            [.. m.Groups("classes").Select(c => new StandardClass(c.Text("standard")!, c.Text("class")!))],
            ReadLookAlikes(m, "look-alikes"), ReadLook(m), ReadSources(m), m.At);

        private static LookHint? ReadLook(MapNode m) => m["check"] is MapNode check
            ? new LookHint(check.Text("how")!, check.Text("tool"), check.Number("minutes") ?? 5, check.Texts("lost-by"), check.Flag("destroys"))
            : null;

        private static IReadOnlyList<LookAlike> ReadLookAlikes(MapNode m, string key) =>
        [
            .. m.Groups(key).Select(l => new LookAlike(l.Text("cause") ?? l.Text("pattern") ?? l.Text("finding") ?? "", l.Text("tell")!)),
        ];

        private static IReadOnlyList<SourceRef> ReadSources(MapNode m) => KnowledgeReader.ReadSources(m);

        private void ReadFinding(MapNode m, string name)
        {
            FindingRole role = m.Text("role") switch { "circumstance" => FindingRole.Circumstance, "clue" => FindingRole.Clue, _ => FindingRole.Sign };
            FindingRule rule = new(
                m.Text("id")!, m.Text("says")!, role,
                [.. m.Groups("refines").SelectMany(s => s.Texts("see").Select(see => new Sign(s.Text("part")!, see)))],
                ReadCondition(m["when"]!), m.Chance("seen-anyway") ?? m.Chance("how-common") ?? 0.05, m.Text("why"),
                ReadLookAlikes(m, "look-alikes"), ReadLook(m), ReadSources(m), m.Text("status") ?? "draft", m.At)
            {
                Examples = [.. ReadExamples(m, "fires", true), .. ReadExamples(m, "silent", false)],
            };
            Add(parts.Findings, "finding", m, rule, name);
        }

        private static IEnumerable<RuleExample> ReadExamples(MapNode m, string key, bool fires) =>
            m["examples"] is MapNode examples
                ? examples.Items(key).OfType<ListNode>().Select(list => new RuleExample(fires, list))
                : [];

        private void ReadCause(MapNode m, string name, string path)
        {
            if (m["extends"] is not null)
            {
                extensions.Add((m, path));
                return;
            }

            bool isRoot = m.Text("kind") == "root";
            if (isRoot && (m["group"] is null || m["how-common"] is null))
            {
                problems.Error("FW006", m.At, "a root needs the keys 'group' and 'how-common'.");
            }

            Cause cause = new(
                m.Text("id")!, m.Text("title")!, isRoot, m.Text("group") ?? "state", m.Text("says")!, m.Texts("machines"), m.Texts("needs"),
                m.Texts("gives-way-to"), m.Chance("how-common") ?? 0.0005, ReadLinks(m, "leaves"), ReadLinks(m, "leads-to"), ReadLinks(m, "raised-by"),
                ReadLookAlikes(m, "looks-like"), m.Text("prove"), m.Text("status") ?? "draft", ReadSources(m), m.At);
            Add(parts.Causes, "cause", m, cause, name);
        }

        private void Extend(MapNode m, string path)
        {
            string id = m.Text("extends")!;
            if (!parts.Causes.TryGetValue(id, out Cause? cause))
            {
                problems.Error("FW015", m.PlaceOf("extends"), $"unknown cause '{Shape.Short(id)}'.{Suggest.Nearest(id, parts.Causes.Keys)}");
                return;
            }

            if (!Path.GetFileName(path).StartsWith(id + "--", StringComparison.Ordinal))
            {
                problems.Error("FW024", m.PlaceOf("extends"), $"a file that extends '{id}' is named '{id}--<group>.yaml'.");
            }

            IReadOnlyList<SourceRef> sources = ReadSources(m);
            parts.Causes[id] = cause with
            {
                Leaves = [.. cause.Leaves, .. Sourced(ReadLinks(m, "leaves"))],
                LeadsTo = [.. cause.LeadsTo, .. Sourced(ReadLinks(m, "leads-to"))],
                RaisedBy = [.. cause.RaisedBy, .. Sourced(ReadLinks(m, "raised-by"))],
                LooksLike = [.. cause.LooksLike, .. ReadLookAlikes(m, "looks-like")],
            };

            IEnumerable<CauseLink> Sourced(IEnumerable<CauseLink> links) =>
                links.Select(l => l.Sources.Count > 0 ? l : l with { Sources = sources });
        }

        private IReadOnlyList<CauseLink> ReadLinks(MapNode m, string key)
        {
            List<CauseLink> links = [];
            foreach (MapNode link in m.Groups(key))
            {
                double strength = link.Chance("strength") ?? 0;
                string word = link.Text("strength") ?? "";
                IReadOnlyList<SourceRef> sources = ReadSources(link);
                string? note = link.Text("note");
                if (Misplaced(key, link) is { } wrong)
                {
                    problems.Error("FW027", link.At, wrong);
                    continue;
                }

                if (link.Text("part") is { } part)
                {
                    IReadOnlyList<string> see = link.Texts("see");
                    if (see.Count == 0)
                    {
                        problems.Error("FW006", link.At, "a link to a part needs the key 'see': the pattern it leaves there.");
                    }

                    links.AddRange(see.Select(p => new CauseLink(LinkTarget.Sign, $"{part}/{p}", new Sign(part, p), strength, word, sources, note, link.At)));
                    continue;
                }

                (string Key, LinkTarget Target)[] targets =
                    [("finding", LinkTarget.Finding), ("symptom", LinkTarget.Symptom), ("cause", LinkTarget.Cause), ("history", LinkTarget.History)];
                (string Key, LinkTarget Target) found = Array.Find(targets, t => link[t.Key] is not null);
                if (found.Key is null)
                {
                    problems.Error("FW006", link.At, "a link needs a target: part with see, finding, symptom, cause or history.");
                    continue;
                }

                links.Add(new CauseLink(found.Target, link.Text(found.Key)!, null, strength, word, sources, note, link.At));
            }

            return links;
        }

        /// <summary>A link under the wrong heading would load and never speak; null when it stands where it belongs.</summary>
        private static string? Misplaced(string key, MapNode link)
        {
            string[] allowed = key switch { "leaves" => ["part", "finding", "symptom"], "leads-to" => ["cause"], _ => ["history", "finding"] };
            string[] targets = [.. new[] { "part", "finding", "symptom", "cause", "history" }.Where(t => link[t] is not null)];
            return targets.Length > 1 ? $"a link has one target; this one has {string.Join(" and ", targets)}: write one link for each."
                : targets.Length == 1 && !allowed.Contains(targets[0]) ? $"a {targets[0]} cannot stand under '{key}'; expected {string.Join(", ", allowed)}."
                : null;
        }
    }

    internal static IReadOnlyList<SourceRef> ReadSources(MapNode m) =>
    [
        .. m.Items("sources").Select(item => item is MapNode map
            ? new SourceRef(map.Text("id")!, map.Text("at"))
            : new SourceRef(((ScalarNode)item).Text.Trim(), null)),
    ];

    internal static Extent ExtentOf(string? word) => word switch
    {
        "trace" => Extent.Trace,
        "light" => Extent.Light,
        "moderate" => Extent.Moderate,
        "heavy" => Extent.Heavy,
        "destroyed" => Extent.Destroyed,
        _ => Extent.Unstated,
    };

    internal static Condition ReadCondition(Node node)
    {
        MapNode m = (MapNode)node;
        if (m["all"] is not null)
        {
            return new AllOf([.. m.Items("all").Select(ReadCondition)], m.At);
        }

        if (m["any"] is not null)
        {
            return new AnyOf([.. m.Items("any").Select(ReadCondition)], m.At);
        }

        if (m["none"] is not null)
        {
            return new NoneOf([.. m.Items("none").Select(ReadCondition)], m.At);
        }

        foreach ((string key, StatedKind kind) in new[]
            { ("history", StatedKind.History), ("symptom", StatedKind.Symptom), ("feature", StatedKind.Feature), ("finding", StatedKind.Finding) })
        {
            if (m.Text(key) is { } id)
            {
                return new StatedCondition(kind, id, m.PlaceOf(key));
            }
        }

        if (m.Text("number") is { } number)
        {
            return new NumberCondition(number, m.Number("below"), m.Number("above"), m.At);
        }

        if (m.Text("reading") is { } quantity)
        {
            return new ReadingCondition(quantity, m.Text("part")!, m.Text("is")!, ReadSpread(m), m.At);
        }

        if (m.Text("result") is { } calculation)
        {
            return new ResultCondition(calculation, m.Text("output")!, m.Text("part"), m.Number("below"), m.Number("above"), m.Text("is"), m.At);
        }

        IReadOnlyList<string> see = m.Texts("see");
        return new SightingCondition(m.Text("part")!, see.Any(IsSoundWord) ? [] : see, m.Texts("on"), ExtentOf(m.Text("extent")), ReadSpread(m), m.At);
    }

    internal static bool IsSoundWord(string word) => word is "sound" or "clean" or "good" or "ok" or "normal";

    private static Spread ReadSpread(MapNode m)
    {
        (CountOver count, int least) = m.Text("count") switch
        {
            "one" => (CountOver.One, 1),
            "some" => (CountOver.Some, 1),
            "most" => (CountOver.Most, 0),
            "all" => (CountOver.All, 0),
            "all-but-one" => (CountOver.AllButOne, 0),
            "two-or-more" => (CountOver.AtLeast, 2),
            { } text when text.StartsWith("at-least ", StringComparison.Ordinal) => (CountOver.AtLeast, int.Parse(text[9..])),
            _ => (CountOver.Anywhere, 0),
        };
        WhereAlong where = m.Text("where") switch
        {
            "neighbours" => WhereAlong.Neighbours,
            "first-on-feed" => WhereAlong.FirstOnFeed,
            "last-on-feed" => WhereAlong.LastOnFeed,
            "worse-along-feed" => WhereAlong.WorseAlongFeed,
            "drive-end" => WhereAlong.DriveEnd,
            "free-end" => WhereAlong.FreeEnd,
            "middle" => WhereAlong.Middle,
            "ends" => WhereAlong.Ends,
            "same-place-again" => WhereAlong.SamePlaceAgain,
            _ => WhereAlong.Anywhere,
        };
        LieOn lie = m.Text("lie") switch
        {
            "one-edge" => LieOn.OneEdge,
            "both-edges" => LieOn.BothEdges,
            "diagonal" => LieOn.Diagonal,
            "one-half" => LieOn.OneHalf,
            "both-halves" => LieOn.BothHalves,
            _ => LieOn.Anywhere,
        };
        return new Spread(count, least, where, lie);
    }
}
