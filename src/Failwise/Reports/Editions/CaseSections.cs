using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Measurements;
using Failwise.Reports.Pictures;

namespace Failwise.Reports.Editions;

/// <summary>What the case says: the job, what was told, what was seen and measured, and what nobody looked at.</summary>
internal static class CaseSections
{
    public const string DebrisPart = "oil-debris";

    private const int MostBare = 6;

    private static string Safe(string text) => MarkdownText.Safe(text);

    /// <summary>Whose machine, which machine, who asks; what is missing is named in one line.</summary>
    public static void Job(ReportPage sheet)
    {
        JobRecord job = sheet.Case.Job;
        (string Name, string? Value)[] rows =
        [
            ("job number", job.Number), ("owner", job.Owner), ("asked by", job.AskedBy), ("purpose", job.Purpose), ("looked at on", job.Date),
            ("looked at where", job.Place), ("looked at by", job.LookedBy), ("maker's plate", job.Serial),
        ];
        sheet.Text.Heading(2, "The job and the machine");
        sheet.Text.Table(["what", "as written down"],
        [
            .. rows.Where(r => r.Value is not null).Select(r => new[] { r.Name, Safe(r.Value!) }),
            .. Machine(sheet).Select(r => new[] { r.Name, Safe(r.Value) }),
        ]);
        string[] gaps = [.. rows.Where(r => r.Value is null).Select(r => r.Name)];
        if (gaps.Length > 0)
        {
            sheet.Text.Paragraph($"Not written down: {string.Join(", ", gaps)}.");
        }

        List("Papers seen or asked for", job.Papers, sheet);
    }

    public static IEnumerable<(string Name, string Value)> Machine(ReportPage sheet)
    {
        Machine m = sheet.Case.Machine;
        yield return ("machine", (m.Name is { } name ? name + ": " : "") + string.Join(" with ", m.Kinds.Select(k => sheet.Knowledge.Machines[k].Name)));
        string layout = string.Join("; ", new[]
        {
            m.Cylinders is { } c ? $"{c} {(c == 1 ? "cylinder" : "cylinders")}" : null, m.Mains is { } n ? $"{n} main bearings" : null,
            m.NumberOne is { } one ? "No. 1 at the " + one : null, m.Feed is { } feed ? "oil reaches the mains in the order " + string.Join(", ", feed) : null,
        }.OfType<string>());
        if (layout.Length > 0)
        {
            yield return ("layout", layout);
        }

        if (m.Features.Count > 0)
        {
            yield return ("build", string.Join(", ", m.Features.Select(f => f.Replace('-', ' '))) + Without(sheet, m));
        }

        foreach ((string key, double value) in sheet.Case.Numbers.OrderBy(x => x.Key, StringComparer.Ordinal))
        {
            yield return (key.Replace('-', ' '), FormattableString.Invariant($"{value}") + (key.StartsWith("hours", StringComparison.Ordinal) ? " h" : ""));
        }
    }

    /// <summary>What it has not; that a diesel is no petrol engine goes without saying.</summary>
    private static string Without(ReportPage sheet, Machine m)
    {
        HashSet<string> chosen = [.. m.Features.Select(f => sheet.Knowledge.Features.GetValueOrDefault(f)?.Choice).OfType<string>()];
        string[] said = [.. m.Without.Where(f => sheet.Knowledge.Features.GetValueOrDefault(f)?.Choice is not { } choice || !chosen.Contains(choice)).Select(f => f.Replace('-', ' '))];
        return said.Length > 0 ? "; without " + string.Join(", ", said) : "";
    }

