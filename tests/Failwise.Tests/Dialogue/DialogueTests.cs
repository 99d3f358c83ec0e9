using Failwise.Cases;
using Failwise.Checks;
using Failwise.Dialogue;
using Failwise.Entry;
using Failwise.Knowledge;

namespace Failwise.Tests.Dialogue;

public class DialogueTests
{
    private const string Start = """
        title: Lower pump engine
        machine:
          kind: engine
          cylinders: 4
          mains: 5
          features: [diesel, four-stroke, pressure-fed, liquid-cooled]
        # seen on the bench
        observations:
          - {part: oil-pump, see: sound}

        """;

    [Fact]
    public void A_part_is_entered_in_a_few_keys()
    {
        using Sitting sitting = new(Start);

        sitting.Press("main bearing\n3\nlower\nwiped\n\n4\n2");

        sitting.Text.Should().Be(Start + "  - {part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy, rest: sound}\n");
        sitting.Screen.Messages.Should().ContainSingle().Which.Should().Contain("rest sound");
    }

    [Fact]
    public void Sound_lower_halves_say_nothing_of_the_upper_ones()
    {
        using Sitting sitting = new(Start);

        sitting.Press("main bearing\n2-3\nlower\nwiped\n\n4\n1");

        sitting.Text.Should().Be(Start + "  - {part: main-bearing, at: 2-3, on: lower, see: wiped, extent: heavy}\n  - {part: main-bearing, at: [1, 4, 5], on: lower, see: sound}\n");
        sitting.Read().Observations.Should().NotContain(o => o.On.Contains("upper"));
    }

    [Fact]
    public void Two_places_are_chosen_as_one_writes_them()
    {
        using Sitting sitting = new(Start);
        sitting.Press("main bearing\n3\n");
        string[] places = [.. sitting.Screen.Choices.Take(3).Select(c => c.Says.Replace(' ', '-'))];

        sitting.Press("1,3wiped\n\n");

        sitting.Read().Observations[^1].On.Should().Equal(places[0], places[2]);
    }

    [Theory]
    [InlineData("3 lower wiped heavy", "{part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy}")]
    [InlineData("3\nlower wiped heavy", "{part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy}")]
    [InlineData("3\nlower\nwiped heavy", "{part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy}")]
    public void More_than_was_asked_may_be_said_at_once(string said, string entry)
    {
        using Sitting sitting = new(Start);

        sitting.Press($"MB\n{said}\n");

        sitting.Text.Should().Be(Start + $"  - {entry}\n");
    }

    [Fact]
    public void A_broad_word_brings_the_closer_ones_of_this_part()
    {
        using Sitting sitting = new(Start);

        sitting.Press("crankshaft\nbroken\n");
        sitting.Screen.Question.Should().Contain("broad");
        sitting.Press(sitting.Screen.Choices.Single(c => c.Says == Repository.Knowledge.Patterns["fatigue-fracture"].Name).Key.ToString());

        sitting.Read().Observations[^1].Pattern.Should().Be("fatigue-fracture");
    }

    [Fact]
    public void Each_answer_is_in_the_file_before_the_next_question()
    {
        using Sitting sitting = new(Start);

        sitting.Press("MB\n3\nlower\nwiped\n\n");
        sitting.Read().Observations[^1].Pattern.Should().Be("wiped", "the mark is saved before its amount is asked");
        sitting.Press("4");
        sitting.Read().Observations[^1].Extent.Should().Be(Extent.Heavy);
        sitting.Press("3");
        sitting.Read().Observations[^1].SureWord.Should().Be("doubtful");
        sitting.Read().Observations.Should().HaveCount(2, "an amended entry takes the place of the first");
    }

    [Fact]
    public void Look_alikes_are_told_apart_by_what_the_rules_say()
    {
        using Sitting sitting = new(Start);
        LookAlike polished = Repository.Knowledge.Patterns["wiped"].LookAlikes.Single(l => l.Id == "polished");

        sitting.Press("MB\n3\n\nwiped\n");
        Choice other = sitting.Screen.Choices.Single(c => c.Detail == polished.Tell);
        sitting.Press(other.Key.ToString());

        sitting.Read().Observations[^1].Pattern.Should().Be("polished");
    }

