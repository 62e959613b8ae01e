using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The single tests that a rating of one fuse must pass; the fitted rating and every standard one go through
/// the same.</summary>
internal sealed class FuseJudge
{
    private const double Tolerance = 1e-9;

    // The current at which a blade, mini or glass fuse is sure to open, in ratings (SAE J1284, UL 248-14).
    private const double ConventionalFusing = 1.35;

    // Few bikes have such a fuse: the table is read for the first of them.
    private static readonly Lazy<ImmutableArray<double>> s_markedWithBlowingCurrent = new(() =>
        [
            .. PublishedTable
                .Load("older-fuses")
                .Read()
                .Where(r => r.Text("kind") == "British glass")
                .Select(r => r.Number("continuous_a"))
                .Order(),
        ]
    );

    private readonly DownstreamGraph _graph;
    private readonly FuseScope _scope;
    private readonly FuseOptions _options;
    private readonly double _fitted;

    public FuseJudge(
        DownstreamGraph graph,
        Fuse fuse,
        FuseScope scope,
        IReadOnlyList<OperatingPoint> points,
        FuseOptions options
    )
    {
        _graph = graph;
        _scope = scope;
        _options = options;
        Fuse = fuse;
        _fitted = ContinuousAmperes(fuse, options);
        Factor = FuseTemperature.Factor(fuse.Style, options.AirRoundFuses(graph.Bike));
        DownstreamRuns = [.. scope.Runs.Keys.Select(i => Rate(i, points))];
        ReturnRuns = [.. scope.ReturnRuns.Order().Select(i => Rate(i, points))];
    }

    public Fuse Fuse { get; }

    public Ratio Factor { get; }

    public ImmutableArray<RunAmpacityCheck> DownstreamRuns { get; }

    public ImmutableArray<RunAmpacityCheck> ReturnRuns { get; }

    public ElectricCurrent Fitted => ElectricCurrent.FromAmperes(_fitted);

    /// <summary>The run that limits the rating: one without a published rating first, then the one that carries
    /// least.</summary>
    public RunAmpacityCheck? Limiting => DownstreamRuns.Concat(ReturnRuns).MinBy(r => r.Rating.Alone?.Amperes ?? -1);

    public bool IsMarkedWithBlowingCurrent => _fitted < Fuse.Rating.Amperes;

    /// <summary>What stands on a fuse of a continuous rating that is marked as the fitted one is.</summary>
    public ElectricCurrent? AsMarked(double? rating) =>
        rating is { } continuous
            ? ElectricCurrent.FromAmperes(IsMarkedWithBlowingCurrent ? 2 * continuous : continuous)
            : null;

    /// <summary>The continuous ratings that are made, smallest first; marked with the blowing current those of
    /// tables/older-fuses.csv.</summary>
    public static IEnumerable<double> StandardRatings(FuseStyle style, bool isMarkedWithBlowingCurrent) =>
        isMarkedWithBlowingCurrent
            ? s_markedWithBlowingCurrent.Value
            : FuseTable.Of(style).Select(f => f.Rating.Amperes);

    public static double ContinuousAmperes(Fuse fuse, FuseOptions options) =>
        (options.GlassMarkedWithBlowingCurrent || fuse.IsMarkedWithBlowingCurrent) && fuse.Style == FuseStyle.Glass
            ? fuse.Rating.Amperes / 2
            : fuse.Rating.Amperes;

    /// <summary>What a rating may carry continuously.</summary>
    public double UsableAmperes(double rating) =>
        rating * _options.ContinuousLoadFactor.DecimalFractions * Factor.DecimalFractions;

    /// <summary>The rating against which a peak is held.</summary>
    public double PeakAmperes(double rating) => rating * Factor.DecimalFractions;

    /// <summary>Where a peak exceeds a rating, how long a fuse of it is published to hold the next higher current at
    /// least.</summary>
    public Duration? PeakHeldFor(double rating, double amperes) =>
        PeakHeldFor(Fuse.Style, rating, PeakAmperes(rating), amperes);

    /// <summary>The same for a fuse of which the rating at its temperature is known.</summary>
    public static Duration? PeakHeldFor(FuseStyle style, double rating, double limit, double amperes) =>
        amperes > limit + Tolerance && TimeCurrentLimits.Of(style, rating).FastestAtNext(amperes / limit) is { } gate
            ? Duration.FromSeconds(gate.Seconds)
            : null;

    public bool Carries(double rating, ContinuousLoad load) =>
        load.ContinuousCurrent.Amperes <= UsableAmperes(rating) + Tolerance
        && (
            load.WorstCurrent.Amperes <= PeakAmperes(rating) + Tolerance
            || PeakHeldFor(rating, load.WorstCurrent.Amperes) is { Seconds: >= ContinuousLoad.HeldSeconds }
        );

