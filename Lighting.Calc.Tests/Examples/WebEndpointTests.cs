using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;
using Lighting.Calc.Tests.Lists;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace Lighting.Calc.Tests.Examples;

/// <summary>The manual's web endpoint, called over the wire.</summary>
public sealed partial class WebEndpointTests : IAsyncLifetime
{
    private readonly WebApplication _app = WebEndpoint.Build(["--urls", "http://127.0.0.1:0"]);
    private readonly HttpClient _client = new();

    public async ValueTask InitializeAsync()
    {
        await _app.StartAsync();
        _client.BaseAddress = new Uri(
            _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()
        );
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _app.DisposeAsync();
    }

    [Fact]
    public async Task Uploaded_lists_give_the_verdict()
    {
        using var form = new MultipartFormDataContent();
        foreach (
            string file in Directory.GetFiles(Path.Combine(CliProcess.Root, "shared", "bikes", "valley-twin"), "*.csv")
        )
            form.Add(new ByteArrayContent(await File.ReadAllBytesAsync(file, Stop)), "lists", Path.GetFileName(file));
        (HttpStatusCode status, JsonElement answer) = await Post(form);
        CliResult command = await InProcess.Run(
            "check",
            Path.Combine(CliProcess.Root, "shared", "bikes", "valley-twin"),
            "--format",
            "json"
        );
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(JsonDocument.Parse(command.Output).RootElement.GetRawText(), answer.GetRawText());
    }

    [Fact]
    public async Task JSON_lists_give_the_verdict()
    {
        (HttpStatusCode status, JsonElement answer) = await Post(
            Json(BikeListsWriter.WriteJson(BikeLists.Read(ListSamples.Whole).Value))
        );
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains(answer.GetProperty("verdict").GetString(), new[] { "suits", "does not suit", "not judged" });
    }

    [Fact]
    public async Task Faults_come_back_with_their_places()
    {
        (HttpStatusCode status, JsonElement answer) = await Post(
            Json("""{"lamps": [{"circuit": "a", "lamp": "b", "code": "P12W"}]}""")
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal(
            ("lamps", 1),
            (answer[0].GetProperty("file").GetString(), answer[0].GetProperty("row").GetInt32())
        );
        Assert.Contains("column 'code'", answer[0].GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_manual_shows_the_endpoint_in_forty_lines()
    {
        string manual = File.ReadAllText(Path.Combine(CliProcess.Root, "Lighting.Calc", "MANUAL.md"));
        string source = File.ReadAllText(
            Path.Combine(CliProcess.Root, "Lighting.Calc.Tests", "Examples", "WebEndpoint.cs")
        );
        string[] shown = Block().Match(manual).Groups[1].Value.TrimEnd().Split('\n');
        string[] run =
        [
            .. Region().Match(source).Groups[1].Value.TrimEnd().Split('\n').Select(l => l.Length > 8 ? l[8..] : ""),
        ];
        Assert.Equal(["using Lighting.Calc;", "", .. run, "app.Run();"], shown);
        Assert.InRange(shown.Length, 20, 40);
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static StringContent Json(string text) =>
        new(text, Encoding.UTF8, MediaTypeHeaderValue.Parse("application/json"));

    private async Task<(HttpStatusCode Status, JsonElement Answer)> Post(HttpContent content)
    {
        using HttpResponseMessage response = await _client.PostAsync(
            new Uri("/check", UriKind.Relative),
            content,
            Stop
        );
        return (response.StatusCode, JsonDocument.Parse(await response.Content.ReadAsStringAsync(Stop)).RootElement);
    }

    [GeneratedRegex(@"^```cs\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();

    [GeneratedRegex(@"#region endpoint\n(.*?)\n\s*#endregion", RegexOptions.Singleline)]
    private static partial Regex Region();
}
