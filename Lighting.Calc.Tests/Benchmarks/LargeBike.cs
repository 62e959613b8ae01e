// Writes the lists of one invented bike of very many points, a lamp for every two of them and three loops for every
// forty:
// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- large FOLDER [POINTS [SEED]]
using System.Globalization;

namespace Lighting.Calc.Benchmarks;

internal static class LargeBike
{
    // Feed and earth run side by side through all places; each place has its lamp between them.
    private static readonly string[] s_lines = ["main line", "park line", "brake line", "left line", "right line"];

    private static readonly string[] s_conditions =
    [
        "ignition=on; lights=main",
        "ignition=on; lights=park|main",
        "ignition=on; brake=on",
        "ignition=on; indicators=left",
        "ignition=on; indicators=right",
    ];

    public static void Write(string folder, int points, int seed)
    {
        Directory.CreateDirectory(folder);
        foreach ((string name, string[] lines) in Lists(points, seed))
            File.WriteAllLines(Path.Combine(folder, name), lines);
    }

    private static IEnumerable<(string Name, string[] Lines)> Lists(int points, int seed)
    {
        var random = new Random(seed);
        List<string> lamps = ["circuit,lamp,code,type,quantity,volts,watts,lit when,duty,feed,return"],
            runs = ["run,from,to,wire,length,joints,joint resistance,bundle"];
        runs.Add("battery lead,battery +,fuse in,6 mm2,0.2 m,1,0.2 mohm,1");
        runs.Add("main feed,fuse out,ignition in,6 mm2,0.3 m,1,0.2 mohm,1");
        runs.Add("lights feed,ignition out,lights in,6 mm2,0.3 m,1,0.2 mohm,1");
        runs.Add("brake feed,ignition out,brake in,6 mm2,0.3 m,1,0.2 mohm,1");
        runs.Add("indicator feed,ignition out,indicator in,6 mm2,0.3 m,1,0.2 mohm,1");
        // Twelve points are those of the battery, the fuse and the switches.
        int places = (points - 12) / 2;
        var parent = new int[places];
        var line = new int[places];
        var lampsOf = new int[s_lines.Length];
        for (int p = 0; p < places; p++)
        {
            parent[p] = p < s_lines.Length ? -1 : random.Next(Math.Max(0, p - 25), p);
            line[p] = parent[p] < 0 ? p : line[parent[p]];
            string before = parent[p] < 0 ? s_lines[p] : $"feed {parent[p]}",
                behind = parent[p] < 0 ? "battery -" : $"earth {parent[p]}";
            runs.Add(Run($"feed wire {p}", before, $"feed {p}"));
            runs.Add(Run($"earth wire {p}", $"earth {p}", behind));
            // Eight lamps are a circuit, as those of one cluster are.
            string circuit = $"cluster {lampsOf[line[p]]++ / 8} of {s_lines[line[p]]}";
            lamps.Add($"{circuit},lamp {p},{Lamp()},{s_conditions[line[p]]},1,feed {p},earth {p}");
        }

        for (int i = 0; i < points * 3 / 40; i++)
        {
            int p = random.Next(2 * s_lines.Length, places);
            int above = parent[p] < 0 || parent[parent[p]] < 0 ? p - 1 : parent[parent[p]];
            runs.Add(Run($"second earth {i}", $"earth {p}", $"earth {above}"));
        }

        yield return (
            "bike.csv",
            [
                "item,value",
                $"name,Pinmoor Valley Post show bike of {points} points",
                "system voltage,12 V",
                "battery voltage,12.6 V",
                "charging voltage,14 V",
                "battery capacity,30 Ah",
                "battery resistance,6 mohm",
                "earth,negative",
            ]
        );
        yield return ("lamps.csv", [.. lamps]);
        yield return ("runs.csv", [.. runs]);
        yield return (
            "switches.csv",
            [
                "switch,from,to,closed in,resistance",
                "ignition,ignition in,ignition out,on,2 mohm",
                "lights,lights in,main line,main,2 mohm",
                "lights,lights in,park line,park|main,2 mohm",
                "brake,brake in,brake line,on,2 mohm",
                "indicators,indicator in,left line,left,2 mohm",
                "indicators,indicator in,right line,right,2 mohm",
            ]
        );
        yield return (
            "fuses.csv",
            ["fuse,from,to,rating,style,resistance", "main,fuse in,fuse out,30 A,blade,"]
        );
        yield return (
            "charging.csv",
            ["rpm,current,when", "1000,3 A,", "1500,12 A,", "2000,20 A,", "3000,28 A,", "5000,32 A,"]
        );
        yield return (
            "ride.csv",
            [
                "stretch,rpm,minutes,when",
                "round the ring,2500,20,ignition=on; lights=park",
                "up the hill,3500,15,ignition=on; lights=main",
            ]
        );

        string Run(string name, string from, string to) =>
            $"{name},{from},{to},{(random.Next(4) == 0 ? "2.5" : "4")} mm2,"
            + $"{Text(0.02 + 0.06 * random.NextDouble())} m,1,"
            + $"{Text(0.1 + 0.2 * random.NextDouble())} mohm,1";

        string Lamp() =>
            random.Next(4) switch
            {
                0 => $",led,1,13.5,{Text(0.3 + 0.5 * random.NextDouble())}",
                1 => $",led resistor,1,13.5,{Text(0.3 + 0.5 * random.NextDouble())}",
                2 => $",filament,1,13.5,{Text(0.8 + 0.8 * random.NextDouble())}",
                _ => "12V2W,,1,,",
            };
    }

    private static string Text(double value) => value.ToString("F3", CultureInfo.InvariantCulture);
}
