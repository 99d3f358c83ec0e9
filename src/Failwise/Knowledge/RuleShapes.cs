using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>The form of every rule file. The reader checks against it and the editor schemas in docs/schema are printed from it.</summary>
internal static class RuleShapes
{
    public static readonly string[] RootGroups =
    [
        "maintenance", "assembly", "wrong-part", "dirt", "blocked-passage", "machining", "material", "manufacturing", "design", "misuse",
        "storage", "fuel", "coolant", "electrical", "wear-out", "other",
    ];

    public static readonly string[] Extents = ["trace", "light", "moderate", "heavy", "destroyed"];

    public static readonly string[] CaseNumbers =
    [
        "hours-total", "hours-since-overhaul", "hours-since-oil-change", "hours-since-start", "km-total", "km-since-overhaul",
        "km-since-oil-change", "months-stored", "years-old",
    ];

    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Sentence = new TextShape("a sentence");
    private static readonly Shape Id = new TextShape("an id in kebab-case", "^[a-z0-9]+(-[a-z0-9]+)*$");
    private static readonly Shape Words = new EitherShape([Word, new ListShape(Word)]);
    private static readonly Shape Chance = new ChanceShape();
    private static readonly Shape Minutes = new NumberShape(0, 10_000);
    private static readonly Shape TrueFalse = new ChoiceShape("true", "false");
    private static readonly Shape Status = new ChoiceShape("draft", "sourced", "proven");

    internal static readonly Shape SourceRefs = new EitherShape(
    [
        Word,
        new ListShape(new EitherShape([Word, SourceRefGroup()])),
        SourceRefGroup(),
    ]);

    private static readonly Shape LookCheck = new GroupShape("a check", null,
        new("how", Sentence, true, "How to look or measure."),
        new("tool", Sentence, false, "What is needed for it."),
        new("minutes", Minutes, false, "Time it takes [min]."),
        new("lost-by", Words, false, "What destroys the evidence: cleaning, dismantling, running."),
        new("destroys", TrueFalse, false, "true: the check itself uses the part up."));

    private static readonly Field[] SpreadFields =
    [
        new("count", new TextShape("one, some, most, all, all-but-one, two-or-more, or 'at-least N'", "^(one|some|most|all|all-but-one|two-or-more|at-least [1-9][0-9]?)$"), false, "On how many of the places looked at."),
        new("where", new ChoiceShape("neighbours", "first-on-feed", "last-on-feed", "worse-along-feed", "drive-end", "free-end", "middle", "ends", "same-place-again"), false, "In what order or at which end."),
        new("lie", new ChoiceShape("one-edge", "both-edges", "diagonal", "one-half", "both-halves"), false, "On which edges or halves."),
    ];

    public static readonly Shape Condition = new LazyShape("condition", () => ConditionForms!);

    internal static readonly Shape ConditionForms = new EitherShape(
    [
        new GroupShape("an 'all' condition", "all", new Field("all", new ListShape(Condition, false), true, "Every one must hold.")),
        new GroupShape("an 'any' condition", "any", new Field("any", new ListShape(Condition, false), true, "At least one must hold.")),
        new GroupShape("a 'none' condition", "none", new Field("none", new ListShape(Condition, false), true, "None may hold, and someone must have looked.")),
        new GroupShape("a history condition", "history", new Field("history", Word, true, "A circumstance id.")),
        new GroupShape("a symptom condition", "symptom", new Field("symptom", Word, true, "A symptom id.")),
        new GroupShape("a feature condition", "feature", new Field("feature", Word, true, "A feature id.")),
        new GroupShape("a finding condition", "finding", new Field("finding", Word, true, "The id of another finding.")),
        new GroupShape("a number condition", "number",
            new("number", new ChoiceShape(CaseNumbers), true, "A number of the case."),
            new("below", new NumberShape(0, 1e9), false, "Holds below this."),
            new("above", new NumberShape(0, 1e9), false, "Holds above this.")),
        new GroupShape("a reading condition", "reading",
        [
            new("reading", Word, true, "The quantity read, such as bearing-clearance."),
            new("part", Word, true, "The part."),
            new("is", new ChoiceShape("above-limit", "below-limit", "within", "too-close"), true, "How it stands to its limit."),
            .. SpreadFields,
        ]),
        new GroupShape("a result condition", "result",
            new("result", Word, true, "The calculation, such as journal-bearing-film."),
            new("output", Word, true, "Which of its results, such as least-film."),
            new("part", Word, false, "The part it was worked for."),
            new("below", new NumberShape(-1e12, 1e12), false, "Holds below this, in the unit of the result."),
            new("above", new NumberShape(-1e12, 1e12), false, "Holds above this, in the unit of the result."),
            new("is", Sentence, false, "The word that the result says.")),
        new GroupShape("a sighting condition", "part",
        [
            new("part", Word, true, "The part."),
            new("see", Words, true, "The pattern, a list of patterns, or sound."),
            new("on", Words, false, "Place words."),
            new("extent", new ChoiceShape(Extents), false, "At least this much."),
            .. SpreadFields,
        ]),
    ]);

