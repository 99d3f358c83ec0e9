using Failwise.Cases;
using Failwise.Causes;
using Failwise.Knowledge;

namespace Failwise.Reports.Pictures;

/// <summary>Where the damage lies: every shell with its halves and edges, bores, lobes and gears in a row, and the other parts as a list.</summary>
internal sealed class DamageMap
{
    private const int Margin = 8;
    private const int PerRow = 5, Pitch = 77, Cell = 73, Middle = 36;
    private readonly Diagnosis diagnosis;
    private readonly KnowledgeBase knowledge;
    private readonly SvgCanvas canvas = new();
    private double y = 18;

    private DamageMap(Diagnosis diagnosis)
    {
        this.diagnosis = diagnosis;
        knowledge = diagnosis.Knowledge;
    }

    /// <summary>The map, or null when no part was looked at.</summary>
    public static Picture? Draw(Diagnosis diagnosis) => diagnosis.Case.Observations.Count == 0 ? null : new DamageMap(diagnosis).Draw();

    private Picture Draw()
    {
        Machine machine = diagnosis.Case.Machine;
        string[] parts = [.. diagnosis.Case.Observations.Select(o => o.Part).Distinct()];
        if (machine.NumberOne is { } one)
        {
            y = canvas.Block(Margin, y, 384, $"No. 1 is at the {one}; the drive end is at the {(machine.DriveEndFirst ? "lowest" : "highest")} number.", "q") + 4;
        }

        string[] rows = [.. parts.Where(p => new MapPlaces(diagnosis, p).Numbers.Count > 0 && (Worst(p) > Severity.Sound || PartShape.IsMapped(knowledge, p)))];
        foreach (string part in rows.OrderBy(p => knowledge.Parts[p].Count == "mains" ? 0 : 1).ThenBy(p => HasHalves(p) ? 0 : 1))
        {
            Row(part);
        }

        string[] others = [.. parts.Except(rows).OrderByDescending(Worst)];
        string[] train = [.. others.Where(p => PartShape.IsOfTrain(knowledge, p))];
        Others("Gears, shafts and rolling bearings", train);
        Others("Other parts", [.. others.Except(train)]);
        Legend();
        string[] heavy = [.. parts.Where(p => Worst(p) >= Severity.Heavy).Select(p => knowledge.Parts[p].Name)];
        return canvas.Finish("damage-map", $"Map of what was found, place by place. {(heavy.Length > 0 ? $"Heavy damage on: {string.Join(", ", heavy)}." : "No heavy damage.")} The table part by part says the same in words.");
    }

    private bool HasHalves(string part) => knowledge.PartIs(part, "plain-bearing") && knowledge.Parts[part].Places.Contains("half");

    private Severity Worst(string part) => diagnosis.Case.Observations.Where(o => o.Part == part).Max(o => SeveritySign.Of(knowledge, o));

    /// <summary>A part that the machine has several of: one column each.</summary>
    private void Row(string part)
    {
        MapPlaces places = new(diagnosis, part);
        Title(EvidenceGathering.Capital(knowledge.Parts[part].Name));
        foreach (int[] numbers in places.Numbers.Chunk(PerRow))
        {
            for (int column = 0; column < numbers.Length; column++)
            {
                canvas.Text(X(column) + Middle, y + 10, "No. " + numbers[column], "b s m");
            }

            double top = y + 14;
            if (HasHalves(part))
            {
                top = numbers.Select((n, column) => Half(X(column), top, "upper", places, n)).Max() + 3;
                y = numbers.Select((n, column) => Half(X(column), top, "lower", places, n)).Max() + 6;
            }
            else
            {
                y = numbers.Select((n, column) => Single(X(column), top, places, n, part)).Max() + 6;
            }
        }

        foreach (MapMark mark in places.Unplaced)
        {
            SeveritySign.Draw(canvas, Margin + 20, y + 8, mark.Severity);
            y = canvas.Block(Margin + 48, y + 12, 330, $"{mark.Says}; which number was not written down") + 2;
        }
    }

