using Failwise.Knowledge;
using Failwise.Yaml;

namespace Failwise.Cases;

/// <summary>The form of a case file; docs/schema/case.schema.json is printed from it.</summary>
internal static class CaseShapes
{
    private static readonly Shape Word = new TextShape("a word");
    private static readonly Shape Sentence = new TextShape("a sentence");
    private static readonly Shape Words = new EitherShape([Word, new ListShape(Word)]);
    private static readonly Shape Count = new NumberShape(1, 64);
    private static readonly Shape Years = new NumberShape(0, 1e9);

    public static readonly Shape At = new EitherShape([Word, new ListShape(Word)]);

    public static readonly GroupShape Observation = new("an observation", null, [new("part", Word, true, "The part looked at."), .. SeenFields()]);

    private static readonly GroupShape DebrisFound = new("something found", null,
        [new("part", Word, false, "The part; oil-debris when left out."), .. SeenFields()]);

    private static Field[] SeenFields() =>
    [
        new("see", Words, false, "The pattern seen (or several), or sound."),
        new("not", Words, false, "Patterns looked for and not found."),
        new("at", At, false, "Which ones: 3, 2-4, [1, 3], all, one, some, most, neighbours, first-on-feed, last-on-feed."),
        new("on", Words, false, "Where on the part: upper, lower, front-edge, oil-hole ..."),
        new("extent", new ChoiceShape(RuleShapes.Extents), false, "How much."),
        new("sure", new ChoiceShape("sure", "fairly-sure", "doubtful"), false, "How sure; sure when left out."),
        new("rest", new ChoiceShape("sound", "clean", "good", "ok", "normal", "not-looked-at"), false, "What the other ones of this part are like."),
        new("note", Sentence, false, "Anything else, in free words."),
        new("photo", Word, false, "A photo file in the case folder."),
    ];

    private static readonly GroupShape Limit = new("a limit", null,
        new("min", Word, false, "Least value with unit."), new("max", Word, false, "Most value with unit."),
        new("from", Sentence, false, "Where the limit comes from, such as: maker's manual."));

    private static readonly Shape Value = new TextShape("a value with its unit, such as 57.94 mm");

    /// <summary>Readings at one place: by name, or a list of one plane, or a list for each plane.</summary>
    private static readonly Shape Several = new EitherShape([new OpenGroupShape(Value), new ListShape(new EitherShape([Value, new ListShape(Value, false)]), false)]);

    private static readonly Shape Table = new OpenGroupShape(new EitherShape([Value, Several]));

    private static Field[] ReadingFields(bool quantityNeeded, Field values) =>
    [
        new("quantity", Word, quantityNeeded, "What was measured, such as bearing-clearance; diameter when left out beside several readings."),
        new("part", Word, true, "The part."),
        new("at", At, false, "Which one."),
        new("on", Words, false, "Where on the part."),
        values,
        new("unit", Word, false, "The unit of every number of this entry that has none."),
        new("limit", Limit, false, "The limit and where it comes from."),
        new("taper", Limit, false, "The limit of taper."),
        new("out-of-round", Limit, false, "The limit of out-of-round."),
        new("new", LimitShapes.New, false, "The size of a new part."),
        new("with", Sentence, false, "The instrument."),
        new("uncertainty", Word, false, "Uncertainty of the instrument with its unit (about 95 %)."),
        new("note", Sentence, false, "Anything else."),
    ];

    public static readonly Shape Reading = new EitherShape(
    [
        new GroupShape("a table of readings", "table", ReadingFields(false, new("table", Table, true, "Place number to value, or to several readings: {1: 57.94, 2: {a-x: 57.93, a-y: 57.91}}."))),
        new GroupShape("several readings", "readings", ReadingFields(false, new("readings", Several, true, "Plane and direction to value: {a-x: 57.94, a-y: 57.92, b-x: 57.93}; or a list for each plane."))),
        new GroupShape("a reading", null, ReadingFields(true, new("value", Word, true, "The value with its unit, as read."))),
    ]);

    private static readonly GroupShape Figures = new("figures for a calculation", null,
        new("work-out", Word, true, "The sheet or calculation: bearing-film, relief-valve, oil-gallery, or a name that failwise calculate lists."),
        new("part", Word, false, "The part they belong to."),
        new("at", At, false, "Which one."),
        new("when", Sentence, false, "The state of running, such as hot idle."),
        new("given", new OpenGroupShape(new EitherShape([Value, new ListShape(new EitherShape([Value, new ListShape(Value, false)]), false)])), true, "The figures, each by its name."),
        new("note", Sentence, false, "Anything else."));

