using System.Text.Json;
using Lighting.Calc.Tests.Cli;
using Lighting.Calc.Tests.FaultFinding;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

/// <summary>A bike at another system voltage, and with another generator.</summary>
public class SystemConversionTests
{
    private static readonly ElectricPotential s_twelve = ElectricPotential.FromVolts(12);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public void Battery_and_charging_voltage_are_in_proportion()
    {
        Bike single = Single(),
            bike = SystemConversion.Of(single, s_twelve).Bike;
        Assert.Equal(12, bike.SystemVoltage.Volts);
        Assert.Equal(12.6, bike.BatteryVoltage.Volts, 1e-12);
        Assert.Equal(14, bike.ChargingVoltage.Volts, 1e-12);
        // Six cells have twice the resistance of three, and their ampere-hours.
        Assert.Equal(30, bike.BatteryResistance.Milliohms, 1e-9);
        Assert.Equal(single.BatteryCapacity, bike.BatteryCapacity);
        Assert.Equal(single.Runs, bike.Runs);
        Assert.Equal(single.Switches, bike.Switches);
        Assert.Equal(single.Fuses, bike.Fuses);
        Assert.Empty(bike.Validate());
        Bike zener = SystemConversion.Of(single with { ZenerVoltage = ElectricPotential.FromVolts(7) }, s_twelve).Bike;
        Assert.Equal(14, zener.ZenerVoltage!.Value.Volts, 1e-12);
    }

    // (14 + 1.7)/(7 + 1.7): the winding and its rectifier.
    [Fact]
    public void The_same_winding_gives_the_same_current_at_a_higher_speed()
    {
        Bike single = Single();
        SystemConversion conversion = SystemConversion.Of(single, s_twelve);
        double factor = conversion.SpeedFactor!.Value.DecimalFractions;
        Assert.Equal(15.7 / 8.7, factor, 1e-12);
        OutputModel before = RunningEngine.Of(single).Output,
            after = RunningEngine.Of(conversion.Bike).Output;
        foreach (ChargingPoint point in single.Charging)
        {
            double rpm = point.Speed.RevolutionsPerMinute;
            Assert.Equal(point.Current.Amperes, before.GeneratorAt(rpm, Setting.Empty)!.AmperesAt(7), 1e-9);
            Assert.Equal(
                point.Current.Amperes,
                after.GeneratorNear(rpm * factor, Setting.Empty).AmperesAt(14),
                1e-9
            );
        }

        // At the same speed the higher voltage leaves less, but no less than half of the power.
        foreach (double rpm in new[] { 2500.0, 3500, 4500 })
        {
            double was = before.GeneratorNear(rpm, Setting.Empty).AmperesAt(7),
                now = after.GeneratorNear(rpm, Setting.Empty).AmperesAt(14);
            Assert.InRange(now, was / 4, was);
        }
    }

    // 24 W at 6 V and at 12 V: half the current at the same share of its voltage.
    [Fact]
    public void A_load_without_a_counterpart_keeps_its_watts()
    {
        SystemConversion conversion = SystemConversion.Of(Single(), s_twelve);
        ConvertedLoad low = conversion.Loads.Single(l => l.Before.Lamp == "headlamp low"),
            horn = conversion.Loads.Single(l => l.Before.Lamp == "horn");
        Assert.False(low.IsListed || horn.IsListed);
        Assert.Equal((12, 2), (low.After.Specification.ReferenceVoltage.Volts, Amperes(low)));
        Assert.Equal((12, 1.5), (horn.After.Specification.ReferenceVoltage.Volts, Amperes(horn)));
        Assert.Null(low.After.Specification.Code);
        Finding[] found = [.. conversion.Findings];
        Assert.Equal(
            ["headlamp low", "headlamp high"],
            found.Single(f => f.Kind == FindingKind.NoCounterpartListed).Parts
        );
        Assert.Equal(["horn"], found.Single(f => f.Kind == FindingKind.LoadsConverted).Parts);
        Assert.Contains("8 Ah", found.Single(f => f.Kind == FindingKind.BatteryConverted).Message, Ordinal);
        Assert.Contains(
            "1.80 times the speed",
            found.Single(f => f.Kind == FindingKind.GeneratorConverted).Message,
            Ordinal
        );

        static double Amperes(ConvertedLoad load) => load.After.Specification.ReferenceCurrent.Amperes;
    }

    [Fact]
    public void A_relay_of_the_other_voltage_has_the_watts_of_its_coil()
    {
        Bike bike = Single() with
        {
            Lamps =
            [
                .. Single().Lamps,
                new FittedLamp
                {
                    Circuit = "relay",
                    Lamp = "relay",
                    Specification = LampSpecification.FromCurrent(
                        LampType.Resistor,
                        ElectricPotential.FromVolts(6),
                        ElectricCurrent.FromAmperes(0.2)
                    ),
                    Coil = new RelayCoil(
                        ElectricResistance.FromOhms(30),
                        ElectricPotential.FromVolts(4),
                        ElectricPotential.FromVolts(2)
                    ),
                    Feed = "live line",
                    Return = "frame",
                },
            ],
        };
        FittedLamp relay = SystemConversion.Of(bike, s_twelve).Bike.Lamps[^1];
        RelayCoil coil = relay.Coil!;
        Assert.Equal((120, 8, 4), (coil.Resistance.Ohms, coil.PullInVoltage.Volts, coil.DropOutVoltage.Volts));
        Assert.Equal(0.1, relay.Specification.CurrentAt(s_twelve).Amperes, 1e-12);
    }

