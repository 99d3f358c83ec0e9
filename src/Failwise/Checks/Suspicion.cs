using Failwise.Cases;
using Failwise.Causes;
using Failwise.Inference;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>The roots under suspicion, what each would let one see, and what each look is therefore worth.</summary>
internal sealed class Suspicion
{
    private const int MostSuspects = 60;
    private const int LeastSuspects = 25;
    private const int AskedExactly = 10;
    private const int MostSigns = 4;
    private const int MovedShown = 3;
    // Judgement: the owner often does not know, and a symptom that was plain would mostly have been told unasked.
    private const double HistoryKnown = 0.5;
    private const double SymptomKnown = 0.4;
    private const double LeastRaised = 0.05;
    private const double CloserLook = 0.3;
    private const double ThirdMark = 0.8;
    private const double LookedMinutes = 2;
    private readonly KnowledgeBase knowledge;
    private readonly TeardownCase teardown;
    private readonly CauseRanking ranking;
    private readonly Cause[] suspects;
    private readonly double[] now;
    private readonly double[] weight;
    private readonly LookCatalog catalog;
    private readonly CauseNetwork net;
    private readonly Dictionary<int, double[]> given = [];
    private readonly Dictionary<int, double> usual = [];

    private Suspicion(KnowledgeBase knowledge, TeardownCase teardown, CauseRanking ranking, Cause[] suspects, double[] now)
    {
        this.knowledge = knowledge;
        this.teardown = teardown;
        this.ranking = ranking;
        this.suspects = suspects;
        this.now = now;
        weight = Weigh();
        catalog = new LookCatalog(knowledge, teardown, ranking.Evidence);
        foreach (Cause root in suspects)
        {
            catalog.Add(root);
        }

        catalog.Narrow();

        net = (ranking.Net ?? new CauseNetwork(knowledge, teardown, ranking.Evidence)).With(catalog.Items);
        Scan();
    }

    /// <summary>The likeliest roots; where the case says too little to suspect anybody, the commonest that this machine can have.</summary>
    public static Suspicion Of(KnowledgeBase knowledge, TeardownCase teardown, CauseRanking ranking)
    {
        List<(Cause Root, double P)> roots = [.. ranking.Ranked.Where(r => r.Probability > 0.002).Take(MostSuspects).Select(r => (r.Cause, r.Probability))];
        if (roots.Count < LeastSuspects)
        {
            PartPresence presence = new(knowledge, teardown);
            HashSet<string> have = [.. roots.Select(r => r.Root.Id)];
            roots.AddRange(knowledge.Causes.Values
                .Where(c => c.IsRoot && !have.Contains(c.Id) && CauseNetwork.Applies(c, teardown.Machine) && presence.Built(c.Needs) >= PartPresence.Hardly)
                .OrderByDescending(c => c.HowCommon).ThenBy(c => c.Id, StringComparer.Ordinal)
                .Take(LeastSuspects - roots.Count).Select(c => (c, c.HowCommon)));
        }

        return new Suspicion(knowledge, teardown, ranking, [.. roots.Select(r => r.Root)], [.. roots.Select(r => r.P)]);
    }

    public KnowledgeBase Knowledge => knowledge;

    /// <summary>The roots under suspicion with their probabilities, likeliest first.</summary>
    public IEnumerable<(Cause Root, double P)> Suspects => suspects.Select((s, i) => (s, now[i]));

    /// <summary>Every open sign with its chance if the root were at work, and as things stand.</summary>
    public IEnumerable<(OpenSign Sign, double Given, double Usual)> SignsOf(Cause root)
    {
        int i = Array.IndexOf(suspects, root);
        return catalog.Looks().SelectMany(l => l.Signs).Where(s => net.Has(s.Item)).Select(s => (s, given[net.NumberOf(s.Item)][i], usual[net.NumberOf(s.Item)]));
    }

