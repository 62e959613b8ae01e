using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Network;

/// <summary>One heater of 5 Ω behind one of every part, so that every line of the ledger is a quotient.</summary>
/// <remarks>
/// In ohms: battery 0.1, fuse 0.2, feed wire 0.3, feed joint 0.4, contact 0.5, return wire 0.6, return joint 0.7: 2.8
/// with the heater's 5 makes 7.8. 12 V over 7.8 Ω is 1.5385 A.
/// </remarks>
public class DropByHandTests
{
    private const double Amperes = 12 / 7.8;
    private static readonly (VoltageDropKind Kind, string Part, double Ohms)[] s_parts =
    [
        (VoltageDropKind.Battery, "battery", 0.1),
        (VoltageDropKind.Fuse, "main", 0.2),
        (VoltageDropKind.FeedWire, "feed", 0.3),
        (VoltageDropKind.FeedJoint, "feed", 0.4),
        (VoltageDropKind.Switch, "heat (in to out)", 0.5),
        (VoltageDropKind.ReturnWire, "earth", 0.6),
        (VoltageDropKind.ReturnJoint, "earth", 0.7),
    ];

    [Theory]
    [InlineData(Earth.Negative, false)]
    [InlineData(Earth.Positive, false)]
    [InlineData(Earth.Negative, true)]
    [InlineData(Earth.Positive, true)]
    public void Every_line_is_its_ohms_times_the_current_whichever_way_round_the_parts_are_listed(
        Earth earth,
        bool turned
    )
    {
        VoltageDropBreakdown ledger = Ledger(Heater(earth, turned), earth, out _);
        Assert.Equal(
            s_parts.Select(p => (p.Kind, turned && p.Kind == VoltageDropKind.Switch ? "heat (out to in)" : p.Part)),
            ledger.Entries.Select(e => (e.Kind, e.Part))
        );
        Assert.All(
            s_parts.Zip(ledger.Entries),
            p =>
            {
                Assert.Equal(p.First.Ohms * Amperes, p.Second.Voltage.Volts, 1e-9);
                Assert.Equal(p.First.Ohms / 7.8, p.Second.Share.DecimalFractions, 1e-9);
                Assert.Equal(Amperes, p.Second.Current.Amperes, 1e-9);
                Assert.Equal(p.First.Ohms * Amperes, ledger.DropIn(p.First.Kind).Volts, 1e-9);
            }
        );
        Assert.Equal(2.8 * Amperes, ledger.TotalDrop.Volts, 1e-9);
        Assert.Equal(12, ledger.SupplyVoltage.Volts);
        Assert.Equal(2.8 / 7.8, ledger.Lamp.Drop!.Value.DecimalFractions, 1e-9);
        Assert.Equal(5 * Amperes * Amperes, (double)ledger.Lamp.Power.Watts, 1e-9);
        Assert.Null(ledger.LightLost);
    }

    // Without a part of r ohms the heater gets 12 × 5/(7.8 − r).
    [Fact]
    public void Mending_gives_what_the_heater_gets_without_the_part_the_costliest_first_and_never_the_battery()
    {
        Bike bike = Heater(Earth.Negative, turned: false);
        VoltageDropBreakdown ledger = Ledger(bike, Earth.Negative, out HarnessNetwork network);
        ImmutableArray<RepairBenefit> gains = VoltageDropAnalysis.LargestDrops(network, ledger, count: 10);
        (VoltageDropKind Kind, string Part, double Ohms)[] costliest =
        [
            .. s_parts.Skip(1).OrderByDescending(p => p.Ohms),
        ];
        Assert.Equal(costliest.Select(p => p.Kind), gains.Select(g => g.Entry.Kind));
        Assert.All(
            costliest.Zip(gains),
            p =>
            {
                Assert.Equal(12 * 5 / (7.8 - p.First.Ohms) - 5 * Amperes, p.Second.Voltage.Volts, 1e-9);
                Assert.Null(p.Second.Light);
            }
        );
        Assert.Equal(
            costliest.Take(3).Select(p => p.Kind),
            VoltageDropAnalysis.LargestDrops(network, ledger).Select(g => g.Entry.Kind)
        );
        Assert.Throws<ArgumentOutOfRangeException>("count", () => VoltageDropAnalysis.LargestDrops(network, ledger, 0));
        Assert.Single(VoltageDropAnalysis.LargestDrops(network, ledger, 1));
    }

