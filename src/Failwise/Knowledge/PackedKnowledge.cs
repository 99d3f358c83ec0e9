using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>
/// The knowledge base in packed form, ready to use: the shipped rules travel so, because shaping and checking some thousand small files at
/// every start would take longer than the diagnosis. Each record is declared once, for packing and for unpacking. Examples of findings stay
/// out: only the rule check needs them, and it reads the files themselves.
/// </summary>
internal static class PackedKnowledge
{
    public static byte[] Pack(KnowledgeBase knowledge)
    {
        PackCodec codec = new();
        Run(codec, knowledge.Content);
        return codec.Packed();
    }

    /// <param name="packed">What <see cref="Pack"/> gave.</param>
    /// <param name="files">The files behind it, fetched only when somebody asks for them.</param>
    /// <exception cref="InvalidDataException">The rules were packed by another version.</exception>
    public static KnowledgeBase Unpack(byte[] packed, Func<IReadOnlyList<RuleFile>> files)
    {
        KnowledgeParts parts = new();
        Run(new PackCodec(packed), parts);
        return new KnowledgeBase(parts, files);
    }

    private static void Run(PackCodec codec, KnowledgeParts parts)
    {
        codec.Map(parts.Machines, Machine);
        codec.Map(parts.Features, FeatureOf);
        IReadOnlyList<PlaceAxis> axes = codec.List(parts.Axes, Axis);
        if (parts.Axes.Count == 0)
        {
            parts.Axes.AddRange(axes);
        }

        IReadOnlyList<ShortCode> codes = codec.List(parts.Codes, static (c, s) => new ShortCode(c.Text(s?.Code), c.Text(s?.Kind), c.Text(s?.Id), c.At(s?.At ?? default)));
        if (parts.Codes.Count == 0)
        {
            parts.Codes.AddRange(codes);
        }

        codec.Map(parts.Sureness, static (c, v) => c.Real(v));
        codec.Map(parts.Counts, static (c, v) => c.Real(v));
        Dictionary<string, double> extents = parts.ExtentWeights.ToDictionary(e => e.Key.ToString(), e => e.Value, StringComparer.Ordinal);
        codec.Map(extents, static (c, v) => c.Real(v));
        foreach ((string extent, double weight) in extents)
        {
            parts.ExtentWeights[Enum.Parse<Extent>(extent)] = weight;
        }

        codec.Map(parts.Parts, PartOf);
        codec.Map(parts.Covers, CoverOf);
        codec.Map(parts.Questions, QuestionOf);
        codec.Map(parts.AskedOf, AskedOfOf);
        codec.Map(parts.Patterns, PatternOf);
        codec.Map(parts.Circumstances, CircumstanceOf);
        codec.Map(parts.Symptoms, SymptomOf);
        codec.Map(parts.Sources, SourceOf);
        codec.Map(parts.Findings, FindingOf);
        codec.Map(parts.Causes, CauseOf);
        codec.Map(parts.Work, PackedWork.Work);
        codec.Map(parts.Decisions, PackedWork.Decision);
        codec.Map(parts.Downstream, PackedWork.Downstream);
        codec.Map(parts.Sheets, PackedWork.Sheet);
        codec.Map(parts.Limits, LimitSetOf);
        IReadOnlyList<Fit> fits = codec.List(parts.Fits, FitOf);
        if (parts.Fits.Count == 0)
        {
            parts.Fits.AddRange(fits);
        }
    }

    private static MachineKind Machine(PackCodec c, MachineKind? m) => new(c.Text(m?.Id), c.Text(m?.Name), c.Texts(m?.Words));

    private static Feature FeatureOf(PackCodec c, Feature? f)
    {
        (string id, string? choice, string says, IReadOnlyList<string> words) = (c.Text(f?.Id), c.MaybeText(f?.Choice), c.Text(f?.Says), c.Texts(f?.Words));
        Dictionary<string, double> share = f is null ? new(StringComparer.Ordinal) : new(f.Share, StringComparer.Ordinal);
        c.Map(share, static (codec, value) => codec.Real(value));
        return new Feature(id, choice, says, words, share, c.Texts(f?.ShownBy));
    }

    private static Cover CoverOf(PackCodec c, Cover? x) => new(c.Text(x?.Id), c.Text(x?.Says), c.Real(x?.Minutes ?? 0), c.Texts(x?.Behind), c.At(x?.At ?? default));

