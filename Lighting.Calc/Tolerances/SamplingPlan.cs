using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What every sample has to answer: which states are solved, which lamps and fuses are read in each, which balances are struck. Immutable.</summary>
internal sealed class SamplingPlan
{
    public const int NoState = -1;

    private readonly ElectricalStates _states;

    private SamplingPlan(UncertainBike uncertain, HarnessNetwork network, ToleranceOptions options)
    {
        Uncertain = uncertain;
        Network = network;
        Options = options;
        _states = new ElectricalStates(network);
    }

    public UncertainBike Uncertain { get; }

    public HarnessNetwork Network { get; }

    public ToleranceOptions Options { get; }

    public Bike Bike => Uncertain.Bike;

    public IReadOnlyList<ReducedCircuit> Circuits => _states.Circuits;

    public IReadOnlyList<Setting> Settings => _states.Settings;

    /// <summary>For each state whether it is one of the settings asked for; the others are the ride's.</summary>
    public ImmutableArray<bool> IsAskedFor { get; private set; }

    /// <summary>For each state the lamps that are meant to be lit in it.</summary>
    public ImmutableArray<ImmutableArray<int>> LampsMeant { get; private set; }

    /// <summary>The lamps that are lit in some setting, by index in the bike.</summary>
    public ImmutableArray<int> Lamps { get; private set; }

    /// <summary>Sets of curves that work together; empty where the break-even speed is not known.</summary>
    public ImmutableArray<ImmutableArray<ChargingCurve>> Windings { get; private set; } = [];

    /// <summary>For each set of curves the states in which it works.</summary>
    public ImmutableArray<ImmutableArray<int>> StatesOfWindings { get; private set; } = [];

    /// <summary>The stretches of the ride; empty where its balance is not known.</summary>
    public ImmutableArray<PlannedStretch> Ride { get; private set; } = [];

    public bool HasBreakEven => !Windings.IsEmpty;

    public bool HasRide => !Ride.IsEmpty;

    /// <summary>Whether a state's current at the charging volts is asked for.</summary>
    public bool IsBalanced(int state) => StatesOfWindings.Any(s => s.Contains(state)) || Ride.Any(r => r.State == state && !r.Stands);

    /// <param name="uncertain">The bike.</param>
    /// <param name="network">Its harness.</param>
    /// <param name="points">The operating points of the settings asked for, as listed.</param>
    /// <param name="options">The options.</param>
    public static SamplingPlan Of(UncertainBike uncertain, HarnessNetwork network, IReadOnlyList<OperatingPoint> points, ToleranceOptions options)
    {
        var plan = new SamplingPlan(uncertain, network, options);
        Bike bike = uncertain.Bike;
        int[] stateOfPoint = [.. points.Select(p => plan._states.Of(p.Setting))];
        int asked = plan._states.Circuits.Count;
        ImmutableArray<ChargingCurve> curves = ChargingCurve.Of(bike.Charging);
        if (!curves.IsEmpty)
        {
            plan.PlanBreakEven(points, stateOfPoint, curves);
            plan.PlanRide(curves);
        }

        var meant = new SortedSet<int>[plan._states.Circuits.Count];
        for (int s = 0; s < meant.Length; s++)
            meant[s] = [];
        for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
        {
            var where = IntendedOnStates.Of(bike, points, lamp).Select(p => p.Setting).ToHashSet();
            for (int i = 0; i < points.Count; i++)
                if (stateOfPoint[i] != NoState && where.Contains(points[i].Setting))
                    meant[stateOfPoint[i]].Add(lamp);
        }

        plan.LampsMeant = [.. meant.Select(m => m.ToImmutableArray())];
        plan.Lamps = [.. meant.SelectMany(m => m).Distinct().Order()];
        plan.IsAskedFor = [.. meant.Select((_, s) => s < asked)];
        return plan;
    }

    private void PlanBreakEven(IReadOnlyList<OperatingPoint> points, int[] stateOfPoint, ImmutableArray<ChargingCurve> curves)
    {
        var sets = points.Select((p, i) => (State: stateOfPoint[i], Mask: string.Concat(curves.Select(c => c.When.Holds(p.Setting) ? '1' : '0'))))
            .Where(e => e.State != NoState || Options.Charging.FieldCurrent.Amperes > 0)
            .GroupBy(e => e.Mask)
            .ToArray();
        ImmutableArray<ImmutableArray<ChargingCurve>> windings = [.. sets.Select(s => curves.Where((_, i) => s.Key[i] == '1').ToImmutableArray())];
        if (!windings.All(w => w.IsEmpty || new CombinedOutput(w).IsKnown))
            return;
        Windings = windings;
        StatesOfWindings = [.. sets.Select(s => s.Select(e => e.State).Where(e => e != NoState).Distinct().ToImmutableArray())];
    }

    private void PlanRide(ImmutableArray<ChargingCurve> curves)
    {
        var ride = ImmutableArray.CreateBuilder<PlannedStretch>();
        foreach (RideStretch stretch in Bike.Ride)
        {
            Setting setting = SettingEnumeration.Held(Bike, stretch.When);
            double rpm = stretch.Speed.RevolutionsPerMinute;
            double? output = rpm == 0 ? 0 : curves.Where(c => c.When.Holds(setting)).Aggregate((double?)0, (sum, c) => sum + c.AmperesAt(rpm, c.RangeOf(rpm)));
            if (output is not { } amperes)
                return;
            ride.Add(new PlannedStretch(_states.Of(setting), rpm == 0, amperes, stretch.Duration.Hours));
        }

        Ride = ride.ToImmutable();
    }
}
