using System.Collections.Immutable;
using Lighting.Calc.Tests.Cli;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class ChargingReportTests
{
    private static readonly Bike s_bike = Lit(Bike((1000, 1, ""), (2000, 4, ""), (4000, 6, "")))
        .Riding((2500, 20, "lights=low"), (1200, 5, "lights=low; brake=on"));

    [Fact]
    public void Resistors_on_the_battery_are_averaged_by_their_duty_at_the_charging_volts()
    {
        // 24 W and 12 W (duty 0.5) at 12 V are 6 Ω and 12 Ω; at 13.5 V 2.25 A and half of 1.125 A.
        ChargingBalance balance = ChargingSystem.Of(s_bike).BalanceIn(s_bike.In("lights=low; brake=on"));
        Assert.Equal(2.25 + 0.5 * 1.125, balance.Load.Amperes, 1e-6);
    }

    [Fact]
    public void Lamps_in_series_are_not_counted_twice()
    {
        // Two 6 Ω lamps in series on 12 V: 1 A, whatever their number; the second flashes for half of the time.
        Bike bike = Bike() with
        {
            ChargingVoltage = ElectricPotential.FromVolts(12),
            Lamps =
            [
                Resistor("first", 24, "", 1) with
                {
                    Feed = "battery +",
                    Return = "between",
                },
                Resistor("second", 24, "", 0.5) with
                {
                    Feed = "between",
                    Return = "battery -",
                },
            ],
            Runs = [],
        };
        bike = bike with
        {
            Runs =
            [
                new Run
                {
                    Name = "spare",
                    From = "battery +",
                    To = "stub",
                    Wire = WireTable.All[0],
                    Length = Length.FromMeters(1),
                },
            ],
        };
        AverageLoad load = AverageLoads.Of(new HarnessNetwork(bike));
        Assert.Equal(0.75, load(Setting.Empty, bike.ChargingVoltage).Amperes, 1e-4);
    }

    [Fact]
    public void The_worst_setting_is_the_one_of_the_highest_break_even_and_the_usual_one_fills_most_of_the_ride()
    {
        ChargingReport report = ChargingSystem.Of(s_bike).Report(Condition.Always);
        Assert.Equal(s_bike.In("lights=low; brake=on"), report.Worst!.Setting);
        Assert.Equal(s_bike.In("lights=low"), report.Typical!.Setting);
        Assert.Equal(
            report.Balances.Max(b => b.BreakEven.Speed?.RevolutionsPerMinute),
            report.Worst.BreakEven.Speed!.Value.RevolutionsPerMinute
        );
        Assert.Equal(4, report.Balances.Length);
    }

    [Fact]
    public void The_usual_setting_goes_by_minutes_and_not_by_the_number_of_stretches_or_by_stops()
    {
        Bike bike = s_bike.Riding((2000, 3, ""), (2000, 3, ""), (2000, 10, "lights=low"), (0, 90, "brake=on"));
        Assert.Equal(s_bike.In("lights=low"), ChargingSystem.Of(bike).Report(Condition.Always).Typical!.Setting);
    }

    [Fact]
    public void A_load_above_the_whole_curve_is_a_fault_of_the_usual_setting_and_a_caution_of_another()
    {
        Bike weak = Lit(Bike((1000, 1, ""), (4000, 2.5, "")));
        Assert.Equal(Severity.Fault, Never(weak.Riding((2000, 20, "lights=low; brake=on"))).Severity);
        Assert.Equal(Severity.Caution, Never(weak.Riding((2000, 20, "lights=low"))).Severity);
        Assert.Contains("2.81 A", Never(weak).Message, StringComparison.Ordinal);

        static Finding Never(Bike bike) => Findings(bike).Single(f => f.Kind == FindingKind.LoadsExceedOutput);
    }

    [Theory]
    [InlineData(RegulatorKind.NotStated, Severity.Caution)]
    [InlineData(RegulatorKind.None, Severity.Fault)]
    public void A_surplus_is_reported_with_its_amps(RegulatorKind regulator, Severity severity)
    {
        // 6 A at 4000 rpm with everything off into 10 Ah.
        ChargingReport report = Report(s_bike, new ChargingOptions { Regulator = regulator });
        Assert.Equal(6, report.Excess!.Point.Net!.Value.Amperes, 1e-9);
        Assert.Contains(
            report.Findings,
            f =>
                f.Severity == severity
                && f.Message.Contains("6 A ", StringComparison.Ordinal)
                && f.Message.Contains("a full battery takes about 0.5 A", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_Zener_that_takes_4_A_leaves_2_A_of_6_to_the_battery() =>
        Assert.Contains(
            Report(
                s_bike,
                new ChargingOptions { Regulator = RegulatorKind.Shunt, ShuntLimit = ElectricCurrent.FromAmperes(4) }
            ).Findings,
            f =>
                f.Severity == Severity.Fault
                && f.Message.StartsWith(
                    "Overcharge: 2 A at 4000 rpm in the setting 'everything off' beyond the shunt regulator's 4 A",
                    StringComparison.Ordinal
                )
        );

    [Theory]
    [InlineData(RegulatorKind.Series)]
    [InlineData(RegulatorKind.Shunt)]
    public void A_regulator_that_copes_leaves_no_overcharge(RegulatorKind regulator) =>
        Assert.DoesNotContain(
            Report(s_bike, new ChargingOptions { Regulator = regulator }).Findings,
            f => f.Message.Contains("full battery", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData(12, 12.6, Severity.Fault)]
    [InlineData(12, 13.2, Severity.Caution)]
    [InlineData(12, 13.5, null)]
    [InlineData(12, 14.8, null)]
    [InlineData(12, 15.2, Severity.Caution)]
    [InlineData(6, 6.3, Severity.Fault)]
    [InlineData(6, 7.0, null)]
    [InlineData(6, 7.6, Severity.Caution)]
    public void Charging_volts_are_held_against_the_regulated_window_of_the_system(
        double system,
        double charging,
        Severity? severity
    )
    {
        Bike bike = s_bike with
        {
            SystemVoltage = ElectricPotential.FromVolts(system),
            ChargingVoltage = ElectricPotential.FromVolts(charging),
            BatteryVoltage = ElectricPotential.FromVolts(system * 1.054),
        };
        Assert.Equal(
            severity,
            Findings(bike)
                .FirstOrDefault(f => f.Message.StartsWith("Charging voltage", StringComparison.Ordinal))
                ?.Severity
        );
    }

    [Fact]
    public void Standing_times_are_given_for_the_usual_and_the_worst_setting_to_a_half_and_to_no_start()
    {
        ChargingReport report = ChargingSystem.Of(s_bike).Report(Condition.Always);
        Assert.Equal([0.5, 0.25, 0.5, 0.25], report.Standing.Select(s => s.To.DecimalFractions));
        Assert.All(report.Standing, s => Assert.Equal(BatteryRunTimeOutcome.Reached, s.Outcome));
    }

    // The twin's parking lights draw less than its brake lamp and coils together, which nobody leaves on.
    [Fact]
    public void Parking_and_full_lights_are_the_least_and_the_most_of_what_is_left_on()
    {
        Bike twin = BikeLists.Read(CliProcess.Bike("valley-twin")).Value.Bike;
        ImmutableArray<Setting> lights = ParkedLights.Find(
            twin,
            BikeSolution.Solve(twin, new CheckOptions(), TestContext.Current.CancellationToken).Points
        );
        Assert.Equal(["park", "main"], lights.Select(s => s.PositionOf("lights")!));
        Assert.All(
            lights,
            s => Assert.Equal(["off", "off"], new[] { s.PositionOf("brake"), s.PositionOf("indicators") })
        );
        ChargingReport report = ChargingSystem.Of(twin).Report(Condition.Always, lights);
        Assert.Equal(
            ["park", "park", "main", "main"],
            report.Standing.Take(4).Select(s => s.Setting.PositionOf("lights")!)
        );
        Assert.True(
            report.Standing[1].Time!.Value.Hours > report.Standing[0].Time!.Value.Hours
                && report.Standing[0].Time!.Value.Hours > report.Standing[2].Time!.Value.Hours
        );
    }

    [Fact]
    public void Where_no_lamp_is_ever_lit_nothing_is_left_on() => Assert.Empty(ParkedLights.Find(s_bike, []));

    [Fact]
    public void What_is_not_known_is_said_and_not_computed()
    {
        ImmutableArray<Finding> findings = Findings(Lit(Bike()) with { BatteryCapacity = null });
        Assert.Contains(findings, f => f.Kind == FindingKind.NoChargingList);
        Assert.Contains(findings, f => f.Kind == FindingKind.NoRideList);
        Assert.Contains(findings, f => f.Kind == FindingKind.CapacityNotStated);
    }

    [Fact]
    public void A_stretch_off_the_curve_and_a_flat_battery_are_found_by_the_name_of_the_stretch()
    {
        Assert.Contains(
            Findings(s_bike.Riding((9000, 5, ""))),
            f => f.Subject == "stretch 1" && f.Message.Contains("above the last point", StringComparison.Ordinal)
        );
        Assert.Contains(
            Findings(s_bike.Riding((0, 600, "lights=low"))),
            f => f is { Subject: "stretch 1", Severity: Severity.Fault }
        );
    }

    [Fact]
    public void Lists_that_fall_or_have_one_point_are_cautioned()
    {
        Assert.Contains(
            Findings(Lit(Bike((1000, 2, ""), (2000, 5, ""), (3000, 4, "")))),
            f => f.Severity == Severity.Caution && f.Message.Contains("falls", StringComparison.Ordinal)
        );
        Assert.Contains(
            Findings(Lit(Bike((1000, 2, "")))),
            f => f.Severity == Severity.Caution && f.Message.Contains("one point", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_fit_that_is_far_from_a_point_is_cautioned_with_the_distance()
    {
        Bike bike = Lit(Bike((1000, 1, ""), (2000, 9, ""), (3000, 5, ""), (4000, 11, "")));
        Assert.Contains(
            Report(bike, new ChargingOptions { Model = ChargingModel.FittedMachine }).Findings,
            f =>
                f.Severity == Severity.Caution
                && f.Message.Contains("does not describe the list well", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Options_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ChargingSystem.Of(s_bike, new ChargingOptions { ChargeEfficiency = Ratio.Zero })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ChargingSystem.Of(s_bike, new ChargingOptions { PeukertExponent = 0.9 })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ChargingSystem.Of(s_bike, new ChargingOptions { InitialStateOfCharge = Ratio.FromPercent(101) })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ChargingSystem.Of(s_bike, new ChargingOptions { FieldCurrent = ElectricCurrent.FromAmperes(-1) })
        );
    }

    private static ImmutableArray<Finding> Findings(Bike bike) => Report(bike, ChargingOptions.Default).Findings;

    private static ChargingReport Report(Bike bike, ChargingOptions options) =>
        ChargingSystem.Of(bike, options).Report(Condition.Always);

    private static Bike Lit(Bike bike) =>
        bike with
        {
            Lamps = [Resistor("heater", 24, "lights=low", 1), Resistor("flasher", 12, "brake=on", 0.5)],
        };

    private static FittedLamp Resistor(string name, double watts, string when, double duty) =>
        new()
        {
            Circuit = name,
            Lamp = name,
            Specification = LampSpecification.FromPower(
                LampType.Resistor,
                ElectricPotential.FromVolts(12),
                Power.FromWatts(watts)
            ),
            LitWhen = Condition.Parse(when),
            Duty = Ratio.FromDecimalFractions(duty),
        };
}
