using System.Globalization;
using Failwise.Cases;
using Failwise.Causes;
using Failwise.Checks;
using Failwise.Drawings;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Securing;

namespace Failwise.Sheets;

/// <summary>Draws up the inspection sheets of the machine of a case: its own parts and numbers, and the marks those parts may show.</summary>
public static class SheetPlanner
{
    private const int MostMarks = 7;
    private const int MostDebris = 12;
    private const int MostQuestions = 18;
    private const int OpenColumns = 6;
    private const int FullGrids = 9;
    private const double SurelyFitted = 0.75;

    /// <summary>The sheets of the whole job: first what to secure before the machine is stripped and washed, then its parts; single parts go without.</summary>
    /// <param name="only">Codes or words of the parts wanted; all of the machine when empty.</param>
    /// <exception cref="ProblemsException">A word of <paramref name="only"/> is no part with a short code.</exception>
    public static InspectionSheet PlanWhole(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<string> only) =>
        Plan(knowledge, teardown, only) with { Secure = only.Count > 0 ? [] : TickList.Of(knowledge, SecurePlanner.Plan(knowledge, teardown)) };

    /// <summary>The sheets. Parts without a short code are left to the lines for anything else.</summary>
    /// <param name="only">Codes or words of the parts wanted; all of the machine when empty.</param>
    /// <exception cref="ProblemsException">A word of <paramref name="only"/> is no part with a short code.</exception>
    public static InspectionSheet Plan(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<string> only)
    {
        IReadOnlyList<string> wanted = Wanted(knowledge, only);
        PartMarks marks = new(knowledge, teardown.Machine);
        PartPresence presence = new(knowledge, teardown);
        Dictionary<string, string> written = knowledge.Codes.Where(c => c.Kind == "pattern").GroupBy(c => c.Id, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First().Code, StringComparer.Ordinal);
        List<SheetPart> parts = [];
        foreach (ShortCode code in knowledge.Codes.Where(c => c.Kind == "part").DistinctBy(c => c.Id))
        {
            Part part = knowledge.Parts[code.Id];
            double chance = wanted.Count == 0 ? presence.Of(part.Id) : wanted.Contains(part.Id) ? 1 : 0;
            SheetMark[] rows = [.. marks.Of(part.Id).Where(p => !p.Sound).Take(MostMarks).Select(p => Mark(knowledge, written, part.Id, p))];
            if (chance >= PartPresence.Hardly && rows.Length > 0 && part.Id != "oil-debris" && (wanted.Count > 0 || IsOwn(knowledge, teardown, marks, part)))
            {
                (string[] columns, bool open) = Columns(knowledge, teardown.Machine, part);
                parts.Add(new SheetPart(part, code.Code, columns, open, chance < SurelyFitted, wanted.Count > 0, Places(knowledge, part), rows));
            }
        }

        string[] full = [.. parts.Where(p => p.Columns.Count > 0).OrderByDescending(p => marks.Weight(p.Part.Id)).ThenBy(p => p.Code, StringComparer.Ordinal).Take(FullGrids).Select(p => p.Code)];
        parts = [.. parts.Select(p => p with { Full = p.Full || full.Contains(p.Code) })];
        return new InspectionSheet(
            teardown.Title, Describe(knowledge, teardown.Machine), Symptoms(knowledge, teardown), History(knowledge, teardown), parts,
            Readings(knowledge, parts), [.. marks.Of("oil-debris").Take(MostDebris).Select(p => Mark(knowledge, written, "oil-debris", p))]);
    }

    private static IReadOnlyList<string> Wanted(KnowledgeBase knowledge, IReadOnlyList<string> only)
    {
        ShortCode[] codes = [.. knowledge.Codes.Where(c => c.Kind == "part")];
        List<string> wanted = [];
        ProblemList problems = new();
        foreach (string word in only)
        {
            string? id = codes.FirstOrDefault(c => c.Code.Equals(word, StringComparison.OrdinalIgnoreCase))?.Id ?? knowledge.PartWords.Find(word);
            if (id is not null && codes.Any(c => c.Id == id))
            {
                wanted.Add(id);
            }
            else
            {
                problems.Error("FW105", new Location("--only", 0, 0), $"'{word}' is no part with a short code, and a sheet has those only.{Suggest.Nearest(word, [.. codes.Select(c => c.Code), .. codes.Select(c => c.Id)])}");
            }
        }

        return problems.HasErrors ? throw new ProblemsException(problems.Sorted()) : wanted;
    }

    private static SheetMark Mark(KnowledgeBase knowledge, Dictionary<string, string> written, string part, Pattern pattern) =>
        new(pattern, written.GetValueOrDefault(pattern.Id) ?? pattern.Id, pattern.Check?.LostBy.Contains("cleaning") == true, MarkDrawings.For(knowledge, part, pattern.Id));

    /// <summary>Machine elements such as "bolt" belong on a sheet only where the machine is made of them and no narrower part is named.</summary>
    private static bool IsOwn(KnowledgeBase knowledge, TeardownCase teardown, PartMarks marks, Part part) =>
        part.Machines.Count > 0 || (marks.HasOwn(part.Id) && !knowledge.Codes.Any(c => c.Kind == "part" && c.Id != part.Id && knowledge.PartIs(c.Id, part.Id)
            && knowledge.Parts[c.Id].Machines.Any(teardown.Machine.Kinds.Contains)));

