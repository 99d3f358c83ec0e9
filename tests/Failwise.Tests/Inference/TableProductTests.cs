using Failwise.Inference;

namespace Failwise.Tests.Inference;

/// <summary>The two ways of multiplying tables that share gate hubs, against a sum written straight from the definition.</summary>
public sealed class TableProductTests
{
    private enum Role { Plain, Accumulator, Cap }

    [Fact]
    public void Products_of_random_shapes_match_the_definition_in_both_ways()
    {
        var widened = 0;
        for (var seed = 0; seed < 25; seed++)
        {
            var random = new Random(seed);
            var (left, right, drop) = RandomShapes(random);
            var a = Cells(random, left);
            var b = Cells(random, right);
            var expected = ByDefinition(left, a, right, b, drop);
            foreach (var widen in new[] { false, true })
            {
                var product = TableProduct.Compile(left, right, drop, widen);
                var result = new double[expected.Length];
                product.Multiply(a, b, result);
                Compare(result, expected, seed);
                CheckSlopes(product, left, a, right, b, drop, random, seed);
            }

            var wide = ProductShape.Of(left, right, drop, widen: true, withDigits: false);
            if (wide.WidenLeft != 0 || wide.WidenRight != 0) widened++;
        }

        widened.Should().BeGreaterThan(15);
    }

    // The product is linear in each table, so a slope is the product with a table that has a single 1.
    private static void CheckSlopes(
        TableProduct product, TableShape left, double[] a, TableShape right, double[] b, int[] drop, Random random, int seed)
    {
        var weights = new double[ByDefinition(left, a, right, b, drop).Length];
        for (var i = 0; i < weights.Length; i++) weights[i] = random.NextDouble();
        var ofLeft = new double[a.Length];
        var ofRight = new double[b.Length];
        product.Differentiate(weights, b, ofLeft, true);
        product.Differentiate(weights, a, ofRight, false);
        for (var i = 0; i < a.Length; i++)
            ofLeft[i].Should().BeApproximately(Dot(weights, ByDefinition(left, Unit(a.Length, i), right, b, drop)), 1e-9, "seed {0}", seed);
        for (var i = 0; i < b.Length; i++)
            ofRight[i].Should().BeApproximately(Dot(weights, ByDefinition(left, a, right, Unit(b.Length, i), drop)), 1e-9, "seed {0}", seed);
    }

    private static (TableShape Left, TableShape Right, int[] Drop) RandomShapes(Random random)
    {
        List<int> inLeft = [], inRight = [], drop = [];
        ulong accLeft = 0, capLeft = 0, accRight = 0, capRight = 0;
        for (var v = 0; v < 5; v++)
        {
            var kind = random.Next(7);
            if (kind is 0 or 2 or >= 3) inLeft.Add(v);
            if (kind is 1 or 2 or >= 3) inRight.Add(v);
            if (kind is 3 or 4) accLeft |= 1UL << inLeft.Count - 1;
            if (kind is 5 or 6) capLeft |= 1UL << inLeft.Count - 1;
            if (kind is 3 or 5 or 6) accRight |= 1UL << inRight.Count - 1;
            if (kind is 4) capRight |= 1UL << inRight.Count - 1;
            // A gate is dropped only when its cap is here.
            if (kind != 3 && random.Next(3) == 0) drop.Add(v);
        }

        return (new TableShape([.. inLeft], accLeft, capLeft), new TableShape([.. inRight], accRight, capRight), [.. drop]);
    }

    private static double[] ByDefinition(TableShape left, double[] a, TableShape right, double[] b, int[] drop)
    {
        var kept = left.Variables.Union(right.Variables).Except(drop).Order().ToArray();
        var result = new double[1 << kept.Length];
        for (var i = 0; i < a.Length; i++)
        {
            for (var j = 0; j < b.Length; j++)
            {
                for (var r = 0; r < 1 << 5; r++)
                {
                    if (!Contributes(left, i, right, j, r, drop)) continue;
                    var index = 0;
                    for (var k = 0; k < kept.Length; k++) index |= (r >> kept[k] & 1) << k;
                    result[index] += a[i] * b[j];
                }
            }
        }

        return result;
    }

    private static bool Contributes(TableShape left, int i, TableShape right, int j, int r, int[] drop)
    {
        for (var v = 0; v < 5; v++)
        {
            var rest = r >> v & 1;
            var (roleA, x) = At(left, i, v);
            var (roleB, y) = At(right, j, v);
            var gone = drop.Contains(v);
            var fits = (roleA, roleB) switch
            {
                (null, null) => rest == 0,
                (Role.Accumulator, Role.Accumulator) => rest == (x | y),
                (Role.Accumulator, Role.Cap) => y == (x | rest) && !(gone && rest == 1),
                (Role.Cap, Role.Accumulator) => x == (y | rest) && !(gone && rest == 1),
                (null, _) => rest == y,
                (_, null) => rest == x,
                _ => rest == x && rest == y,
            };
            if (!fits) return false;
        }

        return true;
    }

    private static (Role? Role, int State) At(TableShape shape, int cell, int variable)
    {
        var at = Array.IndexOf(shape.Variables, variable);
        if (at < 0) return (null, 0);
        var role = (shape.Accumulators >> at & 1) != 0 ? Role.Accumulator : (shape.Caps >> at & 1) != 0 ? Role.Cap : Role.Plain;
        return (role, cell >> at & 1);
    }

    private static double[] Cells(Random random, TableShape shape) =>
        Enumerable.Range(0, 1 << shape.Variables.Length).Select(_ => random.NextDouble()).ToArray();

    private static double[] Unit(int length, int at)
    {
        var unit = new double[length];
        unit[at] = 1;
        return unit;
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    private static void Compare(double[] actual, double[] expected, int seed)
    {
        for (var i = 0; i < expected.Length; i++) actual[i].Should().BeApproximately(expected[i], 1e-9, "seed {0}, cell {1}", seed, i);
    }
}