    /// <summary>Everything that could be looked at or asked, with its value; the best looks are valued by the exact engine.</summary>
    public IEnumerable<Candidate> Candidates(PlanOptions how)
    {
        Opening opening = new(knowledge, teardown, how.AllOpen);
        Task<CaseInference> engine = Task.Run(() => new CaseInference(net));
        (OpenLook Look, OpenSign[] Shown, double Minutes)[] looks = Shortlist(opening, how.Most);
        EvidenceItem[] questions = how.OnlyLooks
            ? [] : [.. catalog.Items.Where(i => i.Kind != EvidenceKind.Sign && net.Has(i) && IsAbout(i) && QuickGain([net.NumberOf(i)], null) >= CheckPlanner.LeastGain)];
        ExactSuspects exact = new(net, engine.GetAwaiter().GetResult(), suspects, weight, [.. looks.SelectMany(l => NodesOf(l.Shown)).Concat(questions.Select(net.NumberOf)).Distinct()]);
        List<(Candidate Candidate, int[] Nodes)> valued = [.. looks.Select(l => (Value(exact, l.Look, l.Shown, l.Minutes), NodesOf(l.Shown)))];
        IEnumerable<Candidate> all = new LookAhead(exact, opening).Rate(valued);
        return how.OnlyLooks ? all : [.. all, .. questions.Select(q => Value(exact, q)), .. Histories()];
    }

    /// <summary>The looks that promise most for their time by the quick forecast, each with the signs that count most.</summary>
    private (OpenLook Look, OpenSign[] Shown, double Minutes)[] Shortlist(Opening opening, int most)
    {
        List<(OpenLook Look, OpenSign[] Shown, double Gain, double Minutes)> looks = [];
        foreach (OpenLook look in catalog.Looks())
        {
            OpenSign[] shown = [.. look.Signs.Where(s => net.Has(s.Item)).OrderByDescending(s => QuickGain([s])).ThenBy(s => s.Item.Id, StringComparer.Ordinal).Take(MostSigns)];
            if (shown.Length > 0)
            {
                double minutes = shown.Max(s => knowledge.Parts[s.Part].Minutes) + shown.Max(s => s.Pattern.Check?.Minutes ?? LookedMinutes);
                looks.Add((look, shown, QuickGain(shown) * Discount(look), minutes));
            }
        }

        return
        [
            .. looks.OrderByDescending(l => l.Gain / (l.Minutes + opening.MinutesTo(l.Look.Cover) + CheckPlanner.FetchMinutes)).ThenBy(l => l.Look.Part, StringComparer.Ordinal)
                .Take(AskedExactly + most).Select(l => (l.Look, l.Shown, l.Minutes)),
        ];
    }

    private int[] NodesOf(OpenSign[] shown) => [.. shown.Select(s => net.NumberOf(s.Item))];

    /// <summary>A part of which one mark is known is looked at more closely before its neighbours; one that was looked at and told of, hardly again.</summary>
    private static double Discount(OpenLook look) =>
        look.Presence * (!look.SeenBefore ? 1 : look.Marks switch { 1 => 1, 2 => ThirdMark, _ => CloserLook });

    /// <summary>
    /// A root counts as far as this case has raised it above its usual frequency: being sure that an ordinary old machine is not worn out
    /// somewhere else as well is no progress. Where nothing has been raised, all count.
    /// </summary>
    private double[] Weigh()
    {
        double[] raised = [.. suspects.Select((s, i) => now[i] <= 0 ? 0 : Math.Clamp(1 - BuildFit.Commonness(knowledge, s) / now[i], 0, 1))];
        return raised.Select((w, i) => w * now[i]).Sum() >= LeastRaised ? raised : [.. suspects.Select(_ => 1.0)];
    }

    private void Scan()
    {
        Dictionary<string, double> posterior = new(ranking.States, StringComparer.Ordinal);
        foreach (RankedCause r in ranking.Ranked)
        {
            posterior[r.Cause.Id] = r.Probability;
        }

        int[] leaves = [.. catalog.Items.Where(net.Has).Select(net.NumberOf)];
        PromiseScan scan = new(
            net.Network, n => net.Network.Nodes[n].Id is var id && id.StartsWith("cause/", StringComparison.Ordinal) && posterior.TryGetValue(id[6..], out double p) ? p : null, leaves);
        foreach (int leaf in leaves)
        {
            given[leaf] = new double[suspects.Length];
            usual[leaf] = scan.Now(leaf);
        }

        for (int i = 0; i < suspects.Length; i++)
        {
            double[] row = net.Has(suspects[i]) ? scan.Given(net.NumberOf(suspects[i]), leaves) : [.. leaves.Select(l => usual[l])];
            for (int k = 0; k < leaves.Length; k++)
            {
                given[leaves[k]][i] = row[k];
            }
        }
    }

