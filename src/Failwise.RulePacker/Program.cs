using Failwise.Knowledge;
using Failwise.Problems;

// Arguments: the rule folder and the file to write.
ProblemList problems = new();
IReadOnlyList<RuleFile> files = RuleFiles.ReadFolder(args[0], "rules", problems);
foreach (Problem problem in problems.Sorted())
{
    Console.Error.WriteLine(problem);
}

if (problems.HasErrors)
{
    return 1;
}

// Written beside and moved into place: an interrupted build leaves no half file.
string draft = args[1] + ".new";
using (FileStream stream = File.Create(draft))
{
    RuleFiles.Pack(files, stream);
}

File.Move(draft, args[1], overwrite: true);
return 0;
