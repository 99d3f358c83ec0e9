namespace Failwise.Inference;

/// <summary>
/// Likelihood weighting for a part of the network that is too tangled for an exact answer. Nodes are drawn parents first; the chance
/// with which each is drawn without a present parent is learnt in short rounds first, because plain priors almost never draw the rare
/// causes that surprising evidence needs. Every draw is paid for in the sample's weight, so the estimate stays consistent.
/// </summary>
internal sealed class WeightedSampler
{
    private const int LearningRounds = 10;
    private const double HighestTilt = 0.9;

    private readonly RelevantGraph.Gate[] _gates;
    private readonly int[] _own;
    private readonly int[][] _parents;
    private readonly double[] _tilt;
    private readonly double[] _logAbsent;
    private readonly NodeEvidence _evidence;
    private readonly bool[] _state;
    private readonly Random _random;
    private Tally _tally;

    public WeightedSampler(RelevantGraph graph, NodeEvidence evidence, GraphParts.Part part, InferenceLimits limits)
    {
        _evidence = evidence;
        var members = new HashSet<int>(part.Original);
        _gates = graph.Gates.Where(g => members.Contains(graph.AnyVariableOf(g))).ToArray();
        _own = Array.ConvertAll(_gates, g => graph.VariableOf(g.Node));
        _parents = Array.ConvertAll(_gates, g => g.Parents.Select(l => graph.VariableOf(l.Parent)).ToArray());
        _tilt = Array.ConvertAll(_gates, g => g.Fired);
        _state = new bool[graph.VariableCount];
        _logAbsent = new double[graph.VariableCount];
        foreach (var link in graph.Absorbed) _logAbsent[graph.VariableOf(link.Parent)] += Math.Log(1 - link.Strength);
        _random = new Random(limits.Seed);
        _tally = new Tally(_gates.Length, _state.Length);
        Run(Math.Max(limits.Samples, 2 * LearningRounds));
    }

    /// <summary>Natural logarithm of the estimated sum over the part; minus infinity when no sample agreed with the evidence.</summary>
    public double LogSum => _tally.Count == 0 || _tally.Sum == 0 ? double.NegativeInfinity : _tally.LogScale + Math.Log(_tally.Sum / _tally.Count);

    /// <summary>How many equally weighted samples the weighted ones are worth.</summary>
    public double EffectiveSamples => _tally.SumOfSquares > 0 ? _tally.Sum * _tally.Sum / _tally.SumOfSquares : 0;

    public double Probability(int variable) => _tally.Present[variable] / _tally.Sum;

    /// <summary>About 95 %, by the normal approximation on the effective number of samples.</summary>
    public ProbabilityRange Range(int variable)
    {
        var p = Probability(variable);
        var half = 1.96 * Math.Sqrt(p * (1 - p) / EffectiveSamples) + 1 / EffectiveSamples;
        return new ProbabilityRange(Math.Max(0, p - half), Math.Min(1, p + half));
    }

    private void Run(int samples)
    {
        var learning = samples / 2 / LearningRounds;
        for (var round = 0; round < LearningRounds; round++)
        {
            Draw(learning);
            Learn();
            _tally = new Tally(_gates.Length, _state.Length);
        }

        Draw(samples - samples / 2);
    }

    private void Draw(int samples)
    {
        for (var s = 0; s < samples; s++)
        {
            var log = 0.0;
            for (var g = 0; g < _gates.Length && !double.IsNegativeInfinity(log); g++) log += DrawGate(g);
            if (double.IsNegativeInfinity(log)) _tally.Count++;
            else Count(log);
        }
    }

    /// <summary>Draws the gate's node, or reads it off when it is a finding; returns the logarithm of what that does to the weight.</summary>
    private double DrawGate(int g)
    {
        var gate = _gates[g];
        var silentParents = 1.0;
        for (var p = 0; p < _parents[g].Length; p++)
            if (_state[_parents[g][p]]) silentParents *= 1 - gate.Parents[p].Strength;
        var some = gate.Fired + gate.Silent * (1 - silentParents);
        var none = gate.Silent * silentParents;
        var node = gate.Node;
        if (_own[g] < 0) return Math.Log(none * _evidence.IfAbsent(node) + some * _evidence.IfPresent(node));

        var own = _own[g];
        var ifPresent = _evidence.IfPresent(node) * Math.Exp(_logAbsent[own]);
        var drawNone = (1 - _tilt[g]) * silentParents * _evidence.IfAbsent(node);
        var drawSome = (1 - (1 - _tilt[g]) * silentParents) * ifPresent;
        var chance = drawSome / (drawSome + drawNone);
        _state[own] = _random.NextDouble() < chance;
        return _state[own] ? Math.Log(some * ifPresent / chance) : Math.Log(none * _evidence.IfAbsent(node) / (1 - chance));
    }

    private void Count(double logWeight)
    {
        var weight = _tally.Add(logWeight);
        for (var g = 0; g < _gates.Length; g++)
        {
            if (_own[g] < 0) continue;
            if (_state[_own[g]]) _tally.Present[_own[g]] += weight;
            if (Array.Exists(_parents[g], p => _state[p])) continue;
            _tally.Unforced[g] += weight;
            if (_state[_own[g]]) _tally.Spontaneous[g] += weight;
        }
    }

    private void Learn()
    {
        for (var g = 0; g < _gates.Length; g++)
        {
            if (_own[g] < 0 || _tally.Unforced[g] <= 0 || _gates[g].Fired <= 0) continue;
            var seen = _tally.Spontaneous[g] / _tally.Unforced[g];
            _tilt[g] = Math.Max(_gates[g].Fired, Math.Min(HighestTilt, (_tilt[g] + seen) / 2));
        }
    }

    /// <summary>Weighted counts, scaled by the largest weight met so far so that tiny weights survive.</summary>
    private sealed class Tally(int gates, int variables)
    {
        public readonly double[] Present = new double[variables];
        public readonly double[] Unforced = new double[gates];
        public readonly double[] Spontaneous = new double[gates];

        public double LogScale { get; private set; } = double.NegativeInfinity;

        public double Sum { get; private set; }

        public double SumOfSquares { get; private set; }

        public long Count { get; set; }

        public double Add(double logWeight)
        {
            Count++;
            if (logWeight > LogScale) Rescale(logWeight);
            var weight = Math.Exp(logWeight - LogScale);
            Sum += weight;
            SumOfSquares += weight * weight;
            return weight;
        }

        private void Rescale(double logScale)
        {
            var factor = Sum > 0 ? Math.Exp(LogScale - logScale) : 0;
            LogScale = logScale;
            Sum *= factor;
            SumOfSquares *= factor * factor;
            foreach (var counts in new[] { Present, Unforced, Spontaneous })
                for (var i = 0; i < counts.Length; i++) counts[i] *= factor;
        }
    }
}
