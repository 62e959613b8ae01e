using Lighting.Calc.Tests.Cli;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

/// <summary>The voltage at the battery's terminals is the one at which the currents of generator, battery, regulator
/// and harness balance.</summary>
public class RunningEngineTests
{
    // 12.6 V behind 0.1 Ω, 3 A at any voltage, 2 Ω: (12.6 − V)/0.1 + 3 = V/2 gives V = 129/10.5.
    [Fact]
    public void A_battery_makes_up_what_the_generator_does_not_give()
    {
        OperatingPoint point = At(Heater(2, Capacity(10)), 3000);
        BusState bus = point.Bus!;
        Assert.Equal(129 / 10.5, bus.Voltage.Volts, 1e-9);
        Assert.Equal(-(12.6 - 129 / 10.5) / 0.1, bus.BatteryCurrent.Amperes, 1e-8);
        Assert.Equal(3, bus.GeneratorCurrent.Amperes, 1e-12);
        Assert.Equal(129 / 10.5 / 2, point.TotalCurrent.Amperes, 1e-9);
        Assert.Equal(12.6 - 129 / 10.5, bus.BatteryDrop.Volts, 1e-8);
        Assert.True(bus.Discharges);
        Assert.Equal(0, bus.RegulatorCurrent.Amperes);
    }

    // A full battery of 10 Ah takes 0.5 A at 13.6 V, so 0.25 A at 13.1 V; the heater takes the other 2.75 A.
    [Fact]
    public void Between_open_circuit_and_held_voltage_the_battery_takes_its_share()
    {
        BusState bus = At(Heater(13.1 / 2.75, Capacity(10)), 3000).Bus!;
        Assert.Equal(13.1, bus.Voltage.Volts, 1e-9);
        Assert.Equal(0.25, bus.BatteryCurrent.Amperes, 1e-9);
        Assert.Equal(0, bus.BatteryDrop.Volts);
    }

    // Half empty it takes 5 A, and its open-circuit voltage is 12.65 − 12.24 V lower.
    [Fact]
    public void A_battery_that_is_not_full_takes_the_ampere_hours_it_lacks()
    {
        var half = new ChargingOptions { InitialStateOfCharge = Ratio.FromPercent(50) };
        Bike bike = Heater(1000, Capacity(10));
        RunningEngine engine = RunningEngine.Of(bike, half);
        double open = 12.6 - (12.65 - LeadAcid.OpenCircuitVoltage(Ratio.FromPercent(50), bike.SystemVoltage).Volts);
        Assert.Equal(open, engine.BatteryVoltage.Volts, 1e-12);
        BusState bus = engine.At(Rpm(3000), Setting.Empty)!.Bus!;
        Assert.Equal(open + (13.6 - open) / 5 * bus.BatteryCurrent.Amperes, bus.Voltage.Volts, 1e-9);
        Assert.Equal(3 - bus.Voltage.Volts / 1000, bus.BatteryCurrent.Amperes, 1e-9);
    }

    [Theory]
    [InlineData(RegulatorKind.NotStated, 13.6, 1.86, 0)]
    [InlineData(RegulatorKind.Series, 13.6, 1.86, 0)]
    [InlineData(RegulatorKind.Shunt, 13.6, 3, 1.14)]
    [InlineData(RegulatorKind.None, 13.85 / 1.01, 3, 0)]
    public void What_is_over_goes_where_the_regulator_sends_it(
        RegulatorKind regulator,
        double volts,
        double generator,
        double shunted
    )
    {
        // 10 Ω draw 1.36 A, the full battery takes 0.5 A, 1.14 A are over; without a regulator the battery takes
        // them through its 0.1 Ω: V = 13.6 + 0.1·(3 − V/10 − 0.5).
        OperatingPoint point = At(Heater(10, Capacity(10)) with { Regulator = regulator }, 3000);
        BusState bus = point.Bus!;
        Assert.Equal(volts, bus.Voltage.Volts, 1e-9);
        Assert.Equal(generator, bus.GeneratorCurrent.Amperes, 1e-9);
        Assert.Equal(shunted, bus.RegulatorCurrent.Amperes, 1e-9);
        Assert.Equal(
            bus.GeneratorCurrent.Amperes,
            point.TotalCurrent.Amperes + bus.BatteryCurrent.Amperes + bus.RegulatorCurrent.Amperes,
            1e-9
        );
        Assert.Equal(shunted * 13.6, (double)bus.RegulatorHeat.Watts, 1e-7);
    }

