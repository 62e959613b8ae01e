using System.Collections.Immutable;
using Lighting.Calc.Tests.Network;
using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Worked examples of circuits, solved by the harness solver and, with two sources, by the running
/// engine.</summary>
public class CircuitExampleTests
{
    // Homework forum of 2013: 12.6 V behind 0.05 Ω, headlamps of 5.60 Ω: 2.23 A, 12.49 V; with the starter's 35.0 A
    // 10.74 V, for which the answer keeps the headlamps at 2.23 A: they fall to 1.92 A, 10.75 V.
    [Fact]
    [Against("source with resistance", "homework forum of 2013, headlamps and starter", CheckKind.Model)]
    public void Headlamps_and_starter_on_one_battery()
    {
        LampState alone = Loaded(12.6, 0.05, Resistor(5.6))[0];
        Publication.Meets(2.23, alone.Current.Amperes, 0.005);
        Publication.Meets(12.49, alone.Voltage.Volts, 0.005);
        Publication.Misses(10.74, Loaded(12.6, 0.05, Resistor(5.6), Fixed(35))[0].Voltage.Volts, 0.005, 0.002);
    }

    // Examination problem: 12 V, 0.02 Ω, 80 A: 10.4 V.
    [Fact]
    [Against(
        "source with resistance",
        "examination problem, battery of 0.02 Ω at 80 A",
        CheckKind.Model,
        Exact = "printed for round resistances"
    )]
    public void Battery_of_0_02_ohms_at_80_amperes() =>
        Publication.Meets(10.4, Loaded(12, 0.02, Fixed(80))[0].Voltage.Volts, 0.005);

    // Science academy notes: 12 V, 0.012 Ω, 100 A: 10.8 V, load of 0.108 Ω, 1080 W.
    [Fact]
    [Against(
        "source with resistance",
        "science academy notes, battery of 0.012 Ω at 100 A",
        CheckKind.Model,
        Exact = "printed for round resistances"
    )]
    public void Battery_of_0_012_ohms_at_100_amperes()
    {
        LampState lamp = Loaded(12, 0.012, Resistor(0.108))[0];
        Publication.Meets(100, lamp.Current.Amperes, 0.5);
        Publication.Meets(10.8, lamp.Voltage.Volts, 0.005);
        Publication.Meets(1080, (double)lamp.Power.Watts, 0.5);
    }

    // Service manual of a utility vehicle, page 8.12: its battery of 19 Ah gives a starter 45 A at 10.9 V, 120 A at 9.0
    // V, 390 A at 2.25 V. The line through the outer two is a battery of 12.03 V behind 25 mΩ.
    [Fact]
    [Against(
        "source with resistance",
        "watercraft service manual 2004, page 8.12, battery under the starter",
        CheckKind.Model
    )]
    public void Motorcycle_battery_under_its_starter()
    {
        double ohms = (10.9 - 2.25) / (390 - 45);
        Publication.Meets(9.0, Loaded(10.9 + 45 * ohms, ohms, Fixed(120))[0].Voltage.Volts, 0.05);
    }

    // Principles of Power System, example 13.1: a distributor from 300 V, sections of 0.01, 0.01, 0.012 and 0.008 Ω,
    // taps of 100, 150, 200 and 50 A: 295, 291, 288 and 287.6 V.
    [Fact]
    [Against(
        "network",
        "Principles of Power System, example 13.1",
        CheckKind.Model,
        Exact = "printed for round resistances"
    )]
    public void Distributor_with_four_taps()
    {
        double[] printed = [295, 291, 288, 287.6];
        double[] volts = Ladder(300, (0.01, 100), (0.01, 150), (0.012, 200), (0.008, 50));
        for (int i = 0; i < printed.Length; i++)
            Publication.Meets(printed[i], volts[i], 0.05);
    }

    // Course notes: 500 V, two sections of 0.08 Ω, 100 A and 200 A: 476 V and 460 V.
    [Fact]
    [Against("network", "course notes, distributor of 500 V", CheckKind.Model, Exact = "printed for round resistances")]
    public void Distributor_with_two_taps()
    {
        double[] volts = Ladder(500, (0.08, 100), (0.08, 200));
        Publication.Meets(476, volts[0], 0.5);
        Publication.Meets(460, volts[1], 0.5);
    }

    // Physics for Scientists and Engineers, problem 28.27: a dead battery of 10 V and 1.00 Ω beside a live one of 12 V
    // and 0.01 Ω and a starter of 0.06 Ω: 0.283 A into the dead battery, 171 A through the starter.
    [Fact]
    [Against("two sources", "Physics for Scientists and Engineers, problem 28.27, jump start", CheckKind.Model)]
    public void Jump_start()
    {
        (double generator, double battery, _) = Two(12, 0.01, 10, 1, 0.06);
        Publication.Meets(171, generator - battery, 0.5);
        Publication.Meets(0.283, battery, 0.0005);
    }

