using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>Finds the questions that experienced people would ask back because the case leaves something open.</summary>
internal sealed class IntakeQuestions
{
    private readonly KnowledgeBase knowledge;
    private readonly TeardownCase teardown;
    private readonly Observation[] seen;
    private readonly PartPresence presence;
    private readonly HashSet<string> closed;

    public IntakeQuestions(KnowledgeBase knowledge, TeardownCase teardown)
    {
        this.knowledge = knowledge;
        this.teardown = teardown;
        seen = [.. teardown.Observations.Where(o => o.Look == Look.Seen)];
        presence = new PartPresence(knowledge, teardown);
        closed =
        [
            .. teardown.Observations.Where(o => o.Look == Look.Sound && o.Spread is At.Unsaid or At.All).Select(o => o.Part),
            .. teardown.NotLookedAt.Where(n => n.Reason is not null).Select(n => n.Part),
        ];
    }

    /// <summary>
    /// Adds the questions that this case brings up. One that covers history words or symptoms is asked in their place, and is worth at least
    /// what the most telling of them is.
    /// </summary>
    /// <param name="openShare">How much is open yet, 0 to 1: what a general answer is worth goes down with it.</param>
    /// <param name="onlyLooks">True for those that a glance answers: nobody is there to be asked.</param>
    /// <param name="opening">What still has to come off: a question about several parts is asked at the one that lies nearest.</param>
    public List<Candidate> Merge(IReadOnlyList<Candidate> candidates, double openShare, Opening opening, bool onlyLooks = false)
    {
        List<Candidate> left = [.. candidates];
        List<Candidate> questions = [];
        foreach (IntakeQuestion q in knowledge.Questions.Values.Where(q => !onlyLooks || q.Shows.Count > 0).OrderBy(q => q.Id, StringComparer.Ordinal))
        {
            bool about = (q.Machines.Count == 0 || q.Machines.Any(teardown.Machine.Kinds.Contains)) && !q.NotWith.Any(teardown.Machine.Features.Contains);
            double worth = about && !IsAnswered(q) ? q.When.Where(IsOpen).Select(w => w.Worth).DefaultIfEmpty(0).Max() : 0;
            string[] parts = worth > 0 ? PartsOf(q) : [];
            if (worth > 0 && (parts.Length > 0 || q.LooksAt.Count == 0))
            {
                Candidate[] covered = [.. left.Where(c => IsCovered(c.Check, q, parts))];
                left.RemoveAll(covered.Contains);
                string? cover = q.Access ?? parts.Select(p => knowledge.Parts[p].Access).MinBy(opening.MinutesTo);
                questions.Add(Of(q, parts, worth * openShare, covered) with { Cover = cover });
            }
        }

        return [.. left, .. questions];
    }

    private static bool IsCovered(PlannedCheck check, IntakeQuestion q, string[] parts) => check.Kind switch
    {
        CheckKind.History or CheckKind.Symptom => q.Covers.Contains(check.Id[(check.Id.IndexOf('/') + 1)..]),
        CheckKind.Look => check.Parts.Count > 0 && check.Parts.All(parts.Contains),
        _ => false,
    };

    /// <summary>
    /// The parts that this machine is likely to have and that are not known to be sound or out of reach. Where one of a kind is damaged, such as a
    /// rod journal among journals, it is meant.
    /// </summary>
    private string[] PartsOf(IntakeQuestion q) =>
    [
        .. q.LooksAt.SelectMany(p => seen.Select(o => o.Part).Where(s => s != p && knowledge.PartIs(s, p)).Distinct().Order(StringComparer.Ordinal).DefaultIfEmpty(p))
            .Where(p => presence.Of(p) >= PartPresence.Hardly && !knowledge.PartLine(p).Any(closed.Contains)).Distinct(),
    ];

    private static Candidate Of(IntakeQuestion q, string[] parts, double worth, Candidate[] covered)
    {
        Candidate? best = covered.OrderByDescending(c => c.Check.Gain).ThenBy(c => c.Check.Id, StringComparer.Ordinal).FirstOrDefault();
        double gain = Math.Max(worth * (q.Minutes + CheckPlanner.FetchMinutes), best?.Check.Gain ?? 0);
        IReadOnlyList<CheckOutcome> outcomes = best?.Check.Outcomes ?? [];
        PlannedCheck check = new(
            "ask/" + q.Id, CheckKind.Gap, parts, q.Asks, q.Why, best?.Check.How, best?.Check.Tool, gain, q.Minutes, 0, null, 0, outcomes, best?.Check.LostBy ?? [], false, q.Answer ?? best?.Check.Answer);
        return new Candidate(check, null, parts.Length > 0 && best is not null ? best.Direction : []);
    }

    private bool IsAnswered(IntakeQuestion q) =>
        teardown.Notes.Any(n => n.StartsWith(q.Asks, StringComparison.Ordinal))
        || (q.KnownByReading && teardown.Measurements.Count > 0)
        || teardown.Observations.Any(o => q.KnownParts.Any(p => knowledge.PartIs(o.Part, p)))
        || teardown.Observations.Any(o => o.Pattern is not null && q.KnownPatterns.Any(p => knowledge.PatternIs(o.Pattern, p)))
        || teardown.Symptoms.Any(s => q.KnownSymptoms.Contains(s.Id))
        || teardown.History.Any(s => q.KnownHistory.Contains(s.Id));

    private bool IsOpen(GapTrigger trigger)
    {
        if ((trigger.Symptoms.Count > 0 && !teardown.Symptoms.Any(s => s.Holds && trigger.Symptoms.Contains(s.Id)))
            || (trigger.History.Count > 0 && !teardown.History.Any(s => s.Holds && trigger.History.Contains(s.Id))))
        {
            return false;
        }

        Observation[] about = [.. seen.Where(o => Fits(o, trigger))];
        bool narrowed = trigger.Parts.Count > 0 || trigger.See.Count > 0;
        return trigger.Gap switch
        {
            GapKind.NoNumber => about.Any(o => o.Spread == At.Unsaid && MayBeSeveral(o.Part)),
            GapKind.OthersUnsaid => about.Any(o => MayBeSeveral(o.Part) && o.Spread is not (At.All or At.Unsaid) && !OthersSaid(o)),
            GapKind.NoPlace => about.Any(o => o.On.Count == 0),
            GapKind.NoReading => teardown.Measurements.Count == 0 && (about.Length > 0 || (!narrowed && trigger.Symptoms.Count > 0)),
            GapKind.NothingSeen => seen.Length == 0,
            GapKind.SeveralDamaged => about.Select(o => LookCatalog.FamilyOf(knowledge, o.Part)).Distinct().Count() >= 2,
            _ => about.Length > 0 || !narrowed,
        };
    }

    private bool Fits(Observation o, GapTrigger trigger) =>
        (trigger.Parts.Count == 0 || trigger.Parts.Any(p => knowledge.PartIs(o.Part, p)))
        && (trigger.See.Count == 0 ? !knowledge.Patterns[o.Pattern!].Sound : trigger.See.Any(p => knowledge.PatternIs(o.Pattern!, p)));

    private bool MayBeSeveral(string part) => knowledge.Parts[part].Count != "one";

    /// <summary>Another one of the same part was looked at, whatever was found.</summary>
    private bool OthersSaid(Observation mark) => teardown.Observations.Any(o =>
        o.Part == mark.Part && (o.Look == Look.Sound || (o.Spread == At.Numbers && o.Places.Any(n => !mark.Places.Contains(n)))));
}
