using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Checks;

/// <summary>Puts checks into words that read well whatever the part and the pattern are called.</summary>
internal static class CheckWording
{
    public static string Of(KnowledgeBase knowledge, OpenLook look, IReadOnlyList<OpenSign> shown) =>
        $"{EvidenceGathering.Capital(knowledge.Parts[look.Part].Name)}: {string.Join(", ", shown.DistinctBy(s => s.Pattern.Id).Select(s => Of(knowledge, look, s)))}, or {(look.SeenBefore ? "none of these" : "sound")}?";

    public static string Of(KnowledgeBase knowledge, OpenLook look, OpenSign sign) =>
        sign.Part == look.Part ? sign.Pattern.Name : $"{sign.Pattern.Name} ({knowledge.Parts[sign.Part].Name})";

    public static string None(OpenLook look) => look.SeenBefore ? "none of these" : "sound";

    public static string Of(FindingRule rule) => "True or not? " + rule.Says;

    public static string Of(Symptom symptom) => symptom.Ask ?? "Was it noticed? " + symptom.Says;

    public static string? How(IReadOnlyList<OpenSign> shown)
    {
        string[] ways = [.. shown.Select(s => s.Pattern.Check?.How).OfType<string>().Distinct().Take(2)];
        return ways.Length == 0 ? null : string.Join(" ", ways.Select(w => w[^1] is '.' or '?' ? w : w + "."));
    }

    public static string? Tool(IReadOnlyList<OpenSign> shown)
    {
        string[] tools = [.. shown.Select(s => s.Pattern.Check?.Tool).OfType<string>().SelectMany(t => t.Split(", ")).Distinct().Take(4)];
        return tools.Length == 0 ? null : string.Join(", ", tools);
    }

    /// <summary>How the answer is written into the case.</summary>
    public static string Answer(OpenLook look, IReadOnlyList<OpenSign> shown) =>
        $"{{part: {shown[0].Part}, see: {shown[0].Pattern.Id}}} or {{part: {look.Part}, see: sound}}";
}