    private static IntakeQuestion QuestionOf(PackCodec c, IntakeQuestion? q) => new(
        c.Text(q?.Id), c.Text(q?.Asks), c.MaybeText(q?.Why), c.MaybeText(q?.Answer), c.Real(q?.Minutes ?? 0), c.Texts(q?.Machines),
        c.List(q?.When, static (c, g) => new GapTrigger(
            (GapKind)c.Number((int)(g?.Gap ?? 0)), c.Texts(g?.Parts), c.Texts(g?.See), c.Texts(g?.Symptoms), c.Texts(g?.History), c.Real(g?.Worth ?? 0))),
        c.Texts(q?.Covers), c.Texts(q?.LooksAt), c.MaybeText(q?.Access), c.Texts(q?.Shows), c.Texts(q?.KnownParts), c.Texts(q?.KnownPatterns), c.Texts(q?.KnownSymptoms), c.Texts(q?.KnownHistory), c.Flag(q?.KnownByReading ?? false),
        Sources(c, q?.Sources), c.At(q?.At ?? default)) { NotWith = c.Texts(q?.NotWith) };

    private static AskedOf AskedOfOf(PackCodec c, AskedOf? a) => new(
        c.Text(a?.Id), c.Texts(a?.Words), c.Texts(a?.Parts), c.Texts(a?.Machines), c.Texts(a?.NotWith), Sources(c, a?.Sources), c.At(a?.At ?? default));

    private static PlaceAxis Axis(PackCodec c, PlaceAxis? a)
    {
        string id = c.Text(a?.Id);
        IReadOnlyList<string> words = c.Texts(a?.Words);
        Dictionary<string, string> also = a is null ? new(StringComparer.Ordinal) : new(a.Also, StringComparer.Ordinal);
        c.Map(also, static (codec, text) => codec.Text(text));
        return a ?? new PlaceAxis(id, words, also);
    }

    private static Part PartOf(PackCodec c, Part? p) => new(
        c.Text(p?.Id), c.Text(p?.Name), c.Texts(p?.KindOf), c.Texts(p?.Words), c.MaybeText(p?.Count), c.Texts(p?.Machines), c.Texts(p?.Needs), c.Texts(p?.Places),
        c.MaybeText(p?.Access), c.Real(p?.Minutes ?? 0), c.Text(p?.Group), c.At(p?.At ?? default)) 
    {
        OrderedAs = c.MaybeText(p?.OrderedAs), Says = c.MaybeText(p?.Says), Each = c.Number(p?.Each ?? 0) is > 0 and var each ? each : null,
    };

    private static Pattern PatternOf(PackCodec c, Pattern? p) => new(
        c.Text(p?.Id), c.Text(p?.Name), c.Text(p?.Says), c.Texts(p?.Words), c.Texts(p?.KindOf), c.Real(p?.SeenAnyway ?? 0), c.Flag(p?.Sound ?? false),
        c.List(p?.Classes, static (c, s) => new StandardClass(c.Text(s?.Standard), c.Text(s?.Class))), LookAlikes(c, p?.LookAlikes),
        c.Maybe(p?.Check, Look), Sources(c, p?.Sources), c.At(p?.At ?? default));

    private static Circumstance CircumstanceOf(PackCodec c, Circumstance? x) => new(
        c.Text(x?.Id), c.Text(x?.Says), c.MaybeText(x?.Ask), c.Texts(x?.Words), c.Real(x?.HowCommon ?? 0), c.Maybe(x?.When, ConditionOf),
        Sources(c, x?.Sources), c.At(x?.At ?? default));

    private static Symptom SymptomOf(PackCodec c, Symptom? s) => new(
        c.Text(s?.Id), c.Text(s?.Says), c.MaybeText(s?.Ask), c.Texts(s?.Words), c.Texts(s?.KindOf), c.Real(s?.SeenAnyway ?? 0), Sources(c, s?.Sources),
        c.At(s?.At ?? default));

    private static Source SourceOf(PackCodec c, Source? s) => new(
        c.Text(s?.Id), c.Text(s?.Title), c.MaybeText(s?.Issuer), c.MaybeText(s?.Year), c.MaybeText(s?.Place), c.MaybeText(s?.Grade),
        c.MaybeText(s?.Read), c.At(s?.At ?? default));

    private static FindingRule FindingOf(PackCodec c, FindingRule? f) => new(
        c.Text(f?.Id), c.Text(f?.Says), (FindingRole)c.Number((int)(f?.Role ?? 0)), c.List(f?.Refines, SignOf), ConditionOf(c, f?.When),
        c.Real(f?.SeenAnyway ?? 0), c.MaybeText(f?.Why), LookAlikes(c, f?.LookAlikes), c.Maybe(f?.Check, Look), Sources(c, f?.Sources),
        c.Text(f?.Status), c.At(f?.At ?? default));

    private static Cause CauseOf(PackCodec c, Cause? x) => new(
        c.Text(x?.Id), c.Text(x?.Title), c.Flag(x?.IsRoot ?? false), c.Text(x?.Group), c.Text(x?.Says), c.Texts(x?.Machines), c.Texts(x?.Needs),
        c.Texts(x?.GivesWayTo), c.Real(x?.HowCommon ?? 0), c.List(x?.Leaves, Link), c.List(x?.LeadsTo, Link), c.List(x?.RaisedBy, Link), LookAlikes(c, x?.LooksLike),
        c.MaybeText(x?.Prove), c.Text(x?.Status), Sources(c, x?.Sources), c.At(x?.At ?? default));

