namespace Lighting.Calc.Tests.FaultFinding;

public class ExpectedReadingsTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("fell-lightweight")]
    [InlineData("chapel-single", Traits = ["time", "long"])]
    [InlineData("valley-twin", Traits = ["time", "long"])]
    public void The_sheet_filled_in_with_what_it_expects_is_read_back_and_says_nothing_found(string name)
    {
        Bike bike = DemoBikes.Load(name);
        ExpectedReadings sheet = ExpectedReadings.Calculate(bike, cancellationToken: Cancellation);
        string blank = BikeListsWriter.Write(new BikeLists { Bike = bike, Readings = sheet.Rows })["readings.csv"];
        Assert.Empty(Read(bike, blank));
        string[] lines = blank.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(sheet.Rows.Length + 1, lines.Length);

        Reading[] filled = [.. sheet.Rows.Select(r => FilledIn(sheet, r)).OfType<Reading>()];
        string text = BikeListsWriter.Write(new BikeLists { Bike = bike, Readings = [.. filled] })["readings.csv"];
        Reading[] back = Read(bike, text);
        Assert.Equal(filled.Length, back.Length);
        Diagnosis diagnosis = DemoBikes.Finder(name).Diagnose(back, Cancellation);
        Assert.Empty(diagnosis.Findings);
        Assert.True(diagnosis.NothingFound, diagnosis.Summary);
    }

    [Theory]
    [MemberData(nameof(DemoBikes.Names), MemberType = typeof(DemoBikes))]
    public void Every_lamp_is_lit_and_every_contact_closed_and_open_in_some_setting(string name)
    {
        Bike bike = DemoBikes.Load(name);
        ExpectedReadings sheet = ExpectedReadings.Calculate(bike, cancellationToken: Cancellation);
        Assert.All(
            bike.Lamps.Where(l => l.Specification.RelativeLightAt(l.Specification.ReferenceVoltage) is not null),
            l => Assert.Contains(sheet.Settings, s => s.Lamps.Single(x => x.Lamp == l.Lamp).Seen == Brightness.Normal)
        );
        Assert.All(bike.Switches, c => Assert.Contains(sheet.Settings, s => c.IsClosed(s.Setting)));
        Assert.All(bike.Switches, c => Assert.Contains(sheet.Settings, s => !c.IsClosed(s.Setting)));
    }

    [Theory]
    [MemberData(nameof(DemoBikes.Names), MemberType = typeof(DemoBikes))]
    public void One_setting_fewer_would_leave_something_out(string name)
    {
        // Brute force over all sets of one setting fewer, on what can be counted from outside: lamps lit, contacts
        // closed and live, contacts open with a live side.
        Bike bike = DemoBikes.Load(name);
        int chosen = SettingCover.Of(bike, new HarnessGraph(bike), Condition.Always, _ => true, Cancellation).Length;
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        string[] does =
        [
            .. SettingEnumeration.Of(bike, Condition.Always).Select(s => Does(bike, solver.Solve(s), s)).Distinct(),
        ];
        does =
        [
            .. does.Where(d =>
                !does.Any(e => e != d && Enumerable.Range(0, d.Length).All(i => d[i] == '0' || e[i] == '1'))
            ),
        ];
        string wanted = Or(does);
        Assert.DoesNotContain(Sets(does, chosen - 1), set => Or(set) == wanted);
        Assert.Contains(Sets(does, chosen), set => Or(set) == wanted);
    }

    [Fact]
    public void Volts_are_those_of_the_harness_and_lie_in_their_band()
    {
        Bike bike = DemoBikes.Load("valley-twin");
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        solver.SetSupply(bike.BatteryVoltage);
        foreach (ExpectedSetting setting in ExpectedReadings.Calculate(bike, cancellationToken: Cancellation).Settings)
        {
            OperatingPoint point = solver.Solve(setting.Setting);
            Assert.All(
                setting.Points,
                p =>
                {
                    Assert.Equal(point.Points.Single(q => q.Point == p.Point).Voltage.Volts, p.Voltage.Volts, 0.01);
                    Assert.InRange(p.Voltage.Volts, p.Lowest.Volts, p.Highest.Volts);
                }
            );
            // The ammeter's own 20 mΩ takes a little of the current.
            Assert.InRange(
                setting.Fuses[0].Current.Amperes,
                0.97 * point.Fuses[0].Current.Amperes - 0.001,
                1.001 * point.Fuses[0].Current.Amperes + 0.001
            );
        }
    }

    [Fact]
    public void Ohms_of_a_lamp_are_those_of_its_cold_filament()
    {
        // R10W, 13.5 V and 10 W: 18.225 Ω hot, a twelfth of it cold, two in parallel.
        ExpectedReadings sheet = ExpectedReadings.Calculate(
            DemoBikes.Load("valley-twin"),
            cancellationToken: Cancellation
        );
        ExpectedOhms left = sheet.Ohms.Single(o => o.Part == "left indicators");
        Assert.Equal(13.5 * 13.5 / 10 / 12 / 2, left.Isolated!.Value.Ohms, 1e-9);
        Assert.Equal(left.Isolated.Value.Ohms, left.InCircuit!.Value.Ohms, 1e-6);
        // The tail lamp stands in parallel with the panel lamps through the park line, everything off.
        ExpectedOhms tail = sheet.Ohms.Single(o => o.Part == "tail lamp");
        Assert.True(tail.InCircuit!.Value.Ohms < 0.9 * tail.Isolated!.Value.Ohms);
        ExpectedOhms coils = sheet.Ohms.Single(o => o.Part == "ignition coils");
        Assert.False(coils.IsKnown);
        Assert.Null(coils.Isolated);
    }

    [Fact]
    public void Of_a_positive_earth_bike_the_sheet_says_what_the_frame_as_reference_reads()
    {
        ExpectedReadings sheet = ExpectedReadings.Calculate(
            DemoBikes.Load("chapel-single"),
            cancellationToken: Cancellation
        );
        Assert.Contains(sheet.Notes, n => n.Subject == "positive earth");
        ExpectedSetting riding = sheet.Settings.Single(s =>
            s.Setting.PositionOf("dip") == "low" && s.Setting.PositionOf("lights") == "head"
        );
        ExpectedReading feed = riding.Points.Single(p => p.Point == "low feed"),
            frame = riding.Points.Single(p => p.Point == "frame");
        Assert.InRange(feed.Voltage.Volts, 0, 1);
        Assert.InRange(feed.FromFrame.Volts, -6.3, -5);
        Assert.Equal(0, frame.FromFrame.Volts, 1e-9);
        Assert.Equal(Brightness.Dark, feed.TestLamp);
        Assert.Equal(Brightness.Normal, frame.TestLamp);
        Assert.DoesNotContain(
            ExpectedReadings.Calculate(DemoBikes.Load("valley-twin"), cancellationToken: Cancellation).Notes,
            n => n.Subject == "positive earth"
        );
    }

    private static Reading[] Read(Bike bike, string text) =>
        [
            .. new BikeLists { Bike = bike }
                .WithReadings(ListSource.Empty.With("readings.csv", text))
                .Value.Readings,
        ];

    private static Reading? FilledIn(ExpectedReadings sheet, Reading row)
    {
        ExpectedSetting? setting = sheet.Settings.FirstOrDefault(s =>
            s.Setting.Equals(SettingEnumeration.Held(sheet.Bike, row.When))
        );
        switch (row.Instrument)
        {
            case Instrument.Meter:
                // A meter shows two decimals.
                return row with
                {
                    Voltage = UnitsNet.ElectricPotential.FromVolts(
                        Math.Round(setting!.Points.Single(p => p.Point == row.Point).Voltage.Volts, 2) + 0.0
                    ),
                };
            case Instrument.TestLamp:
                return row with { Seen = setting!.Points.Single(p => p.Point == row.Point).TestLamp };
            case Instrument.Ammeter:
                return row with
                {
                    Current = UnitsNet.ElectricCurrent.FromAmperes(
                        Math.Round(setting!.Fuses.Single(p => p.Fuse == row.Point).Current.Amperes, 2)
                    ),
                };
            case Instrument.Visual:
                return row with { Seen = setting!.Lamps.Single(p => p.Lamp == row.Point).Seen };
            default:
                ExpectedOhms ohms = sheet.Ohms.Single(o => o.Part == row.Point);
                return ohms.InCircuit is { } r ? row with { Resistance = r } : row with { IsOpen = true };
        }
    }

    private static string Does(Bike bike, OperatingPoint point, Setting setting)
    {
        double live = bike.BatteryVoltage.Volts;
        bool IsLive(string at) =>
            Math.Abs(
                point.Points.Single(p => p.Point == at).Voltage.Volts
                    - (
                        bike.Earth == Earth.Negative
                            ? point.Points.Single(p => p.Point == bike.LivePoint).Voltage.Volts
                            : 0
                    )
            )
            < 0.2 * live;
        IEnumerable<bool> bits =
        [
            .. point.Lamps.Select(l => Math.Abs(l.Current.Amperes) > 0.01),
            .. bike.Switches.Select(s => s.IsClosed(setting) && (IsLive(s.From) || IsLive(s.To))),
            .. bike.Switches.Select(s => !s.IsClosed(setting) && (IsLive(s.From) || IsLive(s.To))),
        ];
        return string.Concat(bits.Select(b => b ? '1' : '0'));
    }

    private static string Or(IReadOnlyCollection<string> sets) =>
        string.Concat(Enumerable.Range(0, sets.First().Length).Select(i => sets.Any(s => s[i] == '1') ? '1' : '0'));

    private static IEnumerable<string[]> Sets(string[] of, int size, int from = 0)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (int i = from; i <= of.Length - size; i++)
            foreach (string[] rest in Sets(of, size - 1, i + 1))
                yield return [of[i], .. rest];
    }
}
