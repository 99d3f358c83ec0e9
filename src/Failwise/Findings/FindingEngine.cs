using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Measurements;
using NRules;
using NRules.Fluent;
using NRules.Fluent.Dsl;
using NRules.RuleModel;

namespace Failwise.Findings;

/// <summary>Derives findings and circumstances from a case by forward chaining, until nothing new follows.</summary>
public static class FindingEngine
{
    // One engine rule per YAML rule would cost about 2 ms each to compile at every start; this one serves any number of YAML rules as facts.
    private static readonly Lazy<ISessionFactory> Factory = new(() =>
    {
        RuleCompiler compiler = new();
        RuleDefinitionFactory definitions = new();
        return compiler.Compile([definitions.Create(new Conclude())]);
    });

    /// <summary>Chains the rules of <paramref name="knowledge"/> over the case.</summary>
    public static FindingSet Chain(KnowledgeBase knowledge, TeardownCase teardown, Measured measured)
    {
        Bench bench = new(knowledge, teardown, measured);
        List<Candidate> candidates = Candidates(knowledge, bench, teardown);
        Candidate.Introduce(candidates);
        ISession session = Factory.Value.CreateSession();
        session.Insert(bench);
        session.InsertAll(candidates);
        session.Fire();
        Dictionary<string, Answer> conclusions = candidates.ToDictionary(c => c.Key, c => c.Answer!, StringComparer.Ordinal);
        return Gather(knowledge, teardown, conclusions);
    }

    /// <summary>What became of one rule: why it fired, or what is missing, or what contradicts it.</summary>
    public static Finding Explain(KnowledgeBase knowledge, TeardownCase teardown, Measured measured, FindingSet found, string ruleId)
    {
        FindingRule rule = knowledge.Findings[ruleId];
        Bench bench = new(knowledge, teardown, measured);
        return new Finding(rule, ConditionTree.Judge(rule.When, atom => AskWithFindings(atom, bench, found)));
    }

    /// <summary>Answers every atomic condition of a rule by itself, for "why not".</summary>
    public static IReadOnlyList<(Condition Atom, Answer Answer)> ExplainParts(
        KnowledgeBase knowledge, TeardownCase teardown, Measured measured, FindingSet found, string ruleId)
    {
        Bench bench = new(knowledge, teardown, measured);
        return [.. Condition.Atoms(knowledge.Findings[ruleId].When).Select(atom => (atom, AskWithFindings(atom, bench, found)))];
    }

    private static Answer AskWithFindings(Condition atom, Bench bench, FindingSet found)
    {
        if (atom is StatedCondition { Kind: StatedKind.Finding } f)
        {
            Truth truth = found.Fired.Any(x => x.Id == f.Id) ? Truth.Holds : found.Contradicted.Any(x => x.Id == f.Id) ? Truth.Contradicted : Truth.Unknown;
            return new Answer(truth, [new Reason("finding", f.Id)], truth == Truth.Unknown ? [$"finding {f.Id} is open"] : [], 1000);
        }

        Answer answer = bench.Ask(atom);
        return atom is StatedCondition { Kind: StatedKind.History } h && answer.Truth == Truth.Unknown && found.Circumstances.TryGetValue(h.Id, out bool holds)
            ? new Answer(holds ? Truth.Holds : Truth.Contradicted, [new Reason("history", h.Id)], [], 1000)
            : answer;
    }

    /// <summary>Only rules that this case can reach: some part they ask about was looked at, or something they ask about was stated.</summary>
    private static List<Candidate> Candidates(KnowledgeBase knowledge, Bench bench, TeardownCase teardown)
    {
        Dictionary<string, Condition> rules = new(StringComparer.Ordinal);
        foreach (Circumstance circumstance in knowledge.Circumstances.Values.Where(c => c.When is not null))
        {
            rules["history/" + circumstance.Id] = circumstance.When!;
        }

        foreach (FindingRule finding in knowledge.Findings.Values)
        {
            rules["finding/" + finding.Id] = finding.When;
        }

        // Rules that the case reaches by itself, then those that ask about them, and so on: each rule and each question is met once.
        Dictionary<string, List<string>> askers = new(StringComparer.Ordinal);
        HashSet<string> reached = new(StringComparer.Ordinal);
        Queue<string> open = new();
        foreach ((string key, Condition when) in rules)
        {
            foreach (Condition atom in Condition.Atoms(when))
            {
                if (Candidate.RuleAsked(atom) is { } asked)
                {
                    (askers.TryGetValue(asked, out List<string>? list) ? list : askers[asked] = []).Add(key);
                }

                if (!reached.Contains(key) && IsReached(atom))
                {
                    reached.Add(key);
                    open.Enqueue(key);
                }
            }
        }

        while (open.TryDequeue(out string? key))
        {
            foreach (string asker in askers.GetValueOrDefault(key) ?? [])
            {
                if (reached.Add(asker))
                {
                    open.Enqueue(asker);
                }
            }
        }

        return [.. reached.Order(StringComparer.Ordinal).Select(key => new Candidate(key, rules[key]))];

        bool IsReached(Condition atom) => atom switch
        {
            SightingCondition c => bench.Knows(c.Part),
            ReadingCondition c => bench.Knows(c.Part),
            ResultCondition c => bench.HasWorked(c.Calculation),
            NumberCondition c => teardown.Numbers.ContainsKey(c.Number),
            StatedCondition { Kind: StatedKind.Finding } => false,
            _ => bench.Ask(atom).Truth != Truth.Unknown,
        };
    }

