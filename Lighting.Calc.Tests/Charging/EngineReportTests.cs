using System.Collections.Immutable;
using Lighting.Calc.Tests.Cli;
using UnitsNet;

namespace Lighting.Calc.Tests.Charging;

/// <summary>Lamps, battery and regulator over engine speed, by day and by night.</summary>
public class EngineReportTests
{
    private const string Lamps =
        "circuit,lamp,type,volts,watts,lit when\n"
        + "headlamp,headlamp,filament,12,48,lights=on\n"
        + "rear,stop lamp,filament,12,24,brake=on\n"
        + "ignition,coil,fixed,12,24,\n";

    [Fact]
    public void Day_night_and_braking_are_followed_over_the_listed_speeds()
    {
        EngineReport report = Of(Read("", "rpm,current\n1000,1\n2000,5\n4000,10\n"));
        Assert.Equal(
            [EngineSeriesKind.Day, EngineSeriesKind.Night, EngineSeriesKind.NightBraking],
            report.Series.Select(s => s.Kind)
        );
        Assert.Equal(
            ["everything off", "lights=on", "lights=on; brake=on"],
            report.Series.Select(s => s.Setting.ToString())
        );
        Assert.All(report.Series, s => Assert.Equal((1000.0, 4000.0), (Rpm(s.Points[0]), Rpm(s.Points[^1]))));
        Assert.All(report.Series, s =>
            Assert.All(s.Points.Skip(1).Zip(s.Points), p =>
                Assert.True(p.First.SupplyVoltage.Volts >= p.Second.SupplyVoltage.Volts - 1e-9)
            )
        );
        Assert.Equal(
            (null, "headlamp", "headlamp"),
            (Name(report.Series[0].Headlamp), Name(report.Series[1].Headlamp), Name(report.Series[2].Headlamp))
        );
        Assert.Equal("stop lamp", Name(report.Series[2].StopLamp));
        Assert.Equal(EngineSeriesKind.Night, report.Main!.Kind);
        Assert.Null(report.Regulator);

        static string? Name(int? lamp) => lamp is { } index ? new[] { "headlamp", "stop lamp", "coil" }[index] : null;
    }

    // With a battery of 1 Ω the voltage falls as the engine slows: 70 % of the light is V/12 = 0.7^(1/3.4), 10.804 V,
    // at which lamp and coil draw 4·0.9004^0.55 + 2 A. The battery gives 12 − 10.804 A of it, the generator the rest.
    [Fact]
    public void The_headlamp_has_70_percent_of_its_light_at_the_speed_that_a_balance_by_hand_gives()
    {
        double volts = 12 * Math.Pow(0.7, 1 / 3.4),
            load = 4 * Math.Pow(volts / 12, 0.55) + 2,
            given = load - (12 - volts);
        EngineReport report = Of(
            Read(
                "battery voltage,12\ncharging voltage,13.5\nbattery resistance,1 ohm\n",
                "rpm,current\n1000,1\n9000,9\n"
            )
        );
        LightSpeed light = report.Series.Single(s => s.Kind == EngineSeriesKind.Night).HeadlampLight!;
        // The list is a straight line, amperes = rpm/1000; at 10.8 V and 1.7 V of the bridge the machine is as fast as
        // at 13.5 V and 15.2/12.5 times the speed.
        double rpm = 1000 * given * (volts + 1.7) / (13.5 + 1.7);
        Assert.Equal(rpm, light.Speed!.Value.RevolutionsPerMinute, 0.1);
        Assert.False(light.Always);
        Assert.Equal((1000.0, 9000.0), (light.Slowest.RevolutionsPerMinute, light.Fastest.RevolutionsPerMinute));
    }

    [Theory]
    [InlineData("rpm,current\n1000,20\n4000,30\n", true)]
    [InlineData("rpm,current\n1000,0.1\n4000,0.2\n", false)]
    public void A_headlamp_may_be_bright_or_dim_at_every_listed_speed(string charging, bool always)
    {
        LightSpeed light = Of(Read("battery voltage,12\nbattery resistance,1 ohm\n", charging)).Main!.HeadlampLight!;
        Assert.Equal(always, light.Always);
        Assert.Equal(always, light.Speed is not null);
    }

