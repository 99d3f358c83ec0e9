using Failwise.Cases;
using Failwise.Dialogue;
using Failwise.Entry;
using Failwise.Knowledge;

namespace Failwise.Tests.Dialogue;

/// <summary>Somebody at the keyboard of the dialogue, without a terminal.</summary>
internal sealed class Sitting : IDisposable
{
    public const char Enter = '\n', Escape = '\e', Undo = '\u001a';
    private readonly string folder = Directory.CreateTempSubdirectory("failwise-sitting-").FullName;
    private readonly CaseSession session;

    public Sitting(string text, KnowledgeBase? knowledge = null)
    {
        File = Path.Combine(folder, "case.yaml");
        System.IO.File.WriteAllText(File, text);
        KnowledgeBase rules = knowledge ?? Repository.Knowledge;
        session = new CaseSession(rules, File);
        Talk = Talk.Begin(rules, CaseReader.ReadBegun(rules, File).Case!);
    }

    public string File { get; }

    public string Text => System.IO.File.ReadAllText(File);

    public Talk Talk { get; private set; }

    public bool Finished { get; private set; }

    public int Keys { get; private set; }

    public Screen Screen => Talk.Show();

    public Sitting Press(string keys)
    {
        foreach (char key in keys)
        {
            Keys++;
            Do(key switch { Enter => Talk.Enter(), Escape => Talk.Back(), Undo => Talk.Undo(), '\b' => Talk.Rub(), _ => Talk.Type(key) });
        }

        return this;
    }

    /// <summary>Lines as on a terminal that cannot be painted.</summary>
    public Sitting Lines(params string[] lines)
    {
        foreach (string line in lines)
        {
            Do(Talk.Line(line));
        }

        return this;
    }

    public void Hear(IReadOnlyList<NextLook> next) => Talk = Talk with { Next = next };

    public TeardownCase Read() => CaseReader.ReadBegun(Talk.Knowledge, File).Case!;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private void Do(Turn turn)
    {
        Talk = turn.Next;
        switch (turn.Do)
        {
            case Save save:
                CaseEdit edit = session.Write(save);
                Talk = edit.Written ? Talk.Saved(edit.Case!, save) : Talk.Refused(edit.Problems, save);
                break;
            case TakeBack:
                Talk = Talk.TookBack(session.TakeBack(out string says), says);
                break;
            case Finish:
                Finished = true;
                break;
        }
    }
}