    /// <summary>What was told, kept apart from what was seen.</summary>
    public static void Reported(ReportPage sheet)
    {
        sheet.Text.Heading(2, "What was reported");
        sheet.Text.Paragraph("This section repeats what people said and what the papers say. It was not seen by whoever looked at the parts.");
        List("What happened, as told", sheet.Case.Job.Told, sheet);
        List("What was noticed while it ran", [.. sheet.Case.Symptoms.Select(s => Denied(s) + sheet.Knowledge.Symptoms[s.Id].Says)], sheet);
        List("What was known before", [.. sheet.Case.History.Select(s => Denied(s) + sheet.Knowledge.Circumstances[s.Id].Says), .. sheet.Case.Notes], sheet);
        List("Work done before", sheet.Case.Job.WorkBefore, sheet);
        string[] gaps =
        [
            .. new[]
            {
                sheet.Case.Job.Told.Count == 0 ? "what the owner or operator says happened" : null, sheet.Case.Symptoms.Count == 0 ? "what was noticed while it ran" : null,
                sheet.Case.History.Count + sheet.Case.Numbers.Count == 0 ? "hours, oil and service" : null, sheet.Case.Job.WorkBefore.Count == 0 ? "who worked on it before, with which parts" : null,
            }.OfType<string>(),
        ];
        if (gaps.Length > 0)
        {
            sheet.Text.Paragraph($"Not written down: {string.Join("; ", gaps)}.");
        }
    }

    public static void Received(ReportPage sheet)
    {
        sheet.Text.Heading(2, "Condition as received");
        if (sheet.Case.Job.Received.Count == 0)
        {
            sheet.Text.Paragraph("Not written down: how it came in, and what had been cleaned or moved before anyone looked.");
        }

        sheet.Text.Bullets(sheet.Case.Job.Received.Select(Safe));
    }

    /// <summary>Which parts were looked at, and which were not.</summary>
    public static void Looked(ReportPage sheet)
    {
        sheet.Text.Heading(2, "What was looked at, and what was not");
        string[] seen = [.. sheet.Case.Observations.Select(o => o.Part).Where(p => p != DebrisPart).Distinct().Select(p => sheet.Knowledge.Parts[p].Name)];
        sheet.Text.Paragraph(seen.Length == 0 ? "No part was looked at." : $"Looked at: {Safe(string.Join(", ", seen))}.");
        if (sheet.Case.NotLookedAt.Count == 0)
        {
            sheet.Text.Paragraph("The case does not list what was left out. What is not named in this report was not looked at; it is neither good nor bad.");
            return;
        }

        sheet.Text.Paragraph("Not looked at; this speaks neither for nor against any cause:");
        sheet.Text.Bullets(sheet.Case.NotLookedAt.Select(n => Safe(sheet.PartName(n.Part)) + (n.Reason is { } r ? ": " + Safe(r) : "")));
    }

    /// <summary>Part by part, with the map, the readings and the debris.</summary>
    public static void Observed(ReportPage sheet)
    {
        sheet.Text.Heading(2, "What was seen, part by part");
        sheet.Show(DamageMap.Draw, "Where the damage lies. A tick is sound or normal; more bars are worse.");
        Observation[] debris = [.. sheet.Case.Observations.Where(o => o.Part == DebrisPart)], parts = [.. sheet.Case.Observations.Where(o => o.Part != DebrisPart)];
        if (parts.Length > 0)
        {
            sheet.Text.Table(["", "part", "seen", "where and how much", "note"], [.. parts.Select(o => ObservationRow(sheet, o))]);
        }

        if (debris.Length > 0)
        {
            sheet.Text.Heading(3, "Debris");
            sheet.Text.Table(["", "part", "found", "how much", "note"], [.. debris.Select(o => ObservationRow(sheet, o))]);
        }

        if (sheet.Diagnosis.Readings.Count > 0)
        {
            sheet.Text.Heading(3, "Readings");
            sheet.Text.Table(["", "reading", "value", "limit and where it comes from", "stands", "measured with"], [.. sheet.Diagnosis.Readings.Select(r => ReadingRow(sheet, r))]);
        }
        else
        {
            sheet.Text.Paragraph("No reading was written down.");
        }

        NoPhoto(sheet);

        if (sheet.Diagnosis.Calculations.Count > 0)
        {
            sheet.Text.Heading(3, "Worked out from the figures");
            NumbersText.Write(sheet.Text, sheet.Knowledge, sheet.Diagnosis.Calculations);
        }
    }

