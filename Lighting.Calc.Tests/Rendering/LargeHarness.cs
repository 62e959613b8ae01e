using System.Globalization;
using System.Text;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>Harnesses grown at random from a seed: branching feeds with switches and fuses, shared returns, loops and
/// dead ends, unlike lengths of name.</summary>
internal static class LargeHarness
{
    private static readonly string[] s_words =
    [
        "rear",
        "front",
        "feed",
        "parcel box",
        "instrument",
        "left",
        "auxiliary",
        "line",
        "sidecar",
        "socket",
        "switch in",
        "warning",
    ];
    private static readonly string[] s_types = ["filament", "halogen", "led", "led resistor", "fixed", "resistor"];

    /// <summary>A bike of about a number of points.</summary>
    public static Bike Of(int seed, int points)
    {
        using var folder = new TemporaryFolder();
        Write(folder, seed, points);
        ListResult<BikeLists> lists = BikeLists.Read(folder.Path);
        Assert.True(lists.TryGetValue(out BikeLists? read), string.Join('\n', lists.Faults.Select(f => f.Message)));
        return read.Bike;
    }

    /// <summary>Writes its lists.</summary>
    public static void Write(TemporaryFolder folder, int seed, int points)
    {
        var random = new Random(seed);
        var runs = new StringBuilder(
            "run,from,to,wire,length\nbattery lead,battery +,feed 0,4 mm2,0.2 m\nstrap,frame,battery -,4 mm2,0.2 m\n"
        );
        var switches = new StringBuilder("switch,from,to,closed in\n");
        var fuses = new StringBuilder("fuse,from,to,rating\n");
        var lamps = new StringBuilder("circuit,lamp,type,quantity,volts,watts,amps,minimum volts,feed,return\n");
        var feeds = new List<string> { "feed 0" };
        var returns = new List<string> { "frame" };
        int count = 4;
        for (int i = 1; count < points; i++)
        {
            // Trunks first, branches later, so that the ways are of many lengths.
            string from = feeds[random.Next(Math.Max(0, feeds.Count - 6), feeds.Count)],
                name = Named(i);
            feeds.Add(name);
            count++;
            switch (random.Next(4))
            {
                case 0 when switches.Length < 250:
                    switches.Append(CultureInfo.InvariantCulture, $"switch {i % 4},{from},{name},on\n");
                    break;
                case 1 when fuses.Length < 200:
                    fuses.Append(CultureInfo.InvariantCulture, $"fuse {i},{from},{name},10 A\n");
                    break;
                default:
                    runs.Append(CultureInfo.InvariantCulture, $"wire {name},{from},{name},1.5 mm2,0.5 m\n");
                    break;
            }

            if (random.Next(3) == 0)
            {
                string back = $"return {i}";
                runs.Append(
                    CultureInfo.InvariantCulture,
                    $"earth wire {i},{back},{returns[random.Next(returns.Count)]},1.5 mm2,0.4 m\n"
                );
                returns.Add(back);
                count++;
            }

            if (random.Next(3) > 0)
                Lamp(i, name);
        }

        // Loops on both sides, and lamps on points that have several.
        for (int i = 0; i < 3; i++)
        {
            runs.Append(CultureInfo.InvariantCulture, $"second feed {i},{feeds[i]},{feeds[^(i + 1)]},1.5 mm2,0.5 m\n");
            if (returns.Count > i + 2)
                runs.Append(
                    CultureInfo.InvariantCulture,
                    $"second earth {i},{returns[i]},{returns[^(i + 1)]},1.5 mm2,0.5 m\n"
                );
            Lamp(1000 + i, feeds[^1]);
        }

        folder.Write("bike.csv", "item,value\nname,Pinmoor Valley Post pattern harness\nsystem voltage,12 V\n");
        folder.Write("runs.csv", runs.ToString());
        folder.Write("lamps.csv", lamps.ToString());
        folder.Write("fuses.csv", fuses.ToString());
        folder.Write("switches.csv", switches.ToString());

        string Named(int i) => $"{s_words[random.Next(s_words.Length)]} {s_words[random.Next(s_words.Length)]} {i}";

        void Lamp(int i, string feed)
        {
            string type = s_types[random.Next(s_types.Length)];
            string cells = type switch
            {
                "fixed" => "12,,0.8,",
                "led" => "12,6,,8",
                "led resistor" => "12,2,,3",
                _ => "12,10,,",
            };
            lamps.Append(
                CultureInfo.InvariantCulture,
                $"circuit {i % 5},{Named(i)} "
                    + $"lamp,{type},{1 + i % 2},{cells},{feed},{returns[random.Next(returns.Count)]}\n"
            );
        }
    }
}
