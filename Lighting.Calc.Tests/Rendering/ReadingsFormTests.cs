using System.Text.Json;
using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>The sheet of readings filled in on its page: what the button saves is a list that <c>faults</c>
/// reads.</summary>
public partial class ReadingsFormTests
{
    private const string Bike = "shared/bikes/valley-twin";

    // Fills fields in as a person does, presses the button and takes what would be saved.
    private const string Fill = """
        const inner = document.querySelector('iframe').contentDocument, window_ = inner.defaultView;
        const saved = [];
        window_.HTMLAnchorElement.prototype.click = function () {
          saved.push(this.download, decodeURIComponent(this.href.split(',').slice(1).join(',')));
        };
        const all = [...inner.querySelectorAll('[data-point]')].filter(f => !f.dataset.jumper);
        const field = (tool, point) => all.find(f => f.dataset.instrument === tool && f.dataset.point === point);
        const say = (f, text) => { f.value = text; f.dispatchEvent(new window_.Event('input', { bubbles: true })); };
        say(field('visual', 'tail lamp'), 'dark');
        say(field('meter', 'tail feed'), '12,1');
        say(field('meter', 'stop feed'), 'off');
        say(field('ohmmeter', 'rear earth'), 'OL');
        inner.getElementById(field('meter', 'fuse out').id + 'e').click();
        inner.getElementById('save').click();
        const sizes = [...inner.querySelectorAll('.fill')].map(f => f.getBoundingClientRect().height);
        const result = document.createElement('pre');
        result.id = 'result';
        const taken = inner.getElementById('taken').textContent;
        result.textContent = JSON.stringify({ name: saved[0], list: saved[1], taken, least: Math.min(...sizes) });
        document.body.append(result);
        """;

    [Fact]
    [Trait("time", "long")]
    public async Task What_is_filled_in_is_saved_as_a_list_that_faults_reads()
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string page = await Pages.Text("readings", Path.Combine(CliProcess.Root, Bike), "--format", "html");
        string file = folder.Write("frame.html", Pages.Framed(page, Fill, (390, 800)));
        (string output, string[] console) = Browser.Open(folder, file, "--window-size=400,900", "--dump-dom");
        Assert.Empty(console);
        JsonElement result = JsonDocument
            .Parse(System.Net.WebUtility.HtmlDecode(Result().Match(output).Groups[1].Value))
            .RootElement;
        Assert.Equal("readings.csv", result.GetProperty("name").GetString());
        Assert.StartsWith("5 of ", result.GetProperty("taken").GetString(), StringComparison.Ordinal);
        // A finger needs 44 px or so.
        Assert.True(result.GetProperty("least").GetDouble() >= 44);
        string list = result.GetProperty("list").GetString()!;
        Assert.Contains(",tail feed,meter,12.1,,", list, StringComparison.Ordinal);
        Assert.Contains(",stop feed,test lamp,off,,", list, StringComparison.Ordinal);
        Assert.Contains(",rear earth,ohmmeter,OL,,", list, StringComparison.Ordinal);
        string readings = folder.Write("readings.csv", list);
        CliResult read = await InProcess.RunLine($"faults {Bike} {readings} --format json");
        Assert.Equal("", read.Errors);
        Assert.Equal(5, JsonDocument.Parse(read.Output).RootElement.GetProperty("readings").GetInt32());
    }

    [Fact]
    public async Task The_page_to_fill_in_runs_one_script_and_its_policy_allows_no_other()
    {
        string page = await Pages.Text("readings", Path.Combine(CliProcess.Root, Bike), "--format", "html");
        Assert.Single(Script().Matches(page));
        string script = Script().Match(page).Groups[1].Value;
        string hash = Convert.ToBase64String(
            System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(script))
        );
        Assert.Contains(
            $"default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-{hash}'",
            System.Net.WebUtility.HtmlDecode(page),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("http:", script, StringComparison.Ordinal);
        Assert.DoesNotContain("fetch", script, StringComparison.Ordinal);
    }

    [GeneratedRegex("<pre id=\"result\">(.*?)</pre>", RegexOptions.Singleline)]
    private static partial Regex Result();

    [GeneratedRegex("<script[^>]*>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
