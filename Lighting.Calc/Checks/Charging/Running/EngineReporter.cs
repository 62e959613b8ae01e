using System.Collections.Immutable;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Chooses the settings of day and night and follows them over the speeds of the charging list.</summary>
internal sealed class EngineReporter
{
    private const int Steps = 24;

    private readonly Bike _bike;
    private readonly ChargingOptions _options;
    private readonly RunningEngine _engine;
    private readonly OperatingPoint[] _running;
    private readonly MomentarySwitches _momentary;
    private readonly int[] _headlamps;
    private readonly int[] _stopLamps;

    public EngineReporter(
        Bike bike,
        IReadOnlyList<OperatingPoint> points,
        ChargingOptions options,
        FuseOptions fuses
    )
    {
        (_bike, _options, _momentary) = (bike, options, new MomentarySwitches(bike, fuses.MomentarySwitches));
        _engine = RunningEngine.Of(bike, options);
        Func<Setting, bool> mayRun = EngineRunning.Of(bike);
        _running = [.. points.Where(p => mayRun(p.Setting))];
        _headlamps = Of(LampUses.IsHeadlamp);
        _stopLamps = Of(LampUses.IsStopLamp);

        int[] Of(Func<FittedLamp, ElectricPotential, bool> isOf) =>
            [.. Enumerable.Range(0, bike.Lamps.Length).Where(i => isOf(bike.Lamps[i], bike.SystemVoltage))];
    }

    public EngineReport Report()
    {
        OperatingPoint[] continuous = [.. _running.Where(p => _momentary.AreAtRest(p.Setting))];
        OperatingPoint? night = Night([.. continuous.Where(p => Lit(p, _headlamps).Length > 0)]);
        OperatingPoint? day = continuous.Where(p => Lit(p, _headlamps).Length == 0).MinBy(Load);
        OperatingPoint? braking = night is null
            ? null
            : _running
                .Where(p => Lit(p, _stopLamps).Length > 0 && Lit(p, _headlamps).SequenceEqual(Lit(night, _headlamps)))
                .MinBy(p => (p.Setting.Positions.Except(night.Setting.Positions).Count(), Load(p)));
        EngineSeries?[] series =
        [
            Follow(EngineSeriesKind.Day, day),
            Follow(EngineSeriesKind.Night, night),
            Follow(EngineSeriesKind.NightBraking, braking),
        ];
        ImmutableArray<EngineSeries> known = [.. series.OfType<EngineSeries>().Where(s => !s.Points.IsEmpty)];
        return new EngineReport(
            known,
            Duty(known),
            GeneratorTest.Of(_bike),
            () => new ChargingTestSheet(_bike, _options).Of(known)
        );
    }

    // The usual setting of the ride where that lights a headlamp, else the one of most load.
    private OperatingPoint? Night(OperatingPoint[] nights)
    {
        Setting? usual = _bike
            .Ride.Where(s => s.Speed.RevolutionsPerMinute > 0)
            .GroupBy(s => SettingEnumeration.Held(_bike, s.When))
            .MaxBy(g => g.Sum(s => s.Duration.Seconds))
            ?.Key;
        return nights.FirstOrDefault(p => p.Setting.Equals(usual)) ?? nights.MaxBy(Load);
    }

    private RegulatorDuty? Duty(ImmutableArray<EngineSeries> series)
    {
        if (_engine.Regulator != RegulatorKind.Shunt || series.IsEmpty)
            return null;
        ImmutableArray<OperatingPoint> Of(EngineSeriesKind kind) =>
            series.FirstOrDefault(s => s.Kind == kind)?.Points ?? [];
        return new RegulatorDuty(Of(EngineSeriesKind.Day), Of(EngineSeriesKind.Night), _bike.RegulatorRating)
        {
            IsZener = _bike.ZenerVoltage is not null,
        };
    }

    private EngineSeries? Follow(EngineSeriesKind kind, OperatingPoint? chosen)
    {
        if (chosen is null)
            return null;
        Setting setting = chosen.Setting;
        ImmutableArray<OperatingPoint> points =
        [
            .. Speeds(setting).Select(n => At(n, setting)).OfType<OperatingPoint>(),
        ];
        int[] lit = Lit(chosen, _headlamps);
        int? headlamp =
            lit.Length == 0 ? null : lit.MaxBy(i => (double)_bike.Lamps[i].Specification.ReferencePower.Watts);
        int[] stops = Lit(chosen, _stopLamps);
        return new EngineSeries
        {
            Kind = kind,
            Setting = setting,
            Points = points,
            Solve = speed => At(speed.RevolutionsPerMinute, setting),
            ChargesFrom = _engine.ChargesFrom(setting),
            Headlamp = headlamp,
            StopLamp = stops.Length == 0 ? null : stops[0],
            HeadlampLight = headlamp is { } lamp && points.Length > 0 ? LightFrom(points, lamp) : null,
        };
    }

    // Where the light falls again at high speed, the last speed at which it becomes good.
    private LightSpeed? LightFrom(ImmutableArray<OperatingPoint> points, int lamp)
    {
        if (EngineSeries.LightAt(points[0], lamp) is null)
            return null;
        RotationalSpeed slowest = points[0].Bus!.Speed,
            fastest = points[^1].Bus!.Speed;
        int dim = points.Length - 1;
        while (dim >= 0 && Short(points[dim]) <= 0)
            dim--;
        RotationalSpeed? speed =
            dim < 0 ? slowest
            : dim == points.Length - 1 ? null
            : Rpm(
                Brent.FindRoot(
                    n => At(n, points[dim].Setting) is { } point ? Short(point) : double.NaN,
                    points[dim].Bus!.Speed.RevolutionsPerMinute,
                    points[dim + 1].Bus!.Speed.RevolutionsPerMinute,
                    1e-6,
                    200
                )
            );
        return new LightSpeed(EngineReport.GoodLight, speed, slowest, fastest);

        double Short(OperatingPoint point) =>
            (EngineReport.GoodLight - EngineSeries.LightAt(point, lamp)!.Value).DecimalFractions;
    }

    // Where drivers drop out and come on again there is no voltage to show.
    private OperatingPoint? At(double rpm, Setting setting)
    {
        try
        {
            return _engine.At(Rpm(rpm), setting);
        }
        catch (NetworkNotSolvedException)
        {
            return null;
        }
    }

    // The listed speeds and even steps between them.
    private IEnumerable<double> Speeds(Setting setting)
    {
        (double low, double high)? known = _engine.Output.KnownSpan(setting);
        if (known is not { } span)
            return [];
        double step = ChargingSystem.RoundStep(span.high, Steps);
        return _engine
            .Output.Curves.Where(c => c.When.Holds(setting))
            .SelectMany(c => c.KnotsRpm)
            .Concat(Enumerable.Range(1, (int)(span.high / step)).Select(i => i * step))
            .Where(n => n > 0 && n >= span.low && n <= span.high)
            .Distinct()
            .Order();
    }

    private int[] Lit(OperatingPoint point, int[] lamps) =>
        [
            .. lamps.Where(i =>
                LitRule.IsLit(
                    _bike.Lamps[i].Specification,
                    ElectricPotential.FromVolts(point.Solved.LampVolts(i)),
                    point.SupplyVoltage
                )
            ),
        ];

    private static double Load(OperatingPoint point) => Math.Round(point.Solved.SourceAmperes, 6);

    private static RotationalSpeed Rpm(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);
}
