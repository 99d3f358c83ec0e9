using Failwise.Inference;

namespace Failwise.Tests.Inference;

/// <summary>
/// The second engine: adds up the joint probability over every state of every node, straight from the definition of a leaky noisy-OR.
/// It shares no code with the library and is only fit for small networks.
/// </summary>
internal static class Enumeration
{
    public static (double Evidence, double[] Posterior) Query(IReadOnlyList<NetworkNode> nodes, IReadOnlyList<Evidence> evidence)
    {
        nodes.Count.Should().BeLessThanOrEqualTo(20, "enumeration doubles with every node");
        var total = 0.0;
        var present = new double[nodes.Count];
        for (var state = 0; state < 1 << nodes.Count; state++)
        {
            var weight = Joint(nodes, state);
            foreach (var item in evidence) weight *= (state >> item.Node & 1) == 1 ? item.IfPresent : item.IfAbsent;
            if (weight == 0) continue;
            total += weight;
            for (var n = 0; n < nodes.Count; n++)
                if ((state >> n & 1) == 1) present[n] += weight;
        }

        return (total, present.Select(p => p / total).ToArray());
    }

    private static double Joint(IReadOnlyList<NetworkNode> nodes, int state)
    {
        var joint = 1.0;
        for (var n = 0; n < nodes.Count && joint > 0; n++)
        {
            // Counted as "the first to fire is this one": 1 - silent would lose digits where everything is rare.
            double silent = 1 - nodes[n].Leak, fired = nodes[n].Leak;
            foreach (var link in nodes[n].Links)
            {
                if ((state >> link.Parent & 1) == 0) continue;
                fired += silent * link.Strength;
                silent *= 1 - link.Strength;
            }

            joint *= (state >> n & 1) == 1 ? fired : silent;
        }

        return joint;
    }
}

/// <summary>Seeded random networks: several levels, shuffled node order, leaks of zero, links of strength one, all kinds of evidence.</summary>
internal sealed class RandomCase
{
    public RandomCase(int seed)
    {
        var random = new Random(seed);
        var count = random.Next(2, 13);
        var place = Enumerable.Range(0, count).ToArray();
        random.Shuffle(place);
        var nodes = new NetworkNode[count];
        for (var i = 0; i < count; i++)
        {
            var most = Math.Min(i, random.Next(6));
            var parents = Enumerable.Range(0, i).OrderBy(_ => random.Next()).Take(most).ToList();
            var links = parents.ConvertAll(p => new NetworkLink(place[p], random.Next(8) == 0 ? 1 : random.NextDouble()));
            var leak = links.Count > 0 && random.Next(4) == 0 ? 0 : Math.Pow(random.NextDouble(), 3);
            nodes[place[i]] = new NetworkNode($"n{place[i]}", leak, links);
        }

        Nodes = nodes;
        Evidence = Enumerable.Range(0, count).Where(_ => random.Next(5) < 2).Select(n => RandomItem(random, n)).ToList();
    }

    public IReadOnlyList<NetworkNode> Nodes { get; }

    public List<Evidence> Evidence { get; }

    public NoisyOrNetwork Network => new(Nodes);

    public int[] Everything => Enumerable.Range(0, Nodes.Count).ToArray();

    private static Evidence RandomItem(Random random, int node) => random.Next(4) switch
    {
        0 or 1 => Failwise.Inference.Evidence.Present(node),
        2 => Failwise.Inference.Evidence.Absent(node),
        _ => Failwise.Inference.Evidence.Likely(node, 3 * random.NextDouble(), random.NextDouble()),
    };
}