    [Fact]
    public void Mending_is_reckoned_at_the_volts_of_the_ledger()
    {
        Bike bike = Heater(Earth.Negative, turned: false);
        var network = new HarnessNetwork(bike);
        HarnessSolver solver = network.CreateSolver();
        solver.SetSupply(ElectricPotential.FromVolts(6));
        VoltageDropBreakdown ledger = VoltageDropAnalysis.Breakdown(
            bike,
            solver.Solve(Benches.Set(bike, "heat=on")),
            0
        )!;
        Assert.Equal(
            6 * 5 / 7.1 - 6 * 5 / 7.8,
            VoltageDropAnalysis.LargestDrops(network, ledger, 1)[0].Voltage.Volts,
            1e-9
        );
    }

    [Fact]
    public void All_that_is_lost_in_one_kind_of_part_is_added_up()
    {
        Bike bike = Benches.Sidecar();
        VoltageDropBreakdown ledger = VoltageDropAnalysis.Breakdown(
            bike,
            new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low")),
            0
        )!;
        double[] wires =
        [
            .. ledger.Entries.Where(e => e.Kind == VoltageDropKind.FeedWire).Select(e => e.Voltage.Volts),
        ];
        Assert.Equal(2, wires.Length);
        Assert.Equal(wires[0] + wires[1], ledger.DropIn(VoltageDropKind.FeedWire).Volts, 1e-12);
    }

    [Fact]
    public void Light_lost_is_held_against_the_light_at_the_source_volts()
    {
        Bike bike = Heater(Earth.Negative, turned: false);
        bike = bike with { Lamps = [bike.Lamps[0] with { Specification = Benches.Filament(10, 21) }] };
        VoltageDropBreakdown ledger = Ledger(bike, Earth.Negative, out HarnessNetwork network);
        Assert.Equal(1 - Math.Pow(ledger.Lamp.Voltage.Volts / 12, 3.4), ledger.LightLost!.Value.DecimalFractions, 1e-9);
        RepairBenefit first = VoltageDropAnalysis.LargestDrops(network, ledger)[0];
        Assert.Equal(
            Math.Pow((ledger.Lamp.Voltage + first.Voltage).Volts / 10, 3.4)
                - Math.Pow(ledger.Lamp.Voltage.Volts / 10, 3.4),
            first.Light!.Value.DecimalFractions,
            1e-9
        );
    }

