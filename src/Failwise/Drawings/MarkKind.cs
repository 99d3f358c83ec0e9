using Failwise.Knowledge;

namespace Failwise.Drawings;

/// <summary>Families of marks that look alike in a drawing.</summary>
internal enum MarkKind
{
    None, Smear, Grooves, CrossGrooves, Specks, Mosaic, Pits, FinePits, Blotches, Tint, Shine, Wear, EdgeWear, Crack, Break, Fretting, Deposit, Bend, Hole,
    Wet, Stuck, Loose, Missing, Washboard, Dents, Flakes, Blocked,
}

/// <summary>Which family a pattern belongs to, by the words of its id and of the broader patterns it is a kind of.</summary>
internal static class MarkKinds
{
    private static readonly Dictionary<string, MarkKind> ById = new(StringComparer.Ordinal)
    {
        ["axial-scratches"] = MarkKind.CrossGrooves, ["fatigue-cracked-lining"] = MarkKind.Mosaic, ["minute-overlay-cracks"] = MarkKind.Mosaic,
        ["lining-lost"] = MarkKind.Mosaic, ["hot-short"] = MarkKind.Mosaic, ["cavitation-eroded"] = MarkKind.FinePits, ["debris-dented"] = MarkKind.Dents,
        ["electric-fluted"] = MarkKind.Washboard, ["electric-pitted"] = MarkKind.FinePits, ["back-fretted"] = MarkKind.Fretting, ["back-shiny"] = MarkKind.Shine,
        ["false-brinelled"] = MarkKind.Washboard, ["burnt-through"] = MarkKind.Hole, ["burnt-smell"] = MarkKind.None, ["not-holding"] = MarkKind.None,
        ["bore-polished"] = MarkKind.Shine, ["bearing-metal-flakes"] = MarkKind.Flakes, ["ring-broken"] = MarkKind.Break, ["lip-grooved"] = MarkKind.Grooves,
        ["cord-broken"] = MarkKind.Break, ["normal-shine"] = MarkKind.Shine, ["oil-low"] = MarkKind.None, ["oil-high"] = MarkKind.None, ["oil-empty"] = MarkKind.None,
        ["edge-strip-unworn"] = MarkKind.EdgeWear, ["teeth-rounded"] = MarkKind.Wear, ["tooth-hammered"] = MarkKind.Dents, ["paint-cracked-round"] = MarkKind.Crack,
    };

    private static readonly (MarkKind Kind, string[] Words)[] ByWord =
    [
        (MarkKind.Break, ["broken", "fracture", "sheared", "chipped", "torn", "split", "cut"]),
        (MarkKind.Crack, ["cracked", "cracks", "crack", "crazed", "checked"]),
        (MarkKind.Smear, ["wiped", "scuffed", "scuff", "galled", "seized", "smeared", "transferred", "plastic", "sliding"]),
        (MarkKind.Grooves, ["scored", "scratched", "scratches", "grooved", "abraded", "ridged", "streaks", "lined"]),
        (MarkKind.Specks, ["embedded", "peppered", "glitter", "fuzz"]),
        (MarkKind.Pits, ["pitted", "pitting", "spalled"]),
        (MarkKind.FinePits, ["micropitted", "frosted", "matt", "cavitated", "eroded", "nibbled"]),
        (MarkKind.Blotches, ["corroded", "rusted", "rusty", "stained", "stain", "attacked", "etched", "mottled"]),
        (MarkKind.Tint, ["blued", "blue", "overheated", "burnt", "discoloured", "darkened", "tint", "scaled", "spots", "spotted", "burned"]),
        (MarkKind.Shine, ["polished", "glazed", "mirror", "shiny", "bright"]),
        (MarkKind.EdgeWear, ["edge", "diagonal", "end", "tilted", "corner"]),
        (MarkKind.Fretting, ["fretted", "fretting", "rubbed", "chafed"]),
        (MarkKind.Deposit, ["varnished", "sludged", "carboned", "coked", "deposit", "sludge", "ash", "sooted", "soot", "carbon", "crust"]),
        (MarkKind.Bend, ["bent", "twisted", "warped", "kinked", "stretched", "deformed", "collapsed", "distorted", "dished"]),
        (MarkKind.Hole, ["holed", "melted", "guttered"]),
        (MarkKind.Wet, ["leaking", "wet", "oily", "weep", "milky", "water", "diluted", "fuel", "coolant"]),
        (MarkKind.Blocked, ["blocked", "choked", "covered", "bypassing"]),
        (MarkKind.Stuck, ["stuck", "shut", "frozen"]),
        (MarkKind.Loose, ["loose", "play", "slack", "backed", "spun", "shifted", "turns"]),
        (MarkKind.Missing, ["missing", "lost", "disconnected"]),
        (MarkKind.Washboard, ["rippled", "wavy", "fluted"]),
        (MarkKind.Dents, ["dented", "impact", "hammered", "brinelled", "marked", "nicked", "imprint"]),
        (MarkKind.Flakes, ["flakes", "chips", "pieces", "particles", "swarf", "curls", "found", "grit", "fibres"]),
        (MarkKind.Wear, ["worn", "thin", "wear", "tapered", "ovalised", "barrelled", "cupped", "step", "oversize", "recessed", "sunk", "necked"]),
    ];

    private static readonly Dictionary<string, MarkKind> Word =
        ByWord.SelectMany(k => k.Words.Select(w => (w, k.Kind))).ToDictionary(x => x.w, x => x.Kind, StringComparer.Ordinal);

    public static MarkKind Of(KnowledgeBase knowledge, string pattern)
    {
        foreach (string id in knowledge.PatternLine(pattern))
        {
            if (ById.TryGetValue(id, out MarkKind known))
            {
                return known;
            }

            MarkKind kind = ByWord.FirstOrDefault(k => id.Split('-').Any(w => Word.TryGetValue(w, out MarkKind m) && m == k.Kind)).Kind;
            if (kind != MarkKind.None)
            {
                return kind;
            }
        }

        return MarkKind.None;
    }
}