    // Twice the voltage and half the current: a quarter of the share that the wires drop.
    [Fact]
    public void Voltage_drop_is_about_a_quarter()
    {
        Bike single = Single() with { Charging = [] };
        BikeComparison comparison = BikeComparison.Evaluate(
            single,
            SystemConversion.Of(single, s_twelve).Bike,
            cancellationToken: Cancellation
        );
        LampChange low = comparison.Lamps.Single(l => l.Lamp.Lamp == "headlamp low");
        Assert.InRange(low.Before!.Drop!.Value.Percent / low.After!.Drop!.Value.Percent, 3.5, 4.5);
    }

    [Fact]
    public void What_cannot_be_converted_is_refused()
    {
        Assert.Contains("6.00 V", Refused(Single(), 6).Message, Ordinal);
        Assert.Contains("lighting coil", Refused(DemoBikes.Load("fell-lightweight"), 12).Message, Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SystemConversion.Of(Single(), ElectricPotential.Zero));

        static ArgumentException Refused(Bike bike, double volts) =>
            Assert.Throws<ArgumentException>(() => SystemConversion.Of(bike, ElectricPotential.FromVolts(volts)));
    }

    [Fact]
    public void A_series_over_speed_is_solved_at_any_other_speed_too()
    {
        Bike single = Single();
        EngineSeries night = BikeCheck
            .Evaluate(single, cancellationToken: Cancellation)
            .Engine!.Series.Single(s => s.Kind == EngineSeriesKind.Night);
        OperatingPoint point = night.At(Rpm(2345))!;
        Assert.Equal(
            RunningEngine.Of(single).At(Rpm(2345), night.Setting)!.SupplyVoltage.Volts,
            point.SupplyVoltage.Volts,
            1e-9
        );
        Assert.Same(night.Points[0], night.At(night.Points[0].Bus!.Speed));
        Assert.Null(night.At(Rpm(100)));
    }

    [Fact]
    public async Task Compare_converts_and_says_what_it_takes_for_granted()
    {
        CliResult text = await InProcess.Run("compare", CliProcess.Bike("chapel-single"), "--system", "12V");
        Assert.Equal("", text.Errors);
        string[] expected = ["Conversion from 6.00 V to 12.00 V", "same watts", "Over engine speed", "1.80 times"];
        Assert.All(expected, words => Assert.Contains(words, text.Output, Ordinal));
        Assert.All(text.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        CliResult json = await InProcess.Run(
            "compare",
            CliProcess.Bike("chapel-single"),
            "--system",
            "12 V",
            "--format",
            "json"
        );
        using var document = JsonDocument.Parse(json.Output);
        JsonElement conversion = document.RootElement.GetProperty("conversion");
        Assert.Equal(12, conversion.GetProperty("systemVoltageV").GetProperty("after").GetDouble());
        Assert.Equal(7, conversion.GetProperty("loads").GetArrayLength());
        Assert.Equal(1.805, conversion.GetProperty("speedFactor").GetDouble(), 1e-3);
    }

    [Fact]
    public async Task Compare_takes_another_generator()
    {
        string list = Path.Combine(CliProcess.Root, "shared", "larger-alternator.csv");
        CliResult text = await InProcess.Run("compare", CliProcess.Bike("valley-twin"), "--charging", list);
        Assert.Equal("", text.Errors);
        Assert.Contains("larger-alternator.csv", text.Output, Ordinal);
        Bike twin = DemoBikes.Load("valley-twin");
        double from = ChargingSystem
            .Of(new BikeLists { Bike = twin }.WithCharging(list).Value.Bike)
            .Report(Condition.Always)
            .Worst!.BreakEven.Speed!.Value.RevolutionsPerMinute;
        Assert.Contains(FormattableString.Invariant($"from {from:0} rpm"), text.Output, Ordinal);
        Assert.True(from < 1950);
    }

    [Theory]
    [InlineData("must be another than the bike's", null, "--system", "12V")]
    [InlineData("--system", null, "--system", "many")]
    [InlineData("out of range", null, "--system", "600V")]
    [InlineData("there is no such file", null, "--charging", "nowhere.csv")]
    [InlineData("column 'when'", "rpm,current,when\n1000,5,lihgts=main\n", "--charging", "FILE")]
    [InlineData("column 'current'", "rpm,current\n1000,5 V\n", "--charging", "FILE")]
    [InlineData("not both", null, "BIKE", "--system", "6V")]
    public async Task What_cannot_be_compared_is_one_clear_error(string expected, string? list, params string[] words)
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "other.csv");
        if (list is not null)
            await File.WriteAllTextAsync(file, list, Cancellation);
        CliResult result = await InProcess.Run([
            "compare",
            CliProcess.Bike("valley-twin"),
            .. words.Select(w =>
                w == "FILE" ? file
                : w == "BIKE" ? CliProcess.Bike("chapel-single")
                : w
            ),
        ]);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(expected, result.Errors, Ordinal);
    }

    private const StringComparison Ordinal = StringComparison.Ordinal;

    private static Bike Single() => DemoBikes.Load("chapel-single");
}
