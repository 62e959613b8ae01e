namespace Lighting.Calc.Tests.Lists;

public class WholeBikeTests
{
    private static readonly BikeLists s_lists = BikeLists.Read(ListSamples.Whole).Value;

    [Fact]
    public void A_whole_bike_has_neither_faults_nor_cautions()
    {
        ListResult<BikeLists> result = BikeLists.Read(ListSamples.Whole);
        Assert.Empty(result.Faults);
        Assert.Empty(result.Cautions);
        Assert.True(result.TryGetValue(out _));
    }

    [Fact]
    public void The_bike_list_is_read_and_the_rest_assumed()
    {
        Bike bike = s_lists.Bike;
        Assert.Equal("Pinmoor twin", bike.Name);
        Assert.Equal(12, bike.SystemVoltage.Volts);
        Assert.Equal(12.65, bike.BatteryVoltage.Volts, 12);
        Assert.Equal(13.5, bike.ChargingVoltage.Volts, 12);
        Assert.Equal(9, bike.BatteryCapacity!.Value.AmpereHours);
        Assert.Equal(Earth.Positive, bike.Earth);
        Assert.Equal(5, bike.AllowedDrop.Percent);
    }

    [Fact]
    public void Lamps_are_read_with_their_defaults()
    {
        FittedLamp dip = s_lists.Bike.Lamps[0],
            stop = s_lists.Bike.Lamps[1],
            instrument = s_lists.Bike.Lamps[2],
            tail = s_lists.Bike.Lamps[3];
        Assert.Equal(
            ("headlamp", "dip", LampType.Halogen, 1),
            (dip.Circuit, dip.Lamp, dip.Specification.Type, dip.Quantity)
        );
        Assert.Equal(58, dip.Specification.ReferencePower.Watts, 9);
        Assert.Equal("lights=low", dip.LitWhen.ToString());
        Assert.Equal(("dip feed", "frame"), (dip.Feed, dip.Return));
        Assert.Equal("P21W", stop.Specification.Code);
        Assert.Equal(0.2, stop.Duty.DecimalFractions);
        Assert.Equal(
            (3, 0.18, 1.0),
            (instrument.Quantity, instrument.Specification.ReferenceCurrent.Amperes, instrument.Duty.DecimalFractions)
        );
        Assert.Equal((LampType.Led, 8.0), (tail.Specification.Type, tail.Specification.MinimumVoltage!.Value.Volts));
    }

    [Fact]
    public void Runs_switches_and_fuses_are_read_in_SI()
    {
        Bike bike = s_lists.Bike;
        Assert.Equal([0.3, 6 * 0.3048, 0.4], bike.Runs.Select(r => r.Length.Meters));
        Assert.Equal(["14 AWG", "1.5 mm2", "12 AWG stranded"], bike.Runs.Select(r => r.Wire.Name));
        Assert.Equal([0.002, 0.005, 0], bike.Runs.Select(r => r.JointResistance.Ohms));
        Assert.Equal([(1, 1), (2, 4), (0, 1)], bike.Runs.Select(r => (r.Joints, r.Bundle)));
        Assert.Equal(["low", "high"], bike.Switches[1].ClosedIn);
        Assert.Equal([0.01, 0, 0.02], bike.Switches.Select(s => s.Resistance.Ohms));
        Assert.Equal(
            (15.0, FuseStyle.Glass, null),
            (bike.Fuses[0].Rating.Amperes, bike.Fuses[0].Style, bike.Fuses[0].Resistance)
        );
    }
}