    // 14 V and 0.5 Ω: 1 A makes 14.5 V; the battery takes 0.5 A and the heater 1.5 A.
    [Fact]
    public void The_voltage_of_a_Zener_diode_rises_with_its_current()
    {
        Bike bike = Heater(14.5 / 1.5, Capacity(10)) with
        {
            Regulator = RegulatorKind.Shunt,
            ZenerVoltage = ElectricPotential.FromVolts(14),
            RegulatorResistance = ElectricResistance.FromOhms(0.5),
        };
        BusState bus = At(bike, 3000).Bus!;
        Assert.Equal(14.5, bus.Voltage.Volts, 1e-9);
        Assert.Equal(1, bus.RegulatorCurrent.Amperes, 1e-9);
        Assert.Equal(14.5, (double)bus.RegulatorHeat.Watts, 1e-8);
        Assert.Equal(0.5, bus.BatteryCurrent.Amperes, 1e-9);
    }

    // The regulator takes 0.4 A at most; the battery, of which no capacity is known, gets what is left through its 0.1
    // Ω.
    [Fact]
    public void Beyond_its_limit_a_shunt_regulator_leaves_the_rest_to_the_battery()
    {
        Bike bike = Heater(1000, null) with { Regulator = RegulatorKind.Shunt };
        RunningEngine engine = RunningEngine.Of(
            bike,
            new ChargingOptions { ShuntLimit = ElectricCurrent.FromAmperes(0.4) }
        );
        BusState bus = engine.At(Rpm(3000), Setting.Empty)!.Bus!;
        Assert.Equal(0.4, bus.RegulatorCurrent.Amperes, 1e-9);
        Assert.Equal(3 - 0.4 - bus.Voltage.Volts / 1000, bus.BatteryCurrent.Amperes, 1e-9);
        Assert.Equal(13.6 + 0.1 * bus.BatteryCurrent.Amperes, bus.Voltage.Volts, 1e-9);
    }

    [Fact]
    public void A_field_current_is_part_of_the_balance()
    {
        Bike bike = Heater(2, Capacity(10));
        BusState bus = RunningEngine
            .Of(bike, new ChargingOptions { FieldCurrent = ElectricCurrent.FromAmperes(1) })
            .At(Rpm(3000), Setting.Empty)!
            .Bus!;
        Assert.Equal((126 + 2) / 10.5, bus.Voltage.Volts, 1e-9);
    }

    // Without a battery resistance the battery holds its open-circuit voltage.
    [Fact]
    public void A_battery_without_resistance_holds_its_own_voltage()
    {
        Bike bike = Heater(2, Capacity(10)) with { BatteryResistance = ElectricResistance.Zero };
        BusState bus = At(bike, 3000).Bus!;
        Assert.Equal(12.6, bus.Voltage.Volts, 1e-12);
        Assert.Equal(3 - 6.3, bus.BatteryCurrent.Amperes, 1e-9);
    }

    [Fact]
    public void Without_a_known_capacity_output_and_load_are_equal()
    {
        BusState bus = At(Heater(13.1 / 3, null), 3000).Bus!;
        Assert.Equal(13.1, bus.Voltage.Volts, 1e-6);
        Assert.Equal(0, bus.BatteryCurrent.Amperes, 1e-6);
    }

    // The list begins at 1000 rpm with 1.5 A and ends at 7000 rpm.
    [Theory]
    [InlineData(900, false)]
    [InlineData(1000, true)]
    [InlineData(7000, true)]
    [InlineData(7100, false)]
    public void Where_the_list_does_not_reach_there_is_no_operating_point(double rpm, bool known) =>
        Assert.Equal(known, RunningEngine.Of(Twin()).At(Rpm(rpm), Setting.Empty) is not null);

