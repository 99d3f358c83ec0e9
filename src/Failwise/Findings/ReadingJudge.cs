using Failwise.Calculations;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Findings;

/// <summary>Judges conditions on what was measured and on what was worked out from it.</summary>
internal static class ReadingJudge
{
    /// <summary>How the readings of a quantity stand to their limits.</summary>
    public static Answer Judge(
        KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings, ReadingCondition c, IReadOnlyDictionary<string, bool> stated)
    {
        List<Reading> about =
            [.. readings.Where(r => r.Measurement.Quantity == c.Quantity && knowledge.PartIs(r.Measurement.Part, c.Part) && r.State != LimitState.NoLimit)];
        string name = $"{c.Quantity} of {knowledge.Parts[c.Part].Name}";
        if (about.Count == 0)
        {
            return Unknown($"no {name} with a limit");
        }

        LimitState wanted = c.Is switch
        {
            "above-limit" => LimitState.Above,
            "below-limit" => LimitState.Below,
            "within" => LimitState.Within,
            _ => LimitState.TooClose,
        };

        // What is too close to call proves neither that the part is good nor that it is bad.
        List<Reading> telling = [.. about.Where(r => r.State != LimitState.TooClose || wanted == LimitState.TooClose)];
        if (telling.Count == 0)
        {
            return Unknown($"{name} is too close to its limit to call");
        }

        if (c.Spread.Where == WhereAlong.WorseAlongFeed)
        {
            return WorseAlongFeed(teardown, telling, wanted, name);
        }

        // A reading is a look with a number: the position logic of sightings applies to it unchanged.
        Observation[] looks = [.. telling.Select(r => LookOf(r, c.Part, r.State == wanted))];
        SightingCondition sighting = new(c.Part, ["reading"], [], Extent.Unstated, c.Spread, c.At);
        Answer answer = new SightingJudge(knowledge, teardown, looks, sighting, stated).Judge();
        return answer with { Reasons = [.. answer.Reasons.Select(r => r with { Kind = "reading" })] };
    }

    /// <summary>What a calculation on the figures of the case gave.</summary>
    public static Answer Judge(KnowledgeBase knowledge, IReadOnlyList<WorkedNumber> calculations, ResultCondition c)
    {
        (WorkedNumber Worked, OutputValue Value)[] about =
        [
            .. calculations.Where(w => w.Result.Calculation.Id == c.Calculation && (c.Part is null || (w.Request.Part is { } part && knowledge.PartIs(part, c.Part))))
                .Select(w => (w, w.Result[c.Output])).Where(x => x.Item2 is not null).Select(x => (x.w, x.Item2!)),
        ];
        if (about.Length == 0)
        {
            return Unknown($"no {c.Output} by {c.Calculation}{(c.Part is { } p ? " for " + knowledge.Parts[p].Name : "")}");
        }

        (WorkedNumber Worked, OutputValue Value)[] holding = Array.FindAll(about, x => Holds(x.Value, c));
        return new Answer(
            holding.Length > 0 ? Truth.Holds : Truth.Contradicted,
            [.. (holding.Length > 0 ? holding : about).Select(x => new Reason("calculation", x.Worked.Number.ToString()))], [], 1000);
    }

    private static bool Holds(OutputValue value, ResultCondition c) => c.Is is { } word
        ? string.Equals(value.Text, word, StringComparison.OrdinalIgnoreCase)
        : value.Number is { } number && (c.Below is null || number < c.Below) && (c.Above is null || number > c.Above);

    private static Observation LookOf(Reading r, string part, bool isHit) => new(
        r.Number, part, isHit ? Look.Seen : Look.Sound, isHit ? "reading" : null, r.Measurement.Places.Count > 0 ? At.Numbers : At.Unsaid,
        r.Measurement.Places, r.Measurement.On, Extent.Unstated, 1000, null, null, null, null, r.Measurement.At);

    /// <summary>
    /// The values themselves tell here, not only which of them is beyond: they get worse from the first journal that the oil reaches to
    /// the last, and the last is beyond its limit.
    /// </summary>
    private static Answer WorseAlongFeed(TeardownCase teardown, List<Reading> readings, LimitState wanted, string name)
    {
        Reading[] order =
        [
            .. readings.Where(r => r.Measurement.Places.Count == 1).OrderBy(r => FeedPath.PlaceIn(teardown.Machine, r.Measurement.Places[0])),
        ];
        Reason[] reasons = [.. order.Select(r => new Reason("reading", r.Number.ToString()))];
        if (order.Length < 2)
        {
            return Unknown($"{name} at other places");
        }

        double sign = wanted == LimitState.Below ? -1 : 1;
        double[] worse = [.. order.Select(r => sign * r.Value.In(order[0].Value.Unit.Symbol))];
        int agree = 0, differ = 0;
        for (int i = 0; i < worse.Length; i++)
        {
            agree += worse.Skip(i + 1).Count(later => later > worse[i]);
            differ += worse.Skip(i + 1).Count(later => later < worse[i]);
        }

        bool holds = order[^1].State == wanted && worse[^1] > worse[0] && worse[^1].Equals(worse.Max()) && agree > 2 * differ;
        return new Answer(holds ? Truth.Holds : Truth.Contradicted, reasons, [], 1000);
    }

    private static Answer Unknown(string missing) => new(Truth.Unknown, [], [missing], 1000);
}

/// <summary>The order in which the oil reaches the places of a machine.</summary>
internal static class FeedPath
{
    /// <summary>Rank of a place on the feed; places that the feed does not name follow by number.</summary>
    public static int PlaceIn(Machine machine, int place) => machine.Feed?.IndexOf(place) is >= 0 and var i ? i : 1000 + place;
}
