using Failwise.Cases;
using Failwise.Entry;
using Failwise.Knowledge;

namespace Failwise.Dialogue;

/// <summary>What the dialogue wants done outside of itself.</summary>
internal abstract record Effect;

/// <summary>Write entries into the case at once.</summary>
/// <param name="Replaces">True when they take the place of the entry written last.</param>
/// <param name="Anyway">True when the person has answered what there was to ask.</param>
internal sealed record Save(IReadOnlyList<CaseEntry> Entries, string Says, bool Replaces, bool Anyway, Step Then) : Effect;

/// <summary>Take back the last thing written.</summary>
internal sealed record TakeBack : Effect;

/// <summary>The person has finished.</summary>
internal sealed record Finish : Effect;

/// <summary>Where the dialogue goes, and what has to be done for it.</summary>
internal sealed record Turn(Talk Next, Effect? Do = null);

/// <summary>Something to look at or to ask next, by the planner.</summary>
/// <param name="Part">The part to look at; null for a question.</param>
/// <param name="Question">A word of symptoms or history; null for a look.</param>
/// <param name="IsSymptom">True when the question is about a symptom.</param>
/// <param name="Intake">A question of the general kind; null for anything else.</param>
internal sealed record NextLook(string Says, string? Detail, string? Part, string? Question, bool IsSymptom, string? Intake = null);

/// <summary>The dialogue at one moment. Immutable: an answer gives the next moment and perhaps something to do.</summary>
/// <param name="Guide">What this machine has and what its parts may show.</param>
/// <param name="Case">The case as saved.</param>
/// <param name="Typed">What was typed since the question was put.</param>
/// <param name="Messages">What just happened.</param>
/// <param name="Next">What the planner would look at; null while it is still at work.</param>
/// <param name="Saves">Entries written since the dialogue began.</param>
internal sealed record Talk(Guide Guide, TeardownCase Case, Step Step, string Typed, IReadOnlyList<string> Messages, IReadOnlyList<NextLook>? Next, int Saves)
{
    /// <summary>General questions that were put in this sitting: answered or not, they are not put again.</summary>
    public IReadOnlyList<string> Passed { get; init; } = [];

    public KnowledgeBase Knowledge => Guide.Knowledge;

    public static Talk Begin(KnowledgeBase knowledge, TeardownCase teardown) =>
        new(new Guide(knowledge, teardown), teardown, new PartStep(null), "", Resumed(teardown), null, 0);

    /// <summary>What the person sees.</summary>
    public Screen Show() => Step.Show(this);

    /// <summary>A letter, digit or other mark was typed. A digit that stands for a choice takes it at once.</summary>
    public Turn Type(char c)
    {
        if (Typed.Length == 0 && Step.LeadsTo(c) is { } step)
        {
            return To(step);
        }

        if (Step.DigitsChoose && char.IsAsciiDigit(c) && !(Typed.Length > 0 && Step.DigitGoesOn(Typed)) && Show().Choices.FirstOrDefault(x => x.Key == c) is { } choice)
        {
            return choice.Take();
        }

        return new Turn(this with { Typed = Typed + c, Messages = [] });
    }

    /// <summary>A whole line, for terminals that cannot be asked for single keys.</summary>
    public Turn Line(string line)
    {
        string text = line.Trim();
        return text.Length == 1 && Step.DigitsChoose && Show().Choices.FirstOrDefault(x => x.Key == text[0]) is { } choice
            ? choice.Take() : (this with { Typed = text }).Enter();
    }

    public Turn Rub() => new(this with { Typed = Typed.Length > 0 ? Typed[..^1] : "" });

    /// <summary>Enter: what was typed, or the choice that stands ready.</summary>
    public Turn Enter()
    {
        string text = Typed.Trim();
        switch (text.ToLowerInvariant())
        {
            case "":
                return Show().Choices.FirstOrDefault(c => c.IsDefault)?.Take() ?? Step.Empty(this);
            case "q" or "quit" or "exit" or "done":
                return new Turn(this, new Finish());
            case "u" or "undo":
                return Undo();
            case "?" or "help":
                return new Turn(this with { Typed = "", Messages = HelpText.Lines });
            case "<" or "back":
                return Back();
            default:
                return Step.Take(this, text);
        }
    }

    /// <summary>Escape: first what was typed goes, then the question.</summary>
    public Turn Back() => new(Typed.Length > 0 && Typed is not ("<" or "back") ? this with { Typed = "" } : this with { Typed = "", Messages = [], Step = Step.Before });

    public Turn Undo() => new(this with { Typed = "" }, new TakeBack());

    public Turn To(Step step, params string[] messages) => new(this with { Step = step, Typed = "", Messages = messages });

    public Turn Say(params string[] messages) => new(this with { Messages = messages });

    /// <summary>The answer to <see cref="Save"/> when it was written.</summary>
    public Talk Saved(TeardownCase now, Save save)
    {
        // Question by question, the closer words were offered already.
        IEnumerable<string> hints = save is { Replaces: false, Then: PartStep } ? Hints(now).Except(Hints(Case)) : [];
        return this with
        {
            Case = now, Step = save.Then, Typed = "", Messages = [save.Replaces ? $"Saved again: {save.Says}" : $"Saved: {save.Says}", .. hints], Next = null,
            Saves = Saves + (save.Replaces ? 0 : 1),
        };
    }

    private IEnumerable<string> Hints(TeardownCase teardown) => CloserWords.Hints(Knowledge, teardown, _ => true).Select(h => h.Message);

    /// <summary>The answer to <see cref="Save"/> when there is something to ask, or something wrong.</summary>
    public Talk Refused(IReadOnlyList<Problems.Problem> problems, Save save)
    {
        string[] said = [.. problems.Select(p => ConfirmStep.Plain(p))];
        return problems.Any(p => p.Severity == Problems.Severity.Error)
            ? this with { Typed = "", Messages = ["Not saved.", .. said] }
            : this with { Typed = "", Messages = [], Step = new ConfirmStep(save, said, Step) };
    }

    /// <summary>The answer to <see cref="TakeBack"/>.</summary>
    public Talk TookBack(TeardownCase? now, string says) =>
        now is null ? this with { Messages = [says] } : this with { Case = now, Step = new PartStep(null), Messages = [says], Next = null, Saves = Saves - 1 };

    private static IReadOnlyList<string> Resumed(TeardownCase teardown) => teardown.Observations.Count == 0
        ? ["Nothing is entered yet. Everything you answer is saved at once; stop when you like."]
        : [$"Going on where it stopped: {teardown.Observations.Count} observation{(teardown.Observations.Count == 1 ? "" : "s")} so far. Everything you answer is saved at once."];
}
