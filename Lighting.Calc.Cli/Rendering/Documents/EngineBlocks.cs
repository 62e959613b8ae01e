using System.Globalization;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What depends on engine speed, in <c>check</c> and <c>charging</c>: voltage, light and battery current by
/// day and by night, and the duty of a regulator.</summary>
internal static class EngineBlocks
{
    // A cell to be written in by hand, between six others on 80 columns.
    private const string ShortBlank = "_____";

    // A line for the speeds that people ask about; the chart has them all.
    private const int MostRows = 9;

    private static readonly Columns<OperatingPoint> s_regulator = new()
    {
        { "rpm", "rpm", p => p.Bus!.Speed },
        { "regulator A", "regulatorCurrentA", p => p.Bus!.RegulatorCurrent },
        { "heat W", "regulatorHeatW", p => p.Bus!.RegulatorHeat },
    };

    private static readonly Columns<RegulatorDuty> s_duty = new()
    {
        { "ratingW", d => d.Rating },
        { "lightsOff", s_regulator, d => d.LightsOff },
        { "lightsOn", s_regulator, d => d.LightsOn },
    };

    private static readonly Columns<(EngineSeries Series, OperatingPoint Point)> s_seriesPoint = new()
    {
        { "rpm", s => s.Point.Bus!.Speed },
        { "supplyVoltageV", s => s.Point.SupplyVoltage },
        { "headlampLight", s => EngineSeries.LightAt(s.Point, s.Series.Headlamp) },
        { "stopLampLight", s => EngineSeries.LightAt(s.Point, s.Series.StopLamp) },
        { "generatorCurrentA", s => s.Point.Bus!.GeneratorCurrent },
        { "batteryCurrentA", s => s.Point.Bus!.BatteryCurrent },
        { "regulatorCurrentA", s => s.Point.Bus!.RegulatorCurrent },
    };

    private static readonly Columns<ChargingTest> s_test = new()
    {
        { "engine", "rpm", t => t.Speed is { } speed ? (Cell)speed : new Cell("off", null) },
        { "battery V", "voltageV", t => t.Voltage },
        { "least V", "lowestVoltageV", t => t.LowestVoltage },
        { "most V", "highestVoltageV", t => t.HighestVoltage },
        { "battery A", "currentA", t => t.Current },
        { "least A", "lowestCurrentA", t => t.LowestCurrent },
        { "most A", "highestCurrentA", t => t.HighestCurrent },
        { "setting", "setting", t => t.Setting },
    };

    private static readonly Columns<GeneratorVoltage> s_openVoltage = new()
    {
        { "engine", "rpm", v => v.Speed },
        { "AC V", "openVoltageV", v => v.Voltage },
        { "least V", "lowestVoltageV", v => v.Lowest },
        { "most V", "highestVoltageV", v => v.Highest },
    };

    private static readonly Columns<GeneratorTest> s_generator = new()
    {
        { "resistanceOhm", g => g.Resistance },
        { "openVoltages", s_openVoltage, g => g.OpenVoltages },
    };

    /// <summary>The JSON of a report without tests.</summary>
    public static readonly Columns<EngineReport> Speeds = new()
    {
        { "series", SeriesColumns(), r => r.Series },
        { "regulator", s_duty, r => r.Regulator },
    };

    /// <summary>The JSON of a report.</summary>
    public static readonly Columns<EngineReport> Columns = new()
    {
        { "series", SeriesColumns(), r => r.Series },
        { "regulator", s_duty, r => r.Regulator },
        { "tests", s_test, r => r.Tests },
        { "generator", s_generator, r => r.Generator },
    };

    /// <summary>What lamps and battery get, in sentences.</summary>
    public static string Sentences(EngineReport report) =>
        string.Join(" ", [.. Slowest(report), .. Light(report), .. Charges(report), .. Duty(report)]);

    /// <summary>The table over engine speed: the speeds of the charging list, and others between them.</summary>
    public static IEnumerable<Block> Table(EngineReport report, Bike bike)
    {
        if (report.Series.IsEmpty)
            yield break;
        EngineSeries? day = Of(report, EngineSeriesKind.Day),
            night = Of(report, EngineSeriesKind.Night),
            braking = Of(report, EngineSeriesKind.NightBraking);
        var columns = new Columns<double> { { "rpm", "rpm", n => RotationalSpeed.FromRevolutionsPerMinute(n) } };
        AddSeries(columns, "day", day);
        AddSeries(columns, "night", night);
        AddSeries(columns, "braking", braking);
        double[] speeds = [.. report.Series.SelectMany(s => s.Points).Select(Rpm).Distinct().Order()];
        yield return new Heading("Voltage, light and battery over engine speed");
        yield return columns.Table(Fewer(speeds, bike));
        yield return new Paragraph(
            string.Join(" ", report.Series.Select(s => $"{Name(s.Kind)}: {s.Setting}."))
                + " Battery: into it, negative out of it; no more than it accepts at its state of charge."
        );
    }