    /// <summary>Marks that carry much of the answer and stand on words alone.</summary>
    private static void NoPhoto(ReportPage sheet)
    {
        Observation[] bare = [.. sheet.Case.Observations.Where(o => o is { Look: Look.Seen, Extent: Extent.Heavy, Photo: null } && !sheet.Knowledge.Patterns[o.Pattern!].Sound)];
        if (bare.Length > 0)
        {
            string[] names = [.. bare.GroupBy(o => o.Part, StringComparer.Ordinal).Take(MostBare).Select(g =>
                $"{Safe(sheet.Knowledge.Parts[g.Key].Name)} (observation {Phrases.And([.. g.Select(o => o.Number.ToString()).Distinct()])})")];
            sheet.Text.Paragraph($"No photo was put in of: {string.Join(", ", names)}. Where one was taken it belongs here; where none was, one is still worth taking while the part is as it was found.");
        }
    }

    private static string[] ObservationRow(ReportPage sheet, Observation o)
    {
        string unsure = o.SureWord is null or "sure" ? "" : $" ({o.SureWord.Replace('-', ' ')})";
        string written = o.Written is { } w ? $" *(written: {Safe(w)})*" : "";
        int photo = sheet.Photos.ToList().FindIndex(p => p.File == o.Photo?.Replace('\\', '/')) + 1;
        string note = string.Join(" ", new[] { Safe(o.Note ?? ""), photo > 0 ? $"Photo {photo}." : "" }.Where(t => t.Length > 0));
        return [o.Number.ToString(), Safe(sheet.PartName(o.Part)), Safe(SeveritySign.Say(sheet.Knowledge, o)) + unsure + written, EvidenceGathering.SayPlace(o), note];
    }

    private static string[] ReadingRow(ReportPage sheet, Reading r)
    {
        Measurement m = r.Measurement;
        string limit = m.Limit is null ? "none given" : Safe(NumbersText.LimitOf(m.Limit) + (m.Limit.From is null ? " (source not written down)" : ""));
        string with = r.Kind is ReadingKind.Written or ReadingKind.Size ? m.Instrument ?? "not written down" : "worked out";
        return
        [
            r.Number.ToString(), Safe(sheet.PartName(m.Part)) + WorkSections.Numbers(m.Places) + ", " + Safe(m.Quantity.Replace('-', ' ')), Safe(NumbersText.ValueOf(r)), limit,
            NumbersText.StateOf(r.State) + (r.Note is { } note ? "; " + Safe(note) : ""),
            Safe(string.Join("; ", new[] { with, m.Uncertainty is { } u ? "uncertain by " + u : null, m.Note }.OfType<string>())),
        ];
    }

    /// <summary>The photos, numbered as the text names them.</summary>
    public static void Photos(ReportPage sheet)
    {
        if (sheet.Photos.Count == 0)
        {
            return;
        }

        sheet.Text.Heading(2, "Photos");
        for (int i = 0; i < sheet.Photos.Count; i++)
        {
            ReportPhoto photo = sheet.Photos[i];
            if (photo.State == PhotoState.Shown)
            {
                sheet.Text.Figure(photo.Caption, photo.Link, $"Photo {i + 1}: {Safe(photo.Caption)}");
            }
            else
            {
                sheet.Text.Paragraph($"Photo {i + 1}: {Safe(photo.Caption)}. {WhyNotShown(photo)} File: {Safe(photo.File)}");
            }
        }

        sheet.Text.Paragraph("The photos are as they were taken; only their size on the page is changed.");
    }

    private static string WhyNotShown(ReportPhoto photo) => photo.State switch
    {
        PhotoState.Missing => "It cannot be shown: there is no such file any more.",
        PhotoState.NotAPicture => "It cannot be shown: the file is not a picture.",
        PhotoState.NotShownByBrowsers => "It cannot be shown here: browsers do not open this kind of picture; save a copy as JPEG.",
        PhotoState.TooLarge => $"It is not put in because it is larger than {ReportPhoto.LargestMegabytes} MB.",
        _ => $"It is not put in because the photos together are larger than {ReportPhoto.LargestSumMegabytes} MB.",
    };

    private static string Denied(Statement s) => s.Holds ? "" : "Asked, and not so: ";

    private static void List(string title, IReadOnlyList<string> says, ReportPage sheet)
    {
        if (says.Count > 0)
        {
            sheet.Text.Heading(3, title);
            sheet.Text.Bullets(says.Select(Safe));
        }
    }
}
