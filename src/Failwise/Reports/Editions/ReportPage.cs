using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;
using Failwise.Reports.Pictures;

namespace Failwise.Reports.Editions;

/// <summary>A report while it is being written: the diagnosis, the text so far, its pictures, and the sources it has named.</summary>
internal sealed class ReportPage(Diagnosis diagnosis, string? pictureFolder)
{
    private readonly List<Picture> pictures = [];
    private readonly SortedSet<string> cited = new(StringComparer.Ordinal);

    public Diagnosis Diagnosis { get; } = diagnosis;

    public MarkdownText Text { get; } = new();

    public TeardownCase Case => Diagnosis.Case;

    public CauseRanking Causes => Diagnosis.Causes;

    public KnowledgeBase Knowledge => Diagnosis.Knowledge;

    public string? PictureFolder => pictureFolder;

    public IReadOnlyList<Picture> Pictures => pictures;

    public IReadOnlyList<ReportPhoto> Photos { get; } = PhotosOf(diagnosis.Case, pictureFolder);

    public IReadOnlyCollection<string> Cited => cited;

    public static string Safe(string text) => MarkdownText.Safe(text);

    public string PartName(string part) => EvidenceGathering.Capital(Knowledge.Parts[part].Name);

    /// <summary>Puts a picture in, unless the report is written without pictures or there is nothing to draw.</summary>
    public void Show(Func<Diagnosis, Picture?> draw, string caption)
    {
        if (pictureFolder is not null && draw(Diagnosis) is { } picture)
        {
            pictures.Add(picture);
            Text.Figure(picture.Alt, Address(pictureFolder, picture.Name + ".svg"), caption);
        }
    }

    /// <summary>Notes sources so that the last section lists them; returns their ids as they stand in a cell.</summary>
    public string Cite(IEnumerable<SourceRef> sources)
    {
        string[] ids = [.. sources.Select(s => s.Id).Distinct()];
        cited.UnionWith(ids);
        return string.Join(", ", ids);
    }

    public Report Finish(ReportEdition edition) => new(edition, Case.Title, Text.ToString(), pictureFolder, pictures, Photos);

    private static IReadOnlyList<ReportPhoto> PhotosOf(TeardownCase teardown, string? pictureFolder)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(teardown.File)) ?? ".";
        IEnumerable<(string File, string? Shows)> all = teardown.Photos.Select(p => (p.File, p.Shows))
            .Concat(teardown.Observations.Where(o => o.Photo is not null).Select(o => (o.Photo!, (string?)null))).DistinctBy(p => p.Item1);
        long room = PhotoFile.LargestSum;
        List<ReportPhoto> photos = [];
        foreach ((string file, string? shows) in all)
        {
            (PhotoState state, long length) = PhotoFile.Look(folder, file, room);
            room -= state == PhotoState.Shown ? length : 0;
            string name = file.Replace('\\', '/');
            photos.Add(new ReportPhoto(name, Address(state == PhotoState.Shown ? pictureFolder : null, name), shows ?? name, state));
        }

        return photos;
    }

    private static string Address(string? folder, string file) =>
        string.Join('/', (folder is null ? file : folder + "/" + file).Split('/').Select(Uri.EscapeDataString));
}