    // 10 A less 2 A of the coil and 0.5 A into the full 10 Ah battery are 7.5 A at 14 V with the lights off.
    [Fact]
    public void A_Zener_diode_takes_the_most_with_the_lights_off()
    {
        Bike bike = Read(
            "charging voltage,14\nbattery capacity,10 Ah\nregulator,zener 14 V\nregulator rating,60 W\n",
            "rpm,current\n1000,1\n4000,10\n"
        );
        RegulatorDuty duty = Of(bike).Regulator!;
        Assert.Equal("everything off", duty.Worst!.Setting.ToString());
        Assert.Equal(7.5, duty.Worst.Bus!.RegulatorCurrent.Amperes, 1e-9);
        Assert.Equal(105, (double)duty.Worst.Bus.RegulatorHeat.Watts, 1e-6);
        Assert.True(duty.IsOverloaded);
        Assert.All(duty.LightsOn.Zip(duty.LightsOff), p =>
            Assert.True(p.First.Bus!.RegulatorCurrent <= p.Second.Bus!.RegulatorCurrent)
        );
        BikeReport check = BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken);
        Finding found = check.Findings.Single(f => f.Kind == FindingKind.RegulatorOverloaded);
        Assert.Equal(Severity.Fault, found.Severity);
        Assert.Contains("105 W", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_diode_of_enough_rating_is_no_fault()
    {
        Bike bike = Read(
            "charging voltage,14\nbattery capacity,10 Ah\nregulator,zener 14 V\nregulator rating,110 W\n",
            "rpm,current\n1000,1\n4000,10\n"
        );
        Assert.False(Of(bike).Regulator!.IsOverloaded);
        Assert.DoesNotContain(
            BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken).Findings,
            f => f.Kind == FindingKind.RegulatorOverloaded
        );
    }

    // The headlamp takes 4·(14/12)^0.55 A; an LED of 12 W takes 12/14 A: the difference is the diode's.
    [Fact]
    public void A_swap_that_moves_power_from_the_lamps_into_a_Zener_diode_says_so()
    {
        Bike bike = Read(
            "charging voltage,14\nbattery capacity,10 Ah\nregulator,zener 14 V\n",
            "rpm,current\n1000,1\n4000,10\n"
        );
        var led = new LampReplacement(
            "headlamp",
            LampSpecification.FromPower(LampType.Led, ElectricPotential.FromVolts(12), Power.FromWatts(12))
        );
        Finding found = Swap.Evaluate(bike, [led], null, TestContext.Current.CancellationToken)
            .Findings.Single(f => f.Kind == FindingKind.RegulatorHeatAfterSwap);
        Assert.Equal(
            14 * (4 * Math.Pow(14 / 12.0, 0.55) - 12 / 14.0),
            (double)((Power)found.Value! - (Power)found.Limit!).Watts,
            1e-6
        );
        Assert.Equal(Severity.Caution, found.Severity);
        Assert.Contains("rating is not listed", found.Message, StringComparison.Ordinal);
    }

