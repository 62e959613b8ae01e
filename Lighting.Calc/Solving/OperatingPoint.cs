using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The solved harness in one setting: voltage at every point, current in every part.</summary>
/// <remarks>Immutable and safe to share between threads. Settings that differ in dead contacts only share their
/// currents. Two are equal when they are one solution in the same setting.</remarks>
public sealed record OperatingPoint
{
    private ImmutableArray<NodeVoltage> _points;
    private ImmutableArray<ContactState> _contacts;

    internal OperatingPoint(SolvedCircuit solved, Setting setting, BusState? bus = null)
    {
        Solved = solved;
        Setting = setting;
        Bus = bus;
    }

    /// <summary>The setting.</summary>
    public Setting Setting { get; }

    /// <summary>The currents of generator, battery and regulator with the engine running; null with the engine off, at
    /// a given voltage, and without a charging list.</summary>
    public BusState? Bus { get; }

    /// <summary>Voltage of the source: with the engine running where the generator joins the harness, at the battery's
    /// terminals unless the bike names another point; before the battery's resistance with the engine off.</summary>
    public ElectricPotential SupplyVoltage => ElectricPotential.FromVolts(Solved.SupplyVolts);

    /// <summary>Current that the loads take, zero or more.</summary>
    public ElectricCurrent TotalCurrent => ElectricCurrent.FromAmperes(Solved.SourceAmperes);

    /// <summary>Voltage lost in the resistance of the battery and its posts.</summary>
    public ElectricPotential BatteryDrop => ElectricPotential.FromVolts(Solved.BatteryDropVolts);

    /// <summary>The points, battery plus and minus first, in the order of
    /// <see cref="HarnessNetwork.Points"/>.</summary>
    public ImmutableArray<NodeVoltage> Points => _points.IsDefault ? _points = Solved.PointsWith(Closed) : _points;

    /// <summary>The lamps, in the order of the list.</summary>
    public ImmutableArray<LampState> Lamps => Solved.Lamps;

    /// <summary>The runs, in the order of the list.</summary>
    public ImmutableArray<RunState> Runs => Solved.Runs;

    /// <summary>The switch contacts, in the order of the list; none of a bike without runs.</summary>
    internal ImmutableArray<ContactState> Contacts =>
        _contacts.IsDefault ? _contacts = Solved.ContactsWith(Closed) : _contacts;

    /// <summary>The fuses, in the order of the list.</summary>
    public ImmutableArray<FuseState> Fuses => Solved.Fuses;

    /// <summary>The contacts that are closed.</summary>
    internal ContactSet Closed => Solved.Graph.Switches.ClosedIn(Setting);

    /// <summary>The numbers it is made of.</summary>
    internal SolvedCircuit Solved { get; }

    /// <summary>Of some operating points the first of each set of currents, in their order.</summary>
    internal static ImmutableArray<OperatingPoint> FirstOfEachCurrents(IEnumerable<OperatingPoint> points) =>
        [.. points.DistinctBy(p => p.Solved)];

    /// <inheritdoc/>
    public bool Equals(OperatingPoint? other) =>
        other is not null && ReferenceEquals(Solved, other.Solved) && Setting.Equals(other.Setting);

    /// <inheritdoc/>
    public override int GetHashCode() => Setting.GetHashCode();
}
