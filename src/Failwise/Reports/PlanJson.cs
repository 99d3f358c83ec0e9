using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Failwise.Pricing;
using Failwise.Work;

namespace Failwise.Reports;

/// <summary>The plan of work for other programs; docs/schema/plan.schema.json describes it.</summary>
public static class PlanJson
{
    /// <summary>Writes the plan as JSON with stable field names.</summary>
    public static string Write(Diagnosis diagnosis)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.Default }))
        {
            json.WriteStartObject();
            json.WriteString("title", diagnosis.Case.Title);
            WritePlan(json, diagnosis.Work);
            if (diagnosis.Estimate is { } estimate)
            {
                WriteEstimate(json, estimate);
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void WritePlan(Utf8JsonWriter json, WorkPlan plan)
    {
        List(json, "steps", plan.Items, WriteStep);
        List(json, "decisions", plan.Decisions, WriteDecision);
        List(json, "removals", plan.Removals, WriteRemoval);
        List(json, "downstream", plan.Downstream, WriteDownstream);
        List(json, "together", plan.Together, static (json, t) =>
        {
            json.WriteString("part", t.Part);
            json.WriteString("step", t.Step);
            json.WriteString("why", t.Why);
        });
        List(json, "machineShop", plan.Orders.MachineShop, WriteShopJob);
        List(json, "parts", plan.Orders.Parts, WritePart);
        List(json, "usedUp", plan.Orders.Consumables, static (json, c) =>
        {
            json.WriteString("item", c.Item);
            json.WriteString("amount", c.Amount);
        });
        List(json, "closeUp", plan.Sheets.CloseUp, WriteLine);
        List(json, "firstStart", plan.Sheets.FirstStart, WriteLine);
        List(json, "followUp", plan.Sheets.FollowUp, WriteLine);
        List(json, "scopes", plan.Scopes, WriteScope);
    }

    private static void WriteStep(Utf8JsonWriter json, WorkItem item)
    {
        json.WriteString("id", item.Rule.Id);
        json.WriteString("title", item.Rule.Title);
        json.WriteString("does", item.Rule.Does);
        json.WriteString("stage", item.Rule.Stage);
        Maybe(json, "part", item.Rule.Part);
        json.WriteBoolean("checkFirst", item.CheckFirst);
        json.WriteBoolean("outside", item.Rule.Outside);
        Strings(json, "after", item.After);
        Reasons(json, item.Reasons);
        Maybe(json, "verify", item.Rule.Verify?.How);
        Maybe(json, "limit", item.Rule.Verify?.Limit);
        Maybe(json, "hold", item.Rule.Hold);
        json.WriteNumber("minutesLeast", Math.Round(item.Time.Least, 1));
        json.WriteNumber("minutesMost", Math.Round(item.Time.Most, 1));
    }

    private static void WriteDecision(Utf8JsonWriter json, PartDecision d)
    {
        json.WriteString("part", d.Part);
        Numbers(json, "places", d.Places);
        json.WriteString("decision", PlanWords.Of(d.Decision));
        json.WriteString("limit", d.Limit);
        Maybe(json, "limitSource", d.LimitSource?.Id);
        Maybe(json, "limitFrom", d.LimitFrom);
        Strings(json, "readings", d.Readings);
        json.WriteString("why", d.Why);
        json.WriteString("rule", d.RuleId);
        Reasons(json, d.Reasons);
        Strings(json, "steps", d.Steps);
    }

    private static void WriteRemoval(Utf8JsonWriter json, CauseRemoval r)
    {
        json.WriteString("cause", r.Cause.Id);
        json.WriteNumber("probability", Math.Round(r.Probability, 4));
        json.WriteBoolean("checkFirst", r.CheckFirst);
        Strings(json, "inside", r.Inside);
        Strings(json, "outside", r.Outside);
        List(json, "checks", r.Checks, static (json, c) =>
        {
            json.WriteString("step", c.Step);
            json.WriteString("how", c.How);
            Maybe(json, "limit", c.Limit);
        });
    }

    private static void WriteDownstream(Utf8JsonWriter json, DownstreamLine d)
    {
        json.WriteString("circuit", d.Circuit);
        json.WriteString("part", d.Part);
        json.WriteString("action", PlanWords.Of(d.Action));
        json.WriteString("says", d.Says);
        Maybe(json, "step", d.Step);
        json.WriteString("rule", d.RuleId);
        Reasons(json, d.Reasons);
    }

    private static void WriteShopJob(Utf8JsonWriter json, ShopJob job)
    {
        json.WriteString("part", job.Part);
        Numbers(json, "places", job.Places);
        json.WriteString("operation", job.Operation);
        Strings(json, "sizes", job.Sizes);
        json.WriteString("finish", job.Finish);
        Strings(json, "doNot", job.DoNot);
        Strings(json, "ask", job.Ask);
        Maybe(json, "step", job.Step);
        json.WriteBoolean("checkFirst", job.CheckFirst);
    }

    private static void WritePart(Utf8JsonWriter json, PartsLine p)
    {
        Maybe(json, "part", p.Part);
        json.WriteString("item", p.Item);
        if (p.Count is { } count)
        {
            json.WriteNumber("count", count);
        }

        json.WriteString("countFrom", p.CountFrom);
        Maybe(json, "size", p.Size);
        Maybe(json, "orderAfter", p.OrderAfterStep);
        json.WriteBoolean("together", p.Together);
        json.WriteBoolean("checkFirst", p.CheckFirst);
        Strings(json, "steps", p.Steps);
    }

    private static void WriteLine(Utf8JsonWriter json, SheetLine line)
    {
        json.WriteString("says", line.Says);
        if (line.Place is { } place)
        {
            json.WriteNumber("place", place);
        }

        Maybe(json, "reading", line.Reading);
        Maybe(json, "unit", line.Unit);
        Maybe(json, "limit", line.Limit);
        Maybe(json, "when", line.When);
        json.WriteBoolean("stop", line.Stop);
        json.WriteString("rule", line.RuleId);
    }

    private static void WriteScope(Utf8JsonWriter json, ScopeOption scope)
    {
        json.WriteString("id", scope.Id);
        json.WriteString("title", scope.Title);
        Strings(json, "steps", scope.Steps);
        List(json, "left", scope.Left, static (json, l) =>
        {
            json.WriteString("cause", l.Cause);
            json.WriteNumber("probability", Math.Round(l.Probability, 4));
        });
        json.WriteNumber("riskLeast", Math.Round(scope.RiskLeast, 4));
        json.WriteNumber("riskMost", Math.Round(scope.RiskMost, 4));
        json.WriteNumber("hoursLeast", Math.Round(scope.Time.Least / 60, 1));
        json.WriteNumber("hoursMost", Math.Round(scope.Time.Most / 60, 1));
    }

    private static void WriteEstimate(Utf8JsonWriter json, JobEstimate estimate)
    {
        json.WriteString("currency", estimate.Currency);
        List(json, "costs", estimate.Scopes, static (json, c) =>
        {
            json.WriteString("scope", c.Scope);
            json.WriteNumber("totalLeast", Math.Round(c.Total.Least, 2));
            json.WriteNumber("totalMost", Math.Round(c.Total.Most, 2));
            Strings(json, "unpriced", c.Unpriced);
        });
    }

    private static void List<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Reasons(Utf8JsonWriter json, IReadOnlyList<WorkReason> reasons) => List(json, "reasons", reasons, static (json, r) =>
    {
        json.WriteString("kind", r.Kind);
        json.WriteString("id", r.Id);
        json.WriteString("says", r.Says);
    });

    private static void Strings(Utf8JsonWriter json, string name, IEnumerable<string> values)
    {
        json.WriteStartArray(name);
        foreach (string value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }

    private static void Numbers(Utf8JsonWriter json, string name, IEnumerable<int> values)
    {
        json.WriteStartArray(name);
        foreach (int value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }

    private static void Maybe(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, value);
        }
    }
}
