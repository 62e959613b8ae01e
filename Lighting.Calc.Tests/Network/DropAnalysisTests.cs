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
