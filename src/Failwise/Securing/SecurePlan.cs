using Failwise.Cases;
using Failwise.Knowledge;

namespace Failwise.Securing;

/// <summary>What destroys evidence, in the order in which it usually happens.</summary>
public enum Threat { Turning, Dismantling, Cleaning }

/// <summary>A line of a sheet that fits this machine and what was said of it.</summary>
/// <param name="IfFitted">True when nobody said whether the machine has the thing at all.</param>
/// <param name="Times">How many of it the machine has [1 or more]; null when the line stands once, 0 when it stands for each and nobody said how many.</param>
public sealed record SecureLine(SheetRule Rule, bool IfFitted, int? Times);

/// <summary>A piece of securing work that a likely root calls for.</summary>
/// <param name="Because">Titles of the likely roots or states, or the words that were said.</param>
public sealed record SecureStep(WorkRule Rule, IReadOnlyList<string> Because);

/// <summary>A mark that would tell the likely roots apart and does not outlive the wash, the strip or a turn.</summary>
/// <param name="Chance">How much of it speaks for the likely roots: sum of probability times strength, for the order only.</param>
/// <param name="Speaks">The roots it would speak for, likeliest first.</param>
public sealed record FleetingLook(string Part, string Pattern, Threat LostBy, double Chance, IReadOnlyList<Cause> Speaks);

/// <summary>A root as likely as it is before anything was looked at.</summary>
/// <param name="Probability">Chance given what was said, 0 to 0.98; how common it is when nothing was said.</param>
public sealed record ForecastRoot(Cause Cause, double Probability);

/// <summary>What to secure before a machine is turned, stripped or washed.</summary>
/// <param name="Said">True when symptoms, history or observations shaped the forecast; false when it is only what is common.</param>
public sealed record SecurePlan(
    TeardownCase Case, bool Said, IReadOnlyList<SecureLine> Hazards, IReadOnlyDictionary<Threat, IReadOnlyList<SecureLine>> Lines,
    IReadOnlyList<SecureStep> Steps, IReadOnlyList<FleetingLook> Looks, IReadOnlyList<ForecastRoot> Forecast);
