using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What every sampled bike is solved for: the electrical states, the lamps read in each, and the settings in
/// which each set of windings works. Immutable.</summary>
/// <remarks>A state is the settings in which the same elements carry current: those that differ in a dead switch alone
/// are one state, those in which nothing is on none.</remarks>
internal sealed class SamplingPlan
{
    public SamplingPlan(UncertainBike uncertain, BikeSolution solution, ToleranceOptions options)
    {
        Uncertain = uncertain;
        Network = solution.Network;
        Options = options;
        Bike bike = solution.Network.Bike;
        Switches = SettingEnumeration.SwitchesOf(bike);
        Func<Setting, int> worked = new MomentarySwitches(bike, options.Check.Fuses.MomentarySwitches).WorkedOf(
            Network.Graph.Switches
        );
        (OperatingPoint Point, string State)[] points = [.. solution.Points.Select(p => (p, p.Solved.Carrying))];
        HashSet<OperatingPoint>[] meant =
        [
            .. bike.Lamps.Select((_, lamp) => IntendedOnStates.Of(bike, solution.Points, lamp).ToHashSet()),
        ];
        HashSet<OperatingPoint>[] lasting = [.. meant.Select(m => IntendedOnStates.Lasting(m, worked).ToHashSet())];
        Lamps = [.. Enumerable.Range(0, meant.Length).Where(lamp => meant[lamp].Count > 0)];
        Momentary = new MomentaryLoads(bike, options.Check.Fuses);
        Fed =
        [
            .. DownstreamScopes
                .Of(bike, solution.Points.Select(p => p.Setting), CancellationToken.None)
                .Scopes.Select(s => s.Lamps),
        ];
        bool someAreContinuous = points.Any(p => Momentary.IsContinuous(p.Point.Setting));
        States =
        [
            .. points
                .Where(p => p.State.Length > 0)
                .GroupBy(p => p.State)
                .Select(s =>
                    new SampledState(
                        s.First().Point.Setting,
                        Lamps
                            .Where(lamp => s.Any(p => meant[lamp].Contains(p.Point)))
                            .Select(lamp => (lamp, s.Any(p => lasting[lamp].Contains(p.Point))))
                            .ToImmutableArray(),
                        !someAreContinuous || s.Any(p => Momentary.IsContinuous(p.Point.Setting))
                    )
                ),
        ];
        Condition[] windings = [.. bike.Charging.Select(c => c.When).Distinct()];
        // A field draws its current in any setting.
        Windings =
            windings.Length == 0
                ? []
                :
                [
                    .. points
                        .Where(p => p.State.Length > 0 || options.Check.Charging.FieldCurrent.Amperes > 0)
                        .GroupBy(p => string.Concat(windings.Select(w => w.Holds(p.Point.Setting) ? '1' : '0')))
                        .Select(w => w.DistinctBy(p => p.State).Select(p => p.Point.Setting).ToImmutableArray()),
                ];
    }

    public UncertainBike Uncertain { get; }

    public HarnessNetwork Network { get; }

    public ToleranceOptions Options { get; }

    public ImmutableArray<SwitchDefinition> Switches { get; }

    /// <summary>The lamps that are lit in some setting, by index in the bike.</summary>
    public ImmutableArray<int> Lamps { get; }

    /// <summary>The states.</summary>
    public ImmutableArray<SampledState> States { get; }

    public MomentaryLoads Momentary { get; }

    /// <summary>The lamps that each fuse feeds.</summary>
    public ImmutableArray<IReadOnlySet<int>> Fed { get; }

    /// <summary>For each set of windings that work together one setting of each state in which they do.</summary>
    public ImmutableArray<ImmutableArray<Setting>> Windings { get; }
}

/// <summary>One setting of an electrical state, and what is taken from it.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Lamps">The lamps that are meant to be lit in it, and whether their drop is judged there.</param>
/// <param name="IsContinuous">Whether it counts for the continuous load of fuses: no momentary contact is closed, or
/// one is in every state.</param>
internal sealed record SampledState(
    Setting Setting,
    ImmutableArray<(int Lamp, bool JudgesDrop)> Lamps,
    bool IsContinuous
);
