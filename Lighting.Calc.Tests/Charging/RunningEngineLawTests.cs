using System.Collections.Immutable;
using FsCheck.Xunit;
using Lighting.Calc.Tests.WireSizing;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

/// <summary>Laws of the running engine over random bikes, speeds, settings, regulators and states of charge.</summary>
public class RunningEngineLawTests
{
    [Property(MaxTest = 300)]
    public void What_the_generator_gives_is_what_battery_regulator_field_wires_and_lamps_take(int seed)
    {
        var random = new Random(seed);
        AssertBalances(Make(random), random);
    }

    [Property(MaxTest = 300)]
    public void The_same_holds_where_the_generator_joins_the_harness_apart_from_the_battery(int seed)
    {
        var random = new Random(seed);
        AssertBalances(Apart(random, Make(random)), random);
    }

    // In every setting, at drawn speeds.
    private static void AssertBalances(Bike bike, Random random)
    {
        ChargingOptions options = Options(random);
        RunningEngine engine = RunningEngine.Of(bike, options);
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
            foreach (double rpm in Speeds(bike, random))
                if (Solved(engine, rpm, setting) is { } point)
                    AssertBalances(bike, options, point);
    }

    [Property(MaxTest = 100)]
    public void A_generator_that_joins_next_to_the_battery_joins_at_it(int seed)
    {
        var random = new Random(seed);
        Bike bike = Make(random) with { BatteryResistance = ElectricResistance.FromMilliohms(5 + random.Next(50)) };
        Bike apart = bike with
        {
            Runs =
            [
                .. bike.Runs,
                bike.Runs[0] with
                {
                    Name = "short lead",
                    From = bike.LivePoint,
                    To = "next to it",
                    Length = Length.Zero,
                    Joints = 0,
                },
            ],
            GeneratorPoint = "next to it",
            RegulatorPlace = random.Next(2) == 0 ? RegulatorPlace.Generator : RegulatorPlace.Battery,
        };
        ChargingOptions options = Options(random);
        RunningEngine one = RunningEngine.Of(bike, options),
            other = RunningEngine.Of(apart, options);
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
            foreach (double rpm in Speeds(bike, random))
            {
                if (Solved(one, rpm, setting) is not { } expected || Solved(other, rpm, setting) is not { } point)
                    continue;
                // A regulator at the battery has ten microohms or more.
                double stiff = 1e-5 * point.Bus!.RegulatorCurrent.Amperes;
                if (apart.RegulatorPlace == RegulatorPlace.Generator)
                    stiff = 0;
                Assert.Equal(expected.SupplyVoltage.Volts, point.SupplyVoltage.Volts, 1e-7 + stiff);
                Assert.Equal(expected.Bus!.BatteryCurrent.Amperes, point.Bus.BatteryCurrent.Amperes, 1e-5 + stiff);
                Assert.Equal(
                    expected.Bus.RegulatorCurrent.Amperes,
                    point.Bus.RegulatorCurrent.Amperes,
                    1e-5 + 10 * stiff
                );
                Assert.Equal(expected.TotalCurrent.Amperes, point.TotalCurrent.Amperes, 1e-6 + 10 * stiff);
                Assert.All(expected.Lamps.Zip(point.Lamps), l =>
                    Assert.Equal(l.First.Voltage.Volts, l.Second.Voltage.Volts, 1e-7 + 3 * stiff)
                );
            }
    }

    [Property(MaxTest = 200)]
    public void With_a_series_regulator_and_enough_output_every_lamp_is_as_on_an_ideal_source_at_the_joint(int seed)
    {
        var random = new Random(seed);
        Bike bike = Make(random);
        if (random.Next(2) == 0)
            bike = Apart(random, bike);
        bike = bike with
        {
            Regulator = RegulatorKind.Series,
            RegulatorPlace = RegulatorPlace.Generator,
            // Nothing flows into the battery, as into one that is charged.
            BatteryCapacity = null,
            Charging = [.. bike.Charging.Select(c => c with { Current = ElectricCurrent.FromAmperes(500) })],
        };
        RunningEngine engine = RunningEngine.Of(bike);
        HarnessSolver ideal = new HarnessNetwork(WithBatteryAtJoint(bike)).CreateSolver();
        ideal.SetSupply(bike.ChargingVoltage);
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
        {
            // Behind long wires a battery apart from the joint may discharge all the same, into lamps near it.
            if (Solved(engine, 6000, setting) is not { } point || point.Bus!.Discharges)
                continue;
            OperatingPoint expected = ideal.Solve(setting);
            Assert.Equal(bike.ChargingVoltage.Volts, point.SupplyVoltage.Volts, 1e-12);
            Assert.All(expected.Lamps.Zip(point.Lamps), l =>
                Assert.Equal(l.First.Voltage.Volts, l.Second.Voltage.Volts, 1e-6)
            );
        }
    }