    private double QuickGain(IReadOnlyList<OpenSign> signs) => QuickGain([.. signs.Select(s => net.NumberOf(s.Item))], null);

    private double QuickGain(int[] nodes, Func<int, bool>? counted)
    {
        double sum = 0;
        Span<double> before = stackalloc double[nodes.Length];
        Span<double> with = stackalloc double[nodes.Length];
        for (int i = 0; i < suspects.Length; i++)
        {
            if (counted is not null && !counted(i))
            {
                continue;
            }

            bool moves = false;
            for (int k = 0; k < nodes.Length; k++)
            {
                before[k] = usual[nodes[k]];
                with[k] = given[nodes[k]][i];
                moves |= before[k] != with[k];
            }

            sum += !moves ? 0 : weight[i] * LookValue.QuickGain(now[i], before, with);
        }

        return sum;
    }

    private Candidate Value(ExactSuspects exact, OpenLook look, OpenSign[] shown, double minutes)
    {
        (double gain, IReadOnlyList<CheckOutcome> outcomes) = Ask(
            exact, [.. shown.Select(s => (net.NumberOf(s.Item), s.Item.Id, CheckWording.Of(knowledge, look, s)))], ("sound", CheckWording.None(look)));
        bool destroys = shown.Any(s => s.Pattern.Check?.Destroys == true);
        string id = "look/" + look.Part + (shown.Any(s => s.Pattern.Check is { Minutes: > 12 }) ? "/test" : "");
        PlannedCheck check = new(
            id, CheckKind.Look, [.. shown.Select(s => s.Part).Append(look.Part).Distinct()], CheckWording.Of(knowledge, look, shown), null,
            CheckWording.How(shown), CheckWording.Tool(shown), gain * Discount(look), minutes, 0, null, 0, outcomes,
            [.. shown.SelectMany(s => s.Pattern.Check?.LostBy ?? []).Distinct().Order(StringComparer.Ordinal)], destroys, CheckWording.Answer(look, shown));
        return new Candidate(check, look.Cover, Direction(NodesOf(shown)));
    }

    private Candidate Value(ExactSuspects exact, EvidenceItem question)
    {
        int node = net.NumberOf(question);
        (double gain, IReadOnlyList<CheckOutcome> outcomes) = Ask(exact, [(node, "yes", Stated(question.Says))], ("no", "not so"));
        return new Candidate(Of(question, gain, outcomes), null, Direction([node]));
    }

    /// <summary>The fact itself stands for "yes": many questions ask how, when or what, and some could be answered either way.</summary>
    private static string Stated(string says) => (says.StartsWith("Not so: ", StringComparison.Ordinal) ? says["Not so: ".Length..] : says).TrimEnd('.');

    private IEnumerable<Candidate> Histories()
    {
        foreach ((Circumstance asked, double chance, double[] ifSo, double[] ifNot) in new QuestionValue(knowledge, suspects, now).Open(teardown, ranking.Evidence))
        {
            double gain = LookValue.Gain(now, [(chance, ifSo), (1 - chance, ifNot)], weight);
            CheckOutcome[] outcomes = [new("yes", Stated(asked.Says), chance, Moved(ifSo)), new("no", "not so", 1 - chance, Moved(ifNot))];
            PlannedCheck check = new(
                "history/" + asked.Id, CheckKind.History, [], asked.Ask!, asked.Says, null, null, HistoryKnown * gain, 1, 0, null, 0, outcomes, [], false,
                $"history: {asked.Id}, or {{not: {asked.Id}}}");
            yield return new Candidate(check, null, [.. now.Select((p, i) => ifSo[i] - p)]);
        }
    }

