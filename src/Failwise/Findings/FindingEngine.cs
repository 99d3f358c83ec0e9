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
        return compiler.Compile([definitions.Create(new AnswerFromBench()), definitions.Create(new AnswerFromConclusion()), definitions.Create(new Conclude())]);
    });

    /// <summary>Chains the rules of <paramref name="knowledge"/> over the case.</summary>
    public static FindingSet Chain(KnowledgeBase knowledge, TeardownCase teardown, IReadOnlyList<Reading> readings)
    {
        Bench bench = new(knowledge, teardown, readings);
        List<Candidate> candidates = Candidates(knowledge, bench, teardown);
        ISession session = Factory.Value.CreateSession();
        session.Insert(bench);
        session.InsertAll(candidates.SelectMany(c => c.Questions));
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
    public string Key { get; } = key;

    public Condition When { get; } = when;

    public IReadOnlyList<Question> Questions { get; } = [.. ConditionTree.Atoms(when).Select(a => new Question(key, a))];
}

/// <summary>One atomic condition of one rule.</summary>
internal sealed class Question(string owner, Condition atom)
{
    public string Owner { get; } = owner;

    public Condition Atom { get; } = atom;

    /// <summary>Key of the rule whose conclusion answers this, when it asks about one.</summary>
    public string? AsksRule { get; } = atom switch
    {
        StatedCondition { Kind: StatedKind.Finding } c => "finding/" + c.Id,
        StatedCondition { Kind: StatedKind.History } c => "history/" + c.Id,
        _ => null,
    };

    public bool AsksFinding => Atom is StatedCondition { Kind: StatedKind.Finding };
}

internal sealed class Answered(Question question, Answer answer)
{
    public string Owner { get; } = question.Owner;

    public Question Question { get; } = question;

    public Answer Answer { get; } = answer;
}

internal sealed class Conclusion(string key, Answer answer)
{
    public string Key { get; } = key;

    public Answer Answer { get; } = answer;
}

/// <summary>What the case itself says answers a question.</summary>
internal sealed class AnswerFromBench : Rule
{
    public override void Define()
    {
        Question question = null!;
        Bench bench = null!;
        When()
            .Match(() => question, q => !q.AsksFinding)
            .Match(() => bench);
        Then().Yield(_ => new Answered(question, bench.Ask(question.Atom)));
    }
}

/// <summary>The conclusion of one rule answers a question of another; it lives only as long as that conclusion.</summary>
internal sealed class AnswerFromConclusion : Rule
{
    public override void Define()
    {
        Question question = null!;
        Conclusion conclusion = null!;
        When()
            .Match(() => question, q => q.AsksRule != null)
            .Match(() => conclusion, c => c.Key == question.AsksRule);
        Then().Yield(_ => Carry(question, conclusion));
    }

    private static Answered Carry(Question question, Conclusion conclusion)
    {
        Reason reason = new(question.AsksFinding ? "finding" : "history", conclusion.Key[(conclusion.Key.IndexOf('/') + 1)..]);
        return new Answered(question, conclusion.Answer with { Reasons = [reason] });
    }
}

/// <summary>All answers of a rule together give its conclusion.</summary>
internal sealed class Conclude : Rule
{
    public override void Define()
    {
        Candidate candidate = null!;
        IEnumerable<Answered> answers = null!;
        When()
            .Match(() => candidate)
            .Query(() => answers, q => q.Match<Answered>(a => a.Owner == candidate.Key).Collect());
        Then().Yield(_ => new Conclusion(candidate.Key, Evaluate(candidate, answers)));
    }

    private static Answer Evaluate(Candidate candidate, IEnumerable<Answered> answers)
    {
        ILookup<Condition, Answer> byAtom = answers.ToLookup(a => a.Question.Atom, a => a.Answer, ReferenceEqualityComparer.Instance as IEqualityComparer<Condition>);
        return ConditionTree.Judge(candidate.When, atom => byAtom[atom].OrderByDescending(a => a.Truth != Truth.Unknown).FirstOrDefault()
            ?? new Answer(Truth.Unknown, [], ["not yet known"], 1000));
    }
}