    private static FindingSet Gather(KnowledgeBase knowledge, TeardownCase teardown, Dictionary<string, Answer> conclusions)
    {
        List<Finding> fired = [], contradicted = [];
        foreach (FindingRule rule in knowledge.Findings.Values.OrderBy(r => r.Id, StringComparer.Ordinal))
        {
            if (conclusions.TryGetValue("finding/" + rule.Id, out Answer? answer) && answer.Truth != Truth.Unknown)
            {
                (answer.Truth == Truth.Holds ? fired : contradicted).Add(new Finding(rule, answer));
            }
        }

        SortedDictionary<string, bool> circumstances = new(StringComparer.Ordinal);
        foreach ((string key, Answer answer) in conclusions.Where(c => c.Key.StartsWith("history/", StringComparison.Ordinal) && c.Value.Truth != Truth.Unknown))
        {
            circumstances[key["history/".Length..]] = answer.Truth == Truth.Holds;
        }

        foreach (Statement s in teardown.History)
        {
            circumstances[s.Id] = s.Holds;
        }

        return new FindingSet(fired, contradicted, circumstances);
    }
}

/// <summary>Judges conditions made of conditions.</summary>
internal static class ConditionTree
{
    public static Answer Judge(Condition condition, Func<Condition, Answer> ask) => condition switch
    {
        AllOf c => All([.. c.Parts.Select(p => Judge(p, ask))]),
        AnyOf c => Any([.. c.Parts.Select(p => Judge(p, ask))]),
        NoneOf c => All([.. c.Parts.Select(p => Not(Judge(p, ask)))]),
        _ => ask(condition),
    };

    private static Answer Not(Answer a) => a with
    {
        Truth = a.Truth switch { Truth.Holds => Truth.Contradicted, Truth.Contradicted => Truth.Holds, _ => Truth.Unknown },
    };

    private static Answer All(Answer[] parts)
    {
        Answer[] against = Array.FindAll(parts, p => p.Truth == Truth.Contradicted);
        return against.Length > 0 ? Join(Truth.Contradicted, against)
            : Array.TrueForAll(parts, p => p.Truth == Truth.Holds) ? Join(Truth.Holds, parts)
            : Join(Truth.Unknown, parts);
    }

    private static Answer Any(Answer[] parts)
    {
        Answer[] holding = Array.FindAll(parts, p => p.Truth == Truth.Holds);
        return holding.Length > 0 ? Join(Truth.Holds, holding) with { Sure = holding.Max(p => p.Sure) }
            : Array.TrueForAll(parts, p => p.Truth == Truth.Contradicted) ? Join(Truth.Contradicted, parts)
            : Join(Truth.Unknown, parts);
    }

    private static Answer Join(Truth truth, Answer[] parts) => new(
        truth, [.. parts.SelectMany(p => p.Reasons).Distinct()], [.. parts.SelectMany(p => p.Missing).Distinct()], parts.Min(p => p.Sure));
}

/// <summary>
/// A YAML rule as a fact of the engine. It knows which rules ask about its conclusion, so that a conclusion wakes just those: joining
/// every rule with every conclusion would grow with the square of the rule base.
/// </summary>
internal sealed class Candidate(string key, Condition when)
{
    private readonly List<Candidate> askers = [];
    private readonly Dictionary<string, Answer> heard = new(StringComparer.Ordinal);

    public string Key { get; } = key;

    /// <summary>What the rule concluded so far; null before its first turn.</summary>
    public Answer? Answer { get; private set; }

    /// <summary>Tells each candidate whose conclusions it has to hear.</summary>
    public static void Introduce(IReadOnlyCollection<Candidate> candidates)
    {
        Dictionary<string, Candidate> byKey = candidates.ToDictionary(c => c.Key, StringComparer.Ordinal);
        foreach (Candidate candidate in candidates)
        {
            foreach (string asked in Condition.Atoms(candidate.When).Select(RuleAsked).OfType<string>().Distinct())
            {
                if (byKey.TryGetValue(asked, out Candidate? source))
                {
                    source.askers.Add(candidate);
                }
            }
        }
    }

    public Condition When { get; } = when;

    /// <summary>Judges the rule from the case and from what other rules concluded so far.</summary>
    /// <returns>The rules that have to think again because of it.</returns>
    public IReadOnlyList<Candidate> Conclude(Bench bench)
    {
        Answer answer = ConditionTree.Judge(When, atom => Ask(atom, bench));
        bool same = Answer is { } before && before.Truth == answer.Truth && before.Sure.Equals(answer.Sure) && before.Missing.SequenceEqual(answer.Missing);
        Answer = answer;
        if (same)
        {
            return [];
        }

        askers.ForEach(a => a.heard[Key] = answer);
        return askers;
    }

    private Answer Ask(Condition atom, Bench bench)
    {
        bool aboutFinding = atom is StatedCondition { Kind: StatedKind.Finding };
        Answer own = aboutFinding ? new Answer(Truth.Unknown, [], ["not yet known"], 1000) : bench.Ask(atom);
        return own.Truth == Truth.Unknown && RuleAsked(atom) is { } rule && heard.TryGetValue(rule, out Answer? other)
            ? other with { Reasons = [new Reason(aboutFinding ? "finding" : "history", rule[(rule.IndexOf('/') + 1)..])] }
            : own;
    }

    public static string? RuleAsked(Condition atom) => atom switch
    {
        StatedCondition { Kind: StatedKind.Finding } c => "finding/" + c.Id,
        StatedCondition { Kind: StatedKind.History } c => "history/" + c.Id,
        _ => null,
    };
}

/// <summary>A rule concludes, and concludes anew whenever a conclusion that it asks about comes or changes.</summary>
internal sealed class Conclude : Rule
{
    public override void Define()
    {
        Candidate candidate = null!;
        Bench bench = null!;
        When().Match(() => candidate).Match(() => bench);
        Then().Do(context => context.UpdateAll(candidate.Conclude(bench)));
    }
}
