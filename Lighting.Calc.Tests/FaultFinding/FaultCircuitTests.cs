using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Each fault that changes the wiring, against the plain harness of a bike that is wired so.</summary>
public class FaultCircuitTests
{
    private static readonly FaultFinder s_finder = DemoBikes.Finder("valley-twin");

    private static Bike Twin => s_finder.Bike;

    [Fact]
    public void Two_wires_exchanged_are_two_runs_that_end_at_each_others_points() =>
        Same(
            Family(FaultKind.CrossedWires, "left wire and right wire"),
            0,
            Twin with
            {
                Runs =
                [
                    .. Twin.Runs.Select(r =>
                        r.Name == "left wire" ? r with { To = "right feed" }
                        : r.Name == "right wire" ? r with { To = "left feed" }
                        : r
                    ),
                ],
            }
        );

    [Fact]
    public void A_short_between_two_circuits_is_a_wire_between_them()
    {
        FaultFamily family = s_finder.Model.Families.First(f => f.Kind == FaultKind.ShortBetweenCircuits);
        string[] points = family.PartName.Split(" and ");
        Same(
            family,
            0,
            Twin with
            {
                Runs = [.. Twin.Runs, Wire("touch", points[0], points[1], FaultCircuit.ShortOhms)],
            }
        );
    }

    [Fact]
    public void A_leak_to_the_frame_is_a_resistor()
    {
        FaultFamily family = Family(FaultKind.LeakToFrame, "panel feed");
        int severity = family.Cases.ToList().FindIndex(c => c.Ohms == 10);
        Same(family, severity, Twin with { Runs = [.. Twin.Runs, Wire("leak", "panel feed", "frame", 10)] });
    }

    [Fact]
    public void A_holder_without_its_earth_feeds_one_filament_through_the_other()
    {
        FaultFamily family = Family(FaultKind.HighResistanceLampHolder, "tail lamp and stop lamp");
        Same(
            family,
            family.Cases.Length - 1,
            Twin with
            {
                Lamps = [.. Twin.Lamps.Select(l => l.Circuit == "rear lamp" ? l with { Return = "holder" } : l)],
                Runs = [.. Twin.Runs, Wire("socket", "holder", "rear return", 1e9)],
            }
        );
        Setting brake = SettingEnumeration.Held(Twin, Condition.Parse("ignition=on; brake=on"));
        int member = s_finder.Model.FirstOf[s_finder.Model.Families.IndexOf(family)] + family.Cases.Length - 1;
        float fed = s_finder
            .Model.Of(
                new TestPlace(brake, Instrument.Meter, s_finder.Model.Circuit.NodeOf("tail feed")),
                TestContext.Current.CancellationToken
            )
            .Value[member];
        Assert.True(fed > 1, $"{fed} V at the tail feed, fed back through the stop lamp");
    }

    [Fact]
    public void Filaments_exchanged_are_two_lamps_of_each_others_power() =>
        Same(
            Family(FaultKind.FilamentsExchanged, "tail lamp and stop lamp"),
            0,
            Twin with
            {
                Lamps =
                [
                    .. Twin.Lamps.Select(l =>
                        l.Lamp == "tail lamp" ? l with { Specification = Lamp("stop lamp") }
                        : l.Lamp == "stop lamp" ? l with { Specification = Lamp("tail lamp") }
                        : l
                    ),
                ],
            }
        );

    [Fact]
    public void A_dead_flasher_opens_the_wire_that_feeds_the_indicators() =>
        Same(
            Family(FaultKind.FlasherDead, "flasher"),
            0,
            Twin with
            {
                Runs = [.. Twin.Runs.Select(r => r.Name == "flasher feed" ? r with { From = "nowhere" } : r)],
            }
        );

    [Fact]
    public void The_clips_of_an_ammeter_may_bypass_a_poor_fuse_holder()
    {
        FaultFamily[] holders = [.. s_finder.Model.Families.Where(f => f.Kind == FaultKind.HighResistanceFuseHolder)];
        Assert.Equal(2, holders.Length);
        Setting setting = s_finder.Settings[^1];
        Column amperes = s_finder.Model.Of(
            new TestPlace(setting, Instrument.Ammeter, 0),
            TestContext.Current.CancellationToken
        );
        double[] shown =
        [
            .. holders.Select(h =>
                (double)amperes.Value[s_finder.Model.FirstOf[s_finder.Model.Families.IndexOf(h)] + 10]
            ),
        ];
        Assert.True(
            shown[0] < 0.9 * amperes.Value[0],
            $"{shown[0]} A through the holder, {amperes.Value[0]} A in order"
        );
        Assert.Equal(amperes.Value[0], shown[1], 0.05);
    }

    [Fact]
    public void Resistance_between_two_points_is_that_of_the_wires_between_them()
    {
        FaultCircuit circuit = s_finder.Model.Circuit;
        var cold = new ColdNetwork(circuit).Set(s_finder.Model.AllOff, s_finder.Model.Members[0]);
        double Listed(string run)
        {
            Run wire = Twin.Runs.Single(r => r.Name == run);
            return (wire.WireResistance(Twin.WireTemperature) + wire.TotalJointResistance).Ohms;
        }

        Assert.Equal(
            Listed("rear earth") + Listed("panel earth"),
            cold.Between(circuit.NodeOf("rear return"), circuit.NodeOf("panel return")),
            5e-4
        );
        Assert.Equal(double.PositiveInfinity, cold.Between(circuit.NodeOf("coil feed"), circuit.FrameNode));
    }

    private static LampSpecification Lamp(string name) => Twin.Lamps.Single(l => l.Lamp == name).Specification;

    private static FaultFamily Family(FaultKind kind, string part) =>
        s_finder.Model.Families.Single(f => f.Kind == kind && f.PartName == part);

    private static Run Wire(string name, string from, string to, double ohms) =>
        Twin.Runs[0] with
        {
            Name = name,
            From = from,
            To = to,
            Length = Length.FromMillimeters(1),
            Joints = 1,
            JointResistance = ElectricResistance.FromOhms(ohms),
        };

    private static void Same(FaultFamily family, int severity, Bike wired)
    {
        FaultModel model = s_finder.Model;
        int member = model.FirstOf[model.Families.IndexOf(family)] + severity;
        HarnessSolver solver = HarnessNetwork.OfAnyValues(wired).CreateSolver();
        solver.SetSupply(wired.BatteryVoltage);
        foreach (Setting setting in s_finder.Settings)
        {
            OperatingPoint expected = solver.Solve(setting);
            for (int p = 0; p < model.Circuit.Points.Length; p++)
            {
                float volts = model
                    .Of(new TestPlace(setting, Instrument.Meter, p), TestContext.Current.CancellationToken)
                    .Value[member];
                double plain = expected.Points.Single(q => q.Point == model.Circuit.Points[p]).Voltage.Volts;
                Assert.True(
                    Math.Abs(volts - plain) < 0.02,
                    $"{family.PartName}, {setting}, {model.Circuit.Points[p]}: {volts} V for {plain} V"
                );
            }
        }
    }
}
