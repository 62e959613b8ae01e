using System.Text.Json;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>Pages against the rules of WCAG 2.2, levels A and AA, that an engine can decide.</summary>
[Trait("time", "long")]
public partial class AccessibilityTests
{
    // Browsers make what scrolls a tab stop by themselves, on the screens on which it does: no page need say so.
    private const string OfItself = "{ 'scrollable-region-focusable': { enabled: false } }";

    [Theory]
    [InlineData("check valley-twin", 1280)]
    [InlineData("check valley-twin", 500)]
    [InlineData("check three-phase", 1280)]
    [InlineData("check three-phase", 500)]
    [InlineData("check hostile", 1280)]
    [InlineData("check valley-twin --tolerance --samples 200", 1280)]
    [InlineData("load valley-twin", 1280)]
    [InlineData("drop valley-twin", 1280)]
    [InlineData("charging valley-twin", 500)]
    [InlineData("compare valley-twin --fuse 10A", 1280)]
    [InlineData("readings chapel-single", 500)]
    [InlineData("faults fell-lightweight", 1280)]
    [InlineData("diagram valley-twin", 500)]
    [InlineData("loom valley-twin", 1280)]
    public async Task A_page_keeps_the_rules_of_wcag_2_2(string words, int width)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string[] parts = words.Split(' ');
        string path = PageBikes.PathOf(parts[1], folder);
        string page = await Pages.Text([parts[0], path, .. parts[2..], "--format", "html"]);
        JsonElement[] violations = Violations(folder, page, width);
        Assert.True(violations.Length == 0, string.Join('\n', violations.Select(v => v.GetRawText())));
    }

    [Fact]
    public void The_engine_sees_a_picture_without_words_and_text_without_contrast()
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        const string Bad =
            "<!DOCTYPE html><html><head><title>t</title></head><body><main><svg role='img' width='9' height='9'></svg>"
            + "<p style='color:#aaa;background:#fff'>pale</p></main></body></html>";
        string[] found = [.. Violations(folder, Bad, 1280).Select(v => v.GetProperty("id").GetString()!)];
        Assert.Equal(["color-contrast", "html-has-lang", "svg-img-alt"], found.Order(StringComparer.Ordinal));
    }

    private static JsonElement[] Violations(TemporaryFolder folder, string page, int width)
    {
        string engine = new BundledAxeScriptProvider().GetScript();
        Assert.DoesNotContain("</script", engine, StringComparison.OrdinalIgnoreCase);
        // The engine is a script, which the page itself would not let run.
        string run = $$"""
            <script>{{engine}}</script><script>
            addEventListener('load', () => axe.run(document, {
              runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
              rules: {{OfItself}}
            }).then(found => {
              const told = found.violations.map(v => (
                { id: v.id, help: v.help, nodes: v.nodes.slice(0, 3).map(n => n.html.slice(0, 200)) }));
              document.body.textContent = '';
              const result = document.createElement('pre');
              result.id = 'result';
              result.textContent = JSON.stringify(told);
              document.body.append(result);
            }));
            </script></body>
            """;
        string file = folder.Write(
            "axe.html",
            Policy().Replace(page, "").Replace("</body>", run, StringComparison.Ordinal)
        );
        (string output, _) = Browser.Open(
            folder,
            file,
            $"--window-size={width},2000",
            "--virtual-time-budget=120000",
            "--dump-dom"
        );
        Match result = Result().Match(output);
        Assert.True(result.Success, output[..Math.Min(output.Length, 2000)]);
        using var told = JsonDocument.Parse(System.Net.WebUtility.HtmlDecode(result.Groups[1].Value));
        return [.. told.RootElement.Clone().EnumerateArray()];
    }

    [GeneratedRegex("<meta http-equiv=\"Content-Security-Policy\"[^>]*>")]
    private static partial Regex Policy();

    [GeneratedRegex("<pre id=\"result\">(.*?)</pre>", RegexOptions.Singleline)]
    private static partial Regex Result();
}
