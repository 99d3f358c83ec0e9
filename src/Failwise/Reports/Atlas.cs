using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Reports;

/// <summary>A page of the atlas; <paramref name="Path"/> is relative to the atlas folder.</summary>
public sealed record AtlasPage(string Path, string Text);

/// <summary>
/// The rule base as a book for someone who learns to read wear: one page a pattern, one page a cause, and indexes by part, pattern and
/// cause. Generated, so that it cannot say other than the rules do.
/// </summary>
public sealed class Atlas
{
    private readonly KnowledgeBase knowledge;
    private readonly CauseIndex index;

    private Atlas(KnowledgeBase knowledge)
    {
        this.knowledge = knowledge;
        index = CauseIndex.Of(knowledge);
    }

    /// <summary>Every page, in order of path.</summary>
    public static IReadOnlyList<AtlasPage> Write(KnowledgeBase knowledge)
    {
        Atlas atlas = new(knowledge);
        List<AtlasPage> pages = [new("README.md", atlas.Index()), new("by-part.md", atlas.ByPart())];
        pages.AddRange(PlaceDrawings.All.Select(d => new AtlasPage($"drawings/{d.Name}.svg", d.Svg)));
        pages.AddRange(AtlasDrawings.Pages(knowledge));
        pages.AddRange(knowledge.Patterns.Values.Select(p => new AtlasPage($"patterns/{p.Id}.md", atlas.PatternPage(p))));
        pages.AddRange(knowledge.Causes.Values.Select(c => new AtlasPage($"causes/{c.Id}.md", atlas.CausePage(c))));
        return [.. pages.OrderBy(p => p.Path, StringComparer.Ordinal)];
    }

    /// <summary>True for the text of a mark drawing of the atlas: what may be removed when its pattern is retired.</summary>
    public static bool IsMarkDrawing(string text) => AtlasDrawings.IsOwn(text);

    private static string Safe(string text) => MarkdownText.Safe(text);

    private string PatternLink(string id, string up = "../") => $"[{Safe(knowledge.Patterns[id].Name)}]({up}patterns/{id}.md)";

    private string CauseLinkTo(string id, string up = "../") => $"[{Safe(knowledge.Causes[id].Title)}]({up}causes/{id}.md)";

    private string Index()
    {
        MarkdownText md = new();
        md.Heading(1, "Atlas of wear patterns and causes");
        md.Paragraph("What the eye sees, what it means by its position, what it could be mistaken for, and what to do. Printed from the rule base. "
            + "Look up a [part](by-part.md), or a pattern or cause below. Strengths are judgement; the sources carry the claims.");
        md.Heading(2, "Patterns");
        md.Bullets(knowledge.Patterns.Values.OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase).Select(p => $"{PatternLink(p.Id, "")}: {Safe(p.Says)}"));
        md.Heading(2, "Root causes");
        foreach (IGrouping<string, Cause> group in knowledge.Causes.Values.Where(c => c.IsRoot).GroupBy(c => c.Group).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            md.Heading(3, EvidenceGathering.Capital(group.Key.Replace('-', ' ')));
            md.Bullets(group.OrderBy(c => c.Title, StringComparer.OrdinalIgnoreCase).Select(c => CauseLinkTo(c.Id, "")));
        }

