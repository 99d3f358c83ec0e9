using System.Globalization;
using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Securing;

namespace Failwise.Reports;

/// <summary>Writes what to secure before a machine is turned, stripped or washed, as Markdown to tick on the screen or on paper.</summary>
public static class SecureReport
{
    /// <summary>The name under which it lies in a case folder.</summary>
    public const string FileInFolder = "BEFORE-CLEANING.md";

    public static string Write(KnowledgeBase knowledge, SecurePlan plan) => new SecurePage(knowledge, plan).Write();
}

/// <summary>One page of what to secure.</summary>
internal sealed class SecurePage(KnowledgeBase knowledge, SecurePlan plan)
{
    private const int ShownRoots = 6;

    // Common practice, memory and judgement stand among the sources but are no documents.
    private static readonly string[] Undocumented = ["common-practice", "from-memory", "judgement"];
    private static readonly (Threat Threat, string Title, string Gone)[] Sections =
    [
        (Threat.Turning, TickList.Titles[Threat.Turning], "Spoilt when it runs on, so it stays as it is until they are looked at"),
        (Threat.Dismantling, TickList.Titles[Threat.Dismantling], "Gone once it is apart"),
        (Threat.Cleaning, TickList.Titles[Threat.Cleaning], "Gone once it is washed"),
    ];

    private readonly MarkdownText page = new();
    private readonly List<string> sources = [];

    public string Write()
    {
        page.Heading(1, "Before it is cleaned: " + MarkdownText.Safe(plan.Case.Title));
        page.Paragraph(MachineLine());
        page.Paragraph("Take it in this order. Whatever is washed, turned or thrown away now cannot be asked later. **STOP** means: not further before this is done.");
        page.Heading(2, "What can hurt someone");
        page.Bullets(plan.Hazards.Select(Line));
        foreach ((Threat threat, string title, string gone) in Sections)
        {
            page.Heading(2, title);
            page.Bullets(plan.Lines[threat].Select(Line));
            WriteLooks(threat, gone);
        }

        WriteSteps();
        WriteForecast();
        WritePhotos();
        WriteSources();
        return page.ToString();
    }

    private string MachineLine()
    {
        Cases.Machine m = plan.Case.Machine;
        List<string> facts = [string.Join(" with ", m.Kinds.Select(k => knowledge.Machines[k].Name))];
        facts.AddRange(m.Name is null ? [] : [MarkdownText.Safe(m.Name)]);
        facts.AddRange(m.Cylinders is { } c ? [$"{c} cylinder{(c == 1 ? "" : "s")}"] : []);
        facts.AddRange(m.Mains is { } n ? [$"{n} main bearing{(n == 1 ? "" : "s")}"] : []);
        facts.AddRange(m.Features.Select(f => f.Replace('-', ' ')));
        facts.AddRange(m.NumberOne is null ? [] : ["No. 1 is at the " + MarkdownText.Safe(m.NumberOne)]);
        string[] said = [.. plan.Case.Symptoms.Where(s => s.Holds).Select(s => knowledge.Symptoms[s.Id].Says), .. plan.Case.History.Where(s => s.Holds).Select(s => knowledge.Circumstances[s.Id].Says)];
        return EvidenceGathering.Capital(string.Join(", ", facts)) + "." + (said.Length == 0 ? " Nothing was said about how it failed yet." : " Said: " + string.Join(" ", said));
    }

    private string Line(SecureLine line)
    {
        SheetRule rule = line.Rule;
        string text = (rule.Stop ? "**STOP** " : "") + (line.IfFitted ? "If fitted: " : "") + rule.Says + References(rule.Sources);
        if (TickList.Blanks(line) is { } blanks)
        {
            text += " " + blanks;
        }

        return "[ ] " + text;
    }

    private void WriteLooks(Threat threat, string gone)
    {
        FleetingLook[] looks = [.. plan.Looks.Where(l => l.LostBy == threat)];
        if (looks.Length == 0)
        {
            return;
        }

        page.Paragraph($"{gone}, and telling {(plan.Said ? "after what was said" : "for what is common on such a machine")}:");
        page.Bullets(looks.Select(l =>
        {
            Pattern pattern = knowledge.Patterns[l.Pattern];
            string how = pattern.Check?.How is { } h ? " How: " + h : "";
            return $"[ ] {EvidenceGathering.Capital(knowledge.Parts[l.Part].Name)}: {pattern.Name}? {pattern.Says}{how} Would speak for: {string.Join("; ", l.Speaks.Select(c => c.Title))}.";
        }));
    }

    private void WriteSteps()
    {
        if (plan.Steps.Count == 0)
        {
            return;
        }

        page.Heading(2, "Securing work that the likely causes ask for");
        page.Bullets(plan.Steps.Select(s =>
            $"[ ] {s.Rule.Title.TrimEnd('.')}.{(s.Rule.How is null ? "" : " " + s.Rule.How)}{(s.Rule.Hold is null ? "" : $" **{s.Rule.Hold}**")}"
            + $"{string.Concat(s.Rule.Cautions.Select(c => " Caution: " + c))}{References(s.Rule.Sources)} Because of: {string.Join("; ", s.Because).TrimEnd('.')}."));
    }

    private void WriteForecast()
    {
        if (!plan.Said || plan.Forecast.Count == 0)
        {
            return;
        }

        page.Heading(2, "What it may turn out to be");
        page.Paragraph("From what was said alone, before anything was looked at. It only shows where to look first; it is no diagnosis.");
        page.Bullets(plan.Forecast.Take(ShownRoots).Select(f =>
            $"{f.Cause.Title}: {(100 * f.Probability).ToString("0", CultureInfo.InvariantCulture)} %, {CauseRanking.WordFor(f.Probability)}"));
    }

    private void WritePhotos()
    {
        SecureLine[] lines = [.. plan.Lines.OrderBy(l => l.Key).SelectMany(l => l.Value).Where(l => l.Rule.Photo is not null)];
        page.Heading(2, "Photos");
        page.Paragraph("Into the folder `photos`, under these names or with these words on the card in the picture. Originals stay as they are.");
        page.Bullets(lines.Select(l => "[ ] " + l.Times switch
        {
            null => $"`{l.Rule.Photo}`",
            > 1 and { } n => $"`{l.Rule.Photo}-1` to `{l.Rule.Photo}-{n}`",
            _ => $"`{l.Rule.Photo}-1`, one for each",
        }));
    }

    private void WriteSources()
    {
        page.Heading(2, "Sources");
        page.Paragraph("Lines without a number are common practice of the trade, no source. The maker's manual, local rules and licensed practice come first.");
        page.Bullets(sources.Select(id => MarkdownText.Safe(SourceText(knowledge.Sources[id]))), numbered: true);
    }

    private static string SourceText(Source s) => string.Join(", ", new[] { s.Title, s.Issuer, s.Year, s.Place }.OfType<string>());

    private string References(IReadOnlyList<SourceRef> refs)
    {
        List<int> numbers = [];
        foreach (string id in refs.Select(r => r.Id).Where(id => !Undocumented.Contains(id)))
        {
            if (!sources.Contains(id))
            {
                sources.Add(id);
            }

            numbers.Add(sources.IndexOf(id) + 1);
        }

        return numbers.Count == 0 ? "" : " (" + string.Join(", ", numbers) + ")";
    }
}
