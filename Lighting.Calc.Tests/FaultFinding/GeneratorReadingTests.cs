using System.Collections.Immutable;
using Lighting.Calc.Tests.Cli;
using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Readings of the unplugged generator and of what drains the battery, as evidence for faults.</summary>
public class GeneratorReadingTests
{
    private const string Night = "engine=3000; ignition=on; lights=main";

    private static readonly Lazy<FaultFinder> s_finder = new(() =>
        new FaultFinder(Listed(), new FaultFindingOptions { ConsidersCharging = true })
    );

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    // 15 V at 1000 rpm and 0.4 Ω between each pair; a low voltage by night is what the rider sees first.
    [Fact]
    public void A_phase_is_open_whose_lead_has_no_voltage_to_the_others()
    {
        Diagnosis found = Found(Low(), Ac(1, 2, 0.2), Ac(2, 3, 44), Ac(3, 1, 0.1));
        Assert.Equal(FaultKind.PhaseOpen, found.Ranked[0].Best.Faults[0].Kind);
        Assert.True(found.Ranked[0].Probability > 0.7, found.Summary);
        Assert.Contains("0.2 V from generator 1 to generator 2", found.Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void A_phase_is_open_whose_lead_has_no_connection_to_the_others()
    {
        Diagnosis found = Found(Low(), Ohms(1, 2, 0.4), Ohms(2, 3, null), Ohms(3, 1, null));
        Assert.Equal(FaultKind.PhaseOpen, found.Ranked[0].Best.Faults[0].Kind);
        Assert.True(found.Ranked[0].Probability > 0.9, found.Summary);
    }

    [Fact]
    public void A_winding_touches_the_frame_that_an_ohmmeter_joins_to_it()
    {
        Diagnosis found = Found(Low(12.35), Ohms(1, 0, 0.3));
        Assert.Equal(FaultKind.WindingEarthed, found.Ranked[0].Best.Faults[0].Kind);
        Assert.True(found.Ranked[0].Probability > 0.8, found.Summary);
    }

    // 60 % of the voltage between each pair.
    [Fact]
    public void Magnets_are_weak_where_every_pair_is_equally_low()
    {
        Diagnosis found = Found(Low(), Ac(1, 2, 27), Ac(2, 3, 27.2), Ac(3, 1, 26.9));
        Fault fault = found.Ranked[0].Best.Faults[0];
        Assert.Equal(FaultKind.WeakMagnets, fault.Kind);
        Assert.InRange(fault.Share!.Value.DecimalFractions, 0.5, 0.7);
        Assert.True(found.Ranked[0].Probability > 0.9, found.Summary);
    }

    // What is behind the plug is then at fault.
    [Fact]
    public void A_generator_as_listed_leaves_rectifier_regulator_and_lead()
    {
        Diagnosis found = Found(
            Low(12.35),
            Ac(1, 2, 45),
            Ac(2, 3, 45.2),
            Ac(3, 1, 44.8),
            Ohms(1, 2, 0.4),
            Ohms(2, 3, 0.4),
            Ohms(1, 0, null)
        );
        Assert.Equal(FaultKind.ChargingLeadFault, found.Ranked[0].Best.Faults[0].Kind);
        // What is not listed keeps its share.
        double behind = Of(found, FaultKind.NoGeneratorOutput) + Of(found, FaultKind.ChargingLeadFault);
        Assert.True(behind > 0.45, $"{behind}: {found.Summary}");
        Assert.True(Of(found, FaultKind.PhaseOpen) < 0.01);
        Assert.True(Of(found, FaultKind.WindingEarthed) < 0.01);
        Assert.True(Of(found, FaultKind.WeakMagnets) < 0.01);
    }

    // In proportion to the speed between the listed ones and beyond them.
    [Theory]
    [InlineData(500, 7.5)]
    [InlineData(2500, 37.5)]
    [InlineData(7000, 105)]
    public void The_voltage_is_in_proportion_to_the_speed(double rpm, double volts)
    {
        FaultModel model = s_finder.Value.Model;
        var harness = new FaultyHarness(model.Circuit);
        harness.Set(model.AllOff, model.Members[0], null);
        var place = new TestPlace(
            model.AllOff,
            Instrument.Meter,
            1,
            2,
            EngineRpm: rpm,
            IsOnGenerator: true
        );
        Assert.Equal(volts, model.Circuit.Generator.Volts(harness, place), 1e-9);
    }

    [Fact]
    public void The_next_test_may_be_one_of_the_generator()
    {
        TestPlace[] tests = [.. s_finder.Value.Tests.Where(t => t.IsOnGenerator)];
        Assert.Equal(7, tests.Length);
        string[] instructions = [.. tests.Select(t => FaultWords.Instruction(t, s_finder.Value.Model))];
        Assert.Contains(
            "generator unplugged, engine at 3000 rpm, meter on AC voltage from its lead 'generator 1' to 'generator 2'",
            instructions
        );
        Assert.Contains(
            "engine off, generator unplugged, ohmmeter from its lead 'generator 1' to 'the frame'",
            instructions
        );
        // A bike that lists neither is not asked.
        var plain = new FaultFinder(
            DemoBikes.Load("valley-twin"),
            new FaultFindingOptions { ConsidersCharging = true },
            Cancellation
        );
        Assert.DoesNotContain(plain.Tests, t => t.IsOnGenerator);
    }

    [Theory]
    [InlineData("engine=3000", "generator 1", "", "from one of its leads to another")]
    [InlineData("engine=3000", "generator 1", "generator 1", "from one of its leads to another")]
    [InlineData("engine=3000", "generator 1", "frame", "from one of its leads to another")]
    [InlineData("", "generator 1", "generator 2", "state the speed of the engine")]
    public void A_voltage_that_cannot_be_is_a_finding(string when, string point, string to, string message)
    {
        Diagnosis found = Found(
            new Reading
            {
                When = Condition.Parse(when),
                Point = point,
                To = to.Length == 0 ? null : to,
                Instrument = Instrument.Meter,
                Voltage = ElectricPotential.FromVolts(40),
            }
        );
        Assert.Contains(found.Findings, f => f.Message.Contains(message, StringComparison.Ordinal));
        Assert.Empty(found.Used);
    }

    [Fact]
    public void What_is_not_listed_cannot_be_compared()
    {
        var plain = new FaultFinder(
            DemoBikes.Load("valley-twin"),
            new FaultFindingOptions { ConsidersCharging = true },
            Cancellation
        );
        Assert.Contains(
            plain.Diagnose([Ac(1, 2, 44)], Cancellation).Findings,
            f => f.Message.Contains("states no 'open voltage'", StringComparison.Ordinal)
        );
        Assert.Contains(
            plain.Diagnose([Ohms(1, 2, 0.4)], Cancellation).Findings,
            f => f.Message.Contains("states no 'generator resistance'", StringComparison.Ordinal)
        );
        // To the frame a sound one is open, whatever its winding.
        Assert.Empty(plain.Diagnose([Ohms(1, 0, null)], Cancellation).Findings);
        Assert.Contains(
            DemoBikes.Finder("valley-twin").Diagnose([Ohms(1, 0, null)], Cancellation).Findings,
            f => f.Message.Contains("are not looked for", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("engine=3000: generator 1 to generator 2 44 V", "generator 1", "generator 2")]
    [InlineData("generator 2 to frame OL", "generator 2", "frame")]
    [InlineData("generator 1 to generator 3 0.4 ohm", "generator 1", "generator 3")]
    [InlineData("battery lead 25 mA", "battery lead", null)]
    public void A_reading_in_words_names_them(string text, string point, string? to)
    {
        ReadingText read = ReadingText.Read(Listed(), text);
        Assert.Empty(read.Findings);
        Assert.Equal((point, to), (read.Readings[0].Point, read.Readings[0].To));
    }

    [Fact]
    public void A_list_of_readings_names_them_and_is_written_again()
    {
        const string rows =
            "when,point,instrument,reading,to\n"
            + "engine=3000,generator 1,meter,44 V,generator 2\n"
            + ",generator 1,ohmmeter,open,frame\n"
            + ",battery lead,ammeter,25 mA,\n";
        ListResult<BikeLists> read = new BikeLists { Bike = Listed() }.WithReadings(
            ListSource.Empty.With("readings.csv", rows)
        );
        Assert.Empty(read.Faults);
        Assert.Equal(3, read.Value.Readings.Length);
        Assert.True(read.Value.Readings[0].IsOnGenerator);
        Assert.Equal(0.025, read.Value.Readings[2].Current!.Value.Amperes, 1e-12);
        ListResult<BikeLists> wrong = new BikeLists { Bike = Listed() }.WithReadings(
            ListSource.Empty.With(
                "readings.csv",
                "when,point,instrument,reading,to\n,generator 4,meter,44 V,generator 2\n"
            )
        );
        Assert.NotEmpty(wrong.Faults);
    }

    // 25 mA at 12.65 V are 506 Ω to the frame on what is always live.
    [Fact]
    public void A_drain_of_milliamps_is_evidence()
    {
        FaultFinder finder = DemoBikes.Finder("valley-twin");
        Diagnosis found = finder.Diagnose([Drain(0.025)], Cancellation);
        Assert.Equal(FaultKind.LeakToFrame, found.Ranked[0].Best.Faults[0].Kind);
        Assert.InRange(found.Ranked[0].Best.Faults[0].Resistance!.Best.Ohms, 350, 700);
        Assert.Contains("25 mA in the lead of the battery", found.Summary, StringComparison.Ordinal);
        string[] parts = [.. found.Ranked[0].Alternatives.SelectMany(a => a.Faults).Select(f => f.Part)];
        Assert.All(
            parts.Where(p => finder.Model.Circuit.NodeOf(p) >= 0),
            p => Assert.True(finder.Model.Circuit.Sides.IsAlwaysLive(finder.Model.Circuit.NodeOf(p)), p)
        );
    }

    [Fact]
    public void No_drain_speaks_against_a_leak()
    {
        FaultFinder finder = DemoBikes.Finder("valley-twin");
        Diagnosis none = finder.Diagnose([Drain(0.0002)], Cancellation);
        Assert.StartsWith("The reading is normal so far", none.Summary, StringComparison.Ordinal);
        double drained = Of(finder.Diagnose([Drain(0.025)], Cancellation), FaultKind.LeakToFrame);
        Assert.True(Of(none, FaultKind.LeakToFrame) < 0.1 * drained);
        Diagnosis running = s_finder.Value.Diagnose(
            [Drain(0.025) with { When = Condition.Parse("engine=3000") }],
            Cancellation
        );
        Assert.Contains(running.Findings, f => f.Message.Contains("with the engine off", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_command_takes_them()
    {
        using var folder = new TemporaryFolder();
        foreach ((string file, string text) in BikeListsWriter.Write(new BikeLists { Bike = Listed() }))
            await File.WriteAllTextAsync(Path.Combine(folder.Path, file), text, Cancellation);
        CliResult result = await InProcess.Run(
            "faults",
            folder.Path,
            "--reading",
            "engine=3000; ignition=on; lights=main: battery + 12.9 V",
            "--reading",
            "engine=3000: generator 1 to generator 2 0.1 V",
            "--reading",
            "engine=3000: generator 2 to generator 3 44 V"
        );
        Assert.Equal("", result.Errors);
        Assert.Contains("phases of the generator: one open", Joined(result.Output), StringComparison.Ordinal);
        CliResult drain = await InProcess.Run("faults", folder.Path, "--reading", "battery lead 25 mA");
        Assert.Equal("", drain.Errors);
        Assert.Contains("drains the battery", Joined(drain.Output), StringComparison.Ordinal);
    }

    private static string Joined(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static Diagnosis Found(params Reading[] readings) => s_finder.Value.Diagnose(readings, Cancellation);

    private static Reading Low(double volts = 12.9) => ReadingOf.Meter(Night, Bike.BatteryPlus, volts);

    private static Reading Ac(int from, int to, double volts) =>
        new()
        {
            When = Condition.Parse("engine=3000"),
            Point = BenchPoints.NameOf(from),
            To = BenchPoints.NameOf(to),
            Instrument = Instrument.Meter,
            Voltage = ElectricPotential.FromVolts(volts),
        };

    private static Reading Ohms(int from, int to, double? ohms) =>
        new()
        {
            When = Condition.Always,
            Point = BenchPoints.NameOf(from),
            To = BenchPoints.NameOf(to),
            Instrument = Instrument.Ohmmeter,
            IsOpen = ohms is null,
            Resistance = ohms is { } known ? ElectricResistance.FromOhms(known) : null,
        };

    private static Reading Drain(double amperes) =>
        new()
        {
            When = Condition.Always,
            Point = BenchPoints.BatteryLead,
            Instrument = Instrument.Ammeter,
            Current = ElectricCurrent.FromAmperes(amperes),
        };

    private static double Of(Diagnosis found, FaultKind kind) =>
        found
            .Ranked.SelectMany(g => g.Alternatives)
            .Where(a => a.Faults.Any(f => f.Kind == kind))
            .Sum(a => a.Probability);

    // The demo twin lists neither: both are invented here.
    private static Bike Listed()
    {
        Bike twin = DemoBikes.Load("valley-twin");
        ImmutableArray<ChargingPoint> charging =
        [
            .. twin.Charging.Select(c =>
                c with
                {
                    OpenVoltage = ElectricPotential.FromVolts(15 * c.Speed.RevolutionsPerMinute / 1000),
                }
            ),
        ];
        return twin with { Charging = charging, GeneratorResistance = ElectricResistance.FromOhms(0.4) };
    }
}
