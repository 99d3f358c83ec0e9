using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>The form of the files that say what is done about a failure: work, decisions, downstream, sheets.</summary>
internal static class WorkShapes
{
    public static readonly string[] Stages =
        ["secure", "inspect", "measure", "machine", "clean", "assemble", "close-up", "first-start", "follow-up"];

    public static readonly string[] Deeds =
        ["inspect", "measure", "clean", "machine", "replace", "adjust", "remove-cause", "flush", "verify", "monitor", "reuse", "secure"];

    public static readonly string[] Decisions = ["reuse", "clean", "measure-first", "monitor", "machine", "replace"];

    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Sentence = new TextShape("a sentence");
    private static readonly Shape Sentences = new EitherShape([Sentence, new ListShape(Sentence)]);
    private static readonly Shape Id = new TextShape("an id in kebab-case", "^[a-z0-9]+(-[a-z0-9]+)*$");
    private static readonly Shape Words = new EitherShape([Word, new ListShape(Word)]);
    private static readonly Shape TrueFalse = new ChoiceShape("true", "false");
    private static readonly Shape Span = new TextShape("minutes, as 45 or 30-90", "^[0-9]{1,5}(-[0-9]{1,5})?$");
    private static readonly Shape Extent = new ChoiceShape(RuleShapes.Extents);

    private static readonly ListShape Triggers = new(new GroupShape("a trigger", null,
        new("cause", Word, false, "A cause."), new("finding", Word, false, "A finding."), new("history", Word, false, "A circumstance."),
        new("work", Word, false, "Another piece of work."), new("part", Word, false, "A part ..."),
        new("see", Words, false, "... with this pattern"), new("extent", Extent, false, "of at least this extent.")), false);

    private static readonly Shape Together = new ListShape(new EitherShape([Word, new GroupShape("a part renewed together", null,
        new("part", Word, true, "The part."), new("why", Sentence, false, "Why, although it may look good."))]));

    private static readonly Shape Materials = new ListShape(new GroupShape("something to order", null,
        new("item", Sentence, true, "What it is called when it is ordered."),
        new("part", Word, false, "The part that it is."),
        new("count", new TextShape("mains, cylinders, rods, as-seen or a number", "^(mains|cylinders|rods|as-seen|[1-9][0-9]?)$"), false, "How many."),
        new("size", Sentence, false, "By which size it is ordered."),
        new("order-after", Word, false, "Work after which its size is known."),
        new("used-up", TrueFalse, false, "true for oil, sealant, cleaning stuff.")));

    public static readonly GroupShape Work = new("a piece of work", null,
        new("id", Id, true, "Its id, the same as the file name."),
        new("title", Sentence, true, "What to do, in one line."),
        new("does", new ChoiceShape(Deeds), true, "What sort of work."),
        new("part", Word, false, "The part it is done to."),
        new("stage", new ChoiceShape(Stages), true, "When in the job."),
        new("because", Triggers, true, "What brings it into the plan."),
        new("after", Words, false, "Work that comes before it, when both are in the plan."),
        new("instead-of", Words, false, "Work that falls away when this is in the plan for sure."),
        new("how", Sentence, false, "How it is done."),
        new("verify", new GroupShape("a verification", null,
            new("how", Sentence, true, "How it is checked."), new("limit", Sentence, false, "The limit."), new("source", Word, false, "Source of the limit."),
            new("when", new ChoiceShape("first-start", "follow-up"), false, "When it can only be checked with the machine running, or later.")), false, "How it is checked."),
        new("hold", Sentence, false, "What must not be done before this is finished."),
        new("cautions", Sentences, false, "What can hurt someone."),
        new("needs", Words, false, "Features the build must have."),
        new("machines", Words, false, "Kinds of machine it applies to."),
        new("outside", TrueFalse, false, "true when it is done outside the unit: habits, fuel, cooling, alignment, the driven machine."),
        new("minutes", Span, false, "Time it takes [min]: 45, or 30-90."),
        new("together", Together, false, "Parts renewed along with it."),
        new("shop", new GroupShape("a note to the machine shop", null,
            new("finish", Sentence, false, "Size and surface to reach."), new("do-not", Sentences, false, "What the shop must not do."),
            new("ask", Sentences, false, "Questions to settle first.")), false, "What the machine shop must be told."),
        new("materials", Materials, false, "What to order for it."),
        new("sources", RuleShapes.SourceRefs, false, "Where this comes from."));

