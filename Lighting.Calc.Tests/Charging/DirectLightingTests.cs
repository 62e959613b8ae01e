using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class DirectLightingTests
{
    /// <summary>9 V open and 1.2 Ω at 3000 rpm, 0.2 Ω of copper.</summary>
    private static readonly AlternatorEquivalent s_source = new(
        Rpm(3000),
        ElectricPotential.FromVolts(9),
        ElectricResistance.FromOhms(1.2),
        ElectricResistance.FromOhms(0.2)
    );

    private static readonly Bike s_bike = Moped(LampType.Filament, 24, 6);

    [Fact]
    public void A_resistor_gets_the_volts_of_the_phasor_diagram()
    {
        // 36 W at 6 V is 1 Ω: I = E/√((1 + 0.2)² + 1.2²) = 9/1.697 = 5.303 A, and as many volts.
        DirectLightingPoint point = DirectLighting
            .Of(Moped(LampType.Resistor, 30, 6), s_source)
            .At(Rpm(3000), Setting.Empty);
        Assert.Equal(9 / (1.2 * Math.Sqrt(2)), point.TerminalVoltage.Volts, 1e-6);
        Assert.Equal(9 / (1.2 * Math.Sqrt(2)), point.Current.Amperes, 1e-5);
        Assert.Equal(9, point.OpenVoltage.Volts, 1e-12);
    }

    [Fact]
    public void Power_of_the_source_is_that_of_the_lamps_and_of_its_own_copper()
    {
        DirectLightingPoint point = DirectLighting.Of(s_bike, s_source).At(Rpm(4000), Setting.Empty);
        double amperes = point.Current.Amperes,
            volts = point.TerminalVoltage.Volts,
            reactance = s_source.ReactanceAt(point.Speed).Ohms;
        // Real part of E·I: E cos φ = V + I·R, from the reactive part I·X.
        double emf = point.OpenVoltage.Volts,
            cosine = Math.Sqrt(1 - Math.Pow(amperes * reactance / emf, 2));
        double lamps = point.Lamps.Sum(l => (double)l.Power.Watts);
        Assert.Equal(lamps + amperes * amperes * 0.2, emf * amperes * cosine, 1e-6);
        Assert.Equal(volts * amperes, lamps, 1e-6);
    }

    [Fact]
    public void The_terminal_amps_at_given_volts_are_those_that_solve_the_phasor_equation()
    {
        double amperes = s_source.CurrentAt(Rpm(3000), ElectricPotential.FromVolts(6))!.Value.Amperes;
        Assert.Equal(81, Math.Pow(6 + 0.2 * amperes, 2) + Math.Pow(1.2 * amperes, 2), 1e-9);
        Assert.Null(s_source.CurrentAt(Rpm(1000), ElectricPotential.FromVolts(6)));
        Assert.Equal(0, s_source.CurrentAt(Rpm(2000), ElectricPotential.FromVolts(6))!.Value.Amperes, 1e-6);
        Assert.Equal(0, s_source.CurrentAt(Rpm(0), ElectricPotential.Zero)!.Value.Amperes);
    }

    [Fact]
    public void On_a_resistor_the_coil_is_the_permanent_magnet_machine()
    {
        // Loop of 1.2 Ω, reactance 1.2 Ω at 3000 rpm: corner at 3000 rpm, Imax = 9/1.2 = 7.5 A.
        var machine = new PermanentMagnetAlternator(s_source.MaximumCurrent, Rpm(3000));
        DirectLighting lighting = DirectLighting.Of(Moped(LampType.Resistor, 30, 6), s_source);
        foreach (double rpm in new[] { 500.0, 1500, 3000, 9000 })
            Assert.Equal(
                machine.OutputAt(Rpm(rpm)).Amperes,
                lighting.At(Rpm(rpm), Setting.Empty).Current.Amperes,
                1e-5
            );
    }

    [Fact]
    public void The_engine_standing_there_is_no_light() =>
        Assert.Equal(0, DirectLighting.Of(s_bike, s_source).At(Rpm(0), Setting.Empty).TerminalVoltage.Volts);

    [Fact]
    public void A_lost_headlamp_drives_up_the_tail_lamp_and_its_resistor_brings_the_volts_back()
    {
        DirectLighting lighting = DirectLighting.Of(s_bike, s_source);
        DirectLightingChange loss = LostHead(lighting, 4500);
        Assert.True(loss.After.TerminalVoltage.Volts > 1.2 * loss.Before.TerminalVoltage.Volts);
        Assert.Equal(["tail"], loss.After.Lamps.Select(l => l.Lamp.Lamp));
        Bike repaired = s_bike with
        {
            Lamps =
            [
                s_bike.Lamps[1],
                Lamp(
                    "resistor",
                    LampSpecification.FromPower(
                        LampType.Resistor,
                        loss.Before.TerminalVoltage,
                        loss.EquivalentResistor!.Power
                    )
                ),
            ],
        };
        Assert.Equal(
            loss.Before.TerminalVoltage.Volts,
            DirectLighting.Of(repaired, s_source).At(Rpm(4500), Setting.Empty).TerminalVoltage.Volts,
            1e-6
        );
        Assert.Equal(
            Math.Pow(loss.Before.TerminalVoltage.Volts, 2) / (double)loss.EquivalentResistor.Power.Watts,
            loss.EquivalentResistor.Resistance.Ohms,
            1e-9
        );
    }

    [Fact]
    public void An_LED_tail_lamp_raises_the_volts_of_the_headlamp()
    {
        DirectLighting lighting = DirectLighting.Of(s_bike, s_source);
        var led = LampSpecification.FromPower(LampType.Led, ElectricPotential.FromVolts(6), Power.FromWatts(1));
        DirectLightingPoint before = lighting.At(Rpm(4500), Setting.Empty),
            after = DirectLighting.Of(s_bike.WithLamp("tail", led), s_source).At(Rpm(4500), Setting.Empty);
        Assert.True(after.TerminalVoltage.Volts > before.TerminalVoltage.Volts + 0.05);
    }

    [Fact]
    public void Of_three_states_of_an_LED_driver_the_bright_one_is_found()
    {
        // 9 V behind 4 Ω, 9 W held down to 3 V: V² + (9/V · 4)² = 81, V² = (81 ± √(81² − 4 · 36²))/2 = 59.05 or 21.95,
        // 7.685 V or 4.685 V; and, dropped out as 1 Ω, 9/√(1 + 4²) = 2.18 V.
        var source = new AlternatorEquivalent(
            Rpm(3000),
            ElectricPotential.FromVolts(9),
            ElectricResistance.FromOhms(4),
            ElectricResistance.Zero
        );
        Bike bike = s_bike with
        {
            Lamps =
            [
                Lamp(
                    "head",
                    LampSpecification.FromPower(LampType.Led, ElectricPotential.FromVolts(6), Power.FromWatts(9))
                ),
            ],
        };
        DirectLightingPoint point = DirectLighting.Of(bike, source).At(Rpm(3000), Setting.Empty);
        Assert.Equal(Math.Sqrt((81 + Math.Sqrt(81 * 81 - 4 * 36 * 36)) / 2), point.TerminalVoltage.Volts, 1e-6);
        Assert.Equal(9, (double)point.Lamps[0].Power.Watts, 1e-6);
    }

    [Fact]
    public void A_regulator_takes_what_the_lamps_leave_at_its_volts()
    {
        DirectLighting lighting = DirectLighting.Of(s_bike, s_source);
        var limit = ElectricPotential.FromVolts(6.5);
        ShuntRegulatorLoad duty = lighting.Shunt(limit, Rpm(6000), Setting.Empty);
        double lamps = s_bike.Lamps.Sum(l => l.Specification.CurrentAt(limit).Amperes);
        Assert.Equal(s_source.CurrentAt(Rpm(6000), limit)!.Value.Amperes - lamps, duty.Current.Amperes, 1e-5);
        Assert.Equal(duty.Current.Amperes * 6.5, (double)duty.Power.Watts, 1e-9);
        Assert.Equal(0, lighting.Shunt(limit, Rpm(1000), Setting.Empty).Current.Amperes);
    }

    [Fact]
    public void The_coil_is_fitted_to_the_charging_list_at_the_charging_volts()
    {
        var volts = ElectricPotential.FromVolts(6.6);
        Bike bike = s_bike with
        {
            ChargingVoltage = volts,
            Charging =
            [
                .. new[] { 2500.0, 3500, 6000 }.Select(n => new ChargingPoint(
                    Rpm(n),
                    s_source.CurrentAt(Rpm(n), volts)!.Value,
                    Condition.Always
                )),
            ],
        };
        AlternatorEquivalent fitted = DirectLighting.Of(bike, ElectricResistance.FromOhms(0.2)).Source;
        Assert.Equal(9, fitted.OpenVoltageAt(Rpm(3000)).Volts, 1e-6);
        Assert.Equal(1.2, fitted.ReactanceAt(Rpm(3000)).Ohms, 1e-6);
    }

    [Fact]
    public void A_coil_fitted_to_points_that_scatter_has_less_square_error_than_its_neighbours()
    {
        Bike bike = s_bike with
        {
            Charging = Bike((2400, 1.9, ""), (3000, 4.0, ""), (4500, 5.9, ""), (6000, 6.6, "")).Charging,
        };
        AlternatorEquivalentFit fit = DirectLighting.Of(bike, ElectricResistance.FromOhms(0.2)).Fit!;
        double least = fit.Residuals.Sum(r => Math.Pow(r.Residual.Amperes, 2));
        Assert.True(least > 1e-4);
        foreach ((double open, double reactance) in new[] { (1.002, 1.0), (0.998, 1.0), (1.0, 1.002), (1.0, 0.998) })
        {
            var other = new AlternatorEquivalent(
                Rpm(3000),
                fit.Source.OpenVoltageAt(Rpm(3000)) * open,
                fit.Source.ReactanceAt(Rpm(3000)) * reactance,
                fit.Source.CoilResistance
            );
            Assert.True(
                least
                    < bike.Charging.Sum(p =>
                        Math.Pow(p.Current.Amperes - (other.CurrentAt(p.Speed, bike.ChargingVoltage)?.Amperes ?? 0), 2)
                    )
            );
        }
    }

    [Fact]
    public void Lists_that_fix_no_coil_are_refused_with_the_reason()
    {
        Assert.Contains("one coil", Refused([]), StringComparison.Ordinal);
        Assert.Contains("one coil", Refused((1000, 1, ""), (2000, 2, "lights=low")), StringComparison.Ordinal);
        Assert.Contains("two or more points", Refused((1000, 2, ""), (2000, 2, "")), StringComparison.Ordinal);
        Assert.Contains("the amps fall", Refused((1000, 9, ""), (3000, 8, "")), StringComparison.Ordinal);
        Assert.Contains("grow faster", Refused((1000, 1, ""), (1100, 9, "")), StringComparison.Ordinal);

        static string Refused(params (double, double, string)[] points) =>
            Assert
                .Throws<ArgumentException>(() =>
                    DirectLighting.Of(
                        s_bike with
                        {
                            Charging = Bike(points).Charging,
                        },
                        ElectricResistance.FromOhms(0.2)
                    )
                )
                .Message;
    }

    [Theory]
    [InlineData("lighting,direct\n", LightingSupply.Direct)]
    [InlineData("lighting,battery\n", LightingSupply.Battery)]
    [InlineData("", LightingSupply.Battery)]
    public void The_bike_list_says_that_the_lighting_is_direct_and_is_written_back(string row, LightingSupply supply)
    {
        BikeLists lists = BikeLists
            .Read(
                ListSource
                    .Empty.With("bike.csv", $"item,value\nsystem voltage,6 V\n{row}")
                    .With("lamps.csv", "circuit,lamp,type,volts,watts\nhead,head,filament,6,24\n")
            )
            .Value;
        Assert.Equal(supply, lists.Bike.Lighting);
        Assert.Equal(
            supply,
            BikeLists
                .Read(
                    BikeListsWriter
                        .Write(lists)
                        .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
                )
                .Value.Bike.Lighting
        );
    }

    [Fact]
    public void A_balance_of_a_bike_with_direct_lighting_is_cautioned() =>
        Assert.Contains(
            ChargingSystem.Of(s_bike).Report(Condition.Always).Findings,
            f => f.Severity == Severity.Caution && f.Kind == FindingKind.NoBatteryToBalance
        );

    [Fact]
    public void The_report_names_the_lamp_that_burns_out_and_the_one_that_follows_a_failure()
    {
        DirectLightingReport calm = DirectLighting
            .Of(s_bike, s_source)
            .Report(Setting.Empty, [Rpm(1000), Rpm(2000), Rpm(3000)]);
        Assert.DoesNotContain(calm.Findings, f => f.Severity == Severity.Fault);
        Assert.Contains(
            calm.Findings,
            f =>
                f.Subject == "head"
                && f.Message.Contains("tail rises from", StringComparison.Ordinal)
                && f.Message.Contains('Ω')
        );
        Assert.Equal([1000.0, 2000, 3000], calm.Points.Select(p => p.Speed.RevolutionsPerMinute));
        DirectLightingReport wild = DirectLighting
            .Of(Moped(LampType.Filament, 6, 1), s_source)
            .Report(Setting.Empty, [Rpm(3000)]);
        Assert.Contains(
            wild.Findings,
            f =>
                f is { Subject: "head", Severity: Severity.Fault }
                && f.Message.Contains("burns out", StringComparison.Ordinal)
        );
        Assert.Contains(wild.Findings, f => f.Subject == "regulator");
    }

    [Property]
    public Property Losing_a_lamp_never_lowers_the_volts_on_the_rest() =>
        Prop.ForAll(
            Gen.Choose(300, 9000).Select(v => (double)v).ToArbitrary(),
            Gen.Choose(1, 60).Select(v => (double)v).ToArbitrary(),
            Gen.Choose(1, 60).Select(v => (double)v).ToArbitrary(),
            (rpm, head, tail) =>
            {
                DirectLightingChange loss = LostHead(
                    DirectLighting.Of(Moped(LampType.Filament, head, tail), s_source),
                    rpm
                );
                return loss.After.TerminalVoltage.Volts >= loss.Before.TerminalVoltage.Volts - 1e-9;
            }
        );

    private static Bike Moped(LampType type, double headWatts, double tailWatts) =>
        new()
        {
            Name = "moped",
            Lighting = LightingSupply.Direct,
            SystemVoltage = ElectricPotential.FromVolts(6),
            ChargingVoltage = ElectricPotential.FromVolts(6.6),
            Lamps = [Lamp("head", Of(type, headWatts)), Lamp("tail", Of(type, tailWatts))],
        };

    private static LampSpecification Of(LampType type, double watts) =>
        LampSpecification.FromPower(type, ElectricPotential.FromVolts(6), Power.FromWatts(watts));

    private static FittedLamp Lamp(string name, LampSpecification specification) =>
        new()
        {
            Circuit = name,
            Lamp = name,
            Specification = specification,
        };

    private static DirectLightingChange LostHead(DirectLighting lighting, double rpm) =>
        lighting.Lost(
            lighting.Bike.Lamps.Single(l => l.Lamp == "head"),
            lighting.At(Rpm(rpm), Setting.Empty),
            Setting.Empty
        );
}
