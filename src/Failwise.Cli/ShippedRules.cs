using System.Reflection;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>The rules that the program carries, and a shop's own folder laid over them.</summary>
internal static class ShippedRules
{
    /// <summary>Loads the shipped rules; with <paramref name="overlay"/>, lays that folder over them.</summary>
    /// <exception cref="ProblemsException">The overlay has errors.</exception>
    public static KnowledgeBase Load(string? overlay)
    {
        IReadOnlyList<RuleFile> files = Files();
        if (overlay is not null)
        {
            KnowledgeReading laid = KnowledgeReader.Read(overlay, files);
            return laid.Knowledge ?? throw new ProblemsException(laid.Problems);
        }

        return KnowledgeReader.Build(files, new ProblemList(), trusted: true).Knowledge!;
    }

    /// <summary>The packed files, for checks that want every problem.</summary>
    public static IReadOnlyList<RuleFile> Files()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("rules.pack")!;
        return RuleFiles.Unpack(stream);
    }
}
