using UnitsNet;

namespace Lighting.Calc;

/// <summary>A run at one operating point.</summary>
public sealed record RunState
{
    internal RunState(
        Run run,
        ElectricCurrent current,
        ElectricPotential wireDrop,
        ElectricPotential jointDrop,
        ElectricResistance resistance
    ) => (Run, Current, WireDrop, JointDrop, Resistance) = (run, current, wireDrop, jointDrop, resistance);

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>Current, positive from its <c>from</c> to its <c>to</c>.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Voltage lost in the wire, of the current's sign.</summary>
    public ElectricPotential WireDrop { get; }

    /// <summary>Voltage lost in its joints, of the current's sign.</summary>
    public ElectricPotential JointDrop { get; }

    /// <summary>Resistance of wire and joints together, at the bike's wire temperature unless the solver was told
    /// another.</summary>
    public ElectricResistance Resistance { get; }
}
