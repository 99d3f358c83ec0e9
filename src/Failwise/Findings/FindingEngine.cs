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
    // One rule per YAML rule would cost about 2 ms each to compile at every start; these few serve any number of YAML rules as facts.
    private static readonly Lazy<ISessionFactory> Factory = new(() =>
    {
        RuleCompiler compiler = new();
        RuleDefinitionFactory definitions = new();
        return compiler.Compile([definitions.Create(new ConcludeFromBench()), definitions.Create(new ConcludeFromOthers())]);
    });

    /// <summary>Chains the rules of <paramref name="knowledge"/> over the case.</summary>
    public static FindingSet Chain(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings)
    {
        Bench bench = new(knowledge, teardown, readings);
        List<Candidate> candidates = Candidates(knowledge, bench, teardown);
        ISession session = Factory.Value.CreateSession();
        session.Insert(bench);
        session.InsertAll(candidates);
        session.Fire();
        Dictionary<string, Answer> conclusions = session.Query<Conclusion>().ToDictionary(c => c.Key, c => c.Answer, StringComparer.Ordinal);
        return Gather(knowledge, teardown, conclusions);
    }

    /// <summary>What became of one rule: why it fired, or what is missing, or what contradicts it.</summary>
    public static Finding Explain(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings, FindingSet found, string ruleId)
    {
        FindingRule rule = knowledge.Findings[ruleId];
        Bench bench = new(knowledge, teardown, readings);
        return new Finding(rule, ConditionTree.Judge(rule.When, atom => AskWithFindings(atom, bench, found)));
    }

    /// <summary>Answers every atomic condition of a rule by itself, for "why not".</summary>
    public static IReadOnlyList<(Condition Atom, Answer Answer)> ExplainParts(
        KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings, FindingSet found, string ruleId)
    {
        Bench bench = new(knowledge, teardown, readings);
        return [.. ConditionTree.Atoms(knowledge.Findings[ruleId].When).Select(atom => (atom, AskWithFindings(atom, bench, found)))];
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
        HashSet<string> reached = new(StringComparer.Ordinal);
        List<(string Key, Condition When)> waiting =
        [
            .. knowledge.Circumstances.Values.Where(c => c.When is not null).Select(c => ("history/" + c.Id, c.When!)),
            .. knowledge.Findings.Values.Select(f => ("finding/" + f.Id, f.When)),
        ];
        List<Candidate> candidates = [];
        for (bool grew = true; grew;)
        {
            grew = false;
            for (int i = waiting.Count - 1; i >= 0; i--)
            {
                if (ConditionTree.Atoms(waiting[i].When).Any(IsReached))
                {
                    candidates.Add(new Candidate(waiting[i].Key, waiting[i].When));
                    reached.Add(waiting[i].Key);
                    waiting.RemoveAt(i);
                    grew = true;
                }
            }
        }

        candidates.Sort((a, b) => string.CompareOrdinal(a.Key, b.Key));
        return candidates;

        bool IsReached(Condition atom) => atom switch
        {
            SightingCondition c => bench.Knows(c.Part),
            ReadingCondition c => bench.Knows(c.Part),
            NumberCondition c => teardown.Numbers.ContainsKey(c.Number),
            StatedCondition { Kind: StatedKind.Finding } c => reached.Contains("finding/" + c.Id),
            StatedCondition { Kind: StatedKind.History } c => reached.Contains("history/" + c.Id) || bench.Ask(c).Truth != Truth.Unknown,
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
    public static IEnumerable<Condition> Atoms(Condition condition) => condition switch
    {
        AllOf c => c.Parts.SelectMany(Atoms),
        AnyOf c => c.Parts.SelectMany(Atoms),
        NoneOf c => c.Parts.SelectMany(Atoms),
        _ => [condition],
    };

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

/// <summary>A YAML rule as a fact of the engine.</summary>
internal sealed class Candidate(string key, Condition when)
{
    private readonly string[] others = [.. ConditionTree.Atoms(when).Select(RuleAsked).OfType<string>().Distinct()];

    public string Key { get; } = key;

    public Condition When { get; } = when;

    /// <summary>True when the rule asks about the conclusions of other rules.</summary>
    public bool AsksOthers => others.Length > 0;

    public bool Asks(string key) => Array.IndexOf(others, key) >= 0;

    /// <summary>Judges the rule from the case and from what other rules concluded so far.</summary>
    public Conclusion Conclude(Bench bench, IEnumerable<Conclusion> known)
    {
        Dictionary<string, Conclusion> byKey = known.ToDictionary(c => c.Key, StringComparer.Ordinal);
        return new Conclusion(Key, ConditionTree.Judge(When, Ask));

        Answer Ask(Condition atom)
        {
            bool aboutFinding = atom is StatedCondition { Kind: StatedKind.Finding };
            Answer own = aboutFinding ? new Answer(Truth.Unknown, [], ["not yet known"], 1000) : bench.Ask(atom);
            return own.Truth == Truth.Unknown && RuleAsked(atom) is { } rule && byKey.TryGetValue(rule, out Conclusion? other)
                ? other.Answer with { Reasons = [new Reason(aboutFinding ? "finding" : "history", rule[(rule.IndexOf('/') + 1)..])] }
                : own;
        }
    }

    private static string? RuleAsked(Condition atom) => atom switch
    {
        StatedCondition { Kind: StatedKind.Finding } c => "finding/" + c.Id,
        StatedCondition { Kind: StatedKind.History } c => "history/" + c.Id,
        _ => null,
    };
}

/// <summary>What became of a rule.</summary>
internal sealed class Conclusion(string key, Answer answer)
{
    public string Key { get; } = key;

    public Answer Answer { get; } = answer;
}

/// <summary>A rule that asks only about the case concludes from the case.</summary>
internal sealed class ConcludeFromBench : Rule
{
    public override void Define()
    {
        Candidate candidate = null!;
        Bench bench = null!;
        When()
            .Match(() => candidate, c => !c.AsksOthers)
            .Match(() => bench);
        Then().Yield(_ => Conclude(candidate, bench));
    }

    private static Conclusion Conclude(Candidate candidate, Bench bench) => candidate.Conclude(bench, []);
}

/// <summary>A rule that asks about other rules concludes anew whenever one of their conclusions comes or changes.</summary>
internal sealed class ConcludeFromOthers : Rule
{
    public override void Define()
    {
        Candidate candidate = null!;
        Bench bench = null!;
        IEnumerable<Conclusion> known = null!;
        When()
            .Match(() => candidate, c => c.AsksOthers)
            .Match(() => bench)
            .Query(() => known, q => q.Match<Conclusion>(c => candidate.Asks(c.Key)).Collect());
        Then().Yield(_ => Conclude(candidate, bench, known));
    }

    private static Conclusion Conclude(Candidate candidate, Bench bench, IEnumerable<Conclusion> known) => candidate.Conclude(bench, known);
}
