using System.Reflection;
using System.Text.RegularExpressions;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>The style of pages and drawings.</summary>
internal static partial class StyleSheet
{
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
