using System.Globalization;
using System.Text;

namespace Failwise.Yaml;

/// <summary>Writes values as a person would: plain where that is safe, else in double quotes.</summary>
internal static class YamlText
{
    private const string Plain = "_-./%+()&°µ·×";

    /// <summary>One value, safe inside braces and brackets.</summary>
    public static string Of(string value) => IsPlain(value) ? value : Quoted(value);

    /// <summary>A node on one line.</summary>
    public static string Of(Node node) => node switch
    {
        ScalarNode scalar => Of(scalar.Text),
        ListNode list => "[" + string.Join(", ", list.Items.Select(Of)) + "]",
        MapNode map => Group(map.Entries.Select(e => (e.Key.Text, Of(e.Value)))),
        _ => "\"\"",
    };

    /// <summary>A group in braces; values that are already written out are taken as they are.</summary>
    public static string Group(IEnumerable<(string Key, string Written)> entries) => "{" + string.Join(", ", entries.Select(e => $"{e.Key}: {e.Written}")) + "}";

    /// <summary>One value, or several in brackets.</summary>
    public static string List(IReadOnlyList<string> values) => values.Count == 1 ? Of(values[0]) : "[" + string.Join(", ", values.Select(Of)) + "]";

    private static bool IsPlain(string value)
    {
        if (value.Length == 0 || value != value.Trim() || !char.IsLetterOrDigit(value[0]) || value is "null" or "true" or "false" or "yes" or "no" or "on" or "off")
        {
            return false;
        }

        return value.All(c => char.IsLetterOrDigit(c) || c == ' ' || Plain.Contains(c, StringComparison.Ordinal));
    }

    private static string Quoted(string value)
    {
        StringBuilder text = new("\"");
        foreach (char c in value)
        {
            text.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                _ when char.IsControl(c) || c is '\u2028' or '\u2029' or '\u0085' or '\uFEFF' => "\\u" + ((int)c).ToString("x4", CultureInfo.InvariantCulture),
                _ => c.ToString(),
            });
        }

        return text.Append('"').ToString();
    }
}
