using Failwise.Problems;

namespace Failwise.Yaml;

/// <summary>A YAML value that remembers where it stands.</summary>
internal abstract record Node(Location At);

internal sealed record ScalarNode(Location At, string Text, bool Quoted) : Node(At);

internal sealed record ListNode(Location At, IReadOnlyList<Node> Items) : Node(At);

internal sealed record MapNode(Location At, IReadOnlyList<MapEntry> Entries) : Node(At)
{
    public Node? this[string key]
    {
        get
        {
            foreach (MapEntry entry in Entries)
            {
                if (string.Equals(entry.Key.Text, key, StringComparison.Ordinal))
                {
                    return entry.Value;
                }
            }

            return null;
        }
    }
}

internal sealed record MapEntry(ScalarNode Key, Node Value);
