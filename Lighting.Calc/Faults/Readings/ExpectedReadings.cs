using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The sheet a mechanic takes to the bike: what meter, test lamp, ammeter and ohmmeter show when nothing is
/// wrong.</summary>
/// <remarks>
/// Engine off, at the battery's voltage (or <see cref="FaultFindingOptions.Supply"/>); with the engine running, at <see
/// cref="EngineSpeed"/>, what generator, regulator and battery hold; on direct lighting rms voltage at that
/// speed. All voltages and the test lamp count to battery minus. The bands are two standard deviations of the
/// instrument, the harness's tolerance and the supply together.
/// </remarks>
public sealed class ExpectedReadings
{
    private ExpectedReadings(FaultModel model, CancellationToken cancellationToken)
    {
        Bike = model.Circuit.Bike;
        EngineSpeed = model.Circuit.Supply.Speed;
        Supply =
            model.Circuit.Supply.Coil is null && EngineSpeed is null && model.Circuit.Supply.OpenVolts is var volts
            && volts != Bike.BatteryVoltage.Volts
                ? ElectricPotential.FromVolts(volts)
                : null;
        Settings = [.. model.Cover.Select(s => InSetting(model, s, cancellationToken))];
        ColdNetwork cold = new ColdNetwork(model.Circuit).Set(model.AllOff, model.Members[0]);
        Ohms = [.. model.Parts.Where(p => p.Contact < 0 && p.Holder < 0).Select(p => OhmsOf(model, cold, p))];
        Notes = ReadingNotes.Of(model.Circuit);
        Drain = DrainTest.Of(model);
        Jumpers = JumperTests.Of(model, cancellationToken);
    }

    /// <summary>The bike.</summary>
    public Bike Bike { get; }

    /// <summary>Engine speed of the readings, which on direct lighting are rms voltages; null with the engine
    /// off.</summary>
    public RotationalSpeed? EngineSpeed { get; }

    /// <summary>Supply voltage of the test (<see cref="FaultFindingOptions.Supply"/>); null for that of the list,
    /// engine off.</summary>
    public ElectricPotential? Supply { get; }

    /// <summary>The fewest settings in which every lamp is lit, every contact carries and every contact is seen to
    /// open.</summary>
    public ImmutableArray<ExpectedSetting> Settings { get; }

    /// <summary>Resistance of every lamp, run and fuse with battery or coil disconnected and everything off.</summary>
    public ImmutableArray<ExpectedOhms> Ohms { get; }

    /// <summary>The test for a drain on the battery; null on direct lighting and with the engine running.</summary>
    internal DrainTest? Drain { get; }

    /// <summary>The tests with a fused jumper, what each should do on a bike in order; none on direct
    /// lighting.</summary>
    internal ImmutableArray<ExpectedJumper> Jumpers { get; }

    /// <summary>What to mind when reading, such as where the black lead goes on a positive-earth bike.</summary>
    public ImmutableArray<Finding> Notes { get; }

    /// <summary>The sheet as rows to fill in, in its order, without results: rows of <c>readings.csv</c> whose reading
    /// is blank.</summary>
    public ImmutableArray<Reading> Rows =>
        RowsWith(Bike.Lighting == LightingSupply.Direct ? null : EngineSpeed?.RevolutionsPerMinute);

    private ImmutableArray<Reading> RowsWith(double? engine) =>
        [
            .. Settings.SelectMany(s =>
                new[]
                {
                    s.Lamps.Select(l => Row(s.Setting, l.Lamp, Instrument.Visual, engine)),
                    s.Points.Select(p => Row(s.Setting, p.Point, Instrument.Meter, engine)),
                    s.Points.Select(p => Row(s.Setting, p.Point, Instrument.TestLamp, engine)),
                    s.Fuses.Select(f => Row(s.Setting, f.Fuse, Instrument.Ammeter, engine)),
                }.SelectMany(r => r)
            ),
            .. Ohms.Where(o => o.IsKnown)
                .Select(o => new Reading
                {
                    When = Condition.Always,
                    Point = o.Part,
                    Instrument = Instrument.Ohmmeter,
                }),
        ];