    /// <summary>The charging tests, with a place for what the meter reads.</summary>
    public static IEnumerable<Block> Tests(EngineReport report, Bike bike)
    {
        if (report.Series.IsEmpty)
            yield break;
        var legend = new SettingLegend();
        yield return new Heading("Charging tests: voltage across the battery, current into it");
        yield return Cautions.OfReadings(
            bike,
            isRunning: true,
            ElectricCurrent.FromAmperes(
                report.Tests.Max(t => Math.Max(-t.LowestCurrent.Amperes, t.HighestCurrent.Amperes))
            )
        );
        var columns = new Columns<ChargingTest>
        {
            { s_test.Only("rpm", "voltageV"), t => t },
            { "range V", "", t => Range(t.LowestVoltage.Volts, t.HighestVoltage.Volts) },
            { "read V", "", _ => ShortBlank },
            { s_test.Only("currentA"), t => t },
            { "range A", "", t => Range(t.LowestCurrent.Amperes, t.HighestCurrent.Amperes) },
            { "read A", "", _ => ShortBlank },
            { s_test.Only("setting"), t => t },
        };
        yield return legend.In(columns.Table(report.Tests));
        yield return legend.Block;
        yield return new Paragraph(
            "Battery rested, then engine warm. Least and most: battery, regulator, output and lamps at the ends of "
                + "their tolerances (tables tolerances)."
        );
    }

    /// <summary>The tests of the unplugged generator: what is not listed is said, never made up.</summary>
    public static IEnumerable<Block> GeneratorTests(EngineReport report, Bike bike)
    {
        GeneratorTest generator = report.Generator;
        yield return new Heading("Generator unplugged: between each pair of its leads, and to the frame");
        yield return Cautions.OfOhms(bike);
        yield return new Paragraph(
            "Resistance, engine off, cold: "
                + (generator.Resistance is { } ohms ? Figures.MeterOhms(ohms) : "not listed ('generator resistance')")
                + $", the same between each pair  read {CommonBlocks.Blank}\n"
                + $"Resistance from each lead to the frame: open, unless one end is earthed  read {CommonBlocks.Blank}"
        );
        if (generator.OpenVoltages.IsEmpty)
            yield return new Paragraph(
                "AC voltage, engine running: not listed ('open voltage' in charging.csv); it is the same between each "
                    + $"pair and rises in proportion to the speed  read {CommonBlocks.Blank}"
            );
        else
            yield return new Columns<GeneratorVoltage>
            {
                { s_openVoltage.Only("rpm", "openVoltageV"), v => v },
                { "range V", "", v => Range(v.Lowest.Volts, v.Highest.Volts) },
                { "read V", "", _ => ShortBlank },
            }.Table(generator.OpenVoltages);
    }

    /// <summary>Two bikes over engine speed, by night or else by day, side by side; none where one of them has no
    /// output.</summary>
    public static IEnumerable<Block> Comparison(EngineReport? before, EngineReport? after)
    {
        if (before?.Main is not { } was || after?.Main is not { } now || was.Points.IsEmpty || now.Points.IsEmpty)
            yield break;
        double low = Math.Max(Rpm(was.Points[0]), Rpm(now.Points[0])),
            high = Math.Min(Rpm(was.Points[^1]), Rpm(now.Points[^1]));
        double[] speeds = Common(was, now, low, high);
        if (speeds.Length == 0)
            yield break;
        Dictionary<double, OperatingPoint?> wasAt = speeds.ToDictionary(n => n, n => was.At(Speed(n))),
            nowAt = speeds.ToDictionary(n => n, n => now.At(Speed(n)));
        var columns = new Columns<double> { { "rpm", "rpm", n => Speed(n) } };
        columns.Add("V", "voltageV", n => wasAt[n]?.SupplyVoltage, n => nowAt[n]?.SupplyVoltage);
        if (was.Headlamp is not null && now.Headlamp is not null)
            columns.Add(
                "headlamp %",
                "headlampLightPercent",
                n => Light(wasAt[n], was.Headlamp),
                n => Light(nowAt[n], now.Headlamp)
            );
        columns.Add(
            "battery A",
            "batteryCurrentA",
            n => wasAt[n]?.Bus!.BatteryCurrent,
            n => nowAt[n]?.Bus!.BatteryCurrent
        );
        if (before.Regulator is not null && after.Regulator is not null)
            columns.Add(
                "regulator W",
                "regulatorHeatW",
                n => wasAt[n]?.Bus!.RegulatorHeat,
                n => nowAt[n]?.Bus!.RegulatorHeat
            );
        yield return new Heading($"Over engine speed, {Name(now.Kind).ToLowerInvariant()}, before→after");
        yield return columns.Table(Fewer(speeds));
        yield return new Paragraph($"{now.Setting}.");
    }