    /// <summary>Whether a wire alone is rated for a fuse. The fuse bounds the sum of what flows behind it, so the other
    /// wires of a bundle are not all loaded when one carries the fuse's rating.</summary>
    public static bool Protects(RunAmpacityCheck run, double rating) =>
        run.Rating.Alone is { } carries && rating <= carries.Amperes + Tolerance;

    /// <summary>Whether a rating may be advised: the wire is rated for it with its whole bundle loaded.</summary>
    public static bool Allows(RunAmpacityCheck run, double rating) =>
        run.Rating.Current is { } rated && rating <= rated.Amperes + Tolerance;

    public bool AllowsAll(double rating) => DownstreamRuns.Concat(ReturnRuns).All(r => Allows(r, rating));

    /// <summary>The same with wires of no stated kind taken as ordinary cable.</summary>
    public bool AllowsAllIfOrdinary(double rating) =>
        DownstreamRuns
            .Concat(ReturnRuns)
            .All(r => Allows(r.IfOrdinary is { } ordinary ? r with { Rating = ordinary } : r, rating));

    public bool ProtectsAll(double rating) => DownstreamRuns.Concat(ReturnRuns).All(r => Protects(r, rating));

    public bool ClearsAll(double rating) => _scope.Runs.Values.All(r => Clear(r, rating).Clears != false);

    public ImmutableArray<ShortCircuitCheck> ClearAll() => [.. _scope.Runs.Values.Select(r => Clear(r, _fitted))];

    private ShortCircuitCheck Clear(DownstreamRun run, double rating)
    {
        double fuseOhms = FuseTable
            .ResistanceOf(rating == _fitted ? Fuse : Fuse with { Rating = ElectricCurrent.FromAmperes(rating) })
            .Ohms;
        double ohms = _graph.Bike.BatteryResistance.Ohms + run.LoopOhms + fuseOhms;
        ElectricCurrent? current =
            ohms > 0 ? ElectricCurrent.FromAmperes(_graph.Bike.BatteryVoltage.Volts / ohms) : null;
        OpeningTime? opening = current is { } amperes
            ? OpeningTime.Calculate(Fuse.Style, ElectricCurrent.FromAmperes(rating), amperes)
            : null;
        return new ShortCircuitCheck(
            Run: run.Run,
            FarEnd: run.FarEnd,
            Setting: run.Setting,
            Path: run.Path,
            ReturnFrom: run.ReturnFrom,
            LoopResistance: ElectricResistance.FromOhms(ohms),
            ProspectiveCurrent: current,
            Opening: opening,
            SmallestWire: Area.FromSquareMillimeters(run.LeastSquareMillimetres),
            LetThroughAmpereSquaredSeconds:
                current is { } i && SlowestSeconds(rating, i.Amperes) is { } t and <= ShortCircuitHeat.LongestSeconds
                    ? i.Amperes * i.Amperes * t
                    : null,
            Clears: current is not { } amps ? true : Clears(run, rating, amps.Amperes)
        );
    }

    private double? SlowestSeconds(double rating, double amperes) =>
        TimeCurrentLimits.Of(Fuse.Style, rating).PublishedSlowestSeconds(amperes / rating);

    private bool? Clears(DownstreamRun run, double rating, double amperes)
    {
        if (SlowestSeconds(rating, amperes) is not { } seconds)
            return false;
        if (_options.LongestShort is { } longest && seconds > longest.Seconds + Tolerance)
            return false;
        if (seconds <= ShortCircuitHeat.LongestSeconds + Tolerance)
            return amperes * amperes * seconds
                <= ShortCircuitHeat.AmpereSquaredSeconds(Area.FromSquareMillimeters(run.LeastSquareMillimetres))
                    + Tolerance;
        // So slow that the wire gives off heat meanwhile: near the fusing current the overload rule decides, well above
        // it nothing published does.
        return amperes / rating < 2
            ? rating <= OverloadRule.LargestFuse(LeastRating(run), ConventionalFusing) + Tolerance
            : null;
    }

    private double LeastRating(DownstreamRun run) =>
        DownstreamRuns
            .Concat(ReturnRuns)
            .Where(r => r.Run.Name == run.Run.Name || run.Path.Contains(r.Run.Name))
            .Min(r => r.Rating.Alone?.Amperes ?? 0);

    private RunAmpacityCheck Rate(int index, IReadOnlyList<OperatingPoint> points)
    {
        Run run = _graph.Bike.Runs[index];
        Temperature air = _options.AirRoundWires(_graph.Bike);
        CableKind? cable = run.Cable ?? _graph.Bike.Cable;
        OperatingPoint worst = points[0];
        foreach (OperatingPoint point in points)
            if (point.Solved.RunAmperes(index) > worst.Solved.RunAmperes(index))
                worst = point;
        return new RunAmpacityCheck(
            run,
            run.RatingOf(run.Wire, air, cable),
            ElectricCurrent.FromAmperes(worst.Solved.RunAmperes(index)),
            worst.Setting
        )
        {
            IfOrdinary = cable is null ? run.RatingOf(run.Wire, air, CableKind.Ordinary) : null,
        };
    }
}