    [Fact]
    public void A_lamp_that_is_not_there_is_refused_and_one_that_is_not_fed_has_no_ledger()
    {
        Bike bike = Heater(Earth.Negative, turned: false);
        OperatingPoint off = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, ""));
        Assert.Null(VoltageDropAnalysis.Breakdown(bike, off, 0));
        Assert.Throws<ArgumentOutOfRangeException>("lamp", () => VoltageDropAnalysis.Breakdown(bike, off, -1));
        Assert.Throws<ArgumentOutOfRangeException>("lamp", () => VoltageDropAnalysis.Breakdown(bike, off, 1));
        Assert.Empty(VoltageDropAnalysis.WorstBreakdowns(bike, [off]));
    }

    [Fact]
    public void Without_runs_only_the_battery_is_in_the_ledger()
    {
        var bike = new Bike
        {
            ChargingVoltage = ElectricPotential.FromVolts(12),
            BatteryResistance = ElectricResistance.FromOhms(1),
            Lamps = [Hung("heater")],
        };
        OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(Setting.Empty);
        VoltageDropItem only = Assert.Single(VoltageDropAnalysis.Breakdown(bike, point, 0)!.Entries);
        Assert.Equal((VoltageDropKind.Battery, "battery"), (only.Kind, only.Part));
        Assert.Equal(2, only.Voltage.Volts, 1e-9);
        bike = bike with { BatteryResistance = ElectricResistance.Zero };
        Assert.Empty(
            VoltageDropAnalysis
                .Breakdown(bike, new HarnessNetwork(bike).CreateSolver().Solve(Setting.Empty), 0)!
                .Entries
        );
    }

    // Meant to be lit with the heat off, where it is not fed: the setting in which it is counts then.
    [Fact]
    public void A_lamps_worst_setting_is_one_in_which_it_is_meant_to_be_lit_where_there_is_one()
    {
        Bike bike = Heater(Earth.Negative, turned: false);
        bike = bike with
        {
            Switches = bike.Switches.Add(
                Benches.Contact("heat", "out", "in", "low") with
                {
                    Resistance = ElectricResistance.FromOhms(2),
                }
            ),
            Lamps = [bike.Lamps[0] with { LitWhen = Condition.Parse("heat=on") }],
        };
        Assert.Equal("heat=on", Worst(bike).Setting.ToString());
        Assert.Equal(
            "heat=low",
            Worst(bike with { Lamps = [bike.Lamps[0] with { LitWhen = Condition.Parse("heat=off") }] })
                .Setting.ToString()
        );
        Assert.Equal(
            "heat=low",
            Worst(bike with { Lamps = [bike.Lamps[0] with { LitWhen = Condition.Always }] }).Setting.ToString()
        );
        Assert.Equal(["heat=on"], Meant("heat=on"));
        Assert.Equal(["heat=on", "heat=low"], Meant(""));
        Assert.Equal(["heat=on", "heat=low"], Meant("heat=off"));

        IEnumerable<string> Meant(string litWhen)
        {
            Bike other = bike with { Lamps = [bike.Lamps[0] with { LitWhen = Condition.Parse(litWhen) }] };
            return IntendedOnStates.Of(other, All(other), 0).Select(p => p.Setting.ToString());
        }

        static VoltageDropBreakdown Worst(Bike bike) =>
            Assert.Single(VoltageDropAnalysis.WorstBreakdowns(bike, All(bike)));
    }

    private static OperatingPoint[] All(Bike bike)
    {
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        return [.. SettingEnumeration.Of(bike, Condition.Always).Select(solver.Solve)];
    }

    private static FittedLamp Hung(string name) =>
        new()
        {
            Circuit = name,
            Lamp = name,
            Specification = Ohms(5),
            LitWhen = Condition.Always,
        };

    private static LampSpecification Ohms(double ohms) =>
        LampSpecification.FromCurrent(
            LampType.Resistor,
            ElectricPotential.FromVolts(12),
            ElectricCurrent.FromAmperes(12 / ohms)
        );

    private static VoltageDropBreakdown Ledger(Bike bike, Earth earth, out HarnessNetwork network)
    {
        Assert.Equal(earth, bike.Earth);
        network = new HarnessNetwork(bike);
        HarnessSolver solver = network.CreateSolver();
        return VoltageDropAnalysis.Breakdown(bike, solver.Solve(Benches.Set(bike, "heat=on")), 0)!;
    }

    private static Bike Heater(Earth earth, bool turned)
    {
        string live = earth == Earth.Negative ? Bike.BatteryPlus : Bike.BatteryMinus,
            back = earth == Earth.Negative ? Bike.BatteryMinus : Bike.BatteryPlus;
        Run feed = Run("feed", "fused", "in", 0.3, 0.4),
            ground = Run("earth", "heater -", back, 0.6, 0.7);
        SwitchContact contact = Benches.Contact("heat", "in", "out", "on") with
        {
            Resistance = ElectricResistance.FromOhms(0.5),
        };
        return new Bike
        {
            Earth = earth,
            ChargingVoltage = ElectricPotential.FromVolts(12),
            BatteryResistance = ElectricResistance.FromOhms(0.1),
            WireTemperature = Temperature.FromDegreesCelsius(20),
            Fuses =
            [
                new Fuse
                {
                    Name = "main",
                    From = live,
                    To = "fused",
                    Rating = ElectricCurrent.FromAmperes(10),
                    Resistance = ElectricResistance.FromOhms(0.2),
                },
            ],
            Runs =
            [
                turned ? feed with { From = feed.To, To = feed.From } : feed,
                turned ? ground with { From = ground.To, To = ground.From } : ground,
            ],
            Switches = [turned ? contact with { From = contact.To, To = contact.From } : contact],
            Lamps = [Benches.Lamp("heater", "out", "heater -", Ohms(5))],
        };
    }

    // 1.5 mm² has 12.7 mΩ/m.
    private static Run Run(string name, string from, string to, double wireOhms, double jointOhms) =>
        Benches.Run(name, from, to, wireOhms / 0.0127, joints: 1, jointOhms: jointOhms);
}