    [Fact]
    public void A_speed_of_zero_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RunningEngine.Of(Twin()).At(Rpm(0), Setting.Empty));

    // At 7000 rpm the twin's 13 A cover every load of one lamp circuit.
    [Fact]
    public void With_a_series_regulator_and_enough_speed_every_lamp_is_as_on_an_ideal_source()
    {
        Bike twin = Twin() with { Regulator = RegulatorKind.Series };
        RunningEngine engine = RunningEngine.Of(twin);
        HarnessSolver ideal = new HarnessNetwork(
            twin with
            {
                BatteryResistance = ElectricResistance.Zero,
            }
        ).CreateSolver();
        ideal.SetSupply(ElectricPotential.FromVolts(13.8));
        int held = 0;
        foreach (Setting setting in SettingEnumeration.Of(twin, Condition.Always))
        {
            OperatingPoint point = engine.At(Rpm(7000), setting)!,
                expected = ideal.Solve(setting);
            if (expected.TotalCurrent.Amperes > 13 - 0.6)
                continue;
            held++;
            Assert.Equal(13.8, point.SupplyVoltage.Volts, 1e-12);
            Assert.All(expected.Lamps.Zip(point.Lamps), l =>
                Assert.Equal(l.First.Voltage.Volts, l.Second.Voltage.Volts, 1e-9)
            );
        }

        Assert.True(held >= 60, $"{held} settings");
    }

    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    public void With_the_engine_off_the_battery_feeds_the_lamps_through_its_resistance(string name)
    {
        Bike bike = Read(name);
        HarnessSolver battery = new HarnessNetwork(bike).CreateSolver();
        battery.SetSupply(bike.BatteryVoltage);
        BikeSolution off = BikeSolution.Solve(
            bike,
            new CheckOptions { Engine = EngineState.Off },
            TestContext.Current.CancellationToken
        );
        foreach (OperatingPoint point in off.Points)
        {
            OperatingPoint expected = battery.Solve(point.Setting);
            Assert.Null(point.Bus);
            Assert.Equal(expected.TotalCurrent, point.TotalCurrent);
            Assert.Equal(bike.BatteryVoltage, point.SupplyVoltage);
            Assert.Equal(expected.BatteryDrop, point.BatteryDrop);
            Assert.Equal(expected.Lamps.Select(l => (l.Voltage, l.Drop)), point.Lamps.Select(l => (l.Voltage, l.Drop)));
        }
    }

    [Theory]
    [InlineData("valley-twin", 13.8)]
    [InlineData("chapel-single", 7.0)]
    public void Without_a_charging_list_the_charging_voltage_is_at_the_terminals(string name, double volts)
    {
        Bike bike = Read(name) with { Charging = [] };
        BikeSolution running = BikeSolution.Solve(bike, new CheckOptions(), TestContext.Current.CancellationToken);
        Func<Setting, bool> mayRun = EngineRunning.Of(bike);
        Assert.All(
            running.Points.Where(p => mayRun(p.Setting)),
            p => Assert.Equal((volts, 0.0), (p.SupplyVoltage.Volts, p.BatteryDrop.Volts))
        );
    }

    // The ignition coils of the twin are fed by its battery.
    [Fact]
    public void Without_ignition_the_engine_stands_and_the_battery_feeds_all()
    {
        Bike twin = Read("valley-twin");
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        BikeSolution running = BikeSolution.Solve(twin, new CheckOptions(), cancellation),
            off = BikeSolution.Solve(twin, new CheckOptions { Engine = EngineState.Off }, cancellation);
        (OperatingPoint Running, OperatingPoint Off)[] standing =
        [
            .. running.Points.Zip(off.Points).Where(p => p.First.Setting.PositionOf("ignition") == "off"),
        ];
        Assert.NotEmpty(standing);
        Assert.All(standing, p => Assert.Equal(p.Off.SupplyVoltage, p.Running.SupplyVoltage));
        Assert.All(standing, p => Assert.Equal(p.Off.TotalCurrent.Amperes, p.Running.TotalCurrent.Amperes, 1e-12));
        Assert.All(standing, p => Assert.Null(p.Running.Bus));
    }

    // The dynamo gives 8.2 A; whatever draws more takes the rest from the 6.3 V battery.
    [Fact]
    public void No_setting_draws_more_than_generator_and_battery_give_at_its_voltage()
    {
        Bike single = Read("chapel-single");
        BikeSolution running = BikeSolution.Solve(single, new CheckOptions(), TestContext.Current.CancellationToken);
        OperatingPoint heaviest = running.Points.MaxBy(p => p.TotalCurrent.Amperes)!;
        BusState bus = heaviest.Bus!;
        Assert.True(bus.Discharges && bus.Voltage.Volts < 6.3);
        Assert.Equal((6.3 - bus.Voltage.Volts) / 0.015, -bus.BatteryCurrent.Amperes, 1e-6);
        Assert.Equal(heaviest.TotalCurrent.Amperes, bus.GeneratorCurrent.Amperes - bus.BatteryCurrent.Amperes, 1e-9);
    }

    // At the battery's own 12.65 V the output of the list's 13.8 V is a little more, and lamps draw less: earlier than
    // at the charging voltage.
    [Fact]
    public void The_battery_stops_discharging_a_little_before_the_load_is_covered_at_the_charging_voltage()
    {
        Bike twin = Twin();
        Setting night = twin.In("ignition=on; lights=main; dip=low");
        RunningEngine engine = RunningEngine.Of(twin);
        double from = engine.ChargesFrom(night).Speed!.Value.RevolutionsPerMinute;
        Assert.InRange(
            from,
            1200,
            ChargingSystem.Of(twin).BalanceIn(night).BreakEven.Speed!.Value.RevolutionsPerMinute
        );
        Assert.Equal(0, engine.At(Rpm(from), night)!.Bus!.BatteryCurrent.Amperes, 1e-6);
        Assert.True(engine.At(Rpm(from - 10), night)!.Bus!.Discharges);
        Assert.False(engine.At(Rpm(from + 10), night)!.Bus!.Discharges);
    }

    [Fact]
    public void A_faster_engine_never_lowers_the_voltage()
    {
        Bike twin = Twin();
        RunningEngine engine = RunningEngine.Of(twin);
        foreach (Setting setting in SettingEnumeration.Of(twin, Condition.Parse("ignition=on")))
        {
            double[] volts =
            [
                .. Enumerable.Range(10, 60).Select(n => engine.At(Rpm(100 * n), setting)!.SupplyVoltage.Volts),
            ];
            Assert.All(volts.Skip(1).Zip(volts), v => Assert.True(v.First >= v.Second - 1e-9));
        }
    }

    private static OperatingPoint At(Bike bike, double rpm) => RunningEngine.Of(bike).At(Rpm(rpm), Setting.Empty)!;

    // One resistor across the battery; one listed point, so that the output is the same at any voltage.
    private static Bike Heater(double ohms, ElectricCharge? capacity) =>
        Calc.Bike.ForSystem(ElectricPotential.FromVolts(12)) with
        {
            BatteryVoltage = ElectricPotential.FromVolts(12.6),
            ChargingVoltage = ElectricPotential.FromVolts(13.6),
            BatteryResistance = ElectricResistance.FromOhms(0.1),
            BatteryCapacity = capacity,
            Charging = [new ChargingPoint(Rpm(3000), ElectricCurrent.FromAmperes(3), Condition.Always)],
            Lamps =
            [
                new FittedLamp
                {
                    Circuit = "test",
                    Lamp = "heater",
                    Specification = LampSpecification.FromCurrent(
                        LampType.Resistor,
                        ElectricPotential.FromVolts(12),
                        ElectricCurrent.FromAmperes(12 / ohms)
                    ),
                },
            ],
        };

    private static ElectricCharge? Capacity(double ampereHours) => ElectricCharge.FromAmpereHours(ampereHours);

    private static Bike Twin() => Read("valley-twin");

    private static Bike Read(string name) => BikeLists.Read(CliProcess.Bike(name)).Value.Bike;
}
