using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Network;

public class DropAnalysisTests
{
    [Theory]
    [InlineData(Earth.Negative)]
    [InlineData(Earth.Positive)]
    public void The_ledger_of_every_lamp_adds_up_to_the_source_volts(Earth earth)
    {
        Bike bike = Benches.Sidecar(earth);
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        foreach (string held in new[] { "lights=low", "lights=high", "lights=pass" })
        {
            OperatingPoint point = solver.Solve(Benches.Set(bike, held));
            for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
            {
                VoltageDropBreakdown? ledger = VoltageDropAnalysis.Breakdown(bike, point, lamp);
                Assert.Equal(point.Lamps[lamp].Drop is null, ledger is null);
                if (ledger is null)
                    continue;
                Assert.Equal(13.5, (ledger.TotalDrop + ledger.Lamp.Voltage).Volts, 1e-9);
                Assert.All(ledger.Entries, e => Assert.True(e.Voltage.Volts >= 0, $"{e.Part} {e.Voltage.Volts}"));
                Assert.Equal(
                    ledger.Lamp.Drop!.Value.DecimalFractions,
                    ledger.Entries.Sum(e => e.Share.DecimalFractions),
                    1e-9
                );
            }
        }
    }

    // By hand: the low beam's current I flows through the lights contact of 10 mΩ, so that line is I · 0.010 V.
    [Fact]
    public void A_ledger_names_each_part_once_with_its_own_volts()
    {
        Bike bike = Benches.Sidecar();
        OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low"));
        VoltageDropBreakdown ledger = VoltageDropAnalysis.Breakdown(bike, point, 0)!;
        Assert.Equal(
            [
                "battery",
                "main",
                "feed",
                "feed",
                "lights (lights in to low line)",
                "low wire",
                "head earth wire",
                "head earth wire",
            ],
            ledger.Entries.Select(e => e.Part)
        );
        Assert.Equal(
            [
                VoltageDropKind.Battery,
                VoltageDropKind.Fuse,
                VoltageDropKind.FeedWire,
                VoltageDropKind.FeedJoint,
                VoltageDropKind.Switch,
                VoltageDropKind.FeedWire,
                VoltageDropKind.ReturnWire,
                VoltageDropKind.ReturnJoint,
            ],
            ledger.Entries.Select(e => e.Kind)
        );
        double low = point.Lamps[0].Current.Amperes;
        Assert.Equal(low * 0.010, ledger.DropIn(VoltageDropKind.Switch).Volts, 1e-9);
        Assert.Equal(low * 0.010, ledger.DropIn(VoltageDropKind.ReturnJoint).Volts, 1e-9);
        Assert.Equal(point.TotalCurrent.Amperes * 0.020, ledger.DropIn(VoltageDropKind.Battery).Volts, 1e-9);
    }

