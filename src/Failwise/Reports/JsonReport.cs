using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Failwise.Calculations;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Findings;
using Failwise.Measurements;
using Failwise.Work;

namespace Failwise.Reports;

/// <summary>The diagnosis for other programs; docs/schema/diagnosis.schema.json describes it.</summary>
public static class JsonReport
{
    /// <summary>Writes the diagnosis as JSON with stable field names.</summary>
    public static string Write(Diagnosis diagnosis)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.Default }))
        {
            json.WriteStartObject();
            json.WriteString("title", diagnosis.Case.Title);
            WriteVerdict(json, diagnosis.Causes);
            json.WriteStartArray("causes");
            foreach (RankedCause cause in diagnosis.Causes.Ranked.Where((c, i) => i < 5 || c.Probability >= 0.01))
            {
                WriteCause(json, cause);
            }

            json.WriteEndArray();
            json.WriteStartArray("story");
            foreach (Knowledge.Cause root in diagnosis.Causes.Story.Roots)
            {
                json.WriteStartObject();
                json.WriteString("id", root.Id);
                json.WriteNumber("neededDecibans", Math.Round(diagnosis.Causes.Story.Needed[root.Id], 1));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteNumber("somethingElse", Rounded(diagnosis.Causes.SomethingElse));
            WriteItems(json, "unexplained", diagnosis.Causes.Unexplained);
            json.WriteStartArray("findings");
            foreach (Finding finding in diagnosis.Findings.Fired)
            {
                json.WriteStartObject();
                json.WriteString("id", finding.Id);
                json.WriteString("says", finding.Rule.Says);
                WriteReasons(json, finding.Answer.Reasons);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteReadings(json, diagnosis.Readings);
            WriteCalculations(json, diagnosis.Calculations);
            json.WriteStartArray("checks");
            foreach (PlannedCheck check in diagnosis.Checks)
            {
                json.WriteStartObject();
                json.WriteString("id", check.Id);
                json.WriteString("says", check.Says);
                json.WriteNumber("gainBits", Rounded(check.Gain));
                json.WriteNumber("minutes", check.Minutes);
                json.WriteNumber("chance", Rounded(check.Chance));
                WriteShift(json, "ifFound", check.IfFound);
                WriteShift(json, "ifNot", check.IfNot);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("work");
            foreach (WorkItem item in diagnosis.Work.Items)
            {
                json.WriteStartObject();
                json.WriteString("id", item.Rule.Id);
                json.WriteString("title", item.Rule.Title);
                json.WriteString("does", item.Rule.Does);
                json.WriteString("stage", item.Rule.Stage);
                json.WriteBoolean("checkFirst", item.CheckFirst);
                WriteStrings(json, "because", item.Because);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteStrings(json, "notLookedAt", diagnosis.Case.NotLookedAt.Select(n => n.Part));
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void WriteReadings(Utf8JsonWriter json, IReadOnlyList<Reading> readings)
    {
        json.WriteStartArray("readings");
        foreach (Reading r in readings)
        {
            json.WriteStartObject();
            json.WriteNumber("number", r.Number);
            json.WriteString("kind", NumbersText.KindOf(r.Kind));
            json.WriteString("part", r.Measurement.Part);
            WriteNumbers(json, "at", r.Measurement.Places);
            json.WriteString("quantity", r.Measurement.Quantity);
            json.WriteString("written", r.Measurement.Value);
            json.WriteNumber("value", r.Value.Value);
            json.WriteString("unit", r.Value.Unit.Symbol);
            json.WriteString("says", r.InBothSystems);
            WriteText(json, "smallest", r.Smallest?.Text);
            WriteText(json, "largest", r.Largest?.Text);
            WriteText(json, "limitMin", r.Measurement.Limit?.Min);
            WriteText(json, "limitMax", r.Measurement.Limit?.Max);
            WriteText(json, "limitFrom", r.Measurement.Limit?.From);
            json.WriteString("stands", NumbersText.StateOf(r.State));
            if (r.ProbabilityWithin is { } p)
            {
                json.WriteNumber("probabilityWithin", Rounded(p));
            }

            WriteNumbers(json, "from", r.From);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteCalculations(Utf8JsonWriter json, IReadOnlyList<WorkedNumber> calculations)
    {
        json.WriteStartArray("calculations");
        foreach (WorkedNumber w in calculations)
        {
            json.WriteStartObject();
            json.WriteNumber("number", w.Number);
            json.WriteString("id", w.Result.Calculation.Id);
            json.WriteString("title", w.Result.Calculation.Title);
            WriteText(json, "part", w.Request.Part);
            WriteNumbers(json, "at", w.Request.Places);
            WriteText(json, "when", w.Request.When);
            json.WriteStartArray("inputs");
            foreach (InputEcho i in w.Result.Inputs)
            {
                json.WriteStartObject();
                json.WriteString("name", i.Input.Name);
                json.WriteString("says", i.Text);
                json.WriteString("from", i.Assumed ? "assumed" : w.Origins.GetValueOrDefault(i.Input.Name, "given"));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("results");
            foreach (OutputValue o in w.Result.Outputs)
            {
                json.WriteStartObject();
                json.WriteString("name", o.Output.Name);
                json.WriteString("says", o.Text);
                if (o.Number is { } number)
                {
                    json.WriteNumber("value", number);
                    json.WriteString("unit", o.Output.Unit);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteStrings(json, "missing", w.Result.Missing.Select(m => m.Name));
            WriteStrings(json, "problems", w.Result.Problems);
            WriteStrings(json, "notes", w.Result.Notes);
            json.WriteString("formula", w.Result.Calculation.Formula);
            json.WriteString("validity", w.Result.Calculation.Validity);
            json.WriteString("source", w.Result.Calculation.Source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteText(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, value);
        }
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IReadOnlyList<int> values)
    {
        json.WriteStartArray(name);
        foreach (int value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }

    private static void WriteVerdict(Utf8JsonWriter json, CauseRanking causes)
    {
        json.WriteStartObject("verdict");
        json.WriteString("kind", Names.Of(causes.Verdict.Kind));
        WriteStrings(json, "roots", causes.Verdict.Roots);
        WriteStrings(json, "reasons", causes.Verdict.Reasons);
        json.WriteEndObject();
    }

    private static void WriteCause(Utf8JsonWriter json, RankedCause cause)
    {
        json.WriteStartObject();
        json.WriteString("id", cause.Cause.Id);
        json.WriteString("title", cause.Cause.Title);
        json.WriteString("group", cause.Cause.Group);
        json.WriteNumber("probability", Rounded(cause.Probability));
        json.WriteString("word", CauseRanking.WordFor(cause.Probability));
        WriteWeights(json, "for", cause.For);
        WriteWeights(json, "against", cause.Against);
        json.WriteStartArray("chain");
        foreach (ChainStep step in cause.Chains.FirstOrDefault() ?? [])
        {
            json.WriteStartObject();
            json.WriteString("id", step.Id);
            json.WriteString("says", step.Says);
            if (step.Probability is { } p)
            {
                json.WriteNumber("probability", Rounded(p));
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (cause.After is { } before)
        {
            json.WriteStartObject("mayComeFrom");
            json.WriteString("id", before.Root.Id);
            json.WriteStartArray("byWayOf");
            foreach (ChainStep step in before.Way)
            {
                json.WriteStringValue(step.Id);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        WriteItems(json, "unexplained", cause.Unexplained);
        json.WriteEndObject();
    }

    private static void WriteWeights(Utf8JsonWriter json, string name, IReadOnlyList<WeighedEvidence> weights)
    {
        json.WriteStartArray(name);
        foreach (WeighedEvidence w in weights)
        {
            json.WriteStartObject();
            json.WriteString("id", w.Item.Id);
            json.WriteString("says", w.Item.Says);
            json.WriteNumber("decibans", Math.Round(w.Decibans, 1));
            json.WriteString("word", w.Word);
            WriteStrings(json, "sources", w.Sources.Select(s => s.Id));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteItems(Utf8JsonWriter json, string name, IReadOnlyList<EvidenceItem> items)
    {
        json.WriteStartArray(name);
        foreach (EvidenceItem item in items)
        {
            json.WriteStartObject();
            json.WriteString("id", item.Id);
            json.WriteString("says", item.Says);
            WriteReasons(json, item.Reasons);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteReasons(Utf8JsonWriter json, IReadOnlyList<Reason> reasons) =>
        WriteStrings(json, "reasons", reasons.Select(r => $"{r.Kind} {r.Id}"));

    private static void WriteShift(Utf8JsonWriter json, string name, IReadOnlyList<(Knowledge.Cause Root, double Probability)> shift)
    {
        json.WriteStartArray(name);
        foreach ((Knowledge.Cause root, double p) in shift)
        {
            json.WriteStartObject();
            json.WriteString("id", root.Id);
            json.WriteNumber("probability", Rounded(p));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteStrings(Utf8JsonWriter json, string name, IEnumerable<string> values)
    {
        json.WriteStartArray(name);
        foreach (string value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }

    private static double Rounded(double p) => Math.Round(p, 4);
}