    private bool IsAbout(EvidenceItem item) => item.Kind != EvidenceKind.Symptom
        || knowledge.FitOf(item.Id[(item.Id.IndexOf('/') + 1)..], teardown.Machine.Kinds, teardown.Machine.Features) > 0;

    private PlannedCheck Of(EvidenceItem item, double gain, IReadOnlyList<CheckOutcome> outcomes)
    {
        string id = item.Id[(item.Id.IndexOf('/') + 1)..];
        if (item.Kind == EvidenceKind.Symptom)
        {
            Symptom symptom = knowledge.Symptoms[id];
            return new PlannedCheck(item.Id, CheckKind.Symptom, [], CheckWording.Of(symptom), symptom.Says, null, null, SymptomKnown * gain, 1, 0, null, 0, outcomes, [], false,
                $"symptoms: {id}, or {{not: {id}}}");
        }

        FindingRule rule = knowledge.Findings[id];
        return new PlannedCheck(item.Id, CheckKind.Finding, [.. LookCatalog.PartsOf(rule.When).Distinct()], CheckWording.Of(rule), rule.Why, rule.Check?.How,
            rule.Check?.Tool, gain, rule.Check?.Minutes ?? 10, 0, null, 0, outcomes, rule.Check?.LostBy ?? [], rule.Check?.Destroys == true, null);
    }

    /// <summary>Asks the exact engine: the first sign that shows, or none; roots outside its reach add what the quick forecast says.</summary>
    private (double Gain, IReadOnlyList<CheckOutcome> Outcomes) Ask(ExactSuspects exact, (int Node, string Id, string Says)[] signs, (string Id, string Says) none)
    {
        Belief start = exact.Start;
        List<(double Chance, IReadOnlyList<double> After)> answers = [];
        List<CheckOutcome> outcomes = [];
        List<Evidence> absent = [];
        double left = 1;
        double[] rest = [.. start.Probabilities];
        foreach ((int node, string id, string says) in signs)
        {
            Belief after = exact.After([.. absent, Evidence.Present(node)]);
            double chance = Math.Clamp(Math.Exp(after.LogEvidence - start.LogEvidence), 0, left);
            Add(id, says, chance, after.Probabilities);
            left -= chance;
            rest = [.. rest.Select((p, i) => p - chance * after.Probabilities[i])];
            absent.Add(Evidence.Absent(node));
        }

        // What is expected after the look is what is held now: that settles what finding nothing means.
        Add(none.Id, none.Says, left, [.. rest.Select((p, i) => left > 1e-9 ? Math.Clamp(p / left, 0, 1) : start.Probabilities[i])]);
        double beyond = QuickGain([.. signs.Select(s => s.Node)], i => !exact.Roots.Contains(suspects[i]));
        return (LookValue.Gain(start.Probabilities, answers, exact.Weights) + beyond, outcomes);

        void Add(string id, string says, double chance, double[] after)
        {
            answers.Add((chance, after));
            outcomes.Add(new CheckOutcome(id, says, chance, Moved(exact.Roots.Select((root, i) => (root, start.Probabilities[i], after[i])))));
        }
    }

    private IReadOnlyList<Mover> Moved(double[] after) => Moved(suspects.Select((s, i) => (s, now[i], after[i])));

    private static IReadOnlyList<Mover> Moved(IEnumerable<(Cause Root, double Before, double After)> all) =>
    [
        .. all.Where(m => Math.Abs(m.After - m.Before) > 0.01)
            .OrderByDescending(m => Math.Abs(m.After - m.Before)).ThenBy(m => m.Root.Id, StringComparer.Ordinal).Take(MovedShown)
            .Select(m => new Mover(m.Root, Math.Min(CauseRanking.Ceiling, m.Before), Math.Min(CauseRanking.Ceiling, m.After))),
    ];

    /// <summary>How much finding anything of it would raise each suspect.</summary>
    private double[] Direction(int[] nodes)
    {
        double silent = nodes.Aggregate(1.0, (left, n) => left * (1 - usual[n]));
        return [.. suspects.Select((_, i) => weight[i] * now[i] * (1 - now[i]) * (silent - nodes.Aggregate(1.0, (left, n) => left * (1 - given[n][i]))))];
    }
}
