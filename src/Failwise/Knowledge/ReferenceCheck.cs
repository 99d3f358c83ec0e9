using Failwise.Calculations;
using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>Checks that every id in the rules resolves, and that no chain bites its own tail.</summary>
internal sealed class ReferenceCheck(KnowledgeBase knowledge, ProblemList problems)
{
    public void Run()
    {
        foreach (Part part in knowledge.Parts.Values)
        {
            Each(part.KindOf, "FW012", "part", knowledge.Parts.Keys, part.At);
            Each(part.OrderedAs is null or Part.Fluid ? [] : [part.OrderedAs], "FW012", "part", knowledge.Parts.Keys, part.At);
            Each(part.Machines, "FW022", "machine kind", knowledge.Machines.Keys, part.At);
            Each(part.Needs, "FW019", "feature", knowledge.Features.Keys, part.At);
            Each(part.Access is { } cover ? [cover] : [], "FW100", "cover", knowledge.Covers.Keys, part.At);
            Each(part.Places, "FW014", "place axis", [.. knowledge.Axes.Select(a => a.Id)], part.At);
        }

        foreach (Feature feature in knowledge.Features.Values)
        {
            Location at = new("vocabulary/features.yaml", 0, 0);
            Each(feature.Share.Keys, "FW022", "machine kind", knowledge.Machines.Keys, at);
            Each(feature.ShownBy, "FW012", "part", knowledge.Parts.Keys, at);
        }

        CheckCodes();
        foreach (Pattern pattern in knowledge.Patterns.Values)
        {
            Each(pattern.KindOf, "FW013", "pattern", knowledge.Patterns.Keys, pattern.At);
            Each(pattern.LookAlikes.Select(l => l.Id), "FW013", "pattern", knowledge.Patterns.Keys, pattern.At);
            Sources(pattern.Sources, pattern.At);
        }

        foreach (Circumstance c in knowledge.Circumstances.Values)
        {
            Check(c.When);
            Sources(c.Sources, c.At);
        }

        foreach (Symptom s in knowledge.Symptoms.Values)
        {
            Each(s.KindOf, "FW018", "symptom", knowledge.Symptoms.Keys, s.At);
            Sources(s.Sources, s.At);
        }

        foreach (FindingRule rule in knowledge.Findings.Values)
        {
            Check(rule.When);
            foreach (Sign sign in rule.Refines)
            {
                CheckSign(sign, rule.At);
            }

            Sources(rule.Sources, rule.At);
        }

        foreach (Cause cause in knowledge.Causes.Values)
        {
            CheckCause(cause);
        }

        new WorkReferenceCheck(knowledge, problems).Run();

        foreach (Fit fit in knowledge.Fits)
        {
            Each(new[] { fit.Bore, fit.Shaft, fit.Of }.OfType<string>(), "FW012", "part", knowledge.Parts.Keys, fit.At);
        }

        foreach (LimitSet set in knowledge.Limits.Values)
        {
            Sources(set.Sources, set.At);
            foreach (LimitRow row in set.Rows)
            {
                Each([row.Part], "FW012", "part", knowledge.Parts.Keys, row.At);
            }
        }

        if (!knowledge.Sureness.ContainsKey("sure"))
        {
            problems.Error("FW006", new Location("vocabulary/words.yaml", 0, 0), "the rule base needs the word 'sure' under 'sureness': it weighs every plain observation.");
        }

        CheckCycles();
        CheckCovers();
        foreach (AskedOf asked in knowledge.AskedOf.Values)
        {
            Sources(asked.Sources, asked.At);
            Each(asked.Words, "FW017", "history word or symptom", [.. knowledge.Circumstances.Keys, .. knowledge.Symptoms.Keys], asked.At);
            Each(asked.Parts, "FW012", "part", knowledge.Parts.Keys, asked.At);
            Each(asked.Machines, "FW022", "machine kind", knowledge.Machines.Keys, asked.At);
            Each(asked.NotWith, "FW019", "feature", knowledge.Features.Keys, asked.At);
        }

        foreach (IntakeQuestion question in knowledge.Questions.Values)
        {
            CheckQuestion(question);
        }
    }

