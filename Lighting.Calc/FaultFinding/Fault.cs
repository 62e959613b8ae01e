using Lighting.Calc.Lamps;
using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>A fault of one part, with the severity that fits the readings best.</summary>
public sealed record Fault
{
    /// <summary>The fault.</summary>
    public required FaultKind Kind { get; init; }

    /// <summary>Name of the run, contact, fuse, lamp or point; <c>battery</c>, <c>lighting coil</c>; empty for no fault.</summary>
    public required string Part { get; init; }

    /// <summary>The part in plain words, such as <c>the ground 'rear earth' (rear return to frame)</c>.</summary>
    public required string Words { get; init; }

    /// <summary>Whether the connection is more likely open than merely poor.</summary>
    public bool IsOpen { get; init; }

    /// <summary>The resistance that the fault adds; null where it has none or is open.</summary>
    public FittedResistance? Resistance { get; init; }

    /// <summary>Volts that a flat battery or a weak lighting coil has left without load, null with other faults; the coil's rms, at the engine speed of the test.</summary>
    public ElectricPotential? OpenVoltage { get; init; }

    /// <summary>The lamp fitted in place of the right one; null with other faults.</summary>
    public LampSpecification? Lamp { get; init; }

    /// <summary>Dead lamps of those on the same two points, 1 or more; null with other faults.</summary>
    public int? DeadLamps { get; init; }
}
