using Failwise.Cases;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>Reads one entry of short codes word by word.</summary>
internal sealed partial class CodeEntry(KnowledgeBase knowledge, IReadOnlyList<CodeWord> words, ProblemList problems, Machine? machine)
{
    private const int MostPlaces = 3;
    private static readonly string[] SoundWords = ["ok", "sound", "clean", "good", "normal"];
    private static readonly string[] NotLookedWords = ["nl", "not-looked-at"];
    private static readonly string[] JoiningWords = ["a", "an", "the", "is", "are", "was", "were", "and", "of", "on", "in", "at", "by", "with", "its", "it", "has", "got", "gone", "very", "quite", "badly", "as", "like", "up", "off", "out", "over"];
    private static readonly string[] SpreadWords = ["all", "one", "some", "most", "neighbours", "first-on-feed", "last-on-feed"];
    private readonly List<string> on = [];
    private readonly List<string> see = [];
    private readonly List<string> not = [];
    private readonly List<string> notes = [];
    private string? about;
    private string? at;
    private string? extent;
    private string? sure;
    private string? rest;
    private string? photo;
    private bool unlooked;
    private int partWords;
    private int next;

    /// <summary>The entry, or null with the reason among the problems.</summary>
    public CaseEntry? Read()
    {
        Location start = words[0].At;
        if (words[0].Text == "!")
        {
            return ReadStatement(start);
        }

        if (RuleShapes.CaseNumbers.Contains(words[0].Text))
        {
            return ReadNumber(start);
        }

        if (ReadPart() is not { } part)
        {
            return null;
        }

        about = part;

        int equals = words.ToList().FindIndex(w => w is { Quoted: false, Text: "=" });
        if (equals >= 0)
        {
            return ReadReading(part, equals, start);
        }

        int before = problems.All.Count;
        while (next < words.Count)
        {
            ReadWord();
        }

        return problems.All.Count > before ? null : Observation(part, start);
    }

    private CaseEntry? Observation(string part, Location start)
    {
        string name = knowledge.Parts[part].Name;
        if (unlooked)
        {
            if (see.Count + not.Count > 0)
            {
                return Wrong("FW097", start, $"{name}: either it was looked at or it was not; write two entries for two places.");
            }

            return new CaseEntry("not-looked-at", notes.Count == 0 ? part : YamlText.Group([("part", part), ("reason", YamlText.Of(string.Join(" ", notes)))]), start);
        }

        if (see.Count + not.Count == 0)
        {
            return Wrong("FW097", start, $"what was seen on {name}? Add a pattern, 'ok', or 'nl' for not looked at.");
        }

        return new CaseEntry("observations", YamlText.Group(Fields(part)), start);
    }

    private IEnumerable<(string Key, string Written)> Fields(string part)
    {
        yield return ("part", part);
        foreach ((string key, List<string> values) in new[] { ("on", on), ("see", see), ("not", not) })
        {
            if (key == "on" && at is not null)
            {
                yield return ("at", at);
            }

            if (values.Count > 0)
            {
                yield return (key, YamlText.List([.. values.Distinct()]));
            }
        }

        foreach ((string key, string? value) in new[] { ("extent", extent), ("sure", sure), ("rest", rest), ("note", notes.Count > 0 ? string.Join(" ", notes) : null), ("photo", photo) })
        {
            if (value is not null)
            {
                yield return (key, YamlText.Of(value));
            }
        }
    }

