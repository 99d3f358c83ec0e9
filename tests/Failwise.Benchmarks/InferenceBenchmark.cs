using System.Diagnostics;
using Failwise.Inference;

namespace Failwise.Benchmarks;

/// <summary>
/// Times queries on seeded random networks of the size of a grown rule base: 200 causes in 10 systems on 3 levels, each with 1 to 4
/// causal parents of the same system, and 600 findings, a share of whose causes belong to another system. Only the times are of interest: the networks carry no knowledge.
/// </summary>
internal static class InferenceBenchmark
{
    private const int Causes = 200;
    private const int Systems = 10;
    private const int Findings = 600;

    private sealed record Setting(string Name, int FewestCauses, int MostCauses, double CrossSystem, bool OneSystem, double CrossCauses = 0);

    private static readonly Setting[] Settings =
    [
        new("2-6 causes a finding, 15 % cross-system", 2, 6, 0.15, false),
        new("3-12 causes a finding, 15 % cross-system", 3, 12, 0.15, false),
        new("3-12 causes, all positives in one system", 3, 12, 0.15, true),
        new("3-12 causes a finding, 40 % cross-system", 3, 12, 0.40, false),
        new("2-6 causes a finding, 15 % cross-system, causes too", 2, 6, 0.15, false, 0.15),
    ];

    public static void Run(TextWriter output)
    {
        // Long enough for the just-in-time compiler to have settled.
        for (var i = 0; i < 5; i++) Query(Build(Settings[0], 1), Pick(Settings[0], 1, 5, 5), 300);
        foreach (var setting in Settings)
        {
            foreach (var positives in new[] { 10, 20, 30 })
            {
                var times = new List<double>();
                var widths = new List<int>();
                var exact = 0;
                for (var seed = 1; seed <= 5; seed++)
                {
                    var (time, width, isExact) = Query(Build(setting, seed), Pick(setting, seed, positives, positives / 2), 40);
                    times.Add(time);
                    widths.Add(width);
                    if (isExact) exact++;
                }

                output.WriteLine(
                    $"{setting.Name}; {positives} present, {positives / 2} absent: {times.Min():0.00} to {times.Max():0.00} ms "
                    + $"(median {times.Order().ElementAt(2):0.00}), log2 cells {widths.Min()} to {widths.Max()}, exact {exact}/5");
            }
        }
    }

    private static NoisyOrNetwork Build(Setting setting, int seed)
    {
        var random = new Random(seed);
        var nodes = new List<NetworkNode>();
        for (var c = 0; c < Causes; c++)
        {
            var level = LevelOf(c);
            var parents = level == 0 ? [] : PickCauses(random, SystemOf(c), 1 + random.Next(4), setting.CrossCauses, level);
            var links = parents.ConvertAll(p => new NetworkLink(p, Strength(random)));
            nodes.Add(new NetworkNode($"c{c}", level == 0 ? 0.002 + 0.03 * random.NextDouble() : 0.002, links));
        }

        for (var f = 0; f < Findings; f++)
        {
            var count = random.Next(setting.FewestCauses, setting.MostCauses + 1);
            var links = PickCauses(random, f % Systems, count, setting.CrossSystem, 3).ConvertAll(p => new NetworkLink(p, Strength(random)));
            nodes.Add(new NetworkNode($"f{f}", 0.01, links));
        }

        return new NoisyOrNetwork(nodes);
    }

    private static int SystemOf(int cause) => cause % Systems;

    private static int LevelOf(int cause) => cause * 3 / Causes;

    private static double Strength(Random random) => new[] { 0.98, 0.92, 0.8, 0.65, 0.5, 0.25, 0.1, 0.03 }[random.Next(8)];

    private static List<int> PickCauses(Random random, int system, int count, double cross, int belowLevel)
    {
        var picked = new List<int>();
        while (picked.Count < count)
        {
            var cause = random.Next(Causes);
            if (LevelOf(cause) >= belowLevel || picked.Contains(cause)) continue;
            if (SystemOf(cause) == system || random.NextDouble() < cross / (Systems - 1)) picked.Add(cause);
        }

        return picked;
    }

    private static List<Evidence> Pick(Setting setting, int seed, int present, int absent)
    {
        var random = new Random(1000 + seed);
        var order = Enumerable.Range(0, Findings).ToArray();
        random.Shuffle(order);
        if (setting.OneSystem) order = [.. order.Where(f => f % Systems == 0)];
        return [.. order.Take(present).Select(f => Evidence.Present(Causes + f)),
            .. order.Skip(present).Take(absent).Select(f => Evidence.Absent(Causes + f))];
    }

    private static (double Milliseconds, int Width, bool Exact) Query(NoisyOrNetwork network, List<Evidence> evidence, int repeats)
    {
        var roots = Enumerable.Range(0, Causes).Where(c => network.Nodes[c].IsRoot).ToArray();
        var best = double.MaxValue;
        Posterior? answer = null;
        var total = Stopwatch.StartNew();
        for (var i = 0; i < repeats; i++)
        {
            var watch = Stopwatch.StartNew();
            answer = ExactInference.Query(network, evidence, roots);
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
            if (total.ElapsedMilliseconds > 1500) break;
        }

        return (best, answer!.Width, answer.Exact);
    }
}
