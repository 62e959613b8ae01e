using System.Globalization;
using System.Text;
using Lighting.Calc.Benchmarks;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>The bikes whose pages are looked at: of the demo, those that nothing was tuned to, and made ones.</summary>
internal static class PageBikes
{
    /// <summary>Demo bikes, foreign ones, a generated one and two that strain a page.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [
            "valley-twin",
            "chapel-single",
            "fell-lightweight",
            "old-twin",
            "three-phase",
            "commuter",
            "builder",
            "generated",
            "hostile",
            "40 lamps",
        ];

    /// <summary>Where a bike's lists are, written into a folder where it is a made one.</summary>
    public static string PathOf(string bike, TemporaryFolder folder)
    {
        switch (bike)
        {
            case "hostile":
                Pages.WriteHostileBike(folder);
                return folder.Path;
            case "40 points":
                LargeHarness.Write(folder, 1, 40);
                return folder.Path;
            case "40 lamps":
                WriteLampsWithLongNames(folder);
                return folder.Path;
            case "generated":
                foreach ((string name, string text) in new BikeGenerator(seed: 11).Lists(1))
                    folder.Write(name, text);
                return folder.Path;
            default:
                string foreign = Path.Combine(CliProcess.Root, "Lighting.Calc.Tests", "ForeignBikes", bike);
                return Directory.Exists(foreign) ? foreign : CliProcess.Bike(bike);
        }
    }

    // Forty lamps behind three fuses, two of which do not suit, every name as long as an owner may write it.
    private static void WriteLampsWithLongNames(TemporaryFolder folder)
    {
        const string Line = "line behind the distribution block under the left side panel";
        folder.Write(
            "bike.csv",
            "item,value\nname,\"The parcel sidecar outfit of the upper valley with every auxiliary lamp that the depot "
                + "ever fitted to it, 1961 to 1974\"\nsystem voltage,12 V\nbattery capacity,20 Ah\n"
        );
        var lamps = new StringBuilder("circuit,lamp,volts,watts,feed,return\n");
        var runs = new StringBuilder(
            "run,from,to,wire,length\nbattery lead under the saddle,battery +,distribution block,6 mm2,0.3 m\n"
                + "frame strap at the gearbox,frame,battery -,6 mm2,0.4 m\n"
        );
        var switches = new StringBuilder("switch,from,to,closed in\n");
        var fuses = new StringBuilder("fuse,from,to,rating\n");
        for (int fuse = 1; fuse <= 3; fuse++)
        {
            fuses.Append(
                CultureInfo.InvariantCulture,
                $"fuse No. {fuse} of the auxiliary fuse box,distribution block,fuse {fuse} out,{10 * fuse} A\n"
            );
            switches.Append(CultureInfo.InvariantCulture, $"panel switch {fuse},fuse {fuse} out,{Line} {fuse},on\n");
        }

        for (int lamp = 1; lamp <= 40; lamp++)
        {
            string name = string.Create(
                CultureInfo.InvariantCulture,
                $"auxiliary parcel compartment lamp on the nearside rail No. {lamp}"
            );
            lamps.Append(
                CultureInfo.InvariantCulture,
                $"circuit {1 + lamp % 5},{name},12,{5 + lamp % 3 * 8},feed {lamp},frame\n"
            );
            runs.Append(
                CultureInfo.InvariantCulture,
                $"wire to {name},{Line} {1 + lamp % 3},feed {lamp},0.75 mm2,{1 + lamp % 4} m\n"
            );
        }

        folder.Write("lamps.csv", lamps.ToString());
        folder.Write("runs.csv", runs.ToString());
        folder.Write("switches.csv", switches.ToString());
        folder.Write("fuses.csv", fuses.ToString());
        folder.Write("charging.csv", "rpm,current\n1000,0\n1500,4\n2500,9\n4000,13\n7000,15\n");
        folder.Write("ride.csv", "stretch,rpm,minutes,when\nround of the upper valley,3000,40,panel switch 1=on\n");
    }
}