    /// <summary>The part: a code with its number and places run together, or words.</summary>
    private string? ReadPart()
    {
        CodeWord first = words[0];
        TakeLeadingNumber();
        if ((NamedPart() ?? (TurnAround() ? NamedPart() : null) ?? (first.Quoted ? null : ReadCode(first.Text, StringComparison.OrdinalIgnoreCase))) is { } part)
        {
            partWords = next;
            ReadNumbers(part);
            return part;
        }

        int letters = first.Text.TakeWhile(char.IsLetter).Count();
        IEnumerable<string> codes = knowledge.Codes.Where(c => c.Kind == "part").Select(c => c.Code);
        Wrong("FW012", first.At, letters is 1 or 2 && letters < first.Text.Length
            ? $"unknown part code '{first.Text[..letters]}'.{Suggest.Nearest(first.Text[..letters], [.. codes])} 'failwise case codes' lists them."
            : $"unknown part '{Shape.Short(first.Text)}'.{PartMeant()}");
        return null;
    }

    private string? NamedPart() => words[0].Quoted ? null
        : ReadCode(words[0].Text, StringComparison.Ordinal) ?? ReadPhrase(knowledge.PartWords, 0);

    /// <summary>Such as MB, MB3, MB1-5U or MB*L.</summary>
    private string? ReadCode(string text, StringComparison compare)
    {
        string letters = new([.. text.TakeWhile(c => !IsNumber(c))]);
        int digits = letters.Length == text.Length ? -1 : letters.Length;
        int afterNumber = letters.Length + text.Skip(letters.Length).TakeWhile(IsNumber).Count();
        ShortCode? code = knowledge.Codes.Where(c => c.Kind == "part" && letters.StartsWith(c.Code, compare)).OrderByDescending(c => c.Code.Length).FirstOrDefault();
        string places = code is null ? "" : letters[code.Code.Length..] + text[afterNumber..];
        if (code is null || (digits < 0 && places.Length > 0 && (places.Length > MostPlaces || !places.All(l => PlaceOf(l) is { } place && FitsOn(code.Id, place)))))
        {
            return null;
        }

        next = 1;
        at = digits < 0 ? at : Numbers(text[digits..afterNumber]);
        AddPlaces(code.Id, places, words[0]);
        return code.Id;
    }

    private bool FitsOn(string part, string place) => knowledge.Parts[part].Places is var axes && (axes.Count == 0 || axes.Contains(knowledge.AxisOf[place]));

    private static bool IsNumber(char c) => char.IsAsciiDigit(c) || c is '*' or ',' or '-';

    private string? PlaceOf(char letter) => knowledge.Codes.FirstOrDefault(c => c.Kind == "place" && c.Code == char.ToUpperInvariant(letter).ToString())?.Id;

    /// <summary>Numbers behind the part, with place letters run on to them as behind a code: 3L.</summary>
    private void ReadNumbers(string part)
    {
        if (next >= words.Count || at is not null || words[next].Quoted)
        {
            return;
        }

        string text = words[next].Text.TrimStart('#');
        int digits = text.TakeWhile(IsNumber).Count();
        if (digits == 0 || !text[digits..].All(char.IsAsciiLetter))
        {
            return;
        }

        at = Numbers(text[..digits]);
        AddPlaces(part, text[digits..], words[next]);
        next++;
    }

    private void AddPlaces(string part, string letters, CodeWord written)
    {
        foreach (char letter in letters)
        {
            if (PlaceOf(letter) is { } place)
            {
                on.Add(place);
                continue;
            }

            problems.Error("FW014", written.At, $"unknown place code '{letter}' in '{Shape.Short(written.Text)}'. On {knowledge.Parts[part].Name}: {string.Join(", ", knowledge.Codes.Where(c => c.Kind == "place" && FitsOn(part, c.Id)).Select(c => $"{c.Code} {c.Id}"))}.");
        }
    }

    private static string Numbers(string text)
    {
        if (text.Contains('*', StringComparison.Ordinal))
        {
            return "all";
        }

        string[] several = text.Split(',', StringSplitOptions.RemoveEmptyEntries);
        return several.Length == 1 ? several[0] : "[" + string.Join(", ", several) + "]";
    }

