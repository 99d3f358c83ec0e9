using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>Asks what is known about a machine that has just come in. Enter leaves a question open; nothing is ever guessed.</summary>
internal static class NewCaseInterview
{
    /// <summary>Asks for what the answers do not hold yet.</summary>
    /// <returns>False when the input ended before a title and a kind were given.</returns>
    public static bool Ask(KnowledgeBase knowledge, NewCaseAnswers answers, TextReader input, TextWriter output)
    {
        output.WriteLine("Enter alone leaves a question open: not known is a good answer. Several words go with commas between them.");
        bool open = Must("What is the case about, in one line?", () => answers.Title, v => answers.Title = v, (_, _) => { })
            && Must($"What kind of machine? ({string.Join(", ", knowledge.Machines.Keys.Order(StringComparer.Ordinal))})", () => answers.Kind, v => answers.Kind = v, (v, p) => answers.Words("--kind", v, p));
        if (!open)
        {
            return false;
        }

        if (answers.Words("--kind", answers.Kind, []).Contains("engine"))
        {
            May("How many cylinders?", () => answers.Cylinders, v => answers.Cylinders = v, (v, p) => NewCaseAnswers.Count("--cylinders", v, p));
            May("How many main bearings?", () => answers.Mains, v => answers.Mains = v, (v, p) => NewCaseAnswers.Count("--mains", v, p));
        }

        May("Which end is No. 1, in your words? (pulley end, flywheel end ...)", () => answers.NumberOne, v => answers.NumberOne = v, (_, _) => { });
        May("What does the build have? (diesel, turbocharged, wet liners, pressure-fed ...)", () => answers.Features, v => answers.Features = v, (v, p) => answers.Words("--features", v, p));
        May("What does it not have?", () => answers.Without, v => answers.Without = v, (v, p) => answers.Words("--without", v, p));
        May("Hours run in all?", () => answers.Hours, v => answers.Hours = v, (v, p) => CheckHours(v, p));
        May("What was noticed or known before it failed? (oil light on, knock under load, no oil leak ...)", () => answers.Said, v => answers.Said = v, (v, p) =>
        {
            answers.Said = v;
            answers.ReadSaid(p);
            answers.Said = null;
        });
        return true;

        void CheckHours(string written, List<Problem> problems) => new NewCaseAnswers(knowledge) { Hours = written }.Draft(problems);

        bool Must(string question, Func<string?> known, Action<string> set, Action<string, List<Problem>> check)
        {
            while (string.IsNullOrWhiteSpace(known()))
            {
                if (!Put(question, set, check))
                {
                    return false;
                }
            }

            return true;
        }

        void May(string question, Func<string?> known, Action<string> set, Action<string, List<Problem>> check)
        {
            if (string.IsNullOrWhiteSpace(known()))
            {
                Put(question, set, check);
            }
        }

        // Asks until the answer is understood, is empty, or the input ends; false only at the end.
        bool Put(string question, Action<string> set, Action<string, List<Problem>> check)
        {
            while (true)
            {
                output.Write(question + " ");
                if (input.ReadLine() is not { } line)
                {
                    output.WriteLine();
                    return false;
                }

                List<Problem> problems = [];
                check(line, problems);
                if (problems.Count == 0)
                {
                    set(line);
                    return true;
                }

                foreach (Problem problem in problems)
                {
                    output.WriteLine("  " + problem.Message);
                }
            }
        }
    }
}
