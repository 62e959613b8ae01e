using UnitsNet;

namespace Lighting.Calc.Tests.Network;

/// <summary>What a harness and its solver refuse, in words, and what they take at the ends of a range.</summary>
public class HarnessLimitTests
{
    private readonly HarnessSolver _solver = new HarnessNetwork(Benches.Sidecar()).CreateSolver();

    [Theory]
    [InlineData(-1)]
    [InlineData(5)]
    public void A_run_that_is_not_there_is_refused(int run) =>
        Assert.Throws<ArgumentOutOfRangeException>(
            "run",
            () => _solver.SetRun(run, ElectricResistance.Zero, ElectricResistance.Zero)
        );

    [Theory]
    [InlineData(-1)]
    [InlineData(3)]
    public void A_contact_or_a_lamp_that_is_not_there_is_refused(int index)
    {
        Assert.Throws<ArgumentOutOfRangeException>("contact", () => _solver.SetContact(index, ElectricResistance.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("lamp", () => _solver.SetLamp(index, Benches.Filament(12, 5)));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void A_fuse_that_is_not_there_is_refused(int fuse) =>
        Assert.Throws<ArgumentOutOfRangeException>("fuse", () => _solver.SetFuse(fuse, ElectricResistance.Zero));

    [Fact]
    public void Resistances_and_volts_below_zero_are_refused()
    {
        var below = ElectricResistance.FromOhms(-1);
        Refused(
            "resistance",
            "Resistance must be zero or more.",
            () => _solver.SetRun(0, below, ElectricResistance.Zero)
        );
        Refused(
            "resistance",
            "Resistance must be zero or more.",
            () => _solver.SetRun(0, ElectricResistance.Zero, below)
        );
        Refused("resistance", "Resistance must be zero or more.", () => _solver.SetContact(0, below));
        Refused("resistance", "Resistance must be zero or more.", () => _solver.SetFuse(0, below));
        Refused("resistance", "Resistance must be zero or more.", () => _solver.SetBatteryResistance(below));
        Refused(
            "voltage",
            "Supply voltage must be zero or more.",
            () => _solver.SetSupply(ElectricPotential.FromVolts(-1))
        );
    }

    [Fact]
    public void Without_supply_volts_nothing_flows_and_no_lamp_counts_as_fed()
    {
        _solver.SetSupply(ElectricPotential.Zero);
        OperatingPoint point = _solver.Solve(Benches.Set(Benches.Sidecar(), "lights=pass"));
        Assert.Equal(0, point.TotalCurrent.Amperes);
        Assert.All(point.Lamps, l => Assert.Null(l.Drop));
    }

    [Fact]
    public void A_dead_short_names_the_setting()
    {
        var bike = new Bike
        {
            Runs = [Benches.Run("strap", Bike.BatteryPlus, "pillar", 0)],
            Switches = [Benches.Contact("test", "pillar", Bike.BatteryMinus, "on")],
        };
        Setting on = Benches.Set(bike, "test=on");
        NetworkNotSolvedException refused = Assert.Throws<NetworkNotSolvedException>(() =>
            new HarnessNetwork(bike).CreateSolver().Solve(on)
        );
        Assert.Equal(
            "In the setting 'test=on' battery + and battery - are joined without any resistance: a dead short.",
            refused.Message
        );
        Assert.Equal(on, refused.Setting);
        Assert.Equal(0, new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "")).TotalCurrent.Amperes);
    }

    [Fact]
    public void Several_fuses_need_runs_to_say_what_each_feeds()
    {
        Fuse fuse = new() { Name = "main", Rating = ElectricCurrent.FromAmperes(10) };
        Assert.StartsWith(
            "Bike must be valid. Bike.Fuses row 2 'tail': 'Name': 'tail' is a second fuse; a bike with several "
                + "fuses needs runs",
            Assert
                .Throws<ArgumentException>(
                    "bike",
                    () => new HarnessNetwork(new Bike { Fuses = [fuse, fuse with { Name = "tail" }] })
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Parts_without_points_are_refused_where_there_are_runs()
    {
        Bike bike = Benches.Sidecar();
        foreach (
            Bike lacking in new[]
            {
                bike with
                {
                    Lamps = [bike.Lamps[0] with { Return = null }],
                },
                bike with
                {
                    Lamps = [bike.Lamps[0] with { Feed = null }],
                },
            }
        )
            Assert.StartsWith(
                "Bike must be valid. Bike.Lamps row 1 'low beam': '",
                Assert.Throws<ArgumentException>("bike", () => new HarnessNetwork(lacking)).Message,
                StringComparison.Ordinal
            );
        foreach (Fuse fuse in new[] { bike.Fuses[0] with { From = null }, bike.Fuses[0] with { To = null } })
            Assert.StartsWith(
                "Bike must be valid. Bike.Fuses row 1 'main': '",
                Assert
                    .Throws<ArgumentException>("bike", () => new HarnessNetwork(bike with { Fuses = [fuse] }))
                    .Message,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public void Points_are_those_of_the_battery_and_then_of_the_lists_each_once_whatever_its_case()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with { Runs = bike.Runs.SetItem(0, bike.Runs[0] with { From = "FUSED" }) };
        var network = new HarnessNetwork(bike);
        Assert.Equal(
            [
                Bike.BatteryPlus,
                Bike.BatteryMinus,
                "fused",
                "lights in",
                "low line",
                "high line",
                "tail line",
                "low feed",
                "high feed",
                "tail feed",
                "head earth",
            ],
            network.Points
        );
        Assert.Equal(2, network.NodeOf("Fused"));
        Assert.StartsWith(
            "The bike has no point 'nowhere'.",
            Assert.Throws<ArgumentException>("point", () => network.NodeOf("nowhere")).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Without_runs_the_fuse_stands_between_the_battery_and_the_lamps()
    {
        var bike = new Bike { Fuses = [new Fuse { Name = "main", Rating = ElectricCurrent.FromAmperes(10) }] };
        Assert.Equal([Bike.BatteryPlus, Bike.BatteryMinus, "main fuse out"], new HarnessNetwork(bike).Points);
        // A point means nothing without runs.
        Assert.Equal(
            [Bike.BatteryPlus, Bike.BatteryMinus, "main fuse out"],
            new HarnessNetwork(bike with { Fuses = [bike.Fuses[0] with { To = "lamps" }] }).Points
        );
        Assert.Equal([Bike.BatteryPlus, Bike.BatteryMinus], new HarnessNetwork(new Bike()).Points);
    }

    // 12 V, 20 mΩ of battery, a heater of 3.98 Ω: 3 A. The feed is on the supply's side of a positive-earth bike, too.
    [Theory]
    [InlineData(Earth.Negative, 11.94, 0)]
    [InlineData(Earth.Positive, 0, 11.94)]
    public void Points_read_against_battery_minus(Earth earth, double feedVolts, double returnVolts)
    {
        string live = earth == Earth.Negative ? Bike.BatteryPlus : Bike.BatteryMinus,
            back = earth == Earth.Negative ? Bike.BatteryMinus : Bike.BatteryPlus;
        var bike = new Bike
        {
            Earth = earth,
            ChargingVoltage = ElectricPotential.FromVolts(12),
            BatteryResistance = ElectricResistance.FromMilliohms(20),
            Runs =
            [
                Benches.Run("feed", live, "heater +", 0),
                Benches.Run("stub", "heater +", "stub end", 1),
                Benches.Run("island", "far", "away", 1),
            ],
            Lamps =
            [
                Benches.Lamp(
                    "heater",
                    "heater +",
                    back,
                    LampSpecification.FromCurrent(
                        LampType.Resistor,
                        ElectricPotential.FromVolts(11.94),
                        ElectricCurrent.FromAmperes(3)
                    )
                ),
            ],
        };
        OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(Setting.Empty);
        Assert.Equal(3, point.TotalCurrent.Amperes, 1e-9);
        Assert.Equal(0.06, point.BatteryDrop.Volts, 1e-9);
        Assert.Equal(11.94, point.Lamps[0].Voltage.Volts, 1e-9);
        Assert.Equal(3, point.Lamps[0].Current.Amperes, 1e-9);
        Assert.Equal(earth == Earth.Negative ? 3 : -3, point.Runs[0].Current.Amperes, 1e-9);
        double Volts(string name) => point.Points.Single(p => p.Point == name).Voltage.Volts;
        Assert.Equal(feedVolts, Volts("heater +"), 1e-9);
        // A dead end has the volts of the point it hangs on; an island none.
        Assert.Equal(feedVolts, Volts("stub end"), 1e-9);
        Assert.Equal(returnVolts, Volts(back), 1e-9);
        Assert.Equal(0, Volts("far"));
        Assert.Equal(0, Volts("away"));
    }

    // 13.5 V straight on each lamp, from the live to the earth side of either bike.
    [Theory]
    [InlineData(Earth.Negative)]
    [InlineData(Earth.Positive)]
    public void A_lamp_of_every_type_draws_in_the_harness_what_its_law_says(Earth earth)
    {
        foreach (LampType type in Enum.GetValues<LampType>())
        {
            var specification = LampSpecification.FromCurrent(
                type,
                ElectricPotential.FromVolts(12),
                ElectricCurrent.FromAmperes(1.5)
            );
            var bike = new Bike
            {
                Earth = earth,
                ChargingVoltage = ElectricPotential.FromVolts(13.5),
                BatteryResistance = ElectricResistance.Zero,
                Lamps = [Benches.Lamp("lamp", "", "", specification, quantity: 2) with { Feed = null, Return = null }],
            };
            LampState lamp = new HarnessNetwork(bike).CreateSolver().Solve(Setting.Empty).Lamps[0];
            Assert.Equal(13.5, lamp.Voltage.Volts, 1e-9);
            Assert.Equal(
                2 * specification.CurrentAt(ElectricPotential.FromVolts(13.5)).Amperes,
                lamp.Current.Amperes,
                1e-5
            );
        }
    }

    [Fact]
    public void Points_are_equal_when_they_are_one_solution_in_one_setting()
    {
        Bike bike = Benches.Sidecar();
        Setting low = Benches.Set(bike, "lights=low"),
            high = Benches.Set(bike, "lights=high");
        OperatingPoint first = _solver.Solve(low),
            again = _solver.Solve(low),
            other = _solver.Solve(high);
        Assert.Equal(first, again);
        Assert.Equal(first.GetHashCode(), again.GetHashCode());
        Assert.NotEqual(first, other);
        Assert.False(first.Equals(null));
        Assert.NotEqual(first, new HarnessNetwork(bike).CreateSolver().Solve(low));
        Assert.Equal([first, other], OperatingPoint.FirstOfEachCurrents([first, again, other]));
    }

    [Fact]
    public void A_contact_that_no_current_passes_is_still_told_open_or_closed()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with { Switches = bike.Switches.Add(Benches.Contact("stand", "tail line", "stand plug", "up")) };
        OperatingPoint up = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low; stand=up"));
        Assert.Equal([true, false, true, true], up.Contacts.Select(c => c.Closed));
        Assert.Equal(0, up.Contacts[3].Current.Amperes);
        Assert.Equal(up.Lamps[0].Current.Amperes, up.Contacts[0].Current.Amperes, 1e-9);
        Assert.Equal(0.010 * up.Lamps[0].Current.Amperes, up.Contacts[0].Drop.Volts, 1e-9);
        Assert.Equal(
            up.Points.Single(p => p.Point == "tail line").Voltage.Volts,
            up.Points.Single(p => p.Point == "stand plug").Voltage.Volts
        );
        OperatingPoint down = new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low"));
        Assert.False(down.Contacts[3].Closed);
        Assert.Equal(0, down.Points.Single(p => p.Point == "stand plug").Voltage.Volts);
    }

    // Listed from the far end in, so that the volts come one part further each time round.
    [Fact]
    public void Behind_a_closed_contact_that_leads_nowhere_every_point_has_the_volts_before_it()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Runs =
            [
                Benches.Run("third", "c", "d", 1),
                Benches.Run("second", "b", "c", 1),
                Benches.Run("first", "stand in", "b", 1),
                .. bike.Runs,
            ],
            Switches = bike.Switches.Add(Benches.Contact("stand", "tail line", "stand in", "up")),
            Lamps = bike.Lamps.Insert(0, Benches.Lamp("lost", "far side", "d", Benches.Filament(12, 5))),
        };
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        OperatingPoint up = solver.Solve(Benches.Set(bike, "lights=low; stand=up")),
            down = solver.Solve(Benches.Set(bike, "lights=low"));
        double line = Volts(up, "tail line");
        Assert.InRange(line, 12, 13.5);
        Assert.All(["stand in", "b", "c", "d", "far side"], p => Assert.Equal(line, Volts(up, p)));
        Assert.All(["stand in", "b", "c", "d", "far side"], p => Assert.Equal(0, Volts(down, p)));
        Assert.Null(up.Lamps[0].Drop);
        Assert.Equal(0, up.Lamps[0].Current.Amperes);

        static double Volts(OperatingPoint point, string name) =>
            point.Points.Single(p => p.Point == name).Voltage.Volts;
    }

    [Fact]
    public void A_point_keeps_the_values_it_was_solved_with_when_the_solver_is_told_others()
    {
        Bike bike = Benches.Sidecar() with { WireTemperature = Temperature.FromDegreesCelsius(20) };
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        Setting low = Benches.Set(bike, "lights=low");
        OperatingPoint before = solver.Solve(low);
        solver.SetRun(0, ElectricResistance.FromOhms(1), ElectricResistance.FromOhms(2));
        solver.SetContact(0, ElectricResistance.FromOhms(3));
        solver.SetFuse(0, ElectricResistance.FromOhms(4));
        solver.SetLamp(0, Benches.Filament(6, 18));
        OperatingPoint after = solver.Solve(low);
        // 1.2 m × 12.7 mΩ of wire, two joints of 5 mΩ, a contact of 10 mΩ, 4.8 mΩ of fuse.
        Assert.Equal(0.01524, before.Runs[0].WireDrop.Volts / before.Runs[0].Current.Amperes, 1e-9);
        Assert.Equal(0.02524, before.Runs[0].Resistance.Ohms, 1e-9);
        Assert.Equal(0.010, before.Contacts[0].Drop.Volts / before.Contacts[0].Current.Amperes, 1e-9);
        Assert.Equal(0.0048, before.Fuses[0].Drop.Volts / before.Fuses[0].Current.Amperes, 1e-9);
        Assert.Same(Benches.Sidecar().Lamps[0].Lamp, before.Lamps[0].Lamp.Lamp);
        Assert.Equal(12, before.Lamps[0].Lamp.Specification.ReferenceVoltage.Volts);
        Assert.Equal(
            (1.0, 2.0, 3.0),
            (
                after.Runs[0].WireDrop.Volts / after.Runs[0].Current.Amperes,
                after.Runs[0].JointDrop.Volts / after.Runs[0].Current.Amperes,
                after.Runs[0].Resistance.Ohms
            )
        );
        Assert.Equal(
            (3.0, 4.0, 6.0),
            (
                Math.Round(after.Contacts[0].Drop.Volts / after.Contacts[0].Current.Amperes, 9),
                after.Fuses[0].Drop.Volts / after.Fuses[0].Current.Amperes,
                after.Lamps[0].Lamp.Specification.ReferenceVoltage.Volts
            )
        );
    }

    [Fact]
    public void A_points_parts_are_made_once()
    {
        OperatingPoint point = _solver.Solve(Benches.Set(Benches.Sidecar(), "lights=low"));
        Assert.True(
            point.Lamps == point.Lamps
                && point.Runs == point.Runs
                && point.Fuses == point.Fuses
                && point.Points == point.Points
                && point.Contacts == point.Contacts
        );
    }

    [Fact]
    public void Without_runs_no_contact_is_in_the_circuit()
    {
        var bike = new Bike
        {
            Switches = [Benches.Contact("horn", "a", "b", "on") with { Resistance = ElectricResistance.FromOhms(1) }],
        };
        Assert.Empty(new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "horn=on")).Contacts);
    }

    [Fact]
    public void A_solution_is_of_a_bike_with_as_many_parts()
    {
        Bike bike = Benches.Sidecar();
        SolvedCircuit solved = _solver.Solve(Benches.Set(bike, "lights=low")).Solved;
        Assert.True(solved.IsOf(bike));
        Assert.False(solved.IsOf(bike with { Fuses = [] }));
        Assert.False(solved.IsOf(bike with { Runs = bike.Runs.RemoveAt(0) }));
        Assert.False(solved.IsOf(bike with { Lamps = bike.Lamps.RemoveAt(0) }));
    }

    // Two lamps of 12 V 5 W in series on 12 V: 6 V each; a lamp under a hundredth of the volts counts as not fed.
    [Fact]
    public void A_lamp_that_gets_next_to_no_volts_is_not_fed()
    {
        var bike = new Bike
        {
            ChargingVoltage = ElectricPotential.FromVolts(12),
            Runs = [Benches.Run("feed", Bike.BatteryPlus, "in", 0)],
            Lamps = [Heater("small", "in", "between", 0.09), Heater("large", "between", Bike.BatteryMinus, 11.91)],
        };
        OperatingPoint point = HarnessNetwork.OfAnyValues(bike).CreateSolver().Solve(Setting.Empty);
        Assert.Equal(0.09, point.Lamps[0].Voltage.Volts, 1e-9);
        Assert.Null(point.Lamps[0].Drop);
        Assert.Equal(0.0075, point.Lamps[1].Drop!.Value.DecimalFractions, 1e-9);
        bike = bike with
        {
            Lamps = [Heater("small", "in", "between", 0.15), Heater("large", "between", Bike.BatteryMinus, 11.85)],
        };
        Assert.NotNull(HarnessNetwork.OfAnyValues(bike).CreateSolver().Solve(Setting.Empty).Lamps[0].Drop);

        static FittedLamp Heater(string name, string feed, string back, double ohms) =>
            Benches.Lamp(
                name,
                feed,
                back,
                LampSpecification.FromCurrent(
                    LampType.Resistor,
                    ElectricPotential.FromVolts(ohms),
                    ElectricCurrent.FromAmperes(1)
                )
            );
    }

    private static void Refused(string parameter, string message, Action action) =>
        Assert.StartsWith(
            message,
            Assert.Throws<ArgumentOutOfRangeException>(parameter, action).Message,
            StringComparison.Ordinal
        );
}
