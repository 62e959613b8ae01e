// Writes invented network bikes of about 40 points, each a folder of lists, to check many of them at once:
// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- bikes FOLDER [COUNT [SEED [apart]]]
using System.Globalization;
using System.Text;

namespace Lighting.Calc.Benchmarks;

/// <param name="seed">The same bikes from the same seed.</param>
/// <param name="isApart">Whether every bike is wired its own way, by one more earth; else there are two
/// wirings.</param>
internal sealed class BikeGenerator(int seed, bool isApart = false)
{
    private static readonly string[] s_earths =
    [
        "headlamp return",
        "panel return",
        "front indicator return",
        "rear return",
        "frame",
    ];

    private static readonly string[] s_sizes = ["1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2"];
    private readonly Random _random = new(seed);

    public void Write(string folder, int count)
    {
        for (int i = 1; i <= count; i++)
        {
            string bike = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"bike-{i:00000}"));
            Directory.CreateDirectory(bike);
            foreach ((string name, string text) in Lists(i))
                File.WriteAllText(Path.Combine(bike, name), text);
        }
    }

    /// <summary>The lists of the next bike.</summary>
    public IEnumerable<(string Name, string Text)> Lists(int number)
    {
        bool horn = _random.Next(2) == 0,
            led = _random.Next(5) == 0;
        string charging = Number(13.2, 14.4, 1);
        yield return (
            "bike.csv",
            Lines(
                "item,value",
                $"name,Pinmoor Valley Post mail bike No. {number}",
                "system voltage,12 V",
                $"battery voltage,{Number(12.4, 12.8, 2)} V",
                $"charging voltage,{charging} V",
                $"battery capacity,{_random.Next(8, 21)} Ah",
                $"battery resistance,{_random.Next(8, 18)} mohm",
                "wire temperature,40 °C",
                "earth,negative",
                $"allowed drop,{_random.Next(6, 10)} %"
            )
        );
        yield return ("lamps.csv", Lamps(horn, led));
        yield return ("runs.csv", isApart ? Runs(horn) + FurtherEarth(number) : Runs(horn));
        yield return ("switches.csv", Switches(horn));
        yield return (
            "fuses.csv",
            Lines(
                "fuse,from,to,rating,style,resistance",
                $"main,fuse in,fuse out,{(_random.Next(12) == 0 ? 20 : 15)} "
                    + $"A,{(_random.Next(4) == 0 ? "glass" : "blade")},"
            )
        );
        double most = Between(10, 16, 1);
        yield return (
            "charging.csv",
            Lines([
                "rpm,current,when",
                .. new[] { 1000, 1500, 2000, 3000, 4000, 5000, 6000 }.Select(n =>
                    $"{n},{Text(Math.Round(most * (1 - Math.Exp(-(n - 700) / 1400.0)), 2))} A,"
                ),
            ])
        );
        yield return (
            "ride.csv",
            Lines(
                "stretch,rpm,minutes,when",
                $"warming up at the depot,1200,{_random.Next(2, 6)},ignition=on",
                $"village streets,{_random.Next(20, 30) * 100},{_random.Next(10, 30)},ignition=on; lights=main; "
                    + $"dip=low",
                $"waiting at gates,1100,{_random.Next(4, 12)},ignition=on; lights=main; dip=low; brake=on",
                $"valley road,{_random.Next(35, 50) * 100},{_random.Next(15, 50)},ignition=on; lights=main; dip=high"
            )
        );
    }

    private string Lamps(bool horn, bool led)
    {
        string head = _random.Next(2) == 0 ? "R2" : "H4";
        string panel = led ? ",led resistor,1,13.5,0.5,,," : "12V2W,,1,,,,,",
            turn = _random.Next(4) > 0 ? "R10W" : "P21W";
        string tail = led ? ",led,1,13.5,0.8,,7," : "P21/5W minor,,1,,,,,",
            stop = led ? ",led,1,13.5,3,,7," : "P21/5W major,,1,,,,,";
        string[] lamps =
        [
            "circuit,lamp,code,type,quantity,volts,watts,amps,minimum volts,lit when,duty,feed,return",
            $"headlamp,headlamp low,{head} low,,1,,,,,ignition=on; lights=main; dip=low,1,headlamp low feed,headlamp "
                + $"return",
            $"headlamp,headlamp high,{head} high,,1,,,,,ignition=on; lights=main; dip=high,1,headlamp high "
                + $"feed,headlamp return",
            "headlamp,pilot lamp,T4W,,1,,,,,ignition=on; lights=park|main,1,pilot feed,headlamp return",
            $"instruments,high-beam indicator,{panel}ignition=on; lights=main; dip=high,1,headlamp high feed,panel "
                + $"return",
            $"instruments,speedometer lamp,{panel}ignition=on; lights=park|main,1,panel feed,panel return",
            $"instruments,rev counter lamp,{panel}ignition=on; lights=park|main,1,panel feed,panel return",
            $"instruments,ignition lamp,{panel}ignition=on,0.2,warning feed,panel return",
            $"rear lamp,tail lamp,{tail}ignition=on; lights=park|main,1,tail feed,rear return",
            $"rear lamp,stop lamp,{stop}ignition=on; brake=on,0.1,stop feed,rear return",
            $"indicators,left front indicator,{turn},,1,,,,,ignition=on; indicators=left,0.05,left front feed,front "
                + $"indicator return",
            $"indicators,left rear indicator,{turn},,1,,,,,ignition=on; indicators=left,0.05,left rear feed,rear "
                + $"return",
            $"indicators,right front indicator,{turn},,1,,,,,ignition=on; indicators=right,0.05,right front feed,front "
                + $"indicator return",
            $"indicators,right rear indicator,{turn},,1,,,,,ignition=on; indicators=right,0.05,right rear feed,rear "
                + $"return",
            $"ignition,ignition coils,,fixed,1,12,,{Number(1.5, 3, 1)},,ignition=on,1,coil feed,frame",
            .. horn
                ? [$"horn,horn,,fixed,1,12,,{Number(2, 3.5, 1)},,ignition=on; horn=pressed,0.01,horn feed,frame"]
                : Array.Empty<string>(),
        ];
        return Lines(lamps);
    }

    private string Runs(bool horn)
    {
        string[] runs =
        [
            "run,from,to,wire,length,joints,joint resistance,bundle",
            Run("battery lead", "battery +", "fuse in", 3, 0.2, 1),
            Run("main feed", "fuse out", "ignition in", 3, 1, 2),
            Run("lights feed", "ignition out", "lights in", 2, 0.3, 2),
            Run("coil wire", "ignition out", "coil feed", 1, 0.7, 2),
            Run("dip feed", "main beam line", "dip in", 2, 0.4, 2),
            Run("low beam wire", "low line", "headlamp low feed", 2, 0.5, 2),
            Run("high beam wire", "high line", "headlamp high feed", 2, 0.5, 2),
            Run("pilot wire", "park line", "pilot feed", 1, 0.5, 2),
            Run("panel wire", "park line", "panel feed", 1, 0.4, 2),
            Run("warning wire", "ignition out", "warning feed", 1, 0.5, 2),
            Run("tail wire front", "park line", "tail connector", 1, 0.8, 2),
            Run("tail wire rear", "tail connector", "tail feed", 1, 0.8, 2),
            Run("brake feed", "ignition out", "brake in", 1, 0.6, 2),
            Run("stop wire", "brake out", "stop feed", 1, 0.9, 2),
            Run("flasher feed", "ignition out", "indicator in", 1, 0.5, 2),
            Run("left front wire", "left line", "left front feed", 1, 0.6, 2),
            Run("left rear wire", "left line", "left rear feed", 1, 1.5, 2),
            Run("right front wire", "right line", "right front feed", 1, 0.6, 2),
            Run("right rear wire", "right line", "right rear feed", 1, 1.5, 2),
            .. horn
                ?
                [
                    Run("horn wire", "ignition out", "horn in", 1, 0.5, 2),
                    Run("horn lead", "horn out", "horn feed", 1, 0.4, 1),
                ]
                : Array.Empty<string>(),
            Run("headlamp earth", "headlamp return", "frame", 2, 0.4, 1),
            Run("headlamp second earth", "headlamp return", "panel return", 1, 0.3, 1),
            Run("panel earth", "panel return", "frame", 1, 0.4, 1),
            Run("front indicator earth", "front indicator return", "frame", 1, 0.5, 1),
            Run("rear earth", "rear return", "frame", 1, 0.6, 1),
            Run("frame strap", "frame", "battery -", 3, 0.3, 1),
        ];
        return Lines(runs);
    }

    private string FurtherEarth(int number)
    {
        int from = _random.Next(s_earths.Length),
            to = (from + _random.Next(1, s_earths.Length)) % s_earths.Length;
        return Lines(Run($"further earth {number}", s_earths[from], s_earths[to], 1, 0.5, 1));
    }

    private string Switches(bool horn)
    {
        string[] contacts =
        [
            "switch,from,to,closed in,resistance",
            Contact("ignition,ignition in,ignition out,on"),
            Contact("lights,lights in,park line,park|main"),
            Contact("lights,lights in,main beam line,main"),
            Contact("dip,dip in,low line,low"),
            Contact("dip,dip in,high line,high"),
            Contact("brake,brake in,brake out,on"),
            Contact("indicators,indicator in,left line,left"),
            Contact("indicators,indicator in,right line,right"),
            .. horn ? [Contact("horn,horn in,horn out,pressed")] : Array.Empty<string>(),
        ];
        return Lines(contacts);
    }

    // Most wires are as thick as they should be, some a size thinner.
    private string Run(string name, string from, string to, int size, double metres, int bundle) =>
        $"{name},{from},{to},{s_sizes[Math.Max(0, size - (_random.Next(100) == 0 ? 1 : 0))]}"
        + $",{Number(0.8 * metres, 1.3 * metres, 2)} m,{_random.Next(1, 3)},{_random.Next(1, 5)} mohm,{bundle}";

    private string Contact(string text) => $"{text},{_random.Next(3, 12)} mohm";

    private string Number(double lowest, double highest, int decimals) => Text(Between(lowest, highest, decimals));

    private double Between(double lowest, double highest, int decimals) =>
        Math.Round(lowest + _random.NextDouble() * (highest - lowest), decimals);

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Lines(params string[] lines)
    {
        var text = new StringBuilder();
        foreach (string line in lines)
            text.Append(line).Append('\n');
        return text.ToString();
    }
}
