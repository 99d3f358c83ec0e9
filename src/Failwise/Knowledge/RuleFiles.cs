using System.Text;
using Failwise.Problems;
using Failwise.Yaml;

namespace Failwise.Knowledge;

/// <summary>One parsed file of a rule folder; <paramref name="Path"/> is relative to the folder, with forward slashes.</summary>
internal sealed record RuleFile(string Path, Node Root);

/// <summary>
/// Reads a rule folder, and packs the parsed files into one compact stream: the shipped rules travel in that form, because
/// parsing some thousand small YAML files at every start would take longer than the diagnosis.
/// </summary>
internal static class RuleFiles
{
    private const string Magic = "failwise-rules-1";

    public static IReadOnlyList<RuleFile> ReadFolder(string folder, string shownAs, ProblemList problems)
    {
        if (!Directory.Exists(folder))
        {
            problems.Error("FW001", new Location(shownAs, 0, 0), "there is no such rule folder.");
            return [];
        }

        List<RuleFile> files = [];
        foreach (string path in Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string relative = Path.GetRelativePath(folder, path).Replace('\\', '/');
            if (YamlFile.Read(path, $"{shownAs.TrimEnd('/', '\\')}/{relative}", problems) is { } root)
            {
                files.Add(new RuleFile(relative, root));
            }
        }

        return files;
    }

    public static void Pack(IReadOnlyList<RuleFile> files, Stream to)
    {
        using BinaryWriter writer = new(to, Encoding.UTF8, leaveOpen: true);
        Dictionary<string, int> strings = new(StringComparer.Ordinal);
        List<string> order = [];
        using MemoryStream body = new();
        using (BinaryWriter nodes = new(body, Encoding.UTF8, leaveOpen: true))
        {
            nodes.Write7BitEncodedInt(files.Count);
            foreach (RuleFile file in files)
            {
                nodes.Write7BitEncodedInt(Number(file.Path));
                nodes.Write7BitEncodedInt(Number(file.Root.At.File));
                WriteNode(nodes, file.Root);
            }
        }

        writer.Write(Magic);
        writer.Write7BitEncodedInt(order.Count);
        order.ForEach(writer.Write);
        body.Position = 0;
        body.CopyTo(to);

        int Number(string text)
        {
            if (!strings.TryGetValue(text, out int number))
            {
                strings[text] = number = order.Count;
                order.Add(text);
            }

            return number;
        }

        void WriteNode(BinaryWriter nodes, Node node)
        {
            nodes.Write((byte)(node switch { ScalarNode { Quoted: false } => 0, ScalarNode => 1, ListNode => 2, _ => 3 }));
            nodes.Write7BitEncodedInt(node.At.Line);
            nodes.Write7BitEncodedInt(node.At.Column);
            switch (node)
            {
                case ScalarNode scalar:
                    nodes.Write7BitEncodedInt(Number(scalar.Text));
                    break;
                case ListNode list:
                    nodes.Write7BitEncodedInt(list.Items.Count);
                    foreach (Node item in list.Items)
                    {
                        WriteNode(nodes, item);
                    }

                    break;
                case MapNode map:
                    nodes.Write7BitEncodedInt(map.Entries.Count);
                    foreach (MapEntry entry in map.Entries)
                    {
                        WriteNode(nodes, entry.Key);
                        WriteNode(nodes, entry.Value);
                    }

                    break;
            }
        }
    }

    public static IReadOnlyList<RuleFile> Unpack(Stream from)
    {
        byte[] bytes = new byte[from.Length - from.Position];
        from.ReadExactly(bytes);
        return new Unpacker(bytes).Read();
    }

    /// <summary>Reads the packed form from memory: a stream reader would take longer than everything that follows.</summary>
    private sealed class Unpacker(byte[] bytes)
    {
        private int position;
        private string[] strings = [];

        public IReadOnlyList<RuleFile> Read()
        {
            if (ReadString() != Magic)
            {
                throw new InvalidDataException("The packed rules are of another version than this program.");
            }

            strings = new string[ReadInt()];
            for (int i = 0; i < strings.Length; i++)
            {
                strings[i] = ReadString();
            }

            RuleFile[] files = new RuleFile[ReadInt()];
            for (int i = 0; i < files.Length; i++)
            {
                string path = strings[ReadInt()];
                files[i] = new RuleFile(path, ReadNode(strings[ReadInt()]));
            }

            return files;
        }

        private Node ReadNode(string file)
        {
            byte kind = bytes[position++];
            Location at = new(file, ReadInt(), ReadInt());
            int value = ReadInt();
            if (kind <= 1)
            {
                return new ScalarNode(at, strings[value], kind == 1);
            }

            if (kind == 2)
            {
                Node[] items = new Node[value];
                for (int i = 0; i < value; i++)
                {
                    items[i] = ReadNode(file);
                }

                return new ListNode(at, items);
            }

            MapEntry[] entries = new MapEntry[value];
            for (int i = 0; i < value; i++)
            {
                entries[i] = new MapEntry((ScalarNode)ReadNode(file), ReadNode(file));
            }

            return new MapNode(at, entries);
        }

        private int ReadInt()
        {
            int value = 0, shift = 0;
            byte next;
            do
            {
                next = bytes[position++];
                value |= (next & 0x7F) << shift;
                shift += 7;
            }
            while ((next & 0x80) != 0);
            return value;
        }

        private string ReadString()
        {
            int length = ReadInt();
            string text = Encoding.UTF8.GetString(bytes, position, length);
            position += length;
            return text;
        }
    }
}
