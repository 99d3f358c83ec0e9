using Failwise.Knowledge;
using Failwise.Problems;

// Arguments: the rule folder, the file for its parsed files, and the file for the finished knowledge base.
ProblemList problems = new();
IReadOnlyList<RuleFile> files = RuleFiles.ReadFolder(args[0], "rules", problems);
KnowledgeReading reading = KnowledgeReader.Build(files, problems);
foreach (Problem problem in reading.Problems)
{
    Console.Error.WriteLine(problem);
}

using (MemoryStream parsed = new())
{
    RuleFiles.Pack(files, parsed);
    Write(args[1], parsed.ToArray());
}

// With errors in the rules the program still builds, so that its own rule check can be run on them; every other command names the errors.
Write(args[2], reading.Knowledge is { } knowledge ? PackedKnowledge.Pack(knowledge) : []);
return 0;

// Written beside and moved into place: an interrupted build leaves no half file.
static void Write(string path, byte[] content)
{
    string draft = path + ".new";
    File.WriteAllBytes(draft, content);
    File.Move(draft, path, overwrite: true);
}
