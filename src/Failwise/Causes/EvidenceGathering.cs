using Failwise.Cases;
using Failwise.Findings;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>Turns a case and its findings into evidence, each mark once.</summary>
internal static class EvidenceGathering
{
    // A mark seen on most such machines with no special cause is not by itself a sign of damage.
    private const double UsualMark = 0.1;

    // A symptom that one in twenty old machines has anyway is no failure yet.
    private const double RareSymptom = 0.04;

    public static IReadOnlyList<EvidenceItem> Gather(KnowledgeBase knowledge, TeardownCase teardown, FindingSet findings)
    {
        List<EvidenceItem> items = [.. Signs(knowledge, teardown), .. SoundParts(knowledge, teardown), .. NotFound(knowledge, teardown)];
        // What was said in a broad word and in a closer one was noticed once.
        foreach (Statement s in teardown.Symptoms.Where(s => !s.Holds || !teardown.Symptoms.Any(t => t.Holds && t.Id != s.Id && knowledge.SymptomIs(t.Id, s.Id))))
        {
            Symptom symptom = knowledge.Symptoms[s.Id];
            items.Add(new EvidenceItem("symptom/" + s.Id, EvidenceKind.Symptom, s.Holds ? symptom.Says : "Not so: " + symptom.Says, s.Holds,
                knowledge.Sureness["sure"], [new Reason("symptom", s.Id)], s.Holds && symptom.SeenAnyway <= RareSymptom));
        }

        items.AddRange(FromFindings(knowledge, teardown, findings));
        foreach ((string id, bool holds) in findings.Circumstances)
        {
            string says = knowledge.Circumstances[id].Says;
            items.Add(new EvidenceItem("history/" + id, EvidenceKind.Circumstance, holds ? says : "Not so: " + says, holds, double.PositiveInfinity,
                [new Reason("history", id)], false));
        }

        return [.. items.OrderBy(i => i.Id, StringComparer.Ordinal)];
    }

    private static IEnumerable<EvidenceItem> Signs(KnowledgeBase knowledge, TeardownCase teardown)
    {
        foreach (IGrouping<(string Part, string Pattern), Observation> group in teardown.Observations
            .Where(o => o.Look == Look.Seen).GroupBy(o => (o.Part, o.Pattern!)))
        {
            Pattern pattern = knowledge.Patterns[group.Key.Pattern];
            double weight = group.Max(o => o.Extent == Extent.Unstated ? 1 : knowledge.ExtentWeights.GetValueOrDefault(o.Extent, 1));
            double ratio = Math.Pow(group.Max(o => o.Sure), weight);
            // Heavy wear is damage even where the mark itself is usual.
            bool important = !pattern.Sound && weight >= 1 && (pattern.SeenAnyway <= UsualMark || group.Any(o => o.Extent >= Extent.Heavy));
            yield return new EvidenceItem(
                $"{group.Key.Part}/{group.Key.Pattern}", EvidenceKind.Sign, SaySign(knowledge, group), true, ratio,
                [.. group.Select(o => o.Number).Distinct().Order().Select(n => new Reason("observation", n.ToString()))], important);
        }
    }

    internal static string SaySign(KnowledgeBase knowledge, IEnumerable<Observation> group)
    {
        Observation first = group.First();
        string part = knowledge.Parts[first.Part].Name, pattern = knowledge.Patterns[first.Pattern!].Name;
        string[] places = [.. group.Select(SayPlace).Where(p => p.Length > 0).Distinct()];
        return $"{Capital(part)}: {pattern}{(places.Length > 0 ? " (" + string.Join("; ", places) + ")" : "")}";
    }

    internal static string SayPlace(Observation o)
    {
        string numbers = o.Spread switch
        {
            At.Numbers => "No. " + string.Join(", ", o.Places),
            At.Unsaid => "",
            At.FirstOnFeed => "first on the feed",
            At.LastOnFeed => "last on the feed",
            _ => o.Spread.ToString().ToLowerInvariant(),
        };
        string on = string.Join(" ", o.On.Select(w => w.Replace('-', ' ')));
        string extent = o.Extent == Extent.Unstated ? "" : o.Extent.ToString().ToLowerInvariant();
        return string.Join(", ", new[] { numbers, on, extent }.Where(t => t.Length > 0));
    }

