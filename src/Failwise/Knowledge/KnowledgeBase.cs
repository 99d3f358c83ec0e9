using System.Runtime.InteropServices;
using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>Everything that is known about parts, patterns, causes and work. Immutable; all references resolve.</summary>
public sealed class KnowledgeBase
{
    private readonly Dictionary<string, string[]> partLine;
    private readonly Dictionary<string, string[]> patternLine;
    private readonly Dictionary<string, string[]> symptomLine;
    private readonly Lazy<KnownMarks> marks;

    // Only a case or a search asks for words, and folding some thousand of them costs more than reading a small case.
    private readonly Lazy<WordIndex> partWords;
    private readonly Lazy<WordIndex> patternWords;
    private readonly Lazy<WordIndex> historyWords;
    private readonly Lazy<WordIndex> symptomWords;
    private readonly Lazy<WordIndex> featureWords;
    private readonly Lazy<WordIndex> machineWords;
    private readonly Lazy<WordIndex> placeWords;

    private readonly Lazy<IReadOnlySet<string>> quantities;
    private readonly Lazy<StatementScope> scope;
    private readonly Lazy<WordRarity> rarity;
    private readonly Lazy<IReadOnlyList<RuleFile>> files;

    /// <param name="parts">What the knowledge base is made of.</param>
    /// <param name="files">The files it was made from, fetched only when somebody asks for them.</param>
    internal KnowledgeBase(KnowledgeParts parts, Func<IReadOnlyList<RuleFile>> files)
    {
        Content = parts;
        this.files = new Lazy<IReadOnlyList<RuleFile>>(files);
        Parts = parts.Parts;
        Patterns = parts.Patterns;
        Circumstances = parts.Circumstances;
        Symptoms = parts.Symptoms;
        Features = parts.Features;
        Machines = parts.Machines;
        Covers = parts.Covers;
        Questions = parts.Questions;
        AskedOf = parts.AskedOf;
        Axes = parts.Axes;
        Codes = parts.Codes;
        Sources = parts.Sources;
        Findings = parts.Findings;
        Causes = parts.Causes;
        Work = parts.Work;
        Decisions = parts.Decisions;
        Downstream = parts.Downstream;
        Sheets = parts.Sheets;
        Fits = parts.Fits;
        Limits = parts.Limits;
        Sureness = parts.Sureness;
        Counts = parts.Counts;
        ExtentWeights = parts.ExtentWeights;
        partLine = Lines(Parts, p => p.KindOf);
        patternLine = Lines(Patterns, p => p.KindOf);
        symptomLine = Lines(Symptoms, s => s.KindOf);
        marks = new Lazy<KnownMarks>(() => new KnownMarks(this));
        partWords = new Lazy<WordIndex>(() => new WordIndex(Parts.Values.SelectMany(p => p.Words.Append(p.Name).Append(p.Id).Select(w => (w, p.Id)))));
        patternWords = new Lazy<WordIndex>(() => new WordIndex(Patterns.Values.SelectMany(p => p.Words.Append(p.Name).Append(p.Id).Select(w => (w, p.Id)))));
        historyWords = new Lazy<WordIndex>(() => new WordIndex(Circumstances.Values.SelectMany(c => c.Words.Append(c.Id).Select(w => (w, c.Id)))));
        symptomWords = new Lazy<WordIndex>(() => new WordIndex(Symptoms.Values.SelectMany(c => c.Words.Append(c.Id).Select(w => (w, c.Id)))));
        featureWords = new Lazy<WordIndex>(() => new WordIndex(Features.Values.SelectMany(c => c.Words.Append(c.Id).Select(w => (w, c.Id)))));
        machineWords = new Lazy<WordIndex>(() => new WordIndex(Machines.Values.SelectMany(c => c.Words.Append(c.Name).Append(c.Id).Select(w => (w, c.Id)))));
        placeWords = new Lazy<WordIndex>(() => new WordIndex(Axes.SelectMany(a => a.Words.Select(w => (w, w)).Concat(a.Also.Select(kv => (kv.Key, kv.Value))))));
        scope = new Lazy<StatementScope>(() => new StatementScope(AskedOf.Values, Causes.Values));
        rarity = new Lazy<WordRarity>(() => WordSearch.Rarity(this));
        quantities = new Lazy<IReadOnlySet<string>>(() => new HashSet<string>(
        [
            "diameter", "taper", "out-of-round", .. Fits.Select(f => f.Clearance).OfType<string>(), .. Limits.Values.SelectMany(l => l.Rows).Select(r => r.Quantity),
            .. Findings.Values.Select(f => f.When).Concat(Circumstances.Values.Select(c => c.When).OfType<Condition>())
                .SelectMany(Condition.Atoms).OfType<ReadingCondition>().Select(c => c.Quantity),
        ], StringComparer.Ordinal));
        AxisOf = Axes.SelectMany(a => a.Words.Select(w => (w, a.Id))).GroupBy(x => x.w, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First().Id, StringComparer.Ordinal);
    }