    /// <summary>Computes the sheet of a bike.</summary>
    /// <param name="bike">The bike; it needs runs.</param>
    /// <param name="options">Instruments and tolerances; null takes the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has no runs, a lamp or fuse without points, too many settings, or a
    /// lighting coil that cannot be fitted to the charging list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ExpectedReadings Calculate(
        Bike bike,
        FaultFindingOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(bike);
        FaultFinder.RequireRuns(bike);
        return new ExpectedReadings(
            FaultModel.Healthy(new FaultCircuit(bike, options ?? new FaultFindingOptions()), cancellationToken),
            cancellationToken
        );
    }

    private static ExpectedSetting InSetting(FaultModel model, Setting setting, CancellationToken cancellationToken)
    {
        // Together: one solution with a lamp at every point spares most of those with a lamp at one.
        _ = model.Of(
            [.. model.Circuit.Points.Select((_, p) => new TestPlace(setting, Instrument.TestLamp, p))],
            model.EveryMember,
            cancellationToken
        );
        var scale = new ReadingScale(model.Circuit);
        double supply = model.Circuit.Supply.Tolerance;
        bool isBattery = model.Circuit.Supply.Coil is null;
        double frame = Healthy(Instrument.Meter, model.Circuit.FrameNode).Value;
        var solver = new FaultSolver(model.Circuit, model.Draws);
        solver.Set(setting, model.Members[0]);
        solver.Solve();
        return new ExpectedSetting(
            setting,
            [
                .. Enumerable
                    .Range(0, model.Circuit.Points.Length)
                    .Where(p => !Name.Equal(model.Circuit.Points[p], Bike.BatteryMinus))
                    .Select(Point),
            ],
            [.. Enumerable.Range(0, model.Circuit.Fuses.Length).Select(Fuse)],
            [.. Enumerable.Range(0, model.Circuit.Lamps.Length).Where(model.GivesLight).Select(Lamp)]
        );

        Prediction Healthy(Instrument instrument, int index) =>
            model.Healthy(new TestPlace(setting, instrument, index), cancellationToken);

        ExpectedReading Point(int point)
        {
            Prediction p = Healthy(Instrument.Meter, point);
            double band = Band(Instrument.Meter, p);
            return new ExpectedReading(
                model.Circuit.Points[point],
                p.Value,
                isBattery ? p.Value - band : Math.Max(0, p.Value - band),
                p.Value + band,
                LookScale.Of(Healthy(Instrument.TestLamp, point).Value),
                isBattery ? p.Value - frame : Math.Abs(p.Value - frame)
            );
        }

        ExpectedCurrent Fuse(int fuse)
        {
            Prediction p = Healthy(Instrument.Ammeter, fuse);
            double band = Band(Instrument.Ammeter, p);
            return new ExpectedCurrent(
                model.Circuit.Bike.Fuses[fuse].Name,
                p.Value,
                Math.Max(0, p.Value - band),
                p.Value + band
            );
        }

        ExpectedLook Lamp(int lamp) =>
            new(
                model.Circuit.Bike.Lamps[lamp].Lamp,
                LookScale.Of(Healthy(Instrument.Visual, lamp).Value),
                solver.LampVolts(lamp)
            );

        double Band(Instrument instrument, in Prediction p)
        {
            double own = scale.Sigma(instrument, p.Value);
            return 2 * Math.Sqrt(own * own + p.Sigma * p.Sigma + Math.Pow(p.Battery * supply, 2) + p.Own * p.Own);
        }
    }

    private static ExpectedOhms OhmsOf(FaultModel model, ColdNetwork cold, MeasuredPart part)
    {
        bool known = model.IsKnownToOhmmeter(part);
        double between = cold.Across(part);
        double? isolated =
            part.Lamp < 0
                ? model.Circuit.ListedOhms[part.Conductor]
                : ColdNetwork.ColdOhms(
                    model.Circuit.Bike.Lamps[part.Lamp].Specification,
                    model.Circuit.Bike.Lamps[part.Lamp].Quantity
                );
        return new ExpectedOhms(part.Name, known && double.IsFinite(between) ? between : null, isolated, known);
    }

    private static Reading Row(Setting setting, string point, Instrument instrument, double? engineRpm) =>
        new()
        {
            When = engineRpm is { } rpm ? EngineTerm.With(setting, rpm) : setting.AsCondition(),
            Point = point,
            Instrument = instrument,
        };
}
