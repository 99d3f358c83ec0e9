using System.Text;
using Failwise.Problems;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using Scalar = YamlDotNet.Core.Events.Scalar;

namespace Failwise.Yaml;

/// <summary>Reads one YAML document into nodes. Everything that could make a hand-written file dangerous is refused.</summary>
internal static class YamlFile
{
    /// <summary>Largest file accepted [bytes]: a generous hundred times the longest case seen.</summary>
    public const int LargestBytes = 4 * 1024 * 1024;

    private const int LargestDepth = 40;
    private const int LargestNodeCount = 200_000;

    /// <summary>Reads a file; <paramref name="shownAs"/> is the name printed in problems.</summary>
    /// <returns>The root node, or null when it cannot be read; the reasons are in <paramref name="problems"/>.</returns>
    public static Node? Read(string path, string shownAs, ProblemList problems)
    {
        Location file = new(shownAs, 0, 0);
        byte[] bytes;
        try
        {
            FileInfo info = new(path);
            if (!info.Exists)
            {
                problems.Error("FW001", file, Directory.Exists(path) ? "this is a folder, not a file." : "there is no such file.");
                return null;
            }

            if (info.Length > LargestBytes)
            {
                problems.Error("FW001", file, $"the file has {info.Length / 1024 / 1024} MB; a text file of at most {LargestBytes / 1024 / 1024} MB is expected here.");
                return null;
            }

            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Error("FW001", file, $"the file cannot be read: {e.Message}");
            return null;
        }

        return Decode(bytes) is { } text ? Parse(text, shownAs, problems) : Refuse(problems, file);

        static Node? Refuse(ProblemList problems, Location file)
        {
            problems.Error("FW001", file, "this is not a text file in UTF-8.");
            return null;
        }
    }

    /// <summary>Parses YAML text.</summary>
    public static Node? Parse(string text, string shownAs, ProblemList problems)
    {
        Parser parser = new(new StringReader(text));
        try
        {
            parser.Consume<StreamStart>();
            if (parser.Accept<StreamEnd>(out _))
            {
                problems.Error("FW006", new Location(shownAs, 0, 0), "the file is empty.");
                return null;
            }

            parser.Consume<DocumentStart>();
            Node? root = new Builder(parser, shownAs, problems).Build(0);
            parser.Consume<DocumentEnd>();
            if (!parser.Accept<StreamEnd>(out _))
            {
                problems.Error("FW002", At(shownAs, parser.Current!.Start), "a second document starts here: one file holds one document.");
            }

            return root;
        }
        catch (YamlException e)
        {
            problems.Error("FW002", TabLine(text) is > 0 and var line ? new Location(shownAs, line, 1) : At(shownAs, e.Start), $"this is not well-formed YAML: {Reason(e)}");
            return null;
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException)
        {
            // Some broken files, such as a brace that never closes, trip the parser itself; the last thing it understood is where to look.
            problems.Error("FW002", parser.Current is { } last ? At(shownAs, last.End) : new Location(shownAs, 0, 0),
                "this is not well-formed YAML: after this place the file cannot be understood. Often a bracket or brace that is not closed.");
            return null;
        }
        catch (TooMuch e)
        {
            problems.Error("FW003", e.At, e.Message);
            return null;
        }
    }

    /// <summary>The parser reports a tab at the start of the group it spoils; the first line that is indented with one is the place to mend. 0 when none is.</summary>
    private static int TabLine(string text) =>
        1 + Array.FindIndex(text.Split('\n'), line => line.TrimStart(' ').StartsWith('\t') && line.Trim().Length > 0);

    private static string Reason(YamlException e)
    {
        string message = e.InnerException is YamlException inner ? inner.Message : e.Message;
        int cut = message.IndexOf("): ", StringComparison.Ordinal);
        message = (cut >= 0 ? message[(cut + 3)..] : message).Trim().TrimEnd('.');
        return $"{message}. Often a missing space after ':', a missing quote, or a wrong indent.";
    }

    private static string? Decode(byte[] bytes)
    {
        try
        {
            string text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
            return text.Contains('\0', StringComparison.Ordinal) ? null : text.TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    private static Location At(string file, Mark mark) => new(file, (int)mark.Line, (int)mark.Column);

    private sealed class TooMuch(Location at, string message) : Exception(message)
    {
        public Location At { get; } = at;
    }

    private sealed class Builder(IParser parser, string file, ProblemList problems)
    {
        private int count;

        public Node? Build(int depth)
        {
            Location at = YamlFile.At(file, parser.Current!.Start);
            if (depth > LargestDepth || ++count > LargestNodeCount)
            {
                throw new TooMuch(at, "the file is nested too deeply or holds too many values to be a hand-written file.");
            }

            switch (parser.Current)
            {
                case AnchorAlias:
                    throw new TooMuch(at, "anchors and aliases (& and *) are not used here: write the value out, or quote it if it is text.");
                case NodeEvent { Anchor.IsEmpty: false }:
                    throw new TooMuch(at, "anchors and aliases (& and *) are not used here: write the value out, or quote it if it is text.");
                case NodeEvent { Tag.IsEmpty: false }:
                    throw new TooMuch(at, "tags (!) are not used here: quote the text if it starts with '!'.");
                case Scalar scalar:
                    parser.MoveNext();
                    return new ScalarNode(at, scalar.Value, scalar.Style is not ScalarStyle.Plain);
                case SequenceStart:
                    return BuildList(at, depth);
                default:
                    return BuildMap(at, depth);
            }
        }

        private ListNode BuildList(Location at, int depth)
        {
            parser.MoveNext();
            List<Node> items = [];
            while (!parser.TryConsume<SequenceEnd>(out _))
            {
                if (Build(depth + 1) is { } item)
                {
                    items.Add(item);
                }
            }

            return new ListNode(at, items);
        }

        private MapNode BuildMap(Location at, int depth)
        {
            parser.Consume<MappingStart>();
            List<MapEntry> entries = [];
            HashSet<string> keys = new(StringComparer.Ordinal);
            while (!parser.TryConsume<MappingEnd>(out _))
            {
                Node? key = Build(depth + 1);
                Node? value = Build(depth + 1);
                if (key is not ScalarNode name)
                {
                    problems.Error("FW007", key?.At ?? at, "a key must be a plain word.");
                }
                else if (!keys.Add(name.Text))
                {
                    problems.Error("FW004", name.At, $"the key '{Shape.Short(name.Text)}' stands here twice; keep one.");
                }
                else if (value is not null)
                {
                    entries.Add(new MapEntry(name, value));
                }
            }

            return new MapNode(at, entries);
        }
    }
}
