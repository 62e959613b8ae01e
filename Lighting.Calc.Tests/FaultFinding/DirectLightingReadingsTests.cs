using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Readings and faults of a bike whose lamps hang on a lighting coil.</summary>
public class DirectLightingReadingsTests
{
    private const string Lightweight = "fell-lightweight";
    private const string Low = "lights=on; dip=low";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(1500)]
    [InlineData(2600)]
    [InlineData(6000)]
    public void Volts_are_those_of_direct_lighting_at_the_engine_speed(double rpm)
    {
        Bike bike = DemoBikes.Load(Lightweight);
        var speed = RotationalSpeed.FromRevolutionsPerMinute(rpm);
        ExpectedReadings sheet = ExpectedReadings.Calculate(
            bike,
            new FaultFindingOptions { EngineSpeed = speed },
            Cancellation
        );
        DirectLighting direct = DirectLighting.Of(bike, coilResistance: null);
        foreach (ExpectedSetting setting in sheet.Settings)
        {
            DirectLightingPoint expected = direct.At(speed, setting.Setting);
            Assert.Equal(
                expected.TerminalVoltage.Volts,
                setting.Points.Single(p => p.Point == Bike.BatteryPlus).Voltage.Volts,
                0.002
            );
            foreach (LampState lamp in expected.Lamps)
                Assert.Equal(
                    lamp.Voltage.Volts,
                    setting.Lamps.Single(l => l.Lamp == lamp.Lamp.Lamp).Voltage.Volts,
                    0.002
                );
        }
    }

    [Fact]
    public void So_they_are_with_an_LED_that_takes_less_at_more_volts()
    {
        Bike bike = DemoBikes.Load(Lightweight);
        bike = bike with
        {
            Lamps =
            [
                .. bike.Lamps.Select(l =>
                    l.Lamp == "tail lamp"
                        ? l with
                        {
                            Specification = Calc.LampSpecification.FromPower(
                                Calc.LampType.Led,
                                ElectricPotential.FromVolts(6.75),
                                Power.FromWatts(1.5),
                                ElectricPotential.FromVolts(3)
                            ),
                        }
                        : l
                ),
            ],
        };
        ExpectedReadings sheet = ExpectedReadings.Calculate(bike, cancellationToken: Cancellation);
        DirectLighting direct = DirectLighting.Of(bike, coilResistance: null);
        Assert.All(
            sheet.Settings,
            s =>
                Assert.Equal(
                    direct.At(sheet.EngineSpeed!.Value, s.Setting).TerminalVoltage.Volts,
                    s.Points.Single(p => p.Point == Bike.BatteryPlus).Voltage.Volts,
                    0.002
                )
        );
        Assert.DoesNotContain(
            new FaultFinder(bike, cancellationToken: Cancellation).Model.Families,
            f => f.Kind == FaultKind.LedReversed
        );
    }

    [Fact]
    public void Lights_off_the_coil_reads_its_volts_without_load()
    {
        Bike bike = DemoBikes.Load(Lightweight);
        ExpectedReadings sheet = ExpectedReadings.Calculate(bike, cancellationToken: Cancellation);
        Assert.Equal(1500, sheet.EngineSpeed!.Value.RevolutionsPerMinute, 1e-9);
        double open = DirectLighting.Of(bike, coilResistance: null).Source.OpenVoltageAt(sheet.EngineSpeed.Value).Volts;
        ExpectedReading off = sheet
            .Settings.Single(s => s.Setting.PositionOf("lights") == "off")
            .Points.Single(p => p.Point == "lights in");
        Assert.Equal(open, off.Voltage.Volts, 0.001);
        // Five per cent of the coil and three of the speed, twice.
        Assert.InRange((off.Highest - off.Voltage).Volts / open, 2 * 0.058, 2 * 0.062);
    }

    [Fact]
    public void A_lamp_that_burns_out_leaves_more_volts_to_the_others()
    {
        FaultFinder finder = DemoBikes.Finder(Lightweight);
        Setting low = SettingEnumeration.Held(finder.Bike, Condition.Parse(Low));
        int dead = finder
            .Model.Members.ToList()
            .FindIndex(m =>
                m.Family.Kind == FaultKind.LampDead && finder.Bike.Lamps[m.Family.Part].Lamp == "tail lamp"
            );
        Column feed = finder
            .Model.Of(new TestPlace(low, Instrument.Meter, finder.Model.Circuit.NodeOf("low feed")), Cancellation);
        var lighting = DirectLighting.Of(finder.Bike, coilResistance: null);
        DirectLightingChange lost = lighting.Lost(
            finder.Bike.Lamps.Single(l => l.Lamp == "tail lamp"),
            lighting.At(finder.EngineSpeed!.Value, low),
            low
        );
        Assert.Equal(
            lost.After.Lamps.Single(l => l.Lamp.Lamp == "headlamp low").Voltage.Volts
                - lost.Before.Lamps.Single(l => l.Lamp.Lamp == "headlamp low").Voltage.Volts,
            feed.Value[dead] - feed.Value[0],
            0.01
        );
        Assert.True(feed.Value[dead] > feed.Value[0] + 0.2);
    }

    [Fact]
    public void A_weak_coil_a_poor_joint_in_it_and_a_poor_coil_wire_are_told_apart()
    {
        FaultFinder finder = DemoBikes.Finder(Lightweight);
        foreach (
            (FaultKind kind, FaultCase severity) in new[]
            {
                (FaultKind.LowCoilOutput, new FaultCase(0, 1, 0.6)),
                (FaultKind.CoilWindingFault, new FaultCase(1.5, 1)),
                (FaultKind.HighResistanceJoint, new FaultCase(1.5, 1)),
            }
        )
        {
            FaultFamily family = finder.Model.Families.First(f =>
                f.Kind == kind
                && (kind != FaultKind.HighResistanceJoint || finder.Bike.Runs[f.Part].Name == "coil wire")
            );
            var solver = new FaultSolver(finder.Model.Circuit, finder.Model.Draws);
            double Volts(string when, string point)
            {
                solver.Set(
                    SettingEnumeration.Held(finder.Bike, Condition.Parse(when)),
                    new FaultMember(family, severity)
                );
                solver.Solve();
                return Math.Round(solver.Volts(finder.Model.Circuit.NodeOf(point)), 2);
            }

            Diagnosis diagnosis = finder.Diagnose(
                [
                    .. from w in new[] { "lights=off", Low }
                    from p in new[] { Bike.BatteryPlus, "lights in", "low feed" }
                    select ReadingOf.Meter(w, p, Volts(w, p)),
                ],
                Cancellation
            );
            Assert.Equal(kind, diagnosis.Ranked[0].Best.Faults[0].Kind);
            Assert.True(diagnosis.Ranked[0].Probability > 0.7, diagnosis.Summary);
        }
    }

    [Fact]
    public void A_short_with_no_fuse_before_it_takes_the_coils_current_and_is_found()
    {
        FaultFinder finder = DemoBikes.Finder(Lightweight);
        Assert.Contains(finder.Model.Families, f => f.Kind == FaultKind.ShortToFrame);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter("lights=off", "lights in", 10),
                ReadingOf.Meter(Low, "lights in", 0.12),
                new Reading
                {
                    When = Condition.Parse("lights=on"),
                    Point = "tail lamp",
                    Instrument = Instrument.Ohmmeter,
                    Resistance = ElectricResistance.FromOhms(0.1),
                },
            ],
            Cancellation
        );
        Assert.Equal(FaultKind.ShortToFrame, diagnosis.Ranked[0].Best.Faults[0].Kind);
        Assert.Contains(
            "shorted to the frame, which takes the current of the lighting coil",
            diagnosis.Ranked[0].Best.Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Instructions_name_the_engine_speed_alternating_volts_and_the_coil_to_unplug()
    {
        FaultModel model = DemoBikes.Finder(Lightweight).Model;
        Setting low = SettingEnumeration.Held(DemoBikes.Load(Lightweight), Condition.Parse(Low));
        Assert.Equal(
            "engine at 1500 rpm, with lights=on; dip=low, meter on AC voltage from low feed to battery -",
            FaultWords.Instruction(new TestPlace(low, Instrument.Meter, model.Circuit.NodeOf("low feed")), model)
        );
        Assert.StartsWith(
            "engine off and the lighting coil unplugged, ",
            FaultWords.Instruction(
                new TestPlace(
                    low,
                    Instrument.Ohmmeter,
                    model.Parts.IndexOf(model.Parts.First(p => p.Name == "tail lamp"))
                ),
                model
            ),
            StringComparison.Ordinal
        );
        Assert.Contains(
            DemoBikes.Finder(Lightweight).Notes,
            n =>
                n.Message.StartsWith(
                    "Run the engine at 1500 rpm with the meter on AC voltage",
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void A_reading_above_the_coils_open_volts_is_refused_in_plain_words()
    {
        Diagnosis diagnosis = DemoBikes
            .Finder(Lightweight)
            .Diagnose([ReadingOf.Meter("lights=off", "lights in", 24)], Cancellation);
        Assert.Contains(
            "Check the engine speed (1500 rpm)",
            Assert.Single(diagnosis.Findings).Message,
            StringComparison.Ordinal
        );
        Assert.Empty(diagnosis.Used);
    }

    [Fact]
    public void A_coil_that_cannot_be_fitted_is_an_argument_fault()
    {
        Bike bike = DemoBikes.Load(Lightweight) with { Charging = [] };
        Assert.Contains(
            "charging list",
            Assert
                .Throws<ArgumentException>(() => ExpectedReadings.Calculate(bike, cancellationToken: Cancellation))
                .Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() =>
            new FaultFinder(
                DemoBikes.Load(Lightweight),
                new FaultFindingOptions { EngineSpeed = RotationalSpeed.Zero },
                Cancellation
            )
        );
    }

    [Theory]
    [InlineData(15, -1)]
    [InlineData(2, 0)]
    public void A_fuse_blows_on_a_short_only_where_the_coil_can_blow_it(double rating, int expected)
    {
        Bike bike = DemoBikes.Load(Lightweight);
        bike = bike with
        {
            Fuses =
            [
                new Fuse
                {
                    Name = "main",
                    From = "fuse in",
                    To = "lights in",
                    Rating = ElectricCurrent.FromAmperes(rating),
                },
            ],
            Runs = [.. bike.Runs.Select(r => r.Name == "coil wire" ? r with { To = "fuse in" } : r)],
        };
        var circuit = new FaultCircuit(bike, new FaultFindingOptions());
        Assert.Equal(expected, circuit.FuseBefore[circuit.NodeOf("tail feed")]);
    }
}
