using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The numbers of one sizing in SI: for every run and size its resistance, copper and rating; the states; the limits.</summary>
internal sealed class SizingProblem
{
    public const double AmpereTolerance = 1e-9;
    public const double VoltTolerance = 1e-9;

    public SizingProblem(HarnessNetwork network, WireSizingOptions options, CancellationToken cancellation = default)
    {
        Cancellation = cancellation;
        Network = network;
        Options = options;
        SupplyVolts = (options.Supply ?? Bike.ChargingVoltage).Volts;
        Allowed = (options.AllowedDrop ?? Bike.AllowedDrop).DecimalFractions;
        Sizes = Family(Bike, options);
        Settings = SettingEnumeration.Of(Bike, options.When);
        States = [.. Settings.Select(StateOf).Where(s => s.Roles.Any(r => r != LoadRole.Dark)).DistinctBy(s => s.Signature(network))];
        Ohms = [.. Bike.Runs.Select(r => Sizes.Select(s => s.Resistance(r.Length, Bike.WireTemperature).Ohms).ToArray())];
        Copper = [.. Bike.Runs.Select(r => Sizes.Select(s => s.CopperArea.SquareMillimeters * r.Length.Meters).ToArray())];
        Ratings = [.. Bike.Runs.Select(r => Sizes.Select(s => RatingOf(r, s).Current?.Amperes ?? double.NaN).ToArray())];
        FuseOf = FeedingFuses();
        Thinnest = [.. Enumerable.Range(0, Bike.Runs.Length).Select(ThinnestFor)];
        Fitted = [.. Bike.Runs.Select(r => Sizes.IndexOf(r.Wire))];
    }

    public HarnessNetwork Network { get; }

    public CancellationToken Cancellation { get; }

    public Bike Bike => Network.Bike;

    public WireSizingOptions Options { get; }

    public double SupplyVolts { get; }

    /// <summary>Allowed drop as a fraction of the source volts.</summary>
    public double Allowed { get; }

    /// <summary>Thinnest first: rising in area, falling in resistance.</summary>
    public ImmutableArray<WireSize> Sizes { get; }

    public ImmutableArray<Setting> Settings { get; }

    public ImmutableArray<SizingState> States { get; }

    /// <summary>Wire ohms by run and size.</summary>
    public double[][] Ohms { get; }

    /// <summary>mm²·m by run and size.</summary>
    public double[][] Copper { get; }

    /// <summary>Amperes by run and size; not a number where nothing is published.</summary>
    public double[][] Ratings { get; }

    /// <summary>For each run the fuse of the largest rating that feeds it; null where none does.</summary>
    public Fuse?[] FuseOf { get; }

    /// <summary>For each run the thinnest size from which on every size is strong enough and holds its fuse; the number of sizes where none does.</summary>
    public int[] Thinnest { get; }

    /// <summary>For each run the fitted size; −1 where it is not among the sizes.</summary>
    public int[] Fitted { get; }

    public CurrentRating RatingOf(Run run, WireSize size) => CurrentRating.Calculate(size, Options.Fuses.WireAmbient, run.Bundle);

    public double FuseAmperes(int run) => FuseOf[run] is { } fuse ? FuseJudge.ContinuousAmperes(fuse, Options.Fuses) : 0;

    public bool IsStrongEnough(int size) => Sizes[size].CopperArea.SquareMillimeters >= Options.MinimumArea.SquareMillimeters - 1e-9;

    /// <summary>Whether a size holds the fuse that feeds a run; a size without a published rating never does.</summary>
    public bool MeetsFuse(int run, int size) => Ratings[run][size] >= FuseAmperes(run) - AmpereTolerance;

    public double CopperOf(int[] sizes) => sizes.Select((s, i) => Copper[i][s]).Sum();

    /// <summary>The bike with other wires.</summary>
    public Bike With(int[] sizes) => Bike with { Runs = [.. Bike.Runs.Select((r, i) => r with { Wire = Sizes[sizes[i]] })] };

    /// <summary>Current of a load of its quantity at some volts, without sign.</summary>
    public double Amperes(int lamp, double volts)
    {
        FittedLamp fitted = Bike.Lamps[lamp];
        return Math.Abs(fitted.Specification.At(volts).CurrentAmperes) * fitted.Quantity;
    }

    private static ImmutableArray<WireSize> Family(Bike bike, WireSizingOptions options)
    {
        WireConstruction family = options.Family ?? bike.Runs.GroupBy(r => r.Wire.Construction).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key;
        return SizesOf(family, options.IncludeOddGauges);
    }

    /// <summary>The sizes of a kind, thinnest first; of gauges the even ones unless the odd ones are wanted too.</summary>
    public static ImmutableArray<WireSize> SizesOf(WireConstruction family, bool includeOddGauges)
    {
        ImmutableArray<WireSize> all = WireTable.Of(family);
        return family == WireConstruction.MetricCable || includeOddGauges ? all : [.. all.Where((_, i) => i % 2 == (AmericanWireGauge.Thinnest % 2))];
    }

    private SizingState StateOf(Setting setting)
    {
        Cancellation.ThrowIfCancellationRequested();
        return SizingState.Of(Network, setting);
    }

    private Fuse?[] FeedingFuses()
    {
        var graph = new DownstreamGraph(Bike);
        ImmutableArray<FeedState> states = DownstreamGraph.States(SettingGroups.Of(Bike, Settings));
        var found = new Fuse?[Bike.Runs.Length];
        for (int i = 0; i < Bike.Fuses.Length; i++)
            foreach (int run in FuseScope.Of(graph, i, states, Cancellation).Runs.Keys)
                if (found[run] is not { } known || FuseJudge.ContinuousAmperes(Bike.Fuses[i], Options.Fuses) > FuseJudge.ContinuousAmperes(known, Options.Fuses))
                    found[run] = Bike.Fuses[i];

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
