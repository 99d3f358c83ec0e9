namespace Failwise.Knowledge;

/// <summary>What the rules speak of: marks by part, and symptoms, with the strength of all causes that leave them.</summary>
internal sealed class KnownMarks
{
    private const int ManyParts = 8;
    private const string AnyPart = "part";
    private readonly KnowledgeBase knowledge;
    private readonly Dictionary<string, Dictionary<string, double>> left = new(StringComparer.Ordinal);
    private readonly Dictionary<string, double> symptoms = new(StringComparer.Ordinal);
    private readonly Lazy<Dictionary<string, HashSet<string>>> spoken;

    public KnownMarks(KnowledgeBase knowledge)
    {
        this.knowledge = knowledge;
        spoken = new(() => Signs().GroupBy(s => s.Pattern, s => s.Part, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToHashSet(StringComparer.Ordinal), StringComparer.Ordinal));
        foreach (CauseLink link in knowledge.Causes.Values.SelectMany(c => c.Leaves))
        {
            if (link.Sign is { } sign)
            {
                Dictionary<string, double> parts = left.TryGetValue(sign.Pattern, out Dictionary<string, double>? known) ? known : left[sign.Pattern] = new(StringComparer.Ordinal);
                parts[sign.Part] = parts.GetValueOrDefault(sign.Part) + link.Strength;
            }
            else if (link.Target == LinkTarget.Symptom)
            {
                symptoms[link.Id] = symptoms.GetValueOrDefault(link.Id) + link.Strength;
            }
        }
    }

    /// <summary>How well a pattern fits a part: the strength of all causes that leave just it there, or on something that the part is a kind of.</summary>
    public double FitOn(string part, string pattern) => left.TryGetValue(pattern, out Dictionary<string, double>? parts)
        ? parts.Where(p => p.Key != AnyPart && knowledge.PartIs(part, p.Key)).Sum(p => p.Value) : 0;

    /// <summary>Kinds of the pattern that some cause leaves on the part, and the pattern itself, each with the strength of all of them.</summary>
    public Dictionary<string, double> KindsOn(string part, string pattern) => left.Where(l => knowledge.PatternIs(l.Key, pattern))
        .Select(l => (l.Key, Strength: l.Value.Where(p => p.Key != AnyPart && knowledge.PartIs(part, p.Key)).Sum(p => p.Value))).Where(l => l.Strength > 0)
        .ToDictionary(l => l.Key, l => l.Strength, StringComparer.Ordinal);

    /// <summary>Kinds of the symptom, and the symptom itself, each with the strength of all causes that bring it.</summary>
    public Dictionary<string, double> KindsOfSymptom(string symptom) =>
        symptoms.Where(s => knowledge.SymptomIs(s.Key, symptom)).ToDictionary(s => s.Key, s => s.Value, StringComparer.Ordinal);

    /// <summary>
    /// True when some rule speaks of the pattern, or a kinship of it, on the part or a kinship of it; and for marks that rules know on many
    /// unlike parts, since those can be on any.
    /// </summary>
    public bool IsKnownOn(string part, string pattern)
    {
        // Most marks are known by their very words; the long search is for the others.
        if (knowledge.Patterns[pattern].Sound || (left.TryGetValue(pattern, out Dictionary<string, double>? own) && own.Keys.Any(p => AkinPart(part, p)))
            || left.Any(l => Akin(l.Key, pattern) && l.Value.Keys.Any(p => AkinPart(part, p))))
        {
            return true;
        }

        string[] parts = [.. spoken.Value.Where(s => Akin(s.Key, pattern)).SelectMany(s => s.Value).Distinct()];
        return parts.Any(p => AkinPart(part, p))
            || parts.Select(p => knowledge.PartLine(p).Last(broad => broad == p || broad != AnyPart)).Distinct().Count() >= ManyParts;
    }

    private bool Akin(string a, string b) => knowledge.PatternIs(a, b) || knowledge.PatternIs(b, a);

    private bool AkinPart(string a, string b) => knowledge.PartIs(a, b) || knowledge.PartIs(b, a);

    private IEnumerable<Sign> Signs() =>
    [
        .. knowledge.Causes.Values.SelectMany(c => c.Leaves).Select(l => l.Sign).OfType<Sign>(),
        .. knowledge.Findings.Values.SelectMany(f => f.Refines),
        .. knowledge.Findings.Values.SelectMany(f => Condition.Atoms(f.When).OfType<SightingCondition>()).SelectMany(c => c.See, (c, see) => new Sign(c.Part, see)),
        .. knowledge.Work.Values.SelectMany(w => w.Because).Where(b => b.Part is not null).SelectMany(b => b.See, (b, see) => new Sign(b.Part!, see)),
    ];
}
