using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.Network;

/// <summary>A fuse at one operating point.</summary>
/// <param name="Fuse">The fuse.</param>
/// <param name="Current">Current, positive from its <c>from</c> to its <c>to</c>.</param>
/// <param name="Drop">Volts lost in it, of the sign of the current.</param>
public sealed record FuseState(Fuse Fuse, ElectricCurrent Current, ElectricPotential Drop);
