using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Tests.Measurements;

/// <summary>Whatever stands under readings, limits and numbers: problems with their place, or figures; never an exception, never NaN.</summary>
public class HostileNumbersTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    private static readonly string[] Values =
    [
        "57.94 mm", "57.94", "\"57,94 mm\"", "2.281 in", "0 mm", "-3 mm", "1e300 mm", "1e-300 mm", "NaN", "3 bar", "40 °C", "104 °F", "50 lbf·ft", "~", "[]", "{}",
        "[1, 2]", "[[1 mm], [2 bar]]", "{a-x: 1 mm, a-y: 2 mm}", "furlong", "\"\"", "1 1/2 in", "SAE 30", "15W-40", "0.05 mm", "9999999999999999999999 mm", "5 %", "1 -",
    ];

    private static readonly string[] Keys = ["value", "readings", "table", "limit", "taper", "out-of-round", "new", "unit", "uncertainty", "at", "quantity", "part"];

    [Fact]
    public void Two_thousand_cases_of_nonsense_are_read_or_refused()
    {
        Random random = new(4_711);
        int read = 0, refused = 0;
        for (int round = 0; round < 2000; round++)
        {
            string yaml = $"title: A case\nmachine: {{kind: engine, cylinders: 4, mains: 5}}\nreadings: [{Reading(random)}, {Reading(random)}, {Reading(random)}]\nnumbers: [{Figures(random)}]\n";
            CaseReading reading = Bench.Read(Knowledge, yaml);
            if (reading.Case is null)
            {
                refused++;
                reading.Problems.Should().NotBeEmpty().And.OnlyContain(p => p.At.Line > 0);
                continue;
            }

            read++;
            Measured measured = MeasurementAssessor.Assess(Knowledge, reading.Case);
            measured.Readings.Should().OnlyContain(r => double.IsFinite(r.Value.Value) && !(r.ProbabilityWithin < 0) && !(r.ProbabilityWithin > 1), because: yaml);
            measured.Calculations.SelectMany(c => c.Result.Outputs).Should().OnlyContain(o => o.Number == null || double.IsFinite(o.Number.Value), because: yaml);
        }

        read.Should().BeGreaterThan(50);
        refused.Should().BeGreaterThan(50);
    }

    private static string Reading(Random random)
    {
        if (random.Next(4) > 0)
        {
            return $"{{quantity: bearing-clearance, part: main-bearing, at: {random.Next(1, 6)}, value: 0.0{random.Next(1, 9)} mm, limit: {{max: 0.05 mm}}, uncertainty: 0.00{random.Next(1, 9)} mm}}";
        }

        string part = Pick(random, "main-journal", "main-bearing", "piston", "cylinder-liner", "rod-bolt");
        string[] more = [.. Keys.Where(k => k != "part").OrderBy(_ => random.Next()).Take(random.Next(1, 5)).Select(k => $"{k}: {(k is "limit" or "taper" or "new" ? $"{{min: {Scalar(random)}, max: {Scalar(random)}}}" : Pick(random, Values))}")];
        return $"{{part: {part}, {string.Join(", ", more)}}}";
    }

    private static string Figures(Random random)
    {
        if (random.Next(2) == 0)
        {
            return $"{{work-out: oil-gallery, part: main-bearing, given: {{grade: SAE {random.Next(1, 7)}0, oil-temperature: {random.Next(0, 151)} °C, diameter: 60 mm, land: {random.Next(1, 30)} mm, pump-delivery: {random.Next(1, 60)} L/min, relief-pressure: 4 bar}}}}";
        }

        string sheet = Pick(random, "bearing-film", "relief-valve", "oil-gallery", "leak-down", "nothing");
        string[] names = ["grade", "oil-temperature", "diameter", "length", "clearance", "speed", "load", "viscosity", "rate", "preload", "seat", "clearances", "reading"];
        return $"{{work-out: {sheet}, part: main-bearing, at: {random.Next(1, 6)}, given: {{{string.Join(", ", names.OrderBy(_ => random.Next()).Take(3).Select(n => $"{n}: {Pick(random, Values)}"))}}}}}";
    }

    private static string Scalar(Random random) => Pick(random, "0.05 mm", "57.9 mm", "1 bar", "0", "2 in", "60 lbf·in");

    private static string Pick(Random random, params string[] words) => words[random.Next(words.Length)];
}
