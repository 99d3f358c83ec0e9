using Failwise.Causes;

namespace Failwise.Reports;

/// <summary>Stable words for values in reports and JSON.</summary>
public static class Names
{
    public static string Of(VerdictKind kind) => kind switch
    {
        VerdictKind.RootNamed => "root-named",
        VerdictKind.Contested => "contested",
        VerdictKind.NormalWear => "normal-wear",
        _ => "not-enough-evidence",
    };

    internal static string Heading(VerdictKind kind) => kind switch
    {
        VerdictKind.RootNamed => "Root cause named",
        VerdictKind.Contested => "Contested between a few",
        VerdictKind.NormalWear => "Normal wear, nothing to correct",
        _ => "Not enough evidence",
    };
}
