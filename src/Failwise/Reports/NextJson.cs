using System.Text.Encodings.Web;
using System.Text.Json;
using Failwise.Checks;

namespace Failwise.Reports;

/// <summary>What to look at next, what if, and what to expect before opening, as JSON.</summary>
public static class NextJson
{
    /// <summary>The plan as JSON.</summary>
    public static string Write(string title, CheckPlan plan, WhatIf? whatIf) => Print(json =>
    {
        json.WriteString("title", title);
        if (whatIf is not null)
        {
            json.WriteStartArray("whatIf");
            foreach (RootMove move in whatIf.Moves)
            {
                json.WriteStartObject();
                json.WriteString("root", move.Root.Id);
                json.WriteNumber("before", Rounded(move.Before));
                json.WriteNumber("after", Rounded(move.After));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteStartArray("checks");
        foreach (PlannedCheck check in plan.Checks)
        {
            WriteCheck(json, check);
        }

        json.WriteEndArray();
        json.WriteStartArray("proofs");
        foreach (ProvingTest proof in plan.Proofs)
        {
            json.WriteStartObject();
            json.WriteString("root", proof.Root.Id);
            json.WriteString("how", proof.How);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("stop", plan.Stop);
    });

    /// <summary>The forecast as JSON.</summary>
    public static string Write(string title, Forecast forecast) => Print(json =>
    {
        json.WriteString("title", title);
        json.WriteStartArray("roots");
        foreach (RootInQuestion root in forecast.Roots)
        {
            json.WriteStartObject();
            json.WriteString("root", root.Root.Id);
            json.WriteNumber("probability", Rounded(root.Probability));
            json.WriteStartArray("expected");
            foreach (ExpectedSign sign in root.Expected)
            {
                json.WriteStartObject();
                json.WriteString("sign", sign.Id);
                json.WriteString("opening", sign.Opening);
                json.WriteNumber("chance", Rounded(sign.Chance));
                json.WriteNumber("otherwise", Rounded(sign.Otherwise));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("steps");
        foreach (OpeningStep step in forecast.Steps)
        {
            json.WriteStartObject();
            json.WriteString("opening", step.Opening);
            json.WriteNumber("minutes", step.Minutes);
            json.WriteStartArray("looks");
            foreach (PlannedCheck look in step.Looks)
            {
                WriteCheck(json, look);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("rivals");
        foreach (RivalTest test in forecast.Rivals)
        {
            json.WriteStartObject();
            json.WriteString("first", test.First.Id);
            json.WriteString("second", test.Second.Id);
            json.WriteString("sign", test.Sign.Id);
            json.WriteNumber("ifFirst", Rounded(test.IfFirst));
            json.WriteNumber("ifSecond", Rounded(test.IfSecond));
            json.WriteString("tell", test.Tell);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    private static void WriteCheck(Utf8JsonWriter json, PlannedCheck check)
    {
        json.WriteStartObject();
        json.WriteString("id", check.Id);
        json.WriteString("kind", check.Kind.ToString().ToLowerInvariant());
        json.WriteString("says", check.Says);
        json.WriteString("why", check.Why);
        json.WriteString("how", check.How);
        json.WriteString("tool", check.Tool);
        json.WriteNumber("gainBits", Rounded(check.Gain));
        json.WriteNumber("minutes", check.Minutes);
        json.WriteNumber("openingMinutes", check.OpeningMinutes);
        json.WriteString("opening", check.Opening);
        json.WriteBoolean("destroys", check.Destroys);
        json.WriteStartArray("outcomes");
        foreach (CheckOutcome outcome in check.Outcomes)
        {
            json.WriteStartObject();
            json.WriteString("id", outcome.Id);
            json.WriteString("says", outcome.Says);
            json.WriteNumber("chance", Rounded(outcome.Chance));
            json.WriteStartArray("moves");
            foreach (Mover mover in outcome.Movers)
            {
                json.WriteStartObject();
                json.WriteString("root", mover.Root.Id);
                json.WriteNumber("now", Rounded(mover.Now));
                json.WriteNumber("then", Rounded(mover.Then));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("answer", check.Answer);
        json.WriteEndObject();
    }

    private static string Print(Action<Utf8JsonWriter> body)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            body(json);
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static double Rounded(double value) => Math.Round(value, 4);
}