    private void CheckCovers()
    {
        foreach (Cover cover in knowledge.Covers.Values)
        {
            Each(cover.Behind, "FW100", "cover", knowledge.Covers.Keys, cover.At);
            HashSet<string> before = [.. cover.Behind];
            Stack<string> open = new(before);
            while (open.TryPop(out string? next))
            {
                foreach (string further in knowledge.Covers.TryGetValue(next, out Cover? c) ? c.Behind.Where(before.Add) : [])
                {
                    open.Push(further);
                }
            }

            if (before.Contains(cover.Id))
            {
                problems.Error("FW101", cover.At, $"'{cover.Id}' lies behind itself; a cover must be reachable from outside.");
            }
        }
    }

    private void CheckQuestion(IntakeQuestion question)
    {
        Sources(question.Sources, question.At);
        Each(question.Machines, "FW022", "machine kind", knowledge.Machines.Keys, question.At);
        Each(question.NotWith, "FW019", "feature", knowledge.Features.Keys, question.At);
        Each(question.KnownParts.Concat(question.LooksAt).Concat(question.When.SelectMany(w => w.Parts)), "FW012", "part", knowledge.Parts.Keys, question.At);
        Each([.. question.Access is { } access ? [access] : Array.Empty<string>()], "FW100", "cover", knowledge.Covers.Keys, question.At);
        Each(question.KnownPatterns.Concat(question.Shows).Concat(question.When.SelectMany(w => w.See)), "FW013", "pattern", knowledge.Patterns.Keys, question.At);
        Each(question.KnownSymptoms.Concat(question.When.SelectMany(w => w.Symptoms)), "FW018", "symptom", knowledge.Symptoms.Keys, question.At);
        Each(question.Covers, "FW017", "history word or symptom", [.. knowledge.Circumstances.Keys, .. knowledge.Symptoms.Keys], question.At);
        Each(question.KnownHistory.Concat(question.When.SelectMany(w => w.History)), "FW017", "history word", knowledge.Circumstances.Keys, question.At);
    }

    /// <summary>Codes have to resolve, and to mean one thing: people write them from paper.</summary>
    private void CheckCodes()
    {
        HashSet<string> places = [.. knowledge.Axes.SelectMany(a => a.Words)];
        Dictionary<string, ShortCode> seen = new(StringComparer.OrdinalIgnoreCase);
        foreach (ShortCode code in knowledge.Codes)
        {
            (string problem, IReadOnlyCollection<string> known) = code.Kind switch
            {
                "part" => ("FW012", [.. knowledge.Parts.Keys]),
                "place" => ("FW014", places),
                _ => ("FW013", (IReadOnlyCollection<string>)[.. knowledge.Patterns.Keys]),
            };
            Each([code.Id], problem, code.Kind, known, code.At);
            if (!seen.TryAdd(code.Kind + "/" + code.Code, code))
            {
                problems.Error("FW023", code.At, $"the {code.Kind} code '{code.Code}' stands already at {seen[code.Kind + "/" + code.Code].At}; codes are unique.");
            }
        }
    }

    private void CheckCause(Cause cause)
    {
        Each(cause.Machines, "FW022", "machine kind", knowledge.Machines.Keys, cause.At);
        Each(cause.Needs, "FW019", "feature", knowledge.Features.Keys, cause.At);
        Each(cause.GivesWayTo, "FW015", "cause", knowledge.Causes.Keys, cause.At);
        Each(cause.LooksLike.Select(l => l.Id), "FW015", "cause", knowledge.Causes.Keys, cause.At);
        Sources(cause.Sources, cause.At);
        foreach (CauseLink link in cause.Leaves.Concat(cause.LeadsTo).Concat(cause.RaisedBy))
        {
            Sources(link.Sources, link.At);
            switch (link.Target)
            {
                case LinkTarget.Sign:
                    CheckSign(link.Sign!, link.At);
                    break;
                case LinkTarget.Finding:
                    Each([link.Id], "FW016", "finding", knowledge.Findings.Keys, link.At);
                    break;
                case LinkTarget.Symptom:
                    Each([link.Id], "FW018", "symptom", knowledge.Symptoms.Keys, link.At);
                    break;
                case LinkTarget.Cause:
                    Each([link.Id], "FW015", "cause", knowledge.Causes.Keys, link.At);
                    break;
                default:
                    Each([link.Id], "FW017", "history word", knowledge.Circumstances.Keys, link.At);
                    break;
            }
        }
    }

