using Failwise.Knowledge;

namespace Failwise.Tests.Knowledge;

/// <summary>Phrases of the shop, each with what is meant by it, against the search for words.</summary>
public class SpokenWordTests
{
    private const int Within = 3;
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    // Counts that must not get worse; source of the meanings: common practice, no source.
    [Theory]
    [InlineData("spoken-learnt.txt", 190, 208)]
    [InlineData("spoken-apart.txt", 128, 171)]
    public void Most_of_what_people_say_is_understood(string file, int first, int within)
    {
        int[] ranks = [.. Phrases(file).Select(RankOf)];

        ranks.Should().HaveCountGreaterThan(200);
        ranks.Count(r => r == 1).Should().BeGreaterThanOrEqualTo(first);
        ranks.Count(r => r <= Within).Should().BeGreaterThanOrEqualTo(within);
    }

    [Theory]
    [InlineData("spoken-learnt.txt")]
    [InlineData("spoken-apart.txt")]
    public void What_is_meant_is_in_the_rules(string file) => Phrases(file).SelectMany(Meant).Where(m => !IsKnown(m.Kind, m.Id)).Should().BeEmpty();

    private static IEnumerable<string[]> Phrases(string file) =>
        File.ReadLines(Repository.Folder("tests", "Failwise.Tests", "Knowledge", file)).Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split('|', StringSplitOptions.TrimEntries));

    private static IEnumerable<(string Kind, string Id)> Meant(string[] phrase) =>
        phrase[1].Split(' ').Select(id => (phrase[0] == "mark" ? "part" : phrase[0], id)).Concat(phrase[2].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => ("pattern", id)));

    private static bool IsKnown(string kind, string id) => kind switch
    {
        "part" => Knowledge.Parts.ContainsKey(id),
        "pattern" => id == "sound" || Knowledge.Patterns.ContainsKey(id),
        _ => Knowledge.Symptoms.ContainsKey(id) || Knowledge.Circumstances.ContainsKey(id),
    };

    /// <summary>Where the meaning stands among the matches, from 1; of a part and its mark the later one.</summary>
    private static int RankOf(string[] phrase)
    {
        WordMatch[] matches = [.. WordSearch.Find(Knowledge, phrase[3], Within)];
        return phrase[0] == "mark"
            ? Math.Max(Rank(matches.Where(m => m.Kind == "part"), phrase[1]), phrase[2] == "sound" ? 1 : Rank(matches.Where(m => m.Kind == "pattern"), phrase[2]))
            : Rank(matches.Where(m => m.Kind is "symptom" or "history").OrderByDescending(m => m.Score), phrase[1]);
    }

    private static int Rank(IEnumerable<WordMatch> matches, string ids)
    {
        int at = matches.ToList().FindIndex(m => ids.Split(' ').Contains(m.Id));
        return at < 0 ? int.MaxValue : at + 1;
    }
}