    // The speeds that both were solved at; where these are few, as of lists of other speeds, those of either.
    private static double[] Common(EngineSeries was, EngineSeries now, double low, double high)
    {
        double[] both = [.. was.Points.Select(Rpm).Intersect(now.Points.Select(Rpm)).Order()];
        return both.Length >= MostRows
            ? both
            :
            [
                .. was
                    .Points.Concat(now.Points)
                    .Select(Rpm)
                    .Where(n => n >= low && n <= high)
                    .Distinct()
                    .Order(),
            ];
    }

    private static Ratio? Light(OperatingPoint? point, int? lamp) =>
        point is null ? null : EngineSeries.LightAt(point, lamp);

    private static RotationalSpeed Speed(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);

    /// <summary>The regulator's duty over engine speed; none without a shunt regulator.</summary>
    public static IEnumerable<Block> RegulatorTable(EngineReport report)
    {
        if (report.Regulator is not { } duty)
            yield break;
        var columns = new Columns<double> { { "rpm", "rpm", n => RotationalSpeed.FromRevolutionsPerMinute(n) } };
        Add("lights off", "lightsOff", duty.LightsOff);
        Add("lights on", "lightsOn", duty.LightsOn);
        yield return new Heading($"Duty of the {duty.Name} over engine speed, battery full");
        yield return columns.Table(Fewer([.. duty.LightsOff.Concat(duty.LightsOn).Select(Rpm).Distinct().Order()]));

        void Add(string title, string key, IReadOnlyList<OperatingPoint> points)
        {
            if (points.Count == 0)
                return;
            columns.Add($"{title} A", $"{key}CurrentA", n => At(points, n)?.Bus!.RegulatorCurrent);
            columns.Add($"{title} W", $"{key}HeatW", n => At(points, n)?.Bus!.RegulatorHeat);
        }
    }

    /// <summary>Light of headlamp and stop lamp over engine speed; null where neither is followed.</summary>
    public static LineChart? LightChart(EngineReport report, Bike bike)
    {
        var lines = new List<ChartLine>();
        var marks = new List<ChartMark>();
        EngineSeries? night = Of(report, EngineSeriesKind.Night),
            braking = Of(report, EngineSeriesKind.NightBraking);
        Add(night, night?.Headlamp, "");
        Add(braking, braking?.Headlamp, ", brake on");
        Add(braking, braking?.StopLamp, ", brake on");
        if (lines.Count == 0)
            return null;
        if (night?.HeadlampLight is { Always: false, Speed: { } good })
            marks.Add(new ChartMark(good.RevolutionsPerMinute, EngineReport.GoodLight.Percent, Figures.Rpm(good)));
        return new LineChart(
            "Light over engine speed, by night",
            $"{string.Join(" ", Light(report))} "
                + string.Join(
                    " ",
                    lines.Select(l =>
                        $"{l.Label}: {Number(l.Points[0].Y)} % at {Number(l.Points[0].X)} rpm, "
                        + $"{Number(l.Points[^1].Y)} % at {Number(l.Points[^1].X)} rpm."
                    )
                ),
            "engine speed, rpm",
            "light, % of the published light",
            lines,
            marks,
            0,
            100
        );

        void Add(EngineSeries? series, int? lamp, string how)
        {
            if (series is not null && lamp is { } index && EngineSeries.LightAt(series.Points[0], index) is not null)
                lines.Add(
                    new ChartLine(
                        $"{bike.Lamps[index].Lamp}{how}",
                        [
                            .. series.Points.Select(p => new ChartPoint(
                                Rpm(p),
                                EngineSeries.LightAt(p, index)!.Value.Percent
                            )),
                        ]
                    )
                );
        }
    }

