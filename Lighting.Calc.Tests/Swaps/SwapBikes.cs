using System.Collections.Immutable;
using Lighting.Calc.Tests.Cli;
using UnitsNet;

namespace Lighting.Calc.Tests.Swaps;

/// <summary>Invented bikes of the Pinmoor Valley Post with indicators, as lists.</summary>
internal static class SwapBikes
{
    private const string BikeCsv = "item,value\nname,Pinmoor sidecar\ncharging voltage,14 V\nbattery capacity,10 Ah\n";

    /// <summary>Two 21 W lamps a side and one indicator lamp between the sides, straight on a fused switch.</summary>
    private const string LampsCsv = """
        circuit,lamp,code,quantity,lit when,duty,feed,return
        indicators,left lamps,P21W,2,turn=left,0.1,left line,frame
        indicators,right lamps,P21W,2,turn=right,0.1,right line,frame
        instruments,tell-tale,12V2W,1,turn=left|right,0.1,left line,right line

        """;

    private const string RunsCsv = """
        run,from,to,wire,length
        battery lead,battery +,fuse in,2.5 mm2,0.2
        feed,fuse out,turn in,1.5 mm2,0.5
        frame strap,frame,battery -,4 mm2,0.3

        """;

    private const string SwitchesCsv =
        "switch,from,to,closed in\nturn,turn in,left line,left\nturn,turn in,right line,right\n";

    private const string FusesCsv = "fuse,from,to,rating\nmain,fuse in,fuse out,10 A\n";

    public static Bike SharedTellTale(string more = "") =>
        Read(
            ("bike.csv", BikeCsv + more),
            ("lamps.csv", LampsCsv),
            ("runs.csv", RunsCsv),
            ("switches.csv", SwitchesCsv),
            ("fuses.csv", FusesCsv)
        );

    /// <summary>The same on positive earth: battery leads exchanged.</summary>
    public static Bike SharedTellTaleOnPositiveEarth() =>
        Read(
            ("bike.csv", BikeCsv + "earth,positive\n"),
            ("lamps.csv", LampsCsv),
            (
                "runs.csv",
                RunsCsv
                    .Replace("battery +", "battery x", StringComparison.Ordinal)
                    .Replace("battery -", "battery +", StringComparison.Ordinal)
                    .Replace("battery x", "battery -", StringComparison.Ordinal)
            ),
            ("switches.csv", SwitchesCsv),
            ("fuses.csv", FusesCsv)
        );

    public static Bike LampsOnly(string lamps, string bike = "") =>
        Read(("bike.csv", "item,value\n" + bike), ("lamps.csv", lamps));

    public static BikeLists Demo(string name) => BikeLists.Read(CliProcess.Bike(name)).Value;

    public static LampSpecification Led(double watts, double volts = 13.5, double minimumVolts = 9) =>
        LampSpecification.FromPower(
            LampType.Led,
            ElectricPotential.FromVolts(volts),
            Power.FromWatts(watts),
            ElectricPotential.FromVolts(minimumVolts)
        );

    public static LampSpecification Class(string code) =>
        LedClassTable.TryFind(code, out LampSpecification? lamp) ? lamp! : throw new ArgumentException(code);

    public static ImmutableArray<LampReplacement> Replace(params (string Lamp, LampSpecification By)[] swaps) =>
        [.. swaps.Select(s => new LampReplacement(s.Lamp, s.By))];

    public static SwapReport Compare(Bike bike, IEnumerable<LampReplacement> swap, CheckOptions? options = null) =>
        Swap.Evaluate(bike, swap, options, TestContext.Current.CancellationToken);

    public static BikeReport Check(Bike bike) => BikeCheck.Evaluate(bike, null, TestContext.Current.CancellationToken);

    public static Finding[] About(this SwapReport report, string subject) =>
        [.. report.Findings.Where(f => f.Subject == subject)];

    private static Bike Read(params (string Name, string Text)[] lists) =>
        BikeLists
            .Read(lists.Aggregate(ListSource.Empty, (source, list) => source.With(list.Name, list.Text)))
            .Value.Bike;
}
