using Failwise.Knowledge;

namespace Failwise.Findings;

/// <summary>Whether a condition holds. Unknown means that nobody looked or said; it is never the same as contradicted.</summary>
public enum Truth { Unknown, Holds, Contradicted }

/// <summary>One fact behind a finding, or against it.</summary>
/// <param name="Kind">observation, history, symptom, feature, number, reading or finding.</param>
/// <param name="Id">Number of the observation or reading, or the id of the word.</param>
public sealed record Reason(string Kind, string Id);

/// <summary>The answer to a condition, with its reasons and what is still missing.</summary>
/// <param name="Sure">Likelihood ratio of the least sure observer behind it, at least 1.</param>
public sealed record Answer(Truth Truth, IReadOnlyList<Reason> Reasons, IReadOnlyList<string> Missing, double Sure);

/// <summary>A rule and what became of it in this case.</summary>
public sealed record Finding(FindingRule Rule, Answer Answer)
{
    public string Id => Rule.Id;

    public bool Fired => Answer.Truth == Truth.Holds;
}

/// <summary>Circumstances and findings that follow from a case.</summary>
/// <param name="Fired">Findings that hold, by id.</param>
/// <param name="Contradicted">Findings that were looked for and do not hold, by id.</param>
/// <param name="Circumstances">Circumstances that are stated or follow (true), or are denied (false).</param>
public sealed record FindingSet(
    IReadOnlyList<Finding> Fired, IReadOnlyList<Finding> Contradicted, IReadOnlyDictionary<string, bool> Circumstances);
