using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using Failwise.Knowledge;

namespace Failwise.Tests.Knowledge;

/// <summary>The packed knowledge base that the program carries says the same as the rule files.</summary>
public class PackedKnowledgeTests
{
    private static readonly KnowledgeBase Packed = PackedKnowledge.Unpack(PackedKnowledge.Pack(Repository.Knowledge), () => Repository.Knowledge.Files);

    public static TheoryData<string> Kinds => [.. typeof(KnowledgeParts).GetProperties().Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_record_comes_back_with_every_field_and_in_the_same_order(string kind)
    {
        PropertyInfo all = typeof(KnowledgeParts).GetProperty(kind)!;
        string[] before = [.. ((IEnumerable)all.GetValue(Repository.Knowledge.Content)!).Cast<object>().Select(Say)];
        string[] after = [.. ((IEnumerable)all.GetValue(Packed.Content)!).Cast<object>().Select(Say)];
        before.Should().NotBeEmpty();
        after.Length.Should().Be(before.Length);
        before.Zip(after).Where(pair => pair.First != pair.Second).Take(3).Should().BeEmpty();
    }

    [Fact]
    public void Packing_is_stable() => PackedKnowledge.Pack(Packed).Should().Equal(PackedKnowledge.Pack(Repository.Knowledge));

    [Fact]
    public void A_pack_of_another_version_is_refused()
    {
        byte[] packed = PackedKnowledge.Pack(Repository.Knowledge);
        packed[3] ^= 1;
        Action unpack = () => PackedKnowledge.Unpack(packed, () => []);
        unpack.Should().Throw<InvalidDataException>();
    }

    /// <summary>Every public property, all the way down, as text; examples of findings are not packed.</summary>
    private static string Say(object? value) => value switch
    {
        null => "-",
        string text => '"' + text + '"',
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        _ when value.GetType().IsPrimitive || value is Enum => Convert.ToString(value, CultureInfo.InvariantCulture)!,
        IEnumerable list => '[' + string.Join(", ", list.Cast<object?>().Select(Say)) + ']',
        _ => SayProperties(value),
    };

    private static string SayProperties(object value)
    {
        StringBuilder text = new(value.GetType().Name);
        foreach (PropertyInfo property in value.GetType().GetProperties().Where(p => p.Name != "EqualityContract" && p.GetIndexParameters().Length == 0))
        {
            text.Append(' ').Append(property.Name).Append('=').Append(Say(property.GetValue(value)));
        }

        return text.ToString();
    }
}