        md.Heading(2, "Mechanisms in between");
        md.Bullets(knowledge.Causes.Values.Where(c => !c.IsRoot).OrderBy(c => c.Title, StringComparer.OrdinalIgnoreCase).Select(c => CauseLinkTo(c.Id, "")));
        return md.ToString();
    }

    private string ByPart()
    {
        MarkdownText md = new();
        md.Heading(1, "By part");
        foreach (IGrouping<string, Part> group in knowledge.Parts.Values.GroupBy(p => p.Group).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            md.Heading(2, EvidenceGathering.Capital(group.Key.Replace('-', ' ')));
            foreach (Part part in group.OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase))
            {
                string[] patterns = [.. (index.ByPart.GetValueOrDefault(part.Id) ?? []).Select(l => l.Link.Sign!.Pattern).Distinct().Order(StringComparer.Ordinal)];
                if (patterns.Length > 0)
                {
                    md.Paragraph($"**{Safe(part.Name)}**{(part.Words.Count > 0 ? $" (also: {Safe(string.Join(", ", part.Words))})" : "")}: {string.Join(", ", patterns.Select(p => PatternLink(p, "")))}");
                }
            }
        }

        return md.ToString();
    }

    private string PatternPage(Pattern pattern)
    {
        MarkdownText md = new();
        md.Heading(1, Safe(pattern.Name));
        md.Paragraph(Safe(pattern.Says) + (pattern.Sound ? " **This is normal.**" : ""));
        if (AtlasDrawings.Markdown(knowledge, pattern) is { } drawing)
        {
            md.Paragraph(drawing);
        }

        if (pattern.Words.Count > 0)
        {
            md.Paragraph("Also called: " + Safe(string.Join(", ", pattern.Words)) + ".");
        }

        if (pattern.Classes.Count > 0)
        {
            md.Paragraph("Class: " + string.Join("; ", pattern.Classes.Select(c => $"{Safe(c.Standard)}, {Safe(c.Class)}")) + ".");
        }

        (Cause Cause, CauseLink Link)[] links =
        [
            .. knowledge.Causes.Values.SelectMany(c => c.Leaves.Where(l => l.Sign?.Pattern == pattern.Id).Select(l => (c, l)))
                .OrderByDescending(x => x.l.Strength).ThenBy(x => x.c.Id, StringComparer.Ordinal),
        ];
        if (pattern.Check is { } check)
        {
            md.Paragraph($"How to see it: {Safe(check.How)}{(check.Tool is { } tool ? $" With: {Safe(tool)}." : "")} About {check.Minutes:0} min."
                + (check.LostBy.Count > 0 ? $" **Lost by {string.Join(" and ", check.LostBy)}.**" : ""));
        }

        md.Heading(2, "Look-alikes");
        WriteLookAlikes(md, pattern);
        WritePlaces(md, pattern, [.. links.Select(l => l.Link.Sign!.Part).Distinct()]);
        md.Heading(2, "What leaves it");
        if (links.Length == 0)
        {
            md.Paragraph(pattern.Sound ? "Nothing that needs correcting." : "No cause of the rule base names it by itself; broader patterns may.");
        }
        else
        {
            md.Table(["on", "cause", "how often", "source"], [.. links.Select(l => new[]
            {
                Safe(knowledge.Parts[l.Link.Sign!.Part].Name), CauseLinkTo(l.Cause.Id) + (l.Cause.IsRoot ? "" : " (mechanism)"), Safe(l.Link.Word),
                string.Join(", ", (l.Link.Sources.Count > 0 ? l.Link.Sources : l.Cause.Sources).Select(s => s.Id).Distinct()),
            })]);
        }

        string[] work = [.. knowledge.Work.Values.Where(w => w.Because.Any(b => b.See.Contains(pattern.Id))).OrderBy(w => w.Id, StringComparer.Ordinal)
            .Select(w => $"**{Safe(w.Title)}.** {Safe(w.How ?? "")}{(w.Cautions.Count > 0 ? " *Caution: " + Safe(string.Join(" ", w.Cautions)) + "*" : "")}")];
        if (work.Length > 0)
        {
            md.Heading(2, "What to do");
            md.Bullets(work);
        }

        WriteSources(md, [.. pattern.Sources, .. links.SelectMany(l => l.Link.Sources.Count > 0 ? l.Link.Sources : l.Cause.Sources),
            .. AtlasPlaces.Of(knowledge, index, pattern).Take(AtlasPlaces.Most).SelectMany(p => p.Finding.Sources)]);
        md.Paragraph("[Atlas](../README.md) · [by part](../by-part.md)");
        return md.ToString();
    }

    /// <summary>What to hold beside the part: the twin's sketch, the difference, and what it would mean instead.</summary>
    private void WriteLookAlikes(MarkdownText md, Pattern pattern)
    {
        if (pattern.LookAlikes.Count == 0)
        {
            md.Paragraph("None known.");
            return;
        }

        md.Table(["sketch", "it could be", "how to tell", "it would mean"], [.. pattern.LookAlikes.Select(l => new[]
        {
            AtlasDrawings.Markdown(knowledge, knowledge.Patterns[l.Id]) ?? "", PatternLink(l.Id), Safe(l.Tell), Meaning(knowledge.Patterns[l.Id]),
        })]);
    }

    private string Meaning(Pattern pattern) => pattern.Sound ? "normal, no damage" : string.Join(", ", knowledge.Causes.Values
        .SelectMany(c => c.Leaves.Where(l => l.Sign?.Pattern == pattern.Id).Select(l => (c.Id, l.Strength)))
        .OrderByDescending(x => x.Strength).ThenBy(x => x.Id, StringComparer.Ordinal).Select(x => x.Id).Distinct().Take(2).Select(id => CauseLinkTo(id)));

    private void WritePlaces(MarkdownText md, Pattern pattern, IReadOnlyList<string> parts)
    {
        IReadOnlyList<PlaceMeaning> places = AtlasPlaces.Of(knowledge, index, pattern);
        if (places.Count > 0)
        {
            md.Heading(2, "What its position means");
        }

        foreach (PlaceDrawing drawing in AtlasPlaces.Drawings(knowledge, pattern, parts))
        {
            md.Paragraph($"![{Safe(drawing.Alt)}](../drawings/{drawing.Name}.svg)");
        }

        if (places.Count == 0)
        {
            return;
        }

        md.Table(["on", "seen so", "because", "speaks for"], [.. AtlasPlaces.ByPart(places.Take(AtlasPlaces.Most)).Select(p => new[]
        {
            Safe(knowledge.Parts[p.Part].Name), Safe(p.Finding.Says), Safe(p.Finding.Why ?? ""), string.Join(", ", p.Causes.Take(6).Select(c => CauseLinkTo(c))),
        })]);
        string[] rest = [.. places.Skip(AtlasPlaces.Most).SelectMany(p => p.Causes).Except(places.Take(AtlasPlaces.Most).SelectMany(p => p.Causes)).Distinct()];
        if (rest.Length > 0)
        {
            md.Paragraph("By its place it can also speak for: " + string.Join(", ", rest.Select(c => CauseLinkTo(c))) + ".");
        }
    }

    private string CausePage(Cause cause)
    {
        MarkdownText md = new();
        md.Heading(1, Safe(cause.Title));
        md.Paragraph($"*{(cause.IsRoot ? "Root cause, " + cause.Group.Replace('-', ' ') : "Mechanism or damage in between")}; {cause.Status}.* {Safe(cause.Says)}");
        if (cause.Needs.Count + cause.Machines.Count > 0)
        {
            md.Paragraph("Applies to: " + Safe(string.Join(", ", [.. cause.Machines, .. cause.Needs])) + ".");
        }

        (Cause Cause, CauseLink Link)[] from = [.. index.ByTarget.GetValueOrDefault("cause/" + cause.Id) ?? []];
        if (from.Length > 0)
        {
            md.Heading(2, "Brought about by");
            md.Bullets(from.OrderByDescending(l => l.Link.Strength).ThenBy(l => l.Cause.Id, StringComparer.Ordinal).Select(l => $"{CauseLinkTo(l.Cause.Id)}: {Safe(l.Link.Word)}"));
        }

        if (cause.RaisedBy.Count > 0)
        {
            md.Heading(2, "Likelier when");
            md.Bullets(cause.RaisedBy.Select(l => Safe(l.Target == LinkTarget.Finding ? knowledge.Findings[l.Id].Says : knowledge.Circumstances[l.Id].Says)));
        }

        if (cause.LeadsTo.Count > 0)
        {
            md.Heading(2, "Brings about");
            md.Bullets(cause.LeadsTo.OrderByDescending(l => l.Strength).Select(l => $"{CauseLinkTo(l.Id)}: {Safe(l.Word)}"));
        }

        if (cause.Leaves.Count > 0)
        {
            md.Heading(2, "What it leaves behind");
            md.Table(["sign", "how often", "source"], [.. cause.Leaves.OrderByDescending(l => l.Strength).Select(l => new[]
            {
                l.Target switch
                {
                    LinkTarget.Sign => $"{Safe(knowledge.Parts[l.Sign!.Part].Name)}: {PatternLink(l.Sign.Pattern)}",
                    LinkTarget.Finding => Safe(knowledge.Findings[l.Id].Says),
                    LinkTarget.Symptom => Safe(knowledge.Symptoms[l.Id].Says),
                    _ => Safe(l.Id),
                },
                Safe(l.Word), string.Join(", ", (l.Sources.Count > 0 ? l.Sources : cause.Sources).Select(s => s.Id).Distinct()),
            })]);
        }

        if (cause.LooksLike.Count > 0)
        {
            md.Heading(2, "Rivals, and how to tell");
            md.Table(["rival", "how to tell"], [.. cause.LooksLike.Select(l => new[] { CauseLinkTo(l.Id), Safe(l.Tell) })]);
        }

        if (cause.Prove is { } prove)
        {
            md.Paragraph("To prove or disprove it: " + Safe(prove));
        }

        WorkRule[] work = [.. knowledge.Work.Values.Where(w => w.Because.Any(b => b.Cause == cause.Id)).OrderBy(w => w.Id, StringComparer.Ordinal)];
        if (work.Length > 0)
        {
            md.Heading(2, "What to do");
            md.Bullets(work.Select(w => $"**{Safe(w.Title)}.** {Safe(w.How ?? "")}{(w.Verify is { } v ? " Checked by: " + Safe(v.How) : "")}{(w.Cautions.Count > 0 ? " *Caution: " + Safe(string.Join(" ", w.Cautions)) + "*" : "")}"));
        }

        WriteSources(md, [.. cause.Sources, .. cause.Leaves.SelectMany(l => l.Sources), .. cause.LeadsTo.SelectMany(l => l.Sources)]);
        md.Paragraph("[Atlas](../README.md) · [by part](../by-part.md)");
        return md.ToString();
    }

    private void WriteSources(MarkdownText md, IEnumerable<SourceRef> refs)
    {
        string[] ids = [.. refs.Select(r => r.Id).Distinct().Order(StringComparer.Ordinal)];
        if (ids.Length > 0)
        {
            md.Heading(2, "Sources");
            md.Bullets(ids.Select(id => knowledge.Sources[id]).Select(s => $"{s.Id}: {Safe(string.Join(", ", new[] { s.Title, s.Issuer, s.Year, s.Place }.OfType<string>()))}"));
        }
    }
}
