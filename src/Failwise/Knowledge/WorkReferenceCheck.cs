using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>Checks that every id in the rules about work, decisions, downstream lists and sheets resolves.</summary>
internal sealed class WorkReferenceCheck(KnowledgeBase knowledge, ProblemList problems)
{
    public void Run()
    {
        foreach (WorkRule work in knowledge.Work.Values)
        {
            Check(work);
        }

        foreach (DecisionRule d in knowledge.Decisions.Values)
        {
            Parts(d.Parts, d.At);
            Each(d.See.Where(see => see != DecisionRule.AnyMark), "FW013", "pattern", knowledge.Patterns.Keys, d.At);
            Sources([.. d.Sources, .. Maybe(d.LimitSource)], d.At);
        }

        foreach (DownstreamRule d in knowledge.Downstream.Values)
        {
            Machines(d.Machines, d.At);
            Triggers(d.Because);
            Sources([.. d.Sources, .. d.Stations.SelectMany(s => s.Sources)], d.At);
            Parts(d.Stations.Select(s => s.Part), d.At);
            Features(d.Stations.Select(s => s.Fitted).OfType<string>(), d.At);
            Works(d.Stations.Select(s => s.Work).OfType<string>(), d.At);
        }

        foreach (SheetRule s in knowledge.Sheets.Values)
        {
            Machines(s.Machines, s.At);
            Features([.. s.Needs, .. s.Fitted is { } f ? new[] { f } : []], s.At);
            Parts(s.Touched, s.At);
            Works(s.Work, s.At);
            Each(s.Said, "FW018", "symptom or history word", [.. knowledge.Symptoms.Keys, .. knowledge.Circumstances.Keys], s.At);
            Sources([.. s.Sources, .. Maybe(s.Reading?.Source)], s.At);
        }
    }

    private void Check(WorkRule work)
    {
        Parts([.. work.Part is { } part ? new[] { part } : [], .. work.Together.Select(t => t.Part), .. work.Materials.Select(m => m.Part).OfType<string>()], work.At);
        Works([.. work.After, .. work.InsteadOf, .. work.Materials.Select(m => m.OrderAfter).OfType<string>()], work.At);
        Features(work.Needs, work.At);
        Machines(work.Machines, work.At);
        Sources([.. work.Sources, .. Maybe(work.Verify?.Source)], work.At);
        Triggers(work.Because);
    }

    private void Triggers(IReadOnlyList<WorkTrigger> triggers)
    {
        foreach (WorkTrigger t in triggers)
        {
            Each(Maybe(t.Cause), "FW015", "cause", knowledge.Causes.Keys, t.At);
            Each(Maybe(t.Finding), "FW016", "finding", knowledge.Findings.Keys, t.At);
            Each(Maybe(t.History), "FW017", "history word", knowledge.Circumstances.Keys, t.At);
            Works(Maybe(t.Work), t.At);
            Parts(Maybe(t.Part), t.At);
            Each(t.See, "FW013", "pattern", knowledge.Patterns.Keys, t.At);
        }
    }

    private static IEnumerable<T> Maybe<T>(T? one)
        where T : class => one is null ? [] : [one];

    private void Parts(IEnumerable<string> ids, Location at) => Each(ids, "FW012", "part", knowledge.Parts.Keys, at);

    private void Works(IEnumerable<string> ids, Location at) => Each(ids, "FW021", "work", knowledge.Work.Keys, at);

    private void Features(IEnumerable<string> ids, Location at) => Each(ids, "FW019", "feature", knowledge.Features.Keys, at);

    private void Machines(IEnumerable<string> ids, Location at) => Each(ids, "FW022", "machine kind", knowledge.Machines.Keys, at);

    private void Sources(IEnumerable<SourceRef> sources, Location at) => Each(sources.Select(s => s.Id), "FW020", "source", knowledge.Sources.Keys, at);

    private void Each(IEnumerable<string> ids, string code, string what, IEnumerable<string> known, Location at) =>
        ReferenceCheck.Unknown(problems, ids, code, what, known, at);
}