    public static readonly GroupShape Part = new("a part", null,
        new("id", Id, true, "Its id."),
        new("name", Sentence, true, "Its name in the shop."),
        new("says", Sentence, false, "What it is, in a sentence for someone without the trade."),
        new("kind-of", Words, false, "The broader part."),
        new("words", new ListShape(Sentence), false, "Other names for it."),
        new("count", new ChoiceShape("mains", "cylinders", "rods", "one"), false, "How many the machine has."),
        new("each", new TextShape("a number from 1, or varies", "^([1-9][0-9]?|varies)$"), false, "How many stand at each place that count counts; varies when that is to be counted."),
        new("machines", Words, false, "Kinds of machine that have it."),
        new("needs", Words, false, "Features a build must have to have it; of features of one choice, one is enough."),
        new("places", Words, false, "Place axes that make sense on it."),
        new("access", Word, false, "The cover behind which it is seen."),
        new("ordered-as", Word, false, "The part that is ordered when this is replaced, or fluid; itself when left out."),
        new("minutes", Minutes, false, "Time to look at it once the cover is off [min]."));

    public static readonly GroupShape Circumstance = new("a circumstance", null,
        new("id", Id, true, "Its id."),
        new("says", Sentence, true, "What it means, as a sentence."),
        new("ask", Sentence, false, "The question that brings it out."),
        new("words", new ListShape(Sentence), false, "Other ways people say it."),
        new("how-common", Chance, true, "Share of failed machines for which it holds."),
        new("when", Condition, false, "Condition under which it follows from the case."),
        new("sources", SourceRefs, false, "Where this comes from."));

    public static readonly GroupShape Symptom = new("a symptom", null,
        new("id", Id, true, "Its id."),
        new("says", Sentence, true, "What it means, as a sentence."),
        new("ask", Sentence, false, "The question that brings it out."),
        new("words", new ListShape(Sentence), false, "Other ways people say it."),
        new("kind-of", Words, false, "The broader symptom."),
        new("seen-anyway", Chance, true, "How often it is noticed with no listed cause."),
        new("sources", SourceRefs, false, "Where this comes from."));

    public static readonly GroupShape Source = new("a source", null,
        new("id", Id, true, "Its id."),
        new("title", Sentence, true, "Title."),
        new("issuer", Sentence, false, "Issuer."),
        new("year", Word, false, "Year, or n.d."),
        new("place", Sentence, false, "Where to find it."),
        new("grade", new ChoiceShape("A", "B", "C"), false, "A standard or public body, B manufacturer or professional body, C trade press or web page."),
        new("read", new ChoiceShape("full", "excerpt", "abstract", "title-only"), false, "How much of it was read."));

    public static readonly GroupShape Machine = new("a machine kind", null,
        new("id", Id, true, "Its id."), new("name", Sentence, true, "Its name."), new("words", new ListShape(Sentence), false, "Other names."));

