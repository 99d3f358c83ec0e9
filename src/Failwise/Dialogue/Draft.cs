using Failwise.Entry;
using Failwise.Knowledge;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Dialogue;

/// <summary>An observation in the making.</summary>
/// <param name="At">Numbers as the case writes them; null when not said.</param>
/// <param name="Pattern">Null with <paramref name="Sound"/>.</param>
/// <param name="Anyway">True when the person has answered what there was to ask.</param>
internal sealed record Draft(
    Part Part, string? At, IReadOnlyList<string> On, Pattern? Pattern, bool Sound, string? Extent, string? Sure, string? Rest, bool Anyway)
{
    public static Draft Of(Part part) => new(part, null, [], null, false, null, null, null, false);

    /// <summary>In words, as far as it is known.</summary>
    public string Says
    {
        get
        {
            string name = Part.Name + (At is null ? "" : " " + At.Trim('[', ']'));
            string[] rest = [.. On.Select(p => p.Replace('-', ' ')), .. new[] { Sound ? "sound" : Pattern?.Name, Extent, Sure?.Replace('-', ' '), Rest is null ? null : "rest " + Rest.Replace('-', ' ') }.OfType<string>()];
            return rest.Length == 0 ? name : $"{name}: {string.Join(", ", rest)}";
        }
    }

    public CaseEntry Entry()
    {
        List<(string, string)> fields = [("part", Part.Id)];
        Add("at", At);
        if (On.Count > 0)
        {
            fields.Add(("on", YamlText.List(On)));
        }

        Add("see", Sound ? "sound" : Pattern!.Id);
        Add("extent", Extent);
        Add("sure", Sure);
        Add("rest", Rest);
        return new CaseEntry("observations", YamlText.Group(fields), new Location("dialogue", 1, 1));

        void Add(string key, string? value)
        {
            if (value is not null)
            {
                fields.Add((key, value));
            }
        }
    }

    /// <summary>Writes it as it stands, then asks on.</summary>
    public Turn Saved(Talk talk, bool replaces, Step then) => new(talk, new Save([Entry()], Says, replaces, Anyway, then));
}
