using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>The style of pages and drawings.</summary>
internal static partial class StyleSheet
{
    private const int LongestHeader = 90;

    /// <summary>For pages, drawings in them included: light, dark and print.</summary>
    public static string OfPages => Resource("report.css") + Resource("circuit.css");

    /// <summary>For a drawing alone: the light colours, written out, since programs other than browsers read no
    /// variables.</summary>
    public static string OfDrawings
    {
        get
        {
            Dictionary<string, string> light = Variable()
                .Matches(Resource("report.css"))
                .DistinctBy(m => m.Groups[1].Value)
                .ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value);
            return Use().Replace(Resource("circuit.css"), m => light[m.Groups[1].Value]);
        }
    }

    /// <summary>What stands at the edge of every printed sheet: the title, and which sheet of how many.</summary>
    public static string RunningHeader(string title) =>
        $"@page {{ @top-left {{ content: \"{Escaped(title)}\"; }} "
        + "@bottom-right { content: \"Page \" counter(page) \" of \" counter(pages); } }";

    // As code points, whatever is not a plain letter, digit or space; a long title is shortened.
    private static string Escaped(string title)
    {
        string shown = title.EnumerateRunes().Count() <= LongestHeader
            ? title
            : string.Concat(title.EnumerateRunes().Take(LongestHeader - 1)).TrimEnd() + "…";
        return string.Concat(
            shown
                .EnumerateRunes()
                .Select(r =>
                    r.Value == ' ' || Rune.IsLetterOrDigit(r) && r.IsAscii
                        ? r.ToString()
                        : string.Create(CultureInfo.InvariantCulture, $"\\{r.Value:x} ")
                )
        );
    }

    private static string Resource(string name)
    {
        using Stream stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program lacks its {name}.");
        return new StreamReader(stream).ReadToEnd();
    }

    // Light comes first in the sheet.
    [GeneratedRegex(@"--(\w+): (#[0-9a-f]{6});")]
    private static partial Regex Variable();

    [GeneratedRegex(@"var\(--(\w+)\)")]
    private static partial Regex Use();
}