    private static (string[] Columns, bool Open) Columns(KnowledgeBase knowledge, Machine machine, Part part)
    {
        int? count = part.Count switch
        {
            "one" => 1,
            "mains" => machine.Mains,
            "cylinders" or "rods" => machine.Cylinders,
            _ => null,
        };
        if (part.Count == "one" || (part.Count is null && part.Machines.Count == 0))
        {
            return ([], false);
        }

        string[] halves = part.Places.Contains("half") && knowledge.PartIs(part.Id, "plain-bearing") && part.Count is not null ? [Letter(knowledge, "upper"), Letter(knowledge, "lower")] : [""];
        string[] numbers = count is { } n ? [.. Enumerable.Range(1, n).Select(i => i.ToString(CultureInfo.InvariantCulture))] : [.. Enumerable.Repeat("", OpenColumns)];
        return ([.. numbers.SelectMany(number => halves.Select(half => number + half))], count is null);
    }

    private static string Letter(KnowledgeBase knowledge, string place) => knowledge.Codes.FirstOrDefault(c => c.Kind == "place" && c.Id == place)?.Code ?? "";

    private static IReadOnlyList<(string, string)> Places(KnowledgeBase knowledge, Part part) =>
    [
        .. knowledge.Codes.Where(c => c.Kind == "place" && knowledge.Axes.Any(a => part.Places.Contains(a.Id) && a.Words.Contains(c.Id)))
            .Select(c => (c.Code, c.Id.Replace('-', ' '))),
    ];

    private static string Describe(KnowledgeBase knowledge, Machine machine)
    {
        List<string> words = [machine.Name ?? string.Join(", ", machine.Kinds.Select(k => knowledge.Machines[k].Name))];
        if (machine.Cylinders is { } cylinders)
        {
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{cylinders} cylinder{(cylinders == 1 ? "" : "s")}"));
        }

        if (machine.Mains is { } mains)
        {
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{mains} main bearing{(mains == 1 ? "" : "s")}"));
        }

        if (machine.NumberOne is { } end)
        {
            words.Add("No. 1 at the " + end);
        }

        return string.Join("; ", words);
    }

    private static IReadOnlyList<SheetQuestion> Symptoms(KnowledgeBase knowledge, TeardownCase teardown)
    {
        Dictionary<string, double> weight = Weigh(knowledge, teardown.Machine, c => c.Leaves.Where(l => l.Target == LinkTarget.Symptom));
        return
        [
            .. knowledge.Symptoms.Values.OrderByDescending(s => teardown.Symptoms.Any(k => k.Id == s.Id)).ThenByDescending(s => weight.GetValueOrDefault(s.Id)).ThenBy(s => s.Id, StringComparer.Ordinal)
                .Where(s => weight.ContainsKey(s.Id) && IsAbout(knowledge, teardown.Machine, s.Id)).Take(MostQuestions)
                .Select(s => new SheetQuestion(s.Id, s.Says, teardown.Symptoms.FirstOrDefault(k => k.Id == s.Id)?.Holds)),
        ];
    }

    private static IReadOnlyList<SheetQuestion> History(KnowledgeBase knowledge, TeardownCase teardown)
    {
        Dictionary<string, double> weight = Weigh(knowledge, teardown.Machine, c => c.RaisedBy.Where(l => l.Target == LinkTarget.History));
        return
        [
            .. knowledge.Circumstances.Values.Where(c => c.When is null && weight.ContainsKey(c.Id) && IsAbout(knowledge, teardown.Machine, c.Id))
                .OrderByDescending(s => teardown.History.Any(k => k.Id == s.Id)).ThenByDescending(c => c.HowCommon * weight[c.Id]).ThenBy(c => c.Id, StringComparer.Ordinal).Take(MostQuestions)
                .Select(c => new SheetQuestion(c.Id, c.Says, teardown.History.FirstOrDefault(k => k.Id == c.Id)?.Holds)),
        ];
    }

    private static bool IsAbout(KnowledgeBase knowledge, Machine machine, string id) => knowledge.FitOf(id, machine.Kinds, machine.Features) > 0;

    private static Dictionary<string, double> Weigh(KnowledgeBase knowledge, Machine machine, Func<Cause, IEnumerable<CauseLink>> links)
    {
        Dictionary<string, double> weight = new(StringComparer.Ordinal);
        foreach (CauseLink link in knowledge.Causes.Values.Where(c => CauseNetwork.Applies(c, machine)).SelectMany(links))
        {
            weight[link.Id] = weight.GetValueOrDefault(link.Id) + link.Strength;
        }

        return weight;
    }

    /// <summary>What some rule reads on these parts, and the diameters from which a shop works out wear and clearance.</summary>
    private static IReadOnlyList<SheetReading> Readings(KnowledgeBase knowledge, IReadOnlyList<SheetPart> parts)
    {
        string[] round = ["main-journal", "rod-journal", "main-bore", "rod-bore", "cylinder-bore", "cylinder-liner", "piston-skirt", "cam-journal"];
        HashSet<(string Part, string Quantity)> read =
        [
            .. knowledge.Findings.Values.SelectMany(f => Condition.Atoms(f.When)).OfType<ReadingCondition>().Select(r => (r.Part, r.Quantity)),
        ];
        return
        [
            .. parts.Where(p => p.Part.Machines.Count > 0).SelectMany(p => read.Where(r => r.Part == p.Part.Id || (!parts.Any(o => o.Part.Id == r.Part) && knowledge.PartIs(p.Part.Id, r.Part))).Select(r => r.Quantity)
                .Concat(round.Contains(p.Part.Id) ? ["diameter"] : []).Distinct().Order(StringComparer.Ordinal).Select(q => new SheetReading(p, q))),
        ];
    }
}