    [Fact]
    public void Of_two_earths_the_ledger_follows_the_one_that_carries_more()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Runs = bike.Runs.Add(Benches.Run("second earth", "head earth", Bike.BatteryMinus, 0.3, "4 mm2")),
        };
        OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low"));
        VoltageDropBreakdown ledger = VoltageDropAnalysis.Breakdown(bike, point, 0)!;
        Assert.Contains(ledger.Entries, e => e.Part == "second earth");
        Assert.DoesNotContain(ledger.Entries, e => e.Part == "head earth wire");
        Assert.Equal(13.5, (ledger.TotalDrop + ledger.Lamp.Voltage).Volts, 1e-9);
    }

    [Fact]
    public void Mending_the_costliest_part_gains_no_more_than_it_lost_and_more_than_nothing()
    {
        Bike bike = Benches.Sidecar();
        var network = new HarnessNetwork(bike);
        OperatingPoint point = network.CreateSolver().Solve(Benches.Set(bike, "lights=pass"));
        VoltageDropBreakdown ledger = VoltageDropAnalysis.Breakdown(bike, point, 0)!;
        ImmutableArray<RepairBenefit> gains = VoltageDropAnalysis.LargestDrops(network, ledger);
        Assert.Equal(3, gains.Length);
        Assert.Equal(gains.OrderByDescending(g => g.Entry.Voltage.Volts), gains);
        Assert.All(gains, g => Assert.InRange(g.Voltage.Volts, 1e-6, g.Entry.Voltage.Volts));
        Assert.All(gains, g => Assert.True(g.Light!.Value.DecimalFractions > 0));
    }

    /// <remarks>Against a bike built with the part repaired and solved by itself.</remarks>
    [Theory]
    [InlineData(LampType.Filament)]
    [InlineData(LampType.LedResistor)]
    [InlineData(LampType.Led)]
    public void Gains_of_all_lamps_together_are_those_of_bikes_with_the_part_repaired(LampType type)
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            BatteryResistance = ElectricResistance.FromMilliohms(30),
            Lamps =
            [
                .. bike.Lamps.Select(l =>
                    l with
                    {
                        Specification = LampSpecification.FromPower(
                            type,
                            ElectricPotential.FromVolts(12),
                            Power.FromWatts(40),
                            type == LampType.Filament ? null : ElectricPotential.FromVolts(7)
                        ),
                    }
                ),
            ],
        };
        var network = new HarnessNetwork(bike);
        HarnessSolver solver = network.CreateSolver();
        VoltageDropBreakdown[] all =
        [
            .. SettingEnumeration
                .Of(bike, Condition.Always)
                .Select(solver.Solve)
                .SelectMany(point =>
                    Enumerable
                        .Range(0, bike.Lamps.Length)
                        .Select(lamp => VoltageDropAnalysis.Breakdown(bike, point, lamp))
                )
                .OfType<VoltageDropBreakdown>(),
        ];
        Assert.True(all.Length > 3);
        ImmutableArray<ImmutableArray<RepairBenefit>> together = VoltageDropAnalysis.LargestDropsOfEach(
            network,
            all,
            count: 20
        );
        for (int i = 0; i < all.Length; i++)
        {
            Assert.NotEmpty(together[i]);
            foreach (RepairBenefit gain in together[i])
            {
                int lamp = bike.Lamps.ToList().FindIndex(l => l.Lamp == all[i].Lamp.Lamp.Lamp);
                LampState repaired = new HarnessNetwork(Repaired(bike, gain.Entry))
                    .CreateSolver()
                    .Solve(all[i].Setting)
                    .Lamps[lamp];
                Assert.Equal((repaired.Voltage - all[i].Lamp.Voltage).Volts, gain.Voltage.Volts, 1e-8);
            }
        }
    }

    [Fact]
    public void A_breakdown_of_another_bike_is_refused()
    {
        Bike bike = Benches.Sidecar(),
            other = bike with { Runs = [.. bike.Runs.Select(r => r with { Name = r.Name + " of old" })] };
        VoltageDropBreakdown breakdown = VoltageDropAnalysis.Breakdown(
            bike,
            new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low")),
            0
        )!;
        Assert.Contains(
            "The breakdown is of another bike",
            Assert
                .Throws<InvalidOperationException>(() =>
                    VoltageDropAnalysis.LargestDrops(new HarnessNetwork(other), breakdown)
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    private static Bike Repaired(Bike bike, VoltageDropItem item) =>
        item.Kind switch
        {
            VoltageDropKind.Fuse => bike with
            {
                Fuses =
                [
                    .. bike.Fuses.Select(f =>
                        f.Name == item.Part ? f with { Resistance = ElectricResistance.Zero } : f
                    ),
                ],
            },
            VoltageDropKind.Switch => bike with
            {
                Switches =
                [
                    .. bike.Switches.Select(s =>
                        s.Name == item.Part ? s with { Resistance = ElectricResistance.Zero } : s
                    ),
                ],
            },
            VoltageDropKind.FeedJoint or VoltageDropKind.ReturnJoint => bike with
            {
                Runs = [.. bike.Runs.Select(r => r.Name == item.Part ? r with { Joints = 0 } : r)],
            },
            _ => bike with
            {
                Runs = [.. bike.Runs.Select(r => r.Name == item.Part ? r with { Length = Length.Zero } : r)],
            },
        };

    [Fact]
    public void The_worst_ledger_of_a_lamp_is_that_of_its_worst_setting()
    {
        Bike bike = Benches.Sidecar();
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        OperatingPoint[] all = [.. SettingEnumeration.Of(bike, Condition.Always).Select(solver.Solve)];
        ImmutableArray<VoltageDropBreakdown> worst = VoltageDropAnalysis.WorstBreakdowns(bike, all);
        Assert.Equal(3, worst.Length);
        Assert.Equal("lights=pass", worst[0].Setting.ToString());
    }

    [Fact]
    public void A_wire_without_resistance_loses_nothing_and_the_ledger_still_adds_up()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with { Runs = bike.Runs.SetItem(0, bike.Runs[0] with { Length = Length.Zero, Joints = 0 }) };
        OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low"));
        VoltageDropBreakdown ledger = VoltageDropAnalysis.Breakdown(bike, point, 0)!;
        Assert.Equal(0, ledger.Entries.Where(e => e.Part == "feed").Sum(e => e.Voltage.Volts));
        Assert.Equal(point.TotalCurrent.Amperes, point.Runs[0].Current.Amperes, 1e-9);
        Assert.Equal(13.5, (ledger.TotalDrop + ledger.Lamp.Voltage).Volts, 1e-9);
    }
}
