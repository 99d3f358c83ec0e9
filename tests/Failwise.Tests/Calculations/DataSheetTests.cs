using System.Reflection;
using System.Xml.Linq;
using Failwise.Calculations;

namespace Failwise.Tests.Calculations;

public class DataSheetTests
{
    private static readonly string[] NoFormulas = [nameof(CalculationCatalog)];

    [Fact]
    public void Every_public_formula_has_its_data_sheet()
    {
        var documented = XDocument.Load(Path.Combine(AppContext.BaseDirectory, "Failwise.Core.xml")).Descendants("member")
            .ToLookup(member => ((string)member.Attribute("name")!).Split('(')[0]);
        var formulas = typeof(CalculationCatalog).Assembly.GetExportedTypes()
            .Where(type => type.Namespace == "Failwise.Calculations" && type.IsAbstract && type.IsSealed && !NoFormulas.Contains(type.Name))
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(method => !method.IsSpecialName)
            .ToList();

        formulas.Should().HaveCountGreaterThan(80);
        foreach (var formula in formulas)
        {
            var name = $"M:{formula.DeclaringType!.FullName}.{formula.Name}";
            var sheet = string.Join(' ', documented[name].Select(member => member.Value));
            foreach (var word in new[] { "Formula:", "Valid:", "Source:", "Example:" })
                sheet.Should().Contain(word, because: name);
            documented[name].First().Element("returns").Should().NotBeNull(because: name);
            documented[name].First().Element("exception").Should().NotBeNull(because: name);
        }
    }
}
