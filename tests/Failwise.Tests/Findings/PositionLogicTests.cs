using Failwise.Cases;
using Failwise.Findings;
using Failwise.Knowledge;
using Failwise.Measurements;

namespace Failwise.Tests.Findings;

/// <summary>One test a condition word, each with facts that fulfil it, facts that contradict it, and facts that leave it open.</summary>
public class PositionLogicTests
{
    private const string Fed = "{kind: engine, cylinders: 4, mains: 5, feed: [1, 2, 3, 4, 5]}";
    private const string FedFromRear = "{kind: engine, cylinders: 4, mains: 5, feed: [5, 4, 3, 2, 1]}";
    private const string DriveFirst = "{kind: engine, cylinders: 4, mains: 5, drive-end: first}";

    [Theory]
    [InlineData("{part: main-bearing, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, see: scored}", "Contradicted")]
    [InlineData("{part: main-bearing, not: wiped}", "Contradicted")]
    [InlineData("{part: oil-pump, see: sound}", "Unknown")]
    [InlineData("{part: main-bearing, not: scored}", "Unknown")]
    public void A_sighting_holds_where_the_pattern_was_seen(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, see: scored}", "Contradicted")]
    [InlineData("{part: oil-filter, see: worn}", "Unknown")]
    public void A_narrower_pattern_on_a_narrower_part_fulfils_a_broader_condition(string facts, string expected) =>
        Judge("{part: plain-bearing, see: worn}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: plain-bearing, see: wiped}", "Unknown")]
    [InlineData("{part: main-bearing, see: worn}", "Contradicted")]
    public void A_broader_sighting_does_not_fulfil_a_narrower_condition(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: scored}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, see: sound}", "Contradicted")]
    [InlineData("{part: oil-pump, see: scored}", "Unknown")]
    public void Any_pattern_of_a_list_will_do(string facts, string expected) =>
        Judge("{part: main-bearing, see: [wiped, scored]}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: 3, see: wiped, rest: sound}", "Holds")]
    [InlineData("{part: main-bearing, at: one, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: [2, 3], see: wiped, rest: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, at: all, see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, at: 3, see: wiped}", "Unknown")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void One_means_exactly_one_of_several_looked_at(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, count: one}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: [2, 3], see: wiped, rest: sound}", "Holds")]
    [InlineData("{part: main-bearing, at: some, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: all, see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, at: 3, see: wiped}", "Unknown")]
    public void Some_means_at_least_one_but_not_all(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, count: some}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: 1-3, see: wiped, rest: sound}", "Holds")]
    [InlineData("{part: main-bearing, at: most, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: 1-2, see: wiped, rest: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void Most_means_more_than_half_of_those_looked_at(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, count: most}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: all, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: 1-2, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: 1-4, see: wiped, rest: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, at: 3, see: wiped}", "Unknown")]
    public void All_means_every_one_looked_at_and_two_at_least(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, count: all}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: 1-4, see: wiped, rest: sound}", "Holds")]
    [InlineData("{part: main-bearing, at: all, see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, at: 1-3, see: wiped, rest: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, at: 1-2, see: wiped}", "Unknown")]
    public void All_but_one_means_a_single_one_escaped(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, count: all-but-one}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: [1, 3, 5], see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: [1, 3], see: wiped, rest: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, at: [1, 3], see: wiped}", "Unknown")]
    public void At_least_three_counts_the_marked_places(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, count: at-least 3}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: [1, 5], see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: one, see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, at: 3, see: wiped}", "Unknown")]
    public void Two_or_more_counts_the_marked_places(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, count: two-or-more}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: 2-3, see: wiped, rest: sound}", "Holds")]
    [InlineData("{part: main-bearing, at: [1, 4], see: wiped, rest: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, at: all, see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void Neighbours_stand_side_by_side_and_are_not_everywhere(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: neighbours}", facts).Should().Be(expected);

    [Theory]
    [InlineData(Fed, "{part: main-bearing, at: 1, see: wiped}", "Holds")]
    [InlineData(FedFromRear, "{part: main-bearing, at: 1, see: wiped}", "Contradicted")]
    [InlineData(FedFromRear, "{part: main-bearing, at: 5, see: wiped}", "Holds")]
    [InlineData(Fed, "{part: main-bearing, see: wiped}", "Unknown")]
    public void First_on_feed_follows_the_order_in_which_the_oil_arrives(string machine, string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: first-on-feed}", facts, machine: machine).Should().Be(expected);

    [Theory]
    [InlineData(Fed, "{part: main-bearing, at: 5, see: wiped}", "Holds")]
    [InlineData(Fed, "{part: main-bearing, at: last-on-feed, see: wiped}", "Holds")]
    [InlineData(FedFromRear, "{part: main-bearing, at: 5, see: wiped}", "Contradicted")]
    [InlineData(Fed, "{part: main-bearing, see: wiped}", "Unknown")]
    public void Last_on_feed_follows_the_order_in_which_the_oil_arrives(string machine, string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: last-on-feed}", facts, machine: machine).Should().Be(expected);

    [Theory]
    [InlineData(Fed, "{part: main-bearing, at: 1, see: wiped, extent: light}, {part: main-bearing, at: 4-5, see: wiped, extent: heavy}", "Holds")]
    [InlineData(FedFromRear, "{part: main-bearing, at: 1, see: wiped, extent: light}, {part: main-bearing, at: 4-5, see: wiped, extent: heavy}", "Contradicted")]
    [InlineData(Fed, "{part: main-bearing, at: all, see: wiped, extent: heavy}", "Contradicted")]
    [InlineData(Fed, "{part: main-bearing, at: 5, see: wiped, extent: heavy}", "Unknown")]
    public void Worse_along_feed_compares_the_far_places_with_the_near_ones(string machine, string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: worse-along-feed}", facts, machine: machine).Should().Be(expected);

    [Theory]
    [InlineData(Bench.FiveMains, "{part: main-bearing, at: 5, see: wiped}", "Holds")]
    [InlineData(DriveFirst, "{part: main-bearing, at: 5, see: wiped}", "Contradicted")]
    [InlineData(Bench.FiveMains, "{part: main-bearing, at: [1, 5], see: wiped}", "Contradicted")]
    [InlineData(Bench.FiveMains, "{part: main-bearing, see: wiped}", "Unknown")]
    public void Drive_end_is_the_last_number_unless_the_case_says_first(string machine, string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: drive-end}", facts, machine: machine).Should().Be(expected);

    [Theory]
    [InlineData(Bench.FiveMains, "{part: main-bearing, at: 1, see: wiped}", "Holds")]
    [InlineData(DriveFirst, "{part: main-bearing, at: 1, see: wiped}", "Contradicted")]
    [InlineData(Bench.FiveMains, "{part: main-bearing, see: wiped}", "Unknown")]
    public void Free_end_is_the_other_one(string machine, string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: free-end}", facts, machine: machine).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: 3, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, at: [3, 5], see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void Middle_keeps_clear_of_both_ends(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: middle}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, at: [1, 5], see: wiped, rest: sound}", "Holds")]
    [InlineData("{part: main-bearing, at: 1, see: wiped, rest: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, at: all, see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void Ends_are_both_ends_and_not_the_whole_row(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: ends}", facts).Should().Be(expected);

    [Theory]
    [InlineData("history: [same-place-failed-before]\n", "Holds")]
    [InlineData("history: [{not: same-place-failed-before}]\n", "Contradicted")]
    [InlineData("", "Unknown")]
    public void Same_place_again_asks_the_history(string history, string expected) =>
        Judge("{part: main-bearing, see: wiped, where: same-place-again}", "{part: main-bearing, at: 3, see: wiped}", history).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped, on: front-edge}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, on: both-edges}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void One_edge_means_only_one(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, lie: one-edge}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped, on: both-edges}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, on: front-edge}, {part: main-bearing, see: wiped, on: rear-edge}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, on: front-edge}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void Both_edges_means_front_and_rear(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, lie: both-edges}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped, on: [upper, front-edge]}, {part: main-bearing, see: wiped, on: [lower, rear-edge]}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, on: [upper, front-edge]}, {part: main-bearing, see: wiped, on: [lower, front-edge]}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped, on: front-edge}", "Unknown")]
    public void Diagonal_means_opposite_edges_of_the_two_halves(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, lie: diagonal}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped, on: lower}, {part: main-bearing, see: sound, on: upper}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, on: lower}, {part: main-bearing, see: wiped, on: upper}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped, on: lower}", "Unknown")]
    public void One_half_needs_a_look_at_the_other_half(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, lie: one-half}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped, on: lower}, {part: main-bearing, see: wiped, on: upper}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, on: lower}, {part: main-bearing, see: sound, on: upper}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped, on: lower}", "Unknown")]
    public void Both_halves_means_upper_and_lower(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, lie: both-halves}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped, extent: heavy}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, extent: light}", "Contradicted")]
    [InlineData("{part: oil-pump, see: wiped, extent: heavy}", "Unknown")]
    public void Extent_asks_for_at_least_that_much_and_an_unstated_one_counts_as_moderate(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, extent: moderate}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped, on: lower}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped, on: all-round}", "Holds")]
    [InlineData("{part: main-bearing, see: sound, on: lower}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped, on: upper}", "Unknown")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void On_asks_for_the_place_and_a_look_elsewhere_says_nothing(string facts, string expected) =>
        Judge("{part: main-bearing, see: wiped, on: lower}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: sound}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped}", "Contradicted")]
    [InlineData("{part: main-bearing, see: polished}", "Unknown")]
    [InlineData("{part: oil-pump, see: sound}", "Unknown")]
    public void Sound_means_that_someone_looked_and_nothing_was_wrong(string facts, string expected) =>
        Judge("{part: main-bearing, see: sound}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: sound}", "Holds")]
    [InlineData("{part: main-bearing, not: wiped}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped}", "Contradicted")]
    [InlineData("{part: oil-pump, see: sound}", "Unknown")]
    public void None_holds_only_where_someone_looked(string facts, string expected) =>
        Judge("{all: [{any: [{part: main-bearing, see: sound}, {part: oil-pump, see: sound}, {part: main-bearing, see: wiped}, {part: main-bearing, see: scored}, {feature: diesel}]}, {none: [{part: main-bearing, see: wiped}]}]}", facts, machine: "{kind: engine, mains: 5, features: [diesel]}")
            .Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}", "Holds")]
    [InlineData("{part: main-bearing, see: wiped}, {part: oil-pump, see: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, see: wiped}", "Unknown")]
    public void All_needs_every_condition(string facts, string expected) =>
        Judge("{all: [{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}]}", facts).Should().Be(expected);

    [Theory]
    [InlineData("{part: main-bearing, see: wiped}", "Holds")]
    [InlineData("{part: main-bearing, see: sound}, {part: oil-pump, see: sound}", "Contradicted")]
    [InlineData("{part: main-bearing, see: sound}", "Unknown")]
    public void Any_needs_one_condition(string facts, string expected) =>
        Judge("{any: [{part: main-bearing, see: wiped}, {part: oil-pump, see: scored}]}", facts).Should().Be(expected);

    [Theory]
    [InlineData("history: [{hours-since-overhaul: 99}]\n", "Holds")]
    [InlineData("history: [{hours-since-overhaul: 100}]\n", "Contradicted")]
    [InlineData("history: [{hours-total: 99}]\n", "Unknown")]
    public void A_number_must_lie_below_its_limit(string history, string expected) =>
        Judge("{number: hours-since-overhaul, below: 100}", "{part: main-bearing, see: wiped}", history).Should().Be(expected);

    [Theory]
    [InlineData("history: [{km-total: 60001}]\n", "Holds")]
    [InlineData("history: [{km-total: 60000}]\n", "Contradicted")]
    [InlineData("", "Unknown")]
    public void A_number_must_lie_above_its_limit(string history, string expected) =>
        Judge("{number: km-total, above: 60000}", "{part: main-bearing, see: wiped}", history).Should().Be(expected);

    [Theory]
    [InlineData("above-limit", "0.12 mm", "Holds")]
    [InlineData("above-limit", "0.08 mm", "Contradicted")]
    [InlineData("below-limit", "0.02 mm", "Holds")]
    [InlineData("below-limit", "0.08 mm", "Contradicted")]
    [InlineData("within", "0.08 mm", "Holds")]
    [InlineData("within", "0.12 mm", "Contradicted")]
    public void A_reading_stands_above_below_or_within_its_limits(string word, string value, string expected) =>
        Judge($"{{reading: bearing-clearance, part: main-bearing, is: {word}}}", "{part: oil-pump, see: sound}",
            $"readings: [{{quantity: bearing-clearance, part: main-bearing, at: 3, value: {value}, limit: {{min: 0.05 mm, max: 0.10 mm}}}}]\n").Should().Be(expected);

    [Theory]
    [InlineData("0.101 mm", "Holds")]
    [InlineData("0.150 mm", "Contradicted")]
    public void A_reading_within_its_own_uncertainty_of_the_limit_is_too_close_to_call(string value, string expected) =>
        Judge("{reading: bearing-clearance, part: main-bearing, is: too-close}", "{part: oil-pump, see: sound}",
            $"readings: [{{quantity: bearing-clearance, part: main-bearing, at: 3, value: {value}, uncertainty: 0.005 mm, limit: {{max: 0.10 mm}}}}]\n").Should().Be(expected);

    [Fact]
    public void A_reading_without_a_limit_leaves_the_condition_open() =>
        Judge("{reading: bearing-clearance, part: main-bearing, is: above-limit}", "{part: oil-pump, see: sound}",
            "readings: [{quantity: bearing-clearance, part: main-bearing, at: 3, value: 0.2 mm}]\n").Should().Be("Unknown");

    [Theory]
    [InlineData("{kind: engine, mains: 5, features: [diesel]}", "Holds")]
    [InlineData("{kind: engine, mains: 5, features: [petrol]}", "Contradicted")]
    [InlineData("{kind: engine, mains: 5, without: [diesel]}", "Contradicted")]
    [InlineData("{kind: engine, mains: 5, features: [turbocharged]}", "Unknown")]
    public void A_feature_is_known_when_it_or_its_rival_is_stated(string machine, string expected) =>
        Judge("{feature: diesel}", "{part: main-bearing, see: wiped}", machine: machine).Should().Be(expected);

    [Theory]
    [InlineData("history: [oil-change-overdue]\n", "Holds")]
    [InlineData("history: [{not: oil-change-overdue}]\n", "Contradicted")]
    [InlineData("", "Unknown")]
    public void History_counts_only_when_it_is_stated_or_denied(string history, string expected) =>
        Judge("{history: oil-change-overdue}", "{part: main-bearing, see: wiped}", history).Should().Be(expected);

    [Theory]
    [InlineData("symptoms: [knocking]\n", "Holds")]
    [InlineData("symptoms: [{not: knocking}]\n", "Contradicted")]
    [InlineData("", "Unknown")]
    public void A_symptom_counts_only_when_it_is_stated_or_denied(string symptoms, string expected) =>
        Judge("{symptom: knocking}", "{part: main-bearing, see: wiped}", symptoms).Should().Be(expected);

    /// <summary>Asks the engine and the explanation the same question: the two must never disagree.</summary>
    private static string Judge(string when, string facts, string more = "", string machine = Bench.FiveMains)
    {
        KnowledgeBase knowledge = TinyRules.Words.WithFinding("asked", when).Knowledge();
        TeardownCase teardown = Bench.Case(knowledge, facts, more, machine);
        Measured readings = MeasurementAssessor.Assess(knowledge, teardown);
        FindingSet found = FindingEngine.Chain(knowledge, teardown, readings);
        Truth explained = FindingEngine.Explain(knowledge, teardown, readings, found, "asked").Answer.Truth;
        Truth chained = found.Fired.Any(f => f.Id == "asked") ? Truth.Holds : found.Contradicted.Any(f => f.Id == "asked") ? Truth.Contradicted : Truth.Unknown;
        chained.Should().Be(explained, "the engine and its explanation answer the same question");
        return explained.ToString();
    }
}
