using Failwise.Calculations;
using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Measurements;

/// <summary>Works the calculations for which a case gives figures, and says what is missing for those that were only begun.</summary>
internal static class NumberWorker
{
    /// <summary>Every calculation that was begun, in the order of the case and of the sheet.</summary>
    public static IReadOnlyList<WorkedNumber> Work(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings)
    {
        List<WorkedNumber> worked = [];
        foreach (NumberRequest request in teardown.Requests)
        {
            MeasuredFeeds measured = new(knowledge, teardown, readings, request);
            List<CalculationResult> done = [];
            foreach (SheetStep step in SheetCatalog.Find(request.WorkOut)!.Steps.Where(s => s.StartedBy.Any(request.Given.ContainsKey)))
            {
                if (step.InsteadOf is { } first && done.Find(r => r.Calculation.Id == first) is not { Problems.Count: > 0 })
                {
                    continue;
                }

                WorkedNumber one = WorkStep(worked.Count + 1, request, step, done, measured);
                worked.Add(one);
                done.Add(one.Result);
            }
        }

        return worked;
    }

    private static WorkedNumber WorkStep(int number, NumberRequest request, SheetStep step, List<CalculationResult> done, MeasuredFeeds measured)
    {
        Dictionary<string, string> inputs = new(StringComparer.Ordinal), origins = new(StringComparer.Ordinal), shown = new(StringComparer.Ordinal);
        foreach (CalculationInput input in step.Entry.Inputs)
        {
            foreach (Feed feed in step.FeedsOf(input.Name))
            {
                if (Fetch(feed, request, done, measured) is not var (text, origin, show))
                {
                    continue;
                }

                inputs[input.Name] = text;
                if (origin is not null)
                {
                    origins[input.Name] = origin;
                    shown[input.Name] = show ?? text;
                }

                break;
            }
        }

        CalculationResult result = step.Entry.Run(inputs);
        // A figure that was handed on shows with the digits it was printed with, not with all that were carried.
        IReadOnlyList<InputEcho> echo = [.. result.Inputs.Select(i => shown.TryGetValue(i.Input.Name, out string? text) ? i with { Text = text } : i)];
        return new WorkedNumber(number, request, result with { Inputs = echo }, origins);
    }

    private static (string Text, string? Origin, string? Shown)? Fetch(Feed feed, NumberRequest request, List<CalculationResult> done, MeasuredFeeds measured)
    {
        switch (feed.Kind)
        {
            case FeedKind.Given:
                return request.Given.TryGetValue(feed.Name, out string? text) ? (text, null, null) : null;
            case FeedKind.Result:
                OutputValue? value = done.Find(r => r.Calculation.Id == feed.Name)?[feed.Output!];
                return value is null ? null : ($"{value.Number:R} {value.Output.Unit}", $"worked out by {feed.Name}", value.Text);
            case FeedKind.Measured:
                return measured.Find(feed.Name) is var (read, from, show) ? (read, from, show) : null;
            default:
                return (feed.Name, "assumed", null);
        }
    }
}

/// <summary>Readings of the case that a calculation can use.</summary>
internal sealed class MeasuredFeeds(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings, NumberRequest request)
{
    /// <summary>The reading of that kind for the part and place of the request; null when there is none.</summary>
    public (string Text, string Origin, string Shown)? Find(string kind)
    {
        if (request.Part is not { } part || knowledge.Fits.FirstOrDefault(f => f.Clearance is not null && knowledge.PartIs(part, f.Of ?? f.Bore)) is not { } fit)
        {
            return null;
        }

        return kind switch
        {
            "clearances" => All(fit),
            "clearance" => One(r => r.Measurement.Quantity == fit.Clearance && knowledge.PartIs(r.Measurement.Part, fit.Of ?? fit.Bore)),
            _ => One(r => r.Measurement.Quantity == "diameter" && fit.Shaft is { } shaft && knowledge.PartIs(r.Measurement.Part, shaft)),
        };
    }

    private (string, string, string)? One(Func<Reading, bool> fits)
    {
        Reading? reading = readings.FirstOrDefault(r => fits(r) && (request.Places.Count == 0 || r.Measurement.Places.SequenceEqual(request.Places)));
        return reading is null ? null : (TextOf(reading), $"reading {reading.Number}", reading.InBothSystems);
    }

    /// <summary>Every clearance of the part in the order in which the oil reaches the places.</summary>
    private (string, string, string)? All(Fit fit)
    {
        Reading[] all =
        [
            .. readings.Where(r => r.Measurement.Quantity == fit.Clearance && knowledge.PartIs(r.Measurement.Part, fit.Of ?? fit.Bore) && r.Measurement.Places.Count == 1)
                .DistinctBy(r => r.Measurement.Places[0]).OrderBy(r => FeedOrder(r.Measurement.Places[0])),
        ];
        return all.Length < 2 ? null
            : (string.Join("; ", all.Select(TextOf)), "readings " + string.Join(", ", all.Select(r => r.Number)), string.Join("; ", all.Select(r => r.InBothSystems)));
    }

    private int FeedOrder(int place) => teardown.Machine.Feed is { } feed && feed.ToList().IndexOf(place) is >= 0 and var i ? i : 1000 + place;

    private static string TextOf(Reading r) => $"{r.Value.Value:R} {r.Value.Unit.Symbol}";
}
