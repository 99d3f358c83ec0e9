using System.Text;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Entry;

/// <summary>A case text with something added.</summary>
internal sealed record LongerText(string Text, IReadOnlyList<InsertedPiece> Pieces);

/// <summary>Adds items to the text of a case and leaves every other character as it was: comments, order and formatting stay.</summary>
internal static class CaseText
{
    /// <summary>The text with the entries added and the pieces put in, or null with the reason in <paramref name="problems"/>.</summary>
    public static LongerText? Add(string text, string file, IReadOnlyList<CaseEntry> entries, ProblemList problems)
    {
        if (YamlFile.Parse(text, file, problems) is not MapNode before || problems.HasErrors)
        {
            return null;
        }

        string result = text;
        List<InsertedPiece> pieces = [];
        foreach (CaseEntry entry in entries)
        {
            if (Insert(result, file, entry, problems) is not { } piece)
            {
                return null;
            }

            pieces.Add(piece);
            result = result.Insert(piece.Offset, piece.Text);
        }

        if (YamlFile.Parse(result, file, new ProblemList()) is MapNode after && Say(after) == Say(With(before, entries)))
        {
            return new LongerText(result, pieces);
        }

        problems.Error("FW090", new Location(file, 0, 0), "the entry cannot be added to this file without disturbing it; write it in by hand, or put the lists of the file one item a line.");
        return null;
    }

    /// <summary>The text without the pieces, or null when it is no longer the text to which they were added: then nothing is guessed.</summary>
    public static string? Remove(string text, string file, IReadOnlyList<InsertedPiece> pieces)
    {
        string shorter = text;
        foreach (InsertedPiece piece in pieces.Reverse())
        {
            bool there = piece.Offset <= shorter.Length && shorter.AsSpan(piece.Offset).StartsWith(piece.Text, StringComparison.Ordinal);
            int at = there ? piece.Offset : shorter.LastIndexOf(piece.Text, StringComparison.Ordinal);
            if (at < 0)
            {
                return null;
            }

            shorter = shorter.Remove(at, piece.Text.Length);
        }

        if (YamlFile.Parse(text, file, new ProblemList()) is not MapNode before || YamlFile.Parse(shorter, file, new ProblemList()) is not MapNode after)
        {
            return null;
        }

        List<string> gone = Items(before);
        return Items(after).TrueForAll(gone.Remove) && gone.Count == pieces.Count ? shorter : null;
    }

    /// <summary>What a case says, item by item; an empty list says nothing.</summary>
    private static List<string> Items(MapNode map) =>
    [
        .. map.Entries.SelectMany(e => e.Value is ListNode list ? list.Items : [e.Value], (e, item) => (e.Key, Item: Say(item)))
            .Where(x => x.Item is not ("0:" or "[]")).Select(x => x.Key.Text + "/" + x.Item),
    ];

    private static InsertedPiece? Insert(string text, string file, CaseEntry entry, ProblemList problems)
    {
        string newline = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        Spot? spot = YamlSpots.Find(text, entry.Section);
        if (spot is not { Form: not SpotForm.Other } found)
        {
            problems.Error("FW090", new Location(file, 0, 0), spot is null
                ? "the tool adds only to a file that is written as a block of keys, one a line; this one is in braces. Write the entry in by hand."
                : $"'{entry.Section}' holds a single value, not a list; make it a list, one item a line, and try again.");
            return null;
        }

        string item = found.Form switch
        {
            SpotForm.FlowList => found.Before + entry.Yaml,
            SpotForm.BlockList => new string(' ', found.Indent) + "- " + entry.Yaml + newline,
            SpotForm.Empty => "  - " + entry.Yaml + newline,
            _ => entry.Section + ":" + newline + "  - " + entry.Yaml + newline,
        };
        bool startsLine = found.Offset == 0 || text[found.Offset - 1] == '\n';
        string before = found.Form != SpotForm.FlowList && !startsLine ? newline : "";
        return new InsertedPiece(found.Offset, before + item);
    }

    /// <summary>The case as it must read afterwards: the old one and the entries, nothing else.</summary>
    /// <param name="placed">True to place the added values where the person wrote them, for messages.</param>
    public static MapNode With(MapNode before, IReadOnlyList<CaseEntry> entries, bool placed = false)
    {
        List<MapEntry> all = [.. before.Entries];
        foreach (CaseEntry entry in entries)
        {
            Node item = YamlFile.Parse(entry.Yaml, "entry", new ProblemList())!;
            item = placed ? PlacedAt(item, entry.At) : item;
            int at = all.FindIndex(e => e.Key.Text == entry.Section);
            List<Node> items = at >= 0 && all[at].Value is ListNode list ? [.. list.Items, item] : [item];
            MapEntry section = new(new ScalarNode(default, entry.Section, false), new ListNode(default, items));
            if (at >= 0)
            {
                all[at] = section;
            }
            else
            {
                all.Add(section);
            }
        }

        return new MapNode(before.At, all);
    }

    private static Node PlacedAt(Node node, Location at) => node switch
    {
        ScalarNode scalar => scalar with { At = at },
        ListNode list => new ListNode(at, [.. list.Items.Select(i => PlacedAt(i, at))]),
        MapNode map => new MapNode(at, [.. map.Entries.Select(e => new MapEntry(e.Key with { At = at }, PlacedAt(e.Value, at)))]),
        _ => node,
    };

    private static string Say(Node node)
    {
        StringBuilder text = new();
        Append(node);
        return text.ToString();

        void Append(Node n)
        {
            switch (n)
            {
                case ScalarNode scalar:
                    text.Append(scalar.Text.Length).Append(':').Append(scalar.Text);
                    break;
                case ListNode list:
                    text.Append('[');
                    foreach (Node item in list.Items)
                    {
                        Append(item);
                    }

                    text.Append(']');
                    break;
                case MapNode map:
                    text.Append('{');
                    foreach (MapEntry entry in map.Entries)
                    {
                        Append(entry.Key);
                        Append(entry.Value);
                    }

                    text.Append('}');
                    break;
            }
        }
    }
}