    // The same wires with the names of battery and joint exchanged: an ideal source where the generator joins.
    private static Bike WithBatteryAtJoint(Bike bike)
    {
        if (bike.GeneratorPoint is not { } joint)
            return bike with { BatteryResistance = ElectricResistance.Zero };
        string Of(string? point) =>
            Name.Equal(point!, joint) ? bike.LivePoint
            : Name.Equal(point!, bike.LivePoint) ? "was the battery"
            : point!;
        return bike with
        {
            GeneratorPoint = null,
            BatteryResistance = ElectricResistance.Zero,
            Runs = [.. bike.Runs.Select(r => r with { From = Of(r.From), To = Of(r.To) })],
            Switches = [.. bike.Switches.Select(s => s with { From = Of(s.From), To = Of(s.To) })],
            Fuses = [.. bike.Fuses.Select(f => f with { From = Of(f.From), To = Of(f.To) })],
            Lamps = [.. bike.Lamps.Select(l => l with { Feed = Of(l.Feed), Return = Of(l.Return) })],
        };
    }

    // Any point that wires and fuses join to the battery.
    private static Bike Apart(Random random, Bike bike)
    {
        string[] points =
        [
            .. new HarnessGraph(bike).Points.Where(p =>
                !Name.Equal(p, bike.LivePoint)
                && (bike with { GeneratorPoint = p }).Validate().IsEmpty
            ),
        ];
        return bike with
        {
            GeneratorPoint = points[random.Next(points.Length)],
            RegulatorPlace = random.Next(2) == 0 ? RegulatorPlace.Generator : RegulatorPlace.Battery,
        };
    }

    // The lit one: at every higher voltage more is taken than is given.
    [Property(MaxTest = 100)]
    public void There_is_no_operating_point_at_a_higher_voltage(int seed)
    {
        var random = new Random(seed);
        Bike bike = Make(random);
        ChargingOptions options = Options(random);
        RunningEngine engine = RunningEngine.Of(bike, options);
        var sink = BatteryAndRegulator.Of(bike, options);
        HarnessSolver ideal = new HarnessNetwork(
            bike with
            {
                BatteryResistance = ElectricResistance.Zero,
            }
        ).CreateSolver();
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
        {
            double rpm = Speeds(bike, random)[0];
            if (Solved(engine, rpm, setting) is not { } point)
                continue;
            GeneratorOutput generator = engine.Output.GeneratorAt(rpm, setting)!;
            double volts = point.SupplyVoltage.Volts,
                top = 2 * Math.Max(volts, sink.HoldVolts);
            for (int step = 1; step <= 40; step++)
            {
                double higher = volts + 1e-6 + (top - volts) * step / 40;
                ideal.SetSupply(ElectricPotential.FromVolts(higher));
                double surplus =
                    generator.AmperesAt(higher)
                    - options.FieldCurrent.Amperes
                    - ideal.Solve(setting).TotalCurrent.Amperes;
                Assert.True(
                    sink.VoltsAt(surplus) < higher,
                    $"{volts} V, but {sink.VoltsAt(surplus)} V at {higher} V ({setting})"
                );
            }
        }
    }

    [Property(MaxTest = 100)]
    public void A_larger_output_never_lowers_the_voltage_of_filaments_and_resistors(int seed)
    {
        var random = new Random(seed);
        Bike bike = Make(random);
        bike = bike with
        {
            Lamps =
            [
                .. bike.Lamps.Where(l =>
                    l.Specification.Type is LampType.Filament or LampType.Halogen or LampType.Resistor
                ),
            ],
        };
        if (bike.Lamps.IsEmpty)
            return;
        Bike stronger = bike with { Charging = [.. bike.Charging.Select(p => p with { Current = p.Current * 1.3 })] };
        RunningEngine weak = RunningEngine.Of(bike),
            strong = RunningEngine.Of(stronger);
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
            if (Solved(weak, 3000, setting) is { } point)
                Assert.True(Solved(strong, 3000, setting)!.SupplyVoltage.Volts >= point.SupplyVoltage.Volts - 1e-9);
    }

