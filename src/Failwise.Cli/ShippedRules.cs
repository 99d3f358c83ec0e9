using System.Reflection;
using Failwise.Knowledge;
using Failwise.Problems;

namespace Failwise.Cli;

/// <summary>The rules that the program carries, and a shop's own folder laid over them.</summary>
internal static class ShippedRules
{
    /// <summary>Loads the shipped rules; with <paramref name="overlay"/>, lays that folder over them.</summary>
    /// <exception cref="ProblemsException">The rules have errors.</exception>
    public static KnowledgeBase Load(string? overlay)
    {
        byte[] packed = overlay is null ? Resource("knowledge.pack") : [];
        if (packed.Length > 0)
        {
            return PackedKnowledge.Unpack(packed, Files);
        }

        KnowledgeReading reading = overlay is null ? KnowledgeReader.Build(Files(), new ProblemList()) : KnowledgeReader.Read(overlay, Files());
        return reading.Knowledge ?? throw new ProblemsException(reading.Problems);
    }

    /// <summary>The parsed files, for checks that want every problem and for a folder to be laid over them.</summary>
    public static IReadOnlyList<RuleFile> Files() => RuleFiles.Unpack(new MemoryStream(Resource("rules.pack")));

    private static byte[] Resource(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
