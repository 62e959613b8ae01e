using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The fuse plan and the comparison as a user types them.</summary>
public class PlanCommandTests
{
    [Fact]
    public async Task A_fuse_plan_is_written_checked_and_cut()
    {
        using var folder = new TemporaryFolder();
        string planned = Path.Combine(folder.Path, "planned");
        CliResult plan = await InProcess.Run("fuse", CliProcess.Bike("valley-twin"), "--ways", "3", "--lists", planned);
        Assert.Equal(0, plan.ExitCode);
        Assert.StartsWith(
            "Fuse plan: Pinmoor Valley Post twin No. 14\n✔ 3 " + "ways: ",
            plan.Output,
            StringComparison.Ordinal
        );
        Assert.All(plan.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Equal(0, (await InProcess.Run("check", planned)).ExitCode);
        CliResult loom = await InProcess.Run("loom", planned, "--format", "csv");
        Assert.Contains("fuse box feed,ignition out,fuse box", loom.Output, StringComparison.Ordinal);
        Assert.Equal(
            2,
            (await InProcess.Run("fuse", CliProcess.Bike("valley-twin"), "--ways", "3", "--lists", planned)).ExitCode
        );
    }

    [Fact]
    public async Task A_plan_is_CSV_JSON_and_a_page()
    {
        string[] words = ["fuse", CliProcess.Bike("chapel-single"), "--ways", "needed", "--apart", "--format"];
        Assert.StartsWith(
            "fuse,main,ratingA,colour,continuousCurrentA,peakCurrentA,smallestWire,circuits,lamps",
            (await InProcess.Run([.. words, "csv"])).Output,
            StringComparison.Ordinal
        );
        using var json = JsonDocument.Parse((await InProcess.Run([.. words, "json"])).Output);
        Assert.NotEmpty(json.RootElement.GetProperty("fuses").EnumerateArray());
        Assert.NotEmpty(json.RootElement.GetProperty("movedEnds").EnumerateArray());
        Assert.Contains("<h1>Fuse plan", (await InProcess.Run([.. words, "html"])).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--ways none")]
    [InlineData("--ways 0")]
    [InlineData("--apart")]
    [InlineData("--lists x")]
    public async Task A_plan_needs_a_number_of_ways(string words)
    {
        CliResult result = await InProcess.Run(["fuse", CliProcess.Bike("valley-twin"), .. words.Split(' ')]);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("--ways", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_offers_the_plan_where_a_fuse_is_overloaded()
    {
        using var folder = new TemporaryFolder();
        string lamps = folder.Write(
            "lamps.csv",
            "circuit,lamp,volts,watts\nheadlamp,headlamp,12,100\nrear lamp,tail lamp,12,5\nspots,spot lamps,12,110\n"
        );
        CliResult result = await InProcess.Run("check", lamps, "--fuse", "15A");
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("(fuse BIKE --ways ", result.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        CliResult fine = await InProcess.Run("check", CliProcess.Bike("valley-twin"));
        Assert.DoesNotContain("--ways", fine.Output, StringComparison.Ordinal);
        CliResult bulbs = await InProcess.Run(
            "fuse",
            lamps,
            "--ways",
            "2",
            "--lists",
            Path.Combine(folder.Path, "new")
        );
        Assert.Equal(2, bulbs.ExitCode);
        Assert.Contains("runs.csv", bulbs.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bike_and_a_change_are_side_by_side()
    {
        CliResult result = await InProcess.Run(
            "compare",
            CliProcess.Bike("valley-twin"),
            "--lamp",
            "headlamp high=60 W",
            "--wire",
            "main feed=1 mm2",
            "--fuse",
            "20A",
            "--format",
            "json"
        );
        Assert.Equal("", result.Errors);
        using var json = JsonDocument.Parse(result.Output);
        JsonElement root = json.RootElement;
        Assert.Equal(
            "headlamp high=60 W, main feed=1 mm2, " + "20A",
            root.GetProperty("bike").GetProperty("after").GetString()
        );
        JsonElement high = root.GetProperty("lamps")
            .EnumerateArray()
            .Single(l => l.GetProperty("lamp").GetString() == "headlamp high");
        Assert.True(high.GetProperty("replaced").GetBoolean());
        Assert.Equal(20, root.GetProperty("fuses")[0].GetProperty("ratingA").GetDouble());
        Assert.Contains(
            root.GetProperty("findingsGained").EnumerateArray(),
            f => f.GetProperty("kind").GetString() == "wires-rated-below-fuse"
        );
        Assert.Equal(1, result.ExitCode);
    }

    [Fact]
    public async Task Two_bikes_are_compared_lamp_by_lamp_in_every_format()
    {
        string twin = CliProcess.Bike("valley-twin"),
            single = CliProcess.Bike("chapel-single");
        CliResult text = await InProcess.Run("compare", twin, single);
        Assert.Contains("Findings gained", text.Output, StringComparison.Ordinal);
        Assert.All(text.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        string[] rows = (await InProcess.Run("compare", twin, single, "--format", "csv"))
            .Output.TrimEnd()
            .Split("\r\n");
        Assert.StartsWith(
            "lamp,circuit,quantity,replaced,setting,voltageBeforeV,voltageAfterV",
            rows[0],
            StringComparison.Ordinal
        );
        // Ten and seven lamps, of which five have the same name.
        Assert.Equal(1 + 12, rows.Length);
        Assert.Contains(
            "</html>",
            (await InProcess.Run("compare", twin, single, "--format", "html")).Output,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("give a second bike")]
    [InlineData("not both", "BIKE", "--fuse", "10A")]
    [InlineData("has no lamp 'headlmp'", "--lamp", "headlmp=60 W")]
    [InlineData("has no run 'feed'", "--wire", "feed=1 mm2")]
    [InlineData("expected NAME=VALUE", "--wire", "main feed")]
    [InlineData("neither watts", "--lamp", "tail lamp=bright")]
    [InlineData("--wire 'main feed=thick'", "--wire", "main feed=thick")]
    [InlineData("there is no fuse 'other'; the fuses are main", "--fuse", "other=10A")]
    public async Task What_cannot_be_compared_is_said(string expected, params string[] words)
    {
        CliResult result = await InProcess.Run([
            "compare",
            CliProcess.Bike("valley-twin"),
            .. words.Select(w => w == "BIKE" ? CliProcess.Bike("chapel-single") : w),
        ]);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(expected, result.Errors, StringComparison.Ordinal);
    }
}
