using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Units;

namespace Failwise.Cases;

/// <summary>
/// Asks about readings that look like a slip of hand or eye. Nothing is corrected: the case is read as written, and a warning asks the
/// person who measured.
/// </summary>
internal static class SlipCheck
{
    /// <summary>Compares every reading with its limit, its new size, its neighbours and its partner.</summary>
    public static void Run(
        KnowledgeBase knowledge, IReadOnlyList<Measurement> all, IReadOnlyList<IReadOnlyList<LimitRow>> tables, ProblemList problems)
    {
        foreach (Measurement m in all)
        {
            IReadOnlyList<Spot> spots = SpotsOf(m);
            LimitRow? row = LimitLookup.Find(knowledge, tables, m.Part, m.Quantity);
            Span limit = Span.Of(m.Limit?.Min ?? (m.Limit is null ? row?.Min : null), m.Limit?.Max ?? (m.Limit is null ? row?.Max : null));
            Span asNew = Span.Of(m.New?.Min ?? row?.NewMin, m.New?.Max ?? row?.NewMax);
            foreach (Spot spot in spots)
            {
                Slip? slip = OfUnits(spot.Value, asNew.IsEmpty ? limit : asNew)
                    ?? OfNeighbours(m, spot, Neighbours(all, m, spot))
                    ?? OfNew(knowledge, m, spot.Value, asNew);
                if (slip is not null)
                {
                    problems.Warning("FW060", spot.At, slip.Question);
                }
            }
        }

        AskOfPairs(knowledge, all, problems);
    }

    private static IReadOnlyList<Spot> SpotsOf(Measurement m) => m.Spots.Count > 0 ? m.Spots : [new Spot("1", "1", QuantityParser.Reread(m.Value), m.At)];

    private static Slip? OfUnits(Quantity value, Span expected) => expected.Measures(value.Unit.Dimension)
        ? value.Unit.Dimension switch
        {
            Dimension.Length => SlipDetector.InchForMillimetre(value, expected.Low, expected.High),
            Dimension.Torque => SlipDetector.FootForInchPounds(value, expected.Low, expected.High),
            _ => null,
        }
        : null;

    /// <summary>Every other reading of the same kind of part.</summary>
    private static Quantity[] Neighbours(IReadOnlyList<Measurement> all, Measurement m, Spot spot) =>
    [
        .. all.Where(o => o.Part == m.Part && o.Quantity == m.Quantity && !(ReferenceEquals(o, m) && m.Spots.Count == 0)).SelectMany(SpotsOf)
            .Where(s => !ReferenceEquals(s, spot)).Select(s => s.Value).Where(v => v.Unit.Dimension == Dimension.Length).OrderBy(v => v.In("mm")),
    ];

    private static Slip? OfNeighbours(Measurement m, Spot spot, Quantity[] others)
    {
        if (m.Quantity != ReadingReader.Diameter || others.Length < 2 || spot.Value.Unit.Dimension != Dimension.Length)
        {
            return null;
        }

        // The odd one out is asked about, not those that agree with each other.
        Quantity low = others[(others.Length - 1) / 2], high = others[others.Length / 2];
        double middle = low.In("mm");
        double spreadMm = 2 * others.Select(o => Math.Abs(o.In("mm") - middle)).Order().ElementAt(others.Length / 2);
        if (high.In("mm") - middle > MostSpreadMm)
        {
            return null;
        }

        Quantity spread = Quantity.Worked(Math.Max(spreadMm, LeastSpreadMm), UnitTable.Get("mm"));
        return SlipDetector.ThimbleTurn(spot.Value, low, spread) ?? SlipDetector.InchForMillimetre(spot.Value, low);
    }

    // Two honest readings of one journal seldom lie further apart than this; common practice, no source.
    private const double LeastSpreadMm = 0.03;
    private const double MostSpreadMm = 0.1;

    private static Slip? OfNew(KnowledgeBase knowledge, Measurement m, Quantity value, Span asNew)
    {
        if (m.Quantity != ReadingReader.Diameter || !asNew.Measures(Dimension.Length) || value.Unit.Dimension != Dimension.Length)
        {
            return null;
        }

        bool shaft = knowledge.Fits.Any(f => f.Shaft is { } s && knowledge.PartIs(m.Part, s));
        bool bore = knowledge.Fits.Any(f => knowledge.PartIs(m.Part, f.Bore));
        return shaft && !bore && asNew.High is { } most ? SlipDetector.ShaftLargerThanNew(value, most)
            : bore && !shaft && asNew.Low is { } least ? SlipDetector.BoreSmallerThanNew(value, least) : null;
    }

    private static void AskOfPairs(KnowledgeBase knowledge, IReadOnlyList<Measurement> all, ProblemList problems)
    {
        Measurement[] diameters = [.. all.Where(m => m.Quantity == ReadingReader.Diameter && SpotsOf(m).All(s => s.Value.Unit.Dimension == Dimension.Length))];
        foreach (Fit fit in knowledge.Fits.Where(f => f.Shaft is not null))
        {
            foreach (Measurement shaft in diameters.Where(m => knowledge.PartIs(m.Part, fit.Shaft!)))
            {
                Measurement? bore = Array.Find(diameters, m => knowledge.PartIs(m.Part, fit.Bore) && m.Places.SequenceEqual(shaft.Places));
                if (bore is not null && SlipDetector.Swapped(Middle(shaft), Middle(bore)) is { } slip)
                {
                    problems.Warning("FW060", shaft.At, slip.Question);
                }
            }
        }
    }

    private static Quantity Middle(Measurement m)
    {
        IReadOnlyList<Spot> spots = SpotsOf(m);
        return spots.Select(s => s.Value).OrderBy(v => v.In("mm")).ElementAt(spots.Count / 2);
    }

    /// <summary>What a value should lie between; an end that is not known is null.</summary>
    private readonly record struct Span(Quantity? Low, Quantity? High)
    {
        public bool IsEmpty => Low is null && High is null;

        /// <summary>Something is known, and it can be compared with a value of that dimension.</summary>
        public bool Measures(Dimension dimension) =>
            !IsEmpty && (Low?.Unit.Dimension ?? dimension) == dimension && (High?.Unit.Dimension ?? dimension) == dimension;

        public static Span Of(string? low, string? high) => new(low is null ? null : QuantityParser.Reread(low), high is null ? null : QuantityParser.Reread(high));
    }
}