    private void CheckSign(Sign sign, Location at)
    {
        Each([sign.Part], "FW012", "part", knowledge.Parts.Keys, at);
        Each([sign.Pattern], "FW013", "pattern", knowledge.Patterns.Keys, at);
    }

    private void Check(Condition? condition)
    {
        switch (condition)
        {
            case AllOf c:
                c.Parts.ToList().ForEach(Check);
                break;
            case AnyOf c:
                c.Parts.ToList().ForEach(Check);
                break;
            case NoneOf c:
                c.Parts.ToList().ForEach(Check);
                break;
            case SightingCondition c:
                Each([c.Part], "FW012", "part", knowledge.Parts.Keys, c.At);
                Each(c.See, "FW013", "pattern", knowledge.Patterns.Keys, c.At);
                Each(c.On, "FW014", "place", [.. knowledge.AxisOf.Keys], c.At);
                break;
            case ReadingCondition c:
                Each([c.Part], "FW012", "part", knowledge.Parts.Keys, c.At);
                break;
            case ResultCondition c:
                CheckResult(c);
                break;
            case StatedCondition c:
                (string code, string what, IEnumerable<string> known) = c.Kind switch
                {
                    StatedKind.History => ("FW017", "history word", knowledge.Circumstances.Keys),
                    StatedKind.Symptom => ("FW018", "symptom", knowledge.Symptoms.Keys),
                    StatedKind.Feature => ("FW019", "feature", knowledge.Features.Keys),
                    _ => ("FW016", "finding", knowledge.Findings.Keys),
                };
                Each([c.Id], code, what, known, c.At);
                break;
        }
    }

    private void CheckResult(ResultCondition c)
    {
        Each(c.Part is null ? [] : [c.Part], "FW012", "part", knowledge.Parts.Keys, c.At);
        if (CalculationCatalog.Find(c.Calculation) is not { } calculation)
        {
            problems.Error("FW063", c.At, $"unknown calculation '{Yaml.Shape.Short(c.Calculation)}'.{Suggest.Nearest(c.Calculation, [.. CalculationCatalog.All.Select(k => k.Id)])}");
        }
        else if (calculation.Outputs.FirstOrDefault(o => o.Name == c.Output) is not { } output)
        {
            problems.Error("FW064", c.At, $"'{c.Calculation}' has no result '{Yaml.Shape.Short(c.Output)}'.{Suggest.Nearest(c.Output, [.. calculation.Outputs.Select(o => o.Name)])}");
        }
        else if ((output.Unit.Length == 0) != (c.Is is not null) || (c.Is is null && c.Below is null && c.Above is null))
        {
            problems.Error("FW006", c.At, output.Unit.Length == 0
                ? $"'{c.Output}' is a word: write is with the word."
                : $"'{c.Output}' is a number{(output.Unit == "-" ? "" : " in " + output.Unit)}: write below, above or both.");
        }
    }

    private void Sources(IReadOnlyList<SourceRef> sources, Location at) =>
        Each(sources.Select(s => s.Id), "FW020", "source", knowledge.Sources.Keys, at);

    private void Each(IEnumerable<string> ids, string code, string what, IEnumerable<string> known, Location at) =>
        Unknown(problems, ids, code, what, known, at);