    [Fact]
    public void Shop_words_find_part_and_mark()
    {
        using Sitting sitting = new(Start);

        sitting.Press("big end shell\n2\n\nbabbitt run\n\n");

        Observation seen = sitting.Read().Observations[^1];
        (seen.Part, seen.Pattern).Should().Be(("rod-bearing", "wiped"));
    }

    [Fact]
    public void A_misspelt_part_is_found_by_its_nearest_word()
    {
        using Sitting sitting = new(Start);

        sitting.Press("cranckpin");
        sitting.Screen.Choices.Should().NotBeEmpty();
        sitting.Press("\n2\n\nok\n");

        sitting.Read().Observations[^1].Part.Should().Be("rod-journal");
    }

    [Fact]
    public void Codes_may_be_typed_where_a_part_is_asked_for()
    {
        using Sitting sitting = new(Start);

        sitting.Press("MB1-5L wiped 4; CP4 blued?; !oil pressure low hot\n");

        TeardownCase now = sitting.Read();
        now.Observations.Should().HaveCount(3);
        now.Symptoms.Should().ContainSingle().Which.Id.Should().Be("oil-pressure-low-hot");
    }

    [Fact]
    public void Wrong_codes_are_explained_and_nothing_is_saved()
    {
        using Sitting sitting = new(Start);

        sitting.Press("MB3L wipd 4\n");

        sitting.Text.Should().Be(Start);
        sitting.Screen.Messages[0].Should().Be("Not saved.");
        sitting.Screen.Messages[1].Should().Contain("Did you mean 'wiped'");
        sitting.Screen.Typed.Should().Be("MB3L wipd 4", "it can be mended, not typed anew");
    }

    [Fact]
    public void Undo_takes_back_one_entry_after_the_other_to_the_first_byte()
    {
        using Sitting sitting = new(Start);

        sitting.Press("OF blocked 2\nRV stuck 4\nMB\n2\nlower\nwiped\n\n4");
        sitting.Read().Observations.Should().HaveCount(4);
        sitting.Press("\u001a\u001a\u001a");

        sitting.Text.Should().Be(Start);
        sitting.Press("\u001a");
        sitting.Screen.Messages.Should().ContainSingle().Which.Should().Contain("Nothing");
        sitting.Text.Should().Be(Start);
    }

    [Fact]
    public void What_somebody_else_added_meanwhile_is_never_taken_back()
    {
        using Sitting sitting = new(Start);
        sitting.Press("MB\n2\nlower\nwiped\n\n");
        CaseEditor.Add(Repository.Knowledge, sitting.File, ShortCodes.Read(Repository.Knowledge, "RV stuck 4").Entries);
        string both = sitting.Text;

        sitting.Press("4");
        sitting.Text.Should().Be(both, "an amount cannot be written over a file that changed");
        sitting.Press("\u001a");

        sitting.Text.Should().Be(both);
        string expected = File.ReadAllText(Repository.Folder("tests", "Failwise.Tests", "Invalid", "dialogue", "changed-meanwhile.expected"));
        expected.TrimEnd().Should().EndWith(" FW106: " + sitting.Screen.Messages[^1]);
    }

    [Fact]
    public void A_contradiction_is_asked_about_and_can_be_kept()
    {
        using Sitting sitting = new(Start.Replace("{part: oil-pump, see: sound}", "{part: main-bearing, at: 3, on: lower, see: wiped, extent: light}", StringComparison.Ordinal));
        string before = sitting.Text;

        sitting.Press("MB3L wiped 4\n");
        sitting.Screen.Question.Should().Be("Please look again:");
        sitting.Screen.Told.Should().ContainSingle().Which.Should().Contain("line 9").And.NotContain("--anyway");
        sitting.Text.Should().Be(before);
        sitting.Press("2");

        sitting.Read().Observations.Should().HaveCount(2);
    }

