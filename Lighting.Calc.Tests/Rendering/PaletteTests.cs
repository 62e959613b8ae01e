using System.Globalization;
using System.Text.RegularExpressions;
using Lighting.Calc.Cli.Rendering.Html;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>Colours of pages keep the contrast of WCAG 2.2: 4.5 for text (1.4.3), 3 for what pictures are made of
/// (1.4.11).</summary>
public partial class PaletteTests
{
    private static readonly string[] s_pictures = ["faint", "c0", "c1", "c2", "c3", "c4", "c5", "c6"];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Text_and_pictures_stand_out_in_light_and_dark(int scheme)
    {
        Dictionary<string, string> colours = Scheme(scheme);
        foreach (string ground in new[] { "paper", "panel" })
            foreach (string text in new[] { "ink", "soft", "fault", "caution", "good" })
                Assert.True(
                    Contrast(colours[text], colours[ground]) >= 4.5,
                    $"{text} on {ground}: {Contrast(colours[text], colours[ground])}"
                );
        Assert.All(
            s_pictures,
            c =>
                Assert.True(
                    Contrast(colours[c], colours["paper"]) >= 3,
                    $"{c}: {Contrast(colours[c], colours["paper"])}"
                )
        );
    }

    // WCAG 2.2, definition of relative luminance: black on white is 21, #777777 on white is 4.48.
    [Fact]
    public void Contrast_is_that_of_the_definition()
    {
        Assert.Equal(21, Contrast("#000000", "#ffffff"), 1e-9);
        Assert.Equal(4.48, Contrast("#777777", "#ffffff"), 0.005);
    }

    private static Dictionary<string, string> Scheme(int index) =>
        Variable()
            .Matches(Root().Matches(StyleSheet.OfPages)[index].Value)
            .ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value);

    private static double Contrast(string a, string b)
    {
        double[] lights = [.. new[] { Luminance(a), Luminance(b) }.Order()];
        return (lights[1] + 0.05) / (lights[0] + 0.05);
    }

    private static double Luminance(string colour)
    {
        double[] parts =
        [
            .. new[] { 1, 3, 5 }
                .Select(i =>
                    int.Parse(colour.AsSpan(i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0
                )
                .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4)),
        ];
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
    }

    [GeneratedRegex(@":root \{[^}]*\}")]
    private static partial Regex Root();

    [GeneratedRegex(@"--(\w+): (#[0-9a-f]{6});")]
    private static partial Regex Variable();
}