    private static void AssertBalances(Bike bike, ChargingOptions options, OperatingPoint point)
    {
        BusState bus = point.Bus!;
        double volts = bus.Voltage.Volts,
            given = bus.GeneratorCurrent.Amperes * volts;
        double wires = point.Runs.Sum(r =>
            Math.Abs(r.Current.Amperes) * (Math.Abs(r.WireDrop.Volts) + Math.Abs(r.JointDrop.Volts))
        );
        double contacts =
            point.Contacts.Sum(c => c.Current.Amperes * c.Drop.Volts)
            + point.Fuses.Sum(f => f.Current.Amperes * f.Drop.Volts);
        double taken =
            bus.BatteryCurrent.Amperes * bus.BatteryVoltage.Volts
            + bus.RegulatorCurrent.Amperes * bus.RegulatorVoltage.Volts
            + bus.FieldCurrent.Amperes * volts
            + wires
            + contacts
            + point.Lamps.Sum(l => (double)l.Power.Watts);
        Assert.Equal(given, taken, 1e-9 * Math.Max(1, point.TotalCurrent.Amperes * volts));
        bool isApart = bike.GeneratorPoint is not null;
        // Apart from the battery the balance is found within what its small resistance makes of a rounding.
        Assert.InRange(
            bus.GeneratorCurrent.Amperes,
            isApart ? -1e-6 : 0,
            bus.AvailableCurrent.Amperes + (isApart ? 1e-6 : 1e-12)
        );
        Assert.InRange(bus.RegulatorCurrent.Amperes, 0, options.ShuntLimit?.Amperes ?? double.PositiveInfinity);
        var sink = BatteryAndRegulator.Of(bike, options);
        // A battery apart has ten microohms or more.
        double battery = bus.BatteryVoltage.Volts;
        if (bus.Discharges)
            Assert.Equal(
                sink.OpenVolts + bus.BatteryCurrent.Amperes * Math.Max(isApart ? 1e-5 : 0, sink.BatteryOhms),
                battery,
                1e-8
            );
        else
            Assert.True(battery >= sink.OpenVolts - 1e-9);
        if (bus.RegulatorCurrent.Amperes > 1e-9)
            Assert.True(bus.RegulatorVoltage.Volts >= sink.HoldVolts - 1e-9);
    }

    // A harness that joins the terminals without resistance has no operating point.
    private static OperatingPoint? Solved(RunningEngine engine, double rpm, Setting setting)
    {
        try
        {
            return engine.At(Rpm(rpm), setting);
        }
        catch (NetworkNotSolvedException problem) when (problem.IsDeadShort)
        {
            return null;
        }
    }

    private static double[] Speeds(Bike bike, Random random) =>
        [
            1000 + 4000 * random.NextDouble(),
            bike.Charging[0].Speed.RevolutionsPerMinute,
            bike.Charging[^1].Speed.RevolutionsPerMinute,
        ];

    private static Bike Make(Random random)
    {
        Bike bike = RandomHarness.Make(random, 2 + random.Next(6));
        double most = 2 + 18 * random.NextDouble(),
            volts = bike.SystemVoltage.Volts;
        RegulatorKind regulator = (RegulatorKind)random.Next(4);
        ImmutableArray<ChargingPoint> charging =
        [
            .. new[] { (900.0, 0.1), (1800, 0.5), (3000, 0.8), (6000, 1) }.Select(p => new ChargingPoint(
                Rpm(p.Item1),
                ElectricCurrent.FromAmperes(p.Item2 * most),
                Condition.Always
            )),
        ];
        return bike with
        {
            BatteryResistance = ElectricResistance.FromMilliohms(random.Next(4) == 0 ? 0 : 100 * random.NextDouble()),
            BatteryCapacity = random.Next(4) == 0 ? null : ElectricCharge.FromAmpereHours(3 + 20 * random.NextDouble()),
            Charging = charging,
            Regulator = regulator,
            ZenerVoltage =
                regulator == RegulatorKind.Shunt && random.Next(2) == 0
                    ? ElectricPotential.FromVolts(1.18 * volts)
                    : null,
            RegulatorResistance =
                random.Next(2) == 0 ? ElectricResistance.Zero : ElectricResistance.FromOhms(random.NextDouble()),
        };
    }

    private static ChargingOptions Options(Random random) =>
        new()
        {
            InitialStateOfCharge = Ratio.FromDecimalFractions(random.NextDouble()),
            FieldCurrent = ElectricCurrent.FromAmperes(random.Next(3) == 0 ? 2 * random.NextDouble() : 0),
            ShuntLimit = random.Next(3) == 0 ? ElectricCurrent.FromAmperes(4 * random.NextDouble()) : null,
        };
}
