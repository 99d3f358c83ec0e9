using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>Forms of the rule files from which checks are planned: covers and intake questions.</summary>
internal static class CheckShapes
{
    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Sentence = new TextShape("a sentence");
    private static readonly Shape Id = new TextShape("an id in kebab-case", "^[a-z0-9]+(-[a-z0-9]+)*$");
    private static readonly Shape Words = new EitherShape([Word, new ListShape(Word)]);
    private static readonly Shape Minutes = new NumberShape(0, 10_000);
    private static readonly Shape TrueFalse = new ChoiceShape("true", "false");

    public static readonly GroupShape Cover = new("a cover", null,
        new("id", Id, true, "Its id."), new("says", Sentence, true, "How far the machine is opened."),
        new("minutes", Minutes, true, "Time to open it when what it lies behind is open already [min]."),
        new("behind", Words, false, "Covers that have to be off first."));

    public static readonly GroupShape AskedOf = new("what is asked of which machine", null,
        new("id", Id, true, "Its id."), new("words", Words, false, "Symptoms and history words."), new("parts", Words, false, "Parts that other machines have not."),
        new("machines", Words, false, "Kinds of machine that they are about; any is enough."),
        new("not-with", Words, false, "Features of a build with which they make no sense."),
        new("sources", RuleShapes.SourceRefs, false, "Where this comes from."));

    public static readonly GroupShape Question = new("a question", null,
        new("id", Id, true, "Its id."),
        new("asks", Sentence, true, "The question as a person would put it."),
        new("why", Sentence, false, "What the answer tells apart."),
        new("answer", Sentence, false, "How the answer is written into the case."),
        new("minutes", Minutes, true, "Time to answer it [min]."),
        new("machines", Words, false, "Kinds of machine it is about."),
        new("not-with", Words, false, "Features of a build with which it makes no sense."),
        new("when", new ListShape(new GroupShape("a gap", null,
            new("gap", new ChoiceShape(GapTrigger.Words), false, "What the case leaves open."),
            new("parts", Words, false, "Only for marks on these parts."),
            new("see", Words, false, "Only for these patterns."),
            new("symptoms", Words, false, "Only with one of these symptoms."),
            new("history", Words, false, "Only with one of these history words."),
            new("worth", new ChanceShape(), true, "Expected gain in certainty about the roots [bit/min].")), false), true, "Any of these gaps brings it up; the greatest worth counts."),
        new("covers", Words, false, "History words and symptoms that the answer settles too."),
        new("looks-at", Words, false, "Parts that have to be looked at for the answer, likeliest first."),
        new("access", Word, false, "Cover behind which they are looked at; without it, the nearest of theirs."),
        new("shows", Words, false, "Patterns that a glance brings out, on whatever part they are."),
        new("unless", new GroupShape("what answers it", null,
            new("parts", Words, false, "Looked at."), new("see", Words, false, "Looked for, found or not."), new("symptoms", Words, false, "Stated or denied."),
            new("history", Words, false, "Stated or denied."), new("readings", TrueFalse, false, "true: any reading.")), false, "It is not asked when any of these is known."),
        new("sources", RuleShapes.SourceRefs, false, "Where this comes from."));
}