    internal static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A part that was found sound speaks once, against every cause that usually marks it.</summary>
    private static IEnumerable<EvidenceItem> SoundParts(KnowledgeBase knowledge, TeardownCase teardown)
    {
        foreach (IGrouping<string, Observation> group in teardown.Observations.Where(o => o.Look == Look.Sound).GroupBy(o => o.Part))
        {
            bool marked = teardown.Observations.Any(o => o.Look == Look.Seen && knowledge.PartIs(o.Part, group.Key)
                && !knowledge.Patterns[o.Pattern!].Sound && o.Extent != Extent.Trace);
            if (!marked)
            {
                bool allSeen = group.Any(o => o.Spread is At.All or At.Unsaid or At.Numbers);
                yield return new EvidenceItem(
                    group.Key + "/sound", EvidenceKind.SoundPart, $"{Capital(knowledge.Parts[group.Key].Name)}: found sound", false,
                    allSeen ? group.Max(o => o.Sure) : Math.Sqrt(group.Max(o => o.Sure)),
                    [.. group.Select(o => o.Number).Distinct().Order().Select(n => new Reason("observation", n.ToString()))], false);
            }
        }
    }

    private static IEnumerable<EvidenceItem> NotFound(KnowledgeBase knowledge, TeardownCase teardown) =>
        teardown.Observations.Where(o => o.Look == Look.NotFound)
            .Where(o => !teardown.Observations.Any(s => s.Look == Look.Seen && s.Part == o.Part && knowledge.PatternIs(s.Pattern!, o.Pattern!)))
            .GroupBy(o => (o.Part, o.Pattern))
            .Select(g => new EvidenceItem(
                $"{g.Key.Part}/{g.Key.Pattern}", EvidenceKind.NotFound,
                $"{Capital(knowledge.Parts[g.Key.Part].Name)}: looked for '{knowledge.Patterns[g.Key.Pattern!].Name}' and did not find it", false, g.Max(o => o.Sure),
                [.. g.Select(o => o.Number).Distinct().Order().Select(n => new Reason("observation", n.ToString()))], false));

    private static IEnumerable<EvidenceItem> FromFindings(KnowledgeBase knowledge, TeardownCase teardown, FindingSet findings)
    {
        double most = knowledge.Sureness["sure"];
        foreach (Finding f in findings.Fired.Where(f => f.Rule.Role != FindingRole.Clue))
        {
            EvidenceKind kind = f.Rule.Role == FindingRole.Circumstance ? EvidenceKind.Circumstance : EvidenceKind.Finding;
            yield return new EvidenceItem("finding/" + f.Id, kind, f.Rule.Says, true, Math.Min(most, f.Answer.Sure), f.Answer.Reasons,
                f.Rule.SeenAnyway <= RareSymptom && f.Answer.Reasons.Any(r => r.Kind is "reading" or "calculation"));
        }

        foreach (Finding f in findings.Contradicted.Where(f => f.Rule.Role == FindingRole.Sign))
        {
            // How a mark is spread only speaks where the mark is there at all; otherwise the missing mark would count twice.
            bool signThere = f.Rule.Refines.Count == 0 || f.Rule.Refines.Any(sign => teardown.Observations.Any(o =>
                o.Look == Look.Seen && knowledge.PartIs(o.Part, sign.Part) && knowledge.PatternIs(o.Pattern!, sign.Pattern)));
            if (signThere)
            {
                double ratio = Math.Min(most, f.Answer.Sure);
                yield return new EvidenceItem(
                    "finding/" + f.Id, EvidenceKind.Finding, "Not so: " + f.Rule.Says, false, f.Rule.Refines.Count == 0 ? Math.Sqrt(ratio) : ratio,
                    f.Answer.Reasons, false);
            }
        }
    }
}
