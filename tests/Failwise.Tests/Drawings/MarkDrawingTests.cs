using System.Xml.Linq;
using Failwise.Drawings;
using Failwise.Knowledge;

namespace Failwise.Tests.Drawings;

public class MarkDrawingTests
{
    private static readonly KnowledgeBase Knowledge = Repository.Knowledge;

    [Theory]
    [InlineData("main-bearing", "wiped", "shell-smear")]
    [InlineData("main-bearing", "embedded-particles", "shell-specks")]
    [InlineData("main-bearing", "fatigue-cracked-lining", "shell-mosaic")]
    [InlineData("rod-journal", "scored", "journal-grooves")]
    [InlineData("cylinder-bore", "polished", "bore-shine")]
    [InlineData("piston-skirt", "scuffed", "piston-smear")]
    [InlineData("helical-gear", "pitted", "tooth-pits")]
    [InlineData("ball-bearing", "spalled", "race-pits")]
    [InlineData("cam-lobe", "worn", "lobe-wear")]
    [InlineData("rod-bolt", "fatigue-fracture", "bolt-break")]
    [InlineData("oil", "milky", "jar-wet")]
    public void A_mark_is_drawn_on_its_own_part(string part, string pattern, string name) =>
        MarkDrawings.NameOf(Knowledge, part, pattern).Should().Be(name);

    [Fact]
    public void Every_drawing_is_sound_svg_without_text_and_differs_from_the_sound_part()
    {
        HashSet<string> drawings = [];
        foreach (Cause cause in Knowledge.Causes.Values)
        {
            foreach (Sign sign in cause.Leaves.Select(l => l.Sign).OfType<Sign>())
            {
                if (MarkDrawings.For(Knowledge, sign.Part, sign.Pattern) is { } svg && drawings.Add(svg))
                {
                    XDocument.Parse(svg).Root!.Name.LocalName.Should().Be("svg");
                    svg.Should().NotContain("<text").And.NotContain("NaN").And.NotBe(MarkDrawings.Sound(Knowledge, sign.Part));
                }
            }
        }

        drawings.Count.Should().BeGreaterThan(100);
    }

    [Fact]
    public void Equal_names_are_equal_drawings_and_other_names_other_drawings()
    {
        Dictionary<string, string> byName = new(StringComparer.Ordinal);
        foreach (Sign sign in Knowledge.Causes.Values.SelectMany(c => c.Leaves).Select(l => l.Sign).OfType<Sign>())
        {
            if (MarkDrawings.NameOf(Knowledge, sign.Part, sign.Pattern) is { } name)
            {
                string svg = MarkDrawings.For(Knowledge, sign.Part, sign.Pattern)!;
                byName.TryAdd(name, svg);
                byName[name].Should().Be(svg);
            }
        }

        byName.Values.Distinct().Should().HaveCount(byName.Count);
    }

    [Fact]
    public void Most_patterns_that_have_a_short_code_have_a_drawing()
    {
        string[] coded = [.. Knowledge.Codes.Where(c => c.Kind == "pattern").Select(c => c.Id)];

        coded.Where(id => MarkDrawings.For(Knowledge, "main-bearing", id) is null).Count().Should().BeLessThan(coded.Length / 5);
    }

    [Fact]
    public void Words_beside_a_drawing_cannot_break_out_of_it() =>
        MarkDrawings.For(Knowledge, "main-bearing", "wiped", "\"><script>")!.Should().NotContain("<script>");

    [Fact]
    public void A_pattern_with_a_drawing_of_its_own_exists_and_no_two_share_one()
    {
        IReadOnlyList<string> ids = Failwise.Drawings.PatternFigures.Ids;
        string[] drawings = [.. ids.Select(id => Failwise.Drawings.MarkDrawings.For(Repository.Knowledge, "gear", id)!)];

        ids.Count.Should().BeGreaterThan(20);
        ids.Should().BeSubsetOf(Repository.Knowledge.Patterns.Keys);
        drawings.Should().OnlyHaveUniqueItems();
        drawings.Should().AllSatisfy(d => System.Xml.Linq.XDocument.Parse(d).Root!.Descendants().Count().Should().BeGreaterThan(2));
    }
}
