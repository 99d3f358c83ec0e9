using System.Globalization;
using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>What was answered about a new case, as written; each answer is checked against the vocabulary.</summary>
internal sealed class NewCaseAnswers(KnowledgeBase knowledge)
{
    private const int MostCount = 64;

    public string? Title { get; set; }

    public string? Kind { get; set; }

    public string? Name { get; set; }

    public string? Cylinders { get; set; }

    public string? Mains { get; set; }

    public string? Feed { get; set; }

    public string? DriveEnd { get; set; }

    public string? NumberOne { get; set; }

    public string? Features { get; set; }

    public string? Without { get; set; }

    public string? Hours { get; set; }

    public string? Said { get; set; }

    /// <summary>The draft, or every problem with the answers.</summary>
    public CaseDraft? Draft(List<Problem> problems)
    {
        int before = problems.Count;
        IReadOnlyList<string> kinds = Words("--kind", Kind, problems);
        IReadOnlyList<string> features = Words("--features", Features, problems);
        IReadOnlyList<string> without = Words("--without", Without, problems);
        int? mains = Count("--mains", Mains, problems);
        (List<string> history, List<string> symptoms, List<string> denied) = ReadSaid(problems, kinds);
        CaseDraft draft = new(
            Title?.Trim() ?? "", kinds, Blank(Name), Count("--cylinders", Cylinders, problems), mains, ReadFeed(mains, problems),
            ReadDriveEnd(problems), Blank(NumberOne), features, without, ReadHours(problems), history, symptoms, denied);
        foreach (string both in features.Intersect(without))
        {
            problems.Add(Wrong("FW035", "--without", $"'{both}' stands under --features and under --without; keep one."));
        }

        return problems.Count > before ? null : draft;
    }

    /// <summary>Ids for the words of one answer, commas between them.</summary>
    public IReadOnlyList<string> Words(string option, string? written, List<Problem> problems)
    {
        (WordIndex index, string code, string what) = option == "--kind" ? (knowledge.MachineWords, "FW022", "kind of machine") : (knowledge.FeatureWords, "FW019", "feature");
        List<string> ids = [];
        foreach (string word in Split(written))
        {
            if (index.Find(word) is { } id)
            {
                ids.Add(id);
            }
            else
            {
                problems.Add(Wrong(code, option, $"unknown {what} '{word}'.{Suggest.Nearest(word, index.Words)}"));
            }
        }

        return [.. ids.Distinct()];
    }

    /// <summary>Symptoms and history in the shop's words; 'no' before one denies it.</summary>
    public (List<string> History, List<string> Symptoms, List<string> Denied) ReadSaid(List<Problem> problems, IReadOnlyList<string>? kinds = null)
    {
        List<string> history = [], symptoms = [], denied = [];
        foreach (string phrase in Split(Said))
        {
            string? symptom = knowledge.SymptomWords.Find(phrase, Fit), circumstance = knowledge.HistoryWords.Find(phrase, Fit);
            bool no = symptom is null && circumstance is null && phrase.StartsWith("no ", StringComparison.OrdinalIgnoreCase);
            string bare = no ? phrase[3..].Trim() : phrase;
            symptom ??= knowledge.SymptomWords.Find(bare, Fit);
            circumstance ??= knowledge.HistoryWords.Find(bare, Fit);
            if ((symptom ?? circumstance) is { } id)
            {
                (no ? denied : symptom is not null ? symptoms : history).Add(id);
                continue;
            }

            string[] near = [.. WordSearch.Find(knowledge, bare, kinds: kinds).Where(m => m.Kind is "symptom" or "history").OrderByDescending(m => m.Score).Take(3).Select(m => m.Id)];
            problems.Add(Wrong("FW018", "--said", $"unknown symptom or history word '{bare}'.{(near.Length > 0 ? $" Perhaps: {string.Join(", ", near)}." : Suggest.Nearest(bare, [.. knowledge.SymptomWords.Words, .. knowledge.HistoryWords.Words]))}"));
        }

        return ([.. history.Distinct()], [.. symptoms.Distinct()], [.. denied.Distinct()]);

        double Fit(string id) => kinds is null ? 1 : knowledge.FitOf(id, kinds, []);
    }

    public static int? Count(string option, string? written, List<Problem> problems)
    {
        if (Blank(written) is not { } text)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is >= 1 and <= MostCount)
        {
            return count;
        }

        problems.Add(Wrong("FW009", option, $"'{text}' is not a number from 1 to {MostCount}."));
        return null;
    }

    private List<int> ReadFeed(int? mains, List<Problem> problems)
    {
        List<int> feed = [];
        foreach (string word in Split(Feed))
        {
            feed.Add(int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 0);
        }

        int most = mains ?? feed.Count;
        if (feed.Count > 0 && (feed.Count != most || feed.Distinct().Count() != most || feed.Exists(n => n < 1 || n > most)))
        {
            problems.Add(Wrong("FW026", "--feed", $"the feed names every main bearing once: numbers 1 to {most}, such as 1,2,3."));
        }

        return feed;
    }

    private bool? ReadDriveEnd(List<Problem> problems)
    {
        switch (Blank(DriveEnd))
        {
            case null:
                return null;
            case "first":
                return true;
            case "last":
                return false;
            default:
                problems.Add(Wrong("FW010", "--drive-end", $"'{DriveEnd}' is neither first nor last: does the drive end stand at No. 1 or at the highest number?"));
                return null;
        }
    }

    private double? ReadHours(List<Problem> problems)
    {
        if (Blank(Hours) is not { } text)
        {
            return null;
        }

        if (Yaml.Numbers.TryParse(text, out double hours) && hours is >= 0 and <= 1e9)
        {
            return hours;
        }

        problems.Add(Wrong("FW009", "--hours", $"'{text}' is not a number of hours, such as 6200."));
        return null;
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static string[] Split(string? text) => (text ?? "").Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static Problem Wrong(string code, string option, string message) => new(code, Severity.Error, new Location(option, 0, 0), message);
}
