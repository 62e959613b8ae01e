using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The single tests that a rating of one fuse must pass; the fitted rating and every standard one go through the same.</summary>
internal sealed class FuseJudge
{
    private const double Tolerance = 1e-9;
    private readonly DownstreamGraph _graph;
    private readonly FuseScope _scope;
    private readonly FuseOptions _options;
    private readonly double _fitted;

    public FuseJudge(DownstreamGraph graph, Fuse fuse, FuseScope scope, IReadOnlyList<OperatingPoint> points, FuseOptions options)
    {
        _graph = graph;
        _scope = scope;
        _options = options;
        Fuse = fuse;
        _fitted = ContinuousAmperes(fuse, options);
        Factor = FuseTemperature.Factor(fuse.Style, options.Ambient);
        DownstreamRuns = [.. scope.Runs.Keys.Select(i => Rate(i, points))];
        ReturnRuns = [.. scope.ReturnRuns.Order().Select(i => Rate(i, points))];
    }

    public Fuse Fuse { get; }

    public Ratio Factor { get; }

    public ImmutableArray<RunAmpacityCheck> DownstreamRuns { get; }

    public ImmutableArray<RunAmpacityCheck> ReturnRuns { get; }

    public ElectricCurrent Fitted => ElectricCurrent.FromAmperes(_fitted);

    /// <summary>The run that limits the rating: one without a published rating first, then the one that carries least.</summary>
    public RunAmpacityCheck? Limiting => DownstreamRuns.MinBy(r => r.Rating.Current?.Amperes ?? -1);

    public static double ContinuousAmperes(Fuse fuse, FuseOptions options) =>
        options.GlassMarkedWithBlowingCurrent && fuse.Style == FuseStyle.Glass ? fuse.Rating.Amperes / 2 : fuse.Rating.Amperes;

    /// <summary>What a rating may carry without end.</summary>
    public double UsableAmperes(double rating) => rating * _options.ContinuousLoadFactor.DecimalFractions * Factor.DecimalFractions;

    public bool Carries(double rating, double amperes) => amperes <= UsableAmperes(rating) + Tolerance;

    public static bool Protects(RunAmpacityCheck run, double rating) => run.Rating.Current is { } carries && rating <= carries.Amperes + Tolerance;

    public bool ProtectsAll(double rating) => DownstreamRuns.All(r => Protects(r, rating));

    public bool ClearsAll(double rating) => _scope.Runs.Values.All(r => Clear(r, rating).Clears);

    public ImmutableArray<ShortCircuitCheck> ClearAll() => [.. _scope.Runs.Values.Select(r => Clear(r, _fitted))];

    private ShortCircuitCheck Clear(DownstreamRun run, double rating)
    {
        double fuseOhms = FuseTable.ResistanceOf(rating == _fitted ? Fuse : Fuse with { Rating = ElectricCurrent.FromAmperes(rating) }).Ohms;
        double ohms = _graph.Bike.BatteryResistance.Ohms + run.LoopOhms + fuseOhms;
        ElectricCurrent? current = ohms > 0 ? ElectricCurrent.FromAmperes(_graph.Bike.BatteryVoltage.Volts / ohms) : null;
        OpeningTime? opening = current is { } amperes ? OpeningTime.Calculate(Fuse.Style, ElectricCurrent.FromAmperes(rating), amperes) : null;
        return new ShortCircuitCheck
        {
            Run = run.Run,
            FarEnd = run.FarEnd,
            Setting = run.Setting,
            Path = run.Path,
            ReturnFrom = run.ReturnFrom,
            LoopResistance = ElectricResistance.FromOhms(ohms),
            ProspectiveCurrent = current,
            Opening = opening,
            Clears = current is null || opening?.Slowest is { } slowest && slowest.Seconds <= LongestShortSeconds + Tolerance,
        };
    }

    /// <summary>The longest a dead short may last.</summary>
    public double LongestShortSeconds => _options.LongestShort?.Seconds
        ?? TimeCurrentLimits.Of(Fuse.Style).SlowestSeconds(2)
        ?? throw new InvalidDataException($"The table of fuse gates has no longest time at 200 % for {TimeCurrentLimits.NameOf(Fuse.Style)} fuses.");

    private RunAmpacityCheck Rate(int index, IReadOnlyList<OperatingPoint> points)
    {
        Run run = _graph.Bike.Runs[index];
        OperatingPoint worst = points[0];
        foreach (OperatingPoint point in points)
            if (point.Solved.RunAmperes(index) > worst.Solved.RunAmperes(index))
                worst = point;
        return new RunAmpacityCheck(run, CurrentRating.Calculate(run.Wire, _options.WireAmbient, run.Bundle), ElectricCurrent.FromAmperes(worst.Solved.RunAmperes(index)), worst.Setting);
    }
}
