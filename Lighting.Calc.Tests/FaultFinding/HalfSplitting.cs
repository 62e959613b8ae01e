namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Plain half-splitting with the expected readings in hand: from the lamp of the complaint, the way from the
/// battery through it and back is halved with the meter until one part is left.</summary>
internal sealed class HalfSplitting(FaultFinder finder)
{
    // A reading this share of the battery's voltage off the expected one is bad; of a coil, whose voltage is not held,
    // more.
    private double Off => (finder.EngineSpeed is null ? 0.04 : 0.12) * finder.Bike.BatteryVoltage.Volts;

    /// <summary>Tests taken after the complaint, and whether the part that is left is the faulty one; null where no
    /// lamp looks wrong.</summary>
    public (int Tests, bool Found)? Run(SimulatedBike bike, FaultMember fault)
    {
        if (Complaint(bike) is not var (setting, lamp))
            return null;
        FittedLamp fitted = finder.Bike.Lamps[lamp];
        OperatingPoint healthy = new HealthyBike(finder).In(setting);
        string[] way = Way(fitted, setting);
        int feed = Array.IndexOf(way, fitted.Feed!),
            low = 0,
            high = way.Length - 1,
            tests = 0;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            tests++;
            double volts = bike.Read(
                new TestPlace(setting, Instrument.Meter, finder.Model.Circuit.NodeOf(way[middle]))
            ).Voltage!.Value.Volts;
            bool good = Math.Abs(volts - healthy.Points.Single(p => p.Point == way[middle]).Voltage.Volts) < Off;
            // On the feed side what is good comes from the battery; past the lamp what is good goes to it.
            if (good == middle <= feed)
                low = middle;
            else
                high = middle;
        }

        return (tests, IsBetween(way[low], way[high], lamp, fault));
    }

    private (Setting Setting, int Lamp)? Complaint(SimulatedBike bike)
    {
        foreach (Setting setting in finder.Settings)
        {
            OperatingPoint healthy = new HealthyBike(finder).In(setting);
            for (int l = 0; l < finder.Bike.Lamps.Length; l++)
            {
                bool lights = Math.Abs(healthy.Lamps[l].Voltage.Volts) > 0.5 * finder.Bike.BatteryVoltage.Volts;
                if (
                    finder.Model.GivesLight(l)
                    && lights
                    && bike.Look(setting, l).Seen != Brightness.Normal
                )
                    return (setting, l);
            }
        }

        return null;
    }

    private string[] Way(FittedLamp lamp, Setting setting)
    {
        var graph = new HarnessGraph(finder.Bike);
        ContactSet closed = graph.Switches.ClosedIn(setting);
        return
        [
            .. Points(graph.Live, graph.NumberOf(lamp.Feed!)),
            .. Points(graph.NumberOf(lamp.Return!), graph.Earth),
        ];

        IEnumerable<string> Points(int start, int end)
        {
            int at = start;
            return
            [
                graph.Points[start],
                .. graph.From(start, closed).PathTo(end).Select(p => graph.Points[at = p.Other(at)]),
            ];
        }
    }

    // Whether what is left is the faulty part; of a short the fuse that it has blown is found.
    private bool IsBetween(string a, string b, int lamp, FaultMember fault)
    {
        Bike bike = finder.Bike;
        bool Joins(string? from, string? to) => from == a && to == b || from == b && to == a;
        int part = fault.Family.Part;
        return fault.Family switch
        {
            HighResistanceRun => Joins(bike.Runs[part].From, bike.Runs[part].To),
            HighResistanceContact => Joins(bike.Switches[part].From, bike.Switches[part].To),
            HighResistanceFuseHolder or FuseBlown => Joins(bike.Fuses[part].From, bike.Fuses[part].To),
            ShortToFrame when finder.Model.Circuit.FuseBefore[part] is >= 0 and var fuse => Joins(
                bike.Fuses[fuse].From,
                bike.Fuses[fuse].To
            ),
            FlasherDead => Joins(bike.Runs[part].From, bike.Runs[part].To),
            HighResistanceLampHolder => finder.Model.Circuit.Holders[part].Lamps.Contains(lamp)
                && Joins(bike.Lamps[lamp].Feed, bike.Lamps[lamp].Return),
            LampFault => part == lamp && Joins(bike.Lamps[lamp].Feed, bike.Lamps[lamp].Return),
            _ => false,
        };
    }
}
