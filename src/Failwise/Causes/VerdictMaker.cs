namespace Failwise.Causes;

/// <summary>Decides what may be said: a root named, contested, not enough evidence, or normal wear. Each has its reason.</summary>
internal static class VerdictMaker
{
    // Thresholds are judgement, checked against solved cases; docs/how-it-decides.md says what each does.
    private const double NamedFrom = 0.5;
    private const double ContestedFrom = 0.15;
    private const double LeastWeight = 10;
    private const double ClearLead = 5;
    private const double OftenFlips = 0.2;
    private const double NothingBelow = 0.35;

    public static Verdict WithoutRoots(IReadOnlyList<EvidenceItem> open, bool looked) => open.Count == 0
        ? !looked ? Unseen() : new Verdict(VerdictKind.NormalWear, [], ["Nothing was found that points to a cause to correct."])
        : new Verdict(VerdictKind.NotEnoughEvidence, [], [$"Nothing in the rule base explains: {List(open)}."]);

    /// <summary>What was told is no look at the parts: nobody calls a machine sound from its papers.</summary>
    private static Verdict Unseen() => new(VerdictKind.NotEnoughEvidence, [], ["No part was looked at yet, so nothing can be said of its state."]);

    public static Verdict Decide(
        IReadOnlyList<RankedCause> ranked, JointStory story, IReadOnlyList<EvidenceItem> items, IReadOnlyList<EvidenceItem> unexplained,
        double somethingElse, bool looked, Func<string, double> flips)
    {
        RankedCause first = ranked[0];
        bool damage = items.Any(i => i.Important);
        // Wear that came with the hours is not a fault to trace, however sure it is.
        if (!damage && (first.Probability < NamedFrom || first.Cause.Group == "wear-out"))
        {
            // A machine that was noticed to run badly is not called sound, even where no mark shows yet.
            EvidenceItem[] noticed = [.. items.Where(i => i is { Kind: EvidenceKind.Symptom, Present: true })];
            return noticed.Length == 0 && !looked ? Unseen() : noticed.Length > 0
                ? new Verdict(VerdictKind.NotEnoughEvidence, [], [$"No mark found so far points to a cause, but it was noticed: {List(noticed)}."])
                : new Verdict(VerdictKind.NormalWear, [], ["What was found is what a machine of this age shows; no mark points to a cause to correct."]);
        }

        List<string> doubts = [];
        // What all the evidence together has moved: pieces that say the same cover for each other, so their single weights would add up to too little.
        double weight = Lead(first.Probability, first.Prior);
        RankedCause? rival = ranked.Skip(1).FirstOrDefault(r => !story.Roots.Contains(r.Cause) || !story.Roots.Contains(first.Cause));
        if (first.Probability < NamedFrom)
        {
            doubts.Add($"The likeliest root, '{first.Cause.Title}', reaches only {Percent(first.Probability)}.");
        }

        if (weight < LeastWeight)
        {
            doubts.Add($"The evidence for '{first.Cause.Title}' is thin ({weight:0} deciban in all; 10 are wanted).");
        }

        if (rival is not null && Lead(first.Probability, rival.Probability) < ClearLead)
        {
            doubts.Add($"'{first.Cause.Title}' ({Percent(first.Probability)}) and '{rival.Cause.Title}' ({Percent(rival.Probability)}) lie close together.");
        }

        EvidenceItem[] open = [.. unexplained.Where(u => first.Unexplained.Contains(u))];
        int important = items.Count(i => i.Important);
        if (open.Length > 0 && 2 * open.Length >= important)
        {
            doubts.Add($"Much of what was found stays unexplained: {List(open)}.");
        }

        if (doubts.Count == 0 && first.Probability < 0.8 && flips(first.Cause.Id) is > OftenFlips and var share)
        {
            doubts.Add($"The order is not firm: when the strengths of the rules are moved by one step, another root leads in {Percent(share)} of the trials.");
        }

        if (doubts.Count == 0)
        {
            return new Verdict(VerdictKind.RootNamed, [.. story.Roots.Where(r => Leading(ranked, r.Id) >= NamedFrom).Select(r => r.Id).DefaultIfEmpty(first.Cause.Id)], []);
        }

        string[] contested = [.. ranked.Where(r => r.Probability >= ContestedFrom).Take(4).Select(r => r.Cause.Id)];
        bool few = contested.Length >= 1 && first.Probability >= NothingBelow && weight >= LeastWeight / 2;
        return few && (contested.Length >= 2 || first.Probability >= NamedFrom)
            ? new Verdict(VerdictKind.Contested, contested, doubts)
            : new Verdict(VerdictKind.NotEnoughEvidence, contested, doubts);
    }

    private static double Leading(IReadOnlyList<RankedCause> ranked, string id) => ranked.First(r => r.Cause.Id == id).Probability;

    private static double Lead(double first, double second) => 10 * Math.Log10(first / (1 - first) / (second / (1 - second)));

    private static string Percent(double p) => $"{100 * p:0} %";

    private static string List(IEnumerable<EvidenceItem> items) => string.Join("; ", items.Take(4).Select(i => i.Says));
}