    [Fact]
    public void A_part_called_sound_and_marked_is_refused_with_the_line_that_says_otherwise()
    {
        using Sitting sitting = new(Start);

        sitting.Press("OP scored 2\n");

        sitting.Text.Should().Be(Start);
        sitting.Screen.Messages[1].Should().Contain("which is right?").And.Contain("in what you just said").And.EndWith("(line 9 of the file)");
    }

    [Fact]
    public void A_contradiction_can_be_left_out()
    {
        using Sitting sitting = new(Start.Replace("{part: oil-pump, see: sound}", "{part: main-bearing, at: 3, on: lower, see: wiped, extent: light}", StringComparison.Ordinal));
        string before = sitting.Text;

        sitting.Press("MB3L wiped 4\n3");

        sitting.Text.Should().Be(before);
        sitting.Screen.Messages.Should().ContainSingle().Which.Should().StartWith("Left out");
    }

    [Fact]
    public void A_number_that_the_machine_has_not_is_refused_at_once()
    {
        using Sitting sitting = new(Start);

        sitting.Press("MB\n7\n");

        sitting.Screen.Messages.Should().ContainSingle().Which.Should().Contain("there is no 7");
        sitting.Text.Should().Be(Start);
    }

    [Fact]
    public void After_one_number_the_next_one_stands_ready()
    {
        using Sitting sitting = new(Start);

        sitting.Press("MB\n1\n\nok\n");

        sitting.Screen.Choices[0].Says.Should().Be("go on: main bearing shell 2");
        sitting.Screen.Choices[0].IsDefault.Should().BeTrue();
    }

    [Fact]
    public void Escape_goes_back_question_by_question()
    {
        using Sitting sitting = new(Start);
        string first = sitting.Screen.Question;

        sitting.Press("MB\n3\n2");
        sitting.Press("\e\e\e");

        sitting.Screen.Question.Should().Be(first);
        sitting.Text.Should().Be(Start);
    }

    [Fact]
    public void What_the_planner_asks_is_offered_and_its_answer_saved()
    {
        using Sitting sitting = new(Start);
        sitting.Hear([new NextLook("It was run on after the oil pressure warning came.", null, null, "oil-pressure-warning-ignored", false), new NextLook("relief valve", "about 10 min", "relief-valve", null, false)]);

        sitting.Screen.Choices.Take(2).Select(c => c.Says).Should().Equal("ask: It was run on after the oil pressure warning came.", "look next: relief valve");
        sitting.Press("12");

        sitting.Text.Should().Contain("history:\n  - {not: oil-pressure-warning-ignored}");
    }

    [Fact]
    public void Parts_nobody_wrote_about_are_offered_and_those_written_about_are_not()
    {
        using Sitting sitting = new(Start);
        sitting.Hear([]);
        string[] before = [.. sitting.Screen.Choices.Select(c => c.Says)];

        sitting.Press("6\n\nok\n\e\e\e\e");
        string[] after = [.. sitting.Screen.Choices.Select(c => c.Says)];

        before.Should().HaveCount(4);
        after.Should().NotContain(before[0]);
    }

    [Fact]
    public void A_part_keeps_its_digit_when_the_planner_has_thought()
    {
        using Sitting sitting = new(Start);
        char before = sitting.Screen.Choices[0].Key;
        string part = sitting.Screen.Choices[0].Says;

        sitting.Hear([new NextLook("Was it overloaded?", null, null, "oil-change-overdue", false), new NextLook("Was it hot?", null, null, "overheating", true)]);

        sitting.Screen.Choices.Single(c => c.Says == part).Key.Should().Be(before);
        sitting.Screen.Choices.Should().HaveCount(6);
    }

    [Fact]
    public void What_was_not_understood_behind_a_part_is_said()
    {
        using Sitting sitting = new(Start);

        sitting.Press("oil pump all wobbledy\n");

        sitting.Screen.Messages.Should().Contain(m => m.StartsWith("Not taken: ", StringComparison.Ordinal) && m.Contains("wobbledy", StringComparison.Ordinal));
    }

