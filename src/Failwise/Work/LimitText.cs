using Failwise.Cases;

namespace Failwise.Work;

/// <summary>A limit in words.</summary>
internal static class LimitText
{
    /// <summary>"0.04 mm to 0.10 mm", "at least 1.0 bar" or "at most 0.20 mm"; null for a limit without bounds.</summary>
    public static string? Of(Limit limit) => limit switch
    {
        { Min: { } min, Max: { } max } => $"{min} to {max}",
        { Min: { } min } => $"at least {min}",
        { Max: { } max } => $"at most {max}",
        _ => null,
    };
}