    // 5 A taken at 12 V and 1000 rpm are 5 A at 13.5 V and as many times the speed as the voltages behind the 1.7 V of
    // the bridge.
    [Fact]
    public void A_current_taken_at_another_voltage_is_that_of_another_speed_at_the_charging_voltage()
    {
        Bike bike = Read("", "rpm,current,voltage\n1000,5,12\n2000,9,12\n");
        Assert.Equal([12.0, 12.0], bike.Charging.Select(c => c.Voltage!.Value.Volts));
        ChargingSystem system = ChargingSystem.Of(bike);
        Assert.Equal(
            5,
            system.OutputAt(ValleyPost.Rpm(1000 * 15.2 / 13.7), Setting.Empty).Current!.Value.Amperes,
            1e-9
        );
        BikeLists written = BikeLists
            .Read(
                BikeListsWriter
                    .Write(new BikeLists { Bike = bike })
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value;
        Assert.Equal(bike.Charging, written.Bike.Charging);
    }

    [Fact]
    public void What_only_a_shunt_regulator_has_is_not_used_for_another()
    {
        ListResult<BikeLists> lists = Lists(
            "regulator,series\nregulator resistance,0.2 ohm\nregulator rating,60 W\n",
            "rpm,current\n1000,5\n"
        );
        Assert.Equal(2, lists.Cautions.Count(c => c.Message.Contains("is not used", StringComparison.Ordinal)));
    }

    // Tolerances: battery −3.2 % and +1.2 %, regulator ±3 %, output ±10 % (tables/tolerances.csv).
    [Fact]
    public void Charging_tests_have_the_range_of_a_sound_bike()
    {
        Bike bike = Read(
            "battery voltage,12.6\ncharging voltage,14\nbattery resistance,0.1 ohm\nbattery capacity,10 Ah\n",
            "rpm,current\n1000,1\n4000,20\n"
        );
        ImmutableArray<ChargingTest> tests = Of(bike).Tests;
        Assert.Equal([null, 1000, 4000, null, 1000, 4000], tests.Select(t => t.Speed?.RevolutionsPerMinute));
        // The coil draws 2 A at any voltage, and a tenth more or less within its tolerance.
        Assert.Equal((12.4, Math.Round(12.6 * 0.968 - 0.22, 9), Math.Round(12.6 * 1.012 - 0.18, 9)), Volts(tests[0]));
        Assert.Equal(-2, tests[0].Current.Amperes, 1e-9);
        Assert.Equal(-2.2, tests[0].LowestCurrent.Amperes, 1e-9);
        Assert.Equal(-1.8, tests[0].HighestCurrent.Amperes, 1e-9);
        // At 4000 rpm the regulator holds and the full battery takes 0.5 A.
        Assert.Equal((14.0, Math.Round(14 * 0.97, 9), Math.Round(14 * 1.03, 9)), Volts(tests[2]));
        Assert.Equal(0.5, tests[5].Current.Amperes, 1e-9);
        Assert.All(tests, t => Assert.InRange(t.Current.Amperes, t.LowestCurrent.Amperes, t.HighestCurrent.Amperes));
        Assert.All(tests, t => Assert.InRange(t.Voltage.Volts, t.LowestVoltage.Volts, t.HighestVoltage.Volts));

        static (double, double, double) Volts(ChargingTest test) =>
            (
                Math.Round(test.Voltage.Volts, 9),
                Math.Round(test.LowestVoltage.Volts, 9),
                Math.Round(test.HighestVoltage.Volts, 9)
            );
    }

    [Fact]
    public async Task Check_and_charging_answer_in_sentences()
    {
        Bike single = BikeLists.Read(CliProcess.Bike("chapel-single")).Value.Bike;
        double from = RunningEngine
            .Of(single)
            .ChargesFrom(single.In("lights=head; dip=high"))
            .Speed!.Value.RevolutionsPerMinute;
        string check = (await InProcess.Run("check", CliProcess.Bike("chapel-single"))).Output;
        string words = System.Text.RegularExpressions.Regex.Replace(check, @"\s+", " ");
        Assert.Contains(
            FormattableString.Invariant($"The battery no longer discharges by night from {from:0} rpm."),
            words,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "The headlamp has 70 % of its light or more at every listed speed.",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("Voltage, light and battery over engine speed", words, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "over engine speed",
            (await InProcess.Run("check", CliProcess.Bike("chapel-single"), "--engine", "off")).Output,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "The battery no longer discharges",
            (await InProcess.Run("charging", CliProcess.Bike("valley-twin"))).Output,
            StringComparison.Ordinal
        );
    }

    private static double Rpm(OperatingPoint point) => point.Bus!.Speed.RevolutionsPerMinute;

    private static EngineReport Of(Bike bike) =>
        BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken).Engine!;

    private static Bike Read(string items, string charging) => Lists(items, charging).Value.Bike;

    private static ListResult<BikeLists> Lists(string items, string charging) =>
        BikeLists.Read(
            ListSource
                .Empty.With("bike.csv", "item,value\n" + items)
                .With("lamps.csv", Lamps)
                .With("charging.csv", charging)
        );
}
