using System.Globalization;
using Failwise.Cases;
using Failwise.Checks;
using Failwise.Knowledge;

namespace Failwise.Dialogue;

/// <summary>What the planner would look at or ask next, in the words of the dialogue.</summary>
internal static class NextLooks
{
    private const int Most = 4;
    private const int Planned = 9;

    /// <summary>Plans anew; to be called where nobody waits for it.</summary>
    public static IReadOnlyList<NextLook> Of(KnowledgeBase knowledge, TeardownCase teardown)
    {
        CheckPlan plan = CheckPlanner.Plan(knowledge, teardown, new PlanOptions(Planned));
        NextLook[] all = [.. plan.Checks.Select(c => Look(knowledge, c)).OfType<NextLook>()];
        return [.. all.Where(l => l.Intake is null).Take(Most), .. all.Where(l => l.Intake is not null)];
    }

    private static NextLook? Look(KnowledgeBase knowledge, PlannedCheck check)
    {
        string id = check.Id[(check.Id.IndexOf('/', StringComparison.Ordinal) + 1)..];
        return check.Kind switch
        {
            CheckKind.Symptom when knowledge.Symptoms.TryGetValue(id, out Symptom? s) => new NextLook(s.Says, s.Ask, null, id, true),
            CheckKind.History when knowledge.Circumstances.TryGetValue(id, out Circumstance? c) => new NextLook(c.Says, c.Ask, null, id, false),
            CheckKind.Gap when check.Parts.Count > 0 => new NextLook($"{knowledge.Parts[check.Parts[0]].Name}: {check.Says}", Effort(check), check.Parts[0], null, false),
            CheckKind.Look or CheckKind.Finding when check.Parts.Count > 0 => new NextLook(check.Says, Effort(check), check.Parts[0], null, false),
            CheckKind.Gap => new NextLook(check.Says, check.Why, null, null, false, id),
            _ => null,
        };
    }

    private static string Effort(PlannedCheck check) => string.Create(CultureInfo.InvariantCulture,
        $"{(check.Opening is { } opening ? opening + "; " : "")}about {Math.Max(1, check.Minutes + check.OpeningMinutes):0} min{(check.LostBy.Contains("cleaning") ? "; before cleaning" : "")}");
}
