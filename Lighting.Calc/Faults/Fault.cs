using UnitsNet;

namespace Lighting.Calc;

/// <summary>A fault of one part, with the severity that fits the readings best.</summary>
public sealed class Fault
{
    internal Fault(FaultFamily family) => (Kind, Part, Subject) = (family.Kind, family.PartName, family.Subject);

    /// <summary>The fault.</summary>
    public FaultKind Kind { get; }

    /// <summary>Name of the run, contact, fuse, lamp or point; <c>battery</c>, <c>lighting coil</c>; empty for no
    /// fault.</summary>
    public string Part { get; }

    /// <summary>The part in words, such as <c>the earth 'rear earth' (rear return to frame)</c>.</summary>
    public string Subject { get; }

    /// <summary>Whether the connection is more likely open than of high resistance.</summary>
    public bool IsOpen { get; internal init; }

    /// <summary>The resistance that the fault adds; null if it has none or is open.</summary>
    internal FittedResistance? Resistance { get; init; }

    /// <summary>Open-circuit voltage of a flat battery or a lighting coil of low output, null with other faults; the
    /// coil's rms, at the engine speed of the test.</summary>
    public ElectricPotential? OpenVoltage { get; internal init; }

    /// <summary>Share that a fault of the charging system leaves: of the generator's current, of the magnets' strength,
    /// or of the held voltage, which may be above one; null with other faults.</summary>
    public Ratio? Share { get; internal init; }

    /// <summary>The lamp fitted in place of the right one; null with other faults.</summary>
    public LampSpecification? Lamp { get; internal init; }

    /// <summary>Dead lamps of those on the same two points, 1 or more; null with other faults.</summary>
    public int? DeadLamps { get; internal init; }
}