    // Homework forum, question 257004: 10 V behind 0.5 Ω and 12 V behind 0.8 Ω on 20 Ω: 0.53 A in the load.
    [Fact]
    [Against("two sources", "homework forum, question 257004", CheckKind.Model)]
    public void Two_batteries_on_20_ohms()
    {
        (double generator, double battery, _) = Two(12, 0.8, 10, 0.5, 20);
        Publication.Meets(0.53, generator - battery, 0.005);
    }

    // Homework forum, question 42-29-29431-5: 60 V behind 0.5 Ω charges 30 V behind 0.6 Ω beside 10 Ω: 29.7 A, 25.19 A
    // (25.22 A by its own equations), 45.1 V.
    [Fact]
    [Against("two sources", "homework forum, question 42-29-29431-5", CheckKind.Model)]
    public void A_generator_charges_a_battery_beside_a_load()
    {
        (double generator, double battery, double volts) = Two(60, 0.5, 30, 0.6, 10);
        Publication.Meets(29.7, generator, 0.05);
        Publication.Misses(25.19, battery, 0.005, 0.002);
        Publication.Meets(45.1, volts, 0.05);
    }

    private static LampSpecification Resistor(double ohms) =>
        LampSpecification.FromCurrent(
            LampType.Resistor,
            ElectricPotential.FromVolts(12),
            ElectricCurrent.FromAmperes(12 / ohms)
        );

    private static LampSpecification Fixed(double amperes) =>
        LampSpecification.FromCurrent(
            LampType.Fixed,
            ElectricPotential.FromVolts(12),
            ElectricCurrent.FromAmperes(amperes)
        );

    private static Bike On(double volts, double ohms, ImmutableArray<FittedLamp> loads) =>
        Bike.ForSystem(ElectricPotential.FromVolts(12)) with
        {
            BatteryVoltage = ElectricPotential.FromVolts(volts),
            BatteryResistance = ElectricResistance.FromOhms(ohms),
            Lamps = loads,
        };

    // More than the lists of a bike allow, so without the check of ranges.
    private static ImmutableArray<LampState> Solve(Bike bike)
    {
        HarnessSolver solver = HarnessNetwork.OfAnyValues(bike).CreateSolver();
        solver.SetSupply(bike.BatteryVoltage);
        return [.. solver.Solve(Setting.Empty).Lamps];
    }

    private static ImmutableArray<LampState> Loaded(
        double volts,
        double ohms,
        params ImmutableArray<LampSpecification> loads
    ) =>
        Solve(
            On(
                volts,
                ohms,
                [
                    .. loads.Select(
                        (l, i) =>
                            new FittedLamp
                            {
                                Circuit = "test",
                                Lamp = $"load {i + 1}",
                                Specification = l,
                            }
                    ),
                ]
            )
        );

    private static double[] Ladder(double volts, params ImmutableArray<(double Ohms, double Amperes)> sections)
    {
        Bike bike = On(
            volts,
            0,
            [
                .. sections.Select(
                    (s, i) => Benches.Lamp($"tap {i + 1}", $"point {i + 1}", Bike.BatteryMinus, Fixed(s.Amperes))
                ),
            ]
        ) with
        {
            WireTemperature = Temperature.FromDegreesCelsius(20),
            Runs =
            [
                .. sections.Select(
                    (s, i) =>
                        new Run
                        {
                            Name = $"section {i + 1}",
                            From = i == 0 ? Bike.BatteryPlus : $"point {i}",
                            To = $"point {i + 1}",
                            Wire = new WireSize(
                                "section",
                                WireConstruction.MetricCable,
                                Area.FromSquareMillimeters(100),
                                s.Ohms
                            ),
                            Length = Length.FromMeters(1),
                        }
                ),
            ],
        };
        return [.. Solve(bike).Select(l => l.Voltage.Volts)];
    }

    // The first source as the generator, the second as a battery without a regulator, on one load: both currents, into
    // the battery positive, and the voltage.
    private static (double Generator, double Battery, double Volts) Two(
        double volts,
        double ohms,
        double batteryVolts,
        double batteryOhms,
        double load
    )
    {
        FittedLamp lamp = new()
        {
            Circuit = "test",
            Lamp = "load",
            Specification = Resistor(load),
        };
        Bike bike = On(batteryVolts, batteryOhms, [lamp]) with
        {
            ChargingVoltage = ElectricPotential.FromVolts(batteryVolts),
            BatteryCapacity = null,
            Regulator = RegulatorKind.None,
        };
        HarnessSolver solver = HarnessNetwork.OfAnyValues(bike).CreateSolver();
        var engine = new RunningEngine(bike, solver, ChargingOptions.Default);
        ContactSet carrying = solver.CarryingIn(Setting.Empty);
        OperatingPoint point = engine.Solve(
            Setting.Empty,
            carrying,
            new GeneratorOutput(1, v => Math.Max(0, (volts - v) / ohms)),
            engine.Held(Setting.Empty, carrying)
        );
        return (point.Bus!.GeneratorCurrent.Amperes, point.Bus.BatteryCurrent.Amperes, point.SupplyVoltage.Volts);
    }
}
