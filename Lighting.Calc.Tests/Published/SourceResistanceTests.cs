using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Worked examples of sources with internal resistance.</summary>
public class SourceResistanceTests
{
    /// <summary>
    /// OpenStax College Physics, chapter on circuits, problem of a truck's starter: 12.0 V behind 0.0100 Ω, starter of
    /// 0.0500 Ω. Printed: 200 A, 10.0 V, 2.00 kW; with 0.0900 Ω of corroded connections 80.0 A, 4.00 V, 320 W.
    /// </summary>
    [Theory]
    [InlineData(0, 200, 10.0, 2000)]
    [InlineData(0.09, 80, 4.0, 320)]
    [Against(
        "source with resistance",
        "OpenStax College Physics, starter with corroded connections",
        CheckKind.Model,
        Exact = "printed for round resistances"
    )]
    public void A_starter_draws_what_battery_and_connections_leave(
        double corroded,
        double amperes,
        double volts,
        double watts
    )
    {
        LampState starter = EngineOff(12.0, 0.01 + corroded, 0.05);
        Publication.Meets(amperes, starter.Current.Amperes, 0.5);
        Publication.Meets(volts, starter.Voltage.Volts, 0.005);
        Publication.Meets(watts, (double)starter.Power.Watts, 5);
    }

    /// <summary>OpenStax College Physics, "Electromotive Force: Terminal Voltage", worked example: 12.0 V, 0.100 Ω.
    /// Printed: 10.0 Ω: 1.188 A, 11.9 V; 0.500 Ω: 20.0 A, 10.0 V, 200 W; internal resistance grown to 0.500 Ω: 12.0 A,
    /// 6.00 V, 72.0 W.</summary>
    [Theory]
    [InlineData(0.1, 10, 1.188, 11.9)]
    [InlineData(0.1, 0.5, 20.0, 10.0)]
    [InlineData(0.5, 0.5, 12.0, 6.0)]
    [Against("source with resistance", "OpenStax College Physics, terminal voltage", CheckKind.Model)]
    public void The_terminal_voltage_is_what_the_internal_resistance_leaves(
        double inside,
        double load,
        double amperes,
        double volts
    )
    {
        LampState lamp = EngineOff(12.0, inside, load);
        Publication.Meets(amperes, lamp.Current.Amperes, 0.0005);
        Publication.Meets(volts, lamp.Voltage.Volts, 0.05);
    }

    /// <summary>
    /// R. A. Serway, Physics for Scientists and Engineers, chapter 28, problem 27: a live battery of 12 V and 0.01 Ω
    /// starts a car whose dead battery has 10 V and 1.00 Ω, starter 0.06 Ω. Printed: 171 A in the starter, 0.283 A in
    /// the dead battery. The live battery is the generator, the dead one the battery, which is charged.
    /// </summary>
    [Fact]
    [Against("source with resistance", "Serway, Physics for Scientists and Engineers, problem 28.27", CheckKind.Model)]
    public void Two_sources_share_a_load_as_their_resistances_say()
    {
        Bike bike = Load(0.06) with
        {
            BatteryVoltage = ElectricPotential.FromVolts(10),
            ChargingVoltage = ElectricPotential.FromVolts(200),
            BatteryResistance = ElectricResistance.FromOhms(1),
            // So large that its resistance alone limits its current.
            BatteryCapacity = ElectricCharge.FromAmpereHours(10_000),
        };
        HarnessSolver solver = HarnessNetwork.OfAnyValues(bike).CreateSolver();
        var engine = new RunningEngine(bike, solver, ChargingOptions.Default);
        ContactSet carrying = solver.CarryingIn(Setting.Empty);
        OperatingPoint point = engine.Solve(
            Setting.Empty,
            carrying,
            new GeneratorOutput(1, v => Math.Max(0, (12 - v) / 0.01)),
            engine.Held(Setting.Empty, carrying)
        );
        Publication.Meets(171, point.Lamps[0].Current.Amperes, 0.5);
        Publication.Meets(0.283, point.Bus!.BatteryCurrent.Amperes, 0.0006);
    }

    private static LampState EngineOff(double volts, double inside, double load)
    {
        Bike bike = Load(load) with
        {
            BatteryVoltage = ElectricPotential.FromVolts(volts),
            BatteryResistance = ElectricResistance.FromOhms(inside),
        };
        // More than a lamp draws, so without the check of ranges.
        HarnessSolver solver = HarnessNetwork.OfAnyValues(bike).CreateSolver();
        solver.SetSupply(bike.BatteryVoltage);
        return solver.Solve(Setting.Empty).Lamps[0];
    }

    private static Bike Load(double ohms) =>
        Bike.ForSystem(ElectricPotential.FromVolts(12)) with
        {
            Lamps =
            [
                new FittedLamp
                {
                    Circuit = "test",
                    Lamp = "load",
                    Specification = LampSpecification.FromCurrent(
                        LampType.Resistor,
                        ElectricPotential.FromVolts(12),
                        ElectricCurrent.FromAmperes(12 / ohms)
                    ),
                },
            ],
        };
}
