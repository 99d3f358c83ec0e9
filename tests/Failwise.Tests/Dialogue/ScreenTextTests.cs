using Failwise.Dialogue;

namespace Failwise.Tests.Dialogue;

public class ScreenTextTests
{
    private const string Start = "title: Pumpe µ ±0,02 für №3\nmachine: {kind: engine, cylinders: 4, mains: 5}\nobservations:\n  - {part: oil-pump, see: sound}\n";

    private static readonly string[] Walks = ["", "MB\n", "MB\n3\n", "MB\n3\n\n", "MB\n3\n\nwip", "MB\n3\n\nwiped\n", "MB\n3\n\nwiped\n\n", "MB\n3\n\nwiped\n\n4", "MB\n3\n\nwiped\n\n4\n", "?\n", "MB3 wipd\n", "cranck"];

    [Theory]
    [InlineData(80, 24)]
    [InlineData(80, 0)]
    [InlineData(40, 15)]
    [InlineData(132, 50)]
    public void No_screen_is_wider_or_higher_than_the_terminal(int width, int height)
    {
        foreach (string walk in Walks)
        {
            using Sitting sitting = new(Start);
            IReadOnlyList<ScreenLine> lines = ScreenText.Lay(sitting.Press(walk).Screen, width, height, ascii: false);

            lines.Should().OnlyContain(l => l.Text.Length <= width);
            lines.Count.Should().BeLessThanOrEqualTo(height == 0 ? int.MaxValue : height);
            lines[^1].Text.Should().StartWith("> ");
        }
    }

    [Fact]
    public void The_question_and_what_is_typed_stay_in_sight_on_a_short_terminal()
    {
        using Sitting sitting = new(Start);

        IReadOnlyList<ScreenLine> lines = ScreenText.Lay(sitting.Press("MB\n3\n\nwip").Screen, 80, 8, ascii: false);

        lines[^1].Text.Should().Be("> wip");
        lines[^2].Text.Should().Be("How does it look? Choose, or type what you see.");
    }

    [Fact]
    public void An_ascii_terminal_gets_ascii_only()
    {
        foreach (string walk in Walks)
        {
            using Sitting sitting = new(Start);
            ScreenText.Lay(sitting.Press(walk).Screen, 80, 0, ascii: true).SelectMany(l => l.Text).Should().OnlyContain(c => c >= ' ' && c <= '~');
        }
    }

    [Fact]
    public void Text_of_a_case_cannot_steer_the_terminal()
    {
        using Sitting sitting = new(Start);
        Talk talk = sitting.Talk with { Case = sitting.Talk.Case with { Title = "red \e[31m \a \u202E" }, Messages = ["\e]0;x\a"] };

        ScreenText.Lay(talk.Show(), 80, 24, ascii: false).SelectMany(l => l.Text).Should().NotContain(c => char.IsControl(c) || c == '\u202E');
    }
}
