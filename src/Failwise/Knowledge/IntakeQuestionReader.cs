using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>Reads one question of rules/questions; its form has been checked.</summary>
internal static class IntakeQuestionReader
{
    public static IntakeQuestion Read(MapNode m)
    {
        MapNode? unless = m["unless"] as MapNode;
        return new IntakeQuestion(
            m.Text("id")!, m.Text("asks")!, m.Text("why"), m.Text("answer"), m.Number("minutes") ?? 1, m.Texts("machines"),
            [.. m.Groups("when").Select(ReadGap)], m.Texts("covers"), m.Texts("looks-at"), m.Text("access"), m.Texts("shows"),
            unless?.Texts("parts") ?? [], unless?.Texts("see") ?? [], unless?.Texts("symptoms") ?? [], unless?.Texts("history") ?? [],
            unless?.Flag("readings") ?? false, KnowledgeReader.ReadSources(m), m.At) { NotWith = m.Texts("not-with") };
    }

    private static GapTrigger ReadGap(MapNode g) => new(
        (GapKind)Math.Max(0, Array.IndexOf(GapTrigger.Words, g.Text("gap") ?? "always")), g.Texts("parts"), g.Texts("see"), g.Texts("symptoms"),
        g.Texts("history"), g.Chance("worth") ?? 0);
}