    private void ReadWord()
    {
        CodeWord word = words[next];
        if (word.Quoted)
        {
            notes.Add(word.Text);
            next++;
            return;
        }

        string text = Suggest.Fold(word.Text);
        if (text.StartsWith('@') && text.Length > 1)
        {
            photo = word.Text[1..];
            next++;
        }
        else if (text.EndsWith('?'))
        {
            sure = text.EndsWith("??", StringComparison.Ordinal) ? "doubtful" : "fairly-sure";
            string bare = text.TrimEnd('?');
            next++;
            if (bare.Length > 0)
            {
                Meaning(word with { Text = bare }, bare);
            }
        }
        else if (text == "not" && next + 2 < words.Count && Suggest.Fold($"{words[next + 1].Text} {words[next + 2].Text}") == "looked-at")
        {
            unlooked = true;
            next += 3;
        }
        else if (text is "no" or "not" && next + 1 < words.Count)
        {
            next++;
            if (Pattern(next) is { } absent)
            {
                not.Add(absent);
            }
            else
            {
                Unknown(words[next], [.. knowledge.PatternWords.Words]);
                next++;
            }
        }
        else if (text == "rest" && next + 1 < words.Count)
        {
            string how = Suggest.Fold(words[next + 1].Text);
            rest = NotLookedWords.Contains(how) ? "not-looked-at" : SoundWords.Contains(how) ? how : null;
            if (rest is null)
            {
                problems.Error("FW096", words[next + 1].At, $"'rest' is followed by ok or nl, not by '{Shape.Short(words[next + 1].Text)}'.");
            }

            next += 2;
        }
        else
        {
            next++;
            Meaning(word, text);
        }
    }

    /// <summary>A word, or the first of a phrase, that says how it looked, where, or how much; <see cref="next"/> stands behind it.</summary>
    private void Meaning(CodeWord word, string text)
    {
        int from = next - 1;
        if (SoundWords.Contains(text))
        {
            see.Add("sound");
        }
        else if (NotLookedWords.Contains(text))
        {
            unlooked = true;
        }
        else if (RuleShapes.Extents.Contains(text))
        {
            extent = text;
        }
        else if (text is [>= '1' and <= '5'] && see.Count + not.Count > 0)
        {
            extent = RuleShapes.Extents[text[0] - '1'];
        }
        else if (text is "sure" or "fairly-sure" or "doubtful")
        {
            sure = text;
        }
        else if (ReadPlaces(from) is { } several)
        {
            on.Add(several);
        }
        else if (SpreadWords.Contains(text) && at is null)
        {
            at = text;
        }
        else if (Pattern(from) is { } pattern)
        {
            see.Add(pattern);
        }
        else if (knowledge.PatternOn(about!, text) is { } bare)
        {
            see.Add(bare);
        }
        else if (ReadPhrase(knowledge.PlaceWords, from) is { } place)
        {
            on.Add(place);
        }
        else if (word.Text.All(l => char.IsAsciiLetterUpper(l) && PlaceOf(l) is { } lettered && FitsOn(about!, lettered)))
        {
            on.AddRange(word.Text.Select(l => PlaceOf(l)!));
        }
        else if (!JoiningWords.Contains(text))
        {
            Unknown(word, [.. knowledge.PatternWords.Words, .. knowledge.PlaceWords.Words, .. RuleShapes.Extents]);
        }
    }

    /// <summary>A place of several words, such as one side; "one" alone counts parts.</summary>
    private string? ReadPlaces(int from)
    {
        int before = next;
        if (ReadPhrase(knowledge.PlaceWords, from) is { } place && next > from + 1)
        {
            return place;
        }

        next = before;
        return null;
    }

    private void Unknown(CodeWord word, IReadOnlyCollection<string> known) =>
        problems.Error("FW096", word.At, $"'{Shape.Short(word.Text)}' is no pattern, place or amount.{MarkMeant(word, known)} Free words go in quotes.");

    private CaseEntry? Wrong(string code, Location at, string message)
    {
        problems.Error(code, at, message);
        return null;
    }
}