    public static readonly GroupShape Decision = new("a decision", null,
        new("id", Id, true, "Its id."),
        new("part", Words, true, "The part or parts; 'part' means any."),
        new("see", Words, false, "The pattern or patterns seen, any, or sound."),
        new("reading", new ChoiceShape("beyond-limit", "within", "too-close"), false, "How a reading of the part stands to its limit."),
        new("extent", Extent, false, "At least this much."),
        new("decide", new ChoiceShape(Decisions), true, "What becomes of the part."),
        new("whole-set", TrueFalse, false, "true when one bad place decides for all."),
        new("limit", Sentence, false, "The limit it is judged by, when a source gives one."),
        new("limit-source", Word, false, "Source of the limit."),
        new("why", Sentence, true, "Why this and not another."),
        new("sources", RuleShapes.SourceRefs, true, "Where this comes from."));

    public static readonly GroupShape Downstream = new("a downstream list", null,
        new("id", Id, true, "Its id."),
        new("circuit", Sentence, true, "What carries debris there."),
        new("machines", Words, false, "Kinds of machine it applies to."),
        new("because", Triggers, true, "What brings it into the plan."),
        new("stations", new ListShape(new GroupShape("a station", null,
            new("part", Word, true, "The part."),
            new("do", new ChoiceShape("inspect", "flush", "renew"), true, "What is done to it."),
            new("says", Sentence, true, "What exactly."),
            new("fitted", Word, false, "Feature without which the machine does not have it."),
            new("work", Word, false, "Work that does it."),
            new("sources", RuleShapes.SourceRefs, false, "Where this comes from.")), false), true, "The parts, in the order of the flow."),
        new("sources", RuleShapes.SourceRefs, true, "Where this comes from."));

    public static readonly GroupShape Sheet = new("a line of a sheet", null,
        new("id", Id, true, "Its id."),
        new("sheet", new ChoiceShape("hazards", "before-turning", "before-strip", "before-cleaning", "close-up", "first-start", "follow-up"), true, "Which sheet."),
        new("order", new NumberShape(0, 9999), true, "Place on the sheet, small first."),
        new("says", Sentence, true, "What to do or see."),
        new("each", new ChoiceShape("mains", "cylinders", "rods"), false, "Once for each of these."),
        new("reading", new GroupShape("a reading", null,
            new("what", Sentence, true, "What to write down."), new("unit", Word, false, "Its unit."), new("limit", Sentence, false, "The limit."),
            new("source", Word, false, "Source of the limit."), new("part", Word, false, "The part whose reading it is ..."),
            new("quantity", Word, false, "... and its quantity: the limit that the case gives for it stands on the sheet.")), false, "What to write down."),
        new("machines", Words, false, "Kinds of machine it applies to."),
        new("needs", Words, false, "Features that must not be ruled out."),
        new("fitted", Word, false, "Feature without which it does not apply."),
        new("touched", Words, false, "One of these parts was opened or is worked on."),
        new("work", Words, false, "One of these pieces of work is in the plan."),
        new("said", Words, false, "One of these symptoms or history words was stated."),
        new("photo", new TextShape("a photo name in kebab-case", "^[a-z0-9]+(-[a-z0-9]+)*$"), false, "The photo to take, by the name of its file."),
        new("when", Sentence, false, "After how long, or how often."),
        new("stop", TrueFalse, false, "true when work stops if it cannot be ticked."),
        new("sources", RuleShapes.SourceRefs, true, "Where this comes from."));
}
