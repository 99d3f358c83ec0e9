namespace Failwise.Knowledge;

/// <summary>The part of the packed form that says what is done about a failure; each record is declared once, as in <see cref="PackedKnowledge"/>.</summary>
internal static class PackedWork
{
    public static WorkRule Work(PackCodec c, WorkRule? w) => new(
        c.Text(w?.Id), c.Text(w?.Title), c.Text(w?.Does), c.MaybeText(w?.Part), c.Text(w?.Stage), c.List(w?.Because, Trigger), c.Texts(w?.After),
        c.Texts(w?.InsteadOf), c.MaybeText(w?.How),
        c.Maybe(w?.Verify, static (c, v) => new Verification(c.Text(v?.How), c.MaybeText(v?.Limit), c.Maybe(v?.Source, PackedKnowledge.SourceRefOf), c.MaybeText(v?.When))),
        c.MaybeText(w?.Hold), c.Texts(w?.Cautions), c.Texts(w?.Needs), c.Texts(w?.Machines), c.Flag(w?.Outside ?? false),
        c.Maybe(w?.Minutes, static (c, m) => new MinuteSpan(c.Real(m?.Least ?? 0), c.Real(m?.Most ?? 0))),
        c.List(w?.Together, static (c, t) => new TogetherPart(c.Text(t?.Part), c.MaybeText(t?.Why))),
        c.Maybe(w?.Shop, static (c, s) => new ShopNote(c.MaybeText(s?.Finish), c.Texts(s?.DoNot), c.Texts(s?.Ask))),
        c.List(w?.Materials, MaterialOf), PackedKnowledge.Sources(c, w?.Sources), c.At(w?.At ?? default));

    public static DecisionRule Decision(PackCodec c, DecisionRule? d) => new(
        c.Text(d?.Id), c.Texts(d?.Parts), c.Texts(d?.See), c.Flag(d?.Sound ?? false), c.MaybeText(d?.Reading), (Extent)c.Number((int)(d?.AtLeast ?? 0)),
        c.Text(d?.Decide), c.Flag(d?.WholeSet ?? false), c.MaybeText(d?.Limit), c.Maybe(d?.LimitSource, PackedKnowledge.SourceRefOf), c.Text(d?.Why),
        PackedKnowledge.Sources(c, d?.Sources), c.At(d?.At ?? default));

    public static DownstreamRule Downstream(PackCodec c, DownstreamRule? d) => new(
        c.Text(d?.Id), c.Text(d?.Circuit), c.Texts(d?.Machines), c.List(d?.Because, Trigger), c.List(d?.Stations, Station),
        PackedKnowledge.Sources(c, d?.Sources), c.At(d?.At ?? default));

    public static SheetRule Sheet(PackCodec c, SheetRule? s) => new(
        c.Text(s?.Id), c.Text(s?.Sheet), c.Number(s?.Order ?? 0), c.Text(s?.Says), c.MaybeText(s?.Each),
        c.Maybe(s?.Reading, static (c, r) => new SheetReading(c.Text(r?.What), c.MaybeText(r?.Unit), c.MaybeText(r?.Limit), c.Maybe(r?.Source, PackedKnowledge.SourceRefOf), c.MaybeText(r?.Part), c.MaybeText(r?.Quantity))),
        c.Texts(s?.Machines), c.Texts(s?.Needs), c.MaybeText(s?.Fitted), c.Texts(s?.Touched), c.Texts(s?.Work), c.Texts(s?.Said), c.MaybeText(s?.Photo),
        c.MaybeText(s?.When), c.Flag(s?.Stop ?? false), PackedKnowledge.Sources(c, s?.Sources), c.At(s?.At ?? default));

    private static WorkTrigger Trigger(PackCodec c, WorkTrigger? t) => new(
        c.MaybeText(t?.Cause), c.MaybeText(t?.Finding), c.MaybeText(t?.History), c.MaybeText(t?.Work), c.MaybeText(t?.Part), c.Texts(t?.See),
        (Extent)c.Number((int)(t?.AtLeast ?? 0)), c.At(t?.At ?? default));

    private static Material MaterialOf(PackCodec c, Material? m) => new(
        c.Text(m?.Item), c.MaybeText(m?.Part), c.MaybeText(m?.Count), c.MaybeText(m?.Size), c.MaybeText(m?.OrderAfter), c.Flag(m?.UsedUp ?? false));

    private static DownstreamStation Station(PackCodec c, DownstreamStation? s) => new(
        c.Text(s?.Part), c.Text(s?.Do), c.Text(s?.Says), c.MaybeText(s?.Fitted), c.MaybeText(s?.Work), PackedKnowledge.Sources(c, s?.Sources));
}
