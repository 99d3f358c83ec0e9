using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using Scalar = YamlDotNet.Core.Events.Scalar;

namespace Failwise.Yaml;

/// <summary>How the value of a top-level key is written.</summary>
internal enum SpotForm { Missing, Empty, BlockList, FlowList, Other }

/// <summary>Where the next item of a top-level list belongs.</summary>
/// <param name="Form">How the list is written.</param>
/// <param name="Offset">Character at which to insert; for a missing key the end of the document.</param>
/// <param name="Indent">Column of the dashes, from 0.</param>
/// <param name="Before">What has to stand before the item: a comma, a space, or nothing.</param>
internal readonly record struct Spot(SpotForm Form, int Offset, int Indent, string Before);

/// <summary>Finds the places in a text where items can be added without touching anything else.</summary>
internal static class YamlSpots
{
    /// <summary>The spot for the next item under <paramref name="key"/>.</summary>
    /// <returns>Null when the document is not one block of keys, so that nothing can be added safely.</returns>
    public static Spot? Find(string text, string key)
    {
        Parser parser = new(new StringReader(text));
        try
        {
            parser.Consume<StreamStart>();
            parser.Consume<DocumentStart>();
            if (parser.Current is not MappingStart { Style: not MappingStyle.Flow })
            {
                return null;
            }

            parser.MoveNext();
            return Walk(parser, text, key);
        }
        catch (Exception e) when (e is YamlException or InvalidOperationException or ArgumentException or IndexOutOfRangeException)
        {
            return null;
        }
    }

    private static Spot Walk(Parser parser, string text, string key)
    {
        Spot? found = null;
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            Scalar? name = parser.Current as Scalar;
            int keyEnd = (int)parser.Current!.End.Index;
            parser.SkipThisAndNestedEvents();
            if (name?.Value == key && found is null)
            {
                found = OfValue(parser, text, keyEnd);
            }
            else
            {
                parser.SkipThisAndNestedEvents();
            }
        }

        DocumentEnd end = parser.Consume<DocumentEnd>();
        return found ?? new Spot(SpotForm.Missing, end.IsImplicit ? text.Length : (int)end.Start.Index, 2, "");
    }

    private static Spot OfValue(Parser parser, string text, int keyEnd)
    {
        switch (parser.Current)
        {
            case SequenceStart { Style: SequenceStyle.Flow } start:
                return Flow(parser, text, (int)start.Start.Index + 1);
            case SequenceStart start:
                int last = LastEnd(parser, (int)start.Start.Index);
                return new Spot(SpotForm.BlockList, LineAfter(text, last), (int)start.Start.Column - 1, "");
            case Scalar { Value.Length: 0, Style: ScalarStyle.Plain or ScalarStyle.Any }:
                parser.MoveNext();
                return new Spot(SpotForm.Empty, LineAfter(text, keyEnd), 2, "");
            default:
                parser.SkipThisAndNestedEvents();
                return new Spot(SpotForm.Other, keyEnd, 0, "");
        }
    }

    private static Spot Flow(Parser parser, string text, int afterBracket)
    {
        parser.MoveNext();
        int last = -1;
        while (parser.Current is not SequenceEnd)
        {
            last = LastEnd(parser, afterBracket);
        }

        int bracket = (int)parser.Current.Start.Index;
        parser.MoveNext();
        if (last < 0)
        {
            return new Spot(SpotForm.FlowList, afterBracket, 0, "");
        }

        // Only a comma that follows straight on: one further away may stand in a comment.
        int comma = last;
        while (comma < bracket && char.IsWhiteSpace(text[comma]))
        {
            comma++;
        }

        return text[comma] == ',' ? new Spot(SpotForm.FlowList, comma + 1, 0, " ") : new Spot(SpotForm.FlowList, last, 0, ", ");
    }

    /// <summary>Consumes one value and gives the end of its last written character; the end marks of block lists and maps lie beyond it.</summary>
    private static int LastEnd(Parser parser, int atLeast)
    {
        int end = atLeast;
        Stack<bool> inBrackets = new();
        do
        {
            switch (parser.Current!)
            {
                case SequenceStart start:
                    inBrackets.Push(start.Style == SequenceStyle.Flow);
                    break;
                case MappingStart start:
                    inBrackets.Push(start.Style == MappingStyle.Flow);
                    break;
                case SequenceEnd or MappingEnd when inBrackets.Pop():
                    end = Math.Max(end, (int)parser.Current!.Start.Index + 1);
                    break;
                case Scalar { Value.Length: 0, Style: ScalarStyle.Plain or ScalarStyle.Any }:
                    break;
                case Scalar scalar:
                    end = Math.Max(end, (int)scalar.End.Index);
                    break;
            }

            parser.MoveNext();
        }
        while (inBrackets.Count > 0);
        return end;
    }

    /// <summary>The start of the line after the given place, or the place itself when it already starts a line.</summary>
    private static int LineAfter(string text, int place)
    {
        if (place > 0 && text[place - 1] == '\n')
        {
            return place;
        }

        int newline = text.IndexOf('\n', place);
        return newline < 0 ? text.Length : newline + 1;
    }
}
