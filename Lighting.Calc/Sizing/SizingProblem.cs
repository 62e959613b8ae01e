using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The numbers of one sizing in SI: for every run and size its resistance, copper and rating; the states; the
/// limits.</summary>
internal sealed class SizingProblem
{
    public const double AmpereTolerance = 1e-9;
    public const double VoltTolerance = 1e-9;

    public SizingProblem(HarnessNetwork network, WireSizingOptions options, CancellationToken cancellationToken)
    {
        Cancellation = cancellationToken;
        Network = network;
        Options = options;
        bool isOff = options.Engine == EngineState.Off;
        SupplyVolts = (options.Supply ?? (isOff ? Bike.BatteryVoltage : Bike.ChargingVoltage)).Volts;
        SourceOhms = isOff ? Bike.BatteryResistance.Ohms : 0;
        Allowed = (options.AllowedDrop ?? Bike.AllowedDrop).DecimalFractions;
        Sizes = options.Stock.IsDefaultOrEmpty
            ? Family(Bike, options)
            : [.. options.Stock.Distinct().OrderBy(s => s.CopperArea.SquareMillimeters)];
        Settings = SettingEnumeration.Of(Bike, options.When);
        var groups = new SettingGroups(network.Graph, Settings);
        States = SizingState.Of(groups);
        StateVolts = VoltsOfStates(isOff);
        FeedStates = DownstreamGraph.States(groups);
        Ohms =
        [
            .. Bike.Runs.Select(r => Sizes.Select(s => s.Resistance(r.Length, Bike.WireTemperature).Ohms).ToArray()),
        ];
        Copper =
        [
            .. Bike.Runs.Select(r => Sizes.Select(s => s.CopperArea.SquareMillimeters * r.Length.Meters).ToArray()),
        ];
        Ratings =
        [
            .. Bike.Runs.Select(r => Sizes.Select(s => RatingOf(r, s).Current?.Amperes ?? double.NaN).ToArray()),
        ];
        FuseOf = FeedingFuses();
        Thinnest = [.. Enumerable.Range(0, Bike.Runs.Length).Select(ThinnestFor)];
        Fitted = [.. Bike.Runs.Select(r => Sizes.IndexOf(r.Wire))];
    }

    public HarnessNetwork Network { get; }

    public CancellationToken Cancellation { get; }

    public Bike Bike => Network.Bike;

    public WireSizingOptions Options { get; }

    public double SupplyVolts { get; }

    /// <summary>For each state the voltage of the source: with a charging list what generator and battery hold behind
    /// the largest wires, which draw the most.</summary>
    public double[] StateVolts { get; }

    /// <summary>Resistance of the source: the battery's with the engine off, none with the engine running.</summary>
    public double SourceOhms { get; }

    /// <summary>Allowed drop as a fraction of the source volts.</summary>
    public double Allowed { get; }

    /// <summary>Smallest first.</summary>
    public ImmutableArray<WireSize> Sizes { get; }

    public ImmutableArray<Setting> Settings { get; }

    public ImmutableArray<SizingState> States { get; }

    /// <summary>The states that differ in what fuses feed.</summary>
    public ImmutableArray<FeedState> FeedStates { get; }

    /// <summary>Wire ohms by run and size.</summary>
    public double[][] Ohms { get; }

    /// <summary>mm²·m by run and size.</summary>
    public double[][] Copper { get; }

    /// <summary>Amperes by run and size; not a number where nothing is published.</summary>
    public double[][] Ratings { get; }

    /// <summary>For each run the fuse of the largest rating that feeds it or whose lamps return by it; null where none
    /// does.</summary>
    public Fuse?[] FuseOf { get; }

    /// <summary>For each run the thinnest size from which on every size is strong enough and holds its fuse; the number
    /// of sizes where none does.</summary>
    public int[] Thinnest { get; }

    /// <summary>For each run the fitted size; −1 where it is not among the sizes.</summary>
    public int[] Fitted { get; }

    public CurrentRating RatingOf(Run run, WireSize size) =>
        CurrentRating.Calculate(size, Options.Fuses.AirRoundWires(Bike), run.Bundle, run.Cable ?? Bike.Cable);

    public double FuseAmperes(int run) =>
        FuseOf[run] is { } fuse ? FuseJudge.ContinuousAmperes(fuse, Options.Fuses) : 0;

    public bool IsStrongEnough(int size) =>
        Sizes[size].CopperArea.SquareMillimeters >= Options.MinimumArea.SquareMillimeters - 1e-9;

    /// <summary>Whether a size holds the fuse that feeds a run; a size without a published rating never does.</summary>
    public bool MeetsFuse(int run, int size) => Ratings[run][size] >= FuseAmperes(run) - AmpereTolerance;

    public double CopperOf(int[] sizes)
    {
        double sum = 0;
        for (int i = 0; i < sizes.Length; i++)
            sum += Copper[i][sizes[i]];
        return sum;
    }

    /// <summary>The bike with other wires.</summary>
    public Bike With(int[] sizes) =>
        Bike with
        {
            Runs = [.. Bike.Runs.Select((r, i) => r with { Wire = Sizes[sizes[i]] })],
        };

    private double[] VoltsOfStates(bool isOff)
    {
        if (isOff || Options.Supply is not null || Bike.Lighting == LightingSupply.Direct)
            return [.. States.Select(_ => SupplyVolts)];
        var engine = RunningEngine.Of(With([.. Bike.Runs.Select(_ => Sizes.Length - 1)]));
        return [.. States.Select(s => engine.AtMostOutput(s.Setting).SupplyVoltage.Volts)];
    }

    private static ImmutableArray<WireSize> Family(Bike bike, WireSizingOptions options)
    {
        WireConstruction family = options.Family
            ?? bike.Runs.GroupBy(r => r.Wire.Construction)
                .OrderByDescending(g => g.Count())
                .ThenBy(g => g.Key)
                .First()
                .Key;
        return SizesOf(family, options.IncludeOddGauges);
    }

    /// <summary>The sizes of a kind, thinnest first; of gauges the even ones unless the odd ones are wanted
    /// too.</summary>
    public static ImmutableArray<WireSize> SizesOf(WireConstruction family, bool includeOddGauges)
    {
        ImmutableArray<WireSize> all = WireTable.Of(family);
        return family == WireConstruction.MetricCable || includeOddGauges
            ? all
            : [.. all.Where((_, i) => i % 2 == (AmericanWireGauge.Smallest % 2))];
    }

    private Fuse?[] FeedingFuses()
    {
        var graph = new DownstreamGraph(Bike);
        var found = new Fuse?[Bike.Runs.Length];
        for (int i = 0; i < Bike.Fuses.Length; i++)
        {
            var scope = FuseScope.Of(graph, i, FeedStates, Cancellation);
            foreach (int run in scope.Runs.Keys.Concat(scope.ReturnRuns))
                if (
                    found[run] is not { } known
                    || FuseJudge.ContinuousAmperes(Bike.Fuses[i], Options.Fuses)
                        > FuseJudge.ContinuousAmperes(known, Options.Fuses)
                )
                    found[run] = Bike.Fuses[i];
        }

        return found;
    }

    private int ThinnestFor(int run)
    {
        int size = Sizes.Length;
        while (size > 0 && IsStrongEnough(size - 1) && MeetsFuse(run, size - 1))
            size--;
        return size;
    }
}