    /// <summary>A half shell unrolled: edges along its long sides, parting lines at its ends, crown in the middle.</summary>
    private double Half(double x, double top, string half, MapPlaces places, int number)
    {
        IReadOnlyList<MapMark> marks = places.At(number, half) is { Count: > 0 } own ? own : places.At(number, null);
        Severity worst = marks.Count == 0 ? Severity.NotLooked : marks.Max(m => m.Severity);
        string[] on = [.. marks.Where(m => m.Severity != Severity.Sound).SelectMany(m => m.On)];
        bool local = on.Any(w => w is "front-edge" or "rear-edge" or "both-edges" or "one-edge" or "parting-line" or "crown-zone");
        canvas.Rectangle(x, top, Cell, 34, $"edge {(local ? "k9" : SeveritySign.Fill(worst))}{(worst == Severity.NotLooked ? " dash" : "")}", 3);
        foreach ((bool marked, double dx, double dy, double w, double h) in new[]
        {
            (on.Contains("front-edge") || on.Contains("both-edges") || on.Contains("one-edge"), 0.0, 0.0, Cell, 6.0), (on.Contains("rear-edge") || on.Contains("both-edges"), 0, 28, Cell, 6),
            (on.Contains("parting-line"), 0, 0, 7, 34), (on.Contains("parting-line"), Cell - 7, 0, 7, 34), (on.Contains("crown-zone"), 20, 8, 33, 18),
        }.Where(s => s.Item1))
        {
            canvas.Rectangle(x + dx, top + dy, w, h, "edge " + SeveritySign.Fill(worst));
        }

        SeveritySign.Draw(canvas, x + Middle, top + 17, worst);
        return Words(x, top + 48, marks, half + ": ");
    }

    private double Single(double x, double top, MapPlaces places, int number, string part)
    {
        MapMark[] marks = [.. places.At(number, null), .. places.At(number, "upper"), .. places.At(number, "lower")];
        Severity worst = marks.Length == 0 ? Severity.NotLooked : marks.Max(m => m.Severity);
        PartShape.Draw(canvas, knowledge, part, x + Middle, top + 20, worst);
        SeveritySign.Draw(canvas, x + Middle, top + 20, worst);
        return Words(x, top + 56, marks, "");
    }

    private double Words(double x, double top, IReadOnlyList<MapMark> marks, string lead)
    {
        string says = marks.Count == 0 ? "not looked at" : string.Join("; ", marks.OrderByDescending(m => m.Severity).Select(m => m.Says).Distinct().Take(2));
        return canvas.Block(x + Middle, top, Pitch, lead + says, "s m", 5) - 8;
    }

    private static double X(int column) => Margin + column * Pitch;

    private void Others(string title, IReadOnlyList<string> parts)
    {
        if (parts.Count > 0)
        {
            Title(title);
        }

        foreach (string part in parts)
        {
            MapMark[] marks = [.. new MapPlaces(diagnosis, part).All.OrderByDescending(m => m.Severity)];
            PartShape.DrawSmall(canvas, knowledge, part, Margin + 14, y + 11, marks[0].Severity);
            SeveritySign.Draw(canvas, Margin + 52, y + 11, marks[0].Severity);
            string says = $"{EvidenceGathering.Capital(knowledge.Parts[part].Name)}: {string.Join("; ", marks.Select(m => m.Says).Distinct().Take(3))}";
            y = Math.Max(y + 25, canvas.Block(Margin + 80, y + 12, 306, says) + 1);
        }
    }

    private void Title(string text)
    {
        y += 12;
        canvas.Segment(Margin, y - 12, canvas.Width - Margin, y - 12, "thin");
        y = canvas.Block(Margin, y + 2, 384, text, "b");
    }

    private void Legend()
    {
        Title("Signs");
        foreach ((Severity severity, int i) in new[] { Severity.Sound, Severity.Trace, Severity.Light, Severity.Moderate, Severity.Heavy, Severity.Destroyed, Severity.NotLooked }.Select((s, i) => (s, i)))
        {
            double x = Margin + i % 2 * 190, top = y + i / 2 * 24;
            canvas.Rectangle(x, top, 44, 20, $"edge {SeveritySign.Fill(severity)}{(severity == Severity.NotLooked ? " dash" : "")}", 3);
            SeveritySign.Draw(canvas, x + 22, top + 10, severity);
            canvas.Text(x + 50, top + 14, SeveritySign.Word(severity), "s");
        }
    }
}
