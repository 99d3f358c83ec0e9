namespace Failwise.Reports;

/// <summary>Whether a photo can be shown.</summary>
public enum PhotoState { Shown, Missing, NotAPicture, NotShownByBrowsers, TooLarge, OnePhotoTooMany }

/// <summary>Looks at photo files by their first bytes. Originals are only read, never changed.</summary>
internal static class PhotoFile
{
    /// <summary>Room for all photos of a report [byte].</summary>
    public const long LargestSum = ReportPhoto.LargestSumMegabytes * 1024L * 1024;

    private const long LargestPhoto = ReportPhoto.LargestMegabytes * 1024L * 1024;

    /// <summary>What becomes of a photo when <paramref name="room"/> bytes are left, and how large it is.</summary>
    public static (PhotoState State, long Length) Look(string folder, string file, long room)
    {
        try
        {
            FileInfo info = new(Path.Combine(folder, file));
            if (!info.Exists)
            {
                return (PhotoState.Missing, 0);
            }

            byte[] head = new byte[16];
            using FileStream stream = info.OpenRead();
            int read = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
            PhotoState state = KindOf(head.AsSpan(0, read)) switch
            {
                null => PhotoState.NotAPicture,
                "" => PhotoState.NotShownByBrowsers,
                _ => info.Length > LargestPhoto ? PhotoState.TooLarge : info.Length > room ? PhotoState.OnePhotoTooMany : PhotoState.Shown,
            };
            return (state, info.Length);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return (PhotoState.Missing, 0);
        }
    }

    /// <summary>The photo as an address that carries its bytes; null when it has gone meanwhile.</summary>
    public static string? Embed(string folder, string file)
    {
        try
        {
            byte[] bytes = File.ReadAllBytes(Path.Combine(folder, file));
            return KindOf(bytes) is { Length: > 0 } kind ? $"data:image/{kind};base64,{Convert.ToBase64String(bytes)}" : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>The kind of picture by its first bytes: null when it is none, empty when it is one that browsers do not show.</summary>
    private static string? KindOf(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xD8, 0xFF, ..] => "jpeg",
        [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, ..] => "png",
        [0x47, 0x49, 0x46, 0x38, ..] => "gif",
        [0x42, 0x4D, _, _, _, _, 0, 0, 0, 0, ..] => "bmp",
        [0x52, 0x49, 0x46, 0x46, _, _, _, _, 0x57, 0x45, 0x42, 0x50, ..] => "webp",
        [_, _, _, _, 0x66, 0x74, 0x79, 0x70, 0x61, 0x76, 0x69, 0x66, ..] => "avif",
        [_, _, _, _, 0x66, 0x74, 0x79, 0x70, 0x68, 0x65, 0x69, ..] or [_, _, _, _, 0x66, 0x74, 0x79, 0x70, 0x6D, 0x69, 0x66, 0x31, ..] => "",
        [0x49, 0x49, 0x2A, 0x00, ..] or [0x4D, 0x4D, 0x00, 0x2A, ..] => "",
        _ => null,
    };
}
