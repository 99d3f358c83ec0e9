using System.Globalization;
using System.Text;

namespace Failwise.Entry;

/// <summary>A piece that an edit put into a case file.</summary>
/// <param name="Offset">Character at which it was put in.</param>
internal sealed record InsertedPiece(int Offset, string Text);

/// <summary>
/// Remembers beside a case, in <c>.case.yaml.undo</c>, what each edit put in, so that edits can be taken back one after the other. It holds
/// nothing else: without it the case is as good, and only undo has nothing to go by.
/// </summary>
internal static class CaseJournal
{
    private const int MostEdits = 200;

    public static string FileOf(string file) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(file))!, "." + Path.GetFileName(file) + ".undo");

    /// <summary>The edits, oldest first; those that do not read are passed over.</summary>
    public static IReadOnlyList<IReadOnlyList<InsertedPiece>> Read(string file)
    {
        string journal = FileOf(file);
        return File.Exists(journal) ? [.. File.ReadAllLines(journal, Encoding.UTF8).Select(Edit).Where(e => e.Count > 0)] : [];
    }

    /// <summary>The journal's bytes for these edits; the oldest fall away.</summary>
    public static byte[] Bytes(IReadOnlyList<IReadOnlyList<InsertedPiece>> edits) =>
        Encoding.UTF8.GetBytes(string.Concat(edits.TakeLast(MostEdits).Select(e =>
            string.Join(' ', e.Select(p => p.Offset.ToString(CultureInfo.InvariantCulture) + ":" + Uri.EscapeDataString(p.Text))) + "\n")));

    private static IReadOnlyList<InsertedPiece> Edit(string line)
    {
        List<InsertedPiece> pieces = [];
        foreach (string[] parts in line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split(':', 2)))
        {
            if (parts.Length != 2 || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int offset))
            {
                return [];
            }

            pieces.Add(new InsertedPiece(offset, Uri.UnescapeDataString(parts[1])));
        }

        return pieces;
    }
}
