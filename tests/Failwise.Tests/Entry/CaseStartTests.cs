using Failwise.Cases;
using Failwise.Cli;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Tests.Invalid;

namespace Failwise.Tests.Entry;

public class CaseStartTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    [Fact]
    public void A_case_of_which_only_the_machine_is_known_reads_as_begun_and_is_not_yet_diagnosed()
    {
        using TemporaryFolder folder = new();
        string place = Path.Combine(folder.Path, "pump");

        CaseStart.Create(Knowledge, place, Draft(new NewCaseAnswers(Knowledge) { Title = "Pump: # \"odd\" title", Kind = "motor" }), new Dictionary<string, string>());

        CaseReader.ReadBegun(Knowledge, place).Problems.Should().BeEmpty();
        CaseReader.ReadBegun(Knowledge, place).Case!.Title.Should().Be("Pump: # \"odd\" title");
        CaseReader.Read(Knowledge, place).Problems.Should().ContainSingle().Which.Code.Should().Be("FW033", "there is nothing to reason from yet");
        Directory.Exists(Path.Combine(place, "photos")).Should().BeTrue();
    }

    [Fact]
    public void What_was_answered_stands_in_the_case()
    {
        NewCaseAnswers answers = new(Knowledge)
        {
            Title = "Pump", Kind = "engine, gearbox", Cylinders = "4", Mains = "5", Feed = "1,2,3,4,5", DriveEnd = "first", NumberOne = "pulley end", Features = "Diesel, turbo",
            Without = "wet liners", Hours = "6200.5", Said = "oil light on; no oil leak; oil change overdue",
        };

        TeardownCase teardown = CaseReader.ReadBegunText(Knowledge, CaseStart.Text(Knowledge, Draft(answers)), "case.yaml").Case!;

        teardown.Machine.Kinds.Should().Equal("engine", "gearbox");
        teardown.Machine.Feed.Should().Equal(1, 2, 3, 4, 5);
        teardown.Machine.DriveEndFirst.Should().BeTrue();
        teardown.Machine.Features.Should().BeEquivalentTo("diesel", "turbocharged");
        teardown.Machine.Without.Should().Contain("wet-liners");
        teardown.Numbers["hours-total"].Should().Be(6200.5);
        teardown.Symptoms.Select(s => (s.Id, s.Holds)).Should().BeEquivalentTo([("oil-pressure-low", true), ("oil-leak", false)]);
        teardown.History.Select(s => s.Id).Should().Equal("oil-change-overdue");
    }

    [Fact]
    public void Entries_go_under_the_headings_of_a_new_case()
    {
        using TemporaryFolder folder = new();
        CaseStart.Create(Knowledge, folder.Path, Draft(new NewCaseAnswers(Knowledge) { Title = "Pump", Kind = "engine", Mains = "5" }), new Dictionary<string, string>());
        string file = Path.Combine(folder.Path, "case.yaml");
        string text = File.ReadAllText(file);

        CaseEditor.Add(Knowledge, folder.Path, ShortCodes.Read(Knowledge, "MB3L wiped heavy; OC nl; !knock").Entries).Problems.Should().BeEmpty();

        string after = File.ReadAllText(file);
        after.Should().Contain("\nobservations:\n  - {part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy}\n").And.Contain("\nnot-looked-at:\n  - oil-cooler\n").And.Contain("\nsymptoms:\n  - ");
        CaseEditor.Undo(folder.Path).Done.Should().BeTrue();
        File.ReadAllText(file).Should().Be(text);
    }

    [Fact]
    public void Nothing_that_is_there_is_written_over()
    {
        using TemporaryFolder folder = new();
        string photo = folder.Write("photos/as-received.jpg", "a photo");
        string page = folder.Write("BEFORE-CLEANING.md", "mine");
        CaseDraft draft = Draft(new NewCaseAnswers(Knowledge) { Title = "Pump", Kind = "engine" });
        Dictionary<string, string> beside = new() { ["BEFORE-CLEANING.md"] = "theirs" };
        CaseStart.Create(Knowledge, folder.Path, draft, beside).Should().Equal("case.yaml");
        string first = File.ReadAllText(Path.Combine(folder.Path, "case.yaml"));

        Action again = () => CaseStart.Create(Knowledge, folder.Path, draft with { Title = "Other" }, beside);

        again.Should().Throw<ProblemsException>().Which.Problems.Should().ContainSingle().Which.Code.Should().Be("FW098");
        File.ReadAllText(Path.Combine(folder.Path, "case.yaml")).Should().Be(first);
        File.ReadAllText(photo).Should().Be("a photo");
        File.ReadAllText(page).Should().Be("mine");
    }

    [Fact]
    public void Every_wrong_answer_is_named_at_once_with_the_nearest_right_word()
    {
        List<Problem> problems = [];
        NewCaseAnswers answers = new(Knowledge)
        {
            Title = "Pump", Kind = "engin", Cylinders = "0", Mains = "5", Feed = "1,2,2,4,5", DriveEnd = "front", Features = "turbocharge", Hours = "many", Said = "oil pressur low",
        };

        answers.Draft(problems).Should().BeNull();

        problems.Select(p => p.At.File).Should().BeEquivalentTo("--kind", "--cylinders", "--feed", "--drive-end", "--features", "--hours", "--said");
        problems.Single(p => p.At.File == "--kind").Message.Should().Contain("'engine'");
        problems.Single(p => p.At.File == "--said").Message.Should().Contain("oil-pressure-low");
    }

    [Fact]
    public void The_interview_asks_again_for_what_it_does_not_understand_and_leaves_open_what_is_not_known()
    {
        NewCaseAnswers answers = new(Knowledge);
        StringReader typed = new("\nPump\nengin\nengine\nfour\n4\n\n\ndiesel\n\n\noil lite on\noil light on\n");
        StringWriter shown = new();

        NewCaseInterview.Ask(Knowledge, answers, typed, shown).Should().BeTrue();

        CaseDraft draft = Draft(answers);
        (draft.Title, draft.Cylinders, draft.Mains).Should().Be(("Pump", 4, null));
        draft.Features.Should().Equal("diesel");
        draft.Symptoms.Should().Equal("oil-pressure-low");
        shown.ToString().Should().Contain("Did you mean 'engine'?").And.Contain("'four' is not a number from 1 to 64");
    }

    [Fact]
    public void An_interview_that_ends_before_the_kind_is_known_begins_nothing() =>
        NewCaseInterview.Ask(Knowledge, new NewCaseAnswers(Knowledge), new StringReader("Pump\n"), new StringWriter()).Should().BeFalse();

    private static CaseDraft Draft(NewCaseAnswers answers)
    {
        List<Problem> problems = [];
        CaseDraft? draft = answers.Draft(problems);
        problems.Should().BeEmpty();
        return draft!;
    }
}