    internal static void Unknown(ProblemList problems, IEnumerable<string> ids, string code, string what, IEnumerable<string> known, Location at)
    {
        IReadOnlyCollection<string> words = known as IReadOnlyCollection<string> ?? [.. known];
        foreach (string id in ids.Where(id => !words.Contains(id)))
        {
            problems.Error(code, at, $"unknown {what} '{Yaml.Shape.Short(id)}'.{Suggest.Nearest(id, words)}");
        }
    }

    private void CheckCycles()
    {
        FindCycle("causes", knowledge.Causes.Values.ToDictionary(c => c.Id, c => (IReadOnlyList<string>)[.. c.LeadsTo.Select(l => l.Id)], StringComparer.Ordinal), id => knowledge.Causes[id].At);
        FindRuleCycle();
        FindCycle("pieces of work", knowledge.Work.Values.ToDictionary(w => w.Id, w => w.After, StringComparer.Ordinal), id => knowledge.Work[id].At);
        FindCycle("parts", knowledge.Parts.Values.ToDictionary(p => p.Id, p => p.KindOf, StringComparer.Ordinal), id => knowledge.Parts[id].At);
        FindCycle("patterns", knowledge.Patterns.Values.ToDictionary(p => p.Id, p => p.KindOf, StringComparer.Ordinal), id => knowledge.Patterns[id].At);
    }

    /// <summary>Findings and worked-out circumstances can ask about each other, so a loop may run through both.</summary>
    private void FindRuleCycle()
    {
        Dictionary<string, (Condition When, Location At)> rules = new(StringComparer.Ordinal);
        foreach (FindingRule f in knowledge.Findings.Values)
        {
            rules["finding " + f.Id] = (f.When, f.At);
        }

        foreach (Circumstance c in knowledge.Circumstances.Values.Where(c => c.When is not null))
        {
            rules["history " + c.Id] = (c.When!, c.At);
        }

        FindCycle("rules", rules.ToDictionary(r => r.Key, r => (IReadOnlyList<string>)[.. RulesIn(r.Value.When)], StringComparer.Ordinal), id => rules[id].At);
    }

    private static IEnumerable<string> RulesIn(Condition condition) => condition switch
    {
        AllOf c => c.Parts.SelectMany(RulesIn),
        AnyOf c => c.Parts.SelectMany(RulesIn),
        NoneOf c => c.Parts.SelectMany(RulesIn),
        StatedCondition { Kind: StatedKind.Finding } c => ["finding " + c.Id],
        StatedCondition { Kind: StatedKind.History } c => ["history " + c.Id],
        _ => [],
    };

    internal static IEnumerable<string> FindingsIn(Condition condition) => condition switch
    {
        AllOf c => c.Parts.SelectMany(FindingsIn),
        AnyOf c => c.Parts.SelectMany(FindingsIn),
        NoneOf c => c.Parts.SelectMany(FindingsIn),
        StatedCondition { Kind: StatedKind.Finding } c => [c.Id],
        _ => [],
    };

    private void FindCycle(string what, Dictionary<string, IReadOnlyList<string>> next, Func<string, Location> at)
    {
        Dictionary<string, int> state = new(StringComparer.Ordinal);
        foreach (string start in next.Keys.Order(StringComparer.Ordinal))
        {
            List<string> path = [];
            Visit(start, path);
        }

        void Visit(string id, List<string> path)
        {
            if (!next.TryGetValue(id, out IReadOnlyList<string>? following) || state.GetValueOrDefault(id) == 2)
            {
                return;
            }

            if (state.GetValueOrDefault(id) == 1)
            {
                int from = path.IndexOf(id);
                problems.Error("FW025", at(id), $"these {what} lead back to themselves: {string.Join(" → ", path.Skip(from).Append(id))}.");
                return;
            }

            state[id] = 1;
            path.Add(id);
            foreach (string n in following)
            {
                Visit(n, path);
            }

            path.RemoveAt(path.Count - 1);
            state[id] = 2;
        }
    }
}
