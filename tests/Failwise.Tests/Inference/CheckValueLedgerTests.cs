using System.Reflection;

namespace Failwise.Tests.Inference;

/// <summary>Names the check value that a test method uses.</summary>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
internal sealed class CheckValueAttribute(string id) : Attribute
{
    public string Id { get; } = id;
}

/// <summary>Every check value that was collected for the inference is used by one test, or left out for a stated reason.</summary>
public sealed class CheckValueLedgerTests
{
    private static readonly string[] Collected =
    [
        "asia-prior-marginals",
        "asia-evidence-probability",
        "asia-posterior-asia-dysp",
        "alarm-burglary-jm",
        "alarm-explaining-away",
        "alarm-mixed-inference-misprint",
        "alarm-predictive",
        "sprinkler-cloudy",
        "wet-grass-3node",
        "joint-dentist",
        "weight-of-evidence-penny",
        "weight-of-evidence-repeats",
        "deciban-scale",
        "cf-conjunction-attenuation",
        "cf-parallel-positive",
        "snow-hard-evidence",
        "snow-virtual-evidence-one",
        "six-node-variable-elimination",
        "multi-state-belief-propagation",
        "noisy-or-fever-table",
        "noisy-or-leak-formula",
        "full-adder-consistency",
        "one-bit-adder-single-fault",
        "polybox-conflicts-diagnoses",
        "hitting-set-tree-seven-sets",
        "hitting-set-greedy-fails",
        "hitting-set-minimal-vs-minimum",
        "parsimonious-cover-example",
        "voi-shale-gas",
        "voi-oil-wildcatter",
        "voi-perfect-information",
        "constructed-two-level-noisy-or",
        "constructed-multi-level-noisy-or",
        "constructed-evidence-contributions",
        "constructed-next-best-check",
        "constructed-quickscore-cancellation",
        "constructed-repair-order",
        "constructed-beta-strength-update",
        "constructed-noisy-or-credit",
        "score-brier-binary",
        "score-log-loss",
        "score-top-k",
        "accuracy-top5-two-operators",
        "verbal-scale-estimative-words",
        "verbal-scale-ipcc",
        "verbal-survey-123",
        "verbal-survey-46",
        "verbal-modifier-halving",
        "cf-combination-all-cases",
        "constructed-conflict-measure",
        "constructed-medium-network",
    ];

    private static readonly Dictionary<string, string> LeftOut = new()
    {
        ["cf-conjunction-attenuation"] = "certainty factors are deliberately not used: two rules firing on one mark would count it twice",
        ["cf-parallel-positive"] = "certainty factors are deliberately not used",
        ["cf-combination-all-cases"] = "certainty factors are deliberately not used",
        ["one-bit-adder-single-fault"] = "needs a simulator of logic gates to find the conflicts; the inference has none",
        ["accuracy-top5-two-operators"] = "a published accuracy of another program; nothing here computes it",
        ["verbal-scale-estimative-words"] = "words for probabilities belong to the wording of reports, not to the inference",
        ["verbal-scale-ipcc"] = "words for probabilities belong to the wording of reports, not to the inference",
        ["verbal-survey-123"] = "words for probabilities belong to the wording of reports, not to the inference",
        ["verbal-survey-46"] = "words for probabilities belong to the wording of reports, not to the inference",
        ["verbal-modifier-halving"] = "words for probabilities belong to the wording of reports, not to the inference",
    };

    [Fact]
    public void Every_collected_check_value_is_used_once_or_left_out_for_a_reason()
    {
        var byMethod = typeof(CheckValueLedgerTests).Assembly.GetTypes()
            .SelectMany(t => t.GetMethods())
            .Where(m => m.IsDefined(typeof(FactAttribute)))
            .SelectMany(m => m.GetCustomAttributes<CheckValueAttribute>())
            .Select(a => a.Id);
        var accounted = byMethod.Concat(PublishedNetworks.Load().Entries.Select(e => e.Id)).Concat(LeftOut.Keys);

        accounted.Should().BeEquivalentTo(Collected).And.OnlyHaveUniqueItems();
    }

    [Fact]
    public void Nothing_is_left_out_without_a_reason()
    {
        LeftOut.Values.Should().OnlyContain(reason => reason.Length > 20);
    }
}
