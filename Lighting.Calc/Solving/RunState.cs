using UnitsNet;

namespace Lighting.Calc;

/// <summary>A run at one operating point.</summary>
/// <param name="Run">The run.</param>
/// <param name="Current">Current, positive from its <c>from</c> to its <c>to</c>.</param>
/// <param name="WireDrop">Volts lost in the wire, of the current's sign.</param>
/// <param name="JointDrop">Volts lost in its joints, of the current's sign.</param>
/// <param name="Resistance">Resistance of wire and joints together, at the bike's wire temperature unless the solver was told another.</param>
public sealed record RunState(Run Run, ElectricCurrent Current, ElectricPotential WireDrop, ElectricPotential JointDrop, ElectricResistance Resistance);
