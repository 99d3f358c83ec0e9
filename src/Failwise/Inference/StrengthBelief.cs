namespace Failwise.Inference;

/// <summary>
/// What is believed about a link's strength, as a Beta distribution: so many times seen, so many not, with the author's word standing
/// in for earlier cases. Counts may be fractions.
/// </summary>
/// <param name="Seen">Above 0.</param>
/// <param name="NotSeen">Above 0.</param>
public sealed record StrengthBelief(double Seen, double NotSeen)
{
    public double Mean => Seen / (Seen + NotSeen);

    /// <summary>How many cases the belief is worth.</summary>
    public double Weight => Seen + NotSeen;

    /// <summary>The most likely strength; needs both counts above 1.</summary>
    public double Mode => (Seen - 1) / (Weight - 2);

    /// <param name="mean">The authored strength, inside 0..1.</param>
    /// <param name="weight">How many cases it is worth, above 0.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static StrengthBelief FromAuthor(double mean, double weight)
    {
        if (mean is not (> 0 and < 1)) throw new ArgumentException($"The strength {mean} does not lie inside 0 to 1.", nameof(mean));
        if (!(weight > 0)) throw new ArgumentException($"The weight {weight} is not above 0.", nameof(weight));
        return new StrengthBelief(mean * weight, (1 - mean) * weight);
    }

    /// <summary>Adds closed cases in which the cause was confirmed and someone looked for the sign.</summary>
    public StrengthBelief After(double seen, double notSeen) => new(Seen + seen, NotSeen + notSeen);

    /// <summary>
    /// The share of a seen sign that each confirmed cause earns: P(link fired | sign). They add up to more than 1, since several
    /// may have fired. A cause that was not confirmed earns nothing and is not listed.
    /// </summary>
    /// <exception cref="ArgumentException">Nothing listed could have produced the sign.</exception>
    public static IReadOnlyList<double> Credit(IReadOnlyList<double> strengths, double leak)
    {
        double fired = leak, silent = 1 - leak;
        foreach (var strength in strengths)
        {
            fired += strength * silent;
            silent *= 1 - strength;
        }

        if (fired == 0) throw new ArgumentException("No link and no leak could have produced the sign.", nameof(strengths));
        return strengths.Select(s => s / fired).ToArray();
    }
}
