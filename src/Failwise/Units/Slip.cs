namespace Failwise.Units;

/// <summary>The slips of hand and eye that measuring people make.</summary>
public enum SlipKind
{
    /// <summary>Inches written as millimetres or the other way round.</summary>
    InchForMillimetre,
    /// <summary>One turn of the micrometer thimble read wrongly.</summary>
    ThimbleTurn,
    /// <summary>Pound-feet written for pound-inches or the other way round.</summary>
    FootForInchPounds,
    /// <summary>Journal and bore exchanged.</summary>
    Swapped,
    /// <summary>A worn part that measures less worn than a new one.</summary>
    LessWornThanNew,
    /// <summary>A limit that contradicts the new dimension.</summary>
    LimitInsideNew,
}

/// <summary>A suspected slip: asked about, never silently corrected.</summary>
/// <param name="Kind">Which slip it looks like.</param>
/// <param name="Question">What to ask the person who measured.</param>
public sealed record Slip(SlipKind Kind, string Question);
