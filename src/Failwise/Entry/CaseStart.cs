using System.Globalization;
using System.Text;
using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>Begins a case: a folder with a commented case file and a place for photos. What is there already is never touched.</summary>
public static class CaseStart
{
    /// <summary>The folder of a case in which the photos lie.</summary>
    public const string PhotoFolder = "photos";

    /// <summary>Writes the folder.</summary>
    /// <param name="knowledge">Tells symptoms from history among the denied words.</param>
    /// <param name="folder">The folder; made when it is not there, and it may hold photos already.</param>
    /// <param name="beside">More files to write, by name; one that is there already is left as it is.</param>
    /// <returns>The files written, as paths below the folder.</returns>
    /// <exception cref="ProblemsException">There is a case in the folder already.</exception>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    public static IReadOnlyList<string> Create(KnowledgeBase knowledge, string folder, CaseDraft draft, IReadOnlyDictionary<string, string> beside)
    {
        RefuseExisting(folder);
        string file = Path.Combine(folder, CaseReader.FileInFolder);
        Directory.CreateDirectory(Path.Combine(folder, PhotoFolder));
        List<string> written = [];
        foreach ((string name, string text) in beside.OrderBy(b => b.Key, StringComparer.Ordinal).Where(b => !File.Exists(Path.Combine(folder, b.Key))))
        {
            CaseStore.Create(Path.Combine(folder, name), text);
            written.Add(name);
        }

        // Last of all, so that a folder with a case file in it is always complete.
        CaseStore.Create(file, Text(knowledge, draft));
        return [.. written.Prepend(CaseReader.FileInFolder)];
    }

    /// <summary>Stops where a case is already.</summary>
    /// <exception cref="ProblemsException">There is a case in the folder, or a file of its name.</exception>
    public static void RefuseExisting(string folder)
    {
        string file = Path.Combine(folder, CaseReader.FileInFolder);
        if (File.Exists(folder))
        {
            Refuse(folder, "this is a file; give the name of a folder for the case.");
        }

        if (File.Exists(file) || Directory.Exists(file))
        {
            Refuse(file, "a case is here already; nothing was written. Add to it with 'failwise case add', or give another folder.");
        }

        static void Refuse(string path, string why) => throw new ProblemsException([new Problem("FW098", Severity.Error, new Location(path.Replace('\\', '/'), 0, 0), why)]);
    }

    /// <summary>The text of the new case file.</summary>
    public static string Text(KnowledgeBase knowledge, CaseDraft draft)
    {
        StringBuilder text = new();
        text.Append("# yaml-language-server: $schema=case.schema.json\n");
        text.Append("# Write what you see, part by part, before it is cleaned; the good parts too. What is not written is not known, never \"not there\".\n");
        text.Append("# In short codes: failwise case add FOLDER \"MB3L wiped heavy; MB1-2 ok\"   The words: failwise words \"what you would call it\"\n");
        text.Append("title: ").Append(YamlText.Of(draft.Title)).Append('\n');
        Machine(text, draft);
        bool IsSymptom(string id) => knowledge.Symptoms.ContainsKey(id);
        string[] numbers = draft.Hours is { } hours ? [$"{{hours-total: {hours.ToString("0.##", CultureInfo.InvariantCulture)}}}"] : [];
        Section(text, "history", "Before it failed: hours, oil, what was done to it lately. A word, {not: word} when asked and not so, {note: free words}.",
            [.. numbers, .. draft.History, .. draft.Denied.Where(d => !IsSymptom(d)).Select(Not)]);
        Section(text, "symptoms", "What was noticed while it ran.", [.. draft.Symptoms, .. draft.Denied.Where(IsSymptom).Select(Not)]);
        Section(text, "observations", "What was seen, such as: {part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy, rest: sound}", []);
        Section(text, "debris", "What was found in oil, filter and sump, such as: {see: bearing-metal-flakes, extent: moderate}", []);
        Section(text, "readings", "What was measured, such as: {quantity: diameter, part: main-journal, at: 2, value: 57.94 mm, with: micrometer}", []);
        Section(text, "not-looked-at", "What nobody looked at; it is neither good nor bad.", []);
        Section(text, "photos", "Photos of this folder, such as: {file: photos/relief-valve.jpg, shows: Plunger as found}", []);
        return text.ToString();
    }

    private static string Not(string id) => YamlText.Group([("not", id)]);

    private static void Machine(StringBuilder text, CaseDraft draft)
    {
        text.Append("\nmachine:\n");
        Line("kind", YamlText.List(draft.Kinds), "");
        Line("name", draft.Name is null ? null : YamlText.Of(draft.Name), "what the shop calls it");
        Line("cylinders", draft.Cylinders?.ToString(CultureInfo.InvariantCulture), "4");
        Line("mains", draft.Mains?.ToString(CultureInfo.InvariantCulture), "5            number of main bearings");
        Line("feed", draft.Feed.Count == 0 ? null : "[" + string.Join(", ", draft.Feed) + "]", "[1, 2, 3, 4, 5]     the order in which the oil reaches the main bearings");
        Line("drive-end", draft.DriveEndFirst is not { } first ? null : first ? "first" : "last", "last     the drive end is at the highest number (or: first)");
        Line("number-one", draft.NumberOne is null ? null : YamlText.Of(draft.NumberOne), "pulley end");
        Line("features", Several(draft.Features), "[diesel, pressure-fed]     what the build has");
        Line("without", Several(draft.Without), "[turbocharged]     what it has not");

        void Line(string key, string? value, string example) => text.Append(value is null ? $"  # {key}: {example}\n" : $"  {key}: {value}\n");

        static string? Several(IReadOnlyList<string> words) => words.Count == 0 ? null : "[" + string.Join(", ", words) + "]";
    }

    private static void Section(StringBuilder text, string key, string hint, IReadOnlyList<string> items)
    {
        text.Append("\n# ").Append(hint).Append('\n').Append(key).Append(":\n");
        foreach (string item in items)
        {
            text.Append("  - ").Append(item).Append('\n');
        }
    }
}