    [Fact]
    public void Whole_lines_do_what_keys_do()
    {
        using Sitting keys = new(Start), lines = new(Start);

        keys.Press("MB\n3\nlower\nwiped\n\n4\n1q\n");
        lines.Lines("MB", "3", "lower", "wiped", "", "4", "", "1", "q");

        lines.Text.Should().Be(keys.Text);
        lines.Finished.Should().BeTrue();
        keys.Finished.Should().BeTrue();
    }

    [Fact]
    public void A_case_that_says_nothing_yet_can_be_entered_and_taken_back_to_nothing()
    {
        const string Bare = "title: Engine\nmachine: {kind: engine, cylinders: 2}\n";
        using Sitting sitting = new(Bare);

        sitting.Press("!knock\n");
        sitting.Read().Symptoms.Should().ContainSingle();
        sitting.Press("\u001a");

        sitting.Text.Should().Be(Bare);
    }

    [Fact]
    public void Comments_and_order_of_a_file_written_by_hand_stay()
    {
        using Sitting sitting = new(Start);

        sitting.Press("RV\n\nstuck\n\n4\n\n");

        sitting.Text.Should().StartWith(Start);
    }

    [Fact]
    public void A_general_question_is_answered_with_a_digit_and_goes_on_until_enter()
    {
        using Sitting sitting = Asked("operator");

        sitting.Press("1").Screen.Question.Should().Be(Repository.Knowledge.Questions["operator"].Asks);
        string first = sitting.Screen.Choices[0].Says;
        sitting.Press("1\n");

        sitting.Read().History.Should().ContainSingle().Which.Holds.Should().BeTrue();
        Repository.Knowledge.Circumstances[sitting.Read().History[0].Id].Says.Should().Be(first);
        sitting.Hear([Question("operator")]);
        sitting.Screen.Choices.Should().NotContain(c => c.Says.StartsWith("ask:"), "it was put once");
    }

    [Fact]
    public void A_general_question_can_be_skipped_denied_or_answered_in_words()
    {
        using Sitting skipped = Asked("operator");
        using Sitting denied = Asked("happened-before");
        using Sitting known = Asked("recent-work");
        using Sitting noted = Asked("first-failure");

        skipped.Press("1\n");
        denied.Press("1").Press(denied.Screen.Choices.Single(c => c.Says == "none of these").Key.ToString());
        known.Press("1crank ground\n");
        noted.Press("1the pump, 3 hours before\n");

        skipped.Text.Should().Be(Start);
        denied.Read().History.Should().HaveCountGreaterThan(2).And.OnlyContain(s => !s.Holds);
        known.Read().History.Should().ContainSingle().Which.Id.Should().Be("crank-ground");
        noted.Read().Notes.Should().ContainSingle().Which.Should().Be(Repository.Knowledge.Questions["first-failure"].Asks + " the pump, 3 hours before");
        CheckPlanner.Plan(Repository.Knowledge, noted.Read(), new PlanOptions(20)).Checks.Should().NotContain(c => c.Id == "ask/first-failure");
    }

    [Fact]
    public void The_usual_answers_are_those_of_such_a_machine()
    {
        using Sitting sitting = Asked("oil");
        string[] says = [.. sitting.Press("1").Screen.Choices.Select(c => c.Says)];

        says.Should().Contain(Repository.Knowledge.Circumstances["oil-change-overdue"].Says);
        says.Should().NotContain(Repository.Knowledge.Circumstances["gear-oil-neglected"].Says).And.NotContain(Repository.Knowledge.Circumstances["two-stroke-mix-doubtful"].Says);
    }

    private static Sitting Asked(string question)
    {
        Sitting sitting = new(Start);
        sitting.Hear([Question(question)]);
        return sitting;
    }

    private static NextLook Question(string id) => new(Repository.Knowledge.Questions[id].Asks, null, null, null, false, id);
}
