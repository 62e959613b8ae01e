using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Where the voltage of one lamp went in one setting: the entries and the lamp's own voltage add up to the
/// source voltage.</summary>
/// <remarks>
/// Where the harness has loops the way from the source to the lamp is not the only one; the breakdown follows the one
/// that carries most current, and its sum is the same on any other.
/// </remarks>
public sealed class VoltageDropBreakdown
{
    internal VoltageDropBreakdown() { }

    /// <summary>The setting.</summary>
    public Setting Setting { get; internal init; } = null!;

    /// <summary>The lamp in it.</summary>
    public LampState Lamp { get; internal init; } = null!;

    /// <summary>Voltage of the source: at the battery's terminals with the engine running, before the battery's
    /// resistance with the engine off.</summary>
    public ElectricPotential SupplyVoltage { get; internal init; }

    /// <summary>Voltage lost in the battery's own resistance before its terminals while it discharges with the engine
    /// running; zero otherwise. No entry, and no part of the drop.</summary>
    public ElectricPotential BatteryDrop { get; internal init; }

    /// <summary>The solution it is of.</summary>
    internal SolvedCircuit Solved { get; init; } = null!;

    /// <summary>The parts on the way, from the source to the lamp and back.</summary>
    public ImmutableArray<VoltageDropItem> Entries { get; internal init; }

    /// <summary>Voltage lost on the way, all entries together.</summary>
    public ElectricPotential TotalDrop => ElectricPotential.FromVolts(Entries.Sum(e => e.Voltage.Volts));

    /// <summary>Voltage lost in all entries of one kind.</summary>
    /// <param name="kind">Runs, joints, contacts, fuses or the battery.</param>
    public ElectricPotential DropIn(VoltageDropKind kind) =>
        ElectricPotential.FromVolts(Entries.Where(e => e.Kind == kind).Sum(e => e.Voltage.Volts));

    /// <summary>The parts that drop more than a sound one: the first places to clean, the furthest beyond its limit
    /// first.</summary>
    public ImmutableArray<VoltageDropItem> OverLimit =>
        [.. Entries.Where(e => e.IsOverLimit).OrderByDescending(e => e.Voltage.Volts / e.Limit!.Value.Volts)];

    /// <summary>Drop from the lamp back to the battery, wires and joints.</summary>
    public ElectricPotential EarthDrop =>
        ElectricPotential.FromVolts(
            Entries
                .Where(e => e.Kind is VoltageDropKind.ReturnWire or VoltageDropKind.ReturnJoint)
                .Sum(e => e.Voltage.Volts)
        );

    /// <summary>Largest <see cref="EarthDrop"/> of a sound earth (tables/constants.csv).</summary>
    public ElectricPotential EarthLimit => PartDropLimits.Earth;

    /// <summary>Whether the earth side drops more than <see cref="EarthLimit"/>.</summary>
    public bool IsEarthOverLimit => EarthDrop > EarthLimit;

    /// <summary>Light lost to the drop, against the light the lamp would give at the source voltage; null for a load
    /// that gives none.</summary>
    public Ratio? LightLost =>
        Lamp.RelativeLight is { } light
        && Lamp.Lamp.Specification.RelativeLightAt(SupplyVoltage) is { DecimalFractions: > 0 } full
            ? Ratio.FromDecimalFractions(1 - light.DecimalFractions / full.DecimalFractions)
            : null;
}
