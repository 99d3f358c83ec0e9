namespace Failwise.Tests.Causes;

/// <summary>Four roots, two states and their signs: small enough to enumerate, with a chain, a shared state and a circumstance.</summary>
internal static class TinyEngine
{
    public static TinyRules Rules { get; } = TinyRules.Words
        .WithCause("filter-neglected", "root", """
            how-common: 1 in 20
            leaves: [{part: oil-filter, see: stuck, strength: usually}]
            leads-to: [{cause: oil-dirty, strength: usually}]
            raised-by: [{history: oil-change-overdue, strength: 1 in 5}]
            """)
        .WithCause("pump-worn", "root", """
            how-common: 1 in 30
            leaves: [{part: oil-pump, see: scored, strength: usually}]
            leads-to: [{cause: oil-film-lost, strength: often}]
            """)
        .WithCause("relief-valve-stuck", "root", """
            how-common: 1 in 40
            leaves: [{symptom: oil-pressure-low, strength: nearly-always}]
            leads-to: [{cause: oil-film-lost, strength: usually}]
            """)
        .WithCause("turbo-feed-blocked", "root", """
            how-common: 1 in 40
            needs: [turbocharged]
            leads-to: [{cause: oil-film-lost, strength: half-the-time}]
            """)
        .WithCause("oil-dirty", "state", """
            leaves: [{part: main-bearing, see: scored, strength: usually}]
            leads-to: [{cause: oil-film-lost, strength: sometimes}]
            """)
        .WithCause("oil-film-lost", "state", """
            leaves:
              - {part: main-bearing, see: wiped, strength: usually}
              - {part: rod-bearing, see: wiped, strength: often}
              - {symptom: knocking, strength: half-the-time}
            """);
}
