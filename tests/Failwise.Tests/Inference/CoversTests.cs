using Failwise.Inference;

namespace Failwise.Tests.Inference;

public sealed class CoversTests
{
    [Fact]
    [CheckValue("hitting-set-tree-seven-sets")]
    public void The_seven_sets_of_the_hitting_set_tree_have_six_minimal_hitting_sets()
    {
        // "A Theory of Diagnosis from First Principles", Artificial Intelligence 32, 1987; family recalled, answer brute-forced.
        Hit([2, 4, 5], [1, 2, 3], [1, 3, 5], [2, 4, 6], [2, 4], [2, 3, 5], [1, 6])
            .Should().Equal("1 2", "1 3 4", "1 4 5", "2 3 6", "2 5 6", "3 4 6");
    }

    [Fact]
    [CheckValue("hitting-set-greedy-fails")]
    public void The_smallest_hitting_set_is_found_where_the_greedy_choice_misses_it()
    {
        Hit([1, 2, 3], [1, 3, 4], [1, 4, 5], [1, 2, 5], [2, 3], [4, 5]).Should().Equal("2 4", "3 5", "1 2 5", "1 3 4");
    }

    [Fact]
    [CheckValue("hitting-set-minimal-vs-minimum")]
    public void A_set_may_be_minimal_without_being_smallest()
    {
        Hit([1, 2], [2, 3]).Should().Equal("2", "1 3");
    }

    [Fact]
    [CheckValue("parsimonious-cover-example")]
    public void Nine_causes_cover_three_manifestations_in_twelve_irredundant_ways()
    {
        // After "Abductive Inference Models for Diagnostic Problem-Solving", Springer 1990; relation recalled, covers brute-forced.
        Hit([1, 2, 3, 4], [1, 2, 5, 8], [7, 8, 9]).Should().Equal(
            "1 7", "1 8", "1 9", "2 7", "2 8", "2 9", "3 8", "4 8", "3 5 7", "3 5 9", "4 5 7", "4 5 9");
    }

    [Fact]
    [CheckValue("full-adder-consistency")]
    public void The_conflicts_of_the_full_adder_give_three_diagnoses()
    {
        // 1 = X1, 2 = X2, 3 = A2, 4 = O1. Same paper, running example.
        Hit([1, 2], [1, 3, 4]).Should().Equal("1", "2 3", "2 4");
    }

    [Fact]
    [CheckValue("polybox-conflicts-diagnoses")]
    public void The_conflicts_of_the_polybox_give_four_diagnoses()
    {
        // 1 = A1, 2 = A2, 3 = M1, 4 = M2, 5 = M3. MIT 16.412J/6.834J slides, after Artificial Intelligence 32, 1987.
        Hit([1, 3, 4], [1, 2, 3, 5]).Should().Equal("1", "3", "2 4", "4 5");
    }

    [Fact]
    public void Looking_for_small_sets_only_leaves_the_larger_ones_out()
    {
        Covers.MinimalHittingSets([[1, 2], [2, 3]], largest: 1).Should().ContainSingle().Which.Should().Equal(2);
    }

    private static IEnumerable<string> Hit(params int[][] family) => Covers.MinimalHittingSets(family).Select(s => string.Join(' ', s));
}