    private static readonly GroupShape Machine = new("the machine", null,
        new("kind", Words, true, "engine, gearbox, axle, driveline, steering, pump; several in a list."),
        new("name", Sentence, false, "What the shop calls it."),
        new("cylinders", Count, false, "Number of cylinders."),
        new("mains", Count, false, "Number of main bearings."),
        new("feed", new ListShape(Count), false, "Main bearings in the order in which the oil reaches them."),
        new("drive-end", new ChoiceShape("first", "last"), false, "Whether the drive end is at the first or the last number (last when left out)."),
        new("number-one", Sentence, false, "Which end is No. 1."),
        new("features", new ListShape(Word), false, "What the build has: diesel, turbocharged, wet-liners ..."),
        new("without", new ListShape(Word), false, "What the build does not have."));

    private static readonly Shape Sentences = new EitherShape([Sentence, new ListShape(Sentence)]);

    private static readonly GroupShape Job = new("the job", null,
        new("number", Word, false, "The shop's number of the job."),
        new("owner", Sentence, false, "Whose machine it is."),
        new("asked-by", Sentence, false, "Who asked for the report."),
        new("purpose", Sentence, false, "What the report is for."),
        new("date", Sentence, false, "When it was looked at."),
        new("place", Sentence, false, "Where it was looked at."),
        new("looked-by", Sentence, false, "Who looked at it."),
        new("serial", Sentence, false, "Maker's plate: numbers and sizes as read."),
        new("received", Sentences, false, "How it came in, before anything was cleaned."),
        new("told", Sentences, false, "What the owner or operator says happened; kept apart from what was seen."),
        new("work-before", Sentences, false, "Who worked on it before, when, with which parts and papers."),
        new("existing", Sentences, false, "Damage that was there before, or has nothing to do with this failure."),
        new("papers", Sentences, false, "Documents that were seen, or asked for and not given."),
        new("kept", Sentences, false, "Which parts are kept, where and until when."));

    private static readonly GroupShape Note = new("a note", "note", new Field("note", Sentence, true, "Free words."));

    private static readonly GroupShape Denied = new("something that was not so", "not", new Field("not", Words, true, "What was checked and is not so."));

    private static readonly GroupShape NumberLine = new("a number", null,
        [.. RuleShapes.CaseNumbers.Select(n => new Field(n, Years, false, "A number of the history."))]);

    public static readonly GroupShape Case = new("a case", null,
        new("title", Sentence, true, "What this case is about."),
        new("machine", Machine, true, "The machine and its layout."),
        new("job", Job, false, "Whose machine it is, who asks and what is told; for the report only, it moves no probability."),
        new("history", new ListShape(new EitherShape([Word, Note, Denied, NumberLine]), MayBeBegun: true), false, "What was known before."),
        new("symptoms", new ListShape(new EitherShape([Word, Note, Denied]), MayBeBegun: true), false, "What was noticed while it ran."),
        new("observations", new ListShape(Observation, MayBeBegun: true), false, "What was seen."),
        new("debris", new ListShape(DebrisFound, MayBeBegun: true), false, "What was found in oil, filter and sump; the part is oil-debris when left out."),
        new("not-looked-at", new ListShape(new EitherShape([Word, new GroupShape("a part not looked at", "part", new("part", Word, true, "The part."), new("reason", Sentence, false, "Why not."))]), MayBeBegun: true), false, "What nobody looked at."),
        new("readings", new ListShape(Reading, MayBeBegun: true), false, "What was measured."),
        new("limits", Words, false, "Limit files in the case folder, or example tables of rules/limits."),
        new("numbers", new ListShape(Figures, MayBeBegun: true), false, "Figures that a calculation works on."),
        new("photos", new ListShape(new GroupShape("a photo", null, new("file", Word, true, "The file."), new("shows", Sentence, false, "What it shows."), new("part", Word, false, "The part.")), MayBeBegun: true), false, "Photos in the case folder."),
        new("notes", new EitherShape([Sentence, new ListShape(Sentence)]), false, "Anything else."));
}
