using Failwise.Findings;
using Failwise.Knowledge;

namespace Failwise.Causes;

/// <summary>What sort of fact a piece of evidence is.</summary>
public enum EvidenceKind { Sign, SoundPart, NotFound, Symptom, Finding, Circumstance }

/// <summary>One piece of evidence as the network sees it.</summary>
/// <param name="Id">Stable id: main-bearing/wiped, symptom/…, finding/…, history/….</param>
/// <param name="Says">A sentence for people.</param>
/// <param name="Present">True when the thing was there, false when someone looked and it was not.</param>
/// <param name="Ratio">Likelihood ratio of the report, at least 1; infinity for a stated fact.</param>
/// <param name="Reasons">Observations, words or readings behind it.</param>
/// <param name="Important">True when it is a real mark of damage, not a trace and not a usual sign of age.</param>
public sealed record EvidenceItem(
    string Id, EvidenceKind Kind, string Says, bool Present, double Ratio, IReadOnlyList<Reason> Reasons, bool Important);

/// <summary>How much one piece of evidence speaks for or against a cause, found by leaving it out.</summary>
/// <param name="Decibans">10 log10 of the change in odds; positive speaks for the cause.</param>
/// <param name="Sources">Sources of the link through which it speaks.</param>
public sealed record WeighedEvidence(EvidenceItem Item, double Decibans, IReadOnlyList<SourceRef> Sources)
{
    /// <summary>The weight in a word.</summary>
    public string Word => Math.Abs(Decibans) switch { < 3 => "slight", < 7 => "moderate", < 13 => "strong", _ => "very strong" };
}

/// <summary>A step on the way from a root to what it left behind.</summary>
/// <param name="Id">A cause id, or the id of the evidence at the end.</param>
/// <param name="Probability">Probability of the state, 0 to 0.98; null for the evidence at the end.</param>
public sealed record ChainStep(string Id, string Says, double? Probability);

/// <summary>A root cause in the ranking.</summary>
/// <param name="Probability">Posterior, at most 0.98: nobody should be surer than that from a bench.</param>
/// <param name="Prior">Before the evidence of this case.</param>
/// <param name="For">Evidence for, strongest first.</param>
/// <param name="Against">Evidence against, strongest first.</param>
/// <param name="Chains">From the root to the damage, one per group of signs, most telling first.</param>
/// <param name="Unexplained">Important evidence that this cause does not reach.</param>
public sealed record RankedCause(
    Cause Cause, double Probability, double Prior, IReadOnlyList<WeighedEvidence> For, IReadOnlyList<WeighedEvidence> Against,
    IReadOnlyList<IReadOnlyList<ChainStep>> Chains, IReadOnlyList<EvidenceItem> Unexplained)
{
    /// <summary>Another root of the ranking that may have brought this one about; null when none is at least possible.</summary>
    public RootBefore? After { get; init; }
}

/// <summary>A root that may have brought another about.</summary>
/// <param name="Way">What lies between the two, from the first to the second; empty when it does so by itself.</param>
public sealed record RootBefore(Cause Root, IReadOnlyList<ChainStep> Way);

/// <summary>The set of roots that together account best for what was found.</summary>
/// <param name="Needed">For each member, how much worse the story becomes without it [deciban].</param>
public sealed record JointStory(IReadOnlyList<Cause> Roots, IReadOnlyDictionary<string, double> Needed);

/// <summary>What may be said.</summary>
public enum VerdictKind { RootNamed, Contested, NotEnoughEvidence, NormalWear }

/// <summary>The verdict and the reasons for it.</summary>
/// <param name="Roots">Ids of the roots named or contested.</param>
public sealed record Verdict(VerdictKind Kind, IReadOnlyList<string> Roots, IReadOnlyList<string> Reasons);

/// <summary>The ranking of root causes.</summary>
/// <param name="Ranked">Roots that the evidence touches, likeliest first.</param>
/// <param name="States">Probability of each mechanism or damage state the evidence touches.</param>
/// <param name="Unexplained">Important evidence that nothing in the rule base explains well.</param>
/// <param name="SomethingElse">Probability that none of the listed roots is at work.</param>
/// <param name="Note">Set when the inference had to be approximated.</param>
public sealed record CauseRanking(
    Verdict Verdict, IReadOnlyList<RankedCause> Ranked, IReadOnlyDictionary<string, double> States, JointStory Story,
    IReadOnlyList<EvidenceItem> Evidence, IReadOnlyList<EvidenceItem> Unexplained, double SomethingElse, string? Note)
{
    /// <summary>Never claim more than this.</summary>
    public const double Ceiling = 0.98;

    /// <summary>From here on a cause is called possible.</summary>
    public const double Possible = 0.20;

    /// <summary>The network that was asked, for further questions.</summary>
    internal CauseNetwork? Net { get; init; }

    /// <summary>A probability in words.</summary>
    public static string WordFor(double probability) => Math.Round(probability, 2) switch
    {
        >= 0.95 => "almost certain",
        >= 0.80 => "very likely",
        >= 0.55 => "likely",
        >= 0.45 => "about even",
        >= Possible => "possible",
        >= 0.05 => "unlikely",
        _ => "very unlikely",
    };
}