    public static readonly GroupShape Feature = new("a feature", null,
        new("id", Id, true, "Its id."), new("choice", Word, false, "Features of one choice exclude each other."),
        new("says", Sentence, true, "What it means."), new("words", new ListShape(Sentence), false, "Other names."),
        new("share", new OpenGroupShape(Chance), false, "Share of such machines that have it, by kind of machine; a kind not named counts as having it."),
        new("shown-by", Words, false, "Parts that only a build with it has."));

    public static readonly GroupShape ShortCode = new("a short code", null,
        new("code", new TextShape("one or two letters", "^([A-Z]{1,2}|[a-z]{2})$"), true, "The code: two capitals for a part, one for a place, two small letters for a pattern."),
        new("part", Word, false, "The part it stands for."),
        new("place", Word, false, "The place word it stands for."),
        new("pattern", Word, false, "The pattern it stands for."));

    public static readonly GroupShape Axis = new("a place axis", null,
        new("axis", Word, true, "Name of the axis."), new("words", new ListShape(Word), true, "Its words."),
        new("also", new OpenGroupShape(Word), false, "Other words and the word they stand for."));

    public static readonly GroupShape Fit = new("a fit", null,
        new("bore", Word, true, "The part whose inside diameter is read."),
        new("shaft", Word, false, "The part whose outside diameter is read."),
        new("clearance", Word, false, "The quantity that bore less shaft gives."),
        new("of", Word, false, "The part to which the clearance belongs."));

    public static readonly GroupShape WordList = new("the word list", null,
        new("strengths", new OpenGroupShape(new NumberShape(0, 1)), true, "Strength words and their numbers."),
        new("sureness", new OpenGroupShape(new NumberShape(1, 1000)), true, "How sure the observer is, as a likelihood ratio."),
        new("counts", new GroupShape("trust in counts", null,
            new("usual-root", new NumberShape(0, 1), true, "How common the usual root is."),
            new("trust", new NumberShape(0, 1), true, "How far a written count is believed against it; 1 takes it as written.")), false, "How far the counts of roots are believed."),
        new("extents", new OpenGroupShape(new NumberShape(0, 1)), true, "Weight of a mark by its extent."));

    public static readonly GroupShape Pattern = new("a pattern", null,
        new("id", Id, true, "Its id, the same as the file name."),
        new("name", Sentence, true, "Its name in the trade."),
        new("says", Sentence, true, "What the eye sees."),
        new("words", new ListShape(Sentence), false, "What people call it."),
        new("kind-of", Words, false, "The broader pattern."),
        new("seen-anyway", Chance, true, "How often seen on such parts with no special cause."),
        new("sound", TrueFalse, false, "true: looks alarming but is normal."),
        new("classes", new ListShape(new GroupShape("a class", null, new("standard", Sentence, true, "The standard."), new("class", Sentence, true, "Its class."))), false, "Classes of standards."),
        new("look-alikes", LookAlikes("pattern"), true, "What it could be mistaken for and how to tell; or none."),
        new("check", LookCheck, false, "How to see it."),
        new("sources", SourceRefs, true, "Where this comes from."));

    public static readonly GroupShape Finding = new("a finding", null,
        new("id", Id, true, "Its id, the same as the file name."),
        new("says", Sentence, true, "The finding as a sentence."),
        new("role", new ChoiceShape("sign", "circumstance", "clue"), true, "What it is for."),
        new("refines", new EitherShape([SignGroup(), new ListShape(SignGroup())]), false, "The signs whose spread it describes."),
        new("when", Condition, true, "The condition."),
        new("seen-anyway", Chance, false, "How often it holds with no listed cause at work."),
        new("how-common", Chance, false, "For a circumstance: share of failed machines for which it holds."),
        new("why", Sentence, false, "Why this means something."),
        new("look-alikes", new EitherShape([new ChoiceShape("none"), new ListShape(new GroupShape("a look-alike", null, new("finding", Word, false, "Another finding."), new("pattern", Word, false, "A pattern."), new("tell", Sentence, true, "How to tell them apart.")))]), true, "What it could be mistaken for; or none."),
        new("check", LookCheck, false, "How to see it."),
        new("examples", new GroupShape("examples", null,
            new("fires", new ListShape(ExampleShape(), false), true, "Sets of facts that must make it fire."),
            new("silent", new ListShape(ExampleShape(), false), true, "Sets of facts that must leave it silent.")), true, "Facts that must fire it, and facts that must not."),
        new("limits", Sentence, false, "Where the rule must not be used."),
        new("status", Status, false, "draft, sourced or proven."),
        new("sources", SourceRefs, true, "Where this comes from."));

