using System.Collections.Concurrent;
using System.CommandLine;
using Failwise.Cases;
using Failwise.Dialogue;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>The guided dialogue: keys and the planner's news come through one queue, so that a key never waits for the planner.</summary>
internal sealed class EnterCommand
{
    private const int WatchMs = 200;
    private readonly BlockingCollection<Func<Turn?>> news = [];
    private readonly KnowledgeBase knowledge;
    private readonly CaseSession session;
    private readonly Terminal terminal;
    private Talk talk;
    private bool finished;

    private EnterCommand(KnowledgeBase knowledge, string path, TeardownCase teardown, Terminal terminal)
    {
        this.knowledge = knowledge;
        this.terminal = terminal;
        session = new CaseSession(knowledge, path);
        talk = Talk.Begin(knowledge, teardown);
    }

    public static Command Command(Option<string?> rules)
    {
        Argument<string> path = new("CASE") { Description = "A case file, or a folder with a case.yaml." };
        Option<bool> ascii = new("--ascii") { Description = "Draw with plain letters only." };
        Command command = new("enter", "Enter what you see at the keyboard, asked step by step; every answer is saved at once.\n\nExample: failwise case enter pump-3") { path, ascii, rules };
        command.SetAction(p => Run(ShippedRules.Load(p.GetValue(rules)), p.GetValue(path)!, p.GetValue(ascii)));
        return command;
    }

    private static int Run(KnowledgeBase knowledge, string path, bool ascii)
    {
        if (!Terminal.IsThere)
        {
            Console.Error.WriteLine("case enter asks questions and needs a keyboard and a screen; here its input or output is a file or a pipe. Use: failwise case add CASE \"codes\"");
            return 2;
        }

        CaseReading reading = CaseReader.ReadBegun(knowledge, CaseEditor.FileOf(path));
        EnterCommand run = new(knowledge, path, reading.Case ?? throw new ProblemsException(reading.Problems), new Terminal(ascii));
        run.Loop();
        Console.Out.WriteLine($"{(run.terminal.CanPaint ? "\n" : "")}All is saved in {CaseEditor.FileOf(path)}. Next: failwise diagnose {path}");
        return 0;
    }

    private void Loop()
    {
        if (terminal.CanPaint)
        {
            // Otherwise the terminal would stop the program on Ctrl-Z, which takes back an entry here.
            Console.TreatControlCAsInput = true;
        }

        terminal.Clear();
        PlanInBackground();
        Thread keys = new(terminal.CanPaint ? ReadKeys : ReadLines) { IsBackground = true };
        keys.Start();
        terminal.Show(talk.Show());
        (int, int) size = Terminal.Size();
        while (!finished)
        {
            if (!news.TryTake(out Func<Turn?>? item, WatchMs))
            {
                if (terminal.CanPaint && Terminal.Size() != size)
                {
                    size = Terminal.Size();
                    terminal.Clear();
                    terminal.Forget();
                    terminal.Show(talk.Show());
                }

                continue;
            }

            if (item() is { } turn)
            {
                talk = turn.Next;
                Do(turn.Do);
            }

            if (!finished && (terminal.CanPaint || news.Count == 0))
            {
                terminal.Show(talk.Show());
            }
        }
    }

    private void Do(Effect? effect)
    {
        switch (effect)
        {
            case Save save:
                CaseEdit edit = session.Write(save);
                talk = edit is { Written: true, Case: { } now } ? talk.Saved(now, save) : talk.Refused(edit.Problems, save);
                PlanInBackground();
                break;
            case TakeBack:
                talk = talk.TookBack(session.TakeBack(out string says), says);
                PlanInBackground();
                break;
            case Finish:
                finished = true;
                break;
        }
    }

    /// <summary>Asks the planner on another thread; an answer to an older state of the case is thrown away.</summary>
    private void PlanInBackground()
    {
        TeardownCase asked = talk.Case;
        if (talk.Next is not null)
        {
            return;
        }

        _ = Task.Run(() =>
        {
            IReadOnlyList<NextLook> next = NextLooks.Of(knowledge, asked);
            news.Add(() => ReferenceEquals(talk.Case, asked) ? new Turn(talk with { Next = next }) : null);
        });
    }

    private void ReadLines()
    {
        while (Console.In.ReadLine() is { } line)
        {
            news.Add(() => talk.Line(line));
        }

        news.Add(() => new Turn(talk, new Finish()));
    }

    private void ReadKeys()
    {
        while (true)
        {
            ConsoleKeyInfo key;
            try
            {
                key = Console.ReadKey(intercept: true);
            }
            catch (InvalidOperationException)
            {
                news.Add(() => new Turn(talk, new Finish()));
                return;
            }

            news.Add(() => Press(key));
        }
    }

    private Turn? Press(ConsoleKeyInfo key) => key switch
    {
        { Key: ConsoleKey.Enter } => talk.Enter(),
        { Key: ConsoleKey.Escape } => talk.Back(),
        { Key: ConsoleKey.Backspace } => talk.Rub(),
        { Key: ConsoleKey.Z, Modifiers: ConsoleModifiers.Control } => talk.Undo(),
        { Key: ConsoleKey.C or ConsoleKey.D, Modifiers: ConsoleModifiers.Control } => new Turn(talk, new Finish()),
        { Key: ConsoleKey.F1 } => (talk with { Typed = "?" }).Enter(),
        _ when !char.IsControl(key.KeyChar) => talk.Type(key.KeyChar),
        _ => null,
    };
}