    /// <summary>Light, and under it the current into the battery, over engine speed: what a rider asks first.</summary>
    public static LineChart? LightAndCharging(EngineReport report, Bike bike)
    {
        LineChart? charging = BatteryChart(report);
        return LightChart(report, bike) is { } light
            ? light with { Title = "Light and charging over engine speed, by night", Below = charging }
            : charging;
    }

    // What the battery takes is next to nothing once it is full; what it gives is what counts.
    private static LineChart? BatteryChart(EngineReport report)
    {
        EngineSeries[] series = [.. report.Series.Where(s => s.Kind != EngineSeriesKind.NightBraking)];
        return series.Length == 0
            ? null
            : new LineChart(
                "Current into the battery, by day and by night",
                $"{string.Join(" ", Charges(report))} Below zero the battery is discharged.",
                "engine speed, rpm",
                "into the battery, A",
                [
                    .. series.Select(s => new ChartLine(
                        Name(s.Kind),
                        [.. s.Points.Select(p => new ChartPoint(Rpm(p), p.Bus!.BatteryCurrent.Amperes))]
                    )),
                ],
                [
                    .. series
                        .Where(s => s.ChargesFrom is { Outcome: BreakEvenOutcome.At })
                        .Select(s => new ChartMark(
                            s.ChargesFrom.Speed!.Value.RevolutionsPerMinute,
                            0,
                            (s.Kind == EngineSeriesKind.Day ? "day: " : "night: ")
                                + Figures.Rpm(s.ChargesFrom.Speed.Value)
                        )),
                ],
                0,
                0
            );
    }

    /// <summary>Voltage of the bus over engine speed.</summary>
    public static LineChart? VoltageChart(EngineReport report, Bike bike)
    {
        if (report.Series.IsEmpty)
            return null;
        double[] volts = [.. report.Series.SelectMany(s => s.Points).Select(p => p.SupplyVoltage.Volts)];
        return new LineChart(
            bike.GeneratorPoint is { } point
                ? $"Voltage at {point} over engine speed"
                : "Voltage at the battery over engine speed",
            string.Join(
                " ",
                report.Series.Select(s => $"{Name(s.Kind)}: {VoltsAt(s.Points[0])}, {VoltsAt(s.Points[^1])}.")
            ),
            "engine speed, rpm",
            $"voltage at {CommonBlocks.BusOf(bike).TrimEnd(',')}, V",
            [
                .. report.Series.Select(s => new ChartLine(
                    Name(s.Kind),
                    [.. s.Points.Select(p => new ChartPoint(Rpm(p), p.SupplyVoltage.Volts))]
                )),
            ],
            [],
            volts.Min(),
            volts.Max()
        );
    }

    private static Columns<EngineSeries> SeriesColumns() =>
        new()
        {
            { "kind", s => Key(s.Kind) },
            { "setting", s => s.Setting },
            { "chargesFromRpm", s => s.ChargesFrom.Speed },
            { "goodLightFromRpm", s => s.HeadlampLight?.Speed },
            { "points", s_seriesPoint, s => s.Points.Select(p => (s, p)) },
        };

    private static void AddSeries(Columns<double> columns, string name, EngineSeries? series)
    {
        if (series is null)
            return;
        columns.Add($"{name} V", $"{name}VoltageV", n => At(series.Points, n)?.SupplyVoltage);
        if (series.Kind == EngineSeriesKind.Night)
            columns.Add("headlamp %", "headlampLight", n => Light(series, n, series.Headlamp));
        if (series.Kind == EngineSeriesKind.NightBraking)
            columns.Add("stop lamp %", "stopLampLight", n => Light(series, n, series.StopLamp));
        columns.Add($"{name} battery A", $"{name}BatteryCurrentA", n => At(series.Points, n)?.Bus!.BatteryCurrent);
    }

    private static Ratio? Light(EngineSeries series, double rpm, int? lamp) =>
        At(series.Points, rpm) is { } point ? EngineSeries.LightAt(point, lamp) : null;

    private static IEnumerable<string> Slowest(EngineReport report)
    {
        if (report.Main is not { Points: [var slowest, ..] } series)
            yield break;
        BusState bus = slowest.Bus!;
        string light = EngineSeries.LightAt(slowest, series.Headlamp) is { } headlamp
            ? $", headlamp {Figures.Percent(headlamp)} of its light"
            : "";
        var flows = ElectricCurrent.FromAmperes(Math.Abs(bus.BatteryCurrent.Amperes));
        string battery =
            flows.Amperes == 0 ? "" : $", {Figures.Amperes(flows)} {(bus.Discharges ? "out of" : "into")} the battery";
        yield return $"At {Figures.Rpm(bus.Speed)}, the slowest listed speed, {Name(series.Kind).ToLowerInvariant()}: "
            + $"{Figures.Volts(slowest.SupplyVoltage)}{light}{battery}.";
    }