    public IReadOnlyDictionary<string, Part> Parts { get; }

    public IReadOnlyDictionary<string, Pattern> Patterns { get; }

    public IReadOnlyDictionary<string, Circumstance> Circumstances { get; }

    public IReadOnlyDictionary<string, Symptom> Symptoms { get; }

    public IReadOnlyDictionary<string, Feature> Features { get; }

    public IReadOnlyDictionary<string, MachineKind> Machines { get; }

    /// <summary>What has to come off before a part is seen.</summary>
    public IReadOnlyDictionary<string, Cover> Covers { get; }

    /// <summary>What experienced people ask back when a case leaves it open.</summary>
    public IReadOnlyDictionary<string, IntakeQuestion> Questions { get; }

    /// <summary>Which machines symptoms and history words are about, where their causes do not say it.</summary>
    public IReadOnlyDictionary<string, AskedOf> AskedOf { get; }

    public IReadOnlyList<PlaceAxis> Axes { get; }

    /// <summary>Short codes of parts, places and patterns.</summary>
    public IReadOnlyList<ShortCode> Codes { get; }

    public IReadOnlyDictionary<string, Source> Sources { get; }

    public IReadOnlyDictionary<string, FindingRule> Findings { get; }

    public IReadOnlyDictionary<string, Cause> Causes { get; }

    public IReadOnlyDictionary<string, WorkRule> Work { get; }

    public IReadOnlyDictionary<string, DecisionRule> Decisions { get; }

    public IReadOnlyDictionary<string, DownstreamRule> Downstream { get; }

    public IReadOnlyDictionary<string, SheetRule> Sheets { get; }

    /// <summary>Which shaft runs in which bore.</summary>
    public IReadOnlyList<Fit> Fits { get; }

    /// <summary>Published example limits, used only where a case names them.</summary>
    public IReadOnlyDictionary<string, LimitSet> Limits { get; }

    /// <summary>Likelihood ratio of an observer who is sure, fairly sure or doubtful, at least 1.</summary>
    public IReadOnlyDictionary<string, double> Sureness { get; }

    /// <summary>How common the usual root is (usual-root) and how far a written count is believed against it (trust); empty: as written.</summary>
    public IReadOnlyDictionary<string, double> Counts { get; }

    /// <summary>Weight of a mark as evidence by its extent, 0 to 1.</summary>
    public IReadOnlyDictionary<Extent, double> ExtentWeights { get; }

    /// <summary>What rules speak of on which part.</summary>
    internal KnownMarks Marks => marks.Value;

    /// <summary>
    /// The pattern that a word means on a part: an id means itself; where several are called so, the one that something leaves there is meant; null
    /// when nothing is called so.
    /// </summary>
    internal string? PatternOn(string part, string written) =>
        Suggest.Fold(written) is var id && Patterns.ContainsKey(id) ? id : PatternWords.Find(written, pattern => Marks.FitOn(part, pattern));

    internal WordIndex PartWords => partWords.Value;

    internal WordRarity Rarity => rarity.Value;

    /// <summary>0 when a symptom or history word is about other machines than one of these kinds with these features, 2 when it is about just such, else 1.</summary>
    internal int FitOf(string statement, IReadOnlyList<string> kinds, IReadOnlyCollection<string> features) => scope.Value.Fit(statement, kinds, features);

    internal WordIndex PatternWords => patternWords.Value;

    internal WordIndex HistoryWords => historyWords.Value;

    internal WordIndex SymptomWords => symptomWords.Value;

    internal WordIndex FeatureWords => featureWords.Value;

    internal WordIndex MachineWords => machineWords.Value;

    internal WordIndex PlaceWords => placeWords.Value;

    /// <summary>Quantities that some rule, fit or limit speaks of.</summary>
    internal IReadOnlySet<string> Quantities => quantities.Value;

    internal IReadOnlyDictionary<string, string> AxisOf { get; }

    /// <summary>Reads a rule folder, laid over a base when one is given.</summary>
    /// <exception cref="ProblemsException">The files have errors; all of them are listed.</exception>
    public static KnowledgeBase Load(string folder, KnowledgeBase? under = null)
    {
        KnowledgeReading reading = KnowledgeReader.Read(folder, under?.Files);
        return reading.Knowledge ?? throw new ProblemsException(reading.Problems);
    }

