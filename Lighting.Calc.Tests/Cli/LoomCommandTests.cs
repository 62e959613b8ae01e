using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The command <c>loom</c>, and <c>wire</c> writing lists, as a user types them.</summary>
public class LoomCommandTests
{
    private const string Lamps =
        "circuit,lamp,code,lit when,feed,return\nrear,tail lamp,R5W,lights=on,tail " + "feed,frame\n";
    private const string Switches = "switch,from,to,closed in\nlights,fuse out,tail line,on\n";
    private const string FuseList = "fuse,from,to,rating\nmain,fuse in,fuse out,10\n";

    private const string Runs =
        "run,from,to,wire,length,colour,from end,to end\nbattery lead,battery +,fuse in,,0.2,RD,,\n"
        + "tail wire,tail line,tail feed,,1.5,,bullet,bullet\nearth,frame,battery -,2 mm2,0.3,,,\n";

    [Fact]
    public async Task The_cut_list_is_text_CSV_JSON_and_a_page_with_labels()
    {
        string text = (await InProcess.Run("loom", CliProcess.Bike("valley-twin"))).Output;
        Assert.StartsWith("Cut list: Pinmoor Valley Post twin No. 14\n18 wires, ", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
        string[] rows = (await InProcess.Run("loom", CliProcess.Bike("valley-twin"), "--format", "csv")).Output.Split(
            "\r\n"
        );
        Assert.Equal("number,label,run,from,to,colour,wire,cable,lengthM,cutM,fromEnd,toEnd,endsAssumed", rows[0]);
        Assert.Equal("2,MF,main feed,fuse out,ignition in,,4 mm2,,1.1,1.21,blade,blade,both", rows[2]);
        using var json = JsonDocument.Parse(
            (await InProcess.Run("loom", CliProcess.Bike("valley-twin"), "--format", "json")).Output
        );
        Assert.Equal(18, json.RootElement.GetProperty("wires").GetArrayLength());
        Assert.Equal(
            json.RootElement.GetProperty("wires").EnumerateArray().Sum(w => w.GetProperty("cutM").GetDouble()),
            json.RootElement.GetProperty("totals").EnumerateArray().Sum(w => w.GetProperty("cutM").GetDouble()),
            9
        );
        string page = (await InProcess.Run("loom", CliProcess.Bike("valley-twin"), "--format", "html")).Output;
        Assert.Equal(37, page.Split("<li><strong>").Length);
    }

    [Fact]
    public async Task Prices_come_from_the_folder_or_an_option_and_slack_is_a_share_or_a_length()
    {
        using var folder = new TemporaryFolder();
        string bike = Write(
            folder,
            Runs.Replace(",,0.2", ",2 mm2,0.2", StringComparison.Ordinal)
                .Replace(",,1.5", ",1 mm2,1.5", StringComparison.Ordinal)
        );
        folder.Write("prices.csv", "item,price\n2 mm2,2\n1 mm2,1\nring,0.2\nblade,0.1\nbullet,0.1\n");
        CliResult result = await InProcess.Run(
            "loom",
            bike,
            "--slack",
            "0%",
            "--slack",
            "4cm",
            "--spare",
            "0%",
            "--format",
            "json"
        );
        Assert.Equal("", result.Errors);
        using var json = JsonDocument.Parse(result.Output);
        // 0.24 + 0.34 m at 2, 1.54 m at 1; rings at battery, frame and battery, one blade, two bullets.
        Assert.Equal(1.16 + 1.54 + 0.6 + 0.1 + 0.2, json.RootElement.GetProperty("cost").GetDouble(), 9);
        string other = folder.Write("other.txt", "item,price\n2 mm2,0\n");
        using var less = JsonDocument.Parse(
            (await InProcess.Run("loom", bike, "--prices", other, "--format", "json")).Output
        );
        Assert.Equal(0, less.RootElement.GetProperty("cost").GetDouble());
        Assert.NotEmpty(less.RootElement.GetProperty("notPriced").EnumerateArray());
        Assert.Equal(2, (await InProcess.Run("loom", bike, "--slack", "some")).ExitCode);
        folder.Write("prices.csv", "item,price\n2 mm2,1.5 pounds\n");
        Assert.Contains(
            "prices.csv:2: column 'price' (2): '1.5 pounds' is not a " + "price",
            (await InProcess.Run("loom", bike)).Errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Wire_fills_in_blank_sizes_and_every_other_command_names_it()
    {
        using var folder = new TemporaryFolder();
        string bike = Write(folder, Runs),
            sized = Path.Combine(folder.Path, "sized");
        foreach (string command in new[] { "check", "loom", "drop", "fuse" })
        {
            CliResult refused = await InProcess.Run(command, bike);
            Assert.Equal(2, refused.ExitCode);
            Assert.Single(refused.Errors.TrimEnd().Split('\n'));
            Assert.Contains("'wire BIKE --lists FOLDER'", refused.Errors, StringComparison.Ordinal);
        }

        CliResult result = await InProcess.Run("wire", bike, "--lists", sized, "--stock", "1 mm2, 2.5mm2");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Sizes for 2 runs with a blank wire cell.", result.Output, StringComparison.Ordinal);
        string[] runs = File.ReadAllLines(Path.Combine(sized, "runs.csv"));
        Assert.StartsWith("battery lead,battery +,fuse in,2.5 mm2,0.2,", runs[1], StringComparison.Ordinal);
        Assert.EndsWith(",bullet,bullet", runs[2], StringComparison.Ordinal);
        Assert.StartsWith("earth,frame,battery -,2 mm2,", runs[3], StringComparison.Ordinal);
        Assert.Equal(0, (await InProcess.Run("check", sized)).ExitCode);
        Assert.Empty(Directory.GetFiles(sized, "*.tmp"));
    }

    [Fact]
    public async Task Lists_are_never_written_over_and_without_sizes_nothing_is_written()
    {
        using var folder = new TemporaryFolder();
        string bike = Write(folder, Runs),
            none = Path.Combine(folder.Path, "none");
        string before = File.ReadAllText(Path.Combine(bike, "runs.csv"));
        CliResult over = await InProcess.Run("wire", bike, "--lists", bike);
        Assert.Equal(2, over.ExitCode);
        Assert.Contains("no list is written over", over.Errors, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Path.Combine(bike, "runs.csv")));
        CliResult small = await InProcess.Run("wire", bike, "--lists", none, "--stock", "0.35 mm2");
        Assert.Equal(1, small.ExitCode);
        Assert.Contains("nothing was written", small.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(none));
        Assert.Equal(2, (await InProcess.Run("wire", bike, "--sizes", "0")).ExitCode);
    }

    private static string Write(TemporaryFolder folder, string runs)
    {
        foreach (
            (string name, string text) in new[]
            {
                ("lamps.csv", Lamps),
                ("switches.csv", Switches),
                ("fuses.csv", FuseList),
                ("runs.csv", runs),
            }
        )
            folder.Write(name, text);
        return folder.Path;
    }
}
