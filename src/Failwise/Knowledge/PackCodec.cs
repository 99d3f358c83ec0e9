using System.Buffers.Binary;
using System.Text;
using Failwise.Problems;

namespace Failwise.Knowledge;

/// <summary>
/// Writes values into a compact stream, or reads them back: each method gives the value it was given, or the one it read. A record
/// described once with these methods can therefore be both packed and unpacked, and the two cannot drift apart.
/// </summary>
internal sealed class PackCodec
{
    private const string Magic = "failwise-knowledge-1";
    private readonly List<byte>? body;
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<string> texts = [];
    private readonly byte[] bytes = [];
    private readonly string[] known = [];
    private int position;

    /// <summary>For packing.</summary>
    public PackCodec() => body = [];

    /// <summary>For unpacking.</summary>
    /// <exception cref="InvalidDataException">The stream was packed by another version.</exception>
    public PackCodec(byte[] packed)
    {
        bytes = packed;
        if (ReadText() != Magic)
        {
            throw new InvalidDataException("The packed rules are of another version than this program.");
        }

        known = new string[Number(0)];
        for (int i = 0; i < known.Length; i++)
        {
            known[i] = ReadText();
        }
    }

    private bool Packing => body is not null;

    /// <summary>Everything packed so far, texts first.</summary>
    public byte[] Packed()
    {
        List<byte> all = [];
        foreach (string text in texts.Prepend(Magic))
        {
            byte[] utf8 = Encoding.UTF8.GetBytes(text);
            WriteNumber(all, utf8.Length);
            all.AddRange(utf8);
            if (ReferenceEquals(text, Magic))
            {
                WriteNumber(all, texts.Count);
            }
        }

        return [.. all, .. body!];
    }

    public int Number(int value)
    {
        if (Packing)
        {
            WriteNumber(body!, value);
            return value;
        }

        int read = 0, shift = 0;
        byte next;
        do
        {
            next = bytes[position++];
            read |= (next & 0x7F) << shift;
            shift += 7;
        }
        while ((next & 0x80) != 0);
        return read;
    }

    public bool Flag(bool value) => Number(value ? 1 : 0) == 1;

    public double Real(double value)
    {
        Span<byte> eight = stackalloc byte[8];
        if (Packing)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(eight, value);
            body!.AddRange(eight);
            return value;
        }

        position += 8;
        return BinaryPrimitives.ReadDoubleLittleEndian(bytes.AsSpan(position - 8, 8));
    }

    public double? MaybeReal(double? value) => Flag(value is not null) ? Real(value ?? 0) : null;

    public string Text(string? value)
    {
        if (!Packing)
        {
            return known[Number(0)];
        }

        Number(NumberOf(value!));
        return value!;
    }

    public string? MaybeText(string? value)
    {
        int number = Number(Packing && value is not null ? NumberOf(value) + 1 : 0);
        return Packing ? value : number == 0 ? null : known[number - 1];
    }

    public Location At(Location value) => new(Text(value.File), Number(value.Line), Number(value.Column));

    public IReadOnlyList<string> Texts(IReadOnlyList<string>? value) => List(value, static (c, text) => c.Text(text));

    public IReadOnlyList<T> List<T>(IReadOnlyList<T>? value, Func<PackCodec, T?, T> item)
    {
        int count = Number(value?.Count ?? 0);
        if (Packing)
        {
            foreach (T one in value!)
            {
                item(this, one);
            }

            return value;
        }

        T[] read = count == 0 ? [] : new T[count];
        for (int i = 0; i < count; i++)
        {
            read[i] = item(this, default);
        }

        return read;
    }

    public T? Maybe<T>(T? value, Func<PackCodec, T?, T> item)
        where T : class => Flag(value is not null) ? item(this, value) : null;

    /// <summary>Values by key; when unpacking they are added to <paramref name="into"/>.</summary>
    public void Map<T>(Dictionary<string, T> into, Func<PackCodec, T?, T> item)
    {
        int count = Number(into.Count);
        if (Packing)
        {
            foreach ((string key, T value) in into)
            {
                Text(key);
                item(this, value);
            }

            return;
        }

        into.EnsureCapacity(count);
        for (int i = 0; i < count; i++)
        {
            string key = Text(null);
            into[key] = item(this, default);
        }
    }

    private int NumberOf(string text)
    {
        if (!numbers.TryGetValue(text, out int number))
        {
            numbers[text] = number = texts.Count;
            texts.Add(text);
        }

        return number;
    }

    private static void WriteNumber(List<byte> to, int value)
    {
        uint rest = (uint)value;
        while (rest >= 0x80)
        {
            to.Add((byte)(rest | 0x80));
            rest >>= 7;
        }

        to.Add((byte)rest);
    }

    private string ReadText()
    {
        int length = Number(0);
        position += length;
        return Encoding.UTF8.GetString(bytes, position - length, length);
    }
}
