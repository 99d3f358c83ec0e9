using Failwise.Benchmarks;

switch (args)
{
    case ["inference"]:
        InferenceBenchmark.Run(Console.Out);
        return 0;
    case ["scale"]:
        ScaleBenchmark.Run(Console.Out);
        return 0;
    case ["stages", var path]:
        StageBenchmark.Run(path, Console.Out);
        return 0;
    default:
        Console.Error.WriteLine("usage: Failwise.Benchmarks inference | scale | stages CASE");
        return 2;
}
