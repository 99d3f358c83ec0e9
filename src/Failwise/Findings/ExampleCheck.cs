using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Findings;

/// <summary>Runs every rule's own examples: those that must fire it, and those that must leave it silent.</summary>
public static class ExampleCheck
{
    /// <summary>Problems of the examples, each at its place in the rule file.</summary>
    public static IReadOnlyList<Problem> Run(KnowledgeBase knowledge)
    {
        ProblemList problems = new();
        foreach (FindingRule rule in knowledge.Findings.Values.OrderBy(r => r.Id, StringComparer.Ordinal))
        {
            foreach (RuleExample example in rule.Examples)
            {
                CaseReading reading = CaseReader.ReadFacts(knowledge, example.Facts, rule.Id);
                if (reading.Case is null)
                {
                    problems.AddRange(reading.Problems);
                    continue;
                }

                FindingSet found = FindingEngine.Chain(knowledge, reading.Case, Measurements.MeasurementAssessor.Assess(knowledge, reading.Case));
                bool fired = found.Fired.Any(f => f.Id == rule.Id);
                if (fired != example.Fires)
                {
                    Finding why = FindingEngine.Explain(knowledge, reading.Case, Measurements.MeasurementAssessor.Assess(knowledge, reading.Case), found, rule.Id);
                    string reason = example.Fires
                        ? why.Answer.Missing.Count > 0 ? $" Missing: {string.Join("; ", why.Answer.Missing)}." : " A look contradicts it."
                        : "";
                    problems.Error("FW032", example.Facts.At, example.Fires
                        ? $"this example must fire '{rule.Id}', but it stays silent.{reason}"
                        : $"this example must leave '{rule.Id}' silent, but it fires.");
                }
            }
        }

        return problems.Sorted();
    }
}