    private static CauseLink Link(PackCodec c, CauseLink? l) => new(
        (LinkTarget)c.Number((int)(l?.Target ?? 0)), c.Text(l?.Id), c.Maybe(l?.Sign, SignOf), c.Real(l?.Strength ?? 0), c.Text(l?.Word),
        Sources(c, l?.Sources), c.MaybeText(l?.Note), c.At(l?.At ?? default));

    private static Fit FitOf(PackCodec c, Fit? f) => new(
        c.Text(f?.Bore), c.MaybeText(f?.Shaft), c.MaybeText(f?.Clearance), c.MaybeText(f?.Of), c.At(f?.At ?? default));

    private static LimitSet LimitSetOf(PackCodec c, LimitSet? l) => new(
        c.Text(l?.Id), c.Text(l?.Title),
        c.List(l?.Rows, static (c, r) => new LimitRow(
            c.Text(r?.Part), c.Text(r?.Quantity), c.MaybeText(r?.Min), c.MaybeText(r?.Max), c.MaybeText(r?.NewMin), c.MaybeText(r?.NewMax),
            c.Text(r?.From), c.Flag(r?.Example ?? false), c.At(r?.At ?? default))),
        Sources(c, l?.Sources), c.At(l?.At ?? default));

    private static LookHint Look(PackCodec c, LookHint? l) => new(c.Text(l?.How), c.MaybeText(l?.Tool), c.Real(l?.Minutes ?? 0), c.Texts(l?.LostBy), c.Flag(l?.Destroys ?? false));

    private static IReadOnlyList<LookAlike> LookAlikes(PackCodec c, IReadOnlyList<LookAlike>? all) =>
        c.List(all, static (c, l) => new LookAlike(c.Text(l?.Id), c.Text(l?.Tell)));

    internal static IReadOnlyList<SourceRef> Sources(PackCodec c, IReadOnlyList<SourceRef>? all) => c.List(all, SourceRefOf);

    internal static SourceRef SourceRefOf(PackCodec c, SourceRef? s) => new(c.Text(s?.Id), c.MaybeText(s?.At));

    private static Sign SignOf(PackCodec c, Sign? s) => new(c.Text(s?.Part), c.Text(s?.Pattern));

    private static Condition ConditionOf(PackCodec c, Condition? condition)
    {
        int kind = c.Number(condition switch { null => 0, AllOf => 1, AnyOf => 2, NoneOf => 3, SightingCondition => 4, StatedCondition => 5, NumberCondition => 6, ResultCondition => 8, _ => 7 });
        Location at = c.At(condition?.At ?? default);
        switch (kind)
        {
            case 1:
                return new AllOf(c.List((condition as AllOf)?.Parts, ConditionOf), at);
            case 2:
                return new AnyOf(c.List((condition as AnyOf)?.Parts, ConditionOf), at);
            case 3:
                return new NoneOf(c.List((condition as NoneOf)?.Parts, ConditionOf), at);
            case 4:
                SightingCondition? seen = condition as SightingCondition;
                return new SightingCondition(c.Text(seen?.Part), c.Texts(seen?.See), c.Texts(seen?.On), (Extent)c.Number((int)(seen?.AtLeast ?? 0)), SpreadOf(c, seen?.Spread ?? default), at);
            case 5:
                StatedCondition? stated = condition as StatedCondition;
                return new StatedCondition((StatedKind)c.Number((int)(stated?.Kind ?? 0)), c.Text(stated?.Id), at);
            case 6:
                NumberCondition? number = condition as NumberCondition;
                return new NumberCondition(c.Text(number?.Number), c.MaybeReal(number?.Below), c.MaybeReal(number?.Above), at);
            case 8:
                ResultCondition? result = condition as ResultCondition;
                return new ResultCondition(
                    c.Text(result?.Calculation), c.Text(result?.Output), c.MaybeText(result?.Part), c.MaybeReal(result?.Below),
                    c.MaybeReal(result?.Above), c.MaybeText(result?.Is), at);
            default:
                ReadingCondition? reading = condition as ReadingCondition;
                return new ReadingCondition(c.Text(reading?.Quantity), c.Text(reading?.Part), c.Text(reading?.Is), SpreadOf(c, reading?.Spread ?? default), at);
        }
    }

    private static Spread SpreadOf(PackCodec c, Spread s) =>
        new((CountOver)c.Number((int)s.Count), c.Number(s.Least), (WhereAlong)c.Number((int)s.Where), (LieOn)c.Number((int)s.Lie));
}