    private static IEnumerable<string> Light(EngineReport report)
    {
        if (report.Main?.HeadlampLight is not { } light)
            yield break;
        string share = Figures.Number(light.Share.Percent, 0) + " %";
        yield return light.Speed is not { } speed
            ? $"The headlamp has less than {share} of its light at every listed speed."
        : light.Always ? $"The headlamp has {share} of its light or more at every listed speed."
        : $"The headlamp has less than {share} of its light below {Figures.Rpm(speed)}.";
    }

    private static IEnumerable<string> Charges(EngineReport report)
    {
        string[] when =
        [
            .. report
                .Series.Where(s =>
                    s.Kind != EngineSeriesKind.NightBraking && s.ChargesFrom.Outcome != BreakEvenOutcome.Always
                )
                .Select(s => $"{Name(s.Kind).ToLowerInvariant()} {BreakEvenWords.Of(s.ChargesFrom)}"),
        ];
        if (when.Length > 0)
            yield return $"The battery no longer discharges {string.Join(", ", when)}.";
    }

    private static IEnumerable<string> Duty(EngineReport report)
    {
        if (report.Regulator is not { Worst: { } worst } duty)
            yield break;
        string rating = duty.Rating is { } watts ? $" (rated {Figures.Watts(watts)})" : "";
        yield return $"The {duty.Name} takes up to {Figures.Amperes(worst.Bus!.RegulatorCurrent)} and, if it "
            + $"dissipates them, makes up to {Figures.Watts(worst.Bus.RegulatorHeat)} of heat{rating}, at "
            + $"{Figures.Rpm(worst.Bus.Speed)} ({worst.Setting}).";
    }

    private static string VoltsAt(OperatingPoint point) =>
        $"{Figures.Volts(point.SupplyVoltage)} at {Figures.Rpm(point.Bus!.Speed)}";

    private static Cell Range(double least, double most) =>
        Figures.Right($"{Figures.Number(least, 2)} to {Figures.Number(most, 2)}");

    private static EngineSeries? Of(EngineReport report, EngineSeriesKind kind) =>
        report.Series.FirstOrDefault(s => s.Kind == kind);

    private static OperatingPoint? At(IReadOnlyList<OperatingPoint> points, double rpm) =>
        points.FirstOrDefault(p => Rpm(p) == rpm);

    private static double Rpm(OperatingPoint point) => point.Bus!.Speed.RevolutionsPerMinute;

    // The slowest and the fastest are always among them.
    private static IEnumerable<double> Fewer(double[] speeds) =>
        speeds.Length <= MostRows
            ? speeds
            : Enumerable.Range(0, MostRows).Select(i => speeds[i * (speeds.Length - 1) / (MostRows - 1)]);

    // Listed speeds, the cut-in first of all, are what a reader looks for; even ones fill the lines that are left.
    private static IEnumerable<double> Fewer(double[] speeds, Bike bike)
    {
        double[] listed = [.. speeds.Where(n => bike.Charging.Any(c => Math.Abs(Listed(c) - n) < 0.5))];
        List<double> chosen = [.. Fewer([.. listed.Append(speeds[0]).Append(speeds[^1]).Distinct().Order()])];
        while (chosen.Count < Math.Min(MostRows, speeds.Length))
            chosen.Add(speeds.Except(chosen).MaxBy(n => (chosen.Min(c => Math.Abs(c - n)), -n)));
        return chosen.Order();

        static double Listed(ChargingPoint point) => point.Speed.RevolutionsPerMinute;
    }

    private static string Name(EngineSeriesKind kind) =>
        kind switch
        {
            EngineSeriesKind.Day => "By day",
            EngineSeriesKind.Night => "By night",
            EngineSeriesKind.NightBraking => "By night, brake on",
            _ => throw new InvalidOperationException($"Unknown series {kind}."),
        };

    private static string Key(EngineSeriesKind kind) =>
        kind switch
        {
            EngineSeriesKind.Day => "day",
            EngineSeriesKind.Night => "night",
            EngineSeriesKind.NightBraking => "nightBraking",
            _ => throw new InvalidOperationException($"Unknown series {kind}."),
        };

    private static string Number(double? value) =>
        value is { } known ? known.ToString("0", CultureInfo.InvariantCulture) : "unknown";
}