    internal KnowledgeParts Content { get; }

    internal IReadOnlyList<RuleFile> Files => files.Value;

    /// <summary>True when <paramref name="part"/> is <paramref name="broader"/> or a kind of it.</summary>
    public bool PartIs(string part, string broader) => Array.IndexOf(partLine[part], broader) >= 0;

    /// <summary>True when <paramref name="pattern"/> is <paramref name="broader"/> or a kind of it.</summary>
    public bool PatternIs(string pattern, string broader) => Array.IndexOf(patternLine[pattern], broader) >= 0;

    /// <summary>True when <paramref name="symptom"/> is <paramref name="broader"/> or a kind of it.</summary>
    public bool SymptomIs(string symptom, string broader) => Array.IndexOf(symptomLine[symptom], broader) >= 0;

    /// <summary>The part itself, then ever broader ones.</summary>
    internal IReadOnlyList<string> PartLine(string part) => partLine[part];

    internal IReadOnlyList<string> PatternLine(string pattern) => patternLine[pattern];

    private static Dictionary<string, string[]> Lines<T>(IReadOnlyDictionary<string, T> all, Func<T, IReadOnlyList<string>> broader)
    {
        Dictionary<string, string[]> lines = new(StringComparer.Ordinal);
        foreach (string id in all.Keys)
        {
            List<string> line = [id];
            for (int i = 0; i < line.Count; i++)
            {
                line.AddRange(broader(all[line[i]]).Where(b => !line.Contains(b) && all.ContainsKey(b)));
            }

            lines[id] = [.. line];
        }

        return lines;
    }
}

/// <summary>The raw material of a knowledge base.</summary>
internal sealed record KnowledgeParts
{
    public Dictionary<string, Part> Parts { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Pattern> Patterns { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Circumstance> Circumstances { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Symptom> Symptoms { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Feature> Features { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, MachineKind> Machines { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Cover> Covers { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, IntakeQuestion> Questions { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, AskedOf> AskedOf { get; } = new(StringComparer.Ordinal);

    public List<PlaceAxis> Axes { get; } = [];

    public List<ShortCode> Codes { get; } = [];

    public Dictionary<string, Source> Sources { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, FindingRule> Findings { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Cause> Causes { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, WorkRule> Work { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, DecisionRule> Decisions { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, DownstreamRule> Downstream { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, SheetRule> Sheets { get; } = new(StringComparer.Ordinal);

    public List<Fit> Fits { get; } = [];

    public Dictionary<string, LimitSet> Limits { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, double> Sureness { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, double> Counts { get; } = new(StringComparer.Ordinal);

    public Dictionary<Extent, double> ExtentWeights { get; } = [];
}

/// <summary>Finds an id from what a person wrote: the id, the name or a synonym, whatever the case and the hyphens.</summary>
internal sealed class WordIndex
{
    private readonly Dictionary<string, string[]> byWord = new(StringComparer.Ordinal);

    public WordIndex(IEnumerable<(string Word, string Id)> words)
    {
        List<(string Word, string Id)> all = [.. words];
        byWord.EnsureCapacity(all.Count);
        // An id stands before what others call the same.
        foreach ((_, string id) in all)
        {
            Add(id, id);
        }

        foreach ((string word, string id) in all)
        {
            Add(Suggest.Fold(word), id);
        }
    }

    private void Add(string word, string id)
    {
        ref string[]? ids = ref CollectionsMarshal.GetValueRefOrAddDefault(byWord, word, out _);
        ids = ids is null ? [id] : Array.IndexOf(ids, id) >= 0 ? ids : [.. ids, id];
    }

    public IReadOnlyCollection<string> Words => byWord.Keys;

    /// <summary>The id that is meant; null when nothing is called so.</summary>
    public string? Find(string written) => All(written) is [string first, ..] ? first : null;

    /// <summary>Where several are called so, the first of those that fit best.</summary>
    public string? Find(string written, Func<string, double> fit) => All(written) switch { [] => null, [string only] => only, var all => all.MaxBy(fit) };

    private string[] All(string written)
    {
        if (byWord.TryGetValue(written, out string[]? ids))
        {
            return ids;
        }

        string folded = Suggest.Fold(written);
        return byWord.TryGetValue(folded, out ids)
            || (folded.EndsWith('s') && byWord.TryGetValue(folded[..^1], out ids))
            || byWord.TryGetValue(folded + "s", out ids) ? ids : [];
    }
}