    public static readonly Field[] LinkFields =
    [
        new("leaves", Links(), false, "Signs, findings and symptoms it leaves behind."),
        new("leads-to", Links(), false, "Causes it brings about."),
        new("raised-by", Links(), false, "Circumstances that make it likelier."),
        new("looks-like", LookAlikes("cause"), false, "Rivals and how to tell them apart."),
        new("sources", SourceRefs, false, "Where this comes from."),
    ];

    public static readonly Shape Cause = new EitherShape(
    [
        new GroupShape("an extension of a cause", "extends", [new Field("extends", Word, true, "The cause it adds links to."), .. LinkFields]),
        new GroupShape("a cause", null,
        [
            new("id", Id, true, "Its id, the same as the file name."),
            new("title", Sentence, true, "Its name in a heading."),
            new("kind", new ChoiceShape("root", "state"), true, "root: people can correct it; state: a mechanism in between."),
            new("group", new ChoiceShape(RootGroups), false, "What sort of root."),
            new("says", Sentence, true, "What it is, for the owner."),
            new("machines", Words, false, "Kinds of machine it applies to."),
            new("needs", Words, false, "Features the build must have."),
            new("gives-way-to", Words, false, "Roots that say the same of particular parts; where they speak of the marked part, this one steps aside."),
            new("how-common", Chance, false, "How often it comes by itself, among failed machines of this kind."),
            .. LinkFields,
            new("prove", Sentence, false, "How to prove or disprove it."),
            new("status", Status, false, "draft, sourced or proven."),
        ]),
    ]);

    private static GroupShape SourceRefGroup() => new("a source reference", null,
        new("id", Word, true, "A source id."), new("at", Sentence, false, "The section or page."),
        new("kind", Word, false, "primary or secondary."));

    private static GroupShape SignGroup() => new("a sign", null,
        new("part", Word, true, "The part."), new("see", Words, true, "The pattern or patterns."));

    private static EitherShape LookAlikes(string of) => new(
    [
        new ChoiceShape("none"),
        new ListShape(new GroupShape("a look-alike", null, new(of, Word, true, "The other one."), new("tell", Sentence, true, "How to tell them apart."))),
    ]);

    private static ListShape ExampleShape()
    {
        Shape figures = new EitherShape([Word, new ListShape(new EitherShape([Word, new ListShape(Word)])), new OpenGroupShape(Word)]);
        Shape several = new ListShape(new EitherShape([Word, new OpenGroupShape(Word), new ListShape(Word)]));
        return new ListShape(new OpenGroupShape(new EitherShape([Word, several, new OpenGroupShape(figures)])), false);
    }

    private static ListShape Links() => new(new GroupShape("a link", null,
        new("part", Word, false, "A part ..."), new("see", Words, false, "... with this pattern."),
        new("finding", Word, false, "A finding."), new("symptom", Word, false, "A symptom."),
        new("cause", Word, false, "A cause."), new("history", Word, false, "A circumstance."),
        new("strength", Chance, true, "If only this were wrong, how often would you find that?"),
        new("note", Sentence, false, "A remark."),
        new("basis", Word, false, "judgement, count, published."),
        new("sources", SourceRefs, false, "Where this claim comes from.")));
}
