using UnitsNet;

namespace Lighting.Calc.Tests.Network;

public class HarnessSolverTests
{
    [Fact]
    public void Without_runs_a_lamp_at_its_reference_volts_draws_its_reference_current()
    {
        var bike = new Bike
        {
            ChargingVoltage = ElectricPotential.FromVolts(13.5),
            Lamps =
            [
                Benches.Lamp("stop", "", "", Benches.Filament(13.5, 25), "brake=on") with
                {
                    Feed = null,
                    Return = null,
                },
            ],
            Fuses = [new Fuse { Name = "main", Rating = ElectricCurrent.FromAmperes(15) }],
        };
        OperatingPoint on = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "brake=on"));
        Assert.Equal(25 / 13.5, on.TotalCurrent.Amperes, 1e-9);
        Assert.Equal(25 / 13.5, on.Fuses[0].Current.Amperes, 1e-9);
        Assert.Equal(13.5, on.Lamps[0].Voltage.Volts, 1e-9);
        Assert.Equal(0, on.Lamps[0].Drop!.Value.Percent, 1e-9);
        OperatingPoint off = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, ""));
        Assert.Equal(0, off.TotalCurrent.Amperes);
        Assert.Equal(0, off.Lamps[0].Voltage.Volts);
        Assert.Null(off.Lamps[0].Drop);
    }

    [Theory]
    [InlineData(Earth.Negative)]
    [InlineData(Earth.Positive)]
    public void Positive_and_negative_earth_give_the_same_currents_and_lamp_volts(Earth earth)
    {
        Bike bike = Benches.Sidecar(earth);
        OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low"));
        OperatingPoint other = new HarnessNetwork(Benches.Sidecar())
            .CreateSolver()
            .Solve(Benches.Set(bike, "lights=low"));
        Assert.Equal(other.TotalCurrent.Amperes, point.TotalCurrent.Amperes, 1e-9);
        for (int i = 0; i < bike.Lamps.Length; i++)
        {
            Assert.Equal(other.Lamps[i].Voltage.Volts, point.Lamps[i].Voltage.Volts, 1e-9);
            Assert.Equal(other.Lamps[i].Current.Amperes, point.Lamps[i].Current.Amperes, 1e-9);
        }
    }

    [Fact]
    public void Both_filaments_on_at_once_share_their_earth_and_dim_each_other()
    {
        Bike bike = Benches.Sidecar();
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        OperatingPoint low = solver.Solve(Benches.Set(bike, "lights=low")),
            both = solver.Solve(Benches.Set(bike, "lights=pass"));
        Assert.True(both.Lamps[0].Current.Amperes > 3 && both.Lamps[1].Current.Amperes > 3);
        Assert.True(both.Lamps[0].Voltage.Volts < low.Lamps[0].Voltage.Volts - 0.05);
    }

    [Fact]
    public void Changed_values_are_solved_without_rebuilding_and_can_be_put_back()
    {
        Bike bike = Benches.Sidecar();
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        Setting low = Benches.Set(bike, "lights=low");
        double before = solver.Solve(low).Lamps[0].Voltage.Volts;
        solver.SetRun(4, ElectricResistance.FromOhms(0.5), ElectricResistance.Zero);
        double corroded = solver.Solve(low).Lamps[0].Voltage.Volts;
        Assert.True(corroded < before - 0.5);
        solver.SetLamp(0, Benches.Led(13.5, 20, 9));
        Assert.True(solver.Solve(low).Lamps[0].Voltage.Volts > corroded);
        solver.SetLamp(0, bike.Lamps[0].Specification);
        solver.SetRun(4, bike.Runs[4].WireResistance(bike.WireTemperature), bike.Runs[4].TotalJointResistance);
        Assert.Equal(before, solver.Solve(low).Lamps[0].Voltage.Volts, 1e-9);
    }

    // A 30 W driver on 13.5 V that holds to 3 V: by hand the load line crosses its law three times between
    // 3·(13.5 − 3)/30 = 1.05 Ω and 13.5²/(4·30) = 1.52 Ω, and in the dark state only above that.
    [Fact]
    public void An_LED_behind_a_bad_earth_that_could_also_be_dark_is_said_to_be_able_to_drop_out()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Lamps = [Benches.Lamp("led", "fused", "head earth", Benches.Led(13.5, 30, 3))],
            Switches = [],
        };
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        solver.SetRun(4, ElectricResistance.FromOhms(1.3), ElectricResistance.Zero);
        LampState led = solver.Solve(Setting.Empty).Lamps[0];
        Assert.False(led.DroppedOut);
        Assert.True(led.MayDropOut);
        solver.SetRun(4, ElectricResistance.FromOhms(3), ElectricResistance.Zero);
        Assert.True(solver.Solve(Setting.Empty).Lamps[0].DroppedOut);
        solver.SetRun(4, ElectricResistance.FromOhms(0.01), ElectricResistance.Zero);
        led = solver.Solve(Setting.Empty).Lamps[0];
        Assert.False(led.DroppedOut);
        Assert.False(led.MayDropOut);
    }

    [Fact]
    public void A_short_without_any_resistance_is_a_dead_short_and_no_number()
    {
        var bike = new Bike { Runs = [Benches.Run("strap", Bike.BatteryPlus, Bike.BatteryMinus, 0)] };
        NetworkNotSolvedException refused = Assert.Throws<NetworkNotSolvedException>(() =>
            new HarnessNetwork(bike).CreateSolver().Solve(Setting.Empty)
        );
        Assert.True(refused.IsDeadShort);
        Assert.Contains("dead short", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lamp_of_a_bike_with_runs_must_name_its_points()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with { Lamps = [bike.Lamps[0] with { Feed = null }] };
        Assert.Contains(
            "low beam",
            Assert.Throws<ArgumentException>(() => new HarnessNetwork(bike)).Message,
            StringComparison.Ordinal
        );
    }
}
