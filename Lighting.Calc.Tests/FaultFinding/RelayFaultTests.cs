namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Relays in fault finding: a fault in the way of the coil lets the contact open, and an ohmmeter finds it at
/// rest.</summary>
public class RelayFaultTests
{
    private const string Night = "ignition=on; lights=on";

    private static readonly Lazy<FaultFinder> s_finder = new(() => new FaultFinder(Relayed()));

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private static FaultModel Model => s_finder.Value.Model;

    // The contact feeds the headlamp from a fuse of its own; its coil is behind the main fuse.
    [Theory]
    [InlineData(FaultKind.FuseBlown, "main", 0, 0)]
    [InlineData(FaultKind.HighResistanceEarth, "relay earth", double.PositiveInfinity, 0)]
    [InlineData(FaultKind.HighResistanceEarth, "relay earth", 300, 0)]
    [InlineData(FaultKind.HighResistanceEarth, "relay earth", 5, 12)]
    [InlineData(FaultKind.HighResistanceJoint, "tail wire", double.PositiveInfinity, 12)]
    public void The_contact_follows_the_coil(FaultKind kind, string part, double ohms, double volts)
    {
        FaultFamily family = Model.Families.Single(f => f.Kind == kind && f.PartName == part);
        var solver = new FaultSolver(Model.Circuit, Model.Draws);
        solver.Set(Lit, new FaultMember(family, family.Cases[0] with { Ohms = ohms }));
        solver.Probe(-1, testLamp: false);
        solver.Solve();
        Assert.InRange(solver.Volts(Model.Circuit.NodeOf("headlamp feed")), volts - 0.6, volts + 0.6);
    }

    [Fact]
    public void A_contact_that_sticks_stays_closed_without_its_coil()
    {
        FaultFamily stuck = Model.Families.Single(f =>
            f.Kind == FaultKind.ContactNeverOpens && f.PartName.StartsWith("headlamp relay", StringComparison.Ordinal)
        );
        var off = new Setting(Lit.Positions.Select(p => p with { Position = SwitchDefinition.Off }));
        var solver = new FaultSolver(Model.Circuit, Model.Draws);
        solver.Set(off, new FaultMember(stuck, stuck.Cases[0]));
        solver.Probe(-1, testLamp: false);
        solver.Solve();
        Assert.InRange(solver.Volts(Model.Circuit.NodeOf("headlamp feed")), 11.5, 12.6);
    }

    // Past the contact at rest the way leads back over both fuses and through both lamps, which are cold 12²/5/12.5 and
    // 12²/55/12.5 ohms.
    [Fact]
    public void An_ohmmeter_finds_the_contact_at_rest()
    {
        var cold = new ColdNetwork(Model.Circuit).Set(Lit, Model.Members[0]);
        FaultCircuit circuit = Model.Circuit;
        Assert.Equal(
            144.0 / 5 / 12.5 + 144.0 / 55 / 12.5,
            cold.Between(circuit.NodeOf("headlamp relay 30"), circuit.NodeOf("headlamp relay 87")),
            0.2
        );
    }

    [Fact]
    public void Everything_dark_is_the_main_fuse_though_the_headlamp_has_its_own()
    {
        Diagnosis diagnosis = s_finder.Value.Diagnose(
            [
                ReadingOf.Seen(Night, "headlamp", Brightness.Dark),
                ReadingOf.Seen(Night, "tail lamp", Brightness.Dark),
                ReadingOf.Meter(Night, "fuse box", 12.5),
                ReadingOf.Meter(Night, "main out", 0),
            ],
            Cancellation
        );
        Assert.StartsWith("The fuse 'main' has blown (", diagnosis.Summary);
        Assert.DoesNotContain(diagnosis.Ranked.Take(1), g => g.Best.Faults.Length > 1);
    }

    [Fact]
    public void A_relay_without_its_earth_is_found_by_the_voltage_at_its_coil()
    {
        Diagnosis diagnosis = s_finder.Value.Diagnose(
            [
                ReadingOf.Seen(Night, "headlamp", Brightness.Dark),
                ReadingOf.Seen(Night, "tail lamp", Brightness.Normal),
                ReadingOf.Meter(Night, "headlamp relay 30", 12.5),
                ReadingOf.Meter(Night, "headlamp relay 87", 0),
                ReadingOf.Meter(Night, "headlamp relay 85", 12.4),
            ],
            Cancellation
        );
        Assert.Equal("relay earth", Assert.Single(diagnosis.Ranked[0].Best.Faults).Part);
        Assert.True(diagnosis.Ranked[0].Probability > 0.5, diagnosis.Summary);
    }

    private static Setting Lit =>
        Model.Cover.First(s => s.PositionOf("lights") == "on" && s.PositionOf("ignition") == "on");

    private static Bike Relayed() =>
        BikeLists
            .Read(
                ListSource
                    .Empty.With(
                        "lamps.csv",
                        "circuit,lamp,type,volts,watts,lit when,feed,return\n"
                            + "head,headlamp,filament,12,55,ignition=on; lights=on,headlamp feed,frame\n"
                            + "rear,tail lamp,filament,12,5,ignition=on; lights=on,tail feed,frame\n"
                    )
                    .With(
                        "runs.csv",
                        "run,from,to,wire,length\n"
                            + "battery lead,battery +,fuse box,4 mm2,0.3\n"
                            + "main feed,main out,key in,2 mm2,0.6\n"
                            + "light feed,key out,light in,2 mm2,0.3\n"
                            + "tail wire,light out,tail feed,1 mm2,1.2\n"
                            + "relay pull,light out,headlamp relay 86,1 mm2,0.3\n"
                            + "relay earth,headlamp relay 85,frame,1 mm2,0.2\n"
                            + "relay feed,lamp fuse out,headlamp relay 30,2 mm2,0.5\n"
                            + "head wire,headlamp relay 87,headlamp feed,2 mm2,0.5\n"
                            + "engine strap,frame,battery -,6 mm2,0.3\n"
                    )
                    .With(
                        "switches.csv",
                        "switch,from,to,closed in\nignition,key in,key out,on\nlights,light in,light out,on\n"
                    )
                    .With(
                        "fuses.csv",
                        "fuse,from,to,rating\nmain,fuse box,main out,10\nlamp,fuse box,lamp fuse out,10\n"
                    )
                    .With("relays.csv", "relay\nheadlamp relay\n")
                    .With("bike.csv", "item,value\nsystem voltage,12 V\n")
            )
            .Value.Bike;
}
